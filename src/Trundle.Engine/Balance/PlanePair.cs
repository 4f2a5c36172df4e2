using System.Numerics;
using Trundle.Measures;

namespace Trundle.Engine.Balance;

/// <summary>Which side of the wheel.</summary>
public enum PlaneSide
{
    /// <summary>Towards the vehicle, and towards the balancer.</summary>
    Inner,

    /// <summary>Away from the vehicle.</summary>
    Outer,
}

/// <summary>Where a correction plane lies: the radius at which a mass sits, and its distance along the shaft.</summary>
/// <param name="Radius">From the axis to the centre of the mass.</param>
/// <param name="Axial">Along the axis from one origin, growing from the inner to the outer side.</param>
public sealed record PlanePlace(Length Radius, Length Axial);

/// <summary>Two correction planes, the outer one further out than the inner one.</summary>
public sealed record PlanePair
{
    /// <summary>Two planes; throws where they do not lie one outside the other, which a reader must have refused before.</summary>
    public PlanePair(PlanePlace inner, PlanePlace outer)
    {
        ArgumentNullException.ThrowIfNull(inner);
        ArgumentNullException.ThrowIfNull(outer);
        if (!LieApart(inner, outer))
        {
            throw new ArgumentException("The outer plane lies further out than the inner one, and each has a radius.", nameof(outer));
        }

        Inner = inner;
        Outer = outer;
    }

    /// <summary>The inner plane.</summary>
    public PlanePlace Inner { get; }

    /// <summary>The outer plane.</summary>
    public PlanePlace Outer { get; }

    /// <summary>Their distance along the shaft.</summary>
    public Length Apart => Outer.Axial - Inner.Axial;

    /// <summary>Half-way between them.</summary>
    public Length MidPlane => (Inner.Axial + Outer.Axial) / 2;

    /// <summary>The plane of a side.</summary>
    public PlanePlace At(PlaneSide side) => side switch
    {
        PlaneSide.Inner => Inner,
        PlaneSide.Outer => Outer,
    };

    /// <summary>True where two planes can carry a correction of both static and couple unbalance: the outer further out, each with a radius.</summary>
    /// <source>common practice: two planes at one place cannot carry a couple</source>
    public static bool LieApart(PlanePlace inner, PlanePlace outer)
    {
        ArgumentNullException.ThrowIfNull(inner);
        ArgumentNullException.ThrowIfNull(outer);
        return outer.Axial > inner.Axial && inner.Radius.Si > 0 && outer.Radius.Si > 0;
    }
}

/// <summary>What stands in two planes: unbalance of the wheel, or what has to be added to it.</summary>
public readonly record struct UnbalancePair(UnbalanceVector Inner, UnbalanceVector Outer)
{
    /// <summary>The static part: the sum, wherever along the shaft.</summary>
    public UnbalanceVector Static => Inner + Outer;

    /// <summary>The vector of a side.</summary>
    public UnbalanceVector At(PlaneSide side) => side switch
    {
        PlaneSide.Inner => Inner,
        PlaneSide.Outer => Outer,
    };

    /// <summary>The same sizes at the opposite places: need from unbalance, and back.</summary>
    public UnbalancePair Opposite => new(Inner.Opposite, Outer.Opposite);

    public static UnbalancePair operator +(UnbalancePair left, UnbalancePair right) => new(left.Inner + right.Inner, left.Outer + right.Outer);

    public static UnbalancePair operator -(UnbalancePair left, UnbalancePair right) => new(left.Inner - right.Inner, left.Outer - right.Outer);

    /// <summary>The couple part about the mid-plane of the two planes.</summary>
    public CoupleVector Couple(PlanePair planes)
    {
        ArgumentNullException.ThrowIfNull(planes);
        return CoupleAbout(planes, planes.MidPlane);
    }

    /// <summary>The couple part about a radial plane at a distance along the shaft. It depends on that distance wherever there is a static part.</summary>
    public CoupleVector CoupleAbout(PlanePair planes, Length axial)
    {
        ArgumentNullException.ThrowIfNull(planes);
        return new CoupleVector(
            (Inner.GramMillimetres * (planes.Inner.Axial - axial).Millimetres)
            + (Outer.GramMillimetres * (planes.Outer.Axial - axial).Millimetres));
    }

    /// <summary>The same static and couple unbalance, told in two other planes. There and back is the identity.</summary>
    public UnbalancePair MovedTo(PlanePair from, PlanePair to)
    {
        ArgumentNullException.ThrowIfNull(from);
        ArgumentNullException.ThrowIfNull(to);
        var apart = to.Apart.Millimetres;
        var (z1, z2) = (from.Inner.Axial.Millimetres, from.Outer.Axial.Millimetres);
        var (t1, t2) = (to.Inner.Axial.Millimetres, to.Outer.Axial.Millimetres);
        var (u1, u2) = (Inner.GramMillimetres, Outer.GramMillimetres);
        return new UnbalancePair(
            new UnbalanceVector(((u1 * (t2 - z1)) + (u2 * (t2 - z2))) / apart),
            new UnbalanceVector(((u1 * (z1 - t1)) + (u2 * (z2 - t1))) / apart));
    }

    /// <summary>Two planes from a static and a couple part about their mid-plane.</summary>
    /// <source>equilibrium of two planes; docs/theory/balance.md, static and couple</source>
    public static UnbalancePair OfParts(UnbalanceVector staticPart, CoupleVector couple, PlanePair planes)
    {
        ArgumentNullException.ThrowIfNull(planes);
        var pair = couple.InOuterPlane(planes.Apart);
        return new UnbalancePair((staticPart / 2) - pair, (staticPart / 2) + pair);
    }

    /// <summary>
    /// The unbalance in two planes from the once-per-turn forces that the turning wheel puts on two supports of the shaft.
    /// </summary>
    /// <param name="first">Force of the wheel on the first support, as size and place.</param>
    /// <param name="second">Force of the wheel on the second support.</param>
    /// <param name="speed">Speed of turning, above nothing.</param>
    /// <param name="planes">The planes that the unbalance is told in.</param>
    /// <source>equilibrium of forces and moments; docs/theory/balance.md, forces on the supports</source>
    public static UnbalancePair OfSupportForces(SupportForce first, SupportForce second, RotationalSpeed speed, PlanePair planes)
    {
        ArgumentNullException.ThrowIfNull(first);
        ArgumentNullException.ThrowIfNull(second);
        ArgumentNullException.ThrowIfNull(planes);

        // N·s² is kg·m, and 1 kg·m is 10⁶ g·mm.
        var perSquare = 1e6 / (speed.RadiansPerSecond * speed.RadiansPerSecond * planes.Apart.Millimetres);
        var (fa, fb) = (first.Newtons, second.Newtons);
        var (za, zb) = (first.Axial.Millimetres, second.Axial.Millimetres);
        var (z1, z2) = (planes.Inner.Axial.Millimetres, planes.Outer.Axial.Millimetres);
        return new UnbalancePair(
            new UnbalanceVector((((z2 - za) * fa) + ((z2 - zb) * fb)) * perSquare),
            new UnbalanceVector((((za - z1) * fa) + ((zb - z1) * fb)) * perSquare));
    }
}

/// <summary>A once-per-turn force on a support of the shaft.</summary>
/// <param name="Size">Its size.</param>
/// <param name="Place">Where it points.</param>
/// <param name="Axial">Where the support stands along the shaft, on the planes' axis.</param>
public sealed record SupportForce(Force Size, WheelAngle Place, Length Axial)
{
    internal Complex Newtons => UnbalanceVector.Phasor(Size.Newtons, Place);
}
