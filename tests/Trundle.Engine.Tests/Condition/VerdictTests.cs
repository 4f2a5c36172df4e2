using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Reference;
using Trundle.Engine.Tests.Fitment;
using Trundle.Engine.Tests.InUse;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Condition;

/// <summary>What becomes of a part: by the gravest of what was found, each damage by itself and the part as a whole, with what nobody entered.</summary>
public sealed class VerdictTests
{
    private static readonly Damage Hole = new(DamageKind.Puncture, DamagePlace.Tread, Length.FromMillimetres(4)) { FromMiddle = Length.FromMillimetres(30), Lean = Angle.FromDegrees(5) };

    private static readonly RepairHistory Sound = new() { Policy = RepairPolicy.Permitted, Repairs = [], RanLow = false };

    [Fact]
    public void A_small_hole_in_the_crown_of_a_tyre_of_which_all_is_known_may_be_repaired()
    {
        var verdict = Tyre(Sound, Hole);
        verdict.Verdict.ShouldBe(Verdict.Repair);
        verdict.Asked.ShouldBeEmpty();
        verdict.Reasons.ShouldContain(f => f.Rule == "damage.puncture.crown");
        verdict.Cautions.ShouldContain(c => c.Contains("central 126.8 mm", StringComparison.Ordinal));
    }

    [Fact]
    public void What_nobody_entered_is_asked_for()
    {
        var asked = string.Join("; ", Tyre(RepairHistory.NotKnown, new Damage(DamageKind.Puncture, DamagePlace.Tread, null)).Asked.Select(n => n.What));
        foreach (var what in new[] { "repair policy", "size of the puncture", "from the middle", "repairs that the tyre has", "little or no air" })
        {
            asked.ShouldContain(what);
        }
    }

    [Fact]
    public void The_makers_word_comes_first()
    {
        Tyre(Sound with { Policy = RepairPolicy.NotPermitted, PolicyText = "leaflet of 2025" }, Hole).Reasons[0].Measured.Text.ShouldContain("leaflet of 2025");
        Tyre(Sound with { Policy = RepairPolicy.NotPermitted }, Hole).Verdict.ShouldBe(Verdict.Discard);
        Tyre(Sound with { Policy = null, RunFlat = true }, Hole).Verdict.ShouldBe(Verdict.Refer);
        Tyre(Sound with { Policy = null, SelfSealing = true }, Hole).Verdict.ShouldBe(Verdict.Refer);
        Tyre(Sound with { SelfSealing = true }, Hole).Cautions.ShouldContain(c => c.StartsWith("Scrape the sealant", StringComparison.Ordinal));
    }

    [Fact]
    public void Each_damage_has_its_own_verdict_and_the_tyre_the_gravest()
    {
        var verdict = Tyre(Sound, Hole, new Damage(DamageKind.Bulge, DamagePlace.Sidewall, null), new Damage(DamageKind.Cut, DamagePlace.Tread, Length.FromMillimetres(4)));
        verdict.Damage.Select(d => (d.Index, d.Verdict)).ShouldBe([(0, Verdict.Repair), (1, Verdict.Discard), (2, Verdict.MayRun)]);
        verdict.Verdict.ShouldBe(Verdict.Discard);
        verdict.Reasons[0].Rule.ShouldBe("damage.bulge");
    }

    /// <summary>Everything that speaks against a repair is said, not only the first.</summary>
    [Fact]
    public void Every_reason_against_a_repair_is_said()
    {
        var bad = Hole with { Size = Length.FromMillimetres(8), FromMiddle = Length.FromMillimetres(70), FromRepair = Length.FromMillimetres(0), Lean = Angle.FromDegrees(40) };
        var history = Sound with { Policy = RepairPolicy.NotPermitted, RanLow = true, Repairs = [new EarlierRepair(DamagePlace.Shoulder, null, RepairMethod.StemAndPatch)] };
        var rules = Tyre(history, bad).Reasons.Select(f => f.Rule).ToList();
        foreach (var rule in new[] { "damage.puncture.maker", "damage.puncture.large", "damage.puncture.edge", "damage.puncture.overlap", "damage.puncture.lean", "damage.puncture.ran-low", "damage.puncture.repairs-table", "repair.improper" })
        {
            rules.ShouldContain(rule);
        }

        rules.ShouldNotContain("damage.puncture.crown");
        rules.ShouldNotContain("pressure.ran-low", "one fact is decided once");
    }

