using System.Globalization;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// Every row of Data/r30_sizes.csv. Its sources and their status stand in the row: UN R30 Annex 5 and UN R54 Annex 5 (from memory), ETRTO design
/// dimensions (from memory), a tyre maker's size sheet (read), and the columns of the rule of UN R30 6.1 (computed). Where a list differs from
/// the rule, the row carries the difference in its listed_minus_formula columns, and the test holds the two apart.
/// </summary>
public sealed class SizeDimensionTests
{
    private static readonly PublishedTable Table = PublishedTable.Of("r30_sizes.csv");

    public static TheoryData<int> Rows => [.. Enumerable.Range(0, Table.Rows.Count)];

    [Theory]
    [MemberData(nameof(Rows))]
    public void Row_follows_its_rule_and_its_list(int index)
    {
        var row = Table.Rows[index];
        var size = MarkingReader.Read(Table.Cell(row, "size")).Value.Size;
        var rim = Length.FromInches(Number("measuring_rim_in")!.Value);
        var rule = Dimensions.ByRule(size, rim);
        if (Number("formula_od_mm") is { } diameter)
        {
            Millimetres(rule.OverallDiameter).ShouldBe(diameter, 1e-6);
        }
        else
        {
            rule.OverallDiameter.ShouldBeNull();
        }

        if (Number("formula_section_mm") is { } section)
        {
            Millimetres(rule.DesignSectionWidth).ShouldBe(section, 1e-6);
        }

        if (Number("listed_minus_formula_od") is { } difference)
        {
            (Number("overall_diameter_mm")!.Value - Millimetres(rule.OverallDiameter)).ShouldBe(difference, 1e-6);
        }

        if (Number("listed_minus_formula_section") is { } sectionDifference)
        {
            (Number("section_width_mm")!.Value - Millimetres(rule.DesignSectionWidth)).ShouldBe(sectionDifference, 1e-6);
        }

        // The regulation's own tables count before the rule; a maker's sheet and the ETRTO figures do not.
        var source = Table.Cell(row, "source");
        if (source.StartsWith("UN R30 Annex 5", StringComparison.Ordinal) || source.StartsWith("UN R54 Annex 5", StringComparison.Ordinal))
        {
            Millimetres(size.OverallDiameter).ShouldBe(Number("overall_diameter_mm")!.Value, 1e-6);
            Millimetres(size.DesignSectionWidth).ShouldBe(Number("section_width_mm")!.Value, 1e-6);
            size.MeasuringRimWidth!.Value.Inches.ShouldBe(rim.Inches, 1e-9);
            size.DimensionSource!.StatusText.ShouldBe("from memory");
        }
        else if (!SizeTable.Of(size)!.Overrides)
        {
            Millimetres(size.OverallDiameter).ShouldBe(Number("formula_od_mm")!.Value, 1e-6);
            Millimetres(size.DesignSectionWidth).ShouldBe(Number("formula_section_mm")!.Value, 1e-6);
        }

        double? Number(string column) => Table.Cell(row, column) is { Length: > 0 } text ? double.Parse(text, CultureInfo.InvariantCulture) : null;
    }

    /// <summary>165/70 R13 stands in two sources with other rims: each row is held to the rule on its own rim, and the regulation's is answered.</summary>
    [Fact]
    public void A_size_in_two_sources_is_held_row_by_row()
    {
        var twice = Table.Rows.GroupBy(r => Table.Cell(r, "size")).Where(g => g.Count() > 1).ShouldHaveSingleItem();
        twice.Select(r => (Table.Cell(r, "measuring_rim_in"), Table.Cell(r, "overall_diameter_mm"))).ShouldBe([("4.5", "568"), ("5.0", "562")]);
        var answered = MarkingReader.Read(twice.Key).Value.Size;
        answered.MeasuringRimWidth!.Value.Inches.ShouldBe(4.5, 1e-9);
        Millimetres(answered.OverallDiameter).ShouldBe(568, 1e-6);
        Table.Rows.Count.ShouldBe(73);
    }

