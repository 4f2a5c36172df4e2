using System.Globalization;

namespace Trundle.Engine.Tests.Balance.Oracle.Why;

/// <summary>The engine's tables of what is held likely, read from the files themselves.</summary>
internal static class WhyPriors
{
    public static string Root { get; } = FindRoot();

    public static IReadOnlyList<(string Cause, double Prior)> Causes { get; } = [.. Rows("balance_why_causes.csv").Select(r => (r["cause"], Number(r["prior"])))];

    private static readonly List<Dictionary<string, string>> SizeRows = Rows("balance_why_sizes.csv");

    private static readonly List<Dictionary<string, string>> VariationRows = Rows("balance_why_variations.csv");

    /// <summary>Everything that the study's inputs rest on, as one text.</summary>
    public static string AllText { get; } = string.Concat(new[] { "balance_why_causes.csv", "balance_why_sizes.csv", "balance_why_variations.csv" }.Select(f => File.ReadAllText(File_(f))));

    public static IReadOnlyList<(double Weight, double Mean, double? Deviation)> Size(string cause, string size) =>
        [.. SizeRows.Where(r => r["cause"] == cause && r["size"] == size).Select(r => (Number(r["weight"]), Number(r["mean"]), r["sd"].Length > 0 ? Number(r["sd"]) : (double?)null))];

    public static double Share(string cause, string variation) => Number(VariationRows.Single(r => r["cause"] == cause && r["variation"] == variation)["share"]);

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static string File_(string name) => Path.Combine(Root, "src", "Trundle.Engine", "Balance", "Why", name);

    private static List<Dictionary<string, string>> Rows(string name) => RowsOf(File_(name));

    /// <summary>The rows of a table's file by the names of its columns.</summary>
    public static List<Dictionary<string, string>> RowsOf(string path)
    {
        var lines = File.ReadAllLines(path).Where(l => l.Length > 0).Select(Cells).ToList();
        return [.. lines.Skip(1).Select(l => lines[0].Zip(l).ToDictionary(c => c.First, c => c.Second, StringComparer.Ordinal))];
    }

    private static List<string> Cells(string line)
    {
        var cells = new List<string> { "" };
        var quoted = false;
        foreach (var c in line)
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                cells.Add("");
            }
            else
            {
                cells[^1] += c;
            }
        }

        return cells;
    }

    private static string FindRoot()
    {
        for (var at = new DirectoryInfo(AppContext.BaseDirectory); at is not null; at = at.Parent)
        {
            if (File.Exists(Path.Combine(at.FullName, "Trundle.slnx")))
            {
                return at.FullName;
            }
        }

        throw new InvalidOperationException("Trundle.slnx was not found above the test.");
    }
}
