using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Why;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Oracle.Why;

/// <summary>What must not matter does not.</summary>
public sealed class WhyPropertyTests
{
    [Fact]
    public void Turning_every_angle_changes_nothing()
    {
        for (var seed = 1; seed <= 60; seed++)
        {
            var problem = WhyCase.Draw(seed, Departure.None).Problem;
            foreach (var turn in new[] { 37.0, 180, 301 })
            {
                var by = Angle.FromDegrees(turn);
                ShouldAgree(problem, problem with
                {
                    Spins =
                    [
                        .. problem.Spins.Select(s => new WhySpin(
                            new UnbalancePair(Turned(s.Display.Inner, by), Turned(s.Display.Outer, by)),
                            [.. s.FittedAfter.Select(w => w with { Place = w.Place + by })])),
                    ],
                });
            }
        }

        static UnbalanceVector Turned(UnbalanceVector v, Angle by) => UnbalanceVector.At(v.Amount, v.Place + by);
    }

    [Fact]
    public void The_order_of_weights_changes_nothing()
    {
        for (var seed = 1; seed <= 60; seed++)
        {
            var problem = WhyCase.Draw(seed, Departure.None).Problem;
            ShouldAgree(problem, problem with { Spins = [.. problem.Spins.Select(s => s with { FittedAfter = [.. s.FittedAfter.Reverse()] })] });
        }
    }

    [Fact]
    public void Moving_the_axis_changes_nothing()
    {
        for (var seed = 1; seed <= 60; seed++)
        {
            var problem = WhyCase.Draw(seed, Departure.None).Problem;
            var by = Length.FromMillimetres(123);
            var (first, second) = problem.Transducers!.Value;
            ShouldAgree(problem, problem with
            {
                Entered = problem.Entered with { RimDistance = problem.Entered.RimDistance + by },
                Transducers = (first + by, second + by),
            });
        }
    }

    [Fact]
    public void Larger_in_all_masses_and_in_repeatability_keeps_the_settings_weights()
    {
        // Twice every mass and twice the repeatability: whatever has no scale of its own in grams keeps its evidence.
        var problem = WhyCase.Draw(5, Departure.None).Problem;
        var twice = problem with
        {
            Repeatability = problem.Repeatability * 2,
            Spins = [.. problem.Spins.Select(s => new WhySpin(new UnbalancePair(s.Display.Inner * 2, s.Display.Outer * 2), [.. s.FittedAfter.Select(w => w with { Mass = w.Mass * 2 })]))],
        };
        var (a, b) = (BalanceWhy.Run(problem), BalanceWhy.Run(twice));
        foreach (var cause in new[] { WhyCause.RimDistance, WhyCause.RimDiameter, WhyCause.RimWidth, WhyCause.WeightAngle, WhyCause.WeightsSwapped, WhyCause.WeightPlace, WhyCause.WeightLost, WhyCause.Calibration })
        {
            Of(b, cause).EvidenceLogRatio.ShouldBe(Of(a, cause).EvidenceLogRatio, 1e-9);
        }
    }

    [Fact]
    public void One_spin_gives_what_is_held_likely_beforehand()
    {
        var problem = WhyCase.Draw(8, Departure.None).Problem;
        var outcome = BalanceWhy.Run(problem with { Spins = [problem.Spins[0]] });
        outcome.CanTell.ShouldBeFalse();
        foreach (var e in outcome.Explanations)
        {
            e.Probability.ShouldBe(e.Prior, 1e-9);
        }

        outcome.Explanations[0].NextStep.Key.ShouldBe("spin-after-fitting");
        outcome.Explanations.ShouldAllBe(e => e.Estimate == null);
        BalanceWhy.Run(problem with { Spins = [problem.Spins[0] with { FittedAfter = [] }] }).Explanations[0].NextStep.Key.ShouldBe("fit-and-spin");
    }

    [Fact]
    public void Where_nothing_was_fitted_no_weight_is_blamed()
    {
        var problem = WhyCase.Draw(8, Departure.None).Problem;
        var outcome = BalanceWhy.Run(problem with { Spins = [problem.Spins[0] with { FittedAfter = [] }, problem.Spins[0] with { FittedAfter = [] }] });
        outcome.WeightsSeen.ShouldBeFalse();
        foreach (var e in outcome.Explanations.Where(e => e.Cause.Word().StartsWith("weight", StringComparison.Ordinal)))
        {
            e.Probability.ShouldBe(0);
        }

        outcome.Explanations[0].Cause.ShouldBe(WhyCause.Noise);
    }

