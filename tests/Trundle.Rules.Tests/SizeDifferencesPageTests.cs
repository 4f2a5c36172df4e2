using System.Globalization;
using System.Text;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Measures;

namespace Trundle.Rules.Tests;

/// <summary>The page that lists, row by row with its source, where a listed size differs from the rule, is made from the data and is up to date.</summary>
public sealed class SizeDifferencesPageTests
{
    [Fact]
    public void The_page_lists_every_row_that_differs_from_the_rule()
    {
        var page = Page();
        MadePage.Holds("size-differences.md", page);

        // Two rows that the reference names: 185/70 R14 is listed 8 mm above the rule, LT285/75 R16 7 mm on a maker's sheet.
        page.ShouldContain("| 185/70 R14 | 5 | 624 | 616 | +8 | 186 | 184 | +2 | UN R30 Annex 5 70-series table | from memory |");
        page.ShouldContain("| LT285/75 R16 | 8 | 841 | 834 | +7 |");
    }

    private static string Page()
    {
        var rows = SizeTable.Rows.Select(r => (Row: r, Rule: Dimensions.ByRule(MarkingReader.Read(r.Size).Value.Size, r.MeasuringRimWidth))).ToList();
        var compared = rows.Where(r => r.Row.OverallDiameter is not null && r.Rule.OverallDiameter is not null).ToList();
        var differ = compared.Where(r => Differs(r.Row.OverallDiameter, r.Rule.OverallDiameter) || Differs(r.Row.SectionWidth, Section(r.Rule))).ToList();
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"""
            # Listed sizes and the rule

            Made from the data by a test; do not edit. The size table has {rows.Count} rows. {compared.Count} of them list a diameter where the rule of UN R30 and R54
            6.1 gives one too ([sidewall](theory/sidewall.md)); {compared.Count - differ.Count} agree with it to the millimetre in diameter and section, and {differ.Count} differ, below.
            A row of the regulations' Annexes 5 counts before the rule; any other row does not. 165/70 R13 stands in two sources, which disagree: the regulation's counts.

            Not compared: {rows.Count(r => r.Row.OverallDiameter is not null && r.Rule.OverallDiameter is null)} inch sizes, which have no rule, and {rows.Count(r => r.Row.OverallDiameter is null)} rows that list nothing but the measuring rim. Sizes without a marked aspect ratio are compared
            with 82, and in diameter only. Lengths are in millimetres, the measuring rim in inches.

            | size | measuring rim | listed D | by rule | difference | listed S | by rule | difference | source | status |
            | --- | --- | --- | --- | --- | --- | --- | --- | --- | --- |

            """);
        foreach (var (row, rule) in differ)
        {
            text.Append(CultureInfo.InvariantCulture, $"| {row.Size} | {row.MeasuringRimWidth.In("in"):0.##} | {Both(row.OverallDiameter, rule.OverallDiameter)} | {Both(row.SectionWidth, Section(rule))} | {MadePage.Cell(row.Source.Text)} | {row.Source.StatusText} |\n");
        }

        return text.ToString();
    }

    /// <summary>The rule's section, where the aspect ratio is the size's own.</summary>
    private static Length? Section(SizeDesignation rule) => rule.AspectRatioMarked || rule.Family == MarkingFamily.Flotation ? rule.DesignSectionWidth : null;

    private static bool Differs(Length? listed, Length? rule) => listed is { } l && rule is { } r && Math.Abs(l.Millimetres - r.Millimetres) > 0.5;

    private static string Both(Length? listed, Length? rule) =>
        $"{Whole(listed)} | {Whole(rule)} | {(listed is { } l && rule is { } r ? (l.Millimetres - r.Millimetres).ToString("+0;−0;0", CultureInfo.InvariantCulture) : "")}";

    private static string Whole(Length? length) => length is { } l ? l.Millimetres.ToString("0", CultureInfo.InvariantCulture) : "";
}