    [Fact]
    public void A_sound_tyre_and_wheel_may_run_and_a_valve_is_judged_where_one_was_looked_at()
    {
        var subject = Bay.Four() with { Date = new DateOnly(2022, 6, 1) };
        Of(subject).Select(v => (v.Part, v.Verdict)).Distinct().ShouldBe([(InspectedPart.Tyre, Verdict.MayRun), (InspectedPart.Wheel, Verdict.MayRun)]);
        var cracked = subject.With("1L", a => a with { Valve = new Valve { State = ValveState.Cracked }, Sensor = SensorState.NotWorking, Wheel = Bay.Wheel with { Damage = [new WheelDamage(WheelDamageKind.Corrosion, null)] } });
        Of(cracked).Where(v => v.Position == Bay.At("1L")).Select(v => (v.Part, v.Verdict))
            .ShouldBe([(InspectedPart.Tyre, Verdict.MayRun), (InspectedPart.Wheel, Verdict.Refer), (InspectedPart.Valve, Verdict.Renew), (InspectedPart.Sensor, Verdict.Renew)]);
    }

    [Fact]
    public void A_broken_rule_of_the_workshop_is_for_a_person_to_decide()
    {
        var carried = InUseLimits.List.Single(l => l.Id == "trade.damage.puncture.large");
        var own = new ShopRule(new InUseRule("shop.hole", null, Category.Refer, false, "Workshop rule", "", "", SourceStatus.Read, "Smaller.", "Decide."), carried with { Id = "shop.hole", Rule = "shop.hole", Value = 3, Unit = "mm" }, []);
        var subject = Hurt(Sound, Bay.Size, Hole) with { InForce = RulesInForce.With([own], []) };
        var verdict = Of(subject).First(v => v.Part == InspectedPart.Tyre);
        verdict.Verdict.ShouldBe(Verdict.Refer);
        verdict.Reasons.ShouldContain(f => f.Rule == "shop.hole");
    }

    [Fact]
    public void Every_rule_of_damage_wheel_valve_and_sensor_has_a_verdict_and_every_verdict_a_rule()
    {
        var carried = InUseRules.List.Select(r => r.Rule).ToHashSet();
        carried.UnionWith(MixingRules.List.Select(m => m.Rule));
        Verdicts.RuleNames.Where(r => !carried.Any(c => c == r || c.StartsWith(r + ".", StringComparison.Ordinal))).ShouldBeEmpty();
        carried.Where(r => r.Split('.')[0] is "damage" or "repair" or "wheel" or "valve" or "sensor").Except(Verdicts.RuleNames).ShouldBeEmpty();
        carried.Where(r => !Verdicts.Has(r)).ShouldBeEmpty("every rule is about some part");
    }

    public static TheoryData<string> Cases => [.. RuleCases.All.Keys];

    /// <summary>Whatever is found about a tyre or a wheel, or about its axle, no verdict on it is milder, and the finding that holds it is named.</summary>
    [Theory]
    [MemberData(nameof(Cases))]
    public void No_verdict_is_milder_than_a_finding_on_the_same_part(string rule)
    {
        foreach (var set in Bay.EveryRuleSet)
        {
            var subject = RuleCases.All[rule].Said(Bay.Four(set));
            var found = ConditionCheck.Run(subject).With(FitmentCheck.Run(subject));
            foreach (var verdict in InspectionVerdicts.Of(subject, found))
            {
                var on = found.Findings.Where(f => (f.Position == verdict.Position.ToString() || (f.Position == $"axle {verdict.Position.Axle}" && !verdict.Position.IsSpare)) && f.Category >= Category.Refer && Verdicts.Of(f, verdict.Part, set) is not null).ToList();
                if (on.Count == 0)
                {
                    continue;
                }

                var gravest = on.Max(f => f.Category);
                (verdict.Verdict >= (gravest >= Category.Major ? Verdict.PutRight : Verdict.Repair)).ShouldBeTrue($"{rule} {set} {verdict.Position} {verdict.Part}");
                verdict.HeldBy.ShouldNotBeNull();
            }
        }
    }

