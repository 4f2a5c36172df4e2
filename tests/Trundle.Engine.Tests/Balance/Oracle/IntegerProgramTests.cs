using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>The choice of weights on whole wheels against OR-Tools CP-SAT, which proves the same problem's best set in its own way.</summary>
public class IntegerProgramTests
{
    [Theory]
    [InlineData(5, 0, 31, 60, 27, 205, "a plane")]
    [InlineData(5, 0, 24, 299, 36, 200, "static and couple")]
    [InlineData(6, 0, 33, 15, 21, 190, "all")]
    [InlineData(7, 0, 22, 70, 41, 250, "a plane")]
    [InlineData(10, 0, 34, 20, 29, 163, "static and couple")]
    [InlineData(12, 0, 28, 101, 33, 340, "a plane")]
    [InlineData(10, 15, 38, 47, 26, 305, "static and couple")]
    [InlineData(5, 10, 27, 131, 33, 125, "a plane")]
    [InlineData(10, 15, 38, 47, 26, 305, "static")]
    public void The_same_pieces_and_the_same_worth(int spokes, double step, double innerGrams, double innerDegrees, double outerGrams, double outerDegrees, string tolerance)
    {
        var problem = step > 0
            ? LargeProblems.ClipsAndStrips(spokes, step, innerGrams, innerDegrees, outerGrams, outerDegrees, tolerance, 4)
            : LargeProblems.Strips(spokes, innerGrams, innerDegrees, outerGrams, outerDegrees, tolerance, 4);
        problem = problem with { MaxMass = Mass.FromGrams(100) };
        var outcome = BalanceSolve.Run(problem);
        outcome.ProvenOptimal.ShouldBeTrue();
        outcome.WithinTolerance.ShouldBeTrue();
        var (theirPieces, theirWorth) = Theirs(problem);
        theirPieces.ShouldBe(outcome.Pieces);

        // Both sets in exact figures: theirs may be worse by what they rounded, never better.
        theirWorth.ShouldBeInRange(Worth(outcome) - 1e-9, Worth(outcome) + IntegerProgram.Rounding(outcome.Pieces));
    }

    [Theory]
    [InlineData(41, 66, 27, 2, "a plane")]
    [InlineData(33, 250, 48, 356, "a plane")]
    [InlineData(52, 70, 12, 180, "a plane")]
    [InlineData(36, 72, 31, 11, "static and couple")]
    public void With_lengths_past_arcs_the_same_on_a_grid_and_no_worse_at_any_angle(double innerGrams, double innerDegrees, double outerGrams, double outerDegrees, string tolerance)
    {
        var onGrid = LargeProblems.SizedClips(10, innerGrams, innerDegrees, outerGrams, outerDegrees, tolerance, 5) with { MaxMass = Mass.FromGrams(100) };
        var (theirPieces, theirWorth) = Theirs(onGrid);
        var ours = BalanceSolve.Run(onGrid);
        ours.ProvenOptimal.ShouldBeTrue();
        ours.Pieces.ShouldBe(theirPieces);
        theirWorth.ShouldBeInRange(Worth(ours) - 1e-9, Worth(ours) + IntegerProgram.Rounding(ours.Pieces));

        var anywhere = BalanceSolve.Run(onGrid with { AngleStep = null });
        anywhere.ProvenOptimal.ShouldBeTrue();
        anywhere.WithinTolerance.ShouldBeTrue();
        (anywhere.Pieces < theirPieces || (anywhere.Pieces == theirPieces && Worth(anywhere) <= theirWorth + 1e-9)).ShouldBeTrue();
    }

    private static double Worth(BalanceOutcome outcome) => outcome.Score + (0.02 * outcome.TotalMass.Grams);

    /// <summary>What CP-SAT proves to be best: how many pieces, and their worth in exact figures.</summary>
    private static (int Pieces, double Worth) Theirs(BalanceProblem problem)
    {
        var theirs = new IntegerProgram(problem, 100).Solve(60, out var proven).ShouldNotBeNull();
        proven.ShouldBeTrue();
        return (theirs.Count, new BruteForce(problem).Score(Sum(PlaneSide.Inner), Sum(PlaneSide.Outer)) + (0.02 * theirs.Sum(p => p.Grams)));

        Complex Sum(PlaneSide side) => theirs.Where(p => p.Side == side).Aggregate(Complex.Zero, (sum, p) =>
            sum + Complex.FromPolarCoordinates(p.Grams * problem.Planes.At(side).Radius.Millimetres, p.Degrees * Math.PI / 180));
    }
}
