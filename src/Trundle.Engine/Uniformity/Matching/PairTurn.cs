using System.Numerics;

namespace Trundle.Engine.Uniformity.Matching;

/// <summary>
/// The turn of a tyre on a wheel that leaves least. In each plane what is left has the square A + |c|·cos(δ + arg c); the greatest of such waves
/// is least where one of them is least or where two of them are equal, so those places are all that has to be looked at.
/// </summary>
internal static class PairTurn
{
    /// <summary>The best turn in radians, 0 ≤ turn &lt; 2π, and what it leaves.</summary>
    /// <param name="tyre">By plane.</param>
    /// <param name="wheel">By plane.</param>
    /// <param name="stepRadians">Steps from nothing, or null for any turn.</param>
    public static (double Turn, double Left) Best(Complex[] tyre, Complex[] wheel, double? stepRadians)
    {
        var (best, least) = (0.0, Left(tyre, wheel, 0));
        foreach (var turn in stepRadians is { } step ? Steps(step) : Candidates(tyre, wheel))
        {
            var left = Left(tyre, wheel, turn);

            // A turn must be better than rounding to be worth naming: so equal ones fall to the first, and nothing to gain is no turn.
            if (left < least - (1e-12 * (least + Scale(tyre, wheel))))
            {
                (best, least) = (turn, left);
            }
        }

        return (best, least);
    }

    /// <summary>What a turn leaves: the greatest over the planes.</summary>
    public static double Left(Complex[] tyre, Complex[] wheel, double turn)
    {
        var turned = Complex.FromPolarCoordinates(1, turn);
        var greatest = 0.0;
        for (var p = 0; p < tyre.Length; p++)
        {
            greatest = Math.Max(greatest, (wheel[p] + (tyre[p] * turned)).Magnitude);
        }

        return greatest;
    }

    private static double Scale(Complex[] tyre, Complex[] wheel) => Math.Max(tyre.Max(t => t.Magnitude), wheel.Max(w => w.Magnitude));

    private static IEnumerable<double> Steps(double step)
    {
        for (var k = 1; k * step < (2 * Math.PI) - 1e-9; k++)
        {
            yield return k * step;
        }
    }

    private static IEnumerable<double> Candidates(Complex[] tyre, Complex[] wheel)
    {
        Complex[] waves = [.. tyre.Select((t, p) => 2 * Complex.Conjugate(wheel[p]) * t)];
        double[] means = [.. tyre.Select((t, p) => Square(t) + Square(wheel[p]))];
        for (var p = 0; p < waves.Length; p++)
        {
            yield return InOneTurn(Math.PI - waves[p].Phase);
            for (var q = 0; q < p; q++)
            {
                var difference = waves[p] - waves[q];
                var cosine = (means[q] - means[p]) / difference.Magnitude;
                if (Math.Abs(cosine) <= 1)
                {
                    yield return InOneTurn(Math.Acos(cosine) - difference.Phase);
                    yield return InOneTurn(-Math.Acos(cosine) - difference.Phase);
                }
            }
        }
    }

    private static double InOneTurn(double radians)
    {
        var turned = radians % (2 * Math.PI);
        return turned < 0 ? turned + (2 * Math.PI) : turned;
    }

    private static double Square(Complex c) => (c.Real * c.Real) + (c.Imaginary * c.Imaginary);
}
