using System.Numerics;

namespace Trundle.Engine.Balance.Spin;

/// <summary>
/// The errors of the two transducers and how far they go together, for a component of each. What is common to both, as a mark that is off or a mass that sits off its
/// place, moves them as unbalance does and goes through the inverse as little as unbalance; taken as independent it would come out too great by its condition number.
/// </summary>
/// <param name="First">Variance of a component of the first reading.</param>
/// <param name="Second">Of the second.</param>
/// <param name="Together">The mean of the first's error times the second's conjugate, as leading phasors in the wheel's sense; 0 where they are independent.</param>
internal readonly record struct PairErrors(double First, double Second, Complex Together)
{
    public static PairErrors Independent(double first, double second) => new(first * first, second * second, Complex.Zero);

    /// <summary>Of an error that moves both readings as this pair does.</summary>
    public static PairErrors Common(Complex first, Complex second) => new(Square(first), Square(second), first * Complex.Conjugate(second));

    /// <summary>From standard errors and the correlation between them.</summary>
    public static PairErrors Of(double first, double second, Complex correlation) => new(first * first, second * second, first * second * correlation);

    public static PairErrors operator +(PairErrors a, PairErrors b) => new(a.First + b.First, a.Second + b.Second, a.Together + b.Together);

    public static PairErrors operator *(double k, PairErrors a) => new(k * a.First, k * a.Second, k * a.Together);

    /// <summary>How far they go together: of magnitude 1 where one is the other turned and stretched.</summary>
    public Complex Correlation => First > 0 && Second > 0 ? Together / Math.Sqrt(First * Second) : Complex.Zero;

    /// <summary>The variance of a component of a·first + b·second.</summary>
    public double Through(Complex a, Complex b) =>
        Math.Max(0, (Square(a) * First) + (Square(b) * Second) + (2 * (a * Complex.Conjugate(b) * Together).Real));

    /// <summary>What a pair of errors is in squares of these, |first|² and |second|² with what goes together taken off; null where the one tells the other wholly.</summary>
    public double? ChiSquared(Complex first, Complex second)
    {
        var determinant = (First * Second) - Square(Together);
        return determinant > 1e-9 * First * Second
            ? ((Square(first) * Second) + (Square(second) * First) - (2 * (first * Complex.Conjugate(second) * Complex.Conjugate(Together)).Real)) / determinant
            : null;
    }

    private static double Square(Complex z) => (z.Real * z.Real) + (z.Imaginary * z.Imaginary);
}
