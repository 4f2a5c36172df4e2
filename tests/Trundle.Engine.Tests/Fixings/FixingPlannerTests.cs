using Trundle.Engine.Findings;
using Trundle.Engine.Fixings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Fixings;

public class FixingPlannerTests
{
    private static readonly FixingSet Known = new()
    {
        Count = 5,
        Torque = Torque.FromNewtonMetres(110),
        Thread = ThreadDesignation.Read("M12x1.5").Value,
        PropertyClass = "10.9",
        Seat = SeatShape.Cone,
        Condition = ThreadCondition.Dry,
    };

    private static FixingPlan Plan(FixingSet fixings) => FixingPlanner.Plan(new FixingQuestion(fixings));

    [Fact]
    public void Without_the_makers_torque_there_is_no_torque_no_clamp_and_a_caution()
    {
        var plan = Plan(Known with { Torque = null });
        plan.Stages.Select(s => s.Percent).ShouldBe([50, 100]);
        plan.Stages.ShouldAllBe(s => s.Torque == null && s.WrenchSetting == null);
        plan.Clamp.ShouldBeNull();
        plan.Cautions[0].ShouldContain("maker's torque was not given");
    }

    [Fact]
    public void The_wrench_is_set_by_the_adapter_at_every_stage()
    {
        var adapter = new WrenchAdapter(Length.FromMillimetres(450), Length.FromMillimetres(60), Angle.FromDegrees(0));
        var plan = FixingPlanner.Plan(new FixingQuestion(Known with { Torque = Torque.FromNewtonMetres(120) }) { Adapter = adapter, StagePercents = [30, 60, 100] });
        plan.Stages.Select(s => s.Torque!.Value.NewtonMetres).ShouldBe([36, 72, 120], 1e-9);
        plan.Stages[2].WrenchSetting!.Value.NewtonMetres.ShouldBe(105.88, 0.005);
        plan.Stages.ShouldAllBe(s => Math.Abs(adapter.Delivered(s.WrenchSetting!.Value).NewtonMetres - s.Torque!.Value.NewtonMetres) < 1e-9);
    }

    [Theory]
    [InlineData("M12x1.5", "12.9")]
    [InlineData("1/2-20", "grade 8")]
    public void Without_a_class_a_torque_that_no_class_stands_is_a_stop(string thread, string strongest)
    {
        var unknown = Known with { PropertyClass = null, Thread = ThreadDesignation.Read(thread).Value, Torque = Torque.FromNewtonMetres(900) };
        var plan = Plan(unknown);
        var finding = plan.Findings.Single(f => f.Rule == "fixings.clamp");
        finding.Category.ShouldBe(Category.Major);
        finding.Action.ShouldContain($"the strongest class held here, {strongest}");
        finding.Measured.Value!.Value.ShouldBe(plan.Clamp!.Low.Kilonewtons, 1e-9);
        finding.Limit!.Amount.Value!.Value.ShouldBe(PropertyClass.Read(strongest).Value.ProofLoad(ThreadDesignation.Read(thread).Value).Load.Kilonewtons, 1e-9);

        // What an ordinary wheel asks for is judged by no guess at the class.
        Plan(unknown with { Torque = Torque.FromNewtonMetres(110) }).Findings.ShouldNotContain(f => f.Rule == "fixings.clamp");
    }

    [Fact]
    public void The_makers_order_comes_first_and_the_computed_one_stands_beside_it()
    {
        var plan = Plan(Known with { Order = [1, 4, 2, 5, 3] });
        plan.OrderInUse.ShouldBe([1, 4, 2, 5, 3]);
        plan.Sequence.ShouldBe([1, 3, 5, 2, 4]);
        plan.Begin().Next!.Value.ShouldBe(new TighteningStep(1, 0, 50));
        Plan(Known).MakerOrder.ShouldBeNull();
    }

    [Fact]
    public void A_nominal_clamp_past_the_proof_load_is_not_tightened()
    {
        var plan = Plan(Known with { PropertyClass = "8.8", Seat = SeatShape.Flat, Condition = ThreadCondition.Oiled, Torque = Torque.FromNewtonMetres(140) });
        var finding = plan.Findings.ShouldHaveSingleItem();
        finding.Category.ShouldBe(Category.Major);
        finding.Action.ShouldStartWith("Do not tighten to this torque");
        finding.Limit!.Amount.Value!.Value.ShouldBe(51.1, 0.05);
        finding.Measured.Value!.Value.ShouldBe(plan.Clamp!.Nominal.Nominal.Kilonewtons, 1e-9);
    }

