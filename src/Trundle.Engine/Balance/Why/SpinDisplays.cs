using System.Numerics;

namespace Trundle.Engine.Balance.Why;

/// <summary>
/// The displays less what the fitted weights should have done, and how surely each is known. The wheel's unbalance before the first spin is
/// unknown and may be anything: it is taken out by leaving of every vector only what differs from spin to spin.
/// </summary>
internal sealed class SpinDisplays
{
    private readonly double[] _certainty;
    private readonly Complex[] _raw;

    public SpinDisplays(ForwardModel model)
    {
        var problem = model.Problem;
        Spins = model.Spins;
        var repeatability = problem.Repeatability.Grams;

        // A value rounded to a step is off by anything up to half of it; one that is hidden may lie anywhere in a circle.
        var rounding = problem.Profile.DisplayStep is { } step ? step.Grams * step.Grams / 12 : 0;
        var hidden = problem.Profile.DisplayHidesBelow is { } below ? below.Grams * below.Grams / 4 : 0;
        var usual = (repeatability * repeatability) + rounding;
        Deviation = Math.Sqrt(usual);

        // An angle rounded to a step moves the place sideways: its mean square, halved between the two components.
        var sideways = problem.AngleStep is { } turn ? turn.Radians * turn.Radians / 24 : 0;
        _certainty = new double[2 * Spins];
        _raw = model.Sum(model.Weights, w => model.AsEntered(w.Weight.Plane));
        for (var j = 0; j < Spins; j++)
        {
            var display = problem.Spins[j].Display;
            Put(2 * j, display.Inner.GramMillimetres / model.Planes.Inner.Radius.Millimetres);
            Put((2 * j) + 1, display.Outer.GramMillimetres / model.Planes.Outer.Radius.Millimetres);
        }

        Residual = Centred(_raw);
        Squares = Dot(Residual, Residual).Real;

        void Put(int at, Complex grams)
        {
            _raw[at] = grams - _raw[at];
            _certainty[at] = 1 / (usual + (grams == Complex.Zero ? hidden : 0) + (sideways * ((grams.Real * grams.Real) + (grams.Imaginary * grams.Imaginary))));
        }
    }

    public int Spins { get; }

    /// <summary>One standard deviation of a component, with rounding.</summary>
    public double Deviation { get; }

    /// <summary>What differs from spin to spin though the weights should have made it alike.</summary>
    public Complex[] Residual { get; }

    /// <summary>Its square, each component over its variance.</summary>
    public double Squares { get; }

    /// <summary>Components that repeatability moves freely: four for every spin after the first.</summary>
    public int Freedom => 4 * (Spins - 1);

    /// <summary>A vector with each plane's weighted mean over the spins taken off.</summary>
    public Complex[] Centred(Complex[] vector)
    {
        var centred = new Complex[vector.Length];
        for (var p = 0; p < 2; p++)
        {
            var (sum, weight) = (Complex.Zero, 0.0);
            for (var i = p; i < vector.Length; i += 2)
            {
                sum += vector[i] * _certainty[i];
                weight += _certainty[i];
            }

            var mean = sum / weight;
            for (var i = p; i < vector.Length; i += 2)
            {
                centred[i] = vector[i] - mean;
            }
        }

        return centred;
    }

    /// <summary>The product of two centred vectors, the second conjugate, each component over its variance.</summary>
    public Complex Dot(Complex[] left, Complex[] right)
    {
        var (re, im) = (0.0, 0.0);
        for (var i = 0; i < left.Length; i++)
        {
            var (a, b, w) = (left[i], right[i], _certainty[i]);
            re += w * ((a.Real * b.Real) + (a.Imaginary * b.Imaginary));
            im += w * ((a.Imaginary * b.Real) - (a.Real * b.Imaginary));
        }

        return new Complex(re, im);
    }

    /// <summary>
    /// The logarithm of how likely the displays are, but for a constant, where every spin has a random vector of its own on top of repeatability:
    /// with variance <paramref name="own"/> in each plane, of which <paramref name="shared"/> is the same in both.
    /// </summary>
    public double LogLikelihood((double Inner, double Outer) own, double shared)
    {
        // Each spin's covariance is [a c; c b], alike for its real and imaginary parts. With P the sum of the inverses and m that of the inverses
        // times the displays, the unknown start integrates to −log det P and leaves ½(Σ r'Σ⁻¹r − m'P⁻¹m).
        var (p11, p12, p22) = (0.0, 0.0, 0.0);
        var (m1, m2) = (Complex.Zero, Complex.Zero);
        var (squares, logs) = (0.0, 0.0);
        for (var j = 0; j < Spins; j++)
        {
            var (a, b) = ((1 / _certainty[2 * j]) + own.Inner, (1 / _certainty[(2 * j) + 1]) + own.Outer);
            var determinant = (a * b) - (shared * shared);
            var (i11, i12, i22) = (b / determinant, -shared / determinant, a / determinant);
            var (r1, r2) = (Residual[2 * j], Residual[(2 * j) + 1]);
            var (s1, s2) = ((i11 * r1) + (i12 * r2), (i12 * r1) + (i22 * r2));
            squares += (s1 * Complex.Conjugate(r1)).Real + (s2 * Complex.Conjugate(r2)).Real;
            (m1, m2) = (m1 + s1, m2 + s2);
            (p11, p12, p22) = (p11 + i11, p12 + i12, p22 + i22);
            logs += Math.Log(determinant);
        }

        var det = (p11 * p22) - (p12 * p12);
        var explained = ((p22 * Square(m1)) - (2 * p12 * (m1 * Complex.Conjugate(m2)).Real) + (p11 * Square(m2))) / det;
        return (-0.5 * (squares - explained)) - logs - Math.Log(det);

        static double Square(Complex c) => (c.Real * c.Real) + (c.Imaginary * c.Imaginary);
    }
}
