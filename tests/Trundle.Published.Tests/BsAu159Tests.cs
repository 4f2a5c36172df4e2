using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>BS AU 159g, minor repairs of car and light van tyres, as the summary of BTMA prints them (read): the area T in whole millimetres, and the hole.</summary>
public sealed class BsAu159Tests
{
    [Theory]
    [InlineData(145, 87)]
    [InlineData(155, 93)]
    [InlineData(165, 107)]
    [InlineData(175, 114)]
    [InlineData(185, 120)]
    [InlineData(195, 127)]
    public void The_repair_area_of_a_nominal_section_width(int sectionMillimetres, int areaMillimetres)
    {
        var marking = $"{sectionMillimetres}/65 R15";
        RepairArea.Of(PuncturedTyre.Subject(marking, null), PuncturedTyre.At)!.Band.Millimetres.ShouldBe(areaMillimetres, 0.5);

        // Half of the area lies on each side of the middle: a whole millimetre inside it and outside it.
        PuncturedTyre.Rules(marking, null, p => p with { FromMiddle = Length.FromMillimetres((areaMillimetres / 2.0) - 1) }).ShouldNotContain("damage.puncture.edge");
        PuncturedTyre.Rules(marking, null, p => p with { FromMiddle = Length.FromMillimetres((areaMillimetres / 2.0) + 1) }).ShouldContain("damage.puncture.edge");
    }

    [Fact]
    public void A_truck_tyre_is_not_of_this_standard() => RepairArea.Of(PuncturedTyre.Subject("295/80 R22.5 152/148M", null), PuncturedTyre.At).ShouldBeNull();

    [Theory]
    [InlineData(6.0, false)]
    [InlineData(6.1, true)]
    public void The_hole_after_preparation_is_at_most_6_mm(double millimetres, bool tooLarge) =>
        PuncturedTyre.Rules("205/55 R16 91V", RuleSet.UnitedKingdom, p => p with { Size = Length.FromMillimetres(millimetres) }).Contains("damage.puncture.large").ShouldBe(tooLarge);

    /// <summary>A shop's statement of the standard (second-hand): V and above once only. For lower symbols the standard has a table that is not held here: it is asked for.</summary>
    [Theory]
    [InlineData("205/55 R16 91V", 0, null)]
    [InlineData("205/55 R16 91V", 1, "damage.puncture.repairs")]
    [InlineData("205/55 R16 91W", 1, "damage.puncture.repairs")]
    [InlineData("205/55 R16 91H", 1, "damage.puncture.repairs-table")]
    [InlineData("205/55 R16 91H", 0, null)]
    public void How_often_a_tyre_is_repaired(string marking, int earlier, string? rule)
    {
        var said = PuncturedTyre.Rules(marking, null, p => p with { FromRepair = Length.FromMillimetres(900) }, new RepairHistory { Repairs = [.. Enumerable.Repeat(new EarlierRepair(DamagePlace.Tread, null, RepairMethod.StemAndPatch), earlier)] });
        said.Where(r => r.Contains(".repairs", StringComparison.Ordinal)).ShouldBe(rule is null ? [] : [rule]);
    }
}
