using System.Numerics;

namespace Trundle.Engine.Balance.Why;

/// <summary>
/// Weights that all sit a turn away from where they were meant to. The displays' square goes as the cosine of the turn, so that the likelihood is a
/// bell wound round the circle; the integral over the turn is taken by the trapezoidal rule, which on a circle gains digits with every point.
/// </summary>
internal sealed class TurnVariation : Variation
{
    private const int Points = 256;
    private readonly Complex[] _effect;
    private readonly IReadOnlyList<SizePart> _prior;

    /// <param name="cause">The cause.</param>
    /// <param name="subject">The weights.</param>
    /// <param name="displays">The displays.</param>
    /// <param name="effect">What the weights do to the displays at the places that they were meant for.</param>
    /// <param name="prior">Prior of the turn in degrees.</param>
    public TurnVariation(WhyCause cause, WhySubject subject, SpinDisplays displays, Complex[] effect, IReadOnlyList<SizePart> prior)
        : base(cause, subject)
    {
        _effect = displays.Centred(effect);
        _prior = prior;
    }

    /// <summary>The turn in radians that meets the displays best, and how sharply: the concentration of the wound bell.</summary>
    public (double Turn, double Concentration) LeastSquares(SpinDisplays displays)
    {
        var h = displays.Dot(displays.Residual, _effect) + displays.Dot(_effect, _effect);
        return (h.Phase, h.Magnitude);
    }

    public override double LogRatio(SpinDisplays displays)
    {
        var (middle, concentration) = LeastSquares(displays);
        return AtBest(displays) + Math.Log(Integral(middle, concentration));
    }

    public override double SquaresLeft(SpinDisplays displays) => displays.Squares - (2 * AtBest(displays));

    /// <summary>The log ratio at the best turn: |r|² − |r + c − c·e^{iφ}|² is 2(|h| − Re⟨r,c⟩ − |c|²).</summary>
    private double AtBest(SpinDisplays displays)
    {
        var own = displays.Dot(_effect, _effect).Real;
        var product = displays.Dot(displays.Residual, _effect);

        // |own + product| − own − Re product without cancelling: Im² over the sum.
        var real = own + product.Real;
        var size = Math.Sqrt((real * real) + (product.Imaginary * product.Imaginary));
        return real >= 0 ? (size + real > 0 ? product.Imaginary * product.Imaginary / (size + real) : 0) : size - real;
    }

    /// <summary>∫ prior(φ)·exp(κ(cos(φ − φ₀) − 1)) dφ.</summary>
    private double Integral(double middle, double concentration)
    {
        // Nine standard deviations to each side hold all; a flat bell needs the whole circle.
        var reach = Math.Min(Math.PI, 9 / Math.Sqrt(Math.Max(concentration, 1e-9)));
        var width = 2 * reach / Points;
        var sum = 0.0;
        for (var i = 0; i < Points; i++)
        {
            var off = -reach + ((i + 0.5) * width);
            var half = Math.Sin(off / 2);
            sum += Prior(middle + off) * Math.Exp(-2 * concentration * half * half);
        }

        return sum * width;
    }

    private double Prior(double turn)
    {
        var density = 0.0;
        foreach (var part in _prior)
        {
            if (part.Deviation is not { } degrees)
            {
                density += part.Weight / (2 * Math.PI);
                continue;
            }

            var deviation = double.DegreesToRadians(degrees);
            var off = Math.IEEERemainder(turn - double.DegreesToRadians(part.Mean), 2 * Math.PI);
            density += part.Weight * Math.Exp(-0.5 * off * off / (deviation * deviation)) / (deviation * Math.Sqrt(2 * Math.PI));
        }

        return density;
    }
}

/// <summary>A random vector of its own in every spin: the object lies elsewhere each time.</summary>
internal sealed class WanderVariation : Variation
{
    private readonly double[] _logs;

    /// <param name="cause">The cause.</param>
    /// <param name="subject">The whole.</param>
    /// <param name="displays">The displays.</param>
    /// <param name="perUnit">What each display shows of 1 g·mm.</param>
    /// <param name="sameInBoth">The two planes see the same vector, each its part; else each sees one of its own.</param>
    /// <param name="prior">Prior of the deviation of a component in g·mm.</param>
    public WanderVariation(WhyCause cause, WhySubject subject, SpinDisplays displays, ForwardModel.Effect perUnit, bool sameInBoth, IReadOnlyList<SizePart> prior)
        : base(cause, subject)
    {
        var without = displays.LogLikelihood((0, 0), 0);
        _logs = new double[prior.Count];
        for (var i = 0; i < prior.Count; i++)
        {
            var variance = prior[i].Deviation!.Value * prior[i].Deviation!.Value;
            var own = (Inner: variance * perUnit.Inner * perUnit.Inner, Outer: variance * perUnit.Outer * perUnit.Outer);
            var shared = sameInBoth ? variance * perUnit.Inner * perUnit.Outer : 0;
            _logs[i] = Math.Log(prior[i].Weight) + displays.LogLikelihood(own, shared) - without;
        }
    }

    public override double LogRatio(SpinDisplays displays) => LogSum(_logs);

    /// <summary>A random vector in each spin can meet anything: what is left is what repeatability leaves, or less.</summary>
    public override double SquaresLeft(SpinDisplays displays) => Math.Min(displays.Squares, displays.Freedom);
}
