using System.Numerics;
using Trundle.Engine.Balance;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>
/// The choice of weights by trying everything, written apart from the engine: every set of pieces at every place, with the score taken straight
/// from the definitions of static, couple and plane parts.
/// </summary>
internal sealed class BruteForce(BalanceProblem problem)
{
    private sealed record Placed(Complex Vector, double Grams, int Pieces, int[] Used);

    /// <summary>What the best choice is worth.</summary>
    /// <param name="Meets">It meets the tolerance.</param>
    /// <param name="Pieces">How many pieces.</param>
    /// <param name="Grams">Their mass.</param>
    /// <param name="Score">Its score.</param>
    /// <param name="Squares">The sum of squares of the parts, that parts equal scores.</param>
    internal readonly record struct Value(bool Meets, int Pieces, double Grams, double Score, double Squares);

    private readonly Complex _needInner = Vector(problem.Needed.Inner);
    private readonly Complex _needOuter = Vector(problem.Needed.Outer);

    public static Complex Vector(UnbalanceVector v) => Complex.FromPolarCoordinates(v.Amount.GramMillimetres, v.Place.Degrees * Math.PI / 180);

    /// <summary>Why a set may not be fitted; null where it may.</summary>
    public string? Fault(IReadOnlyList<FittedWeight> weights)
    {
        foreach (var (w, i) in weights.Select((w, i) => (w, i)))
        {
            var plane = w.Plane == PlaneSide.Inner ? problem.Inner : problem.Outer;
            var size = w.Size?.Millimetres ?? 0;
            if (w.Kind != plane.Kind || w.Place.Degrees is < 0 or >= 360 || IsForbidden(problem, w.Plane, plane, w.Place.Degrees, size)
                || weights.Take(i).Any(o => o.Plane == w.Plane && Covers(plane, o.Place.Degrees, o.Size?.Millimetres ?? 0, w.Place.Degrees, size)))
            {
                return $"{w.Mass} at {w.Place}";
            }
        }

        return null;
    }

    private readonly (double Inner, double Outer, double Tolerance)[] _parts = [.. Parts(problem)];

    /// <summary>The score of what is placed.</summary>
    public double Score(Complex placedInner, Complex placedOuter) => Score(placedInner, placedOuter, out _);

    /// <summary>The same with the sum of squares of its parts.</summary>
    public double Score(Complex placedInner, Complex placedOuter, out double squares)
    {
        var (r1, r2) = (placedInner - _needInner, placedOuter - _needOuter);
        var worst = 0.0;
        squares = 0;
        foreach (var (inner, outer, tolerance) in _parts)
        {
            var (x, y) = ((inner * r1.Real) + (outer * r2.Real), (inner * r1.Imaginary) + (outer * r2.Imaginary));
            var square = ((x * x) + (y * y)) / (tolerance * tolerance);
            worst = Math.Max(worst, square);
            squares += square;
        }

        return Math.Sqrt(worst);
    }

    /// <summary>How each part follows from the two planes' residuals, in its own unit.</summary>
    public static IEnumerable<(double Inner, double Outer, double Tolerance)> Parts(BalanceProblem problem)
    {
        var (z1, z2) = (problem.Inner.Place.Axial.Millimetres, problem.Outer.Place.Axial.Millimetres);
        if (problem.Tolerance.Static is { } s)
        {
            yield return (1, 1, s.GramMillimetres);
        }

        if (problem.Tolerance.Couple is { } c)
        {
            var middle = (z1 + z2) / 2;
            yield return (z1 - middle, z2 - middle, c.GramSquareMillimetres);
        }

        // Told in the planes that were read: the same sum and the same first moment.
        var (y1, y2) = (z1, z2);
        var (radius1, radius2) = (problem.Inner.Place.Radius, problem.Outer.Place.Radius);
        if (problem.ReadingPlanes is { } read)
        {
            (y1, y2) = (read.Inner.Axial.Millimetres, read.Outer.Axial.Millimetres);
            (radius1, radius2) = (read.Inner.Radius, read.Outer.Radius);
        }

        var (onOuter1, onOuter2) = ((z1 - y1) / (y2 - y1), (z2 - y1) / (y2 - y1));
        if (problem.Tolerance.Inner is { } inner)
        {
            yield return (1 - onOuter1, 1 - onOuter2, inner.At(radius1).GramMillimetres);
        }

        if (problem.Tolerance.Outer is { } outer)
        {
            yield return (onOuter1, onOuter2, outer.At(radius2).GramMillimetres);
        }
    }

