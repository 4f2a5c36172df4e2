using System.Numerics;
using Trundle.Engine.Balance.Spin;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Spin;

/// <summary>
/// The fit with unknown speed, and the scatter of both fits against the Cramér-Rao bounds (Rife and Boorstyn 1974, Kay 1993, from memory), which the
/// seeded draws themselves check: A = 1.2, 40°, offset 0.3, noise 0.1, 200 samples, ω = 2π·0.05.
/// </summary>
public class SineFitTests
{
    private const double Step = Math.Tau * 0.05;
    private const int Count = 200;
    private const double Noise = 0.1;
    private const double Amplitude = 1.2;

    [Fact]
    public void The_speed_is_found_from_two_per_cent_off()
    {
        const double step = Math.Tau * 3 / 1000;
        var fit = Unknown(Signals.Of(900, step, 0.3, (1.2, 40)), step * 1.02, 1);
        fit.Settled.ShouldBeTrue();
        fit.Speed.RadiansPerSecond.ShouldBe(0.018849555922, 5e-13);
        fit.Harmonics.Amplitude.ShouldBe(1.2, 1e-9);
        fit.Harmonics.Phase.Degrees.ShouldBe(40, 1e-9);
    }

    [Fact]
    public void Harmonics_are_fitted_along()
    {
        var random = new Random(21);
        for (var i = 0; i < 20; i++)
        {
            var step = 0.02 + (0.1 * random.NextDouble());
            var fit = Unknown(Signals.Of(900, step, -2, (1.2, 200), (0.4, 300), (0.2, 10)), step * (1 + (0.004 * (random.NextDouble() - 0.5))), 3);
            fit.Settled.ShouldBeTrue();
            fit.Speed.RadiansPerSecond.ShouldBe(step, 1e-12);
            fit.Harmonics.Amplitude.ShouldBe(1.2, 1e-10);
            fit.Harmonics.Phase.Degrees.ShouldBe(200, 1e-8);
        }
    }

    [Fact]
    public void With_the_speed_known_the_scatter_is_the_bound()
    {
        const int runs = 3000;
        var bound = Math.Sqrt(2 * Noise * Noise / Count);
        var random = new Random(22);
        var phasors = new Complex[1];
        var fits = Enumerable.Range(0, runs).Select(_ => Signals.Fit(Drawn(random), Step, phasors)).ToList();
        (Deviation(fits.Select(f => f.Amplitude)) / bound).ShouldBe(1, 0.05);
        (Deviation(fits.Select(f => f.Phase.Radians)) / (bound / Amplitude)).ShouldBe(1, 0.05);

        // Each fit's own standard errors say the same.
        (fits.Average(f => f.AmplitudeStandardError) / bound).ShouldBe(1, 0.01);
        (fits.Average(f => f.PhaseStandardError.Radians) / (bound / Amplitude)).ShouldBe(1, 0.01);
        bound.ShouldBe(0.010000, 0.0000005);
        (bound / Amplitude * 180 / Math.PI).ShouldBe(0.4775, 0.00005);
    }

    [Fact]
    public void With_the_speed_unknown_the_scatter_is_the_bound()
    {
        const int runs = 1500;
        const double eta = Amplitude * Amplitude / (2 * Noise * Noise);
        var amplitude = Math.Sqrt(2 * Noise * Noise / Count);
        var phase = Math.Sqrt(2.0 * ((2 * Count) - 1) / (eta * Count * (Count + 1)));
        var omega = Math.Sqrt(12 / (eta * Count * ((Count * (double)Count) - 1)));
        var random = new Random(23);
        var fits = Enumerable.Range(0, runs).Select(_ => Unknown(Drawn(random), Step * 1.002, 1)).ToList();
        (Deviation(fits.Select(f => f.Harmonics.Amplitude)) / amplitude).ShouldBe(1, 0.05);
        (Deviation(fits.Select(f => f.Harmonics.Phase.Radians)) / phase).ShouldBe(1, 0.05);
        (Deviation(fits.Select(f => f.Speed.RadiansPerSecond)) / omega).ShouldBe(1, 0.05);
        (fits.Average(f => f.SpeedStandardError.RadiansPerSecond) / omega).ShouldBe(1, 0.01);
        (fits.Average(f => f.PhaseStandardErrorAtFirstSample.Radians) / phase).ShouldBe(1, 0.01);
        (phase * 180 / Math.PI).ShouldBe(0.9514, 0.00005);
        omega.ShouldBe(1.443e-4, 5e-8);
    }

    private static double[] Drawn(Random random)
    {
        var samples = Signals.Of(Count, Step, 0.3, (Amplitude, 40));
        for (var k = 0; k < Count; k++)
        {
            samples[k] += Noise * Signals.Gauss(random);
        }

        return samples;
    }

    private static SineFit Unknown(double[] samples, double near, int harmonics) =>
        SineFit.WithUnknownSpeed(samples, Frequency.FromHertz(1), RotationalSpeed.FromRadiansPerSecond(near), harmonics).ShouldNotBeNull();

    private static double Deviation(IEnumerable<double> values)
    {
        var list = values.ToList();
        var mean = list.Average();
        return Math.Sqrt(list.Sum(v => (v - mean) * (v - mean)) / (list.Count - 1));
    }
}
