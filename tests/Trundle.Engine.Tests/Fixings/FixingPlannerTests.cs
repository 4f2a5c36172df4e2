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
    public void A_nominal_clamp_past_the_proof_load_waits_for_a_person()
    {
        var plan = Plan(Known with { PropertyClass = "8.8", Seat = SeatShape.Flat, Condition = ThreadCondition.Oiled, Torque = Torque.FromNewtonMetres(140) });
        var finding = plan.Findings.ShouldHaveSingleItem();
        finding.Category.ShouldBe(Category.Refer);
        finding.Limit!.Amount.Value!.Value.ShouldBe(51.1, 0.05);
        finding.Measured.Value!.Value.ShouldBe(plan.Clamp!.Nominal.Nominal.Kilonewtons, 1e-9);
    }

    [Fact]
    public void A_scatter_past_the_proof_load_is_minor_and_a_clamp_below_it_is_nothing()
    {
        Plan(Known).Findings.ShouldBeEmpty();
        Plan(Known with { PropertyClass = "8.8", Seat = SeatShape.Flat, Torque = Torque.FromNewtonMetres(110) }).Findings.ShouldHaveSingleItem().Category.ShouldBe(Category.Minor);
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
}
