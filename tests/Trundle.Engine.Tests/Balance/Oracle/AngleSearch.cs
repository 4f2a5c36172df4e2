using System.Numerics;
using Trundle.Engine.Balance;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>
/// Looks for a better choice of weights by chance: sets thrown at random that may be fitted, each moved by ever smaller random steps as long as the score
/// falls. It proves nothing, and whatever it finds can be fitted.
/// </summary>
internal sealed class AngleSearch(BalanceProblem problem, int seed)
{
    private readonly BruteForce _oracle = new(problem);
    private readonly Random _random = new(seed);
    private readonly WeightPlane[] _planes = [problem.Inner, problem.Outer];

    private readonly record struct Piece(PlaneSide Side, double Grams, double Size, int[] Used, double Degrees);

    /// <summary>
    /// The least of score and price that was found among sets of so many pieces with a score up to a greatest; infinite where none was found that fits.
    /// </summary>
    public double Least(int pieces, double mostScore, double pricePerGram, int throws, int steps)
    {
        var least = double.PositiveInfinity;
        var kinds = new[] { PlaneSide.Inner, PlaneSide.Outer }.SelectMany(side =>
            BruteForce.Pieces(problem, _planes[(int)side].Kind, 60).Select(p => new Piece(side, p.Grams, p.Size, p.Used, 0))).ToArray();
        if (kinds.Length == 0)
        {
            return least;
        }

        for (var i = 0; i < throws; i++)
        {
            var set = new Piece[pieces];
            for (var p = 0; p < pieces; p++)
            {
                set[p] = kinds[_random.Next(kinds.Length)] with { Degrees = _random.NextDouble() * 360 };
            }

            if (!Holds(set) || set.Where((_, p) => !Fits(set, p)).Any())
            {
                continue;
            }

            var score = Moved(set, steps);
            least = score <= mostScore ? Math.Min(least, score + (pricePerGram * set.Sum(p => p.Grams))) : least;
        }

        return least;
    }

    private double Moved(Piece[] set, int steps)
    {
        var score = Score(set);
        for (var step = 0; step < steps && set.Length > 0; step++)
        {
            var p = _random.Next(set.Length);
            var size = 60 * Math.Pow(1e-5, (double)step / steps);
            var by = (_random.NextDouble() - 0.5) * 2 * size;
            var kept = set.ToArray();

            // One piece, or all of its plane together.
            var together = _random.Next(3) == 0;
            for (var q = 0; q < set.Length; q++)
            {
                if (q == p || (together && set[q].Side == set[p].Side))
                {
                    set[q] = set[q] with { Degrees = ((set[q].Degrees + by) % 360 + 360) % 360 };
                }
            }

            var moved = Score(set);
            if (moved <= score && !set.Where((_, q) => !Fits(set, q)).Any())
            {
                score = moved;
            }
            else
            {
                kept.CopyTo(set, 0);
            }
        }

        return score;
    }

    private double Score(Piece[] set) => _oracle.Score(Sum(set, PlaneSide.Inner), Sum(set, PlaneSide.Outer));

    private Complex Sum(Piece[] set, PlaneSide side) => set.Where(p => p.Side == side).Aggregate(Complex.Zero, (sum, p) =>
        sum + Complex.FromPolarCoordinates(p.Grams * _planes[(int)side].Place.Radius.Millimetres, p.Degrees * Math.PI / 180));

    private bool Fits(Piece[] set, int at)
    {
        var (piece, plane) = (set[at], _planes[(int)set[at].Side]);
        return !BruteForce.IsForbidden(problem, piece.Side, plane, piece.Degrees, piece.Size)
            && !set.Take(at).Any(o => o.Side == piece.Side && BruteForce.Covers(plane, o.Degrees, o.Size, piece.Degrees, piece.Size));
    }

    private bool Holds(Piece[] set) => set.GroupBy(p => _planes[(int)p.Side].Kind).All(kind =>
    {
        var stock = problem.Stock.Of(kind.Key);
        return Enumerable.Range(0, stock.Count).All(i => stock[i].Count is not { } count || kind.Sum(p => p.Used[i]) <= count);
    });
}
