using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Sidewall;
using Trundle.Measures;

namespace Trundle.Engine.Reference;

/// <summary>The rim widths that a table names for a size.</summary>
/// <param name="Least">Narrowest rim.</param>
/// <param name="Most">Widest rim.</param>
/// <param name="Measuring">Measuring rim.</param>
/// <param name="Note">What some makers say otherwise, or empty.</param>
/// <param name="Source">Where the row comes from.</param>
public sealed record RimRange(Length Least, Length Most, Length Measuring, string Note, Source Source)
{
    /// <summary>The range for a person.</summary>
    public string Text => string.Create(CultureInfo.InvariantCulture, $"{Least.Inches:0.0#} to {Most.Inches:0.0#} in");

    /// <summary>The bound that a width lies beyond by more than a slack, or null where it lies in the range.</summary>
    /// <source>calculated</source>
    public Length? BoundPassedBy(Length width, Length slack) =>
        width.Millimetres < (Least - slack).Millimetres ? Least
        : width.Millimetres > (Most + slack).Millimetres ? Most
        : null;

    /// <summary>What some makers say otherwise, as cautions.</summary>
    public IReadOnlyList<string> Cautions => Note.Length > 0 ? [$"{Note}: the tyre's own maker is asked."] : [];
}

/// <summary>Rim width ranges: table data only. No rule gives an approved range, so a size without a row has none.</summary>
public static class RimRanges
{
    private static readonly Dictionary<string, RimRange> All = Load();

    /// <summary>Every size that has a row, in one spelling.</summary>
    public static IReadOnlyList<string> Sizes { get; } = [.. All.Keys.Order(StringComparer.Ordinal)];

    /// <summary>The range of a size, or null where no table is held: then the standard's yearbook or the tyre's maker is asked.</summary>
    /// <remarks>P and HL before a size change its load and not its rims, so 205/55 R16's row serves P205/55 R16 and HL205/55 R16 too.</remarks>
    /// <source>tyre makers' size sheets (read), ETRTO usual ranges (from memory); each row names its own</source>
    public static RimRange? For(SizeDesignation size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return All.GetValueOrDefault(size.TextWithoutLoadPrefix);
    }

    private static Dictionary<string, RimRange> Load()
    {
        var table = CsvTable.Embedded("rim_ranges.csv");
        return table.Rows.ToDictionary(
            row => MarkingReader.SizeText(table.Cell(row, "size")),
            row => new RimRange(
                Inches(row, "least_in"), Inches(row, "most_in"), Inches(row, "measuring_in"), table.Cell(row, "note"),
                new Source(table.Cell(row, "source"), Source.StatusOf(table.Cell(row, "status"))!.Value)),
            StringComparer.Ordinal);

        Length Inches(string[] row, string column) => Length.FromInches(double.Parse(table.Cell(row, column), NumberStyles.Float, CultureInfo.InvariantCulture));
    }
}
