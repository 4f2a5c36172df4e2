using Trundle.Engine.Balance;
using Trundle.Engine.Practice;
using Trundle.Engine.Practice.Bench;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Practice;

/// <summary>The right method reaches tolerance on every wheel; each mistake is caught by the criterion that it belongs to.</summary>
public sealed class RobotTests
{
    private static readonly PracticeLevel[] Levels = Enum.GetValues<PracticeLevel>();

    [Fact]
    public void A_trainee_that_follows_the_method_passes_ten_thousand_wheels()
    {
        var failed = new List<string>();
        var rounds = 0;
        Parallel.For(0, 10_000, new ParallelOptions { MaxDegreeOfParallelism = 2 }, seed =>
        {
            var bench = RobotTrainee.Do(PracticeWheels.Of((ulong)seed, Levels[seed % Levels.Length]));
            var result = BenchJudge.Judge(bench);
            Interlocked.Add(ref rounds, bench.FittedAfter.Count);
            if (!result.Passed)
            {
                lock (failed)
                {
                    failed.Add($"{seed} {bench.Wheel.Level}: {string.Join("; ", result.Parts.Where(p => !p.Met).Select(p => $"{p.Criterion.Key} {p.Feedback}"))}");
                }
            }
        });
        failed.ShouldBeEmpty();
        (rounds / 10_000.0).ShouldBeInRange(1, 2);
    }

    [Theory]
    [InlineData("RimDistanceWrong", PracticeLevel.TwoPlanes, "settings")]
    [InlineData("RimDiameterWrong", PracticeLevel.TwoPlanes, "settings")]
    [InlineData("RimWidthWrong", PracticeLevel.TwoPlanes, "settings")]
    [InlineData("ConeTurnedRound", PracticeLevel.TwoPlanes, "centred")]
    [InlineData("ConeTooSmall", PracticeLevel.TwoPlanes, "centred")]
    [InlineData("ConeTooLarge", PracticeLevel.TwoPlanes, "centred")]
    [InlineData("NutNotFree", PracticeLevel.TwoPlanes, "centred")]
    [InlineData("SidesChanged", PracticeLevel.TwoPlanes, "tolerance")]
    [InlineData("PlaceMirrored", PracticeLevel.TwoPlanes, "tolerance")]
    [InlineData("NoCheckSpin", PracticeLevel.TwoPlanes, "check")]
    [InlineData("MachineNotTried", PracticeLevel.OutOfCalibration, "fault")]
    [InlineData("TyreNotTurned", PracticeLevel.MatchMounting, "fault")]
    public void A_mistake_fails_by_its_own_criterion_and_the_feedback_says_why(string name, PracticeLevel level, string criterion)
    {
        var mistake = Enum.Parse<Mistake>(name);
        var passed = 0;
        var tried = 0;
        for (ulong seed = 0; tried < 200; seed++)
        {
            var wheel = PracticeWheels.Of(seed, level);
            if ((mistake == Mistake.ConeTooSmall && !CentringCones.Set.Any(c => c.Large <= wheel.Bore)) || (mistake == Mistake.ConeTooLarge && !CentringCones.Set.Any(c => c.Small >= wheel.Bore)))
            {
                continue;
            }

            tried++;

            // Of a place or a side that is wrong every time the trainee never comes to the end: one round is enough to see it.
            var result = BenchJudge.Judge(RobotTrainee.Do(wheel, mistake, mistake is Mistake.SidesChanged or Mistake.PlaceMirrored ? 1 : 4));
            var part = result.Parts.Single(p => p.Criterion.Key == criterion);
            passed += part.Met ? 1 : 0;
            part.Met.ShouldBe(part.Feedback.Length == 0);
        }

        // A wheel may be heavy at the valve, or alike on both sides: then such a mistake changes nothing.
        passed.ShouldBeLessThanOrEqualTo(mistake is Mistake.SidesChanged or Mistake.PlaceMirrored ? 6 : 0);
    }

    [Fact]
    public void A_weight_between_spokes_on_the_outer_side_is_not_taken_as_hidden()
    {
        for (ulong seed = 0; seed < 50; seed++)
        {
            var wheel = PracticeWheels.Of(seed, PracticeLevel.SplitBehindSpokes);
            var spokes = wheel.Spokes!.Places;
            var between = WheelAngle.FromDegrees(spokes[0].Degrees + (180.0 / spokes.Count));
            Spokes(Spun(wheel).Fit(PlaneSide.Outer, wheel.OuterKind, Mass.FromGrams(20), between)).ShouldBeFalse();
            Spokes(Spun(wheel).Fit(PlaneSide.Outer, wheel.OuterKind, Mass.FromGrams(20), spokes[1])).ShouldBeTrue();
            Spokes(Spun(wheel).Fit(PlaneSide.Inner, wheel.InnerKind, Mass.FromGrams(20), between)).ShouldBeTrue();
        }

        static PracticeBench Spun(PracticeWheel wheel) => RobotTrainee.Clamp(RobotTrainee.Set(PracticeBench.For(wheel), Mistake.None), Mistake.None).Spin().Value;

        static bool Spokes(PracticeBench bench) => BenchJudge.Judge(bench).Parts.Single(p => p.Criterion.Key == "spokes").Met;
    }

