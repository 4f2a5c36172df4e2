using System.Numerics;
using Trundle.Engine.Reference;
using Trundle.Engine.Uniformity;

namespace Trundle.Engine.Balance;

/// <summary>
/// A trial run without phase that the others disagree with, though all together may miss by less than is allowed: one wrong run among many hides in the mean.
/// </summary>
/// <param name="Run">The run's number as listed, from 1.</param>
/// <param name="Point">The measuring point where it stands out most, from 1.</param>
/// <param name="ByOthers">The amplitude that the other runs foretell for it there.</param>
/// <param name="Measured">The amplitude measured.</param>
/// <param name="Chance">The chance that the worst of so many honest runs would stand out as far.</param>
/// <param name="CorrectionWithout">What the other runs ask for by themselves, or null where they ask for nothing.</param>
public sealed record RunOutlier(int Run, int Point, double ByOthers, double Measured, double Chance, PlaneMass? CorrectionWithout)
{
    /// <summary>The trial runs that it takes: leaving one out of five leaves two numbers over to judge by.</summary>
    private const int LeastTrials = 5;

    /// <summary>
    /// Leaves out each run in turn. What the sum of squares loses by it, over the variance of those left, is the square of a Student's t with
    /// as many degrees of freedom as the others leave over; the chance is taken as many times as there are runs and points (Bonferroni). A run that misses by no more
    /// than a meter's usual scatter is let be.
    /// </summary>
    /// <param name="initial">Amplitude of the initial run at each point.</param>
    /// <param name="trials">The mass on in each trial run, in grams as a phasor.</param>
    /// <param name="amplitudes">Amplitude by trial run and point.</param>
    /// <param name="reading">One standard error of an amplitude at each point by how finely it was read.</param>
    /// <returns>The run that stands out most, or null where none does beyond the chance allowed.</returns>
    /// <source>Deletion residual and its F test with one and ν degrees of freedom: regression textbooks (from memory); docs/theory/balance.md (without phase)</source>
    internal static RunOutlier? Of(double[] initial, Complex[] trials, double[][] amplitudes, double[] reading)
    {
        int[] points = [.. Enumerable.Range(0, initial.Length).Where(p => initial[p] > 0)];
        var n = trials.Length;
        if (n < LeastTrials || points.Length == 0)
        {
            return null;
        }

        var all = points.ToDictionary(p => p, p => AmplitudeFit.Of(initial[p], trials, Column(amplitudes, p)).SumOfSquares);
        var usual = Figures.Of("balance.amplitudeScatter").Value / 100;
        var freedom = points.Length * (n - 3);
        RunOutlier? worst = null;
        for (var r = 0; r < n; r++)
        {
            Complex[] others = Without(trials, r);
            var without = points.ToDictionary(p => p, p => AmplitudeFit.Of(initial[p], others, Column(Without(amplitudes, r), p)));
            var variance = without.Values.Sum(w => w.SumOfSquares) / freedom;
            foreach (var p in points)
            {
                var byOthers = (initial[p] + (without[p].PerGram * trials[r])).Magnitude;
                if (Math.Abs(amplitudes[r][p] - byOthers) <= usual * initial[p])
                {
                    continue;
                }

                var scatter = Math.Max(variance, Math.Max(reading[p] * reading[p], 1e-18 * initial[p] * initial[p]));
                var t = Math.Sqrt(Math.Max(0, all[p] - without[p].SumOfSquares) / scatter);
                var chance = Math.Min(1, n * points.Length * StudentTail.Of(t, freedom));
                if (chance < (worst?.Chance ?? Figures.Of("balance.trialRunChance").Value))
                {
                    worst = new RunOutlier(r + 2, p + 1, byOthers, amplitudes[r][p], chance, Correction(initial, [.. initial.Select((_, i) => without.TryGetValue(i, out var w) ? w.PerGram : Complex.Zero)]));
                }
            }
        }

        return worst;
    }

    private static PlaneMass? Correction(double[] initial, Complex[] influence) => influence.All(a => a == Complex.Zero)
        ? null
        : PlaneMass.Of(1, SingularValues.Of([influence]).LeastSquares([.. initial.Select(v => new Complex(-v, 0))])[0]);

    private static double[] Column(double[][] amplitudes, int point) => [.. amplitudes.Select(a => a[point])];

    private static T[] Without<T>(T[] all, int dropped) => [.. all.Where((_, i) => i != dropped)];
}
