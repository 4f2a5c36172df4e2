using System.Numerics;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Spin;

/// <summary>The speed at which the signals themselves turn, to hold the index marks against.</summary>
internal static class SpeedOfSignal
{
    /// <summary>Where the search for a strongest line begins and ends, as parts of the mark's speed: a mark twice a turn and one every second turn lie well within.</summary>
    private const double Slowest = 0.4, Fastest = 2.5;

    /// <summary>
    /// The speed of the stronger signal. A line far from the mark's speed that outweighs its first harmonic tells it; else the two halves of the record tell where to
    /// begin, by how far the phase of the second lies ahead of the first's.
    /// </summary>
    /// <param name="recording">The recording.</param>
    /// <param name="angle">The angle that the marks tell; steady.</param>
    /// <param name="points">What the fit at the marks' speed found.</param>
    /// <param name="harmonics">How many harmonics the fits take.</param>
    /// <returns>The speed, or null where no signal stands clear of its noise.</returns>
    public static RotationalSpeed? Of(SpinRecording recording, AngleTrack angle, IReadOnlyList<SpinPoint> points, int harmonics) =>
        FarFromTheMarks(recording, angle, points, harmonics) ?? NearTheMarks(recording, angle, harmonics);

    private static RotationalSpeed? FarFromTheMarks(SpinRecording recording, AngleTrack angle, IReadOnlyList<SpinPoint> points, int harmonics)
    {
        var rate = recording.SampleRate;
        var mark = RotationalSpeed.FromRadiansPerSecond(angle.RadiansPerSample * rate.Hertz);
        var turns = recording.Index.Length * angle.RadiansPerSample / Math.Tau;
        var fastest = Math.Min(Fastest, Math.PI / angle.RadiansPerSample / 2);
        var best = (Times: 0.0, Speed: (RotationalSpeed?)null);
        for (var p = 0; p < points.Count; p++)
        {
            var samples = recording.Transducers[p];
            var line = StrongestLine.Between(samples, rate, mark * Slowest, mark * fastest, Math.Tau / angle.RadiansPerSample / fastest);
            var ratio = line.Speed / mark;
            var times = points[p].Amplitude > 0 ? line.Amplitude / points[p].Amplitude : double.PositiveInfinity;

            // A wheel in balance leaves the second harmonic of its own mark: that is no other speed until hardly any first is left.
            var second = Math.Abs(ratio - 2) * turns < 1;
            var needed = Figures.Of(second ? "spin.otherLineAtSecondHarmonic" : "spin.otherLine").Value;
            if (Math.Abs(ratio - 1) * turns > 0.5 && line.Share > Figures.Of("spin.otherLineSharePercent").Value / 100 && times > Math.Max(needed, best.Times)
                && SineFit.WithUnknownSpeed(samples, rate, line.Speed, ratio > 1.25 ? Math.Min(harmonics, 2) : harmonics) is { Settled: true } fit)
            {
                best = (times, fit.Speed);
            }
        }

        return best.Speed;
    }

    private static RotationalSpeed? NearTheMarks(SpinRecording recording, AngleTrack angle, int harmonics)
    {
        var half = recording.Index.Length / 2;
        Span<Complex> phasors = stackalloc Complex[harmonics];
        var best = (Clear: 10.0, Ahead: 0.0, Samples: (double[]?)null);
        foreach (var samples in recording.Transducers)
        {
            if (HarmonicFit.Along(samples.AsSpan(0, half), angle, phasors) is { } one
                && HarmonicFit.Along(samples.AsSpan(half), angle with { Middle = angle.Middle - half }, phasors) is { } two
                && Math.Min(one.Amplitude / one.AmplitudeStandardError, two.Amplitude / two.AmplitudeStandardError) is var clear && clear > best.Clear)
            {
                best = (clear, (two.First / one.First).Phase, samples);
            }
        }

        if (best.Samples is null)
        {
            return null;
        }

        var near = RotationalSpeed.FromRadiansPerSecond((angle.RadiansPerSample + (best.Ahead / half)) * recording.SampleRate.Hertz);
        return SineFit.WithUnknownSpeed(best.Samples, recording.SampleRate, near, harmonics) is { Settled: true } fit ? fit.Speed : null;
    }
}
