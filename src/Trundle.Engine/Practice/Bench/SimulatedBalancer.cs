using Trundle.Engine.Balance;
using Trundle.Measures;

namespace Trundle.Engine.Practice.Bench;

/// <summary>What a spin shows.</summary>
/// <param name="Needed">What to add in each plane that the balancer reckons with, as shown: rounded to its steps.</param>
/// <param name="Planes">Those planes, by the settings entered.</param>
/// <param name="Static">The static part as one weight in the inner plane, as shown.</param>
/// <param name="Exact">What was felt, before it was rounded. It is not shown.</param>
public sealed record SpinShown(UnbalancePair Needed, PlanePair Planes, UnbalanceVector Static, UnbalancePair Exact)
{
    /// <summary>The mass to add on a side.</summary>
    public Mass MassAt(PlaneSide side) => Needed.At(side).MassAt(Planes.At(side).Radius);

    /// <summary>Where to add it.</summary>
    public WheelAngle PlaceAt(PlaneSide side) => Needed.At(side).Place;

    /// <summary>The mass of the one weight of the static part, at the inner plane's radius.</summary>
    public Mass StaticMass => Static.MassAt(Planes.Inner.Radius);
}

/// <summary>An unbalance at one distance along the shaft.</summary>
/// <param name="Unbalance">Its vector, towards the heavy place.</param>
/// <param name="Axial">Where along the shaft.</param>
public readonly record struct UnbalanceAlong(UnbalanceVector Unbalance, Length Axial);

/// <summary>
/// A balancer that reads what its settings and its centring let it read. It is the engine's own algebra: everything on the shaft is told at the two supports
/// by <see cref="UnbalancePair.MovedTo"/>, each transducer shows its share of it, and that is told in the planes of the settings entered.
/// </summary>
public static class SimulatedBalancer
{
    /// <summary>Where the supports with the transducers stand along the shaft: behind the rim distance's zero.</summary>
    public static PlanePair Supports { get; } = new(new PlanePlace(Length.FromMillimetres(1), Length.FromMillimetres(-130)), new PlanePlace(Length.FromMillimetres(1), default));

    /// <summary>Several unbalances along the shaft, told in two planes: sum and first moment are kept.</summary>
    /// <param name="along">Where each is.</param>
    /// <param name="planes">Two planes.</param>
    /// <source>equilibrium of two planes: docs/theory/balance.md (two planes)</source>
    public static UnbalancePair In(IEnumerable<UnbalanceAlong> along, PlanePair planes)
    {
        ArgumentNullException.ThrowIfNull(along);
        var beyond = Length.FromMillimetres(100);
        var one = Length.FromMillimetres(1);
        return along.Aggregate(default(UnbalancePair), (sum, u) =>
            sum + new UnbalancePair(u.Unbalance, default).MovedTo(new PlanePair(new PlanePlace(one, u.Axial), new PlanePlace(one, u.Axial + beyond)), planes));
    }

    /// <summary>What a spin of all that is on the shaft shows.</summary>
    /// <param name="along">Every unbalance on the shaft.</param>
    /// <param name="entered">The planes by the settings entered.</param>
    /// <param name="gains">How much each transducer shows, the outer support's first.</param>
    /// <param name="profile">The steps of the display.</param>
    /// <source>equilibrium of forces and moments: docs/theory/balance.md (forces on the supports); rounding: docs/theory/balance.md (what the display hides)</source>
    public static SpinShown Spin(IEnumerable<UnbalanceAlong> along, PlanePair entered, (double First, double Second) gains, BalancerProfile profile)
    {
        ArgumentNullException.ThrowIfNull(entered);
        ArgumentNullException.ThrowIfNull(profile);
        var felt = In(along, Supports);
        var exact = new UnbalancePair(felt.Inner * gains.Second, felt.Outer * gains.First).MovedTo(Supports, entered).Opposite;
        return new SpinShown(new UnbalancePair(Shown(exact.Inner, entered.Inner.Radius, profile), Shown(exact.Outer, entered.Outer.Radius, profile)), entered, Shown(exact.Static, entered.Inner.Radius, profile), exact);
    }

    /// <summary>A vector as a display shows it: its mass to the step, nothing where that is hidden, its place to the step of angles.</summary>
    /// <param name="exact">What is there.</param>
    /// <param name="radius">The radius that the mass is told at.</param>
    /// <param name="profile">The steps; without one nothing is rounded.</param>
    /// <source>docs/theory/balance.md (what the display hides)</source>
    public static UnbalanceVector Shown(UnbalanceVector exact, Length radius, BalancerProfile profile)
    {
        ArgumentNullException.ThrowIfNull(profile);
        var grams = Step(exact.MassAt(radius).Grams, profile.DisplayStep?.Grams);
        return grams == 0 || (profile.DisplayHidesBelow is { } hidden && grams < hidden.Grams)
            ? default
            : UnbalanceVector.OfMass(Mass.FromGrams(grams), radius, WheelAngle.FromDegrees(Step(exact.Place.Degrees, profile.DisplayAngleStep?.Degrees)));
    }

    private static double Step(double value, double? step) => step is { } s and > 0 ? Math.Round(value / s, MidpointRounding.AwayFromZero) * s : value;
}
