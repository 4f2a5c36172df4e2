using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Sidewall;

/// <summary>
/// Design dimensions of a size: listed ones where the regulation's table lists the size, else by the rule; null where neither holds.
/// </summary>
/// <remarks>
/// The rule is in docs/theory/sidewall.md. It is computed in decimal, because its roundings turn on exact halves: H of 275/70 R22.5 is 192.5,
/// which goes up to 193 (halves away from zero), where rounding to even would give 192 and a diameter 2 mm short.
/// </remarks>
public static class Dimensions
{
    private static readonly IReadOnlyList<RimCode> RimCodes = LoadRimCodes();

    private static readonly IReadOnlyList<RimFactor> Factors = LoadFactors();

    private static readonly Source Rule = new("UN R30 and R54 paragraph 6.1: D = d + 2H, S = S1 + K (A - A1)", SourceStatus.Calculated);

    /// <summary>The nominal rim diameter d of a code: 16 is 406 mm, 22.5 is 572 mm.</summary>
    /// <param name="code">Rim diameter code in inches.</param>
    /// <returns>The listed diameter; for a code that is not listed, the code times 25.4 mm rounded to the millimetre.</returns>
    /// <source>UN R30 and R54 paragraph 6.1.2 (from memory)</source>
    public static Length NominalRimDiameter(double code) => Length.FromMillimetres(
        RimCodes.FirstOrDefault(r => r.Code == code) is { } listed ? listed.Millimetres : (double)Whole((decimal)code * 25.4m));

    /// <summary>The same size with its design section width, measuring rim and overall diameter where they are known.</summary>
    /// <param name="size">A size as read.</param>
    /// <returns>The size; what neither table nor rule tells stays null.</returns>
    /// <source>UN R30 and R54 paragraph 6.1 (6.1.1.1 read, the rest from memory); UN R30 and R54 Annex 5 (from memory)</source>
    public static SizeDesignation Of(SizeDesignation size)
    {
        ArgumentNullException.ThrowIfNull(size);
        var listed = SizeTable.Of(size);
        if (listed is { Overrides: true })
        {
            return size with
            {
                MeasuringRimWidth = listed.MeasuringRimWidth,
                DesignSectionWidth = listed.SectionWidth,
                OverallDiameter = listed.OverallDiameter,
                DimensionSource = listed.Source,
            };
        }

        return ByRule(size, listed?.MeasuringRimWidth);
    }

    /// <summary>The dimensions by the rule alone, whatever a table lists.</summary>
    /// <param name="size">A size as read.</param>
    /// <param name="measuringRim">The measuring rim's width where it is known, or null for the rule's.</param>
    /// <returns>The size; what the rule does not tell stays null.</returns>
    /// <source>UN R30 and R54 paragraph 6.1 (6.1.1.1 read, the rest from memory); flotation sizes: marked diameter less half an inch (from memory)</source>
    public static SizeDesignation ByRule(SizeDesignation size, Length? measuringRim)
    {
        ArgumentNullException.ThrowIfNull(size);
        var bare = size with { MeasuringRimWidth = null, DesignSectionWidth = null, OverallDiameter = null, DimensionSource = null };
        return size.Family switch
        {
            MarkingFamily.Metric or MarkingFamily.MetricWithoutAspect or MarkingFamily.MillimetreRim => Metric(bare, measuringRim),
            MarkingFamily.Flotation => Flotation(bare, measuringRim),
            MarkingFamily.ExtendedMobility => Marked(bare),

            // Code-designated sizes have dimensions only in tables.
            MarkingFamily.Alphanumeric or MarkingFamily.Inch or MarkingFamily.MotorcycleLetter => bare,
        };
    }

    /// <summary>The section width on a rim of another width than the measuring rim: 5.08 mm for each half inch.</summary>
    /// <param name="size">A size with its design section width and measuring rim.</param>
    /// <param name="rimWidth">The rim's width.</param>
    /// <returns>The width, not rounded, or null where the design width is not known.</returns>
    /// <source>UN R30 paragraph 6.1.1.1, K = 0.4 (read in an amendment copy)</source>
    public static Length? SectionWidthOn(SizeDesignation size, Length rimWidth)
    {
        ArgumentNullException.ThrowIfNull(size);
        return size.DesignSectionWidth is { } design && size.MeasuringRimWidth is { } measuring
            ? design + ((rimWidth - measuring) * Figures.Of("sidewall.rim-width-effect").Value)
            : null;
    }

