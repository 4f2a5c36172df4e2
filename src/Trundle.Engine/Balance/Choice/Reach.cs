using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>
/// The vectors that some pieces of one plane can make together, in g·mm: a point, a circle or part of one about a centre, or a region whose
/// edges are such circles.
/// </summary>
internal sealed class Reach
{
    private double? _mass;

    public Complex Centre { get; init; }

    /// <summary>Least distance from the centre.</summary>
    public required double Inner { get; init; }

    /// <summary>Greatest distance from the centre.</summary>
    public required double Outer { get; init; }

    /// <summary>For a circle, where on it; whole otherwise.</summary>
    public AllowedArcs Arcs { get; init; } = AllowedArcs.Whole;

    /// <summary>For a region, circles and points that hold its whole boundary; empty for a circle or a point.</summary>
    public IReadOnlyList<Reach> Edges { get; init; } = [];

    public required IReadOnlyList<PieceType> Pieces { get; init; }

    public double MassGrams => _mass ??= Pieces.Sum(p => p.MassGrams);

    /// <summary>True where the region is only a bound from outside: not every vector in it can be made.</summary>
    public bool IsOuterBound { get; init; }

    /// <summary>The places of the pieces, in radians, that make a vector; null where they cannot.</summary>
    public required Func<Complex, double[]?> Realise { get; init; }

    public bool IsPoint => Outer == 0;

    public bool IsRegion => Edges.Count > 0;

    /// <summary>No piece.</summary>
    public static Reach Nothing { get; } = new() { Inner = 0, Outer = 0, Pieces = [], Realise = _ => [] };

    /// <summary>A whole circle about nothing.</summary>
    public static Reach Circle(double radius, IReadOnlyList<PieceType> pieces, Func<Complex, double[]?> realise) =>
        new() { Inner = radius, Outer = radius, Pieces = pieces, Realise = realise };

    /// <summary>For a region: true where a vector lies in it.</summary>
    public bool Contains(Complex vector)
    {
        var d = (vector - Centre).Magnitude;
        return d >= Inner && d <= Outer && (IsOuterBound || !IsPatchy || Realise(vector) is not null);
    }

    /// <summary>True where the region does not fill the ring between its inner and outer distance.</summary>
    public bool IsPatchy { get; init; }

    /// <summary>How far a vector is from this reach: exactly for a region, arcs aside for a circle.</summary>
    public double Distance(Complex vector)
    {
        var d = (vector - Centre).Magnitude;
        var ring = d < Inner ? Inner - d : d > Outer ? d - Outer : 0;
        return ring > 0 || !IsPatchy || Contains(vector) ? ring : Edges.Min(e => e.Distance(vector));
    }
}

/// <summary>What a plane with places at any angle can make with so many pieces.</summary>
internal static class ContinuousPlane
{
    /// <summary>
    /// Every reach of so many pieces that comes within a distance of a vector. With three pieces or more and forbidden arcs or lengths the
    /// ring is a bound from outside.
    /// </summary>
    public static List<Reach> Reaches(ChoicePlane plane, int pieces, Complex near, double within, SearchBudget budget)
    {
        if (pieces == 0)
        {
            return Reach.Nothing.Distance(near) <= within ? [Reach.Nothing] : [];
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
            all = Sets(plane, pieces, budget).SelectMany(set => set.Length == 2 ? PairRegion.Of(plane, set[0], set[1]) : [Ring(plane, set)]);
        }

        return [.. all.Where(r => r.Arcs.Arcs.Count > 0 && r.Distance(near) <= within)];
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
        var free = plane.Forbidden.Count == 0 && !plane.HasSizes;
        var (inner, outer) = (Math.Max(0, (2 * arms.Max()) - arms.Sum()), arms.Sum());
        double[]? Realise(Complex x) => free ? Linkage.Close(arms, x) : Linkage.CloseAmong(plane, set, x);
        return new Reach
        {
            Inner = inner,
            Outer = outer,
            Edges = inner > 0 ? [Reach.Circle(outer, set, Realise), Reach.Circle(inner, set, Realise)] : [Reach.Circle(outer, set, Realise)],
            Pieces = set,
            IsOuterBound = !free,
            Realise = Realise,
        };
    }

    /// <summary>Every set of so many pieces that the drawer holds, up to the budget.</summary>
    private static IEnumerable<PieceType[]> Sets(ChoicePlane plane, int pieces, SearchBudget budget)
    {
        var types = plane.Types.All.Where(t => !plane.IsTooLong(t)).ToArray();
        var chosen = new int[pieces];
        if (types.Length == 0)
        {
            yield break;
        }

        while (true)
        {
            if (!budget.Spend(10))
            {
                yield break;
            }

            var set = chosen.Select(i => types[i]).ToArray();
            if (ChoicePlane.Enough(plane.Counts, set))
            {
                yield return set;
            }

            var at = pieces - 1;
            while (at >= 0 && chosen[at] == types.Length - 1)
            {
                at--;
            }

            if (at < 0)
            {
                yield break;
            }

            var value = chosen[at] + 1;
            for (var i = at; i < pieces; i++)
            {
                chosen[i] = value;
            }
        }
    }
}