    [Fact]
    public void A_setting_measured_again_parts_it_at_once()
    {
        // Only the outer side was fitted: its weight cannot tell rim distance from rim width.
        var wheel = new SimulatedWheel { InnerStart = 0, Deviation = 0.5 };
        var weight = new SimulatedWheel.Weight(0, true, 45, 3.7 + Math.PI);
        var fault = new SimulatedWheel.Fault { Width = 25.4 };
        var problem = wheel.Problem([wheel.Display(fault, [weight], 0), wheel.Display(fault, [weight], 1)], [weight]);
        var before = BalanceWhy.Run(problem);
        Of(before, WhyCause.RimDistance).Probability.ShouldBeGreaterThan(0.05);
        before.Explanations[0].NextStep.Key.ShouldBeOneOf("measure-rim-width", "measure-rim-distance");
        var width = BalanceWhy.Run(problem with { MeasuredAgain = new MeasuredAgain(null, null, Length.FromMillimetres(203)) });
        width.Explanations[0].Cause.ShouldBe(WhyCause.RimWidth);
        width.Explanations[0].Probability.ShouldBeGreaterThan(0.99);
        var other = BalanceWhy.Run(problem with { MeasuredAgain = new MeasuredAgain(null, null, Length.FromMillimetres(178)) });
        other.Explanations[0].Cause.ShouldBe(WhyCause.RimDistance);
    }

    [Fact]
    public void Another_kind_told_than_entered_makes_the_place_likelier()
    {
        var wheel = new SimulatedWheel { Deviation = 1.5 };
        var problem = WhyRecoveryTests.Spun(wheel, new SimulatedWheel.Fault { Place = (_, w) => w.Outer ? (0.93, -12) : (1, 0) });
        var told = problem with { Spins = [.. problem.Spins.Select(s => s with { FittedAfter = [.. s.FittedAfter.Select(w => w with { Kind = w.Plane == PlaneSide.Outer ? WeightKind.Adhesive : WeightKind.Clip })] })] };
        Of(BalanceWhy.Run(told), WhyCause.WeightPlace).Probability.ShouldBeGreaterThan(2 * Of(BalanceWhy.Run(problem), WhyCause.WeightPlace).Probability);
    }

    [Fact]
    public void A_profile_tells_where_the_other_kind_sits()
    {
        var wheel = new SimulatedWheel { Deviation = 0.5 };
        var profile = new BalancerProfile { OuterAdhesive = new WeightPlaceOffset(Length.FromMillimetres(-30), Length.FromMillimetres(-70)) };
        var problem = WhyRecoveryTests.Spun(wheel, new SimulatedWheel.Fault { Place = (_, w) => w.Outer ? ((203.2 - 30) / 203.2, -70) : (1, 0) });
        var outcome = BalanceWhy.Run(problem with { Profile = profile });
        outcome.Explanations[0].Cause.ShouldBe(WhyCause.WeightPlace);
        Of(outcome, WhyCause.WeightPlace).EvidenceLogRatio.ShouldBeGreaterThan(Of(BalanceWhy.Run(problem), WhyCause.WeightPlace).EvidenceLogRatio);
    }

    [Fact]
    public void Two_things_wrong_at_once_are_said_to_fit_nothing()
    {
        var wheel = new SimulatedWheel { Deviation = 0.3, Spins = 3 };
        var outcome = BalanceWhy.Run(WhyRecoveryTests.Spun(wheel, new SimulatedWheel.Fault
        {
            Distance = 40,
            Diameter = 50,
            True = (i, w) => i == 0 ? w with { Angle = w.Angle + 1 } : w,
        }));
        (outcome.NothingFits || outcome.Explanations[0].Cause == WhyCause.LooseObject).ShouldBeTrue();
        outcome.MisfitWithoutCause.ShouldBeGreaterThan(outcome.MisfitExpected);
    }

    private static WhyExplanation Of(WhyOutcome outcome, WhyCause cause) => outcome.Explanations.First(e => e.Cause == cause);

    private static void ShouldAgree(WhyProblem a, WhyProblem b)
    {
        var (first, second) = (BalanceWhy.Run(a), BalanceWhy.Run(b));
        foreach (var e in first.Explanations)
        {
            Of(second, e.Cause).Probability.ShouldBe(e.Probability, 1e-7, e.Cause.Word());
        }
    }
}
