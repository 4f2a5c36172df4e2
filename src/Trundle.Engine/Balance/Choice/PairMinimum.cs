using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>The best that two reaches, one a side, can do together.</summary>
/// <param name="Inner">The inner vector, in g·mm.</param>
/// <param name="Outer">The outer vector.</param>
/// <param name="Score">The score there.</param>
/// <param name="Squares">The sum of squares there.</param>
internal readonly record struct PairResult(Complex Inner, Complex Outer, double Score, double Squares);

/// <summary>
/// Least score over two reaches. Where no part of the score joins the planes, or one side is a point, it is a closed form. Else one side runs
/// around a circle, and the other side's best is a closed form: the score along the circle changes no faster than a known rate, so a search
/// that halves intervals finds its least to <see cref="Gap"/>.
/// </summary>
internal sealed class PairMinimum(ScoreParts score, ChoicePlane inner, ChoicePlane outer, SearchBudget budget)
{
    /// <summary>A score lower by less than this is not told from the best.</summary>
    public const double Gap = 1e-5;

    /// <summary>The best of the two reaches, or null where none can be below a score.</summary>
    public PairResult? Best(Reach a, Reach b, double beat)
    {
        if (score.Separate)
        {
            var (x, y) = (Nearest(PlaneSide.Inner, a, inner.Need), Nearest(PlaneSide.Outer, b, outer.Need));
            budget.Spend(10 + (4 * (a.Edges.Count + b.Edges.Count)));
            var value = score.Of(x - inner.Need, y - outer.Need, out var squares);
            return value <= beat ? new PairResult(x, y, value, squares) : null;
        }

        if (a.IsPoint)
        {
            return Within(Given(PlaneSide.Outer, b, a.Centre), beat);
        }

        if (b.IsPoint)
        {
            return Within(Given(PlaneSide.Inner, a, b.Centre), beat);
        }

        if (a.IsRegion && b.IsRegion && a.Contains(inner.Need) && b.Contains(outer.Need))
        {
            return new PairResult(inner.Need, outer.Need, 0, 0);
        }

        // Within a region the score has no least but nothing, and that was asked above: so the best lies on a circle of one side at least,
        // on a side that is a circle already where there is one.
        PairResult? best = null;
        foreach (var (side, runs, answers) in Runs(a, b))
        {
            if (!budget.IsLeft)
            {
                break;
            }

            var still = Math.Min(beat, best?.Score ?? double.PositiveInfinity);
            if (runs.Distance(side == PlaneSide.Inner ? inner.Need : outer.Need) > (still + Gap) * score.Bound(side)
                || IsFar(side == PlaneSide.Inner ? runs : answers, side == PlaneSide.Inner ? answers : runs, still))
            {
                continue;
            }

            var found = !runs.IsPoint ? Around(side, runs, answers, still)
                : Within(Given(side == PlaneSide.Inner ? PlaneSide.Outer : PlaneSide.Inner, answers, runs.Centre), still);
            if (found is { } f && (best is not { } o || f.Score < o.Score || (f.Score == o.Score && f.Squares < o.Squares)))
            {
                best = f;
            }
        }

        return best;
    }

    /// <summary>True where one part of the score alone, made of rings about both sides' centres, cannot come down to what is to be beaten.</summary>
    public bool IsFar(Reach a, Reach b, double beat)
    {
        var (atInner, atOuter) = (a.Centre - inner.Need, b.Centre - outer.Need);
        foreach (var part in score.Parts)
        {
            var (onInner, onOuter) = (Math.Abs(part.OnInner), Math.Abs(part.OnOuter));
            var apart = ((part.OnInner * atInner) + (part.OnOuter * atOuter)).Magnitude;
            var most = (onInner * a.Outer) + (onOuter * b.Outer);
            var least = Math.Max((onInner * a.Inner) - (onOuter * b.Outer), (onOuter * b.Inner) - (onInner * a.Outer));
            if (Math.Max(apart - most, least - apart) * part.PerUnit > beat + 1e-9)
            {
                return true;
            }
        }

        return false;
    }