    private static SizeDesignation Metric(SizeDesignation size, Length? listedRim)
    {
        if (size.SectionWidth is not { } width || size.AspectRatioPercent is not { } aspect)
        {
            return size;
        }

        var s1 = (decimal)Math.Round(width.Millimetres);
        var h = Whole(s1 * (decimal)aspect / 100m);
        var d = size.RimDiameterMillimetres ?? NominalRimDiameter(size.RimDiameterInches!.Value).Millimetres;
        var known = size with { OverallDiameter = Length.FromMillimetres((double)((decimal)Math.Round(d) + (2 * h))), DimensionSource = Rule };
        var rim = listedRim is { } listed ? Math.Round((decimal)listed.Inches, 2) : MeasuringRimCode(size, s1, aspect);
        if (rim is not { } code || FactorOf("theoretical", aspect) is not { } theoretical)
        {
            return known;
        }

        var x = IsTruckRim(size) ? (decimal)Figures.Of("sidewall.truck-theoretical-rim").Value : theoretical;
        var k = (decimal)Figures.Of("sidewall.rim-width-effect").Value;
        var s = Whole(s1 + (k * ((code * 25.4m) - (x * s1))));
        return known with { MeasuringRimWidth = Length.FromInches((double)code), DesignSectionWidth = Length.FromMillimetres((double)s) };
    }

    /// <summary>
    /// The measuring rim by the passenger rule, to half an inch; null for rims in millimetres, 15 degree truck rims (whose widths go in steps
    /// of three quarters) and motorcycles, where the rule does not hold.
    /// </summary>
    private static decimal? MeasuringRimCode(SizeDesignation size, decimal s1, double aspect) =>
        size.RimDiameterMillimetres is not null || IsTruckRim(size) || size.TyreClass is TyreClass.Motorcycle or TyreClass.Truck || FactorOf("measuring", aspect) is not { } factor
            ? null
            : Math.Round(factor * s1 / 25.4m * 2, MidpointRounding.AwayFromZero) / 2;

    private static bool IsTruckRim(SizeDesignation size) => size.RimDiameterInches is { } rim && rim >= 17 && rim != Math.Floor(rim);

    /// <summary>A flotation size marks the diameter of the grown tyre: its design diameter is half an inch less.</summary>
    private static SizeDesignation Flotation(SizeDesignation size, Length? listedRim)
    {
        var marked = decimal.Parse(size.Text[..size.Text.IndexOf('x', StringComparison.Ordinal)], NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);
        var design = marked - (decimal)Figures.Of("sidewall.flotation-growth").Value;
        return size with
        {
            OverallDiameter = Length.FromMillimetres((double)Whole(design * 25.4m)),
            DesignSectionWidth = Length.FromMillimetres((double)Whole((decimal)Math.Round(size.SectionWidth!.Value.Inches, 2) * 25.4m)),
            MeasuringRimWidth = listedRim,
            DimensionSource = new Source("flotation size: marked diameter less half an inch, marked width", Figures.Of("sidewall.flotation-growth").Source.Status),
        };
    }

    private static SizeDesignation Marked(SizeDesignation size)
    {
        var from = size.Text.IndexOf('-', StringComparison.Ordinal) + 1;
        return size with
        {
            OverallDiameter = Length.FromMillimetres(double.Parse(size.Text.AsSpan(from, 3), NumberStyles.None, CultureInfo.InvariantCulture)),
            DimensionSource = Source.Entered("marked in the size"),
        };
    }

    private static decimal Whole(decimal value) => Math.Round(value, MidpointRounding.AwayFromZero);

    /// <summary>x of the theoretical rim or k of the measuring rim for an aspect ratio, or null where none is given.</summary>
    private static decimal? FactorOf(string rim, double aspect)
    {
        foreach (var row in Factors)
        {
            if (row.Rim == rim && aspect >= row.From && aspect <= row.To)
            {
                return row.Factor;
            }
        }

        return null;
    }

    private static List<RimCode> LoadRimCodes()
    {
        var table = CsvTable.Embedded("rim_codes.csv");
        return
        [
            .. table.Rows.Select(r => new RimCode(
                double.Parse(table.Cell(r, "code"), NumberStyles.Float, CultureInfo.InvariantCulture),
                int.Parse(table.Cell(r, "diameter_mm"), CultureInfo.InvariantCulture))),
        ];
    }

    private static List<RimFactor> LoadFactors()
    {
        var table = CsvTable.Embedded("rim_factor.csv");
        return
        [
            .. table.Rows.Select(r => new RimFactor(
                table.Cell(r, "rim"),
                int.Parse(table.Cell(r, "aspect_from"), CultureInfo.InvariantCulture),
                int.Parse(table.Cell(r, "aspect_to"), CultureInfo.InvariantCulture),
                decimal.Parse(table.Cell(r, "factor"), CultureInfo.InvariantCulture))),
        ];
    }

    private sealed record RimCode(double Code, int Millimetres);

    private sealed record RimFactor(string Rim, int From, int To, decimal Factor);
}
