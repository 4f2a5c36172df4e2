using System.Numerics;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Uniformity;

/// <summary>Finds the one reading that the others contradict, by its residual over the standard error that they give it.</summary>
internal static class OutlierSearch
{
    // More orders would let the fit follow the bad reading.
    private const int MostOrders = 3;
    private const int LeastFree = 4;

    public static SuspectReading? Of(IReadOnlyList<DialReading> readings, double[] at, double[] metres, int orders)
    {
        var n = metres.Length;
        for (var k = Math.Min(MostOrders, orders); k >= 1; k--)
        {
            if (n - ((2 * k) + 1) >= LeastFree && OrderFit.Of(at, k) is { } fit)
            {
                return Judge(readings, at, metres, fit, k);
            }
        }

        return null;
    }

    private static SuspectReading? Judge(IReadOnlyList<DialReading> readings, double[] at, double[] metres, OrderFit fit, int orders)
    {
        var n = metres.Length;
        var free = n - fit.Unknowns;
        var residuals = fit.Residuals(metres);
        var squares = residuals.Sum(r => r * r);

        // Where all is rounding there is no scatter to hold anything against.
        var span = metres.Max() - metres.Min();
        if (squares <= 1e-18 * span * span)
        {
            return null;
        }

        var (worst, greatest) = (-1, 0.0);
        for (var i = 0; i < n; i++)
        {
            // A reading that the fit follows wholly says nothing about itself.
            var own = 1 - fit.Leverage(i);
            if (own <= 1e-6)
            {
                continue;
            }

            var within = residuals[i] * residuals[i] / own / (squares / free);
            var t = free - within <= 1e-9 * free ? double.PositiveInfinity : Math.Sqrt(within * (free - 1) / (free - within));
            if (t > greatest)
            {
                (worst, greatest) = (i, t);
            }
        }

        // The greatest of n is looked at, so the chance is shared out among n.
        if (worst < 0 || n * StudentTail.Of(greatest, free - 1) >= Figures.Of("uniformity.outlier-chance").Value)
        {
            return null;
        }

        double[] others = [.. at.Where((_, i) => i != worst)];
        if (OrderFit.Of(others, orders) is not { } without)
        {
            return null;
        }

        var x = without.Solve([.. metres.Where((_, i) => i != worst)]);
        var expected = x.Select((value, j) => value * OrderFit.Column(j, at[worst])).Sum();
        return new SuspectReading(worst, readings[worst], Length.FromMetres(expected), double.IsFinite(greatest) ? greatest : null, new HarmonicVector<Length>(new Complex(x[1], x[2])));
    }
}
