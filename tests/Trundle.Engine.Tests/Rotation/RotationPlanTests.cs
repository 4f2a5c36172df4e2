using Trundle.Engine.Rotation;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using static Trundle.Engine.Tests.Rotation.Invented;

namespace Trundle.Engine.Tests.Rotation;

public class RotationPlanTests
{
    private static RotationPlan Plan(FittedVehicle vehicle) => RotationPlan.For(vehicle).Value;

    private static string[] Refused(FittedVehicle vehicle, RefusalReason reason) =>
        [.. Plan(vehicle).Verdicts.Where(v => v.Refusals.Any(r => r.Reason == reason)).Select(v => v.Pattern.Name).Order(StringComparer.Ordinal)];

    private static readonly string[] Crossing = ["5-tyre forward", "5-tyre rearward", "X", "forward cross", "rearward cross", "side-to-side"];

    [Theory]
    [InlineData(Drive.Front, null, "forward cross")]
    [InlineData(Drive.Rear, null, "rearward cross")]
    [InlineData(Drive.All, null, "rearward cross")]
    [InlineData(Drive.Front, "205/55 R16 91V", "5-tyre forward")]
    [InlineData(Drive.Rear, "205/55 R16 91V", "5-tyre rearward")]
    [InlineData(Drive.Rear, "T125/80 D15 95M", "rearward cross")]
    [InlineData(Drive.Rear, "205/55 R16 94V XL", "rearward cross")]
    public void The_pattern_follows_drive_and_spare(Drive drive, string? spare, string pattern)
    {
        var plan = Plan(Car(drive, spare: spare));
        plan.Chosen!.Pattern.Name.ShouldBe(pattern);
        plan.Chosen.Moves.ShouldAllBe(m => !m.Remount);
    }

    [Fact]
    public void A_repairable_puncture_is_named_before_it_is_moved()
    {
        var hole = new Damage(DamageKind.Puncture, DamagePlace.Tread, Length.FromMillimetres(4)) { FromMiddle = Length.FromMillimetres(20), Lean = Angle.FromDegrees(0) };
        var car = Car(Drive.Front).With("2L", a => a with { Damage = [hole], Tyre = a.Tyre! with { History = new RepairHistory { Policy = RepairPolicy.Permitted, Repairs = [], RanLow = false } } });
        Plan(car).KeptOut.ShouldBeEmpty();
        Plan(car).Cautions.ShouldContain(c => c.StartsWith("2L: damage is recorded", StringComparison.Ordinal));
        Plan(Car(Drive.Front)).Cautions.ShouldNotContain(c => c.Contains("damage", StringComparison.Ordinal));
    }

    [Fact]
    public void The_drive_is_read_from_the_axles_where_it_is_not_told()
    {
        var car = Car(null);
        var front = car with { Vehicle = car.Vehicle with { Axles = [new Axle { Driven = true }, new Axle()] } };
        Plan(front).Chosen!.Pattern.Name.ShouldBe("forward cross");
        Plan(car).Chosen!.Pattern.Name.ShouldBe("front-to-rear");
        Plan(car).Cautions.ShouldContain(c => c.Contains("driven", StringComparison.Ordinal));
    }

    [Fact]
    public void Directional_tyres_keep_their_side()
    {
        var car = Car(Drive.Front, spare: "205/55 R16 91V", each: t => t with { Directional = true });
        Plan(car).Chosen!.Pattern.Name.ShouldBe("front-to-rear");
        Plan(car).Verdicts.Where(v => v.Refusals.Any(r => r.Reason is RefusalReason.Direction or RefusalReason.DirectionForGood)).Select(v => v.Pattern.Name).Order(StringComparer.Ordinal).ShouldBe(Crossing);
    }

    [Fact]
    public void Sizes_that_differ_stay_on_their_axle()
    {
        var car = Car(Drive.Rear, "225/45 R17 91W", "255/40 R17 94W");
        Plan(car).Chosen!.Pattern.Name.ShouldBe("side-to-side");
        Refused(car, RefusalReason.Size).ShouldBe(["X", "forward cross", "front-to-rear", "rearward cross"]);
    }

    [Fact]
    public void Directional_and_different_sizes_leave_only_remounting()
    {
        var car = Car(Drive.Rear, "225/45 R17 91W", "255/40 R17 94W", each: t => t with { Directional = true });
        var plan = Plan(car);
        plan.Chosen!.Pattern.Name.ShouldBe("side-to-side");
        plan.Chosen.Moves.ShouldAllBe(m => m.Remount);
        plan.Steps.Count(s => s.Remount).ShouldBe(4);
        plan.Cautions.ShouldContain(c => c.Contains("balanced afresh", StringComparison.Ordinal));

        var sided = Car(Drive.Rear, "225/45 R17 91W", "255/40 R17 94W", each: t => t with { Directional = true, Asymmetric = true });
        Plan(sided).Chosen.ShouldBeNull();
    }