    /// <summary>The best of all sets at discrete places. Strips need a limit on mass.</summary>
    public Value Best(int mostPieces, double mostGrams)
    {
        var inner = Plane(PlaneSide.Inner, problem.Inner, mostPieces, mostGrams);
        var outer = Plane(PlaneSide.Outer, problem.Outer, mostPieces, mostGrams);
        Value? best = null;
        outer.Sort((x, y) => x.Pieces.CompareTo(y.Pieces));
        var counted = problem.Inner.Kind == problem.Outer.Kind && problem.Stock.Of(problem.Inner.Kind).Any(s => s.Count is not null);
        foreach (var a in inner)
        {
            foreach (var b in outer)
            {
                if (a.Pieces + b.Pieces > mostPieces)
                {
                    break;
                }

                if (a.Grams + b.Grams > mostGrams + 1e-9 || (counted && !Enough(problem.Inner.Kind, a.Used, b.Used)))
                {
                    continue;
                }

                var score = Score(a.Vector, b.Vector, out var squares);
                var value = new Value(score <= 1 + 1e-9, a.Pieces + b.Pieces, a.Grams + b.Grams, score, squares);
                if (best is not { } other || IsBetter(value, other))
                {
                    best = value;
                }
            }
        }

        return best!.Value;
    }

    private bool IsBetter(Value a, Value b)
    {
        if (problem.Aims.Contains(BalanceAim.Tolerance))
        {
            if (a.Meets != b.Meets)
            {
                return a.Meets;
            }

            if (!a.Meets)
            {
                return Below(a.Score, b.Score) ?? Below(a.Squares, b.Squares) ?? false;
            }
        }

        foreach (var aim in problem.Aims.Append(BalanceAim.Score))
        {
            var below = aim switch
            {
                BalanceAim.Tolerance => null,
                BalanceAim.Pieces => Below(a.Pieces, b.Pieces),
                BalanceAim.Mass => Below(a.Grams, b.Grams),
                BalanceAim.Score => Below(Priced(a), Priced(b)) ?? Below(a.Squares, b.Squares),
            };
            if (below is { } answer)
            {
                return answer;
            }
        }

        return false;
    }

    /// <summary>Null where two numbers differ by rounding alone.</summary>
    private static bool? Below(double x, double y) => Math.Abs(x - y) < 1e-9 ? null : x < y;

    /// <summary>Score and price of the mass.</summary>
    public double Priced(Value value) => value.Score + (problem.MassPenaltyPerGram * value.Grams);

    /// <summary>The places of a plane in degrees.</summary>
    public static double[] Places(BalanceProblem problem, WeightPlane plane) => plane.BehindSpokes
        ? [.. Enumerable.Range(0, problem.Spokes!.Count).Select(i => problem.Spokes.First.Degrees + (360.0 * i / problem.Spokes.Count))]
        : [.. Enumerable.Range(0, 10_000).Select(i => i * problem.AngleStep!.Value.Degrees).TakeWhile(a => a < 360 - 1e-9)];