    private static IEnumerable<(PlaneSide Side, Reach Runs, Reach Answers)> Runs(Reach a, Reach b)
    {
        if (!a.IsRegion)
        {
            return [(PlaneSide.Inner, a, b)];
        }

        return !b.IsRegion
            ? [(PlaneSide.Outer, b, a)]
            : [.. a.Edges.Select(e => (PlaneSide.Inner, e, b)), .. b.Edges.Select(e => (PlaneSide.Outer, e, a))];
    }

    /// <summary>
    /// The same score with the least sum of squares: where one side alone makes the score, the other still has room to move.
    /// </summary>
    public PairResult Settled(Reach a, Reach b, PairResult found)
    {
        var best = found;
        for (var round = 0; round < 30 && budget.IsLeft; round++)
        {
            var before = best.Squares;
            best = Better(best, Given(PlaneSide.Outer, b, best.Inner, found.Score));
            best = Better(best, Given(PlaneSide.Inner, a, best.Outer, found.Score));
            if (best.Squares >= before - 1e-15)
            {
                break;
            }
        }

        return score.Parts is [var only] ? Mirrored(a, b, only, best) : best;

        PairResult Better(PairResult old, PairResult next)
        {
            var value = score.Of(next.Inner - inner.Need, next.Outer - outer.Need, out var squares);
            return value <= found.Score + 1e-10 && squares < old.Squares ? new PairResult(next.Inner, next.Outer, value, squares) : old;
        }
    }

    /// <summary>With one part alone, the mirror image about its need is worth the same: the one that leaves less in both planes together is taken.</summary>
    private PairResult Mirrored(Reach a, Reach b, ScorePart only, PairResult found)
    {
        var axis = (only.OnInner * inner.Need) + (only.OnOuter * outer.Need);
        if (axis == Complex.Zero)
        {
            return found;
        }

        var turn = axis / Complex.Conjugate(axis);
        var (x, y) = (Complex.Conjugate(found.Inner) * turn, Complex.Conjugate(found.Outer) * turn);
        return a.Holds(x) && b.Holds(y) && Left(x, y) < Left(found.Inner, found.Outer) ? found with { Inner = x, Outer = y } : found;

        double Left(Complex atInner, Complex atOuter) => Complex.Abs(atInner - inner.Need) is var r1 && Complex.Abs(atOuter - outer.Need) is var r2 ? (r1 * r1) + (r2 * r2) : 0;
    }

    /// <summary>The vector of a reach that comes nearest to a need.</summary>
    public static Complex Nearest(PlaneSide side, Reach reach, Complex need)
    {
        Span<Complex> targets = stackalloc Complex[SideMinimum.Room];
        Span<double> weights = stackalloc double[SideMinimum.Room];
        var minimum = new SideMinimum([new ScorePart("", 1, 1, 1)], side, need, Complex.Zero, targets, weights);
        minimum.Over(reach);
        return minimum.Vector;
    }

    /// <summary>The best of one side's reach for a vector of the other side.</summary>
    private PairResult Given(PlaneSide free, Reach reach, Complex other, double floor = 0)
    {
        Span<Complex> targets = stackalloc Complex[SideMinimum.Room];
        Span<double> weights = stackalloc double[SideMinimum.Room];
        var isInner = free == PlaneSide.Inner;
        var minimum = new SideMinimum(score.Parts, free, isInner ? inner.Need : outer.Need, other - (isInner ? outer.Need : inner.Need), targets, weights);
        minimum.Floor = Math.Max(minimum.Floor, floor);
        minimum.Over(reach);
        budget.Spend(5 + minimum.Work);
        return isInner ? new PairResult(minimum.Vector, other, minimum.Score, minimum.Squares) : new PairResult(other, minimum.Vector, minimum.Score, minimum.Squares);
    }

    /// <summary>The least that the parts of one side alone can come to.</summary>
    private double Alone(PlaneSide side, Reach reach)
    {
        var least = 0.0;
        var need = side == PlaneSide.Inner ? inner.Need : outer.Need;
        foreach (var part in score.Parts)
        {
            if (part.Factor(side == PlaneSide.Inner ? PlaneSide.Outer : PlaneSide.Inner) == 0)
            {
                least = Math.Max(least, (Nearest(side, reach, need) - need).Magnitude * Math.Abs(part.Factor(side)) * part.PerUnit);
            }
        }

        return least;
    }

