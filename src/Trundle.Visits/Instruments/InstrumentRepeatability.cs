using System.Text.Json.Nodes;
using Trundle.Measures;

namespace Trundle.Visits.Instruments;

/// <summary>How well a balancer's display repeats, as its last repeat-spin study found it.</summary>
/// <param name="On">The day of the study.</param>
/// <param name="Deviation">One standard deviation of a displayed component, of the plane that repeats worse.</param>
/// <param name="Spins">How many spins it is from.</param>
public sealed record InstrumentRepeatability(DateOnly On, Mass Deviation, int Spins)
{
    /// <summary>What an answer of <c>balance machine</c> tells of it; null where it holds no repeat-spin study, or one whose spins did not differ at all.</summary>
    public static InstrumentRepeatability? Of(DateOnly on, JsonObject? answer)
    {
        if (answer?["repeat"] is not JsonObject planes)
        {
            return null;
        }

        var worse = planes.Select(p => p.Value).OfType<JsonObject>().MaxBy(p => Number(p, "standardDeviationGrams"));
        return worse is not null && Number(worse, "standardDeviationGrams") is > 0 and var grams
            ? new InstrumentRepeatability(on, Mass.FromGrams(grams), ((int)Number(worse, "degreesOfFreedom") / 2) + 1)
            : null;
    }

    private static double Number(JsonObject plane, string key) => plane[key] is JsonValue value && value.TryGetValue<double>(out var number) ? number : plane[key] is JsonValue whole && whole.TryGetValue<int>(out var n) ? n : 0;
}
