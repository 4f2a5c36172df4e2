using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Rotation;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Fitment;

/// <summary>What a wheel carries: its own load where it was weighed there, else a part of its axle's. A 91 tyre carries 615 kg, the invented wheels 690 kg.</summary>
public sealed class WheelLoadTests
{
    private static FittedVehicle Car(double? axleKilograms, params (string Position, double Kilograms)[] weighed) => weighed.Aggregate(
        Bay.Four(RuleSet.EuropeanUnion, Bay.Car with { Axles = [Bay.Axle(steered: true, driven: true, loadKilograms: axleKilograms), Bay.Axle()] }),
        (car, w) => car.With(w.Position, a => a with { Load = Mass.FromKilograms(w.Kilograms) }));

    [Fact]
    public void A_one_sided_load_that_was_weighed_is_held_against_each_tyre()
    {
        var result = FitmentCheck.Run(Car(1200, ("1L", 640), ("1R", 560)));
        var left = result.One("load.axle", "1L");
        left.Category.ShouldBe(Category.Major);
        left.Limit!.Amount.Value!.Value.ShouldBe(640, 1e-9);
        left.Limit.Source.Text.ShouldContain("as weighed");
        result.One("load.axle", "1R").Category.ShouldBe(Category.None);
        result.One("wheel.load", "1L").Limit!.Amount.Value!.Value.ShouldBe(640, 1e-9);
        FitmentCheck.Run(Car(1200)).One("load.axle", "1L").Category.ShouldBe(Category.None);
    }

    [Fact]
    public void Weighed_wheels_need_no_axle_load()
    {
        var result = FitmentCheck.Run(Car(null, ("1L", 600), ("1R", 616)));
        result.One("load.axle", "1L").Category.ShouldBe(Category.None);
        result.One("load.axle", "1R").Category.ShouldBe(Category.Major);
        result.Needs.ShouldNotContain(n => n.What == "the load on this axle");
    }

    [Fact]
    public void A_wheel_that_was_not_weighed_carries_what_the_other_leaves_and_not_less_than_its_share()
    {
        var light = FitmentCheck.Run(Car(1200, ("1L", 500)));
        light.One("load.axle", "1R").Limit!.Amount.Value!.Value.ShouldBe(700, 1e-9);
        light.One("wheel.load", "1R").Category.ShouldBe(light.One("load.axle", "1R").Category);
        FitmentCheck.Run(Car(1200, ("1L", 640))).One("load.axle", "1R").Limit!.Amount.Value!.Value.ShouldBe(600, 1e-9);
    }

    [Fact]
    public void A_tyre_is_not_rotated_to_a_place_that_was_weighed_heavier_than_it_carries()
    {
        var plan = RotationPlan.For(Car(1200, ("1L", 640), ("1R", 560))).Value;
        plan.Verdicts.SelectMany(v => v.Refusals).ShouldContain(r => r.Reason == RefusalReason.Load && r.Why.Contains("640 kg at 1L", StringComparison.Ordinal));
        RotationPlan.For(Car(1200)).Value.Verdicts.SelectMany(v => v.Refusals).ShouldNotContain(r => r.Reason == RefusalReason.Load);
    }
}
