using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>
/// What two pieces of one plane can make where arcs are forbidden or pieces have lengths: the ring that bounds it from outside, and the edges
/// of the true region, which are circles: one piece at the end of an arc, or both touching.
/// </summary>
internal static class PairReaches
{
    public static IEnumerable<Reach> Of(ChoicePlane plane, PieceType a, PieceType b)
    {
        var (armA, armB) = (a.MassGrams * plane.RadiusMillimetres, b.MassGrams * plane.RadiusMillimetres);
        var apart = plane.HalfAngle(a) + plane.HalfAngle(b);
        var (arcsA, arcsB) = (plane.Allowed(a), plane.Allowed(b));
        if (apart > Math.PI || arcsA.Arcs.Count == 0 || arcsB.Arcs.Count == 0)
        {
            yield break;
        }

        var touching = armA + Complex.FromPolarCoordinates(armB, apart);
        yield return new Reach
        {
            Centre = Complex.Zero,
            Inner = Math.Abs(armA - armB),
            Outer = touching.Magnitude,
            Pieces = [a, b],
            IsOuterBound = plane.Forbidden.Count > 0,
            Realise = x => Linkage.CloseAmong(plane, [a, b], x),
        };
        if (plane.Forbidden.Count == 0)
        {
            yield break;
        }

        foreach (var reach in OneAtAnEnd(plane, a, b, armA, armB, arcsA, arcsB, false)
            .Concat(ReferenceEquals(a, b) ? [] : OneAtAnEnd(plane, b, a, armB, armA, arcsB, arcsA, true)))
        {
            yield return reach;
        }

        foreach (var between in apart > 0 ? (double[])[apart, -apart, Math.PI] : [0, Math.PI])
        {
            // Both keep an angle between them and turn together: the sum turns with them, ahead of the first piece by a fixed angle.
            var sum = armA + Complex.FromPolarCoordinates(armB, between);
            var arcs = arcsA.And(arcsB.Turned(-between));
            if (arcs.Arcs.Count == 0)
            {
                continue;
            }

            // Equal pieces opposite each other make nothing wherever they are.
            var nothing = sum.Magnitude <= 1e-12 * armA;
            var lead = nothing ? 0 : sum.Phase;
            var somewhere = arcs.Arcs[0].From;
            yield return new Reach
            {
                Centre = Complex.Zero,
                Inner = nothing ? 0 : sum.Magnitude,
                Outer = nothing ? 0 : sum.Magnitude,
                Arcs = nothing ? AllowedArcs.Whole : arcs.Turned(lead),
                Pieces = [a, b],
                Realise = x => nothing ? [somewhere, somewhere + between] : [x.Phase - lead, x.Phase - lead + between],
            };
        }
    }

    private static IEnumerable<Reach> OneAtAnEnd(
        ChoicePlane plane, PieceType still, PieceType moving, double armStill, double armMoving, AllowedArcs arcsStill, AllowedArcs arcsMoving, bool swapped)
    {
        var apart = plane.HalfAngle(still) + plane.HalfAngle(moving);
        foreach (var end in arcsStill.Ends)
        {
            var arcs = apart > 0 ? arcsMoving.And(AllowedArcs.Without([(end - apart, 2 * apart)], 0)) : arcsMoving;
            var centre = Complex.FromPolarCoordinates(armStill, end);
            yield return new Reach
            {
                Centre = centre,
                Inner = armMoving,
                Outer = armMoving,
                Arcs = arcs,
                Pieces = swapped ? [moving, still] : [still, moving],
                Realise = x => swapped ? [(x - centre).Phase, end] : [end, (x - centre).Phase],
            };
        }
    }
}

/// <summary>How much work a search may still do. It is counted, not timed, so that a result never depends on the machine.</summary>
internal sealed class SearchBudget(long steps)
{
    private long _left = steps;

    /// <summary>False from the moment when the work is used up.</summary>
    public bool IsLeft => _left > 0;

    /// <summary>Takes some work; false where none was left.</summary>
    public bool Spend(long steps)
    {
        _left -= steps;
        return _left > 0;
    }
}