    private static PairResult? Within(PairResult result, double beat) => result.Score <= beat ? result : null;

    /// <summary>One side runs around a circle of its reach, the other side answers.</summary>
    private PairResult? Around(PlaneSide side, Reach runs, Reach answers, double beat)
    {
        var radius = runs.Outer;
        var other = side == PlaneSide.Inner ? PlaneSide.Outer : PlaneSide.Inner;
        var rate = score.Parts.Max(p => Math.Abs(p.Factor(side)) * p.PerUnit) * radius;

        // What one side's own parts ask for at least: where they rule, the score is level over a stretch of the circle, and no halving ends it.
        var floor = Math.Max(Alone(PlaneSide.Inner, side == PlaneSide.Inner ? runs : answers), Alone(PlaneSide.Outer, side == PlaneSide.Outer ? runs : answers));
        var best = default(PairResult?);
        var bestAngle = 0.0;
        var queue = new PriorityQueue<(double From, double To, double AtFrom, double AtTo), double>();
        foreach (var (from, length) in runs.Arcs.Arcs)
        {
            var n = Math.Max(1, (int)Math.Ceiling(length / Math.Tau * 48));
            var last = At(from).Score;
            for (var i = 1; i <= n && budget.IsLeft; i++)
            {
                var to = from + (length * i / n);
                var next = At(to).Score;
                Add(from + (length * (i - 1) / n), to, last, next);
                last = next;
            }
        }

        while (queue.TryDequeue(out var cell, out var bound) && bound < Limit() - Gap && budget.IsLeft)
        {
            var middle = (cell.From + cell.To) / 2;
            var value = At(middle).Score;
            if (bestAngle == middle && cell.To - cell.From < 0.05)
            {
                Polish(cell.From, cell.To);
            }

            Add(cell.From, middle, cell.AtFrom, value);
            Add(middle, cell.To, value, cell.AtTo);
        }

        if (best is not { } reached || reached.Score > beat + Gap)
        {
            return null;
        }

        var arc = runs.Arcs.IsWhole ? (From: bestAngle - 1, Length: 2.0)
            : runs.Arcs.Arcs.MinBy(r => Math.Max(r.From - bestAngle, bestAngle - r.From - r.Length));
        foreach (var near in (double[])[0.05, 1e-3, 1e-5])
        {
            Polish(Math.Max(arc.From, bestAngle - near), Math.Min(arc.From + arc.Length, bestAngle + near));
        }

        return best.Value.Score <= beat ? best : null;

        double Limit() => Math.Min(beat, best!.Value.Score);

        void Add(double from, double to, double atFrom, double atTo)
        {
            var bound = Math.Max(floor, ((atFrom + atTo) / 2) - (rate * (to - from) / 2));
            if (bound < Limit() - Gap)
            {
                queue.Enqueue((from, to, atFrom, atTo), bound);
            }
        }

        PairResult At(double angle)
        {
            var result = Given(other, answers, runs.Centre + Complex.FromPolarCoordinates(radius, angle));
            if (best is not { } old || result.Score < old.Score - 1e-13 || (result.Score <= old.Score + 1e-13 && result.Squares < old.Squares))
            {
                best = result;
                bestAngle = angle;
            }

            return result;
        }

        // Golden section: what it finds is only kept where it is better.
        void Polish(double low, double high)
        {
            const double Golden = 0.6180339887498949;
            var (x1, x2) = (high - (Golden * (high - low)), low + (Golden * (high - low)));
            var (f1, f2) = (At(x1).Score, At(x2).Score);
            for (var i = 0; i < 60 && high - low > 1e-13 && budget.IsLeft; i++)
            {
                if (f1 <= f2)
                {
                    (high, x2, f2) = (x2, x1, f1);
                    x1 = high - (Golden * (high - low));
                    f1 = At(x1).Score;
                }
                else
                {
                    (low, x1, f1) = (x1, x2, f2);
                    x2 = low + (Golden * (high - low));
                    f2 = At(x2).Score;
                }
            }
        }
    }
}
