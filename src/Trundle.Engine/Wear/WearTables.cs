using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;

namespace Trundle.Engine.Wear;

/// <summary>A pattern in one form (which shoulder, which edges), with how likely it is held before anything is measured.</summary>
internal sealed record WearForm(WearPattern Pattern, string Form, double Prior, string Text);

/// <summary>One part of what a size may be, in millimetres: a bell of a mean and a standard deviation.</summary>
internal readonly record struct WearSize(double Weight, double MeanMm, double SdMm);

/// <summary>A cause: its words, what to check, and how often what else is known goes with it.</summary>
internal sealed record CauseRow(string Cause, string Text, string Check, double Low, double Right, double High, double Steered, double Driven, double Dual, double Alike, bool Hold);

/// <summary>A cause's share of a form of a pattern, with where the pairing is from.</summary>
internal sealed record CauseShare(CauseRow Cause, double Share, Source Source);

/// <summary>A further measurement, with how often it shows something under each pattern.</summary>
internal sealed record WearStepRow(string Key, double Minutes, IReadOnlyDictionary<WearPattern, double> Shows, string Text, string ShowsText);

/// <summary>What is held likely before any depth is known, and what may be measured further: data, in five tables.</summary>
internal static class WearTables
{
    public static IReadOnlyList<WearForm> Forms { get; } = LoadForms();

    public static IReadOnlyList<WearStepRow> Steps { get; } = LoadSteps();

    /// <summary>The causes that a vehicle with one wheel an axle cannot have.</summary>
    public static IReadOnlySet<string> NotOnSingleTrack { get; } = LoadNotOnSingleTrack();

    private static readonly ILookup<WearPattern, WearSize> Sizes = LoadSizes();

    private static readonly ILookup<(WearPattern, string), CauseShare> Shares = LoadShares();

    public static IReadOnlyList<WearSize> SizesOf(WearPattern pattern) => [.. Sizes[pattern]];

    public static IReadOnlyList<CauseShare> SharesOf(WearForm form) => [.. Shares[(form.Pattern, form.Form)]];

    private static List<WearForm> LoadForms()
    {
        var table = CsvTable.Embedded("wear_patterns.csv");
        var whole = table.Rows.Sum(r => Number(table.Cell(r, "prior")));
        return [.. table.Rows.Select(r => new WearForm(WearPatternWords.Of(table.Cell(r, "pattern")), table.Cell(r, "form"), Number(table.Cell(r, "prior")) / whole, table.Cell(r, "text")))];
    }

    private static ILookup<WearPattern, WearSize> LoadSizes()
    {
        var table = CsvTable.Embedded("wear_sizes.csv");
        return table.Rows.ToLookup(
            r => WearPatternWords.Of(table.Cell(r, "pattern")),
            r => new WearSize(Number(table.Cell(r, "weight")), Number(table.Cell(r, "mean")), Number(table.Cell(r, "sd"))));
    }

    private static ILookup<(WearPattern, string), CauseShare> LoadShares()
    {
        var causes = LoadCauses();
        var table = CsvTable.Embedded("wear_shares.csv");
        return table.Rows.ToLookup(
            r => (WearPatternWords.Of(table.Cell(r, "pattern")), table.Cell(r, "form")),
            r => new CauseShare(causes[table.Cell(r, "cause")], Number(table.Cell(r, "share")), SourceOf(table, r)));
    }

    private static Dictionary<string, CauseRow> LoadCauses()
    {
        var table = CsvTable.Embedded("wear_causes.csv");
        return table.Rows.ToDictionary(r => table.Cell(r, "cause"), r => new CauseRow(
            table.Cell(r, "cause"),
            table.Cell(r, "text"),
            table.Cell(r, "check"),
            Number(table.Cell(r, "pressure_low")),
            Number(table.Cell(r, "pressure_right")),
            Number(table.Cell(r, "pressure_high")),
            Number(table.Cell(r, "steered")),
            Number(table.Cell(r, "driven")),
            Number(table.Cell(r, "dual")),
            Number(table.Cell(r, "alike")),
            table.Cell(r, "hold") == "true"), StringComparer.Ordinal);
    }

    private static HashSet<string> LoadNotOnSingleTrack()
    {
        var table = CsvTable.Embedded("wear_single_track.csv");
        return [.. table.Rows.Select(r => table.Cell(r, "cause"))];
    }

    private static List<WearStepRow> LoadSteps()
    {
        var table = CsvTable.Embedded("wear_steps.csv");
        return [.. table.Rows.Select(r => new WearStepRow(
            table.Cell(r, "step"),
            Number(table.Cell(r, "minutes")),
            WearPatternWords.All.ToDictionary(p => p, p => Number(table.Cell(r, p.Word()))),
            table.Cell(r, "text"),
            table.Cell(r, "shows")))];
    }

    private static Source SourceOf(CsvTable table, string[] row) =>
        new(table.Cell(row, "source"), Source.StatusOf(table.Cell(row, "status")) ?? throw new InvalidOperationException($"{table.Name}: '{table.Cell(row, "status")}' is not a status."));

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
