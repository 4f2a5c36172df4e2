using System.Text.RegularExpressions;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Fitment;

/// <summary>MAX LOAD of a sidewall: the lowest of those that are for this use (single, or dual where words say so).</summary>
/// <param name="Load">The load, or null where none was read.</param>
/// <param name="ForPair">One of them is for a dual pair.</param>
public readonly partial record struct MouldedLoad(Mass? Load, bool ForPair)
{
    /// <summary>Reads it from the marks that were entered and from the marking.</summary>
    /// <param name="tyre">The tyre.</param>
    /// <param name="dual">It stands in a dual pair.</param>
    /// <source>49 CFR 571.139 S5.5: the greatest load stands on the sidewall (from memory)</source>
    public static MouldedLoad Of(FittedTyre tyre, bool dual)
    {
        ArgumentNullException.ThrowIfNull(tyre);
        Mass? least = null;
        var forPair = false;
        foreach (var words in SidewallMarks.All(tyre))
        {
            if (!words.Contains("MAX", StringComparison.Ordinal) || !words.Contains("LOAD", StringComparison.Ordinal) || (words.Contains("DUAL", StringComparison.Ordinal) && !words.Contains("SINGLE", StringComparison.Ordinal) && !dual))
            {
                continue;
            }

            foreach (Match m in LoadForm().Matches(words))
            {
                var read = Quantity.Read<Mass>($"{m.Groups["n"].Value} {m.Groups["u"].Value}");
                least = read.IsRead && (least is null || read.Value < least) ? read.Value : least;
                forPair |= read.IsRead && words.Contains("DUAL", StringComparison.Ordinal);
            }
        }

        return new MouldedLoad(least, forPair);
    }

    [GeneratedRegex(@"(?<n>[0-9]{2,5}(?:\.[0-9])?)\s?(?<u>KG|LBS|LB)\b", RegexOptions.CultureInvariant, 200)]
    private static partial Regex LoadForm();
}
