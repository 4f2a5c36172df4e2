using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Tests.Fitment;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Condition;

public sealed class DamageAndPressureTests
{
    [Theory]
    [InlineData(DamageKind.Cord, DamagePlace.Sidewall, null, "damage.cord", Category.Dangerous)]
    [InlineData(DamageKind.Bulge, DamagePlace.Sidewall, null, "damage.bulge", Category.Dangerous)]
    [InlineData(DamageKind.Cut, DamagePlace.Sidewall, 24.99, "damage.cut.side", Category.Refer)]
    [InlineData(DamageKind.Cut, DamagePlace.Sidewall, 25.0, "damage.cut.side", Category.Refer)]
    [InlineData(DamageKind.Cut, DamagePlace.Sidewall, 25.01, "damage.cut.large", Category.Major)]
    [InlineData(DamageKind.Cut, DamagePlace.Tread, 25.01, "damage.cut.large", Category.Major)]
    [InlineData(DamageKind.Cut, DamagePlace.Tread, 10.0, "damage.cut.tread", Category.Minor)]
    [InlineData(DamageKind.Cut, DamagePlace.Shoulder, null, "damage.cut.side", Category.Refer)]
    [InlineData(DamageKind.Puncture, DamagePlace.Tread, 5.99, "damage.puncture.crown", Category.Refer)]
    [InlineData(DamageKind.Puncture, DamagePlace.Tread, 6.0, "damage.puncture.crown", Category.Refer)]
    [InlineData(DamageKind.Puncture, DamagePlace.Tread, 6.36, "damage.puncture.large", Category.Major)]
    [InlineData(DamageKind.Puncture, DamagePlace.Shoulder, 3.0, "damage.puncture.side", Category.Major)]
    [InlineData(DamageKind.Puncture, DamagePlace.Sidewall, 3.0, "damage.puncture.side", Category.Major)]
    [InlineData(DamageKind.Puncture, DamagePlace.Bead, 3.0, "damage.puncture.side", Category.Major)]
    [InlineData(DamageKind.Crack, DamagePlace.Sidewall, 1.0, "damage.crack", Category.Refer)]
    [InlineData(DamageKind.Bead, DamagePlace.Bead, 1.5, "damage.bead.small", Category.Refer)]
    [InlineData(DamageKind.Bead, DamagePlace.Bead, 1.5875, "damage.bead.small", Category.Refer)]
    [InlineData(DamageKind.Bead, DamagePlace.Bead, 1.59, "damage.bead", Category.Major)]
    [InlineData(DamageKind.Bead, DamagePlace.Bead, null, "damage.bead", Category.Major)]
    [InlineData(DamageKind.Other, DamagePlace.Tread, null, "damage.other", Category.Refer)]
    public void Each_kind_at_each_place_and_size_has_its_rule_under_every_rule_set(DamageKind kind, DamagePlace place, double? millimetres, string rule, Category expected)
    {
        foreach (var rules in Bay.EveryRuleSet)
        {
            var finding = Damaged(rules, kind, place, millimetres).One(rule, "1L");
            finding.Category.ShouldBe(expected);
            finding.Action.Length.ShouldBeGreaterThan(10);
        }
    }

    [Theory]
    [InlineData(7.0, "damage.cut.tread")]
    [InlineData(7.1, "damage.cut.large")]
    public void A_long_cut_in_the_tread_that_is_deeper_than_the_tread_is_taken_to_reach_the_cord_though_none_was_seen(double depth, string rule)
    {
        foreach (var rules in Bay.EveryRuleSet)
        {
            Length[] grooves = [Length.FromMillimetres(6), Length.FromMillimetres(7)];
            var cut = new Damage(DamageKind.Cut, DamagePlace.Tread, Length.FromMillimetres(200)) { Depth = Length.FromMillimetres(depth), CordShows = false };
            ConditionCheck.Run(Bay.Four(rules).With("1L", a => a with { Tread = new TreadDepths(grooves, grooves, grooves), Damage = [cut] })).Findings
                .Where(f => f.Rule.StartsWith("damage.cut", StringComparison.Ordinal)).Select(f => f.Rule).ShouldBe([rule]);
        }
    }

    [Fact]
    public void From_a_section_of_250_mm_on_a_tenth_of_it_is_the_limit_of_a_cut()
    {
        // 275 mm: 27.5 mm is the greater of the two.
        Damaged(RuleSet.UnitedKingdom, DamageKind.Cut, DamagePlace.Sidewall, 27.5, "275/40 R20 106Y").One("damage.cut.side", "1L").Category.ShouldBe(Category.Refer);
        var finding = Damaged(RuleSet.UnitedKingdom, DamageKind.Cut, DamagePlace.Sidewall, 27.51, "275/40 R20 106Y").One("damage.cut.large", "1L");
        finding.Category.ShouldBe(Category.Major);
        finding.Limit!.Amount.Value!.Value.ShouldBe(27.5, 1e-9);
        finding.Source.Text.ShouldContain("reg. 27");
    }

