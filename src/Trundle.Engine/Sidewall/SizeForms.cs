using System.Text.RegularExpressions;

namespace Trundle.Engine.Sidewall;

/// <summary>A size that one of the forms fits: the family, its parts as spelled, and where the rest begins.</summary>
internal sealed record SizeMatch(MarkingFamily Family, Match Parts)
{
    public string Part(string name) => Parts.Groups[name].Value;

    public int PlaceOf(string name) => Parts.Groups[name].Index;

    public int End => Parts.Index + Parts.Length;
}

/// <summary>
/// The forms of size designations, tried in this order at the start of a text in one spelling. A form ends with the rim, which no digit follows;
/// what stands behind it is read by <see cref="ServiceScan"/>. Each form is free of nested repetition, so that
/// it ends at once; its time limit is generous, because a busy machine may hold a thread up for longer than the match takes.
/// </summary>
internal static partial class SizeForms
{
    private const int MostMilliseconds = 5000;
    private const RegexOptions Options = RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture;

    private static readonly (MarkingFamily Family, Regex Form)[] InOrder =
    [
        (MarkingFamily.Metric, Metric()),
        (MarkingFamily.MetricWithoutAspect, MetricWithoutAspect()),
        (MarkingFamily.MillimetreRim, MillimetreRim()),
        (MarkingFamily.ExtendedMobility, ExtendedMobility()),
        (MarkingFamily.Flotation, Flotation()),
        (MarkingFamily.Alphanumeric, Alphanumeric()),
        (MarkingFamily.Inch, Inch()),
        (MarkingFamily.MotorcycleLetter, MotorcycleLetter()),
    ];

    /// <summary>The first form that fits, or null.</summary>
    public static SizeMatch? Find(string text)
    {
        foreach (var (family, form) in InOrder)
        {
            var match = form.Match(text);
            if (match.Success)
            {
                return new SizeMatch(family, match);
            }
        }

        return null;
    }

    [GeneratedRegex(@"^(?<pre>HL|LT|ST|P|T|S)?\s?(?<w>[0-9]{2,3})\s?/\s?(?<ar>[0-9]{2,3})\s?(?<ss>[SHVTQ])?\s?(?<con>ZRF|ZR|RF|R|D|B|-)\s?(?<rim>[0-9]{2}(\.5)?)(?![0-9.])", Options, MostMilliseconds)]
    private static partial Regex Metric();

    [GeneratedRegex(@"^(?<pre>P|LT)?\s?(?<w>[0-9]{3})\s?(?<ss>[SHVTQ])?\s?(?<con>ZR|R|D|B|-)\s?(?<rim>[0-9]{2})(?![0-9.])", Options, MostMilliseconds)]
    private static partial Regex MetricWithoutAspect();

    [GeneratedRegex(@"^(?<w>[0-9]{3})\s?/\s?(?<ar>[0-9]{2})\s?(?<ss>[SHVT])?\s?(?<con>ZR|R)\s?(?<rim>315|340|365|390|415|440)(\s?(?<sys>TRX|TD))?(?![0-9.])", Options, MostMilliseconds)]
    private static partial Regex MillimetreRim();

    [GeneratedRegex(@"^(?<w>[0-9]{3})\s?-\s?(?<od>[0-9]{3})\s?(?<con>R)\s?(?<rim>[0-9]{3})\s?(?<sys>AC|A|U)(?![A-Z0-9])", Options, MostMilliseconds)]
    private static partial Regex ExtendedMobility();

    [GeneratedRegex(@"^(?<pre>LT)?\s?(?<od>[0-9]{2}(\.[0-9]{1,2})?)\s?X\s?(?<w>[0-9]{1,2}(\.[0-9]{1,2})?)\s?(?<con>R|D|B|-)\s?(?<rim>[0-9]{2}(\.5)?)(?![0-9.])", Options, MostMilliseconds)]
    private static partial Regex Flotation();

    [GeneratedRegex(@"^(?<letter>[A-N])\s?(?<con>R)?\s?(?<ar>[0-9]{2})\s?[-X]?\s?(?<rim>1[2-6](\.5)?)(?![0-9.])", Options, MostMilliseconds)]
    private static partial Regex Alphanumeric();

    [GeneratedRegex(@"^(?<w>[0-9]{1,2}(\.[0-9]{1,2})?)\s?(?<con>ZR|R|D|B|-)\s?(?<rim>[0-9]{1,2}(\.5)?)(?![0-9.])", Options, MostMilliseconds)]
    private static partial Regex Inch();

    [GeneratedRegex(@"^(?<letter>M[HJLMNPRTUV])\s?(?<ar>[0-9]{2})\s?(?<con>R|B|-)\s?(?<rim>[0-9]{2})(?![0-9.])", Options, MostMilliseconds)]
    private static partial Regex MotorcycleLetter();
}