    [Fact]
    public void A_directional_tyre_on_the_wrong_side_is_put_right_by_crossing()
    {
        var car = Car(Drive.Rear, each: t => t with { Directional = true, MountedFor = t.Id!.EndsWith('L') ? MountedFor.Right : MountedFor.Left });
        RotationRules.Judge(car, RotationPattern.Named("X")!).Allowed.ShouldBeTrue();
        RotationRules.Judge(car, RotationPattern.Named("front-to-rear")!).AllowedWithRemounting.ShouldBeTrue();
        RotationRules.Judge(car, RotationPattern.Named("front-to-rear")!).Moves.ShouldAllBe(m => m.Remount);
    }

    [Fact]
    public void Radial_never_comes_in_front_of_diagonal()
    {
        var same = Car(Drive.Rear, each: t => t with { ConstructionRead = t.Id![0] == '1' ? Construction.Diagonal : Construction.Radial });
        Refused(same, RefusalReason.Construction).ShouldBe(["X", "forward cross", "front-to-rear", "rearward cross"]);
        Plan(same).Chosen!.Pattern.Name.ShouldBe("side-to-side");
    }

    [Fact]
    public void A_construction_letter_makes_no_other_size()
    {
        // Diagonal in front and radial behind may stand so, and may not be changed over.
        var kept = Car(Drive.Rear, "195/65 D15 91S", "195/65 R15 91S");
        Refused(kept, RefusalReason.Size).ShouldBeEmpty();
        Refused(kept, RefusalReason.Construction).ShouldBe(["X", "forward cross", "front-to-rear", "rearward cross"]);
        Plan(kept).Chosen!.Pattern.Name.ShouldBe("side-to-side");

        // Radial in front of diagonal may not stand so: what changes the axles puts it right, what leaves them does not.
        var wrong = Car(Drive.Rear, "195/65 R15 91S", "195/65 D15 91S");
        Refused(wrong, RefusalReason.Size).ShouldBeEmpty();
        Refused(wrong, RefusalReason.Construction).ShouldBe(["side-to-side"]);
        Plan(wrong).Chosen!.Pattern.Name.ShouldBe("rearward cross");
        Refused(Car(Drive.All, "195/65 R15 91S", "195/65 D15 91S"), RefusalReason.Construction).ShouldContain("front-to-rear");
    }

    [Theory]
    [InlineData("205/55 R16 91V", "P205/55 R16 91V")]
    [InlineData("165/80 R13 83T", "165 R13 83T")]
    public void Sizes_that_are_not_one_stay_on_their_axle(string front, string rear) =>
        Refused(Car(Drive.Rear, front, rear), RefusalReason.Size).ShouldBe(["X", "forward cross", "front-to-rear", "rearward cross"]);

    [Fact]
    public void In_a_dual_pair_a_tyre_carries_no_more_than_singly()
    {
        // LI 97 = 730 kg, four of them 2920 kg.
        FittedVehicle Van(double kilograms)
        {
            var van = Pickup(t => t with { Marking = Marked("195/70 R15 97T") });
            return van with { Rules = RuleSet.UnitedKingdom, Vehicle = van.Vehicle with { Axles = [van.Vehicle.Axles[0], van.Vehicle.Axles[1] with { Load = Mass.FromKilograms(kilograms) }] } };
        }

        Refused(Van(2920), RefusalReason.Load).ShouldBeEmpty();
        Refused(Van(2921), RefusalReason.Load).ShouldContain("dual rear, all alike");
    }

    [Fact]
    public void Constructions_never_mix_on_an_axle()
    {
        var car = Car(Drive.Rear, spare: "205/55 R16 91V").With("S", a => a with { Tyre = a.Tyre! with { ConstructionRead = Construction.BiasBelted } });
        Refused(car, RefusalReason.Construction).ShouldBe(["5-tyre forward", "5-tyre rearward"]);
        Plan(car).Chosen!.Pattern.Name.ShouldBe("rearward cross");
    }

    [Fact]
    public void What_is_condemned_is_not_fitted_again()
    {
        Plan(Car(Drive.Rear).With("2L", a => a with { Tyre = a.Tyre! with { Condemned = true } })).Chosen.ShouldBeNull();
        var wheel = Car(Drive.Rear, spare: "205/55 R16 91V").With("S", a => a with { Wheel = new Wheel { Condemned = true } });
        Plan(wheel).Chosen!.Pattern.Name.ShouldBe("rearward cross");
        Refused(wheel, RefusalReason.Condemned).ShouldBe(["5-tyre forward", "5-tyre rearward"]);
    }

