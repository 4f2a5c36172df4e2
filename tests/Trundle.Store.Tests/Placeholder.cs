namespace Trundle.Store.Tests;
