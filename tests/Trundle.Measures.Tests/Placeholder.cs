namespace Trundle.Measures.Tests;
