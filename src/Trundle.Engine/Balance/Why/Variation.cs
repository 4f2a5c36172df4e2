using System.Numerics;

namespace Trundle.Engine.Balance.Why;

/// <summary>One form that a cause may take (this weight, that interval), with its share of the cause.</summary>
/// <param name="cause">The cause.</param>
/// <param name="subject">What it is about.</param>
internal abstract class Variation(WhyCause cause, WhySubject subject)
{
    public WhyCause Cause { get; } = cause;

    public WhySubject Subject { get; } = subject;

    /// <summary>The part of the cause's prior that goes to this form.</summary>
    public double Share { get; set; } = 1;

    /// <summary>The logarithm of how much likelier the displays are than by repeatability alone, every size weighed by its prior.</summary>
    public abstract double LogRatio(SpinDisplays displays);

    /// <summary>What is left of the displays' square at the likeliest size.</summary>
    public abstract double SquaresLeft(SpinDisplays displays);

    /// <summary>The logarithm of a sum of numbers given by their logarithms.</summary>
    internal static double LogSum(IReadOnlyList<double> logs)
    {
        var greatest = double.NegativeInfinity;
        foreach (var log in logs)
        {
            greatest = Math.Max(greatest, log);
        }

        if (double.IsNegativeInfinity(greatest))
        {
            return greatest;
        }

        var sum = 0.0;
        foreach (var log in logs)
        {
            sum += Math.Exp(log - greatest);
        }

        return greatest + Math.Log(sum);
    }
}

/// <summary>A prior of several real sizes at once: a bell for each.</summary>
internal sealed record Bell(double Weight, double[] Means, double[] Deviations)
{
    /// <summary>Bells of one size.</summary>
    public static IReadOnlyList<Bell> Of(IEnumerable<SizePart> parts) => Normalised(parts.Select(p => new Bell(p.Weight, [p.Mean], [p.Deviation!.Value])));

    /// <summary>Bells of one complex size, both its components alike.</summary>
    public static IReadOnlyList<Bell> OfBoth(IEnumerable<SizePart> parts, double unit) =>
        Normalised(parts.Select(p => new Bell(p.Weight, [0, 0], [p.Deviation!.Value * unit, p.Deviation!.Value * unit])));

    public static IReadOnlyList<Bell> Normalised(IEnumerable<Bell> bells)
    {
        List<Bell> list = [.. bells];
        var sum = list.Sum(b => b.Weight);
        return [.. list.Select(b => b with { Weight = b.Weight / sum })];
    }

    /// <summary>No size at all.</summary>
    public static IReadOnlyList<Bell> None { get; } = [new(1, [], [])];
}

/// <summary>
/// A form whose sizes move the displays in proportion: displays = no fault + shift + Σ size·direction. With bells as priors the integral over the
/// sizes has a closed form.
/// </summary>
internal sealed class LinearVariation : Variation
{
    private readonly Complex[] _shift;
    private readonly Complex[][] _directions;
    private readonly IReadOnlyList<Bell> _prior;

    public LinearVariation(WhyCause cause, WhySubject subject, SpinDisplays displays, Complex[]? shift, Complex[][] directions, IReadOnlyList<Bell> prior)
        : base(cause, subject)
    {
        _shift = displays.Centred(shift ?? new Complex[2 * displays.Spins]);
        _directions = [.. directions.Select(displays.Centred)];
        _prior = prior;
    }

    /// <summary>A second measurement of the one size itself: its value and variance.</summary>
    public (double Value, double Variance)? MeasuredAgain { get; init; }

    public override double LogRatio(SpinDisplays displays)
    {
        var (start, a, b) = Equations(displays);
        return start + LogSum([.. _prior.Select(bell => Math.Log(bell.Weight) + Weighed(bell, a, b, out _))]);
    }

