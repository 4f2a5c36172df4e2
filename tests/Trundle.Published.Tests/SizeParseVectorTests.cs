using System.Globalization;
using Trundle.Engine.Sidewall;

namespace Trundle.Published.Tests;

/// <summary>
/// Every row of Data/size_parse_vectors.csv: markings of each family with their parts, after 92/23/EEC Annex II and vehicle handbooks' size
/// charts (read) and UN R30, R54, R75 (from memory). Widths of flotation and inch sizes are in inches, as marked.
/// </summary>
public sealed class SizeParseVectorTests
{
    private static readonly PublishedTable Table = PublishedTable.Of("size_parse_vectors.csv");

    public static TheoryData<int> Rows => [.. Enumerable.Range(0, Table.Rows.Count)];

    [Theory]
    [MemberData(nameof(Rows))]
    public void Row_reads_as_listed(int index)
    {
        var row = Table.Rows[index];
        var read = MarkingReader.Read(Cell("input"));
        if (Cell("family") == "NONE")
        {
            read.IsRead.ShouldBeFalse();
            return;
        }

        var marking = read.Value;
        var size = marking.Size;
        size.Family.ShouldBe(Family(Cell("family")));
        (size.Family == MarkingFamily.Metric && size.Prefix == "LT" && Cell("prefix").Length == 0 ? "" : size.Prefix).ShouldBe(Cell("prefix"));
        (size.Letters.Length > 0 ? size.Letters : "").ShouldBe(Cell("letter") + Cell("system"));
        size.Suffix.ShouldBe(Cell("suffix"));
        (size.EmbeddedSpeedSymbol ?? "").ShouldBe(Cell("embedded_speed"));

        var inches = size.Family is MarkingFamily.Flotation or MarkingFamily.Inch;
        if (Number("width") is { } width)
        {
            size.SectionWidth.ShouldNotBeNull();
            (inches ? size.SectionWidth.Value.Inches : size.SectionWidth.Value.Millimetres).ShouldBe(width, 1e-9);
        }
        else
        {
            size.SectionWidth.ShouldBeNull();
        }

        if (Number("aspect") is { } aspect)
        {
            size.AspectRatioPercent.ShouldBe(aspect);
            size.AspectRatioMarked.ShouldBeTrue();
        }
        else if (size.AspectRatioPercent is not null)
        {
            size.AspectRatioMarked.ShouldBeFalse();
        }

        var rim = Number("rim");
        (Cell("system").Length > 0 ? size.RimDiameterMillimetres : size.RimDiameterInches).ShouldBe(rim);
        size.Construction.ShouldBe(Cell("construction") switch { "-" or "" or "D" => Construction.Diagonal, "B" => Construction.BiasBelted, _ => Construction.Radial });
        size.ConstructionToBeRead.ShouldBe(Cell("construction") is "-" or "");
        size.AboveTwoHundredForty.ShouldBe(Cell("construction").StartsWith('Z'));
        size.RunFlat.ShouldBe(Cell("construction").EndsWith('F'));
        marking.Service.LoadIndexSingle.ShouldBe((int?)Number("li_single"));
        marking.Service.LoadIndexDual.ShouldBe((int?)Number("li_dual"));
        (marking.Service.SpeedSymbol ?? "").ShouldBe(Cell("speed_symbol") + (Cell("speed_symbol").Length == 0 ? Cell("embedded_speed") : ""));
        marking.Service.ExtraLoad.ShouldBe(Cell("tail") == "XL");
        if (Cell("tail").StartsWith("LR", StringComparison.Ordinal))
        {
            marking.Service.LoadRange.ShouldBe(Cell("tail")[2..]);
        }
        else if (Cell("prefix") == "LT" && Cell("suffix").Length == 1)
        {
            marking.Service.LoadRange.ShouldBe(Cell("suffix"));
        }

        string Cell(string column) => Table.Cell(row, column);

        double? Number(string column) => Cell(column) is { Length: > 0 } text ? double.Parse(text, CultureInfo.InvariantCulture) : null;
    }

    [Fact]
    public void No_row_was_lost_on_the_way() => Table.Rows.Select(r => Table.Cell(r, "input")).Distinct().Count().ShouldBe(33);

    /// <summary>The form fits, the width does not (the same grammar page).</summary>
    [Fact]
    public void A_width_of_999_is_rejected_by_its_range()
    {
        var read = MarkingReader.Read("999/55R16");
        read.IsRead.ShouldBeFalse();
        read.Problem!.Code.ShouldBe("width-out-of-range");
        read.Problem.Message.ShouldContain("At character 1");
    }

    private static MarkingFamily Family(string name) => name switch
    {
        "METRIC" => MarkingFamily.Metric,
        "METRIC_NOASPECT" => MarkingFamily.MetricWithoutAspect,
        "METRIC_MMRIM" => MarkingFamily.MillimetreRim,
        "EXT_MOBILITY" => MarkingFamily.ExtendedMobility,
        "FLOTATION" => MarkingFamily.Flotation,
        "ALPHA" => MarkingFamily.Alphanumeric,
        "INCH" => MarkingFamily.Inch,
        "MC_LETTER" => MarkingFamily.MotorcycleLetter,
        _ => throw new InvalidOperationException(name),
    };
}
