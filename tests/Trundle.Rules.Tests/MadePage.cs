namespace Trundle.Rules.Tests;

/// <summary>A page of docs that is made from the data, and written anew where TRUNDLE_WRITE_DOCS is 1.</summary>
internal static class MadePage
{
    /// <summary>Holds the page against what the data give.</summary>
    public static void Holds(string name, string page)
    {
        var path = Path.Combine(House.Root, "docs", name);
        if (Environment.GetEnvironmentVariable("TRUNDLE_WRITE_DOCS") == "1")
        {
            File.WriteAllText(path, page);
        }

        File.ReadAllText(path).ShouldBe(page, "Run this test with TRUNDLE_WRITE_DOCS=1 to write the page anew.");
    }

    /// <summary>A text that may stand in a cell of a table.</summary>
    public static string Cell(string text) => text.Replace("|", "\\|", StringComparison.Ordinal).Trim();
}