    [Fact]
    public void A_high_end_past_the_proof_load_waits_for_a_person_and_a_clamp_below_it_is_nothing()
    {
        Plan(Known).Findings.ShouldBeEmpty();
        var plan = Plan(Known with { PropertyClass = "8.8", Seat = SeatShape.Flat, Torque = Torque.FromNewtonMetres(110) });
        var finding = plan.Findings.ShouldHaveSingleItem();
        finding.Category.ShouldBe(Category.Refer);
        finding.Action.ShouldStartWith("Do not tighten yet. The high end");
        finding.Measured.Value!.Value.ShouldBe(plan.Clamp!.High.Kilonewtons, 1e-9);

        // What nobody gave may be what passes it: that is said first.
        Plan(Known with { PropertyClass = "8.8", Seat = null, Condition = null }).Findings.ShouldHaveSingleItem().Action.ShouldContain("give the seat and the condition of the fixing");
    }

    [Fact]
    public void A_worn_seat_stops_the_tightening()
    {
        var finding = Plan(Known with { SeatWorn = true }).Findings.ShouldHaveSingleItem();
        (finding.Rule, finding.Category).ShouldBe(("wheel.seat-worn", Category.Major));
        finding.Action.ShouldStartWith("Stop: do not tighten on a worn seat. Renew the wheel");
        Plan(Known with { SeatWorn = true, Torque = null }).Findings.ShouldHaveSingleItem().Rule.ShouldBe("wheel.seat-worn");
    }

    [Fact]
    public void Oil_says_from_what_to_what_the_clamp_rises()
    {
        Plan(Known with { Condition = ThreadCondition.Oiled }).Cautions.ShouldContain(c => c.Contains("from 30.1 kN dry to 43.7 kN oiled", StringComparison.Ordinal));
        Plan(Known with { Condition = ThreadCondition.Oiled, Thread = null }).Cautions.ShouldContain(c => c.StartsWith("Oil raises", StringComparison.Ordinal), "without a thread there is no clamp, but the danger is the same");
        Plan(Known).Cautions.ShouldNotContain(c => c.StartsWith("Oil raises", StringComparison.Ordinal));
    }

    [Fact]
    public void The_cautions_of_every_wheel_stand_with_every_plan()
    {
        foreach (var words in new[] { "by hand", "power tool", "calibrated torque wrench", "clean, flat and dry", "never mixed", "left-hand thread", "first stage" })
        {
            Plan(Known).Cautions.ShouldContain(c => c.Contains(words, StringComparison.Ordinal), words);
        }

        Plan(Known with { LeftHand = true }).Cautions.ShouldContain(c => c.Contains("tightens anticlockwise", StringComparison.Ordinal));
    }

    [Fact]
    public void A_class_that_is_not_known_gives_no_proof_load_and_says_so()
    {
        var plan = Plan(Known with { PropertyClass = "7.7" });
        plan.ProofLoad.ShouldBeNull();
        plan.Cautions.ShouldContain(c => c.Contains("not held against a proof load", StringComparison.Ordinal));
    }

    [Fact]
    public void The_re_torque_of_a_light_vehicle_is_common_practice_and_a_heavy_ones_is_published()
    {
        var light = Plan(Known).ReTorque;
        (light.From.Kilometres, light.To.Kilometres, light.Source.Text).ShouldBe((50, 100, "common practice"));
        var heavy = FixingPlanner.Plan(new FixingQuestion(Known) { Heavy = true }).ReTorque;
        (heavy.From.Kilometres, heavy.To.Kilometres).ShouldBe((40, 80));
        heavy.Source.Text.ShouldContain("DVSA");
        light.Standing.ShouldBeNull();
        heavy.Standing!.Amount.Text.ShouldBe("30 min");
    }

    [Theory]
    [InlineData(0, 105.88)]
    [InlineData(45, 109.66)]
    [InlineData(90, 120.00)]
    [InlineData(180, 138.46)]
    public void An_adapter_counts_by_its_length_along_the_wrench(double degrees, double setting)
    {
        var adapter = new WrenchAdapter(Length.FromMillimetres(450), Length.FromMillimetres(60), Angle.FromDegrees(degrees));
        adapter.Setting(Torque.FromNewtonMetres(120)).NewtonMetres.ShouldBe(setting, 0.005);
    }

    [Fact]
    public void A_setting_off_the_wrenchs_scale_is_refused_with_its_reason()
    {
        var plan = FixingPlanner.Plan(new FixingQuestion(Known) { Wrench = new TorqueWrench(Torque.FromNewtonMetres(60), Torque.FromNewtonMetres(300), []) });
        plan.Stages[0].WrenchSetting.ShouldBeNull();
        plan.Stages[0].Refused!.ShouldContain("below the lowest mark of this wrench, 60 N·m");
        plan.Stages[1].WrenchSetting!.Value.NewtonMetres.ShouldBe(110, 1e-9);
        plan.Findings.ShouldBeEmpty();

        // Folded back, the adapter asks for more than the scale holds.
        var back = FixingPlanner.Plan(new FixingQuestion(Known)
        {
            Wrench = new TorqueWrench(Torque.FromNewtonMetres(10), Torque.FromNewtonMetres(120), []),
            Adapter = new WrenchAdapter(Length.FromMillimetres(450), Length.FromMillimetres(60), Angle.FromDegrees(180)),
        });
        back.Stages[1].Refused!.ShouldContain("above the highest mark of this wrench, 120 N·m");
        var finding = back.Findings.ShouldHaveSingleItem();
        (finding.Rule, finding.Category).ShouldBe(("fixings.wrench-scale", Category.Major));
        finding.Measured.Value!.Value.ShouldBe(110 / (1 - (60 / 450.0)), 1e-9);
    }