    [Fact]
    public void A_tyre_does_not_come_to_an_axle_that_asks_for_more()
    {
        var car = Car(Drive.Rear);
        var asks = car with { Vehicle = car.Vehicle with { Axles = [car.Vehicle.Axles[0], car.Vehicle.Axles[1] with { Placard = new Placard(Marked("205/55 R16 94V XL"), null, null) }] } };
        Refused(asks, RefusalReason.Load).ShouldBe(["X", "forward cross", "front-to-rear", "rearward cross"]);
        var heavy = car with { Vehicle = car.Vehicle with { Axles = [car.Vehicle.Axles[0] with { Load = Mass.FromKilograms(1240) }, car.Vehicle.Axles[1]] } };
        Plan(heavy).Chosen!.Pattern.Name.ShouldBe("side-to-side");
    }

    [Fact]
    public void Wheels_that_differ_stay_on_their_axle()
    {
        var car = Car(Drive.Rear);
        car = car with { Fitted = [.. car.Fitted.Select(a => a with { Wheel = new Wheel { Rim = StampReader.Rim(a.Position.Axle == 1 ? "7J x 16" : "7.5J x 16").Value } })] };
        Refused(car, RefusalReason.Wheel).ShouldBe(["X", "forward cross", "front-to-rear", "rearward cross"]);
    }

    [Fact]
    public void The_makers_own_comes_first_and_none_means_none()
    {
        var car = Car(Drive.Rear);
        FittedVehicle With(string text) => car with { Vehicle = car.Vehicle with { MakerRotation = text } };
        Plan(With("1L<>2R, 1R<>2L")).Chosen!.Pattern.Name.ShouldBe("vehicle maker's own");
        Plan(With("X")).Chosen!.Pattern.Name.ShouldBe("X");
        Plan(With("none")).Chosen.ShouldBeNull();
        Plan(With("none")).Refused.ShouldAllBe(v => v.Refusals[0].Reason == RefusalReason.MakerSaysNone);
        RotationPlan.For(With("round and round")).Problem!.Where.ShouldBe("vehicle.makerRotation");
        var wheels = car with { Fitted = [.. car.Fitted.Select(a => a with { Wheel = new Wheel { Maker = WheelMaker.Aftermarket, MakerRotation = "side-to-side" } })] };
        Plan(wheels).Chosen!.Pattern.Name.ShouldBe("side-to-side");
    }

    [Fact]
    public void The_makers_own_is_refused_where_it_would_be_dangerous()
    {
        var car = Car(Drive.Rear, each: t => t with { ConstructionRead = t.Id![0] == '1' ? Construction.Diagonal : Construction.Radial });
        car = car with { Vehicle = car.Vehicle with { MakerRotation = "1L<>2L, 1R<>2R" } };
        var plan = Plan(car);
        plan.Refused.First().Pattern.Name.ShouldBe("vehicle maker's own");
        plan.Chosen!.Pattern.Name.ShouldBe("side-to-side");
    }

    [Fact]
    public void Dual_wheels_get_candidates_that_the_makers_diagram_confirms()
    {
        var plan = Plan(Pickup());
        plan.Chosen!.Pattern.NeedsMakerDiagram.ShouldBeTrue();
        plan.Cautions.ShouldContain(c => c.Contains("diagram", StringComparison.Ordinal));
        var directional = Pickup(t => t with { Directional = true });
        var fronts = RotationRules.Judge(directional, RotationPattern.Named("dual rear, fronts differ")!);
        fronts.Moves.Where(m => m.Remount).Select(m => m.From.ToString()).Order().ShouldBe(["1L", "1R"]);
        var alike = RotationRules.Judge(directional, RotationPattern.Named("dual rear, all alike")!);
        alike.Moves.Where(m => m.Remount).Select(m => m.From.ToString()).Order().ShouldBe(["2Lo", "2Ro"]);
    }

    [Fact]
    public void More_than_two_axles_need_the_makers_own()
    {
        var car = Car(Drive.Rear);
        var three = car with { Vehicle = car.Vehicle with { Axles = [.. car.Vehicle.Axles, new Axle()] } };
        Plan(three).Chosen.ShouldBeNull();
        var own = three with { Vehicle = three.Vehicle with { MakerRotation = "1L<>2L, 1R<>2R" } };
        Plan(own).Chosen!.Pattern.Name.ShouldBe("vehicle maker's own");
    }
}
