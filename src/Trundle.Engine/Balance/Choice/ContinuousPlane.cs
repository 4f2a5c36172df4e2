using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>What a plane with places at any angle can make with so many pieces.</summary>
internal static class ContinuousPlane
{
    /// <summary>
    /// Every reach of so many pieces that comes within a distance of a vector. With two pieces or more and forbidden arcs or lengths the
    /// ring is a bound from outside.
    /// </summary>
    public static List<Reach> Reaches(ChoicePlane plane, int pieces, Complex near, Asked asked, SearchBudget budget)
    {
        if (pieces == 0)
        {
            return Reach.Nothing.Distance(near) <= asked.For(0) ? [Reach.Nothing] : [];
        }

        IEnumerable<Reach> all;
        if (pieces == 1)
        {
            all = plane.Types.All.Where(t => !plane.IsTooLong(t)).Select(t => One(plane, t));
        }
        else if (plane.Counts is null && !plane.HasSizes && plane.Forbidden.Count == 0)
        {
            all = Rings(plane, pieces);
        }
        else
        {
            all = Sets(plane, pieces, (near.Magnitude - asked.For(0)) / plane.RadiusMillimetres, asked.MostGrams, budget).TakeWhile(_ => budget.IsLeft).Select(set => Bound(plane, set, budget));
        }

        return [.. all.Where(r => r.Arcs.Arcs.Count > 0 && asked.For(r.MassGrams) is >= 0 and var within && r.Distance(near) <= within)];
    }

    private static Reach One(ChoicePlane plane, PieceType type)
    {
        var radius = type.MassGrams * plane.RadiusMillimetres;
        return new Reach
        {
            Inner = radius,
            Outer = radius,
            Arcs = plane.Allowed(type),
            Pieces = [type],
            Realise = x => [x.Phase],
        };
    }

    /// <summary>
    /// Without counts, lengths and arcs only the whole mass and the heaviest piece matter: of sets with one mass, the one whose heaviest piece
    /// is lightest reaches all that the others reach.
    /// </summary>
    private static IEnumerable<Reach> Rings(ChoicePlane plane, int pieces)
    {
        var best = new Dictionary<long, (double Heaviest, PieceType[] Set)> { [0] = (0, []) };
        for (var n = 0; n < pieces; n++)
        {
            var next = new Dictionary<long, (double Heaviest, PieceType[] Set)>();
            foreach (var (key, (heaviest, set)) in best)
            {
                foreach (var type in plane.Types.All)
                {
                    var k = key + (long)Math.Round(type.MassGrams * 1e5);
                    var h = Math.Max(heaviest, type.MassGrams);
                    if (!next.TryGetValue(k, out var other) || h < other.Heaviest)
                    {
                        next[k] = (h, [.. set, type]);
                    }
                }
            }

            best = next;
        }

        return best.OrderBy(b => b.Key).Select(b => Ring(plane, b.Value.Set));
    }

    private static Reach Ring(ChoicePlane plane, PieceType[] set)
    {
        var arms = set.Select(t => t.MassGrams * plane.RadiusMillimetres).ToArray();
        var (inner, outer) = (Math.Max(0, (2 * arms.Max()) - arms.Sum()), arms.Sum());
        double[]? Realise(Complex x) => Linkage.Close(arms, x);
        return new Reach
        {
            Inner = inner,
            Outer = outer,
            Edges = Edges(inner, outer, set, Realise),
            Pieces = set,
            Realise = Realise,
        };
    }

    /// <summary>The ring that bounds what pieces with lengths or past forbidden arcs can make; what they make in truth is worked out where it matters.</summary>
    private static Reach Bound(ChoicePlane plane, PieceType[] set, SearchBudget budget)
    {
        budget.Spend(set.Length is 3 or 4 ? 60 : 30);
        var (heaviest, sum, outer) = (set[^1].MassGrams, set.Sum(t => t.MassGrams), Fan.Most(plane, set));
        var inner = Math.Max(0, (2 * heaviest) - sum) * plane.RadiusMillimetres;
        Func<Complex, double[]?> realise;
        Func<Reach, Reach?> whole;
        if (plane.Forbidden.Count == 0)
        {
            var rings = new ChainRings(plane, set, budget);
            (realise, whole) = (rings.Made, rings.Within);
        }
        else
        {
            var region = new ChainRegion(plane, set, budget);
            (realise, whole) = (region.Made, region.Within);
        }

        return new Reach
        {
            Inner = inner,
            Outer = outer,
            Arcs = outer < 0 ? AllowedArcs.Without([(0, Math.Tau)], 0) : AllowedArcs.Whole,
            Edges = Edges(inner, Math.Max(inner, outer), set, realise),
            Pieces = set,
            IsOuterBound = true,
            Realise = realise,
            Whole = whole,
        };
    }

    private static Reach[] Edges(double inner, double outer, PieceType[] set, Func<Complex, double[]?> realise) =>
        inner > 0 ? [Reach.Circle(outer, set, realise), Reach.Circle(inner, set, realise)] : [Reach.Circle(outer, set, realise)];

    /// <summary>Every set of so many pieces that the drawer holds, from a least to a greatest mass, up to the budget.</summary>
    private static List<PieceType[]> Sets(ChoicePlane plane, int pieces, double leastGrams, double mostGrams, SearchBudget budget)
    {
        var types = plane.Types.All.Where(t => !plane.IsTooLong(t)).ToArray();
        var chosen = new PieceType[pieces];
        var found = new List<PieceType[]>();
        if (types.Length > 0)
        {
            Next(0, 0, 0);
        }

        return found;

        void Next(int at, int first, double grams)
        {
            if (at == pieces)
            {
                var set = (PieceType[])chosen.Clone();
                if (grams >= leastGrams - 1e-9 && ChoicePlane.Enough(plane.Counts, set))
                {
                    found.Add(set);
                }

                return;
            }

            for (var i = first; i < types.Length && grams + ((pieces - at) * types[i].MassGrams) <= mostGrams + 1e-9; i++)
            {
                if (grams + types[i].MassGrams + ((pieces - at - 1) * types[^1].MassGrams) >= leastGrams - 1e-9)
                {
                    if (!budget.Spend(10))
                    {
                        return;
                    }

                    chosen[at] = types[i];
                    Next(at + 1, i, grams + types[i].MassGrams);
                }
            }
        }
    }
}
