using System.Diagnostics;
using System.Globalization;
using Trundle.Engine.Balance;
using Trundle.Engine.Tests.Balance.Oracle;
using Trundle.Measures;

namespace Trundle.Bench;

/// <summary>The choice of weights beside OR-Tools CP-SAT on the same whole-number problem, and beside trying every set.</summary>
internal static class ChoiceBench
{
    private const double MostGrams = 90;

    private static readonly (string Name, BalanceProblem Problem, bool Exhaustive)[] Wheels =
    [
        ("ten spokes, strips both sides, a plane", LargeProblems.Strips(10, 34, 22, 29, 163, "a plane", 3), true),
        ("ten spokes, strips both sides, static and couple", LargeProblems.Strips(10, 34, 22, 29, 163, "static and couple", 3), true),
        ("ten spokes, clips on 5° inside, static and couple", LargeProblems.ClipsAndStrips(10, 5, 38, 47, 26, 305, "static and couple", 3), false),
        ("five spokes, strips both sides, a plane", LargeProblems.Strips(5, 31, 60, 27, 205, "a plane", 4), true),
    ];

    public static void Run(Report report)
    {
        var rows = new List<IReadOnlyList<string>>();
        foreach (var (name, given, exhaustive) in Wheels)
        {
            var problem = given with { MaxMass = Mass.FromGrams(MostGrams) };
            var outcome = BalanceSolve.Run(problem);
            var first = Milliseconds(() => BalanceSolve.Run(problem), 1);
            var ours = Milliseconds(() => BalanceSolve.Run(problem), 2000);
            var proven = true;
            IReadOnlyList<IntegerProgram.Piece> theirs = [];
            var rival = Milliseconds(
                () =>
                {
                    theirs = new IntegerProgram(problem, MostGrams).Solve(120, out var sure) ?? [];
                    proven &= sure;
                },
                3);
            var tried = exhaustive ? Milliseconds(() => new BruteForce(problem).Best(problem.MaxPieces!.Value, MostGrams), 3) : (double?)null;
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

        // Any angle inside: no whole-number program holds that, so there is no rival; it is what most wheels in the bay are.
        var any = LargeProblems.ClipsAndStrips(10, 5, 38, 47, 26, 305, "static and couple", 3) with { AngleStep = null };
        rows.Add(["ten spokes, clips at any angle inside, static and couple", BalanceSolve.Run(any).Pieces.ToString(CultureInfo.InvariantCulture), StartBench.Text(Milliseconds(() => BalanceSolve.Run(any), 2000), "F3"), "–", "–", "–", "–", BalanceSolve.Run(any).ProvenOptimal ? "proven" : "NO", "–"]);

        report.Table(
            "The choice of weights",
            "Milliseconds, medians, in one process, warm. CP-SAT gets one program with all processors, and both prove their set; trying every set is the tests' oracle. "
            + "Same: the same number of pieces, and worth the same to CP-SAT's rounding. Aim: 1000 times CP-SAT. The browser runs the same code interpreted, some 30 to 50 times slower.",
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
