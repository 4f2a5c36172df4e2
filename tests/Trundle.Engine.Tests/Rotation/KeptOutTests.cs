using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Rotation;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using static Trundle.Engine.Tests.Rotation.Invented;

namespace Trundle.Engine.Tests.Rotation;

/// <summary>No rotation, proposed or asked for by name or by moves, puts a tyre or wheel anywhere that is to be replaced or judged first.</summary>
public sealed class KeptOutTests
{
    private static FittedVehicle Hurt(Damage damage, string at = "1L") => Car(Drive.Front, spare: "205/55 R16 91V").With(at, a => a with { Damage = [damage] });

    private static Length Millimetres(double value) => Length.FromMillimetres(value);

    public static TheoryData<string> Kinds => [.. Enum.GetValues<DamageKind>().Where(k => k is not (DamageKind.Puncture or DamageKind.Cut or DamageKind.Crack)).Select(k => k.ToString())];

    /// <summary>Every kind that nobody may leave as it is, at every place of the vehicle.</summary>
    [Theory]
    [MemberData(nameof(Kinds))]
    public void A_damaged_tyre_is_in_no_pattern(string kind)
    {
        foreach (var at in new[] { "1L", "1R", "2L", "2R", "S" })
        {
            var car = Hurt(new Damage(Enum.Parse<DamageKind>(kind), DamagePlace.Sidewall, Millimetres(30)), at);
            var plan = RotationPlan.For(car).Value;
            plan.KeptOut.ShouldHaveSingleItem().Position.ShouldBe(At(at));
            plan.KeptOut[0].Source.Text.ShouldNotBeEmpty();
            plan.Verdicts.Where(v => v.Moves.Any(m => m.From == At(at))).ShouldAllBe(v => !v.Allowed && !v.AllowedWithRemounting);
            (plan.Chosen?.Moves.Any(m => m.From == At(at) || m.To == At(at)) ?? false).ShouldBeFalse();
        }
    }

    [Theory]
    [InlineData(DamageKind.Bulge, RefusalReason.ReplaceFirst)]
    [InlineData(DamageKind.Cord, RefusalReason.ReplaceFirst)]
    [InlineData(DamageKind.Separation, RefusalReason.ReplaceFirst)]
    [InlineData(DamageKind.Other, RefusalReason.ReferFirst)]
    public void The_reason_says_what_comes_first(DamageKind kind, RefusalReason reason)
    {
        var plan = RotationPlan.For(Hurt(new Damage(kind, DamagePlace.Sidewall, null))).Value;
        plan.Chosen.ShouldBeNull();
        plan.Why.ShouldContain("tyre 1L");
        plan.KeptOut[0].Reason.ShouldBe(reason);
        plan.KeptOut[0].Why.ShouldContain("first", Case.Insensitive);
        plan.Refused.ShouldAllBe(v => v.Refusals.Any(r => r.Reason == reason || r.Reason == RefusalReason.Layout));
        RotationPlan.Apply(Hurt(new Damage(kind, DamagePlace.Sidewall, null)), "1L>2L, 2L>1L").Problem!.Message.ShouldContain("kept out");
    }

    [Fact]
    public void The_others_may_be_moved_by_themselves()
    {
        var car = Hurt(new Damage(DamageKind.Bulge, DamagePlace.Sidewall, null));
        RotationPlan.Apply(car, "2L>2R, 2R>2L").IsRead.ShouldBeTrue();
        RotationPlan.Apply(car, "X").IsRead.ShouldBeFalse();
    }

    [Fact]
    public void A_spare_that_is_kept_out_leaves_the_four()
    {
        var plan = RotationPlan.For(Hurt(new Damage(DamageKind.Cord, DamagePlace.Tread, null), "S")).Value;
        plan.Chosen!.Pattern.Name.ShouldBe("forward cross");
        plan.KeptOut.ShouldHaveSingleItem().Position.IsSpare.ShouldBeTrue();
    }

    [Fact]
    public void Worn_out_run_low_improperly_repaired_and_cracked_wheels_stay_out_too()
    {
        var car = Car(Drive.Front);
        car = car with { Vehicle = car.Vehicle with { Axles = [.. car.Vehicle.Axles.Select(a => a with { Placard = new Placard(Marked("205/55 R16 91V"), Kilopascals(230), null) })] } };
        Only(car.With("1L", a => a with { Tread = new TreadDepths([Millimetres(1.5)], [], []) })).Reason.ShouldBe(RefusalReason.ReplaceFirst);
        Only(car.With("1L", a => a with { Pressure = new PressureReading(Kilopascals(180), null, false) })).Reason.ShouldBe(RefusalReason.ReferFirst);
        Only(car.With("1L", a => a with { Tyre = a.Tyre! with { History = new RepairHistory { Repairs = [new EarlierRepair(DamagePlace.Tread, null, RepairMethod.PlugAlone)] } } })).Reason.ShouldBe(RefusalReason.ReplaceFirst);
        Only(car.With("1L", a => a with { Tyre = a.Tyre! with { Condemned = true } })).Reason.ShouldBe(RefusalReason.Condemned);
        var wheel = Only(car.With("1L", a => a with { Wheel = new Wheel { Damage = [new WheelDamage(WheelDamageKind.Crack, null)] } }));
        (wheel.Part, wheel.Reason).ShouldBe((InspectedPart.Wheel, RefusalReason.ReplaceFirst));
        KeptOut.Of(car.With("1L", a => a with { Pressure = new PressureReading(Kilopascals(190), null, false) })).ShouldBeEmpty("low, and not run low: it is set");
    }

