using Trundle.Engine.Pressure;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using static Trundle.Engine.Tests.Rotation.Invented;

namespace Trundle.Engine.Tests.Pressure;

public class SeatingAndWarningTests
{
    private static SeatingCeiling Seating(double? tyre = null, double? wheel = null, double? marked = null, double? wheelMaximum = null) => SeatingCeiling.For(
        new FittedTyre { SeatingLimit = Or(tyre), MaximumPressure = Or(marked) },
        new Wheel { SeatingLimit = Or(wheel), MaximumPressure = Or(wheelMaximum) });

    private static GaugePressure? Or(double? kilopascals) => kilopascals is { } k ? Kilopascals(k) : null;

    [Theory]
    [InlineData(null, null, null, null, 275)]
    [InlineData(330.0, null, null, null, 275)]
    [InlineData(250.0, 260.0, null, null, 250)]
    [InlineData(null, 225.0, 240.0, null, 225)]
    [InlineData(null, null, 240.0, null, 240)]
    [InlineData(null, null, 300.0, 220.0, 220)]
    public void The_lowest_known_limit_holds(double? tyre, double? wheel, double? marked, double? wheelMaximum, double ceiling)
    {
        var seating = Seating(tyre, wheel, marked, wheelMaximum);
        seating.Ruling.Pressure.Kilopascals.ShouldBe(ceiling);
        seating.Considered.Count(l => l.Ruled).ShouldBe(1);
        (seating is SeatingCeiling.MakerValueGiven).ShouldBe(tyre is not null || wheel is not null);
    }

    [Fact]
    public void Without_a_makers_value_it_says_so()
    {
        Seating().Match(_ => false, _ => true).ShouldBeTrue();
        Seating().Cautions.ShouldContain(c => c.Contains("were not given", StringComparison.Ordinal));
        Seating(tyre: 330).Cautions.ShouldNotContain(c => c.Contains("were not given", StringComparison.Ordinal));
        SeatingCeiling.For(null, null).Ruling.Pressure.Kilopascals.ShouldBe(275);
    }

    [Theory]
    [InlineData("uk", 230, 184)]
    [InlineData("eu", 180, 150)]
    [InlineData("us", 230, 172.5)]
    [InlineData("us", 180, 140)]
    [InlineData("none", 230, 184)]
    public void Warning_by_rules(string rules, double placard, double threshold)
    {
        RuleSet? set = rules switch { "us" => RuleSet.UnitedStates, "uk" => RuleSet.UnitedKingdom, "eu" => RuleSet.EuropeanUnion, _ => null };
        WarningThreshold.For(Kilopascals(placard), null, Marked("205/55 R16 91V"), false, set).Ruling!.Pressure.Kilopascals.ShouldBe(threshold, 1e-9);
    }

    [Fact]
    public void No_rule_covers_duals_and_no_placard_means_no_threshold()
    {
        WarningThreshold.For(Kilopascals(500), null, null, true, RuleSet.UnitedStates).Ruling.ShouldBeNull();
        WarningThreshold.For(null, null, Marked("205/55 R16 91V"), false, RuleSet.UnitedStates).Ruling.ShouldBeNull();
        WarningThreshold.For(Kilopascals(240), null, Marked("205/55 R16 94V XL"), false, RuleSet.UnitedStates).Considered[1].Pressure!.Value.Kilopascals.ShouldBe(160);
        WarningThreshold.For(Kilopascals(400), null, Marked("ST205/75 R15 LRD"), false, RuleSet.UnitedStates).Considered.Count.ShouldBe(1);
    }
}