/// <summary>Arms of fixed length that must add up to a vector.</summary>
internal static class Linkage
{
    /// <summary>Directions of arms that add up to a vector, or null where they cannot. Two arms open to the two sides of it.</summary>
    public static double[]? Close(ReadOnlySpan<double> arms, Complex sum)
    {
        var size = sum.Magnitude;
        var direction = size > 0 ? sum.Phase : 0;
        if (arms.Length == 0)
        {
            return size == 0 ? [] : null;
        }

        if (arms.Length == 1)
        {
            return [direction];
        }

        // The rest takes as much of the vector as leaves the first arm along it, as far as the rest can reach.
        var rest = arms[1..];
        var most = 0.0;
        var heaviest = 0.0;
        foreach (var arm in rest)
        {
            most += arm;
            heaviest = Math.Max(heaviest, arm);
        }

        var least = Math.Max(0, (2 * heaviest) - most);
        var low = Math.Max(least, Math.Abs(size - arms[0]));
        var high = Math.Min(most, size + arms[0]);
        if (low > high + (1e-9 * (most + arms[0])))
        {
            return null;
        }

        var other = Math.Min(low, Math.Max(high, least));
        var turn = size > 0 && arms[0] > 0 ? Math.Acos(Math.Clamp(((size * size) + (arms[0] * arms[0]) - (other * other)) / (2 * size * arms[0]), -1, 1)) : 0;
        var first = direction - turn;
        var tail = Close(rest, sum - Complex.FromPolarCoordinates(arms[0], first));
        return tail is null ? null : [first, .. tail];
    }

    /// <summary>Directions that add up to a vector and keep every piece on its arcs and clear of the others; null where none was found.</summary>
    public static double[]? CloseAmong(ChoicePlane plane, IReadOnlyList<PieceType> pieces, Complex sum)
    {
        var angles = new double[pieces.Count];
        var arcs = pieces.Select(plane.Allowed).ToArray();
        var step = pieces.Count switch { 2 => 1, 3 => 72, 4 => 36, 5 => 18, _ => 0 };
        return step > 0 && Place(plane, pieces, arcs, angles, 0, sum, step) ? angles : null;
    }

    private static bool Place(ChoicePlane plane, IReadOnlyList<PieceType> pieces, AllowedArcs[] arcs, double[] angles, int at, Complex left, int steps)
    {
        if (pieces.Count - at > 2)
        {
            for (var i = 0; i < steps; i++)
            {
                // From the wanted direction outwards, to both sides.
                angles[at] = left.Phase + ((i % 2 == 0 ? 1 : -1) * ((i + 1) / 2) * Math.Tau / steps);
                if (Fits(plane, pieces, arcs, angles, at)
                    && Place(plane, pieces, arcs, angles, at + 1, left - Complex.FromPolarCoordinates(pieces[at].MassGrams * plane.RadiusMillimetres, angles[at]), steps))
                {
                    return true;
                }
            }

            return false;
        }

        double[] arms = [pieces[at].MassGrams * plane.RadiusMillimetres, pieces[at + 1].MassGrams * plane.RadiusMillimetres];
        var closed = Close(arms, left);
        if (closed is null || (left - Complex.FromPolarCoordinates(arms[0], closed[0]) - Complex.FromPolarCoordinates(arms[1], closed[1])).Magnitude > 1e-7 * (arms[0] + arms[1]))
        {
            return false;
        }

        foreach (var mirrored in (ReadOnlySpan<bool>)[false, true])
        {
            for (var k = 0; k < 2; k++)
            {
                angles[at + k] = mirrored ? (2 * left.Phase) - closed[k] : closed[k];
            }

            if (Fits(plane, pieces, arcs, angles, at) && Fits(plane, pieces, arcs, angles, at + 1))
            {
                return true;
            }
        }

        return false;
    }

    private static bool Fits(ChoicePlane plane, IReadOnlyList<PieceType> pieces, AllowedArcs[] arcs, double[] angles, int at)
    {
        if (!arcs[at].Contains(angles[at]))
        {
            return false;
        }

        for (var i = 0; i < at; i++)
        {
            if (!plane.Clear(pieces[i], angles[i], pieces[at], angles[at]))
            {
                return false;
            }
        }

        return true;
    }
}
