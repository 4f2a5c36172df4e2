using System.Diagnostics;
using System.Globalization;
using Trundle.Engine.Balance;
using Trundle.Engine.Tests.Balance.Oracle;

namespace Trundle.Bench;

/// <summary>The choice of weights beside OR-Tools CP-SAT on the same whole-number problem, and beside trying every set.</summary>
internal static class ChoiceBench
{
    public static void Run(Report report)
    {
        var rows = new List<IReadOnlyList<string>>();
        foreach (var (name, problem, exhaustive) in ChoiceWheels.Countable)
        {
            var outcome = BalanceSolve.Run(problem);
            var first = Milliseconds(() => BalanceSolve.Run(problem), 1);
            var ours = Milliseconds(() => BalanceSolve.Run(problem), 2000);
            var proven = true;
            IReadOnlyList<IntegerProgram.Piece> theirs = [];
            var rival = Milliseconds(
                () =>
                {
                    theirs = new IntegerProgram(problem, ChoiceWheels.MostGrams).Solve(120, out var sure) ?? [];
                    proven &= sure;
                },
                3);
            var tried = exhaustive ? Milliseconds(() => new BruteForce(problem).Best(problem.MaxPieces!.Value, ChoiceWheels.MostGrams), 3) : (double?)null;
            rows.Add(
            [
                name,
                outcome.Pieces.ToString(CultureInfo.InvariantCulture),
                StartBench.Text(ours, "F3"),
                StartBench.Text(rival, "F0"),
                StartBench.Text(rival / ours, "F0"),
                tried is { } t ? StartBench.Text(t, "F0") : "too many",
                tried is { } u ? StartBench.Text(u / ours, "F0") : "–",
                outcome.ProvenOptimal && proven && IsSame(problem, outcome, theirs) ? "yes" : "NO",
                StartBench.Text(first, "F2"),
            ]);
        }

        foreach (var (name, any) in ChoiceWheels.AnyAngle)
        {
            rows.Add(
            [
                name, BalanceSolve.Run(any).Pieces.ToString(CultureInfo.InvariantCulture), StartBench.Text(Milliseconds(() => BalanceSolve.Run(any), 2000), "F3"),
                "–", "–", "–", "–", BalanceSolve.Run(any).ProvenOptimal ? "proven" : "NO", "–",
            ]);
        }

        report.Table(
            "The choice of weights",
            "Milliseconds, medians, in one process, warm. CP-SAT gets one program with all processors, and both prove their set; trying every set is the tests' oracle. "
            + "Same: the same number of pieces, and worth the same to CP-SAT's rounding. Aim: 1000 times CP-SAT.",
            ["wheel", "pieces", "trundle", "CP-SAT", "ratio", "every set", "ratio", "same", "first call"],
            rows);
    }

    private static bool IsSame(BalanceProblem problem, BalanceOutcome outcome, IReadOnlyList<IntegerProgram.Piece> theirs)
    {
        var oracle = new BruteForce(problem);
        var worth = outcome.Score + (problem.MassPenaltyPerGram * outcome.TotalMass.Grams);
        var theirWorth = oracle.Score(Sum(PlaneSide.Inner), Sum(PlaneSide.Outer)) + (problem.MassPenaltyPerGram * theirs.Sum(p => p.Grams));
        return theirs.Count == outcome.Pieces && theirWorth >= worth - 1e-9 && theirWorth <= worth + IntegerProgram.Rounding(outcome.Pieces);

        System.Numerics.Complex Sum(PlaneSide side) => theirs.Where(p => p.Side == side).Aggregate(System.Numerics.Complex.Zero, (sum, p) =>
            sum + System.Numerics.Complex.FromPolarCoordinates(p.Grams * problem.Planes.At(side).Radius.Millimetres, p.Degrees * Math.PI / 180));
    }

    private static double Milliseconds(Action run, int times)
    {
        var took = new List<double>();
        for (var i = 0; i < times; i++)
        {
            var watch = Stopwatch.StartNew();
            run();
            took.Add(watch.Elapsed.TotalMilliseconds);
        }

        return StartBench.Median(took);
    }
}
