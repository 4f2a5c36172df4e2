using System.Globalization;
using System.Text.RegularExpressions;
using Trundle.Measures;

namespace Trundle.Engine.Vehicles;

/// <summary>Reads what is stamped on a wheel: rim width and diameter, bolt circle.</summary>
public static partial class StampReader
{
    private static readonly double[] MillimetreRims = [315, 340, 365, 390, 415, 440];

    /// <summary>Reads a rim stamp such as <c>6J x 15</c>, <c>6 1/2 J x 16 H2</c>, <c>8.25x22.5</c>, <c>15 x 6 JJ</c>, <c>160 x 390</c>, <c>165 TR 390</c>.</summary>
    /// <returns>The stamp, or one problem.</returns>
    /// <source>ISO 4000-2 rim designation (from memory): width code, flange letter, 'x' for a one-piece rim or '-', diameter code</source>
    public static Reading<RimStamp> Rim(string? text)
    {
        var typed = (text ?? "").Trim().ToUpperInvariant().Replace('×', 'X');
        if (typed.Length <= 40)
        {
            var metric = MillimetreForm().Match(typed);
            if (metric.Success && MillimetreRims.Contains(Number(metric.Groups["d"].Value)))
            {
                var width = metric.Groups["w"];
                return !width.Success
                    ? Reading<RimStamp>.Failed("rim-width-missing", $"'{NumberText.Shown(text ?? "")}' tells the rim's diameter in millimetres but not its width; write both, for example 165 {metric.Groups["f"].Value} {metric.Groups["d"].Value}.")
                    : Number(width.Value) is >= 80 and <= 300
                        ? Reading<RimStamp>.Of(new RimStamp(Length.FromMillimetres(Number(width.Value)), metric.Groups["f"].Value, null, Number(metric.Groups["d"].Value)))
                        : Unknown(text);
            }

            var m = RimForm().Match(typed);
            if (m.Success)
            {
                var first = Number(m.Groups["a"].Value);
                var second = Number(m.Groups["b"].Value);
                var flange = m.Groups["fa"].Value + m.Groups["fb"].Value;
                if (MillimetreRims.Contains(second) && first is >= 80 and <= 300)
                {
                    // On a millimetre rim two letters name the flange, so "165 TX 390" is a slip of the pen and not a T flange with an x behind it.
                    return flange is "" or "TR" or "TD"
                        ? Reading<RimStamp>.Of(new RimStamp(Length.FromMillimetres(first), flange, null, second))
                        : Reading<RimStamp>.Failed("rim-flange-unknown", $"'{NumberText.Shown(text ?? "")}' is a millimetre rim, whose letters are TR or TD; look at the wheel again and write for example 165 TR 390, or 165 x 390 where there are none.");
                }

                // The trade writes both orders; a diameter is never below 8 and on road wheels never below the width.
                var (width, diameter) = first <= second ? (first, second) : (second, first);
                if (width is >= 2 and <= 20 && diameter is >= 8 and <= 30)
                {
                    // First <= second is the standard's own order; "15-6JJ" is only somebody's way to write an x.
                    var divided = (first <= second && m.Groups["x"].Value == "-") || typed.Contains("SDC", StringComparison.Ordinal) || typed.EndsWith("FB", StringComparison.Ordinal);
                    return Reading<RimStamp>.Of(new RimStamp(Length.FromInches(width), flange, diameter, null) { MayBeOfSeveralPieces = divided });
                }
            }
        }

        return Unknown(text);
    }

    private static Reading<RimStamp> Unknown(string? text) =>
        Reading<RimStamp>.Failed("rim-unknown", $"'{NumberText.Shown(text ?? "")}' is not a rim stamp; write width, flange letter and diameter, for example 6J x 15 or 6 1/2 J x 16.");

    /// <summary>Reads a bolt circle such as <c>5 x 112 mm</c>, <c>5x4.5 in</c>, <c>5x114.3</c>, <c>5x4 1/2"</c>. A bare number is inches up to 20, else millimetres.</summary>
    /// <source>common practice</source>
    public static Reading<BoltCircle> Circle(string? text)
    {
        var typed = (text ?? "").Trim().ToLowerInvariant().Replace('×', 'x');
        var m = typed.Length <= 40 ? CircleForm().Match(typed) : Match.Empty;
        if (m.Success)
        {
            var count = int.Parse(m.Groups["n"].Value, CultureInfo.InvariantCulture);
            var rest = m.Groups["d"].Value.Trim();
            var bare = NumberText.Read(rest);
            var diameter = bare.IsRead
                ? Reading<Length>.Of(bare.Value <= 20 ? Length.FromInches(bare.Value) : Length.FromMillimetres(bare.Value))
                : Quantity.Read<Length>(rest);
            if (!diameter.IsRead && bare.Problem!.Code is "comma-ambiguous" or "thousands-mark")
            {
                return Reading<BoltCircle>.Failed(bare.Problem!);
            }

            if (diameter.IsRead && count is >= 3 and <= 12 && diameter.Value.Millimetres is >= 60 and <= 500)
            {
                return Reading<BoltCircle>.Of(new BoltCircle(count, diameter.Value));
            }
        }

        return Reading<BoltCircle>.Failed("bolt-circle-unknown", $"'{NumberText.Shown(text ?? "")}' is not a bolt circle; write number and diameter, for example 5 x 112 mm.");
    }

    private static double Number(string text) => NumberText.Read(text) is { IsRead: true } read ? read.Value : double.NaN;

    [GeneratedRegex(@"^(?<a>[0-9]{1,3}(?:[.,][0-9]{1,2}|\s[0-9]/[0-9]|\s?-\s?[0-9]/[0-9])?)\s?(?<fa>[A-Z]{0,3})\s?(?<x>[X-])\s?(?<b>[0-9]{1,3}(?:[.,][0-9]{1,2}|\s[0-9]/[0-9])?)\s?(?<fb>(?:JJ|JK|J|K|B|C|D)?)(?:\s?[A-Z0-9+*]{1,6}){0,3}$", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex RimForm();

    [GeneratedRegex(@"^(?:(?<w>[0-9]{2,3})\s?X?\s?)?(?<f>T[RD])\s?(?<d>[0-9]{3})(?:\s?[A-Z0-9+*]{1,6}){0,3}$", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex MillimetreForm();

    [GeneratedRegex(@"^(?<n>[0-9]{1,2})\s?[x/-]\s?(?<d>[0-9].*)$", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex CircleForm();
}