    [Theory]
    [InlineData("rim.diameter", InspectedPart.Tyre, Verdict.PutRight)]
    [InlineData("rim.diameter", InspectedPart.Wheel, Verdict.PutRight)]
    [InlineData("use.restricted", InspectedPart.Tyre, Verdict.Renew)]
    [InlineData("use.class", InspectedPart.Tyre, Verdict.PutRight)]
    [InlineData("direction.rotation", InspectedPart.Tyre, Verdict.PutRight)]
    [InlineData("load.index", InspectedPart.Tyre, Verdict.PutRight)]
    [InlineData("size.placard", InspectedPart.Tyre, Verdict.Refer)]
    [InlineData("hub.bolt-circle", InspectedPart.Wheel, Verdict.PutRight)]
    [InlineData("fixings.missing", InspectedPart.Wheel, Verdict.PutRight)]
    [InlineData("wheel.multi-piece", InspectedPart.Wheel, Verdict.Refer)]
    [InlineData("wheel.multi-piece", InspectedPart.Tyre, Verdict.Refer)]
    [InlineData("wheel.pieces-not-known", InspectedPart.Wheel, Verdict.Refer)]
    public void What_is_wrong_with_the_fitting_holds_the_part(string rule, InspectedPart part, Verdict least)
    {
        var subject = RuleCases.All[rule].Said(Bay.Four());
        var verdict = Of(subject).Single(v => v.Position == Bay.At("1L") && v.Part == part);
        (verdict.Verdict >= least).ShouldBeTrue($"{verdict.Verdict}");
        verdict.Reasons.ShouldContain(f => f.Rule == rule);
    }

    [Fact]
    public void Pieces_torn_out_are_discarded_where_the_law_makes_them_major_and_referred_elsewhere()
    {
        var chunk = RuleCases.All["damage.chunk"];
        Of(chunk.Said(Bay.Four(RuleSet.UnitedStates))).First(v => v.Part == InspectedPart.Tyre).Verdict.ShouldBe(Verdict.Discard);
        Of(chunk.Said(Bay.Four())).First(v => v.Part == InspectedPart.Tyre).Verdict.ShouldBe(Verdict.Refer);
    }

    [Theory]
    [InlineData("295/80 R22.5 152/148M", 3)]
    [InlineData("235/65 R16C 121/119R", 1)]
    [InlineData("LT245/75 R16 120/116S LRE", 1)]
    [InlineData(Bay.Size, 0)]
    public void A_large_tyre_that_ran_low_carries_the_caution_of_the_zipper(string marking, int cautions)
    {
        var verdict = Of(Hurt(Sound with { RanLow = true, RanLowDistance = Length.FromKilometres(3), RanLowTime = TimeSpan.FromMinutes(5) }, marking)).First(v => v.Part == InspectedPart.Tyre);
        var reason = verdict.Reasons.Single(f => f.Rule == "pressure.ran-low");
        Verdicts.Of(reason, InspectedPart.Tyre, null).ShouldBe(Verdict.Refer);
        reason.Measured.Text.ShouldBe("driven with little or no air, 3.0 km, 5 min");
        reason.Cautions.Count.ShouldBe(cautions);
    }

    /// <summary>29 CFR 1910.177(f): at 80 % a truck tyre is not topped up, and below the warning's 75 % even less.</summary>
    [Theory]
    [InlineData(640.1, "pressure.low")]
    [InlineData(640, "pressure.run-low-truck")]
    [InlineData(500, "pressure.run-low-truck")]
    public void A_truck_tyre_keeps_its_own_rule_however_low_it_is(double kilopascals, string rule)
    {
        const string size = "295/80 R22.5 152/148M";
        var truck = new Vehicle { VehicleClass = "goods over 3500 kg", Axles = [Bay.Axle(size) with { Placard = new Placard(Bay.Marked(size), GaugePressure.FromKilopascals(800), null) }] };
        var found = ConditionCheck.Run(new FittedVehicle(truck, [Bay.On("1L", size) with { Pressure = new PressureReading(GaugePressure.FromKilopascals(kilopascals), null, false) }], null, null));
        found.Findings.Single(f => f.Rule.StartsWith("pressure.", StringComparison.Ordinal)).Rule.ShouldBe(rule);
        if (rule == "pressure.run-low-truck")
        {
            found.One(rule, "1L").Cautions.ShouldContain(c => c.Contains("150 %", StringComparison.Ordinal) && c.Contains("21 kPa (3 psi)", StringComparison.Ordinal));
            found.One(rule, "1L").Cautions.ShouldContain(c => c.Contains("138 kPa (20 psi)", StringComparison.Ordinal));
        }
    }

    /// <summary>The pressure plan and the look over go by one row each; a truck tyre counts as run low at the same share.</summary>
    [Fact]
    public void The_shares_of_the_placard_stand_in_one_place()
    {
        Figures.List.ShouldNotContain(f => f.Key == "pressure.runlow-fraction" || f.Key == "pressure.warning-us-fraction");
        InUseLimits.List.Single(l => l.Id == "trade.pressure.run-low-truck").Value.ShouldBe(InUseLimits.List.Single(l => l.Id == "trade.pressure.run-low").Value);
        Trundle.Engine.Pressure.JudgedReading.Of(new PressureReading(GaugePressure.FromKilopascals(160), null, false), new Trundle.Engine.Pressure.SourcedPressure(GaugePressure.FromKilopascals(200), Source.CommonPractice), null)
            .Advice.ShouldStartWith("At or below 80 % of");
    }

