using System.Numerics;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Spin;

/// <summary>The strongest line of a signal between two speeds, told coarsely: where a fit of the speed begins.</summary>
/// <param name="Speed">The speed with the greatest sum, on a grid four times closer than the recording parts two speeds.</param>
/// <param name="Amplitude">The amplitude that the sum tells there.</param>
/// <param name="Share">Its part of the signal's power about the mean.</param>
internal readonly record struct StrongestLine(RotationalSpeed Speed, double Amplitude, double Share)
{
    private const int SamplesPerTurn = 24;
    private const int StepsPerResolution = 4;

    /// <param name="samples">Evenly spaced samples.</param>
    /// <param name="sampleRate">Samples in a second.</param>
    /// <param name="slowest">Where the search begins.</param>
    /// <param name="fastest">Where it ends.</param>
    /// <param name="samplesPerTurn">Samples in a turn at the fastest.</param>
    public static StrongestLine Between(ReadOnlySpan<double> samples, Frequency sampleRate, RotationalSpeed slowest, RotationalSpeed fastest, double samplesPerTurn)
    {
        // Means over a few samples are enough to find the line, and a sound file has a thousand samples a turn.
        var block = Math.Max(1, (int)(samplesPerTurn / SamplesPerTurn));
        var means = new double[samples.Length / block];
        var mean = 0.0;
        for (var k = 0; k < means.Length; k++)
        {
            foreach (var sample in samples.Slice(k * block, block))
            {
                means[k] += sample;
            }

            mean += means[k] / means.Length;
        }

        var squares = means.Sum(m => (m - mean) * (m - mean));
        var seconds = samples.Length / sampleRate.Hertz;
        var step = 2 * Math.PI / (seconds * StepsPerResolution);
        var (best, greatest) = (slowest.RadiansPerSecond, -1.0);
        for (var speed = slowest.RadiansPerSecond; speed <= fastest.RadiansPerSecond; speed += step)
        {
            var (turn, sum) = (Complex.One, Complex.Zero);
            var each = Complex.FromPolarCoordinates(1, -speed * block / sampleRate.Hertz);
            foreach (var m in means)
            {
                sum += (m - mean) * turn;
                turn *= each;
            }

            var power = (sum.Real * sum.Real) + (sum.Imaginary * sum.Imaginary);
            if (power > greatest)
            {
                (best, greatest) = (speed, power);
            }
        }

        return new StrongestLine(
            RotationalSpeed.FromRadiansPerSecond(best), 2 * Math.Sqrt(Math.Max(0, greatest)) / means.Length / block, squares > 0 ? 2 * greatest / means.Length / squares : 0);
    }
}
