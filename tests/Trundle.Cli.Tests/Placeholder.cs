namespace Trundle.Cli.Tests;
