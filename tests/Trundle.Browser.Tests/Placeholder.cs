namespace Trundle.Browser.Tests;
