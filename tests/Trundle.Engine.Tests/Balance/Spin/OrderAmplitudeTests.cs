using Trundle.Engine.Balance.Spin;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Spin;

/// <summary>Once-per-turn amplitude without an index mark, against signals made by cosines, their scatter against the bound.</summary>
public class OrderAmplitudeTests
{
    private static readonly Frequency Rate = Frequency.FromHertz(100);

    [Theory]
    [InlineData(850, 850)]
    [InlineData(850, 785)]
    [InlineData(850, 920)]
    [InlineData(430, 460)]
    public void Amplitude_and_speed_are_found_within_a_tenth_of_the_told_speed(double turning, double told)
    {
        var samples = Made(600, turning, 0.8, noise: 0, seed: 1, (2.37, 0.3), (0.31, 0.4));
        var found = OrderAmplitude.Of(samples, Rate, RotationalSpeed.FromRevolutionsPerMinute(told)).ShouldNotBeNull();
        found.Amplitude.ShouldBe(0.8, 0.02);
        found.Speed.RevolutionsPerMinute.ShouldBe(turning, 0.5);
        found.Turns.ShouldBe(turning / 60 * 6, 0.1);
    }

    [Fact]
    public void The_scatter_of_the_amplitude_is_its_standard_error()
    {
        // For white noise the amplitude's bound is noise · √(2/N): Kay, Fundamentals of Statistical Signal Processing, Estimation Theory, sec. 3.11 (from memory).
        var found = Enumerable.Range(0, 400).Select(seed => OrderAmplitude.Of(Made(600, 850, 0.8, 0.25, seed), Rate, RotationalSpeed.FromRevolutionsPerMinute(840))!).ToList();
        var mean = found.Average(f => f.Amplitude);
        var scatter = Math.Sqrt(found.Average(f => (f.Amplitude - mean) * (f.Amplitude - mean)));
        mean.ShouldBe(0.8, 0.003);
        scatter.ShouldBe(0.25 * Math.Sqrt(2.0 / 600), 0.0012);
        found.Average(f => f.AmplitudeStandardError).ShouldBe(scatter, 0.0012);
        found.Count(Settled).ShouldBe(400);
    }

    [Fact]
    public void A_speed_that_creeps_up_shows_as_drift()
    {
        var samples = Enumerable.Range(0, 1000).Select(k => Math.Cos(Math.Tau * 14 * ((k / 100.0) + (0.002 * k / 100.0 * k / 100.0)))).ToArray();

        // The speed is 14 Hz · (1 + 0.004 t): 4 % over ten seconds, to the second order of the halves' means.
        OrderAmplitude.Of(samples, Rate, RotationalSpeed.FromHertz(14.3))!.DriftPercent!.Value.ShouldBe(4, 0.2);
    }

    [Fact]
    public void Too_few_turns_or_samples_and_no_line_give_no_amplitude()
    {
        OrderAmplitude.Of(Made(12, 850, 0.8, 0, 1), Rate, RotationalSpeed.FromRevolutionsPerMinute(850)).ShouldBeNull();
        OrderAmplitude.Of(Made(600, 850, 0.8, 0, 1), Frequency.FromHertz(60), RotationalSpeed.FromRevolutionsPerMinute(850)).ShouldBeNull();
        OrderAmplitude.Of(new double[600], Rate, RotationalSpeed.FromRevolutionsPerMinute(850))?.Amplitude.ShouldBe(0, 1e-12);
    }

    private static bool Settled(OrderAmplitude found) => Math.Abs(found.Speed.RevolutionsPerMinute - 850) < 6 * found.SpeedStandardError.RevolutionsPerMinute;

    private static double[] Made(int samples, double turning, double amplitude, double noise, int seed, params (double Order, double Amplitude)[] others)
    {
        var random = new Random(seed);
        var start = Math.Tau * random.NextDouble();
        return [.. Enumerable.Range(0, samples).Select(k => 9.8 + (amplitude * Math.Cos((Math.Tau * turning / 60 * k / 100) + start))
            + others.Sum(o => o.Amplitude * Math.Cos(Math.Tau * turning * o.Order / 60 * k / 100)) + (noise == 0 ? 0 : noise * Signals.Gauss(random)))];
    }
}
