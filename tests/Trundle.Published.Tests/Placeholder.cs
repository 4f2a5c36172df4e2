namespace Trundle.Published.Tests;
