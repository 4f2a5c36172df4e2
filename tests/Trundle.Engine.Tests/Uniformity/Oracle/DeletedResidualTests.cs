using MathNet.Numerics.Distributions;
using MathNet.Numerics.LinearAlgebra;
using Trundle.Engine.Uniformity;

namespace Trundle.Engine.Tests.Uniformity.Oracle;

/// <summary>
/// A bad reading by the long way: each reading is left out in turn, the rest fitted anew by another library, and the one left out held against
/// what they predict, with Student's t of that library.
/// </summary>
public class DeletedResidualTests
{
    [Fact]
    public void Leaving_each_reading_out_in_turn_finds_the_same_one_with_the_same_number()
    {
        var random = new Random(31);
        var (flagged, passed) = (0, 0);
        for (var round = 0; round < 150; round++)
        {
            var n = random.Next(9, 25);
            var orders = random.Next(1, 3);
            double[] at = [.. Enumerable.Range(0, n).Select(i => 360.0 * (i + (0.5 * random.NextDouble())) / n)];
            double[] v = [.. at.Select(d => (0.4 * Dial.Wave(1, d, 70)) + (0.05 * random.NextDouble()))];
            v[random.Next(n)] += 0.25 * random.NextDouble();
            var found = RunoutAnalysis.Of([.. at.Select((d, i) => new DialReading(Measures.WheelAngle.FromDegrees(d), Measures.Length.FromMillimetres(v[i])))], orders, null).Found();
            var (worst, t) = Enumerable.Range(0, n).Select(i => (i, T: Deleted(at, v, orders, i))).MaxBy(r => Math.Abs(r.T));
            var free = n - ((2 * orders) + 1) - 1;
            var chance = n * 2 * (1 - StudentT.CDF(0, 1, free, Math.Abs(t)));
            if (chance < 0.01)
            {
                flagged++;
                found.Suspect.ShouldNotBeNull().Index.ShouldBe(worst);
                found.Suspect.Studentised!.Value.ShouldBe(Math.Abs(t), 1e-6 * Math.Abs(t));
            }
            else
            {
                passed++;
                found.Suspect.ShouldBeNull();
            }
        }

        flagged.ShouldBeGreaterThan(20);
        passed.ShouldBeGreaterThan(20);
    }

    private static double Deleted(double[] at, double[] v, int orders, int out_)
    {
        int[] kept = [.. Enumerable.Range(0, at.Length).Where(i => i != out_)];
        var a = Matrix<double>.Build.DenseOfRows(kept.Select(i => Row(at[i], orders)));
        var y = Vector<double>.Build.DenseOfEnumerable(kept.Select(i => v[i]));
        var x = a.Svd().Solve(y);
        var s2 = (y - (a * x)).L2Norm() * (y - (a * x)).L2Norm() / (kept.Length - ((2 * orders) + 1));
        var row = Vector<double>.Build.DenseOfArray(Row(at[out_], orders));
        return (v[out_] - (row * x)) / Math.Sqrt(s2 * (1 + (row * (a.TransposeThisAndMultiply(a).Inverse() * row))));
    }

    private static double[] Row(double degrees, int orders) => [1, .. Enumerable.Range(1, orders).SelectMany(k => new[] { Dial.Wave(k, degrees, 0), Dial.Wave(k, degrees, 90) })];
}
