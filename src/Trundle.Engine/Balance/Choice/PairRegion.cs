using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>
/// What two pieces of one plane can make where arcs are forbidden or pieces have lengths. A vector within can be made in two ways, mirrored
/// about it; the edges of what can be made are circles: one piece at the end of an arc while the other moves, or both touching, in line or
/// opposite, and turning together.
/// </summary>
internal static class PairRegion
{
    /// <summary>The region of two pieces; none where they do not both fit.</summary>
    public static IEnumerable<Reach> Of(ChoicePlane plane, PieceType a, PieceType b)
    {
        var (armA, armB) = (a.MassGrams * plane.RadiusMillimetres, b.MassGrams * plane.RadiusMillimetres);
        var apart = plane.HalfAngle(a) + plane.HalfAngle(b);
        var (arcsA, arcsB) = (plane.Allowed(a), plane.Allowed(b));
        if (apart > Math.PI || arcsA.Arcs.Count == 0 || arcsB.Arcs.Count == 0)
        {
            yield break;
        }

        List<Reach> edges =
        [
            .. OneAtAnEnd(plane, a, b, armA, armB, arcsA, arcsB, false),
            .. ReferenceEquals(a, b) ? [] : OneAtAnEnd(plane, b, a, armB, armA, arcsB, arcsA, true),
            .. Together(a, b, armA, armB, apart, arcsA, arcsB),
        ];
        if (edges.Count > 0)
        {
            yield return new Reach
            {
                Inner = Math.Abs(armA - armB),
                Outer = (armA + Complex.FromPolarCoordinates(armB, apart)).Magnitude,
                Edges = edges,
                IsPatchy = plane.Forbidden.Count > 0,
                Pieces = [a, b],
                Realise = x => Linkage.CloseAmong(plane, [a, b], x) ?? OnEdge(edges, x),
            };
        }
    }

    /// <summary>A vector on an edge, where the mirrored ways meet or a piece is at its end, so that rounding may hide it.</summary>
    private static double[]? OnEdge(List<Reach> edges, Complex x) =>
        edges.FirstOrDefault(e => Math.Abs((x - e.Centre).Magnitude - e.Outer) <= 1e-9 * (1 + e.Outer) && (e.IsPoint || e.Arcs.Contains((x - e.Centre).Phase)))?.Realise(x);

    /// <summary>Both pieces keep an angle between them and turn together: the sum turns with them, ahead of the first piece by a fixed angle.</summary>
    private static IEnumerable<Reach> Together(PieceType a, PieceType b, double armA, double armB, double apart, AllowedArcs arcsA, AllowedArcs arcsB)
    {
        foreach (var between in apart > 0 ? (double[])[apart, -apart, Math.PI] : [0, Math.PI])
        {
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
            if (arcs.Arcs.Count == 0)
            {
                continue;
            }

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