    private List<Placed> Plane(PlaneSide side, WeightPlane plane, int mostPieces, double mostGrams)
    {
        var places = Places(problem, plane);
        Complex[] units = [.. places.Select(p => Complex.FromPolarCoordinates(plane.Place.Radius.Millimetres, p * Math.PI / 180))];
        var pieces = Pieces(problem, plane.Kind, mostGrams);
        var found = new List<Placed>();
        Extend(0, Complex.Zero, 0, []);
        return found;

        bool CoversAny(List<(double Place, double Grams, double Size, int[] Used)> chosen, double place, double size)
        {
            foreach (var c in chosen)
            {
                if (Covers(plane, c.Place, c.Size, place, size))
                {
                    return true;
                }
            }

            return false;
        }

        void Extend(int from, Complex sum, double grams, List<(double Place, double Grams, double Size, int[] Used)> chosen)
        {
            var used = new int[pieces.Count > 0 ? pieces[0].Used.Length : 0];
            foreach (var c in chosen)
            {
                for (var k = 0; k < used.Length; k++)
                {
                    used[k] += c.Used[k];
                }
            }

            if (!Enough(plane.Kind, used, null))
            {
                return;
            }

            found.Add(new Placed(sum, grams, chosen.Count, used));
            if (chosen.Count == mostPieces)
            {
                return;
            }

            for (var i = from; i < places.Length * pieces.Count; i++)
            {
                var place = places[i / pieces.Count];
                var (mass, size, use) = pieces[i % pieces.Count];
                if (grams + mass > mostGrams + 1e-9 || IsForbidden(problem, side, plane, place, size) || CoversAny(chosen, place, size))
                {
                    continue;
                }

                chosen.Add((place, mass, size, use));
                Extend(i, sum + (mass * units[i / pieces.Count]), grams + mass, chosen);
                chosen.RemoveAt(chosen.Count - 1);
            }
        }
    }

    /// <summary>Every clip, or every strip up to a mass.</summary>
    public static List<(double Grams, double Size, int[] Used)> Pieces(BalanceProblem problem, WeightKind kind, double mostGrams)
    {
        var stock = problem.Stock.Of(kind);
        var pieces = new List<(double, double, int[])>();
        if (kind == WeightKind.Clip)
        {
            for (var i = 0; i < stock.Count; i++)
            {
                var use = new int[stock.Count];
                use[i] = 1;
                pieces.Add((stock[i].Mass.Grams, stock[i].Size?.Millimetres ?? 0, use));
            }

            return pieces;
        }

        Strip(0, new int[stock.Count], 0, 0);
        return pieces;

        void Strip(int at, int[] use, double grams, double size)
        {
            if (at == stock.Count)
            {
                if (use.Sum() > 0)
                {
                    pieces.Add((grams, size, (int[])use.Clone()));
                }

                return;
            }

            for (var n = 0; grams + (n * stock[at].Mass.Grams) <= mostGrams + 1e-9 && n <= (stock[at].Count ?? 1000); n++)
            {
                use[at] = n;
                Strip(at + 1, use, grams + (n * stock[at].Mass.Grams), size + (n * (stock[at].Size?.Millimetres ?? 0)));
            }

            use[at] = 0;
        }
    }

    private bool Enough(WeightKind kind, int[] used, int[]? alsoUsed)
    {
        var stock = problem.Stock.Of(kind);
        for (var i = 0; i < used.Length; i++)
        {
            if (stock[i].Count is { } count && used[i] + (alsoUsed is { Length: > 0 } ? alsoUsed[i] : 0) > count)
            {
                return false;
            }
        }

        return true;
    }

    public static bool Covers(WeightPlane plane, double placeA, double sizeA, double placeB, double sizeB)
    {
        var apart = Math.Abs(placeA - placeB) % 360;
        var arc = Math.Min(apart, 360 - apart) * Math.PI / 180 * plane.Place.Radius.Millimetres;
        return arc < ((sizeA + sizeB) / 2) - 1e-6;
    }

    public static bool IsForbidden(BalanceProblem problem, PlaneSide side, WeightPlane plane, double place, double size)
    {
        var half = size / 2 / plane.Place.Radius.Millimetres * 180 / Math.PI;
        if (half > 180)
        {
            return true;
        }

        foreach (var f in problem.Forbidden)
        {
            if (f.Plane != side)
            {
                continue;
            }

            // The piece lies clear where its middle, seen from the arc's end, comes half a piece after it and half a piece before its beginning.
            var open = Turn(f.From.Degrees - f.To.Degrees);
            var along = Turn(place - f.To.Degrees);
            var ahead = Math.Min(along, 360 - along) < 1e-9 ? 0 : along;
            if (ahead < half - 1e-9 || ahead > open - half + 1e-9)
            {
                return true;
            }
        }

        return false;
    }

    private static double Turn(double degrees) => ((degrees % 360) + 360) % 360;
}
