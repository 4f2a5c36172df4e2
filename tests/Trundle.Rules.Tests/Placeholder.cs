namespace Trundle.Rules.Tests;