    [Theory]
    [InlineData(110, 550, false)]
    [InlineData(110, 551, true)]
    public void The_lowest_fifth_of_a_scale_is_not_looked_at_by_its_calibration(double torque, double most, bool said)
    {
        var plan = FixingPlanner.Plan(new FixingQuestion(Known with { Torque = Torque.FromNewtonMetres(torque) }) { Wrench = new TorqueWrench(null, Torque.FromNewtonMetres(most), []) });
        plan.Findings.Any(f => f is { Rule: "fixings.wrench-low", Category: Category.Minor }).ShouldBe(said);
        plan.Stages[1].WrenchSetting.ShouldNotBeNull();
    }

    [Theory]
    [InlineData(4, false)]
    [InlineData(-4, false)]
    [InlineData(4.1, true)]
    [InlineData(-4.1, true)]
    public void A_wrench_farther_off_than_4_per_cent_is_a_finding_and_its_torques_are_told(double percent, bool off)
    {
        var plan = FixingPlanner.Plan(new FixingQuestion(Known) { Wrench = new TorqueWrench(null, null, [0.5, percent]) });
        plan.Findings.Any(f => f is { Rule: "fixings.wrench-off", Category: Category.Major }).ShouldBe(off);
        plan.Reach!.Off.ShouldBe(off);
        plan.Cautions.Any(c => c.Contains("Do not use it: take another", StringComparison.Ordinal)).ShouldBe(off);
        (percent > 0 ? plan.Reach.Least : plan.Reach.Most).NewtonMetres.ShouldBe(110 / (1 + (percent / 100)), 1e-9);
    }

    [Fact]
    public void A_small_wrench_may_be_6_per_cent_off()
    {
        var plan = FixingPlanner.Plan(new FixingQuestion(Known with { Torque = Torque.FromNewtonMetres(9) }) { Wrench = new TorqueWrench(null, null, [5.5]) });
        plan.Reach!.Off.ShouldBeFalse();
        plan.Findings.ShouldBeEmpty();
    }

    [Theory]
    [InlineData("8 turns", null, null)]
    [InlineData("7 turns", null, "fixings.engagement")]
    [InlineData("6 turns", null, "fixings.engagement-stripping")]
    [InlineData("8 turns", "9 turns", "fixings.engagement-maker")]
    [InlineData("8 turns", "13 mm", "fixings.engagement-maker")]
    public void Too_little_thread_in_thread_is_a_finding_by_the_gravest_limit(string found, string? least, string? rule)
    {
        var plan = Plan(Known with { Engagement = Engagement.Read(found).Value, LeastEngagement = least is null ? null : Engagement.Read(least).Value });
        plan.Findings.SingleOrDefault()?.Rule.ShouldBe(rule);
        plan.Findings.Count.ShouldBe(rule is null ? 0 : 1);
    }

    [Fact]
    public void Turns_on_a_thread_without_its_pitch_are_held_against_turns_alone()
    {
        var fixings = Known with { Thread = null, Engagement = Engagement.Read("7").Value };
        LeastEngagement.Of(fixings).ShouldBeEmpty();
        LeastEngagement.Of(fixings with { LeastEngagement = Engagement.Read("12 mm").Value }).ShouldBeEmpty();
        LeastEngagement.Of(fixings with { LeastEngagement = Engagement.Read("7.5 turns").Value }).ShouldHaveSingleItem().Breached.ShouldBeTrue();
    }

    [Fact]
    public void A_left_hand_thread_keeps_its_order_and_turns_the_other_way()
    {
        foreach (var count in Enumerable.Range(3, 10))
        {
            var right = Plan(Known with { Count = count });
            var left = Plan(Known with { Count = count, LeftHand = true });
            left.Sequence.ShouldBe(right.Sequence, "the pull to one side does not ask for the hand of the thread");
            (right.Direction.Tightens, right.Direction.Loosens).ShouldBe(("clockwise", "anticlockwise"));
            (left.Direction.Tightens, left.Direction.Loosens).ShouldBe(("anticlockwise", "clockwise"));
        }
    }

    [Fact]
    public void Left_hand_threads_on_one_side_alone_are_left_hand_there_and_nowhere_else()
    {
        var set = Known with { LeftHandSide = Side.Left };
        set.At(Position.Read("1L").Value).LeftHand.ShouldBeTrue();
        set.At(Position.Read("2Ro").Value).LeftHand.ShouldBeFalse();
        Plan(set).Cautions.ShouldContain(c => c.StartsWith("The threads on the left side of this vehicle are left-hand", StringComparison.Ordinal));
        (Known with { LeftHand = true }).At(Position.Read("1R").Value).LeftHand.ShouldBeTrue();
    }
}