    [Fact]
    public void A_practice_wheels_marking_tells_its_rim_diameter()
    {
        for (ulong seed = 0; seed < 100; seed++)
        {
            var wheel = PracticeWheels.Of(seed, PracticeLevel.TwoPlanes);
            Trundle.Engine.Sidewall.MarkingReader.Read(wheel.Marking).Value.Size.RimDiameterInches.ShouldBe(Math.Round(wheel.Gauged.RimDiameter.Inches), wheel.Marking);
        }
    }

    [Fact]
    public void A_spin_with_the_guard_up_or_without_eye_protection_ends_the_attempt_with_nothing()
    {
        var up = BenchJudge.Judge(RobotTrainee.Do(PracticeWheels.Of(1, PracticeLevel.TwoPlanes), Mistake.GuardUp));
        (up.Passed, up.Score, up.Stop!.Key).ShouldBe((false, 0, "guard"));
        var bench = RobotTrainee.Do(PracticeWheels.Of(1, PracticeLevel.TwoPlanes));
        BenchJudge.Judge(bench).Passed.ShouldBeTrue();
        BenchJudge.Judge(bench.Spin(eyesProtected: false).Value).Stop!.Key.ShouldBe("eyes");
    }

    [Fact]
    public void The_display_at_nothing_with_a_wheel_off_the_axis_leaves_mass_times_eccentricity_on_the_wheel()
    {
        for (ulong seed = 0; seed < 100; seed++)
        {
            var bench = RobotTrainee.Do(PracticeWheels.Of(seed, PracticeLevel.TwoPlanes), Mistake.ConeTurnedRound, 6);
            var shown = bench.Spins[^1];
            var left = BenchJudge.Left(bench);
            var gramMillimetres = bench.Wheel.Mass.Kilograms * bench.Seat.Off.Millimetres * 1000;

            // What is left and what the seat adds come to what the display still shows, by its exact value.
            var seat = UnbalanceVector.At(Unbalance.FromGramMillimetres(gramMillimetres), bench.Seat.Towards);
            (left.Static + seat + shown.Exact.Static).Amount.GramMillimetres.ShouldBeLessThan(1e-6 * gramMillimetres);
            left.Static.Amount.GramMillimetres.ShouldBeGreaterThan(gramMillimetres - (shown.Exact.Static.Amount.GramMillimetres * 1.001) - 1);
            BenchJudge.Judge(bench).Parts.Single(p => p.Criterion.Key == "tolerance").Met.ShouldBeFalse();
        }
    }

    [Fact]
    public void The_judged_parts_are_those_of_the_engine_for_the_same_weights()
    {
        for (ulong seed = 0; seed < 300; seed++)
        {
            var wheel = PracticeWheels.Of(seed, seed % 2 == 0 ? PracticeLevel.TwoPlanes : PracticeLevel.SplitBehindSpokes);
            var outcome = BalanceSolve.Run(wheel.Problem(wheel.Heavy(default).Opposite, wheel.Planes), 200_000);
            var bench = PracticeBench.For(wheel);
            bench = bench with { Weights = [.. outcome.Weights.Select(w => new BenchWeight(w with { Size = null }, w.Place, 1))] };
            var judged = BenchJudge.Parts(bench);
            judged.Count.ShouldBe(outcome.Parts.Count);
            foreach (var (mine, engine) in judged.Zip(outcome.Parts))
            {
                mine.Name.ShouldBe(engine.Name);
                mine.Tolerance.ShouldBe(engine.Tolerance, 1e-9 * engine.Tolerance);
                mine.Left.ShouldBe(engine.Left, 1e-6);
            }
        }
    }

    [Fact]
    public void Nothing_done_earns_nothing()
    {
        foreach (var kind in PracticeAttempts.Kinds)
        {
            for (ulong seed = 1; seed < 40; seed++)
            {
                PracticeAttempts.Judge(new PracticeAttempt(kind.Key, seed, new DateOnly(2026, 3, 2), [])).Value.Score.ShouldBe(0, kind.Key);
            }
        }
    }

    [Fact]
    public void The_criteria_of_every_level_are_worth_a_hundred_points_and_judged_one_by_one()
    {
        foreach (var level in Levels)
        {
            var criteria = BenchCriteria.Of(level);
            criteria.Sum(c => c.Points).ShouldBe(100, level.ToString());
            BenchJudge.Judge(PracticeBench.For(PracticeWheels.Of(3, level))).Parts.Select(p => p.Criterion).ShouldBe(criteria);
        }
    }
}
