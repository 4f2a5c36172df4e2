using System.Globalization;
using Trundle.Engine.Reference;

namespace Trundle.Engine.Balance.Why;

/// <summary>One part of what a size may be: a bell of a mean and a standard deviation, or (no deviation) anything alike.</summary>
internal readonly record struct SizePart(double Weight, double Mean, double? Deviation, string Size);

/// <summary>One step of the table with what it shows under each cause.</summary>
internal sealed record StepRow(WhyStep Step, double Minutes, IReadOnlyDictionary<WhyCause, double> Shows);

/// <summary>What is held likely before any spin, and what steps there are: data, in four tables.</summary>
internal static class WhyTables
{
    public static IReadOnlyDictionary<WhyCause, double> Causes { get; } = LoadCauses();

    public static IReadOnlyList<StepRow> Steps { get; } = LoadSteps();

    private static readonly ILookup<(WhyCause, string), SizePart> Sizes = LoadSizes();

    private static readonly Dictionary<(WhyCause, string), double> Shares = LoadShares();

    /// <summary>The parts of a size's prior.</summary>
    public static IReadOnlyList<SizePart> Size(WhyCause cause, string size) => [.. Sizes[(cause, size)]];

    /// <summary>The share of a variation of a cause.</summary>
    public static double Share(WhyCause cause, string variation) => Shares[(cause, variation)];

    /// <summary>A cause's word in the contract.</summary>
    public static string Word(WhyCause cause) => cause switch
    {
        WhyCause.RimDistance => "rim-distance",
        WhyCause.RimDiameter => "rim-diameter",
        WhyCause.RimWidth => "rim-width",
        WhyCause.WeightAngle => "weight-angle",
        WhyCause.WeightMass => "weight-mass",
        WhyCause.WeightsSwapped => "weights-swapped",
        WhyCause.WeightPlace => "weight-place",
        WhyCause.WeightLost => "weight-lost",
        WhyCause.ReSeated => "re-seated",
        WhyCause.LooseObject => "loose-object",
        WhyCause.Calibration => "calibration",
        WhyCause.Noise => "noise",
    };

    private static WhyCause Cause(string word) => Enum.GetValues<WhyCause>().First(c => Word(c) == word);

    private static Dictionary<WhyCause, double> LoadCauses()
    {
        var table = CsvTable.Embedded("balance_why_causes.csv");
        return table.Rows.ToDictionary(r => Cause(table.Cell(r, "cause")), r => Number(table.Cell(r, "prior")));
    }

    private static ILookup<(WhyCause, string), SizePart> LoadSizes()
    {
        var table = CsvTable.Embedded("balance_why_sizes.csv");
        return table.Rows.ToLookup(
            r => (Cause(table.Cell(r, "cause")), table.Cell(r, "size")),
            r => new SizePart(Number(table.Cell(r, "weight")), Number(table.Cell(r, "mean")), table.Cell(r, "sd") is { Length: > 0 } sd ? Number(sd) : null, table.Cell(r, "size")));
    }

    private static Dictionary<(WhyCause, string), double> LoadShares()
    {
        var table = CsvTable.Embedded("balance_why_variations.csv");
        return table.Rows.ToDictionary(r => (Cause(table.Cell(r, "cause")), table.Cell(r, "variation")), r => Number(table.Cell(r, "share")));
    }

    private static List<StepRow> LoadSteps()
    {
        var table = CsvTable.Embedded("balance_why_steps.csv");
        return
        [
            .. table.Rows.Select(r =>
            {
                var key = table.Cell(r, "step");
                WhyCause? again = key switch
                {
                    "measure-rim-distance" => WhyCause.RimDistance,
                    "read-rim-diameter" => WhyCause.RimDiameter,
                    "measure-rim-width" => WhyCause.RimWidth,
                    _ => null,
                };
                return new StepRow(
                    new WhyStep(key, table.Cell(r, "text"), table.Cell(r, "shows"), again),
                    Number(table.Cell(r, "minutes")),
                    Enum.GetValues<WhyCause>().ToDictionary(c => c, c => Number(table.Cell(r, Word(c)))));
            }),
        ];
    }

    private static double Number(string cell) => double.Parse(cell, NumberStyles.Float, CultureInfo.InvariantCulture);
}

/// <summary>The causes in the contract's words.</summary>
public static class WhyCauseWords
{
    /// <summary>A cause's word, such as <c>rim-distance</c>.</summary>
    /// <source>the command's contract</source>
    public static string Word(this WhyCause cause) => WhyTables.Word(cause);
}
