using System.Globalization;
using Trundle.Engine.Reference;
using Trundle.Engine.Tests.Balance.Oracle.Why;

namespace Trundle.Engine.Tests.Wear;

/// <summary>The engine's tables of worn treads, read from the files themselves.</summary>
internal static class WearData
{
    public static IReadOnlyList<(string Pattern, string Form, double Prior)> Forms { get; } = [.. Rows("wear_patterns.csv").Select(r => (r["pattern"], r["form"], Number(r["prior"])))];

    public static IReadOnlyList<Dictionary<string, string>> Causes { get; } = Rows("wear_causes.csv");

    public static IReadOnlyList<Dictionary<string, string>> Shares { get; } = Rows("wear_shares.csv");

    /// <summary>Everything that a drawn case rests on, as one text.</summary>
    public static string AllText { get; } = string.Concat(new[] { "wear_patterns.csv", "wear_sizes.csv", "wear_causes.csv", "wear_shares.csv", "wear.figures.csv" }.Select(f => File.ReadAllText(At(f))));

    public static IReadOnlyList<(double Weight, double Mean, double Sd)> Sizes(string pattern) =>
        [.. SizeRows.Where(r => r["pattern"] == pattern).Select(r => (Number(r["weight"]), Number(r["mean"]), Number(r["sd"])))];

    public static double Figure(string key) => Figures.Of($"wear.{key}").Value;

    public static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static readonly List<Dictionary<string, string>> SizeRows = Rows("wear_sizes.csv");

    private static string At(string name) => Path.Combine(WhyPriors.Root, "src", "Trundle.Engine", "Wear", name);

    private static List<Dictionary<string, string>> Rows(string name) => WhyPriors.RowsOf(At(name));
}
