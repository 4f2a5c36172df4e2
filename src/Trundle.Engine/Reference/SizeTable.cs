using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Sidewall;
using Trundle.Measures;

namespace Trundle.Engine.Reference;

/// <summary>One size of the table.</summary>
/// <param name="Size">The size in one spelling.</param>
/// <param name="MeasuringRimWidth">Width of the rim on which it is measured.</param>
/// <param name="OverallDiameter">Listed diameter, or null where the row holds only the rule's.</param>
/// <param name="SectionWidth">Listed section width on the measuring rim, or null.</param>
/// <param name="Overrides">True where the regulation's own table lists the size, which then counts before the rule; a maker's sheet does not.</param>
/// <param name="Source">Where the row comes from.</param>
public sealed record ListedSize(string Size, Length MeasuringRimWidth, Length? OverallDiameter, Length? SectionWidth, bool Overrides, Source Source);

/// <summary>Sizes with their listed dimensions.</summary>
public static class SizeTable
{
    /// <summary>Every row in the table's order. A size may stand in two of its sources.</summary>
    public static IReadOnlyList<ListedSize> Rows { get; } = Load();

    private static readonly Dictionary<string, ListedSize> All = BySize();

    /// <summary>Every size that is listed, in one spelling.</summary>
    public static IReadOnlyList<string> Sizes { get; } = [.. All.Keys.Order(StringComparer.Ordinal)];

    /// <summary>The row of a size, or null where the table does not list it.</summary>
    /// <param name="size">The size as read.</param>
    /// <source>UN R30 Annex 5 and R54 Annex 5 (from memory), tyre makers' size sheets (read); each row names its own</source>
    public static ListedSize? Of(SizeDesignation size)
    {
        ArgumentNullException.ThrowIfNull(size);
        return All.GetValueOrDefault(size.Text);
    }

    private static Dictionary<string, ListedSize> BySize()
    {
        var rows = new Dictionary<string, ListedSize>(StringComparer.Ordinal);
        foreach (var listed in Rows)
        {
            // Where a size stands in two tables, the regulation's own counts.
            if (!rows.TryGetValue(listed.Size, out var held) || (listed.Overrides && !held.Overrides))
            {
                rows[listed.Size] = listed;
            }
        }

        return rows;
    }

    private static List<ListedSize> Load()
    {
        var table = CsvTable.Embedded("r30_sizes.csv");
        return [.. table.Rows.Select(row =>
        {
            var source = table.Cell(row, "source");
            return new ListedSize(
                MarkingReader.SizeText(table.Cell(row, "size")),
                Quantity.Of<Length>(double.Parse(table.Cell(row, "measuring_rim_in"), NumberStyles.Float, CultureInfo.InvariantCulture), "in"),
                Millimetres(table.Cell(row, "overall_diameter_mm")),
                Millimetres(table.Cell(row, "section_width_mm")),
                source.StartsWith("UN R30 Annex 5", StringComparison.Ordinal) || source.StartsWith("UN R54 Annex 5", StringComparison.Ordinal),
                new Source(Named(source), Source.StatusOf(table.Cell(row, "status").Split(';')[0])!.Value));
        })];
    }

    /// <summary>The source's name without the file's remarks on its comparison columns.</summary>
    private static string Named(string source)
    {
        var end = source.IndexOfAny([';', '(', ',']);
        return end < 0 ? source : source[..end].TrimEnd();
    }

    private static Length? Millimetres(string text) =>
        text.Length == 0 ? null : Length.FromMillimetres(double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture));
}
