using System.Collections.Concurrent;
using Trundle.Engine.Balance;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>The choice of weights where pieces have lengths, arcs are forbidden and the angle is free.</summary>
public class LengthsAndArcsTests
{
    [Fact]
    public void Three_clips_side_by_side_make_what_one_and_two_cannot()
    {
        // 20 g clips of 35 mm where 60 g are wanted: touching, 35/200 rad apart, they make 20·(1 + 2·cos(35/200)) g.
        var problem = RandomProblems.OnePlane(60, 40, [new StockItem(Mass.FromGrams(20), Length.FromMillimetres(35), null)]);
        var outcome = BalanceSolve.Run(problem);
        var apart = 35.0 / 200 * 180 / Math.PI;
        outcome.WithinTolerance.ShouldBeTrue();
        outcome.ProvenOptimal.ShouldBeTrue();
        Places(outcome).ShouldBe([40 - apart, 40, 40 + apart], 1e-6);
        outcome.Residual.Outer.MassAt(Length.FromMillimetres(200)).Grams.ShouldBe(60 - (20 * (1 + (2 * Math.Cos(35.0 / 200)))), 1e-9);
    }

    [Fact]
    public void A_chain_is_broken_by_a_forbidden_arc()
    {
        // 80 g wanted where the valve takes 10°: two clips stand at its ends, and one touches each of them.
        var problem = RandomProblems.OnePlane(80, 40, [new StockItem(Mass.FromGrams(20), Length.FromMillimetres(35), null)]) with
        {
            Forbidden = [new ForbiddenArc(PlaneSide.Outer, WheelAngle.FromDegrees(35), WheelAngle.FromDegrees(45))],
        };
        var outcome = BalanceSolve.Run(problem);
        var half = 35.0 / 400 * 180 / Math.PI;
        outcome.ProvenOptimal.ShouldBeTrue();
        Places(outcome).ShouldBe([35 - (3 * half), 35 - half, 45 + half, 45 + (3 * half)], 1e-6);
    }

    [Fact]
    public void A_chain_of_different_lengths_has_the_heaviest_in_the_middle()
    {
        // One of each in the drawer, and all are needed: the longest by mass goes between the others.
        StockItem[] clips =
        [
            new(Mass.FromGrams(30), Length.FromMillimetres(40), 1), new(Mass.FromGrams(20), Length.FromMillimetres(30), 1), new(Mass.FromGrams(10), Length.FromMillimetres(20), 1),
        ];
        var outcome = BalanceSolve.Run(RandomProblems.OnePlane(61, 200, clips));
        outcome.ProvenOptimal.ShouldBeTrue();
        outcome.Weights.Select(w => w.Mass.Grams).ShouldBe(outcome.Weights[0].Mass.Grams < 15 ? [10, 30, 20] : [20, 30, 10], 1e-9);
        var best = 0.0;
        foreach (var (left, right) in new[] { (20.0 + 40, 40.0 + 30), (30.0 + 20, 20.0 + 40), (20.0 + 30, 30.0 + 40) })
        {
            var (first, middle, last) = left + right == 130 ? (10, 30, 20) : left == 50 && right == 60 ? (20, 10, 30) : (10, 20, 30);
            var (a, b) = (left / 400, right / 400);
            best = Math.Max(best, (middle + (first * System.Numerics.Complex.Exp(new(0, -a))) + (last * System.Numerics.Complex.Exp(new(0, b)))).Magnitude);
        }

        outcome.Added.Outer.MassAt(Length.FromMillimetres(200)).Grams.ShouldBe(best, 1e-9);
    }

    [Fact]
    public void On_one_plane_no_grid_of_angles_beats_the_choice() =>
        Beaten(2_000, seed => RandomProblems.Lengths(seed, bothPlanes: false), (problem, seed) => problem with { AngleStep = Angle.FromDegrees(seed % 2 == 0 ? 15 : 12) }).ShouldBeEmpty();

