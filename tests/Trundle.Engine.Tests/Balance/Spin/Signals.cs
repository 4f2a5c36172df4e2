using System.Numerics;
using Trundle.Engine.Balance.Spin;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Spin;

/// <summary>Signals made in the tests, by cosine and sine alone.</summary>
internal static class Signals
{
    /// <summary>Offset and harmonics, each as amplitude and leading phase in degrees.</summary>
    public static double[] Of(int samples, double radiansPerSample, double offset, params (double Amplitude, double Degrees)[] harmonics) =>
        [.. Enumerable.Range(0, samples).Select(k => offset + harmonics.Select((h, i) => h.Amplitude * Math.Cos(((i + 1) * radiansPerSample * k) + (h.Degrees * Math.PI / 180))).Sum())];

    public static double Gauss(Random random) =>
        Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(Math.Tau * random.NextDouble());

    /// <summary>The kernel at one sample a second, so that radians a sample are radians a second.</summary>
    public static HarmonicFit Fit(double[] samples, double radiansPerSample, Complex[] phasors, double radiansAtFirst = 0) =>
        HarmonicFit.AtSteadySpeed(samples, Frequency.FromHertz(1), RotationalSpeed.FromRadiansPerSecond(radiansPerSample), Angle.FromRadians(radiansAtFirst), phasors).ShouldNotBeNull();

    /// <summary>A pulse a turn: 1 for a twentieth of a turn from each mark.</summary>
    public static double[] Index(int samples, Func<int, double> turns) =>
        [.. Enumerable.Range(0, samples).Select(k => turns(k) - Math.Floor(turns(k)) < 0.05 ? 1.0 : 0.0)];

    /// <summary>A spin of two transducers with noise; the marks stand at whole turns.</summary>
    public static SpinRecording Spin(int samples, double perTurn, Complex first, Complex second, double noise, int seed, SpinSense sense = default, double start = 0.37)
    {
        var random = new Random(seed);
        double Turns(int k) => start + (k / perTurn);
        double[] Channel(Complex z) => [.. Enumerable.Range(0, samples).Select(k => 0.2 + (z * Complex.FromPolarCoordinates(1, Math.Tau * Turns(k))).Real + (noise * Gauss(random)))];
        return new SpinRecording([Channel(first), Channel(second)], Index(samples, Turns), Frequency.FromHertz(2000), sense);
    }
}
