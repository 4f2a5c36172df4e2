using Complex = System.Numerics.Complex;
using MathNet.Numerics.LinearAlgebra;
using Trundle.Engine.Uniformity;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Uniformity.Oracle;

/// <summary>
/// Traces that were worked out apart from this code (double precision, another language), each to its printed digits; and the same by a naive
/// sum over the readings and by MathNet's decomposition.
/// </summary>
public class WorkedTracesTests
{
    private static readonly double[] Vector1 = [0.85, 1.09, 1.09, 0.94, 0.69, 0.40, 0.24, 0.30, 0.40, 0.36, 0.32, 0.50];
    private static readonly double[] Vector2 = [0.85, 1.12, 0.94, 0.54, 0.24, 0.36, 0.36, 0.38];

    [Fact]
    public void Twelve_places_of_three_orders_rounded_to_a_hundredth()
    {
        var found = RunoutAnalysis.Of(Dial.Even(Vector1), 3, Length.FromMillimetres(0.01)).Found();
        found.Mean.Millimetres.ShouldBe(0.598333, 5e-7);
        Agree(found.Harmonics[0], 0.400366, 50.104);
        Agree(found.Harmonics[1], 0.149527, 110.555);
        Agree(found.Harmonics[2], 0.051694, 20.772);
        found.PeakToPeak.Millimetres.ShouldBe(0.85, 1e-12);
        found.PeakToPeakAfterFirst.Millimetres.ShouldBe(0.3632, 5e-5);
        found.RootMeanSquareAfterFirst.Millimetres.ShouldBe(0.11188, 5e-6);
        found.Harmonics[0].StandardError!.Value.Millimetres.ShouldBe(0.00118, 5e-6);
        found.EvenlySpaced.ShouldBeTrue();
        found.TakenForFirst.ShouldBeEmpty();
        found.Suspect.ShouldBeNull();
    }

    [Fact]
    public void The_total_reading_is_not_twice_the_first_harmonic()
    {
        var found = RunoutAnalysis.Of(Dial.Even(Vector1), null, null).Found();
        (2 * found.First.Amount).Millimetres.ShouldBe(0.801, 5e-4);
        found.PeakToPeak.Millimetres.ShouldBe(0.85, 1e-12);
    }

    [Fact]
    public void Eight_places()
    {
        var found = RunoutAnalysis.Of(Dial.Even(Vector2), null, null).Found();
        Agree(found.Harmonics[0], 0.401865, 49.953);
        found.TakenForFirst.ShouldBeEmpty("eight places are the least that hold order 7 off the first");
    }

    [Fact]
    public void Four_places_take_the_third_for_the_first()
    {
        var readings = Dial.At(Dial.Around(4), d => 0.6 + (0.4 * Dial.Wave(1, d, 50)) + (0.05 * Dial.Wave(3, d, 20)));
        var found = RunoutAnalysis.Of(readings, null, null).Found();
        Agree(found.Harmonics[0], 0.41974, 43.573, 5e-6);
        found.TakenForFirst.Select(t => t.Order).ShouldBe([3, 5]);
        found.TakenForFirst[0].Share.ShouldBe(1, 1e-9);
        found.Harmonics[0].MayBeOrder.ShouldBe(3);
    }

    [Fact]
    public void Two_missing_places_let_the_third_leak_and_it_is_said()
    {
        var readings = Dial.Even(Vector1).Where((_, i) => i is not (3 or 8)).ToList();
        var found = RunoutAnalysis.Of(readings, 2, null).Found();
        found.Mean.Millimetres.ShouldBe(0.593791, 5e-7);
        Agree(found.Harmonics[0], 0.417441, 50.834);
        Agree(found.Harmonics[1], 0.137648, 111.419);
        found.EvenlySpaced.ShouldBeFalse();
        found.TakenForFirst.ShouldContain(t => t.Order == 3);
    }

    [Fact]
    public void A_naive_sum_over_even_places_agrees()
    {
        var random = new Random(7);
        for (var round = 0; round < 200; round++)
        {
            var n = random.Next(3, 40);
            double[] v = [.. Enumerable.Range(0, n).Select(_ => random.NextDouble())];
            var found = RunoutAnalysis.Of(Dial.Even(v), null, null).Found();
            foreach (var h in found.Harmonics)
            {
                var sum = v.Select((x, i) => x * Complex.FromPolarCoordinates(2.0 / n, 2 * Math.PI * h.Order * i / n)).Aggregate((a, b) => a + b);
                h.Amplitude.Millimetres.ShouldBe(sum.Magnitude, 1e-12);
            }
        }
    }

    [Fact]
    public void Another_decomposition_agrees_at_uneven_places()
    {
        var random = new Random(11);
        for (var round = 0; round < 200; round++)
        {
            var orders = random.Next(1, 5);
            var n = random.Next((2 * orders) + 2, 30);
            double[] at = [.. Enumerable.Range(0, n).Select(i => (360.0 * (i + (0.8 * random.NextDouble()))) / n)];
            double[] v = [.. at.Select(_ => random.NextDouble())];
            var found = RunoutAnalysis.Of([.. at.Select((d, i) => new DialReading(WheelAngle.FromDegrees(d), Length.FromMillimetres(v[i])))], orders, Length.FromMillimetres(Math.Sqrt(12))).Found();
            var a = Matrix<double>.Build.Dense(n, (2 * orders) + 1, (i, j) => j == 0 ? 1 : j % 2 == 1 ? Dial.Wave((j + 1) / 2, at[i], 0) : Dial.Wave(j / 2, at[i], 90));
            var x = a.Svd().Solve(Vector<double>.Build.Dense(v));
            var inverse = (a.TransposeThisAndMultiply(a)).Inverse();
            foreach (var h in found.Harmonics)
            {
                var (c, s) = (x[(2 * h.Order) - 1], x[2 * h.Order]);
                h.Amplitude.Millimetres.ShouldBe(Math.Sqrt((c * c) + (s * s)), 1e-9);
                var along = Vector<double>.Build.Dense((2 * orders) + 1);
                along[(2 * h.Order) - 1] = c / h.Amplitude.Millimetres;
                along[2 * h.Order] = s / h.Amplitude.Millimetres;
                h.StandardError!.Value.Millimetres.ShouldBe(Math.Sqrt(along * inverse * along), 1e-7);
            }
        }
    }

    private static void Agree(RunoutHarmonic h, double millimetres, double phaseDegrees, double within = 5e-7)
    {
        h.Amplitude.Millimetres.ShouldBe(millimetres, within);
        h.Phase.Degrees.ShouldBe(phaseDegrees, 5e-4);
        h.HighPoint.Degrees.ShouldBe(phaseDegrees / h.Order, 5e-4);
    }
}
