using System.Numerics;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Why;

/// <summary>
/// What the displays of all spins would be: vectors of 2·spins complex grams, inner and outer plane of each spin in turn, each at its plane's
/// radius and reckoned with the settings entered. docs/theory/why.md holds the algebra.
/// </summary>
internal sealed class ForwardModel
{
    private readonly double _inner;
    private readonly double _outer;
    private readonly double _innerRadius;
    private readonly double _outerRadius;
    private readonly double _apart;

    public ForwardModel(WhyProblem problem)
    {
        Problem = problem;
        var planes = WhyProblem.Planes(problem.Entered, problem.Profile, problem.InnerKind, problem.OuterKind)
            ?? throw new ArgumentException("The planes entered do not lie apart.", nameof(problem));
        Planes = planes;
        (_inner, _outer) = (planes.Inner.Axial.Millimetres, planes.Outer.Axial.Millimetres);
        (_innerRadius, _outerRadius) = (planes.Inner.Radius.Millimetres, planes.Outer.Radius.Millimetres);
        _apart = _outer - _inner;
        Spins = problem.Spins.Count;
        Weights = [.. problem.Spins.SelectMany((s, i) => s.FittedAfter.Where(w => w.Mass.Si > 0).Select(w => new Placed(i, w, UnbalanceVector.Phasor(w.Mass.Grams, w.Place))))];
    }

    public WhyProblem Problem { get; }

    public PlanePair Planes { get; }

    public int Spins { get; }

    public IReadOnlyList<Placed> Weights { get; }

    /// <summary>A weight with the index of the spin after which it was fitted, and its mass as a phasor in grams.</summary>
    public readonly record struct Placed(int Spin, WeightFitted Weight, Complex Grams);

    /// <summary>What one gram in a radius and a plane takes from each display, or a change of it by a derivative.</summary>
    public readonly record struct Effect(double Inner, double Outer)
    {
        public static Effect operator -(Effect left, Effect right) => new(left.Inner - right.Inner, left.Outer - right.Outer);

        public static Effect operator *(Effect effect, double factor) => new(effect.Inner * factor, effect.Outer * factor);
    }

    public double RadiusOf(PlaneSide side) => side == PlaneSide.Inner ? _innerRadius : _outerRadius;

    public double AxialOf(PlaneSide side) => side == PlaneSide.Inner ? _inner : _outer;

    /// <summary>What the display shows of an unbalance of 1 g·mm at a distance along the shaft: sum and first moment are kept.</summary>
    public Effect OfUnbalance(double axialMm) => new((_outer - axialMm) / (_apart * _innerRadius), (axialMm - _inner) / (_apart * _outerRadius));

    /// <summary>What one gram at a radius and a distance changes: what has to be added gets less by it.</summary>
    public Effect OfGram(double radiusMm, double axialMm) => OfUnbalance(axialMm) * -radiusMm;

    /// <summary>What one gram changes where the side's plane is just as entered.</summary>
    public Effect AsEntered(PlaneSide side) => OfGram(RadiusOf(side), AxialOf(side));

    /// <summary>How that changes with each millimetre that the plane lies further out.</summary>
    public Effect PerAxialMillimetre(PlaneSide side) => new(RadiusOf(side) / (_apart * _innerRadius), -RadiusOf(side) / (_apart * _outerRadius));

    /// <summary>How that changes with each millimetre of rim diameter.</summary>
    public Effect PerDiameterMillimetre(PlaneSide side) => OfUnbalance(AxialOf(side)) * -0.5;

    /// <summary>The sum of weights' effects on every display, each from the spin after its fitting on.</summary>
    public Complex[] Sum(IEnumerable<Placed> weights, Func<Placed, Effect> effect)
    {
        var sum = new Complex[2 * Spins];
        foreach (var weight in weights)
        {
            var e = effect(weight);
            Add(sum, weight.Spin + 1, weight.Grams * e.Inner, weight.Grams * e.Outer);
        }

        return Gathered(sum);
    }

    /// <summary>A change that comes with a spin and stays.</summary>
    public Complex[] Step(int fromSpin, Complex inner, Complex outer)
    {
        var step = new Complex[2 * Spins];
        Add(step, fromSpin, inner, outer);
        return Gathered(step);
    }

    private void Add(Complex[] vector, int spin, Complex inner, Complex outer)
    {
        if (spin < Spins)
        {
            vector[2 * spin] += inner;
            vector[(2 * spin) + 1] += outer;
        }
    }

    private static Complex[] Gathered(Complex[] changes)
    {
        for (var i = 2; i < changes.Length; i++)
        {
            changes[i] += changes[i - 2];
        }

        return changes;
    }
}
