using Trundle.Engine.Findings;
using Trundle.Engine.Pressure;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// 49 CFR 571.138: S4.2 (read), the higher of the placard less 25 % and the least activation pressure of Table 1 (the 20 psi row second-hand, the others from
/// memory). UN R141 puncture test (from memory): 20 % below, or 150 kPa, whichever is higher. A row from memory proves that it is used as carried, not that the text says so.
/// </summary>
public sealed class PressureMonitorTests
{
    [Theory]
    [InlineData("P205/65 R15 92H", 140, 20)]
    [InlineData("P215/65 R15 XL 100H", 160, 23)]
    [InlineData("LT245/75 R16 LRC", 200, 29)]
    [InlineData("LT245/75 R16 LRD", 260, 38)]
    [InlineData("LT245/75 R16 LRE", 350, 51)]
    public void Each_row_of_fmvss_138_table_1_is_the_least_that_warns(string marking, double kilopascals, double psi)
    {
        var tyre = MarkingReader.Read(marking).Value;
        GaugePressure Threshold(double placard) => WarningThreshold.For(GaugePressure.FromKilopascals(placard), null, tyre, false, RuleSet.UnitedStates).Ruling!.Pressure;
        Threshold(kilopascals / 0.75 - 1).Kilopascals.ShouldBe(kilopascals, 1e-9);
        Threshold((kilopascals / 0.75) + 20).Kilopascals.ShouldBe(kilopascals + 15, 1e-9);

        // The table's psi are its kPa rounded.
        GaugePressure.FromKilopascals(kilopascals).PoundsPerSquareInch.ShouldBe(psi, 0.5);
    }

    [Theory]
    [InlineData(230, 184)]
    [InlineData(187.5, 150)]
    [InlineData(180, 150)]
    [InlineData(250, 200)]
    public void Un_r141_warns_at_a_fifth_below_or_at_150(double placard, double kilopascals) =>
        WarningThreshold.For(GaugePressure.FromKilopascals(placard), null, null, false, RuleSet.EuropeanUnion).Ruling!.Pressure.Kilopascals.ShouldBe(kilopascals, 1e-9);

    [Fact]
    public void Both_leave_dual_wheels_out()
    {
        foreach (var rules in new RuleSet?[] { RuleSet.UnitedStates, RuleSet.EuropeanUnion, RuleSet.UnitedKingdom })
        {
            WarningThreshold.For(GaugePressure.FromKilopascals(400), null, null, true, rules).Ruling.ShouldBeNull();
        }
    }

    [Fact]
    public void A_monitor_that_works_is_not_put_out_of_use()
    {
        // 49 USC 30122(b) and NHTSA's letter of 22 November 2011 (second-hand).
        var vehicle = new FittedVehicle(new Vehicle { Axles = [new Axle()] }, [new Assembly { Position = Position.On(1, Side.Left), Sensor = SensorState.Working }], RuleSet.UnitedStates, null);
        var finding = SensorDuty.OnChange(vehicle, [Position.On(1, Side.Left)], true).Findings.ShouldHaveSingleItem();
        finding.Category.ShouldBe(Category.Refer);
        finding.Source.Text.ShouldContain("30122(b)");
        finding.Source.Status.ShouldBe(SourceStatus.SecondHand);
    }
}
