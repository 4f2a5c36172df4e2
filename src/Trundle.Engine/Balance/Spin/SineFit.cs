using System.Numerics;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Spin;

/// <summary>A fit that finds the speed in the signal itself, where no index mark tells it, or to hold the marks against the signal.</summary>
/// <param name="Speed">The speed found.</param>
/// <param name="SpeedStandardError">One standard error of it.</param>
/// <param name="Harmonics">Offset and harmonics at that speed, with phases from the first sample.</param>
/// <param name="Settled">False where the search did not come to rest: then nothing here is to be trusted.</param>
public sealed record SineFit(RotationalSpeed Speed, RotationalSpeed SpeedStandardError, HarmonicFit Harmonics, bool Settled)
{
    private const int MostSteps = 60;

    /// <summary>
    /// One standard error of the phase at the first sample: there the error of the speed counts over half the record, so that it is twice that at a known speed.
    /// </summary>
    public required Angle PhaseStandardErrorAtFirstSample { get; init; }

    /// <summary>
    /// Fits offset, harmonics and the speed together, beginning near the speed: within about half a turn over the whole record.
    /// </summary>
    /// <param name="samples">Evenly spaced samples of at least one turn.</param>
    /// <param name="sampleRate">Samples in a second.</param>
    /// <param name="near">Where the search begins.</param>
    /// <param name="harmonics">How many harmonics, 1 to 10.</param>
    /// <returns>The fit, or null where the harmonics cannot be told apart at the beginning.</returns>
    /// <source>IEEE Std 1057, four-parameter sine fit (from memory)</source>
    public static SineFit? WithUnknownSpeed(ReadOnlySpan<double> samples, Frequency sampleRate, RotationalSpeed near, int harmonics)
    {
        var step = near.RadiansPerSecond / sampleRate.Hertz;
        var middle = (samples.Length - 1) / 2.0;
        Span<Complex> phasors = stackalloc Complex[harmonics];
        var error = 0.0;
        var settled = false;
        for (var i = 0; i < MostSteps && !settled; i++)
        {
            // About the middle of the record the speed is least entangled with the phases.
            if (HarmonicFit.Along(samples, AngleTrack.Steady(-step * middle, step), phasors) is not { } here)
            {
                return null;
            }

            var (turn, perNoise) = Step(samples, step, middle, here, phasors);
            step += turn;
            error = perNoise * here.Noise;
            settled = Math.Abs(turn) <= 1e-14 + (1e-13 * Math.Abs(step));
            if (!double.IsFinite(step) || step <= 0)
            {
                return null;
            }
        }

        var fit = HarmonicFit.Along(samples, AngleTrack.Steady(0, step), phasors);
        return fit is { } f
            ? new SineFit(
                RotationalSpeed.FromRadiansPerSecond(step * sampleRate.Hertz),
                RotationalSpeed.FromRadiansPerSecond(error * sampleRate.Hertz),
                f,
                settled)
            {
                PhaseStandardErrorAtFirstSample = Angle.FromRadians(Math.Sqrt((f.PhaseStandardError.Radians * f.PhaseStandardError.Radians) + (middle * error * middle * error))),
            }
            : null;
    }

    /// <summary>The change of speed that lessens the squares most, all other terms fitted along (Gauss and Newton), and its standard error for each unit of noise.</summary>
    private static (double Turn, double PerNoise) Step(ReadOnlySpan<double> samples, double step, double middle, HarmonicFit here, ReadOnlySpan<Complex> phasors)
    {
        var size = (2 * phasors.Length) + 2;
        Span<double> normal = stackalloc double[size * size];
        Span<double> right = stackalloc double[size];
        Span<double> row = stackalloc double[size];
        for (var k = 0; k < samples.Length; k++)
        {
            var t = k - middle;
            var (sin, cos) = Math.SinCos(step * t);
            var first = new Complex(cos, sin);
            var turn = first;
            row[0] = 1;
            var model = here.Offset;
            var slope = 0.0;
            for (var h = 1; h <= phasors.Length; h++)
            {
                row[(2 * h) - 1] = turn.Real;
                row[2 * h] = turn.Imaginary;
                var wave = phasors[h - 1] * turn;
                model += wave.Real;
                slope -= h * t * wave.Imaginary;
                turn *= first;
            }

            row[size - 1] = slope / middle;
            var left = samples[k] - model;
            for (var i = 0; i < size; i++)
            {
                right[i] += row[i] * left;
                for (var j = 0; j <= i; j++)
                {
                    normal[(i * size) + j] += row[i] * row[j];
                }
            }
        }

        if (!SquareRoot.Of(normal, size))
        {
            return (0, double.PositiveInfinity);
        }

        SquareRoot.Solve(normal, size, right);
        var change = right[size - 1] / middle;
        right.Clear();
        right[size - 1] = 1;
        SquareRoot.Solve(normal, size, right);
        return (change, Math.Sqrt(right[size - 1]) / middle);
    }
}
