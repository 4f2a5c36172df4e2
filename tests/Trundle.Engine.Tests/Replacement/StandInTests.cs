using Trundle.Engine.Findings;
using Trundle.Engine.Pressure;
using Trundle.Engine.Reference;
using Trundle.Engine.Replacement;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Tests.Fitment;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Replacement;

/// <summary>What may stand in for the placard's 195/65 R15 91H, how many are changed, and what goes with them.</summary>
public sealed class StandInTests
{
    private static readonly PressureConditions Plain = new(null, null, null, null, false, null);

    private static ReplacementCandidate Tyre(string marking, string? rim = null, params string[] marks) =>
        new(MarkingReader.Read(marking).Value, marks, rim is null ? null : StampReader.Rim(rim).Value, false);

    private static StandIn Judged(FittedVehicle subject, ReplacementCandidate candidate, Length? tread = null, SpeedometerReading? speedometer = null, params int[] axles) =>
        StandIn.Judge(subject, candidate, new ReplacementRequest([candidate], axles.Length == 0 ? [1, 2] : axles, tread, speedometer), Plain);

    private static Finding One(StandIn judged, string rule) => judged.Findings.Single(f => f.Rule == rule);

    [Fact]
    public void The_placards_own_tyre_stands_in_without_a_word_against_it()
    {
        var judged = Judged(Bay.Four(), Tyre(Bay.Size));
        judged.Case.ShouldBe(StandInCase.AsPlacard);
        judged.Why.ShouldBeEmpty();
        judged.Axles.Select(a => a.Circumference).ShouldBe([1, 1]);
        judged.Axles[0].Pressure!.Pressure.Kilopascals.ShouldBe(230);
        judged.Findings.Max(f => f.Category).ShouldBe(Category.None);
    }

    [Theory]
    [InlineData("195/65 R15 90H", "load.index")]
    [InlineData("195/65 R15 91T", "speed.placard")]
    [InlineData("195/60 R15 91H", "replacement.circumference")]
    [InlineData("T125/80 D15 95M", "replacement.use")]
    [InlineData("ST205/75 R15 LRD", "replacement.use")]
    public void What_speaks_against_a_tyre_is_named(string marking, string rule)
    {
        var judged = Judged(Bay.Four(), Tyre(marking));
        judged.Case.ShouldBe(StandInCase.Refused);
        judged.Findings.ShouldContain(f => f.Rule == rule && f.Category >= Category.Major);
        judged.Findings.Where(f => f.Category >= Category.Refer && f.Rule != "size.placard").ShouldAllBe(f => judged.Why.Any(w => w.Contains(f.Measured.Text, StringComparison.Ordinal) && w.Contains(f.Action, StringComparison.Ordinal)));
    }

    /// <summary>Whatever else speaks against a tyre, every reason is told: rim, run-flat, construction, load, speed, another size.</summary>
    [Theory]
    [InlineData("195/65 R15 91H", "8J x 15", "", StandInCase.Ask, "8.0 in, limit 5.5 to 7.0 in")]
    [InlineData("195/65 RF15 91H", null, "", StandInCase.Ask, "a run-flat tyre for an ordinary one")]
    [InlineData("195/65 R15 91H", null, "RUN FLAT", StandInCase.Ask, "a run-flat tyre for an ordinary one")]
    [InlineData("195/65 D15 91H", null, "", StandInCase.Ask, "diagonal, limit radial")]
    [InlineData("195/65-15 91H", null, "", StandInCase.Ask, "diagonal or bias-belted, limit radial")]
    [InlineData("195/60 RF15 88H", "8J x 15", "", StandInCase.Refused, "approved rim widths|a run-flat tyre|papers|88, limit 91|% (")]
    [InlineData("195/65 B15 90T", "8J x 15", "", StandInCase.Refused, "approved rim widths|bias-belted, limit radial|90, limit 91|T (190")]
    public void Every_reason_that_holds_is_told(string marking, string? rim, string mark, StandInCase found, string told)
    {
        var judged = Judged(Bay.Four(), Tyre(marking, rim, mark.Length > 0 ? [mark] : []));
        judged.Case.ShouldBe(found, string.Join('\n', judged.Why));
        foreach (var part in told.Split('|'))
        {
            judged.Why.ShouldContain(w => w.Contains(part, StringComparison.Ordinal), string.Join('\n', judged.Why));
        }
    }

    [Fact]
    public void An_ordinary_tyre_in_place_of_a_run_flat_is_told()
    {
        var vehicle = Bay.Car with { Axles = [.. Bay.Car.Axles.Select(a => a with { Placard = a.Placard! with { Size = Bay.Marked("195/65 RF15 91H") } })] };
        Judged(Bay.Four(null, vehicle), Tyre("195/65 R15 91H")).Why.ShouldContain(w => w.Contains("an ordinary tyre for a run-flat one", StringComparison.Ordinal));
        Judged(Bay.Four(null, vehicle), Tyre("195/65 RF15 91H")).Why.ShouldBeEmpty();
    }