    [Fact]
    public void Another_countrys_length_of_a_cut_is_guidance_and_no_limit_of_a_law_that_names_none()
    {
        foreach (var rules in new[] { RuleSet.UnitedStates, RuleSet.EuropeanUnion })
        {
            var finding = Damaged(rules, DamageKind.Cut, DamagePlace.Sidewall, 30).One("damage.cut.large", "1L");
            finding.Limit.ShouldBeNull();
            finding.Cautions.ShouldHaveSingleItem().ShouldContain("25.0 mm (SI 1986/1078");
        }

        var british = Damaged(RuleSet.UnitedKingdom, DamageKind.Cut, DamagePlace.Sidewall, 30).One("damage.cut.large", "1L");
        british.Limit!.Source.Text.ShouldContain("SI 1986/1078");
        british.Cautions.ShouldBeEmpty();
    }

    [Fact]
    public void Between_6_mm_and_a_quarter_inch_the_british_standard_is_the_lower_limit()
    {
        foreach (var (rules, millimetres, large) in new[] { (RuleSet.UnitedKingdom, 6.2, true), (RuleSet.UnitedKingdom, 6, false), (RuleSet.UnitedStates, 6.35, false), (RuleSet.UnitedStates, 6.36, true) })
        {
            var found = Damaged(rules, DamageKind.Puncture, DamagePlace.Tread, millimetres);
            (found.CategoryOf("damage.puncture.large", "1L") == Category.Major).ShouldBe(large);
            (found.CategoryOf("damage.puncture.crown", "1L") == Category.Refer).ShouldBe(!large);
        }

        Damaged(RuleSet.UnitedKingdom, DamageKind.Puncture, DamagePlace.Tread, 6.2).One("damage.puncture.large", "1L").Limit!.Source.Text.ShouldContain("BS AU 159g");
    }

    [Fact]
    public void A_worn_tyre_is_not_repaired_and_a_truck_tyre_takes_a_larger_repair()
    {
        Puncture(1.5875).ShouldBe("damage.puncture.worn");
        Puncture(1.59).ShouldBe("damage.puncture.crown");
        Damaged(null, DamageKind.Puncture, DamagePlace.Tread, 9.525, "295/80 R22.5 152/148M").One("damage.puncture.crown-truck", "1L").Category.ShouldBe(Category.Refer);
        Damaged(null, DamageKind.Puncture, DamagePlace.Tread, 9.53, "295/80 R22.5 152/148M").One("damage.puncture.large", "1L").Category.ShouldBe(Category.Major);

        static string Puncture(double tread) => ConditionCheck.Run(Bay.Four().With("1L", a => a with
        {
            Damage = [new Damage(DamageKind.Puncture, DamagePlace.Tread, Length.FromMillimetres(3))],
            Tread = new TreadDepths([], [Length.FromMillimetres(tread)], []),
        })).Findings.Single(f => f.Rule.StartsWith("damage.", StringComparison.Ordinal)).Rule;
    }

    [Fact]
    public void The_repair_area_stands_beside_a_repairable_puncture() =>
        Damaged(RuleSet.UnitedKingdom, DamageKind.Puncture, DamagePlace.Tread, 4, "205/55 R16 91V").One("damage.puncture.crown", "1L").Cautions.ShouldContain(c => c.Contains("central 143.5 mm", StringComparison.Ordinal));

    [Theory]
    [InlineData(230, false, "pressure.low", Category.None)]
    [InlineData(229, false, "pressure.low", Category.None)]
    [InlineData(223, false, "pressure.low", Category.None)]
    [InlineData(222.9, false, "pressure.low", Category.Minor)]
    [InlineData(184.1, false, "pressure.low", Category.Minor)]
    [InlineData(184, false, "pressure.run-low", Category.Refer)]
    [InlineData(172.6, false, "pressure.run-low", Category.Refer)]
    [InlineData(172.5, false, "pressure.warning", Category.Major)]
    [InlineData(255, false, "pressure.high", Category.None)]
    [InlineData(260, false, "pressure.high", Category.None)]
    [InlineData(260.1, false, "pressure.high", Category.Minor)]
    [InlineData(300, false, "pressure.high", Category.Minor)]
    [InlineData(250, true, "pressure.hot", Category.None)]
    [InlineData(220, true, "pressure.hot-low", Category.Refer)]
    public void The_pressure_found_against_a_placard_of_230_and_260_laden(double kilopascals, bool hot, string rule, Category expected)
    {
        var finding = ConditionCheck.Run(Bay.Four(RuleSet.EuropeanUnion).With("1L", a => a with { Pressure = new PressureReading(GaugePressure.FromKilopascals(kilopascals), null, hot) })).One(rule, "1L");
        finding.Category.ShouldBe(expected);
        finding.Action.ShouldNotBeNullOrWhiteSpace();
    }

