using System.Globalization;
using System.Text.RegularExpressions;
using Trundle.Measures;

namespace Trundle.Engine.Sidewall;

/// <summary>Says what of a marking could not be read, and at which character of what was typed.</summary>
internal static partial class MarkingProblem
{
    private const string Example = "A marking reads like 205/55 R16 91V, LT245/75 R16 120/116S, 31x10.50 R15 LT, 7.50 R16 or H78-15.";

    /// <summary>A problem at a character; <paramref name="what"/> is a clause in lower case without its full stop.</summary>
    public static Problem At(string code, string what, SpelledText spelled, int index) =>
        new("", code, string.Create(CultureInfo.InvariantCulture, $"At character {spelled.PlaceOf(index)} of the marking, {what}."));

    /// <summary>A dash for the slash, as in 205-55-16 or 205-55 R16: a size without aspect ratio ends at its rim, and here a construction and a rim still follow.</summary>
    public static Problem? DashForSlash(SizeMatch size, SpelledText spelled) =>
        size.Family == MarkingFamily.MetricWithoutAspect && size.Part("con") == "-" && RimBehind().Match(spelled.Text, size.End) is { Success: true } rim
            ? At("slash-expected", $"'-' stands where '/' is expected between width and aspect ratio; write {size.Part("pre")}{size.Part("w")}/{size.Part("rim")}{rim.Value.TrimEnd()}", spelled, size.PlaceOf("con"))
            : null;

    [GeneratedRegex(@"\G\s?(?:ZRF|ZR|RF|R|D|B|-)\s?[0-9]{2}(?:\.5)?(?![0-9.])", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex RimBehind();

    /// <summary>Where no form fits: follows the commonest form as far as it goes and says what should have come next.</summary>
    public static Problem NoForm(SpelledText spelled)
    {
        var text = spelled.Text;
        if (text.StartsWith("DOT", StringComparison.Ordinal))
        {
            return new Problem("", "marking-is-tin", "'DOT …' is a tyre identification number, not a size; give it as the TIN.");
        }

        var m = LongestStart().Match(text);
        var width = m.Groups["w"];
        if (!width.Success)
        {
            return Unknown(text.Length == 0 ? "nothing stands" : $"'{Shown(text, m.Length)}' is not a section width", m.Length);
        }

        var end = m.Length;
        if (!m.Groups["sep"].Success && !m.Groups["con"].Success)
        {
            return Unknown($"after the width {width.Value} comes {Next(text, end)} where '/' and the aspect ratio, or the construction R, D, B or '-', should stand", end);
        }

        if (m.Groups["sep"].Success && !m.Groups["ar"].Success)
        {
            return Unknown($"the aspect ratio is missing: {Next(text, end)} stands after '{m.Groups["sep"].Value.Trim()}'", end);
        }

        if (!m.Groups["con"].Success)
        {
            return Unknown($"after {text[..end].TrimEnd()} comes {Next(text, end)} where the construction R, ZR, RF, D, B or '-' should stand", end);
        }

        return m.Groups["rim"].Success
            ? Unknown($"'{m.Groups["rim"].Value}' is not a rim diameter that goes with {text[..m.Groups["rim"].Index].TrimEnd()}; it is two digits such as 16 or 22.5, or a millimetre rim such as 390", m.Groups["rim"].Index)
            : Unknown($"the rim diameter is missing: {Next(text, end)} stands after '{text[..end].TrimEnd()}'", end);

        Problem Unknown(string what, int at) => At("marking-unknown", what, spelled, at) is var p ? p with { Message = $"{p.Message} {Example}" } : p;
    }

    private static string Next(string text, int at) => at >= text.Length ? "nothing" : $"'{Shown(text, at)}'";

    private static string Shown(string text, int at) => NumberText.Shown(text.AsSpan(Math.Min(at, text.Length), Math.Min(12, text.Length - Math.Min(at, text.Length))));

    [GeneratedRegex(@"^(?:HL|LT|ST|P|T|S|M[HJLMNPRTUV]|[A-N])?\s?(?:(?<w>[0-9]{1,3}(?:\.[0-9]{1,3})?)\s?(?:(?<sep>[/X])\s?(?<ar>[0-9]{1,3}(?:\.[0-9]{1,2})?\s?)?)?(?:(?<con>[SHVTQ]?\s?(?:ZRF|ZR|RF|R|D|B|-))\s?(?<rim>[0-9.]+)?)?)?", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex LongestStart();
}