    public override double SquaresLeft(SpinDisplays displays)
    {
        var (start, a, b) = Equations(displays);
        var best = double.NegativeInfinity;
        double[] sizes = [];
        foreach (var bell in _prior)
        {
            var log = Math.Log(bell.Weight) + Weighed(bell, a, b, out var mean);
            (best, sizes) = log > best ? (log, mean) : (best, sizes);
        }

        var left = (Complex[])displays.Residual.Clone();
        for (var i = 0; i < left.Length; i++)
        {
            left[i] -= _shift[i];
            for (var k = 0; k < sizes.Length; k++)
            {
                left[i] -= sizes[k] * _directions[k][i];
            }
        }

        return displays.Dot(left, left).Real;
    }

    /// <summary>By the displays alone, with no prior: the sum of squares' curvature and slope for each size; A·size = b where they are met best.</summary>
    public (double[,] A, double[] B) LeastSquares(SpinDisplays displays)
    {
        var (_, a, b) = Equations(displays);
        return (a, b);
    }

    private (double Start, double[,] A, double[] B) Equations(SpinDisplays displays)
    {
        var k = _directions.Length;
        var shifted = (Complex[])displays.Residual.Clone();
        for (var i = 0; i < shifted.Length; i++)
        {
            shifted[i] -= _shift[i];
        }

        // The difference of the squares, not each, so that no digits are lost where both are large.
        var start = displays.Dot(displays.Residual, _shift).Real - (0.5 * displays.Dot(_shift, _shift).Real);
        var a = new double[k, k];
        var b = new double[k];
        for (var i = 0; i < k; i++)
        {
            b[i] = displays.Dot(shifted, _directions[i]).Real;
            for (var j = 0; j < k; j++)
            {
                a[i, j] = displays.Dot(_directions[i], _directions[j]).Real;
            }
        }

        if (MeasuredAgain is { } again)
        {
            a[0, 0] += 1 / again.Variance;
            b[0] += again.Value / again.Variance;
        }

        return (start, a, b);
    }

    /// <summary>∫ exp(b·x − ½x'Ax)·N(x; mean, deviation²) dx as a logarithm, and where the integrand's middle lies.</summary>
    private static double Weighed(Bell bell, double[,] a, double[] b, out double[] middle)
    {
        var k = bell.Means.Length;
        middle = new double[k];
        if (k == 0)
        {
            return 0;
        }

        // In x = mean + deviation·y the matrix is I + dAd and the slope d(b − A·mean).
        Span<double> slope = stackalloc double[k];
        Span<double> root = stackalloc double[k * k];
        var log = 0.0;
        for (var i = 0; i < k; i++)
        {
            var pull = 0.0;
            for (var j = 0; j < k; j++)
            {
                pull += a[i, j] * bell.Means[j];
                root[(i * k) + j] = (bell.Deviations[i] * a[i, j] * bell.Deviations[j]) + (i == j ? 1 : 0);
            }

            log += bell.Means[i] * (b[i] - (0.5 * pull));
            slope[i] = bell.Deviations[i] * (b[i] - pull);
        }

        // Cholesky in place; the matrix is at least I.
        for (var i = 0; i < k; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = root[(i * k) + j];
                for (var m = 0; m < j; m++)
                {
                    sum -= root[(i * k) + m] * root[(j * k) + m];
                }

                root[(i * k) + j] = i == j ? Math.Sqrt(Math.Max(sum, 1e-300)) : sum / root[(j * k) + j];
            }

            log -= Math.Log(root[(i * k) + i]);
        }

        for (var i = 0; i < k; i++)
        {
            for (var j = 0; j < i; j++)
            {
                slope[i] -= root[(i * k) + j] * slope[j];
            }

            slope[i] /= root[(i * k) + i];
            log += 0.5 * slope[i] * slope[i];
        }

        for (var i = k - 1; i >= 0; i--)
        {
            for (var j = i + 1; j < k; j++)
            {
                slope[i] -= root[(j * k) + i] * slope[j];
            }

            slope[i] /= root[(i * k) + i];
            middle[i] = bell.Means[i] + (bell.Deviations[i] * slope[i]);
        }

        return log;
    }
}
