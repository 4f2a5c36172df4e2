using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>What one plane can do with so many pieces: arrangements at its places, or reaches where any angle will do.</summary>
internal sealed class PlaneList
{
    private readonly List<Reach>? _reaches;

    private PlaneList(Arrangements? arranged, List<Reach>? reaches, double missingFromGrams) =>
        (Arranged, _reaches, MissingFromGrams) = (arranged, reaches, missingFromGrams);

    /// <summary>Arrangements, where the plane has places.</summary>
    public Arrangements? Arranged { get; }

    /// <summary>What has this mass or more may be missing.</summary>
    public double MissingFromGrams { get; }

    /// <summary>Nothing comes near, and nothing is missing.</summary>
    public bool IsEmptyForGood => (Arranged?.Count ?? _reaches!.Count) == 0 && double.IsPositiveInfinity(MissingFromGrams);

    public static PlaneList Of(ChoicePlane plane, DiscretePlane? places, int pieces, Asked asked, SearchBudget budget)
    {
        if (places is not null)
        {
            var list = places.Near(plane.Need, asked, pieces);
            return new PlaneList(list, null, list.MissingFromGrams);
        }

        var reaches = ContinuousPlane.Reaches(plane, pieces, plane.Need, asked, budget);
        return new PlaneList(null, reaches, MissingFrom(plane, pieces, asked, reaches));
    }

    /// <summary>Everything as reaches: an arrangement is a point.</summary>
    public List<Reach> AsReaches(ChoicePlane plane, Func<ChoicePlane, Arrangements, Arrangements> reduced)
    {
        if (_reaches is not null)
        {
            return _reaches;
        }

        var list = reduced(plane, Arranged!);
        return [.. Enumerable.Range(0, list.Count).Select(i =>
        {
            var pieces = list.Pieces(i);
            return new Reach
            {
                Centre = list.Vectors[i],
                Inner = 0,
                Outer = 0,
                Pieces = [.. pieces.Select(p => p.Type)],
                Realise = _ => [.. pieces.Select(p => p.Radians)],
            };
        })];
    }

    /// <summary>What comes nearest to the plane's need, of the lightest where several do; null where the list is empty.</summary>
    public PlacedPiece[]? Nearest(ChoicePlane plane)
    {
        if (_reaches is not null)
        {
            var (nearest, distance) = (default(PlacedPiece[]), double.PositiveInfinity);
            foreach (var reach in _reaches.OrderBy(r => r.Distance(plane.Need)).ThenBy(r => r.MassGrams).Take(20))
            {
                if (reach.Distance(plane.Need) >= distance)
                {
                    break;
                }

                // Within a bound from outside there may be nothing so near.
                var placed = plane.Placed(reach, PairMinimum.Nearest(plane.Side, reach, plane.Need))
                    ?? (reach.Grown() is { } grown && !ReferenceEquals(grown, reach) ? plane.Placed(grown, PairMinimum.Nearest(plane.Side, grown, plane.Need)) : null);
                if (placed is not null && (plane.Sum(placed) - plane.Need).Magnitude is var d && d < distance)
                {
                    (nearest, distance) = (placed, d);
                }
            }

            return nearest;
        }

        var list = Arranged!;
        return list.Count == 0 ? null : list.Pieces(Enumerable.Range(0, list.Count).MinBy(i => (list.Vectors[i] - plane.Need).Magnitude));
    }

    private static double MissingFrom(ChoicePlane plane, int pieces, Asked asked, List<Reach> reaches)
    {
        var heaviest = plane.Types.HeaviestStripGrams;
        var needed = plane.Need.Magnitude + asked.For(0);
        if (pieces == 0 || heaviest >= asked.MostGrams || (pieces == 1 && heaviest * plane.RadiusMillimetres >= needed))
        {
            return double.PositiveInfinity;
        }

        // A ring that holds all that is near: heavier strips reach nothing new.
        return pieces > 1 && reaches.Any(r => !r.IsOuterBound && !r.IsPatchy && r.Inner == 0 && r.Outer >= needed) ? double.PositiveInfinity : heaviest;
    }
}