    [Fact]
    public void The_rules_are_those_that_judge_what_is_fitted()
    {
        // The same findings, joined over the positions, as a vehicle that stands on such tyres.
        var judged = Judged(Bay.Four(RuleSet.EuropeanUnion), Tyre("185/65 R15 88H"));
        var fitted = Trundle.Engine.Fitment.FitmentCheck.Run(Bay.Pair(RuleSet.EuropeanUnion, "185/65 R15 88H", "185/65 R15 88H"));
        foreach (var finding in fitted.Findings.Where(f => f.Position is not null))
        {
            judged.Findings.ShouldContain(f => f.Rule == finding.Rule && f.Category == finding.Category && f.Measured == finding.Measured && f.Position!.Contains(finding.Position!));
        }
    }

    [Fact]
    public void Another_size_needs_approval_under_every_rule_set()
    {
        foreach (var rules in Bay.EveryRuleSet)
        {
            var judged = Judged(Bay.Four(rules), Tyre("205/55 R16 91V", "6.5J x 16"));
            judged.Case.ShouldBe(StandInCase.WithApproval);
            judged.Why.ShouldHaveSingleItem().ShouldContain("papers");
            judged.Cautions.ShouldContain(c => c.StartsWith("Other wheels: ", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void The_placards_size_with_more_load_is_as_the_placard()
    {
        var vehicle = Bay.Car with { Axles = [.. Bay.Car.Axles.Select(a => a with { Placard = a.Placard! with { Size = Bay.Marked("195/65 R15 86H") } })] };
        var judged = Judged(Bay.Four(null, vehicle), Tyre("195/65 R15 91H"));
        judged.Case.ShouldBe(StandInCase.AsPlacard);
        judged.Rims!.Least.Inches.ShouldBe(5.5, 1e-9);
        judged.Rims.Most.Inches.ShouldBe(7, 1e-9);
    }

    [Theory]
    [InlineData("205/60 R15 91H", 627 / 635d)]
    [InlineData("185/65 R15 91H", 621 / 635d)]
    [InlineData("205/65 R15 94H", 647 / 635d)]
    public void Speedometer_and_odometer_follow_the_circumference(string marking, double ratio)
    {
        var judged = Judged(Bay.Four(), Tyre(marking));
        judged.Speedometer!.Ratio.ShouldBe(ratio, 1e-12);
        judged.Speedometer.True.KilometresPerHour.ShouldBe(100 * ratio, 1e-9);
        One(judged, "replacement.circumference").Category.ShouldBe(ratio > 1.015 || ratio < 0.98 ? Category.Refer : Category.None);
    }

    [Fact]
    public void A_size_without_a_row_asks_for_its_rims()
    {
        var judged = Judged(Bay.Four(), Tyre("205/60 R15 91H"));
        judged.Case.ShouldBe(StandInCase.Ask);
        judged.Rims.ShouldBeNull();
        judged.Why.ShouldContain(w => w.Contains("approved rim widths", StringComparison.Ordinal));
        judged.Cautions.ShouldContain(c => c.StartsWith("Clearance: -4.0 mm in radius, +", StringComparison.Ordinal), string.Join('\n', judged.Cautions));
    }

    [Fact]
    public void A_wrong_rim_is_a_hard_stop()
    {
        var judged = Judged(Bay.Four(), Tyre("205/55 R16 91V", "6J x 15"));
        judged.Case.ShouldBe(StandInCase.Refused);
        One(judged, "rim.diameter").Category.ShouldBe(Category.Dangerous);
    }

    [Fact]
    public void A_size_of_unknown_load_has_no_pressure()
    {
        Judged(Bay.Four(), Tyre("205/60 R15")).Axles.ShouldAllBe(a => a.Pressure == null);
        Judged(Bay.Four(), Tyre("205/60 R15 91H")).Axles.ShouldAllBe(a => a.Pressure != null);
    }

    [Fact]
    public void New_tread_on_one_axle_of_four_driven_wheels_is_judged_by_the_fitment_rule()
    {
        var vehicle = Bay.Car with { Drive = Drive.All };
        var worn = Bay.Four(null, vehicle);
        worn = worn with { Fitted = [.. worn.Fitted.Select(a => a with { Tread = new TreadDepths([], [Length.FromMillimetres(4)], []) })] };
        var all = ReplacementPlaces.Scope(worn, Length.FromMillimetres(8));
        all.HowMany.ShouldBe("all");
        all.Why.ShouldContain("1.28 %");
        ReplacementPlaces.Scope(worn, Length.FromMillimetres(4.5)).HowMany.ShouldBe("pair");
        var unknown = ReplacementPlaces.Scope(worn, null);
        unknown.HowMany.ShouldBe("all");
        unknown.Needs.ShouldHaveSingleItem();
        ReplacementPlaces.Scope(Bay.Four(), null).HowMany.ShouldBe("pair");
    }

    [Fact]
    public void A_new_pair_goes_to_the_rear_unless_each_axle_has_its_size()
    {
        ReplacementPlaces.Scope(Bay.Four(), null).NewPairAxle.ShouldBe(2);
        var staggered = Bay.Car with { Axles = [Bay.Car.Axles[0], Bay.Car.Axles[1] with { Placard = Bay.Car.Axles[1].Placard! with { Size = Bay.Marked("225/50 R17 94W") } }] };
        ReplacementPlaces.Scope(Bay.Four(null, staggered), null).NewPairAxle.ShouldBeNull();
    }

    [Fact]
    public void What_is_renewed_depends_on_sensor_speed_tube_and_size()
    {
        IReadOnlyList<Position> places = [Bay.At("1L"), Bay.At("1R")];
        IReadOnlyList<string> Parts(FittedVehicle subject, bool other) => [.. RenewedParts.For(subject, places, other).Select(p => p.What)];
        Parts(Bay.Four(), false).ShouldContain(p => p.StartsWith("the valve", StringComparison.Ordinal));
        Parts(Bay.Four(), false).ShouldNotContain(p => p.Contains("label", StringComparison.Ordinal));
        Parts(Bay.Four(), true).ShouldContain(p => p.Contains("label", StringComparison.Ordinal));
        var sensors = Bay.Four() with { Fitted = [.. Bay.Four().Fitted.Select(a => a with { Sensor = SensorState.Working })] };
        Parts(sensors, false).ShouldContain(p => p.Contains("service kit", StringComparison.Ordinal));
        Parts(sensors, false).ShouldNotContain(p => p.StartsWith("the valve", StringComparison.Ordinal));
        Parts(Bay.Four(null, Bay.Car with { TopSpeed = Speed.FromKilometresPerHour(220) }), false).ShouldContain(p => p.Contains("clamped metal", StringComparison.Ordinal));
        Parts(Bay.Four(null, Bay.Car with { TopSpeed = Speed.FromKilometresPerHour(210) }), false).ShouldNotContain(p => p.Contains("clamped metal", StringComparison.Ordinal));
        Parts(Bay.Four().With("1L", a => a with { Tyre = a.Tyre! with { Marks = ["TT"] } }), false).ShouldContain(p => p.Contains("inner tube", StringComparison.Ordinal));
    }

    [Fact]
    public void The_carried_sizes_of_a_rim_come_with_the_placards_own_first()
    {
        var sizes = CarriedSizes.For(Bay.Marked("205/55 R16 91V").Size, null);
        sizes[0].Marking.Size.Text.ShouldBe("205/55 R16");
        sizes.Count.ShouldBeGreaterThan(2);
        sizes.ShouldAllBe(c => c.Marking.Size.RimDiameterInches == 16 && c.Marking.Size.TyreClass == TyreClass.Passenger && c.FromTables);
        CarriedSizes.For(Bay.Marked("205/55 R16 91V").Size, 17).ShouldAllBe(c => c.Marking.Size.RimDiameterInches == 17);
    }

    [Theory]
    [InlineData(RuleSet.EuropeanUnion, Category.Major)]
    [InlineData(RuleSet.UnitedKingdom, Category.Refer)]
    [InlineData(RuleSet.UnitedStates, Category.Minor)]
    [InlineData(null, Category.Minor)]
    public void A_dead_sensor_is_a_finding_and_a_working_one_a_duty(RuleSet? rules, Category dead)
    {
        var subject = Bay.Four(rules).With("1L", a => a with { Sensor = SensorState.Working }).With("1R", a => a with { Sensor = SensorState.NotWorking }).With("2L", a => a with { Sensor = SensorState.Absent });
        IReadOnlyList<Position> all = [.. subject.Fitted.Select(a => a.Position)];
        var same = SensorDuty.OnChange(subject, all, false);
        same.Findings.Single(f => f.Position == "1L").Category.ShouldBe(Category.None);
        same.Findings.Single(f => f.Position == "1R").Category.ShouldBe(dead);
        same.Needs.ShouldHaveSingleItem().Position.ShouldBe("2R");
        SensorDuty.OnChange(subject, all, true).Findings.Single(f => f.Position == "1L").Category.ShouldBe(Category.Refer);
        SensorDuty.AfterMoving(subject, all).ShouldContain(l => l.StartsWith("1R: ", StringComparison.Ordinal));
        SensorDuty.AfterMoving(subject, all).ShouldContain(l => l.Contains("never put out of use", StringComparison.Ordinal));
        SensorDuty.AfterMoving(subject, [Bay.At("2L")]).ShouldHaveSingleItem().ShouldContain("no wheel that was moved holds a pressure sensor");
    }
}
