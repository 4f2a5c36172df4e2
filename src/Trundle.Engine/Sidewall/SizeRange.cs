using System.Globalization;
using Trundle.Measures;

namespace Trundle.Engine.Sidewall;

/// <summary>Rejects what fits a form but is no tyre: 999/55 R16.</summary>
internal static class SizeRange
{
    /// <summary>The first part out of its range, or null.</summary>
    public static Problem? Check(SizeMatch size, SpelledText spelled)
    {
        var width = Number(size, "w");
        var aspect = Number(size, "ar");
        var rim = Number(size, "rim");
        var diameter = Number(size, "od");
        var inches = size.Family is MarkingFamily.Inch or MarkingFamily.Flotation;
        if (width is { } w && inches && w is < 1.75 or > 24)
        {
            return Wrong("w", "width", "section width", "in inches", "1.75 to 24");
        }

        if (width is { } mm && !inches && mm is < 80 or > 455)
        {
            return Wrong("w", "width", "section width", "in millimetres", "80 to 455");
        }

        if (aspect is { } a)
        {
            if (a is < 20 or > 100)
            {
                return Wrong("ar", "aspect-ratio", "aspect ratio", "in per cent", "20 to 100");
            }

            if (a % 5 != 0 && a != 82 && !(a == 78 && size.Family == MarkingFamily.Alphanumeric))
            {
                return MarkingProblem.At("aspect-ratio-unknown", $"the aspect ratio {size.Part("ar")} is none that tyres are made in (20 to 100 in steps of 5, and 82)", spelled, size.PlaceOf("ar"));
            }
        }

        if (size.Family == MarkingFamily.ExtendedMobility)
        {
            if (rim is < 300 or > 600)
            {
                return Wrong("rim", "rim-diameter", "rim diameter", "in millimetres", "300 to 600");
            }

            if (diameter <= rim)
            {
                return MarkingProblem.At("diameter-not-above-rim", $"the overall diameter {size.Part("od")} is not above the rim diameter {size.Part("rim")}", spelled, size.PlaceOf("od"));
            }
        }
        else if (size.Family != MarkingFamily.MillimetreRim && rim is < 8 or > 30)
        {
            return Wrong("rim", "rim-diameter", "rim diameter", "as a code in inches", "8 to 30");
        }

        if (size.Family == MarkingFamily.Flotation)
        {
            if (diameter is < 18 or > 60)
            {
                return Wrong("od", "diameter", "overall diameter", "in inches", "18 to 60");
            }

            if (diameter <= rim)
            {
                return MarkingProblem.At("diameter-not-above-rim", $"the overall diameter {size.Part("od")} in is not above the rim diameter {size.Part("rim")} in", spelled, size.PlaceOf("od"));
            }
        }

        return null;

        Problem Wrong(string part, string code, string name, string unit, string range) =>
            MarkingProblem.At($"{code}-out-of-range", $"the {name} {size.Part(part)} ({unit}) is outside {range}", spelled, size.PlaceOf(part));
    }

    /// <summary>A part as a number, or null where the form has none.</summary>
    public static double? Number(SizeMatch size, string part) =>
        size.Part(part) is { Length: > 0 } text ? double.Parse(text, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture) : null;
}
