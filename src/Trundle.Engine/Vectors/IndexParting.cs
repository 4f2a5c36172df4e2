using System.Numerics;

namespace Trundle.Engine.Vectors;

/// <summary>
/// Two parts that add up as once-per-turn vectors, parted by turning one of them on the other by known angles between measurements:
/// M(α) = fixed + turned · e^{iα}. A tyre on its wheel and a wheel on a balancer's shaft are both this.
/// </summary>
internal sealed class IndexParting
{
    private IndexParting(Complex fixedPart, Complex turnedPart, double noiseGain, double misfit, double? scatter)
    {
        Fixed = fixedPart;
        Turned = turnedPart;
        NoiseGain = noiseGain;
        MisfitRootMeanSquare = misfit;
        Scatter = scatter;
    }

    /// <summary>The part that stayed.</summary>
    public Complex Fixed { get; }

    /// <summary>The part that was turned, as it stood at turn nothing.</summary>
    public Complex Turned { get; }

    /// <summary>Standard uncertainty of either part over that of one measurement.</summary>
    public double NoiseGain { get; }

    /// <summary>Root mean square of what the two parts do not explain.</summary>
    public double MisfitRootMeanSquare { get; }

    /// <summary>Standard deviation of a component of one measurement about the two parts; null where there are only two, which cannot show it.</summary>
    public double? Scatter { get; }

    /// <summary>Standard error of either part along any direction, from the scatter; null likewise.</summary>
    public double? StandardError => Scatter * NoiseGain;

    /// <summary>How noise grows for these turns: infinite where all turns are the same, 0.707 for two measurements half a turn apart.</summary>
    public static double NoiseGainOf(IReadOnlyList<double> turnsRadians)
    {
        var n = turnsRadians.Count;
        var sum = Sum(turnsRadians);
        var spread = ((double)n * n) - ((sum.Real * sum.Real) + (sum.Imaginary * sum.Imaginary));
        return spread <= 1e-12 * n * n ? double.PositiveInfinity : Math.Sqrt(n / spread);
    }

    /// <summary>The parts that meet all measurements best by least squares, exactly where there are two.</summary>
    /// <param name="measured">The sums, in the fixed part's frame; at least two.</param>
    /// <param name="turnsRadians">The turn at each; the noise gain must be finite.</param>
    public static IndexParting Of(IReadOnlyList<Complex> measured, IReadOnlyList<double> turnsRadians)
    {
        var n = measured.Count;
        var gain = NoiseGainOf(turnsRadians);
        var (sumM, sumMz) = (Complex.Zero, Complex.Zero);
        for (var k = 0; k < n; k++)
        {
            sumM += measured[k];
            sumMz += measured[k] * Complex.FromPolarCoordinates(1, -turnsRadians[k]);
        }

        var sum = Sum(turnsRadians);
        var turned = ((n * sumMz) - (Complex.Conjugate(sum) * sumM)) * (gain * gain / n);
        var still = (sumM - (sum * turned)) / n;
        var squares = 0.0;
        for (var k = 0; k < n; k++)
        {
            var miss = (measured[k] - still - (turned * Complex.FromPolarCoordinates(1, turnsRadians[k]))).Magnitude;
            squares += miss * miss;
        }

        // n complex measurements less two complex parts; half of a complex variance lies along any one direction.
        double? scatter = n > 2 ? Math.Sqrt(squares / (n - 2) / 2) : null;
        return new IndexParting(still, turned, gain, Math.Sqrt(squares / n), scatter);
    }

    private static Complex Sum(IReadOnlyList<double> turnsRadians) =>
        turnsRadians.Aggregate(Complex.Zero, (s, a) => s + Complex.FromPolarCoordinates(1, a));
}
