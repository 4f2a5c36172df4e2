using System.Globalization;
using System.Text.RegularExpressions;
using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>A thread: metric (M12x1.5) or unified (1/2-20).</summary>
/// <param name="Text">In one spelling.</param>
/// <param name="Diameter">Nominal diameter.</param>
/// <param name="Pitch">Pitch.</param>
/// <param name="Metric">Metric, else unified.</param>
public sealed partial record ThreadDesignation(string Text, Length Diameter, Length Pitch, bool Metric)
{
    /// <summary>Reads <c>M12x1.5</c>, <c>M14 × 1,5</c>, <c>1/2-20</c>, <c>7/16-20 UNF</c>. A metric thread needs its pitch: wheel fixings of one diameter come in several.</summary>
    /// <source>ISO 965-1 for the metric form, ASME B1.1 for the unified one (from memory)</source>
    public static Reading<ThreadDesignation> Read(string? text)
    {
        var typed = (text ?? "").Trim();
        if (typed.Length is > 0 and <= 40)
        {
            var metric = MetricForm().Match(typed);
            if (metric.Success)
            {
                var d = Number(metric.Groups["d"].Value);
                var p = Number(metric.Groups["p"].Value);
                if (d is >= 3 and <= 64 && p is >= 0.2 and <= 6)
                {
                    return Reading<ThreadDesignation>.Of(new ThreadDesignation(
                        string.Create(CultureInfo.InvariantCulture, $"M{d}x{p}"), Length.FromMillimetres(d), Length.FromMillimetres(p), true));
                }
            }

            var unified = UnifiedForm().Match(typed);
            if (unified.Success)
            {
                var above = Number(unified.Groups["a"].Value);
                var below = unified.Groups["b"].Success ? Number(unified.Groups["b"].Value) : 1;
                var perInch = Number(unified.Groups["n"].Value);
                if (below > 0 && above / below is >= 0.125 and <= 2.5 && perInch is >= 4 and <= 80)
                {
                    var size = unified.Groups["b"].Success ? $"{unified.Groups["a"].Value}/{unified.Groups["b"].Value}" : unified.Groups["a"].Value;
                    return Reading<ThreadDesignation>.Of(new ThreadDesignation(
                        $"{size}-{unified.Groups["n"].Value}", Length.FromInches(above / below), Length.FromInches(1 / perInch), false));
                }
            }
        }

        return Reading<ThreadDesignation>.Failed("thread-unknown", $"'{NumberText.Shown(typed)}' is not a thread with its pitch; write M12x1.5 or 1/2-20.");
    }

    private static double Number(string text) => double.Parse(text.Replace(',', '.'), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"^[Mm]\s?(?<d>[0-9]{1,2}(?:[.,][0-9]{1,2})?)\s?[xX×*]\s?(?<p>[0-9](?:[.,][0-9]{1,2})?)$", RegexOptions.CultureInvariant, 5000)]
    private static partial Regex MetricForm();

    [GeneratedRegex("^(?<a>[0-9]{1,2})(?:/(?<b>[0-9]{1,2}))?\\s?(?:in|\")?\\s?[-x]\\s?(?<n>[0-9]{1,2})\\s?(?:UNF|UNC|UNS|UN)?$", RegexOptions.CultureInvariant | RegexOptions.IgnoreCase, 5000)]
    private static partial Regex UnifiedForm();
}
