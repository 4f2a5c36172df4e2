using Google.OrTools.Sat;
using Trundle.Engine.Balance;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>
/// The choice of weights as a whole-number program for OR-Tools CP-SAT, written apart from the engine: one variable for each kind of piece at each
/// place, the residual's two components of each part of the score as sums of them, and the part itself as a whole number of
/// <see cref="Unit"/>ths of its tolerance whose square is no less than the sum of theirs. Fewest pieces first, then score and price of mass, in
/// one objective. The tolerance has to be met, and places are few: spokes or a grid.
/// </summary>
internal sealed class IntegerProgram
{
    /// <summary>A tolerance in units. Each coefficient is rounded to one.</summary>
    internal const long Unit = 100_000;

    private readonly BalanceProblem _problem;
    private readonly double _mostGrams;
    private readonly CpModel _model = new();
    private readonly List<(PlaneSide Side, double Degrees, Kind Kind, IntVar Count)> _variables = [];

    private sealed record Kind(double Grams, double Size, int[] Use);

    /// <summary>One piece of the answer.</summary>
    internal readonly record struct Piece(PlaneSide Side, double Degrees, double Grams);

    /// <summary>Sets the program up.</summary>
    /// <param name="problem">With the usual aims.</param>
    /// <param name="mostGrams">Strips up to this mass are offered, and the whole wheel takes no more.</param>
    public IntegerProgram(BalanceProblem problem, double mostGrams)
    {
        (_problem, _mostGrams) = (problem, mostGrams);
        foreach (var side in new[] { PlaneSide.Inner, PlaneSide.Outer })
        {
            Place(side, side == PlaneSide.Inner ? problem.Inner : problem.Outer);
        }

        foreach (var shared in _variables.GroupBy(v => Plane(v.Side).Kind))
        {
            var stock = problem.Stock.Of(shared.Key);
            for (var i = 0; i < stock.Count; i++)
            {
                if (stock[i].Count is { } count)
                {
                    _model.Add(LinearExpr.WeightedSum(shared.Select(v => v.Count), shared.Select(v => (long)v.Kind.Use[i])) <= count);
                }
            }
        }

        var pieces = LinearExpr.Sum(_variables.Select(v => v.Count));
        var milligrams = LinearExpr.WeightedSum(_variables.Select(v => v.Count), _variables.Select(v => (long)Math.Round(v.Kind.Grams * 1000)));
        _model.Add(pieces <= problem.MaxPieces!.Value);
        _model.Add(milligrams <= (long)Math.Round(mostGrams * 1000));
        var score = _model.NewIntVar(0, Unit, "score");
        foreach (var (inner, outer, tolerance) in BruteForce.Parts(problem))
        {
            Part(inner, outer, tolerance, score);
        }

        // A unit of score is this many units of the objective, so that a milligram's price is whole.
        const long Scale = 1000;
        var perMilligram = (long)Math.Round(problem.MassPenaltyPerGram / 1000 * Unit * Scale);
        var perPiece = (Unit * Scale) + (perMilligram * (long)(mostGrams * 1000)) + 1;
        _model.Minimize((pieces * perPiece) + (score * Scale) + (milligrams * perMilligram));
    }

    /// <summary>By how much a score may be told wrong, for so many pieces: each coefficient and the part itself are rounded.</summary>
    public static double Rounding(int pieces) => ((pieces + 1) * 1.5) / Unit;

    /// <summary>The best set; null where the program has none or was stopped.</summary>
    public IReadOnlyList<Piece>? Solve(double seconds, out bool proven)
    {
        var solver = new CpSolver { StringParameters = FormattableString.Invariant($"max_time_in_seconds:{seconds}") };
        var status = solver.Solve(_model);
        proven = status == CpSolverStatus.Optimal;
        return status is CpSolverStatus.Optimal or CpSolverStatus.Feasible
            ? [.. _variables.SelectMany(v => Enumerable.Repeat(new Piece(v.Side, v.Degrees, v.Kind.Grams), (int)solver.Value(v.Count)))]
            : null;
    }

    private WeightPlane Plane(PlaneSide side) => side == PlaneSide.Inner ? _problem.Inner : _problem.Outer;

    private void Place(PlaneSide side, WeightPlane plane)
    {
        var kinds = BruteForce.Pieces(_problem, plane.Kind, _mostGrams).Select(p => new Kind(p.Grams, p.Size, p.Used)).ToList();
        var at = new List<(double Degrees, List<(Kind Kind, IntVar Count)> Here)>();
        foreach (var place in BruteForce.Places(_problem, plane))
        {
            var here = new List<(Kind Kind, IntVar Count)>();
            foreach (var kind in kinds.Where(k => !BruteForce.IsForbidden(_problem, side, plane, place, k.Size)))
            {
                // Clips that nobody gave a length may share a place; of strips there is one.
                var alone = plane.Kind == WeightKind.Adhesive || kind.Size > 0;
                var count = _model.NewIntVar(0, alone ? 1 : _problem.MaxPieces!.Value, "");
                here.Add((kind, count));
                _variables.Add((side, place, kind, count));
            }

            if (plane.Kind == WeightKind.Adhesive)
            {
                _model.Add(LinearExpr.Sum(here.Select(h => h.Count)) <= 1);
            }

            // A piece with a length covers every other at its place.
            foreach (var (a, countA) in here.Where(h => h.Kind.Size > 0))
            {
                foreach (var (_, countB) in here.Where(h => !ReferenceEquals(h.Kind, a)))
                {
                    _model.Add((countA * _problem.MaxPieces!.Value) + countB <= _problem.MaxPieces!.Value);
                }
            }

            foreach (var (degrees, others) in at)
            {
                foreach (var (a, countA) in here)
                {
                    foreach (var (b, countB) in others)
                    {
                        if (BruteForce.Covers(plane, place, a.Size, degrees, b.Size))
                        {
                            _model.Add(countA + countB <= 1);
                        }
                    }
                }
            }

            at.Add((place, here));
        }
    }

    private void Part(double onInner, double onOuter, double tolerance, IntVar score)
    {
        var need = (onInner * BruteForce.Vector(_problem.Needed.Inner)) + (onOuter * BruteForce.Vector(_problem.Needed.Outer));
        var x = Component(v => Math.Cos(v * Math.PI / 180), need.Real);
        var y = Component(v => Math.Sin(v * Math.PI / 180), need.Imaginary);
        var left = _model.NewIntVar(0, Unit, "part");
        var (squareX, squareY, square) = (_model.NewIntVar(0, Unit * Unit, ""), _model.NewIntVar(0, Unit * Unit, ""), _model.NewIntVar(0, Unit * Unit, ""));
        _model.AddMultiplicationEquality(squareX, x, x);
        _model.AddMultiplicationEquality(squareY, y, y);
        _model.AddMultiplicationEquality(square, left, left);
        _model.Add(squareX + squareY <= square);
        _model.Add(score >= left);

        IntVar Component(Func<double, double> along, double needed)
        {
            var component = _model.NewIntVar(-Unit, Unit, "");
            var coefficients = _variables.Select(v => (long)Math.Round(
                (v.Side == PlaneSide.Inner ? onInner : onOuter) * v.Kind.Grams * Plane(v.Side).Place.Radius.Millimetres * along(v.Degrees) / tolerance * Unit));
            _model.Add(component == LinearExpr.WeightedSum(_variables.Select(v => v.Count), coefficients) - (long)Math.Round(needed / tolerance * Unit));
            return component;
        }
    }
}