    [Fact]
    public void A_pressure_of_the_workshop_and_a_share_that_it_put_right_are_held()
    {
        var stricter = InUseLimits.List.Single(l => l.Id == "trade.pressure.run-low") with { Id = "shop.air", Rule = "shop.air", Value = 95 };
        var own = new ShopRule(new InUseRule("shop.air", null, Category.Minor, false, "Workshop rule", "", "", SourceStatus.Read, "Nearer.", "Set it."), stricter, []);
        Air(95, RulesInForce.With([own], [])).CategoryOf("shop.air", "1L").ShouldBe(Category.Minor);
        Air(95.1, RulesInForce.With([own], [])).CategoryOf("shop.air", "1L").ShouldBe(Category.None);
        var right = RulesInForce.With([], [new RuleCorrection("trade.pressure.run-low", 78, "%", null, "A text", "", "2026", SourceStatus.Read)]);
        Air(79, right).CategoryOf("pressure.low", "1L").ShouldBe(Category.Minor);
        Air(78, right).CategoryOf("pressure.run-low", "1L").ShouldBe(Category.Refer);

        static CheckResult Air(double percent, RulesInForce rules) => ConditionCheck.Run(Bay.Four().With("1L", a => a with { Pressure = new PressureReading(GaugePressure.FromKilopascals(230 * percent / 100), null, false) }) with { InForce = rules });
    }

    /// <summary>The valve maker's figure comes before that of its kind; a kind without one is asked for.</summary>
    [Fact]
    public void A_valve_is_held_against_its_makers_figure_first()
    {
        Asked(new Valve { Kind = ValveKind.RubberSnapIn, Rating = GaugePressure.FromKilopascals(250) }).Single(f => f.Rule == "valve.pressure").Category.ShouldBe(Category.Major);
        Asked(new Valve { Kind = ValveKind.RubberSnapIn, Rating = GaugePressure.FromKilopascals(260) }).Single(f => f.Rule == "valve.pressure").Category.ShouldBe(Category.None);
        var result = ConditionCheck.Run(Bay.Four().With("1L", a => a with { Valve = new Valve { Kind = ValveKind.ClampIn } }));
        result.Findings.ShouldNotContain(f => f.Rule == "valve.pressure");
        result.Needs.ShouldContain(n => n.Position == "1L" && n.What == "the valve maker's greatest pressure");

        static IReadOnlyList<Finding> Asked(Valve valve) => ConditionCheck.Run(Bay.Four().With("1L", a => a with { Valve = valve })).Findings;
    }

    private static FittedVehicle Hurt(RepairHistory history, string marking, params Damage[] damage) => Bay.Four().With("1L", _ =>
    {
        var on = Bay.On("1L", marking);
        return on with { Tyre = on.Tyre! with { History = history }, Damage = damage };
    });

    private static PartVerdict Tyre(RepairHistory history, params Damage[] damage) => Of(Hurt(history, Bay.Size, damage)).First(v => v.Position == Bay.At("1L") && v.Part == InspectedPart.Tyre);

    private static IReadOnlyList<PartVerdict> Of(FittedVehicle subject) => InspectionVerdicts.Of(subject, ConditionCheck.Run(subject).With(FitmentCheck.Run(subject)));

    /// <summary>With all wheels driven, treads that lie apart hold the tyres with the most and with the least tread, and no other.</summary>
    [Fact]
    public void Treads_apart_with_all_wheels_driven_hold_the_two_that_are_farthest_apart()
    {
        static Assembly Worn(Assembly a, double millimetres)
        {
            IReadOnlyList<Length> depth = [Length.FromMillimetres(millimetres)];
            return a with { Tread = new TreadDepths(depth, depth, depth) };
        }

        var four = Bay.Four(null, Bay.Car with { Drive = Drive.All });
        var apart = four with { Fitted = [.. four.Fitted.Select((a, i) => Worn(a, new[] { 8, 7, 4, 7 }[i]))] };
        InspectionVerdicts.Of(apart, ConditionCheck.Run(apart)).Where(v => v.Part == InspectedPart.Tyre).Select(v => (v.Position.ToString(), v.Verdict))
            .ShouldBe([("1L", Verdict.PutRight), ("1R", Verdict.MayRun), ("2L", Verdict.PutRight), ("2R", Verdict.MayRun)]);
        var alike = four with { Fitted = [.. four.Fitted.Select(a => Worn(a, 7))] };
        InspectionVerdicts.Of(alike, ConditionCheck.Run(alike)).ShouldAllBe(v => v.Verdict == Verdict.MayRun);
    }
}