    [Fact]
    public void On_two_planes_no_grid_of_angles_beats_the_choice() =>
        Beaten(1_000, seed => RandomProblems.Lengths(seed, bothPlanes: true), (problem, _) => problem with { AngleStep = Angle.FromDegrees(24) }).ShouldBeEmpty();

    [Fact]
    public void No_set_that_is_moved_by_chance_beats_the_choice()
    {
        var faults = new ConcurrentBag<string>();
        var near = 0;
        Parallel.For(0, 1_000, seed =>
        {
            var problem = RandomProblems.Lengths(seed, bothPlanes: seed % 2 == 0);
            var outcome = BalanceSolve.Run(problem);
            if (!outcome.ProvenOptimal)
            {
                return;
            }

            var search = new AngleSearch(problem, seed);
            for (var pieces = 1; pieces <= problem.MaxPieces; pieces++)
            {
                var price = outcome.WithinTolerance ? problem.MassPenaltyPerGram : 0;
                if (outcome.WithinTolerance && pieces > outcome.Pieces)
                {
                    break;
                }

                // Fewer pieces may not meet the tolerance at all; as many may not be worth more.
                var least = search.Least(pieces, outcome.WithinTolerance ? 1 : double.PositiveInfinity, price, 16, 300);
                var bar = outcome.WithinTolerance && pieces < outcome.Pieces ? double.PositiveInfinity : outcome.Score + (price * outcome.TotalMass.Grams) - 1e-5;
                if (least < bar)
                {
                    faults.Add($"seed {seed}: {pieces} pieces come to {least}, the choice of {outcome.Pieces} to {bar}");
                }

                Interlocked.Add(ref near, least < bar + 0.02 ? 1 : 0);
            }
        });
        faults.Take(5).ShouldBeEmpty();

        // Chance comes close to the choice often enough to be a rival.
        near.ShouldBeGreaterThan(300);
    }

    /// <summary>Where something on a grid, by trying everything, is better than the choice at any angle, or the choice is not proven.</summary>
    private static List<string> Beaten(int problems, Func<int, BalanceProblem> make, Func<BalanceProblem, int, BalanceProblem> onGrid)
    {
        var faults = new ConcurrentBag<string>();
        var (met, several) = (0, 0);
        Parallel.For(0, problems, seed =>
        {
            var problem = make(seed);
            var outcome = BalanceSolve.Run(problem);
            Interlocked.Add(ref met, outcome.WithinTolerance ? 1 : 0);
            Interlocked.Add(ref several, outcome.Weights.GroupBy(w => w.Plane).Any(g => g.Count() > 2) ? 1 : 0);
            if (new BruteForce(problem).Fault(outcome.Weights) is { } misplaced)
            {
                faults.Add($"seed {seed}: may not be fitted: {misplaced}");
            }

            var best = new BruteForce(onGrid(problem, seed)).Best(problem.MaxPieces!.Value, 1000);
            var price = problem.MassPenaltyPerGram;
            var isBetter = best.Meets != outcome.WithinTolerance ? best.Meets
                : best.Meets ? best.Pieces < outcome.Pieces || (best.Pieces == outcome.Pieces && best.Score + (price * best.Grams) < outcome.Score + (price * outcome.TotalMass.Grams) - 1e-5)
                : best.Score < outcome.Score - 1e-5;
            if (isBetter || !outcome.ProvenOptimal)
            {
                faults.Add($"seed {seed}: {outcome.Pieces} pieces, {outcome.TotalMass.Grams} g, score {outcome.Score}, proven {outcome.ProvenOptimal}; on the grid {best.Pieces}, {best.Grams} g, {best.Score}");
            }
        });

        // Neither all easy nor all out of reach, and often three pieces on a plane.
        met.ShouldBeInRange(problems / 5, problems * 19 / 20);
        several.ShouldBeGreaterThan(problems / 50);
        return [.. faults.Order().Take(5)];
    }

    private static double[] Places(BalanceOutcome outcome) => [.. outcome.Weights.Select(w => w.Place.Degrees).Order()];
}
