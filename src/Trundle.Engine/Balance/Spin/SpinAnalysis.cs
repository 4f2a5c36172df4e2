using System.Numerics;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Spin;

/// <summary>What one transducer says once a turn.</summary>
/// <param name="Amplitude">In the recording's unit.</param>
/// <param name="Phase">In the recording's sense of phases, 0 ≤ phase &lt; 360°.</param>
/// <param name="AmplitudeStandardError">One standard error; widened where the readings wander from turn to turn.</param>
/// <param name="PhaseStandardError">One standard error, that of the index mark with it; half a turn where the amplitude is nothing.</param>
/// <param name="Offset">The mean.</param>
/// <param name="Noise">Standard deviation of what the fit leaves of each sample.</param>
/// <param name="HigherHarmonics">Amplitudes of the harmonics above the first, from the second.</param>
/// <param name="Wander">How far one turn's reading lies from the mean of all, as root mean square; null where there are too few whole turns to say.</param>
/// <param name="WanderRatio">The square of that over what the noise within the turns explains; about 1 where nothing moves.</param>
public sealed record SpinPoint(
    double Amplitude, Angle Phase, double AmplitudeStandardError, Angle PhaseStandardError, double Offset, double Noise,
    IReadOnlyList<double> HigherHarmonics, double? Wander, double? WanderRatio)
{
    /// <summary>One standard error of the phase without that of the index mark, which is common to all transducers of a spin.</summary>
    public required Angle OwnPhaseStandardError { get; init; }

    /// <summary>One standard error of a component, along the reading or across it: the greater of the two. The index mark's error is left out.</summary>
    public double OwnStandardError => Math.Max(AmplitudeStandardError, Amplitude * OwnPhaseStandardError.Radians);

    /// <summary>As a phasor that leads from the index mark.</summary>
    internal Complex Lead(SpinSense sense) => Complex.FromPolarCoordinates(Amplitude, sense.OfLead * Phase.Radians);
}

/// <summary>What one spin says.</summary>
public sealed record SpinResult
{
    /// <summary>Mean speed, by the index marks.</summary>
    public required RotationalSpeed Speed { get; init; }

    /// <summary>One standard error of it.</summary>
    public required RotationalSpeed SpeedStandardError { get; init; }

    /// <summary>By how much the speed changed from the first sample used to the last, in per cent of itself; null where uneven turns are among them, which would count as a change.</summary>
    public required double? DriftPercent { get; init; }

    /// <summary>Samples used: fewer than the recording's where turns are uneven and a stretch without such was long enough.</summary>
    public int Samples { get; init; }

    /// <summary>Uneven turns that were left out, with whatever lies beyond them; 0 where none is uneven, or where no stretch without them is long enough.</summary>
    public int UnevenLeftOut { get; init; }

    /// <summary>The speed that the stronger signal itself tells, or null where no signal stands clear of its noise.</summary>
    public required RotationalSpeed? SpeedBySignal { get; init; }

    /// <summary>Turns that the recording holds, parts of turns with them.</summary>
    public required double Turns { get; init; }

    /// <summary>Index marks used.</summary>
    public required int Marks { get; init; }

    /// <summary>One standard error of the angle that the index marks tell: it turns the readings of all transducers alike.</summary>
    public required Angle MarkStandardError { get; init; }

    /// <summary>One reading a transducer.</summary>
    public required IReadOnlyList<SpinPoint> Points { get; init; }

    /// <summary>Harmonics fitted.</summary>
    public required int Harmonics { get; init; }

    /// <summary>What makes it less to be trusted.</summary>
    public required IReadOnlyList<SpinWarning> Warnings { get; init; }
}

/// <summary>From the samples of a spin to the first harmonic of each transducer.</summary>
public static class SpinAnalysis
{
    /// <summary>The harmonics that are fitted where nobody says how many.</summary>
    public const int UsualHarmonics = 5;

    /// <summary>
    /// Finds the speed by the index marks, then amplitude and phase of the first harmonic by least squares with the harmonics above it over all samples,
    /// and looks for what would falsify them. Where turns are uneven, the longest stretch without such is all that is looked at, if it holds turns enough.
    /// </summary>
    /// <param name="recording">The recording.</param>
    /// <param name="harmonics">How many harmonics are fitted, 1 to 10; fewer where a turn holds too few samples for them.</param>
    /// <returns>The result, or null where there are fewer than two index marks, so that no speed can be told, or fewer than eight samples a turn.</returns>
    /// <source>IEEE Std 1057, three-parameter sine fit (from memory); signs and flags: docs/theory/spin.md</source>
    public static SpinResult? Of(SpinRecording recording, int harmonics)
    {
        ArgumentNullException.ThrowIfNull(recording);
        if (IndexTrack.Of(recording.Index, recording.Edge) is not { } track)
        {
            return null;
        }

        if (track.Uneven > 0 && EvenTurns.LongestStretch(track, recording.Index.Length) is { } stretch)
        {
            var cut = recording.Cut(stretch);
            if (IndexTrack.Of(cut.Index, cut.Edge) is { Uneven: 0 } even)
            {
                return Along(cut, even, harmonics, track.Uneven);
            }
        }

        return Along(recording, track, harmonics, 0);
    }