    [Theory]
    [InlineData("car", "1L", "pressure.warning", Category.Major)]
    [InlineData("trailer", "1L", "pressure.run-low", Category.Refer)]
    [InlineData("motorcycle", "1L", "pressure.run-low", Category.Refer)]
    [InlineData("car", "S", "pressure.run-low", Category.Refer)]
    public void Only_a_wheel_that_a_warning_watches_asks_why_the_driver_was_not_warned(string vehicleClass, string at, string rule, Category expected)
    {
        var spare = Bay.On(at, "195/65 R15 91H") with { Pressure = new PressureReading(GaugePressure.FromKilopascals(150), null, false) };
        var four = Bay.Four();
        var subject = four with
        {
            Vehicle = four.Vehicle with { VehicleClass = vehicleClass, SparePlacard = four.Vehicle.Axles[0].Placard },
            Fitted = [.. four.Fitted.Where(a => a.Position != spare.Position), spare],
        };
        ConditionCheck.Run(subject).One(rule, at).Category.ShouldBe(expected);
    }

    [Fact]
    public void Never_above_the_sidewalls_greatest()
    {
        foreach (var (kilopascals, over) in new[] { (300.0, false), (300.1, true) })
        {
            var result = ConditionCheck.Run(Bay.Four().With("1L", a => a with
            {
                Tyre = a.Tyre! with { MaximumPressure = GaugePressure.FromKilopascals(300) },
                Pressure = new PressureReading(GaugePressure.FromKilopascals(kilopascals), null, false),
            }));
            (result.CategoryOf("pressure.sidewall", "1L") == Category.Major).ShouldBe(over);
        }
    }

    [Fact]
    public void A_truck_tyre_run_low_is_not_topped_up()
    {
        var truck = new Vehicle { VehicleClass = "goods over 3500 kg", Axles = [Bay.Axle("295/80 R22.5 152/148M") with { Placard = new Placard(Bay.Marked("295/80 R22.5 152/148M"), GaugePressure.FromKilopascals(800), null) }] };
        var subject = new FittedVehicle(truck, [Bay.On("1L", "295/80 R22.5 152/148M") with { Pressure = new PressureReading(GaugePressure.FromKilopascals(640), null, false) }], null, null);
        ConditionCheck.Run(subject).One("pressure.run-low-truck", "1L").Category.ShouldBe(Category.Major);
    }

    private static CheckResult Damaged(RuleSet? rules, DamageKind kind, DamagePlace place, double? millimetres, string marking = Bay.Size) =>
        ConditionCheck.Run(Bay.Four(rules).With("1L", a => Bay.On("1L", marking) with { Damage = [new Damage(kind, place, millimetres is { } mm ? Length.FromMillimetres(mm) : null)] }));

    /// <summary>No depth makes an injury at the bead harmless, and no length a tread cut that goes below the tread (TM 9-2610-200-14 2-23 for the 2/32 in; the rest common practice).</summary>
    [Theory]
    [InlineData(DamageKind.Crack, DamagePlace.Bead, 100, 1, "damage.crack.bead", Category.Refer)]
    [InlineData(DamageKind.Cut, DamagePlace.Bead, 20, 1, "damage.bead", Category.Major)]
    [InlineData(DamageKind.Cut, DamagePlace.Bead, 1.5, 1, "damage.bead.small", Category.Refer)]
    [InlineData(DamageKind.Cut, DamagePlace.Tread, 10, 9, "damage.cut.tread.deep", Category.Refer)]
    [InlineData(DamageKind.Cut, DamagePlace.Tread, 10, 7, "damage.cut.tread", Category.Minor)]
    [InlineData(DamageKind.Cut, DamagePlace.Tread, 10, 18, "damage.cut.tread.deep", Category.Refer, "295/80 R22.5 152/148M")]
    public void Injuries_of_bead_and_below_the_tread(DamageKind kind, DamagePlace place, double size, double depth, string rule, Category category, string marking = Bay.Size)
    {
        var damage = new Damage(kind, place, Length.FromMillimetres(size)) { Depth = Length.FromMillimetres(depth), CordShows = false, Joined = false };
        IReadOnlyList<Length> groove = [Length.FromMillimetres(8)];
        var result = ConditionCheck.Run(Bay.Four().With("1L", _ => Bay.On("1L", marking) with { Damage = [damage], Tread = new TreadDepths(groove, groove, groove) }));
        result.Findings.Single(f => f.Position == "1L" && f.Rule.StartsWith("damage.", StringComparison.Ordinal)).ShouldSatisfyAllConditions(f => f.Rule.ShouldBe(rule), f => f.Category.ShouldBe(category));

        // Where no groove was measured, a cut deeper than the least tread of the trade is taken to be below it, and the depths are asked for.
        if (place == DamagePlace.Tread)
        {
            var bare = ConditionCheck.Run(Bay.Four().With("1L", _ => Bay.On("1L", marking) with { Damage = [damage] }));
            bare.CategoryOf("damage.cut.tread.deep", "1L").ShouldBe(Category.Refer);
            bare.Needs.ShouldContain(n => n.Position == "1L" && n.What == "the tread depths");
        }
    }
}
