namespace Trundle.Engine.Balance.Why;

/// <summary>
/// A size by the displays alone: every value that can be is held alike beforehand, so that exact displays give the exact size back. The value is the
/// middle of what can be, and the interval leaves the same part out on each side.
/// </summary>
internal static class SizeEstimate
{
    /// <summary>A size whose likelihood is a bell, cut off where it cannot be.</summary>
    /// <param name="curvature">The sum of squares' curvature; 0 where the displays say nothing.</param>
    /// <param name="slope">Its slope: the bell's middle times the curvature.</param>
    /// <param name="least">The least that can be.</param>
    /// <param name="most">The most that can be.</param>
    /// <param name="inside">The part that the interval holds.</param>
    /// <returns>Null where the displays say nothing.</returns>
    public static (double Value, double Low, double High)? OfBell(double curvature, double slope, double least, double most, double inside)
    {
        var tail = (1 - inside) / 2;
        var deviation = curvature > 0 ? 1 / Math.Sqrt(curvature) : double.PositiveInfinity;
        if (deviation > most - least)
        {
            return null;
        }

        var middle = slope / curvature;
        var (from, to) = (Math.Max(least, middle - (9 * deviation)), Math.Min(most, middle + (9 * deviation)));
        if (from >= to)
        {
            // The bell lies wholly outside: what can be ends here.
            var edge = middle < least ? least : most;
            return (edge, edge, edge);
        }

        // Told against its height at the nearest point, so that a far tail keeps its shape.
        var nearest = Math.Clamp(middle, from, to);
        return Quantiles(from, to, x => Math.Exp(-0.5 * curvature * (x - nearest) * (x + nearest - (2 * middle))), tail);
    }

    /// <summary>A turn whose likelihood is a bell wound round the circle, in radians about its middle.</summary>
    public static (double Value, double Low, double High) OfTurn(double middle, double concentration, double inside)
    {
        var reach = Math.Min(Math.PI, 9 / Math.Sqrt(Math.Max(concentration, 1e-9)));
        var (_, low, high) = Quantiles(-reach, reach, x => Math.Exp(-2 * concentration * Math.Pow(Math.Sin(x / 2), 2)), (1 - inside) / 2);
        return (middle, middle + low, middle + high);
    }

    private static (double Value, double Low, double High) Quantiles(double from, double to, Func<double, double> density, double tail)
    {
        const int cells = 400;
        var width = (to - from) / cells;
        var sums = new double[cells + 1];
        for (var i = 0; i < cells; i++)
        {
            sums[i + 1] = sums[i] + density(from + ((i + 0.5) * width));
        }

        return (At(0.5), At(tail), At(1 - tail));

        double At(double part)
        {
            var wanted = part * sums[cells];
            var i = 0;
            while (i < cells - 1 && sums[i + 1] < wanted)
            {
                i++;
            }

            var inCell = sums[i + 1] - sums[i];
            return from + ((i + (inCell > 0 ? (wanted - sums[i]) / inCell : 0.5)) * width);
        }
    }
}
