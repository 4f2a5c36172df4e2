using System.Globalization;
using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Spin;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Visits.Files.Spin;

/// <summary>What was found in one recording of a trial run.</summary>
/// <param name="Run">The run from 1, the initial one first.</param>
/// <param name="Point">The measuring point from 1.</param>
/// <param name="Signal">Which of the recording's signals was taken.</param>
/// <param name="Found">Its once-per-turn amplitude.</param>
/// <param name="Gaps">Places where samples were lost.</param>
internal sealed record RecordedReading(int Run, int Point, string Signal, OrderAmplitude Found, int Gaps);

/// <summary>Reads trial runs whose vibration is a recording: the once-per-turn amplitude about the speed that the file tells.</summary>
/// <param name="root">The file, which tells the speed once for all runs.</param>
internal sealed class TrialRecordings(FileObject root)
{
    private readonly Dictionary<int, string> _signals = [];
    private RotationalSpeed? _speed;
    private bool _asked;

    /// <summary>What was found, in the order of the runs.</summary>
    public List<RecordedReading> Found { get; } = [];

    /// <summary>Reads the file's speed where it is told; call it once, after the runs.</summary>
    public void Done()
    {
        if (!_asked && (root.Has("speed") || root.Has("rollingCircumference")))
        {
            Speed();
        }
    }

    /// <summary>The reading of a recording under <c>recording</c>; null where a problem was added.</summary>
    public VibrationReading? Read(FileObject reading, int run, int point)
    {
        if (reading.Object("recording") is not { } o)
        {
            return null;
        }

        var recording = MeterRecording.Read(o);
        o.Done();
        if (recording is null || Speed() is not { } speed)
        {
            return null;
        }

        // The signal that shakes most in the initial run is taken in all of them, since two directions cannot be compared.
        var signals = _signals.TryGetValue(point, out var name) && recording.Signals.Count > 1 ? recording.Signals.Where(s => s.Name == name) : recording.Signals;
        var orders = signals.Select(s => (s.Name, Order: OrderAmplitude.Of(s.Samples, recording.SampleRate, speed))).Where(s => s.Order is not null).ToList();
        if (orders.Count == 0)
        {
            o.Problems.Add(new Problem(o.Path, "order-not-found", string.Create(CultureInfo.InvariantCulture,
                $"No once-per-turn vibration is found within {OrderAmplitude.SearchPercent.Value} % of {Quantity.Text(speed, "r/min", 0)}. There should be some seconds at one steady speed, sampled at least {Math.Ceiling(5.5 * speed.Hertz)} times a second.")));
            return null;
        }

        var best = orders.MaxBy(s => s.Order!.Amplitude);
        if (_signals.TryGetValue(point, out var first) && first != best.Name)
        {
            o.Problems.Add(new Problem(o.Path, "signals-differ", $"The initial run's reading here is '{NumberText.Shown(first)}' and this one is '{NumberText.Shown(best.Name)}'; all runs are compared in one direction. Name it under 'signal'."));
            return null;
        }

        _signals[point] = best.Name;
        Found.Add(new RecordedReading(run, point, best.Name, best.Order!, recording.Gaps));
        return new VibrationReading(best.Order!.Amplitude, null) { ReadTo = best.Order.AmplitudeStandardError };
    }

    /// <summary>What makes the recordings doubtful, for people.</summary>
    public static IEnumerable<(string Code, string Message)> Warnings(IReadOnlyList<RecordedReading> found)
    {
        var drift = Figures.Of("spin.mostDriftPercent").Value;
        var weak = Figures.Of("spin.orderWeakRatio").Value;
        foreach (var r in found)
        {
            var place = string.Create(CultureInfo.InvariantCulture, $"Run {r.Run}, point {r.Point}");
            if (Math.Abs(r.Found.DriftPercent ?? 0) > drift)
            {
                yield return ("speed-drift", $"{place}: the speed changed by {Quantity.Number(Math.Abs(r.Found.DriftPercent!.Value), 1)} % while it was recorded (limit {Quantity.Number(drift, 0)} %), which lessens the amplitude read. Hold one speed and record again.");
            }

            if (r.Found.Amplitude < weak * r.Found.AmplitudeStandardError)
            {
                yield return ("order-weak", $"{place}: the once-per-turn vibration hardly stands out of the rest. Record for longer, on a smooth road or with the wheels free on stands as the vehicle's maker allows.");
            }

            if (r.Gaps > 0)
            {
                yield return ("samples-lost", string.Create(CultureInfo.InvariantCulture, $"{place}: samples are missing in {r.Gaps} {(r.Gaps == 1 ? "place" : "places")}; only the longest stretch without a gap was used."));
            }
        }

        if (found.Count > 1)
        {
            var (slowest, fastest) = (found.Min(r => r.Found.Speed), found.Max(r => r.Found.Speed));
            var spread = 100 * ((fastest / slowest) - 1);
            if (spread > drift)
            {
                yield return ("speeds-differ", $"The runs were made at {Quantity.Number(slowest.RevolutionsPerMinute, 0)} to {Quantity.Number(fastest.RevolutionsPerMinute, 0)} r/min, {Quantity.Number(spread, 1)} % apart (limit {Quantity.Number(drift, 0)} %): vibration grows with speed, so they cannot be compared. Repeat those that stray.");
            }
        }
    }

    private RotationalSpeed? Speed()
    {
        if (!_asked)
        {
            _asked = true;
            _speed = BalanceSpeedReader.Read(root, "rollingCircumference");
        }

        return _speed;
    }
}
