using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;

namespace Trundle.Engine.Balance.Spin;

/// <summary>Something that makes a spin less to be trusted.</summary>
/// <param name="Code">A stable word, one of <see cref="SpinFlags"/>.</param>
/// <param name="Point">Which transducer, from 1; null where it is of the whole spin.</param>
/// <param name="Measured">What was found.</param>
/// <param name="Limit">What it was held against, or null where there is none.</param>
/// <param name="Action">What to do.</param>
public sealed record SpinWarning(string Code, int? Point, Amount Measured, Limit? Limit, string Action)
{
    /// <summary>A stable word, one of <see cref="SpinFlags"/>.</summary>
    public string Code { get; } = SpinFlags.Known(Code);
}

/// <summary>What makes a spin less to be trusted, each against its figure.</summary>
internal static class SpinWarnings
{
    public static IEnumerable<SpinWarning> Of(SpinRecording recording, SpinResult result, IndexTrack track, double samplesPerTurn)
    {
        var fewTurns = Figures.Of("spin.fewTurns");
        if (result.Turns < fewTurns.Value)
        {
            yield return new SpinWarning("too-few-turns", null, Amount.Number(result.Turns, "turns", 1), fewTurns.Limit(0),
                "Record for longer: a few turns cannot show whether the reading is steady.");
        }

        if (track.Missing > 0)
        {
            yield return new SpinWarning("marks-missing", null, Amount.Number(track.Missing, "marks", 0), null,
                "Clean the mark, look at its sensor and cable; the turns were counted across the gap by the usual turn.");
        }

        if (track.Extra > 0)
        {
            yield return new SpinWarning("marks-extra", null, Amount.Number(track.Extra, "marks", 0), null,
                "Look for a second mark, a reflection or a bouncing contact; marks that followed within half a turn were left out.");
        }

        if (track.Uneven + result.UnevenLeftOut is var uneven and > 0)
        {
            yield return new SpinWarning("marks-uneven", null, Amount.Number(uneven, "turns", 0), Figures.Of("spin.unevenTurnPercent").Limit(0),
                "A turn is shorter or longer than those beside it: samples were lost or a mark is out of place. "
                + (result.UnevenLeftOut > 0
                    ? "The longest stretch without such a turn was used. Look at the recorder and the mark, and spin again."
                    : "No stretch without such a turn is long enough: do not trust this answer. Look at the recorder and the mark, and spin again."));
        }

        var drift = Figures.Of("spin.mostDriftPercent");
        if (result.DriftPercent is { } change && Math.Abs(change) > drift.Value && Math.Abs(track.Drift) > 3 * track.DriftError)
        {
            yield return new SpinWarning("speed-drift", null, Amount.Number(change, "%", 2), drift.Limit(0),
                "Record at a steady speed: the amount of unbalance goes with the square of the speed.");
        }

        var differs = Figures.Of("spin.mostSpeedDifferencePercent");
        var otherSpeed = false;
        if (result.SpeedBySignal is { } signal && 100 * Math.Abs((signal / result.Speed) - 1) is var percent && percent > differs.Value)
        {
            otherSpeed = true;
            yield return new SpinWarning("speed-differs", null, Amount.Number(percent, "%", 2), differs.Limit(1),
                OtherSpeed(signal / result.Speed));
        }

        if (recording.Gaps > 0)
        {
            yield return new SpinWarning("drop-out", null, Amount.Number(recording.Gaps, "gaps in time", 0), null,
                "Samples are missing; the longest unbroken stretch was used. Look at the recorder, and spin again.");
        }

        for (var p = 0; p < result.Points.Count; p++)
        {
            foreach (var warning in OfPoint(recording, result.Points[p], p, samplesPerTurn, otherSpeed || track.Uneven > 0))
            {
                yield return warning;
            }
        }
    }

    /// <summary>What to do where the signals turn at so many times the mark's speed.</summary>
    private static string OtherSpeed(double times)
    {
        const string trust = "Speed, readings and planes of this spin are wrong.";
        var near = Figures.Of("spin.mostSpeedDifferencePercent").Value / 100;
        return Math.Abs((times / 0.5) - 1) < near
            ? $"The signals turn at half the mark's speed: the mark comes twice a turn. Leave one mark, cover the other, and spin again. {trust}"
            : Math.Abs((times / 2) - 1) < near
                ? $"The signals turn at twice the mark's speed: the mark comes every second turn only, or next to nothing is left that comes once a turn. Look at the mark and its sensor, and spin again. {trust}"
                : "The signals turn at another speed than the index mark: look whether the mark sits on the part that carries the wheel, and spin again.";
    }

    private static IEnumerable<SpinWarning> OfPoint(SpinRecording recording, SpinPoint point, int p, double samplesPerTurn, bool marksTell)
    {
        var faults = SignalFaults.Of(recording.Transducers[p], recording.FullScale, samplesPerTurn);
        if (faults.Clipped > 0)
        {
            yield return new SpinWarning("clipped", p + 1, Amount.Number(faults.Clipped, "samples", 0), null,
                "The signal stands at the end of its scale: lower the gain and spin again; the amount shown is too small.");
        }

        if (faults.StandingStill > 0)
        {
            yield return new SpinWarning("drop-out", p + 1, Amount.Number(faults.StandingStill, "samples", 0), null,
                "The signal stood still for a stretch: look at plug and cable, and spin again.");
        }

        // A channel that stands at one value, or flickers between a few without anything that comes once a turn, is not one with too little gain.
        if (faults.Levels == 1 || (faults.Levels < SignalFaults.FewestLevelsOfASignal && point.Amplitude < 5 * point.AmplitudeStandardError))
        {
            yield return new SpinWarning("no-signal", p + 1, Amount.Number(faults.Levels, faults.Levels == 1 ? "level" : "levels", 0), null,
                $"There is no signal on the channel of transducer {p + 1}: look at its cable, plug, supply and column or channel, and spin again. Do not use its reading or the planes.");
        }
        else if (faults.Levels < SignalFaults.EnoughLevels.Value)
        {
            yield return new SpinWarning("coarse-steps", p + 1, Amount.Number(faults.Levels, "levels", 0),
                SignalFaults.EnoughLevels.Limit(0),
                "The signal uses few steps of its scale, so that flat tops cannot be told from clipping: raise the gain.");
        }

        // Uneven turns that had to be used, or a mark on another shaft, make every reading turn; a stretch that stands still makes it small. Those are told already.
        var ratio = Figures.Of("spin.wanderRatio");
        var least = Figures.Of("spin.leastWanderPercent");
        if (!marksTell && faults.StandingStill == 0 && point.WanderRatio > ratio.Value && point.Wander > least.Value / 100 * point.Amplitude)
        {
            yield return new SpinWarning("loose-object", p + 1,
                new Amount(point.WanderRatio, "", string.Create(CultureInfo.InvariantCulture, $"{point.WanderRatio:0.#} times what the noise explains")), ratio.Limit(0),
                "The reading wanders from turn to turn: look for a stone in the tread, mud or water in the tyre or rim, a loose weight, a wheel that is not clamped fast.");
        }
    }
}
