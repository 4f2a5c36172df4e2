using System.Numerics;

namespace Trundle.Engine.Balance;

/// <summary>
/// The singular values of a small complex matrix by one-sided Jacobi rotations: accurate also where the columns are nearly dependent,
/// since no product of the matrix with itself is formed.
/// </summary>
internal sealed class SingularValues
{
    // Below this share of the greatest singular value a direction counts as absent: rounding alone is of that size.
    private const double Rounding = 1e-13;

    private readonly Complex[][] _left;
    private readonly Complex[][] _right;
    private readonly double[] _values;

    private SingularValues(Complex[][] left, Complex[][] right, double[] values) => (_left, _right, _values) = (left, right, values);

    /// <summary>Greatest over least singular value; infinite where the columns are dependent.</summary>
    public double ConditionNumber
    {
        get
        {
            var most = _values.Max();
            var least = _values.Min();
            return most == 0 || least <= Rounding * most ? double.PositiveInfinity : most / least;
        }
    }

    /// <summary>Decomposes a matrix given by its columns, each of one length.</summary>
    public static SingularValues Of(IReadOnlyList<Complex[]> columns)
    {
        var n = columns.Count;
        var a = columns.Select(c => (Complex[])c.Clone()).ToArray();
        var v = Enumerable.Range(0, n).Select(j => Enumerable.Range(0, n).Select(i => i == j ? Complex.One : Complex.Zero).ToArray()).ToArray();
        for (var sweep = 0; sweep < 60 && Sweep(a, v); sweep++)
        {
        }

        var values = a.Select(column => Math.Sqrt(column.Sum(Square))).ToArray();
        for (var j = 0; j < n; j++)
        {
            if (values[j] > 0)
            {
                Scale(a[j], 1 / values[j]);
            }
        }

        return new SingularValues(a, v, values);
    }

    /// <summary>The shortest x that makes |A·x − b| least.</summary>
    public Complex[] LeastSquares(IReadOnlyList<Complex> b)
    {
        var x = new Complex[_values.Length];
        var most = _values.Max();
        for (var j = 0; j < _values.Length; j++)
        {
            if (_values[j] <= Rounding * most)
            {
                continue;
            }

            var share = Complex.Zero;
            for (var i = 0; i < b.Count; i++)
            {
                share += Complex.Conjugate(_left[j][i]) * b[i];
            }

            share /= _values[j];
            for (var i = 0; i < x.Length; i++)
            {
                x[i] += _right[j][i] * share;
            }
        }

        return x;
    }

    /// <summary>Makes every two columns perpendicular once; false where all were already.</summary>
    private static bool Sweep(Complex[][] a, Complex[][] v)
    {
        var turned = false;
        for (var p = 0; p < a.Length - 1; p++)
        {
            for (var q = p + 1; q < a.Length; q++)
            {
                var pp = a[p].Sum(Square);
                var qq = a[q].Sum(Square);
                var pq = Complex.Zero;
                for (var i = 0; i < a[p].Length; i++)
                {
                    pq += Complex.Conjugate(a[p][i]) * a[q][i];
                }

                var size = pq.Magnitude;
                if (size == 0 || size <= 1e-16 * Math.Sqrt(pp * qq))
                {
                    continue;
                }

                turned = true;
                var phase = Complex.Conjugate(pq) / size;
                var zeta = (qq - pp) / (2 * size);
                var t = (zeta < 0 ? -1 : 1) / (Math.Abs(zeta) + Math.Sqrt(1 + (zeta * zeta)));
                var c = 1 / Math.Sqrt(1 + (t * t));
                Turn(a[p], a[q], phase, c, c * t);
                Turn(v[p], v[q], phase, c, c * t);
            }
        }

        return turned;
    }

    private static void Turn(Complex[] first, Complex[] second, Complex phase, double c, double s)
    {
        for (var i = 0; i < first.Length; i++)
        {
            var x = first[i];
            var y = second[i] * phase;
            first[i] = (c * x) - (s * y);
            second[i] = (s * x) + (c * y);
        }
    }

    private static double Square(Complex value) => (value.Real * value.Real) + (value.Imaginary * value.Imaginary);

    private static void Scale(Complex[] column, double factor)
    {
        for (var i = 0; i < column.Length; i++)
        {
            column[i] *= factor;
        }
    }
}
