namespace Trundle.Engine.Tests;
