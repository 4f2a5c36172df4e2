using System.Globalization;
using Trundle.Engine.Reference;
using Trundle.Engine.Uniformity;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary>A runout in a technician's words.</summary>
internal static class RunoutWords
{
    /// <summary>A share in per cent; unevenly spaced places can make more of an order than it has.</summary>
    private static string Share(double share) => share > 1 ? "over 100 %" : $"{Quantity.Number(100 * share, 0)} %";

    /// <summary>What the places cannot tell, and a reading that does not belong; of earlier mountings too, since the parts rest on them as much.</summary>
    public static IEnumerable<(string Code, int? Order, string Message)> Warnings(RunoutAnswer answer)
    {
        foreach (var warning in OfOne(answer.Found))
        {
            yield return warning;
        }

        for (var m = 0; m < answer.Mountings.Count - 1; m++)
        {
            foreach (var (code, order, message) in OfOne(answer.Mountings[m]).Where(w => w.Code != "aliasing-higher"))
            {
                yield return (code, order, $"Mounting {Quantity.Number(m + 1, 0)}: {message}");
            }
        }

        if (answer.PartsInDoubt)
        {
            yield return ("parts-in-doubt", null, "Tyre and wheel were parted from places that take a higher order for the first harmonic or stand crowded: neither part nor the turn can be relied on. Measure every mounting at eight places or more, evenly around, before the tyre is turned.");
        }
    }

    private static IEnumerable<(string Code, int? Order, string Message)> OfOne(RunoutOutcome.Found found)
    {
        var count = found.Readings.Count;
        foreach (var leak in found.TakenForFirst)
        {
            yield return found.EvenlySpaced
                ? ("aliasing", leak.Order, string.Create(CultureInfo.InvariantCulture, $"{count} places around cannot tell order {leak.Order} from order 1: what is called first harmonic may be order {leak.Order} in part. Measure at eight places or more."))
                : ("leakage", leak.Order, string.Create(CultureInfo.InvariantCulture, $"With these places {Share(leak.Share)} of order {leak.Order} shows up as first harmonic. Fill the gaps, or fit more orders."));
        }

        if (found.EvenlySpaced)
        {
            foreach (var h in found.Harmonics.Where(h => h.Order > 1 && h.MayBeOrder <= (int)Figures.Of("uniformity.highest-order").Value && h.MayBeOrder != h.Order))
            {
                yield return ("aliasing-higher", h.Order, string.Create(CultureInfo.InvariantCulture, $"{count} places around cannot tell order {h.Order} from order {h.MayBeOrder}."));
            }
        }

        if (found.IsCrowded)
        {
            yield return ("places-crowded", 1, $"The places stand crowded (greatest gap {Quantity.Number(found.GreatestGap.Degrees, 0)}°): an error of a reading counts {Quantity.Number(found.Crowding, 1)} times as much as with as many places evenly around.");
        }

        if (found.Suspect is { } s)
        {
            yield return ("suspect-reading", null, $"The reading {s.Reading.Value.Text("mm", 2)} at {s.Reading.Place} does not belong to the others, which say {s.Expected.Text("mm", 2)} there: look for rust, a weld bead, a splice, a tread block or a slip of the dial, and read again. Without it the first harmonic is {Vector(s.FirstHarmonicWithout)}.");
        }
    }

    /// <summary>Everything, line by line.</summary>
    public static IEnumerable<string> Lines(RunoutAnswer answer)
    {
        var found = answer.Found;
        var name = $"{Capital(RunoutLimits.Word(answer.Trace.Direction))} runout of the {RunoutLimits.Word(answer.Given.Part)}";
        yield return $"{name}: {found.PeakToPeak.Text("mm", 2)} peak-to-peak over {found.Readings.Count.ToString(CultureInfo.InvariantCulture)} places{(found.PeakToPeakAround > found.PeakToPeak ? $"; the harmonics fitted to them reach {found.PeakToPeakAround.Text("mm", 2)} around" : "")}. {Verdict(answer)}";
        yield return $"{"order",-6} {"amplitude",10} {"±",8}   high points";
        foreach (var h in found.Harmonics)
        {
            var points = string.Join(", ", Enumerable.Range(0, h.Order).Select(i => WheelAngle.FromDegrees(h.HighPoint.Degrees + (i * 360.0 / h.Order)).ToString()));
            yield return $"{h.Order,-6} {h.Amplitude.Text("mm", 3),10} {(h.StandardError is { } e ? Quantity.Number(e.Millimetres, 3) : "-"),8}   {points}";
        }

        yield return answer.Trace.Direction == RunoutDirection.Radial
            ? $"Eccentricity {found.First.Amount.Text("mm", 3)}: by itself it would show {(2 * found.First.Amount).Text("mm", 3)} on the dial, high at {found.First.HighPoint} (at twelve when the valve stands at {ClockFace.ValveAt(found.First.HighPoint)}). Without it {found.PeakToPeakAfterFirst.Text("mm", 3)} peak-to-peak would be left."
            : $"First harmonic, a wobble: {(2 * found.First.Amount).Text("mm", 3)} peak-to-peak, furthest out at {found.First.HighPoint}. Without it {found.PeakToPeakAfterFirst.Text("mm", 3)} peak-to-peak would be left.";
        foreach (var (_, _, message) in Warnings(answer))
        {
            yield return $"Warning: {message}";
        }

        if (answer.Parts is not { } parts || answer.Best is not { } best)
        {
            yield break;
        }

        yield return $"Parted by {answer.Trace.Mountings.Count.ToString(CultureInfo.InvariantCulture)} mountings: tyre {Vector(parts.Tyre)} as first mounted, wheel {Vector(parts.Wheel)}{(parts.StandardError is { } error ? $", each ± {error.Text("mm", 3)}" : "")}.";
        yield return $"First harmonic now {found.First.Amount.Text("mm", 3)}; at the best turn {best.After.Text("mm", 3)}.";
        foreach (var step in MatchWords.Turn(best.Turn, answer.Given.Tyre, answer.Given.Wheel))
        {
            yield return $"    {step}";
        }
    }

    private static string Verdict(RunoutAnswer answer) => answer.Verdict switch
    {
        { Ruling: null } => "No limit is known.",
        { WithinLimit: true, Ruling: { } r } => $"Within {r.Amount.Text} [{r.Source.ForPeople}].",
        { WithinLimit: false, Ruling: { } r } => $"NOT within {r.Amount.Text} [{r.Source.ForPeople}].",
        { Ruling: { } r } when !answer.Found.TellsBetween => $"The places cannot tell whether it is within {r.Amount.Text} [{r.Source.ForPeople}].",
        { Ruling: { } r } => $"Above the lowest published limit, {r.Amount.Text} [{r.Source.ForPeople}]; not above all of them.",
    };

    private static string Vector(HarmonicVector<Length> v) => $"{v.Amount.Text("mm", 3)} at {v.HighPoint}";

    private static string Capital(string word) => string.Concat(word[..1].ToUpperInvariant(), word.AsSpan(1));
}