    /// <summary>The strongest checks: ETRTO and UN R54 design dimensions on the measuring rim (from memory; two independent lists agree).</summary>
    [Theory]
    [InlineData("155/80R13", 4.5, 578, 157)]
    [InlineData("175/65R14", 5.0, 584, 177)]
    [InlineData("185/60R14", 5.5, 578, 189)]
    [InlineData("195/65R15", 6.0, 635, 201)]
    [InlineData("205/55R16", 6.5, 632, 214)]
    [InlineData("215/65R16", 6.5, 686, 221)]
    [InlineData("225/45R17", 7.5, 634, 225)]
    [InlineData("225/40R18", 8.0, 637, 230)]
    [InlineData("235/35R19", 8.5, 647, 241)]
    [InlineData("255/35R19", 9.0, 661, 260)]
    [InlineData("275/35R20", 9.5, 700, 278)]
    [InlineData("295/80R22.5", 9.0, 1044, 298)]
    [InlineData("315/80R22.5", 9.0, 1076, 312)]
    [InlineData("385/65R22.5", 11.75, 1072, 389)]
    [InlineData("215/75R17.5", 6.0, 767, 211)]
    public void Design_dimensions(string marking, double measuringRimInches, double diameter, double section)
    {
        var size = MarkingReader.Read(marking).Value.Size;
        size.MeasuringRimWidth!.Value.Inches.ShouldBe(measuringRimInches, 1e-9);
        Millimetres(size.OverallDiameter).ShouldBe(diameter, 1e-6);
        Millimetres(size.DesignSectionWidth).ShouldBe(section, 1e-6);
    }

    /// <summary>A tyre maker's sheet (read): six of seven light-truck sizes within 1 mm of the rule in diameter and section; the seventh is listed 7 mm taller.</summary>
    [Theory]
    [InlineData("LT245/75R16", 30.5, 9.8)]
    [InlineData("LT265/75R16", 31.7, 10.5)]
    [InlineData("LT315/75R16", 34.6, 12.3)]
    [InlineData("LT235/85R16", 31.7, 9.3)]
    [InlineData("LT305/70R16", 32.8, 12.2)]
    [InlineData("LT255/75R17", 32.0, 10.0)]
    public void Light_truck_sheet(string marking, double diameterInches, double sectionInches)
    {
        var size = MarkingReader.Read(marking).Value.Size;

        // Printed to a tenth of an inch: half of the last digit is 1.27 mm, and the maker's own choice 1 mm more.
        Millimetres(size.OverallDiameter).ShouldBe(diameterInches * 25.4, 1.27 + 1);
        Millimetres(size.DesignSectionWidth).ShouldBe(sectionInches * 25.4, 1.27 + 1);
    }

    /// <summary>Half a millimetre goes up: H of 275/70 R22.5 is 192.5, so the diameter is 572 + 2 × 193 (the row of UN R54, from memory).</summary>
    [Theory]
    [InlineData("275/70R22.5", 958)]
    [InlineData("165/70R14", 592)]
    [InlineData("31x10.50R15LT", 775)]
    [InlineData("33x12.50R15LT", 826)]
    [InlineData("35x12.50R15LT", 877)]
    public void Rounding_and_list_traps(string marking, double diameter) =>
        Millimetres(MarkingReader.Read(marking).Value.Size.OverallDiameter).ShouldBe(diameter, marking.StartsWith("33", StringComparison.Ordinal) ? 1 : 1e-6);

    /// <summary>K = 0.4 of 12.7 mm: 5.08 mm of section for half an inch of rim (UN R30 6.1.1.1, read).</summary>
    [Fact]
    public void Section_width_follows_the_rim()
    {
        var size = MarkingReader.Read("205/55R16").Value.Size;
        Millimetres(Dimensions.SectionWidthOn(size, Length.FromInches(7))).ShouldBe(214 + 5.08, 1e-9);
        Millimetres(Dimensions.SectionWidthOn(size, Length.FromInches(6))).ShouldBe(214 - 5.08, 1e-9);
    }

    /// <summary>Every listed code is its inches rounded to the millimetre, halves up (17.5 × 25.4 = 444.5 → 445).</summary>
    [Fact]
    public void Rim_codes_are_inches_rounded()
    {
        foreach (var (code, millimetres) in new[] { (8.0, 203), (12.0, 305), (13.0, 330), (15.0, 381), (16.0, 406), (17.0, 432), (17.5, 445), (19.5, 495), (22.5, 572), (24.0, 610), (24.5, 622), (30.0, 762), (27.0, 686), (29.0, 737) })
        {
            Dimensions.NominalRimDiameter(code).Millimetres.ShouldBe(millimetres, 1e-6);
        }
    }

    private static double Millimetres(Length? length) => length.ShouldNotBeNull().Millimetres;
}
