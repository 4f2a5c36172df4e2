using Trundle.Engine.Findings;
using Trundle.Engine.Uniformity;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// Runout limits in passenger-car makers' service texts and a bulletin of 1990 (read): examples of other vehicles, held only where the maker of this one
/// gave none.
/// </summary>
public class RunoutServiceTextsTests
{
    [Theory]
    [InlineData(RunoutPart.Assembly, RunoutDirection.Radial, RunoutMounting.OnVehicle, null, new[] { 0.8, 1.52 })]
    [InlineData(RunoutPart.Assembly, RunoutDirection.Lateral, RunoutMounting.OnVehicle, null, new[] { 1.2, 1.52 })]
    [InlineData(RunoutPart.Assembly, RunoutDirection.Radial, RunoutMounting.OffVehicle, null, new[] { 0.8, 1.27 })]
    [InlineData(RunoutPart.Tyre, RunoutDirection.Radial, null, null, new[] { 1.59 })]
    [InlineData(RunoutPart.Tyre, RunoutDirection.Lateral, null, null, new[] { 1.78 })]
    [InlineData(RunoutPart.Wheel, RunoutDirection.Radial, null, WheelMaterial.Steel, new[] { 0.8 })]
    [InlineData(RunoutPart.Wheel, RunoutDirection.Lateral, null, WheelMaterial.Steel, new[] { 0.8, 1.0, 2.0 })]
    [InlineData(RunoutPart.Wheel, RunoutDirection.Radial, null, WheelMaterial.Alloy, new[] { 0.25, 0.3, 0.7 })]
    public void Published_limits(RunoutPart part, RunoutDirection direction, RunoutMounting? mounting, WheelMaterial? material, double[] millimetres)
    {
        var verdict = Judge(0.1, part, direction, mounting, material);
        verdict.Considered.Select(c => c.Limit.Amount.Value!.Value).ShouldBe(millimetres);
        verdict.Considered.ShouldAllBe(c => c.Limit.Source.Status == SourceStatus.Read && c.Limit.Source.Text.Length > 10);
        verdict.Ruling!.Amount.Value.ShouldBe(millimetres[0]);
        verdict.WithinLimit.ShouldBe(true);
        verdict.Cautions.ShouldContain(c => c.Contains("maker's own limit was not given", StringComparison.Ordinal));
        Judge(millimetres[^1] + 0.01, part, direction, mounting, material).WithinLimit.ShouldBe(false);
        if (millimetres.Length > 1)
        {
            var between = Judge((millimetres[0] + millimetres[^1]) / 2, part, direction, mounting, material);
            between.WithinLimit.ShouldBeNull();
            between.MustBeLookedAt.ShouldBeTrue();
        }
    }

    [Fact]
    public void The_makers_own_limit_rules_alone()
    {
        var own = new Limit(Amount.Number(0.5, "mm", 2), Source.Entered("the vehicle's book"));
        var verdict = RunoutLimits.Judge(Length.FromMillimetres(0.6), RunoutPart.Assembly, RunoutDirection.Radial, null, null, own);
        verdict.WithinLimit.ShouldBe(false);
        verdict.Ruling.ShouldBe(own);
        verdict.Considered.Count.ShouldBe(1);
        RunoutLimits.Judge(Length.FromMillimetres(1.0) - Length.FromMillimetres(0.5), RunoutPart.Assembly, RunoutDirection.Radial, null, null, own).WithinLimit.ShouldBe(true);
    }

    [Fact]
    public void Where_none_is_published_nothing_is_judged()
    {
        var verdict = Judge(3, RunoutPart.Wheel, RunoutDirection.Lateral, null, WheelMaterial.Alloy);
        verdict.Ruling.ShouldBeNull();
        verdict.WithinLimit.ShouldBeNull();
        verdict.Cautions.ShouldNotBeEmpty();
        verdict.MustBeLookedAt.ShouldBeFalse();
    }

    private static RunoutVerdict Judge(double millimetres, RunoutPart part, RunoutDirection direction, RunoutMounting? mounting, WheelMaterial? material) =>
        RunoutLimits.Judge(Length.FromMillimetres(millimetres), part, direction, mounting, material, null);
}