    private static SpinResult? Along(SpinRecording recording, IndexTrack track, int harmonics, int unevenLeftOut)
    {
        var perTurn = Math.Tau / track.Angle.RadiansPerSample;
        var fitted = Math.Min(harmonics, Math.Min(HarmonicSums.MostHarmonics, (int)(perTurn / 4)));
        if (fitted < 1 || perTurn < 8)
        {
            return null;
        }

        var angle = FollowsDrift(track, recording.Index.Length) ? track.Angle : track.Angle with { RadiansPerSampleSquared = 0 };
        var points = new List<SpinPoint>();
        foreach (var samples in recording.Transducers)
        {
            if (Point(samples, track, angle, fitted, recording.Sense) is not { } point)
            {
                return null;
            }

            points.Add(point);
        }

        var speed = RotationalSpeed.FromRadiansPerSecond(track.Angle.RadiansPerSample * recording.SampleRate.Hertz);
        var result = new SpinResult
        {
            Speed = speed,
            SpeedStandardError = speed * track.SpeedError,
            DriftPercent = track.Uneven > 0 ? null : 100 * track.Drift,
            Samples = recording.Index.Length,
            UnevenLeftOut = unevenLeftOut,
            SpeedBySignal = angle.RadiansPerSampleSquared == 0 ? SpeedOfSignal.Of(recording, angle, points, Math.Min(fitted, 3)) : null,
            Turns = (recording.Index.Length - 1) / perTurn,
            Marks = track.Marks.Count,
            MarkStandardError = Angle.FromRadians(Math.Min(Math.PI, track.AngleError)),
            Points = points,
            Harmonics = fitted,
            Warnings = [],
        };
        return result with { Warnings = [.. SpinWarnings.Of(recording, result, track, perTurn)] };
    }

    /// <summary>The angle follows the change of speed where it is told clearly and would turn the ends of the record by more than a hundredth of a radian.</summary>
    private static bool FollowsDrift(IndexTrack track, int samples) =>
        Math.Abs(track.Drift) > 3 * track.DriftError
        && Math.Abs(track.Angle.RadiansPerSampleSquared) * samples * samples / 8 > 0.01;

    private static SpinPoint? Point(double[] samples, IndexTrack track, AngleTrack angle, int harmonics, SpinSense sense)
    {
        Span<Complex> phasors = stackalloc Complex[harmonics];
        if (HarmonicFit.Along(samples, angle, phasors) is not { } fit)
        {
            return null;
        }

        var higher = new double[harmonics - 1];
        for (var h = 1; h < harmonics; h++)
        {
            higher[h - 1] = phasors[h].Magnitude;
        }

        // What the fit leaves holds the wander already: the scatter of the turns stands in its place where it is greater, never beside it.
        var (wander, ratio) = WanderOf(samples, track, angle, harmonics, out var ofMean);
        var byTurns = ratio > Figures.Of("spin.wanderRatio").Value ? ofMean : 0;
        var across = Math.Max(fit.PhaseStandardError.Radians, fit.Amplitude > 0 ? byTurns / fit.Amplitude : 0);
        var phaseError = Math.Min(Math.PI, Math.Sqrt((across * across) + (track.AngleError * track.AngleError)));
        return new SpinPoint(
            fit.Amplitude,
            VibrationReading.InOneTurn(sense.OfLead * fit.First.Phase),
            Math.Max(fit.AmplitudeStandardError, byTurns),
            Angle.FromRadians(phaseError),
            fit.Offset,
            fit.Noise,
            higher,
            wander,
            ratio)
        {
            OwnPhaseStandardError = Angle.FromRadians(Math.Min(Math.PI, across)),
        };
    }

    /// <summary>
    /// Each whole turn fitted alone: how far its reading lies from the mean of all, and the square of that over what the noise within the turns explains. Each is brought
    /// to the speed of the middle by the square of its own, as the marks' even law tells it: two marks alone would tell it with the scatter of both, and a trend through the
    /// readings themselves would follow a stone that creeps.
    /// </summary>
    private static (double? Wander, double? Ratio) WanderOf(double[] samples, IndexTrack track, AngleTrack angle, int harmonics, out double errorOfMean)
    {
        errorOfMean = 0;
        var readings = new List<Complex>();
        var (noise, expected) = (0.0, 0.0);
        Span<Complex> phasors = stackalloc Complex[harmonics];
        for (var m = 1; m < track.Marks.Count; m++)
        {
            var (from, to) = ((int)Math.Ceiling(track.Marks[m - 1]), (int)Math.Ceiling(track.Marks[m]));
            var turn = samples.AsSpan(from, to - from);
            if (track.Turns[m] - track.Turns[m - 1] == 1 && turn.Length >= (2 * harmonics) + 8
                && HarmonicFit.Along(turn, angle with { Middle = angle.Middle - from }, phasors) is { } fit)
            {
                readings.Add(fit.First * ToMeanSpeed((from + to - 1) / 2.0));
                noise += fit.Noise * fit.Noise;
                expected += 4.0 / turn.Length;
            }
        }

        if (readings.Count < 5)
        {
            return (null, null);
        }

        var mean = readings.Aggregate(Complex.Zero, (a, b) => a + b) / readings.Count;
        var square = readings.Sum(r => (r - mean).Magnitude * (r - mean).Magnitude) / (readings.Count - 1);
        errorOfMean = Math.Sqrt(square / 2 / readings.Count);
        var byNoise = noise / readings.Count * expected / readings.Count;
        return (Math.Sqrt(square), byNoise > 0 ? square / byNoise : square > 0 ? null : 1);

        double ToMeanSpeed(double sample) =>
            Math.Pow(track.Angle.RadiansPerSample / (track.Angle.RadiansPerSample + ((sample - track.Angle.Middle) * track.Angle.RadiansPerSampleSquared)), 2);
    }
}
