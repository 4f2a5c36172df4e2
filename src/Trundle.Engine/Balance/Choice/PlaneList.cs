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

    public static PlaneList Of(ChoicePlane plane, int pieces, double within, double mostGrams, SearchBudget budget)
    {
        if (plane.Places is not null)
        {
            var list = new DiscretePlane(plane, mostGrams, budget).Near(plane.Need, within, pieces);
            return new PlaneList(list, null, list.MissingFromGrams);
        }

        var reaches = ContinuousPlane.Reaches(plane, pieces, plane.Need, within, budget).Where(r => r.MassGrams <= mostGrams).ToList();
        return new PlaneList(null, reaches, MissingFrom(plane, pieces, within, reaches));
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
            foreach (var reach in _reaches.OrderBy(r => r.Distance(plane.Need)).ThenBy(r => r.MassGrams).Take(20))
            {
                if (plane.Placed(reach, PairMinimum.Nearest(plane.Side, reach, plane.Need)) is { } placed)
                {
                    return placed;
                }
            }

            return null;
        }

        var list = Arranged!;
        return list.Count == 0 ? null : list.Pieces(Enumerable.Range(0, list.Count).MinBy(i => (list.Vectors[i] - plane.Need).Magnitude));
    }

    private static double MissingFrom(ChoicePlane plane, int pieces, double within, List<Reach> reaches)
    {
        var heaviest = plane.Types.HeaviestStripGrams;
        var needed = plane.Need.Magnitude + within;
        if (pieces == 0 || double.IsPositiveInfinity(heaviest) || (pieces == 1 && heaviest * plane.RadiusMillimetres >= needed))
        {
            return double.PositiveInfinity;
        }

        // A ring that holds all that is near: heavier strips reach nothing new.
        return pieces > 1 && reaches.Any(r => !r.IsOuterBound && !r.IsPatchy && r.Inner == 0 && r.Outer >= needed) ? double.PositiveInfinity : heaviest;
    }
}

/// <summary>Finds arrangements by where their vector lies.</summary>
internal sealed class PlaceIndex
{
    private readonly Arrangements _list;
    private readonly Complex _origin;
    private readonly double _cell;
    private readonly Dictionary<(long, long), List<int>> _cells = [];

    public PlaceIndex(Arrangements list, Complex origin, double cell)
    {
        (_list, _origin, _cell) = (list, origin, cell);
        for (var i = 0; i < list.Count; i++)
        {
            var d = list.Vectors[i] - origin;
            var key = (Cell(d.Real), Cell(d.Imaginary));
            if (!_cells.TryGetValue(key, out var members))
            {
                _cells[key] = members = [];
            }

            members.Add(i);
        }
    }

    /// <summary>Every arrangement whose vector less the origin lies within a distance of another, and a few more.</summary>
    public IEnumerable<int> Near(Complex centre, double within)
    {
        var (x0, x1) = (Cell(centre.Real - within), Cell(centre.Real + within));
        var (y0, y1) = (Cell(centre.Imaginary - within), Cell(centre.Imaginary + within));
        if (double.IsPositiveInfinity(within) || (double)(x1 - x0 + 1) * (y1 - y0 + 1) > _cells.Count)
        {
            foreach (var ((x, y), members) in _cells)
            {
                if (double.IsPositiveInfinity(within) || (x >= x0 && x <= x1 && y >= y0 && y <= y1))
                {
                    foreach (var i in members)
                    {
                        yield return i;
                    }
                }
            }

            yield break;
        }

        for (var x = x0; x <= x1; x++)
        {
            for (var y = y0; y <= y1; y++)
            {
                if (_cells.TryGetValue((x, y), out var members))
                {
                    foreach (var i in members)
                    {
                        yield return i;
                    }
                }
            }
        }
    }

    private long Cell(double value) => (long)Math.Floor(Math.Clamp(value / _cell, -1e15, 1e15));
}

/// <summary>Makes the two planes of a choice from a problem.</summary>
internal static class PlaneSetup
{
    private const double ListedUpTo = 100;

    public static (ChoicePlane Inner, ChoicePlane Outer) Of(BalanceProblem problem, ScoreParts score)
    {
        var needed = problem.Needed;
        var total = (needed.Inner.GramMillimetres.Magnitude / problem.Inner.Place.Radius.Millimetres)
            + (needed.Outer.GramMillimetres.Magnitude / problem.Outer.Place.Radius.Millimetres);
        return (Plane(PlaneSide.Inner, problem.Inner), Plane(PlaneSide.Outer, problem.Outer));

        ChoicePlane Plane(PlaneSide side, WeightPlane plane)
        {
            var stock = problem.Stock.Of(plane.Kind);
            var radius = plane.Place.Radius.Millimetres;
            var need = needed.At(side).GramMillimetres;
            var bound = score.Bound(side);
            var near = (double.IsFinite(bound) ? need.Magnitude + bound : Loose(side)) / radius;
            var segment = stock.Select(s => s.Mass.Grams).DefaultIfEmpty(0).Max();

            // Beyond this a strip costs more in the score than any choice that meets the tolerance can.
            var priced = problem.MassPenaltyPerGram > 0 ? Math.Min(1 / problem.MassPenaltyPerGram, 200) + (1.5 * total) : 0;
            return new ChoicePlane
            {
                Side = side,
                Kind = plane.Kind,
                RadiusMillimetres = radius,
                Need = need,
                Types = PieceTypes.Of(plane.Kind, stock, Math.Max(Math.Max((2 * near) + (2 * segment), priced), ListedUpTo), problem.MaxMass?.Grams ?? double.PositiveInfinity),
                Places = Places(problem, plane),
                Forbidden = [.. problem.Forbidden.Where(f => f.Plane == side).Select(f => (f.From.Radians, AllowedArcs.Turn(f.To.Radians - f.From.Radians)))],
                Counts = stock.Any(s => s.Count is not null) ? [.. stock.Select(s => s.Count ?? -1)] : null,
            };
        }

        double Loose(PlaneSide side) => score.Parts
            .Where(p => p.Factor(side) != 0)
            .Select(p => (((p.OnInner * needed.Inner.GramMillimetres) + (p.OnOuter * needed.Outer.GramMillimetres)).Magnitude + (1 / p.PerUnit)) / Math.Abs(p.Factor(side)))
            .DefaultIfEmpty(0).Max();
    }

    private static double[]? Places(BalanceProblem problem, WeightPlane plane)
    {
        if (plane.BehindSpokes)
        {
            return [.. problem.Spokes!.Places.Select(a => a.Degrees)];
        }

        if (problem.AngleStep is not { } step)
        {
            return null;
        }

        var count = (int)Math.Ceiling((360 / step.Degrees) - 1e-9);
        return [.. Enumerable.Range(0, count).Select(i => i * step.Degrees)];
    }
}
