using System.Globalization;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Sidewall;

/// <summary>Makes the size designation of a form that fitted: class, construction, one spelling. Dimensions are added by <see cref="Dimensions"/>.</summary>
internal static class SizeReader
{
    public static SizeDesignation Read(SizeMatch size, ServiceScan scan)
    {
        var con = size.Part("con");
        var rim = SizeRange.Number(size, "rim");
        var millimetreRim = size.Family is MarkingFamily.MillimetreRim or MarkingFamily.ExtendedMobility;
        var width = SizeRange.Number(size, "w");
        var inches = size.Family is MarkingFamily.Inch or MarkingFamily.Flotation;
        var construction = ConstructionOf(size.Family, con, scan.Words);
        var toBeRead = (con == "-" || (size.Family == MarkingFamily.Alphanumeric && con.Length == 0)) && !scan.Words.Any(w => w is "DIAGONAL" or "BIAS-BELTED");

        // A radial metric size that marks no aspect ratio has a nominal one; a diagonal one had several.
        var nominalAspect = size.Family == MarkingFamily.MetricWithoutAspect && construction == Construction.Radial;
        var tyreClass = TyreClassRule.Of(size, scan);
        var prefix = Prefix(size, scan);
        var designation = new SizeDesignation
        {
            Family = size.Family,
            TyreClass = tyreClass,
            Prefix = prefix,
            SectionWidth = width is not { } w ? null : inches ? Length.FromInches(w) : Length.FromMillimetres(w),
            AspectRatioPercent = nominalAspect ? Figures.Of("sidewall.nominal-aspect").Value : SizeRange.Number(size, "ar"),
            AspectRatioMarked = !nominalAspect,
            Construction = construction,
            ConstructionToBeRead = toBeRead,
            RimDiameterInches = millimetreRim ? null : rim,
            RimDiameterMillimetres = millimetreRim ? rim : null,
            RunFlat = con is "RF" or "ZRF",
            AboveTwoHundredForty = con is "ZR" or "ZRF",
            EmbeddedSpeedSymbol = size.Part("ss") is { Length: > 0 } letter ? letter : null,
            Suffix = scan.Suffix,
            Letters = size.Part("letter") + size.Part("sys"),
            Text = Spelling(size, scan, prefix, tyreClass),
        };
        return designation;
    }

    private static Construction ConstructionOf(MarkingFamily family, string con, IReadOnlyList<string> words) => con switch
    {
        "R" or "ZR" or "RF" or "ZRF" => Construction.Radial,
        "B" => Construction.BiasBelted,
        "D" => Construction.Diagonal,
        _ when words.Contains("BIAS-BELTED") => Construction.BiasBelted,
        _ when family == MarkingFamily.Alphanumeric && words.Contains("RADIAL") => Construction.Radial,
        _ => Construction.Diagonal,
    };

    /// <summary>LT before a metric size and LT behind it name one size, and so on a flotation size, which has it behind.</summary>
    private static string Prefix(SizeMatch size, ServiceScan scan) => size.Part("pre") switch
    {
        "" when size.Family == MarkingFamily.Metric && scan.Words.Contains("LT") => "LT",
        "" when size.Family == MarkingFamily.Metric && scan.Words.Contains("ST") => "ST",
        "" when size.Family == MarkingFamily.Metric && scan.Words.Contains("HL") => "HL",
        var marked => marked,
    };

    /// <summary>One spelling of a size, whatever speed letter, blanks and case it was typed with: 205/55 R16.</summary>
    private static string Spelling(SizeMatch size, ServiceScan scan, string prefix, TyreClass tyreClass)
    {
        var con = size.Part("con") switch { "ZR" or "RF" or "ZRF" => "R", var marked => marked };
        var rim = SizeRange.Number(size, "rim")!.Value.ToString("0.#", CultureInfo.InvariantCulture);
        var join = con == "-" ? "-" : $" {con}";
        var aspect = SizeRange.Number(size, "ar")?.ToString("0", CultureInfo.InvariantCulture);
        var behind = string.Concat(Behind().Select(word => $" {word}"));
        var sys = size.Part("sys");
        return size.Family switch
        {
            MarkingFamily.Metric => $"{prefix}{size.Part("w")}/{aspect}{join}{rim}{behind}",
            MarkingFamily.MetricWithoutAspect => $"{prefix}{size.Part("w")}{join}{rim}{behind}",
            MarkingFamily.MillimetreRim => $"{size.Part("w")}/{aspect}{join}{rim}{behind}",
            MarkingFamily.ExtendedMobility => $"{size.Part("w")}-{size.Part("od")}{join}{rim} {sys}{behind}",
            MarkingFamily.Flotation => $"{Inches("od", "0.##")}x{Inches("w", "0.00")}{join}{rim}{behind}",
            MarkingFamily.Alphanumeric => $"{size.Part("letter")}{con}{aspect}-{rim}{behind}",
            MarkingFamily.Inch => $"{Inches("w", Whole("w") && !Whole("rim") ? "0" : "0.00")}{join}{rim}{behind}",
            MarkingFamily.MotorcycleLetter => $"{size.Part("letter")}{aspect}{join}{rim}{behind}",
        };

        bool Whole(string part) => SizeRange.Number(size, part) is { } n && n == Math.Floor(n);

        string Inches(string part, string format) => SizeRange.Number(size, part)!.Value.ToString(format, CultureInfo.InvariantCulture);

        IEnumerable<string> Behind()
        {
            if (size.Family == MarkingFamily.Flotation)
            {
                yield return "LT";
            }
            else
            {
                foreach (var word in new[] { "LT", "C", "CP", "ST", "MH", "M/C" })
                {
                    if (scan.Words.Contains(word) && word != prefix)
                    {
                        yield return word;
                    }
                }

                if (tyreClass == TyreClass.Motorcycle && size.Family is MarkingFamily.Metric && !scan.Words.Contains("M/C"))
                {
                    yield return "M/C";
                }
            }
        }
    }
}