    /// <summary>What a person decided of a referred tyre is not asked again; what is to be discarded nobody decides into a rotation.</summary>
    [Fact]
    public void A_decided_refer_is_let_in()
    {
        var other = Hurt(new Damage(DamageKind.Other, DamagePlace.Tread, null));
        RotationPlan.For(other, f => f.Category == Category.Refer).Value.KeptOut.ShouldBeEmpty();
        RotationPlan.For(Hurt(new Damage(DamageKind.Bulge, DamagePlace.Sidewall, null)), f => f.Category == Category.Refer).Value.KeptOut.ShouldHaveSingleItem();
    }

    /// <summary>A section repair may run behind and not in front: refused where it would come to the front only.</summary>
    [Fact]
    public void What_only_its_place_forbids_is_refused_there()
    {
        var section = Car(Drive.Front).With("2L", a => a with { Tyre = a.Tyre! with { History = new RepairHistory { Repairs = [new EarlierRepair(DamagePlace.Tread, null, RepairMethod.Section)] } } });
        var plan = RotationPlan.For(section).Value;
        plan.KeptOut.ShouldBeEmpty();
        plan.Chosen?.Moves.ShouldAllBe(m => m.From != At("2L") || m.To.Axle == 2);
        RotationPlan.Verdict(section, "front-to-rear").Value.Why.ShouldContain("From 2L to 1L");
        RotationPlan.Verdict(section, "side-to-side").Value.Allowed.ShouldBeTrue();
        var front = Car(Drive.Front).With("1L", a => a with { Tyre = a.Tyre! with { History = new RepairHistory { Repairs = [new EarlierRepair(DamagePlace.Tread, null, RepairMethod.Section)] } } });
        RotationPlan.Verdict(front, "front-to-rear").Value.Allowed.ShouldBeTrue("moving it behind is the cure");
    }

    [Fact]
    public void A_tyre_to_be_replaced_is_due_now()
    {
        var depths = new Dictionary<Position, Length> { [At("1L")] = Millimetres(6) };
        var outlook = new WearOutlook(depths, new Dictionary<Position, Length> { [At("1L")] = Millimetres(0.1) }, Length.FromKilometres(10000), Millimetres(1.6));
        var pattern = RotationPattern.Trade[0] with { Moves = [] };
        RotationAhead.For(pattern, outlook, Length.FromKilometres(1)).FirstReplacement!.Value.Kilometres.ShouldBe(44000, 1);
        RotationAhead.For(pattern, outlook with { ReplaceNow = true }, Length.FromKilometres(1)).FirstReplacement!.Value.Kilometres.ShouldBe(0);
    }

    [Fact]
    public void Every_rule_that_keeps_out_is_a_rule()
    {
        KeptOut.Rules.ShouldNotBeEmpty();
        foreach (var rule in KeptOut.Rules)
        {
            Trundle.Engine.InUse.InUseRules.List.ShouldContain(r => r.Rule == rule || r.Rule.StartsWith(rule + ".", StringComparison.Ordinal), rule);
        }
    }

    private static KeptOut Only(FittedVehicle car)
    {
        RotationPlan.For(car).Value.Chosen.ShouldBeNull();
        return KeptOut.Of(car).ShouldHaveSingleItem();
    }

    /// <summary>
    /// What a place decides is asked by itself, and gives what the whole inspection gives: on a vehicle that breaks each of these rules at each of its places, and on
    /// every vehicle of the rules' own cases.
    /// </summary>
    [Fact]
    public void Asking_only_what_a_place_decides_gives_the_answers_of_the_whole_inspection()
    {
        var said = new HashSet<string>(StringComparer.Ordinal);
        foreach (var set in Fitment.Bay.EveryRuleSet)
        {
            var made = InUse.RuleCases.All.Values.SelectMany(c => c.NotSaid.Append(c.Said)).Select(make => make(Fitment.Bay.Four(set)))
                .Concat(Trundle.Engine.InUse.InUseLimits.List.Where(l => l.Set == set).SelectMany(l => InUse.LimitVehicles.Classes(l).Select(c => InUse.LimitVehicles.Make(l, c, l.Compared + (l.IsFloor ? -1 : 1)).Subject)));
            foreach (var vehicle in made)
            {
                IReadOnlyList<Finding> whole = [.. ConditionCheck.Run(vehicle).Findings, .. Trundle.Engine.Fitment.FitmentCheck.Run(vehicle).Findings];
                var ours = KeptOut.There(vehicle, null);
                ours.ShouldBe(KeptOut.ThereBy(vehicle, whole, null));
                said.UnionWith(ours.Select(k => k.Why.Split('.')[0]));
            }
        }

        said.Count.ShouldBeGreaterThan(4);
    }
}
