namespace Trundle.Engine.Uniformity;

/// <summary>
/// Least squares of a mean and whole orders on values at any places around, by Gram-Schmidt twice over, which stays accurate where places
/// crowd. Columns: 1, cos θ, sin θ, cos 2θ, sin 2θ …
/// </summary>
internal sealed class OrderFit
{
    // The sine of a column's angle to those before it, below which the places cannot tell it from them.
    private const double Dependent = 1e-4;

    private readonly double[][] _q;
    private readonly double[,] _r;
    private readonly int _count;

    private OrderFit(double[][] q, double[,] r, int count) => (_q, _r, _count) = (q, r, count);

    /// <summary>How many unknowns: the mean and two for each order.</summary>
    public int Unknowns => _q.Length;

    /// <summary>The fit for places and orders, or null where the places cannot tell the orders apart.</summary>
    public static OrderFit? Of(IReadOnlyList<double> placesRadians, int orders)
    {
        var n = placesRadians.Count;
        var p = (2 * orders) + 1;
        if (n < p)
        {
            return null;
        }

        var q = new double[p][];
        var r = new double[p, p];
        for (var j = 0; j < p; j++)
        {
            q[j] = [.. placesRadians.Select(a => Column(j, a))];
            var whole = Norm(q[j]);
            for (var pass = 0; pass < 2; pass++)
            {
                for (var k = 0; k < j; k++)
                {
                    var share = Dot(q[k], q[j]);
                    r[k, j] += share;
                    for (var i = 0; i < n; i++)
                    {
                        q[j][i] -= share * q[k][i];
                    }
                }
            }

            var left = Norm(q[j]);
            if (left <= Dependent * whole || whole < 1e-9)
            {
                return null;
            }

            r[j, j] = left;
            for (var i = 0; i < n; i++)
            {
                q[j][i] /= left;
            }
        }

        return new OrderFit(q, r, n);
    }

    /// <summary>The mean, then cosine and sine of each order.</summary>
    public double[] Solve(IReadOnlyList<double> values)
    {
        var x = new double[Unknowns];
        for (var j = Unknowns - 1; j >= 0; j--)
        {
            x[j] = Dot(_q[j], values);
            for (var k = j + 1; k < Unknowns; k++)
            {
                x[j] -= _r[j, k] * x[k];
            }

            x[j] /= _r[j, j];
        }

        return x;
    }

    /// <summary>Values less what was fitted.</summary>
    public double[] Residuals(IReadOnlyList<double> values)
    {
        double[] left = [.. values];
        foreach (var q in _q)
        {
            var share = Dot(q, values);
            for (var i = 0; i < _count; i++)
            {
                left[i] -= share * q[i];
            }
        }

        return left;
    }

    /// <summary>How much a reading pulls the fit towards itself, 0 to 1.</summary>
    public double Leverage(int reading) => _q.Sum(q => q[reading] * q[reading]);

    /// <summary>Standard uncertainty of an order's amplitude, along its own direction, for a standard uncertainty 1 of every reading.</summary>
    public double AmplitudeGain(int order, double phaseRadians)
    {
        // The amplitude is c·x with c = cos φ at the cosine and sin φ at the sine; its variance is |R⁻ᵀ c|².
        var c = new double[Unknowns];
        c[(2 * order) - 1] = Math.Cos(phaseRadians);
        c[2 * order] = Math.Sin(phaseRadians);
        var squares = 0.0;
        for (var j = 0; j < Unknowns; j++)
        {
            for (var k = 0; k < j; k++)
            {
                c[j] -= _r[k, j] * c[k];
            }

            c[j] /= _r[j, j];
            squares += c[j] * c[j];
        }

        return Math.Sqrt(squares);
    }

    internal static double Column(int j, double radians)
    {
        var order = (j + 1) / 2;
        return j == 0 ? 1 : j % 2 == 1 ? Math.Cos(order * radians) : Math.Sin(order * radians);
    }

    private static double Dot(double[] a, IReadOnlyList<double> b)
    {
        var sum = 0.0;
        for (var i = 0; i < a.Length; i++)
        {
            sum += a[i] * b[i];
        }

        return sum;
    }

    private static double Norm(double[] a) => Math.Sqrt(Dot(a, a));
}
