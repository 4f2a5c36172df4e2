using System.Numerics;
using Trundle.Engine.Balance;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>Holds a choice of weights against trying everything: worth the same by every aim, of pieces that may be fitted, and proven.</summary>
internal static class ExhaustiveCheck
{
    /// <summary>What is wrong; null where nothing is.</summary>
    public static string? Fault(BalanceProblem problem) => Fault(problem, out _);

    /// <summary>What is wrong, with the choice.</summary>
    public static string? Fault(BalanceProblem problem, out BalanceOutcome outcome)
    {
        var chosen = BalanceSolve.Run(problem);
        outcome = chosen;
        var oracle = new BruteForce(problem);
        var best = oracle.Best(problem.MaxPieces!.Value, problem.MaxMass!.Value.Grams);
        var score = oracle.Score(Placed(chosen, PlaneSide.Inner), Placed(chosen, PlaneSide.Outer), out var squares);
        var grams = chosen.Weights.Sum(w => w.Mass.Grams);
        if (oracle.Fault(chosen.Weights) is { } misplaced)
        {
            return $"may not be fitted: {misplaced}";
        }

        var same = Math.Abs(chosen.Score - score) < 1e-9 && chosen.WithinTolerance == best.Meets && chosen.ProvenOptimal
            && (!best.Meets && problem.Aims.Contains(BalanceAim.Tolerance) ? Math.Abs(score - best.Score) < 1e-9 && squares < best.Squares + 1e-8 : problem.Aims.Append(BalanceAim.Score).All(aim => aim switch
            {
                BalanceAim.Tolerance => true,
                BalanceAim.Pieces => chosen.Pieces == best.Pieces,
                BalanceAim.Mass => Math.Abs(grams - best.Grams) < 1e-6,
                BalanceAim.Score => Math.Abs(score + (problem.MassPenaltyPerGram * grams) - oracle.Priced(best)) < 1e-8 && squares < best.Squares + 1e-8,
            }));
        return same ? null : $"{chosen.Pieces} pieces, {grams} g, score {score}, said {chosen.Score}, proven {chosen.ProvenOptimal}; by trying everything {best.Pieces} pieces, {best.Grams} g, score {best.Score}";
    }

    private static Complex Placed(BalanceOutcome outcome, PlaneSide side) =>
        outcome.Weights.Where(w => w.Plane == side).Aggregate(Complex.Zero, (sum, w) =>
            sum + Complex.FromPolarCoordinates(w.Mass.Grams * outcome.Problem.Planes.At(side).Radius.Millimetres, w.Place.Degrees * Math.PI / 180));
}
