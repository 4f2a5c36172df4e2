using Trundle.Engine.Condition;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>The USTMA puncture repair chart (read), and what repair lists never repair (read), row by row.</summary>
public sealed class RepairChartTests
{
    private const string Car = "205/55 R16 91H";
    private const string Van = "235/65 R16C 121/119R";
    private const string LightTruck = "LT245/75 R16 120/116S LRE";
    private const string Truck = "295/80 R22.5 152/148M";

    /// <summary>Car and LT through load range E: 1/4 in. Truck and bus: 3/8 in.</summary>
    [Theory]
    [InlineData(Car, 0.25, 0.26)]
    [InlineData(Van, 0.25, 0.26)]
    [InlineData(LightTruck, 0.25, 0.26)]
    [InlineData(Truck, 0.375, 0.38)]
    public void The_greatest_injury(string marking, double repairedInches, double tooLargeInches)
    {
        Injured(repairedInches).ShouldBe(Verdict.Repair);
        Injured(tooLargeInches).ShouldBe(Verdict.Discard);

        Verdict Injured(double inches) => PuncturedTyre.Verdict(PuncturedTyre.Subject(marking, null, p => p with { Size = Length.FromInches(inches) }));
    }

    [Theory]
    [InlineData(Car)]
    [InlineData(Truck)]
    public void At_2_32_in_of_tread_a_tyre_is_not_repaired(string marking)
    {
        PuncturedTyre.Rules(marking, null, null, null, 1.5875).ShouldContain("damage.puncture.worn");
        PuncturedTyre.Rules(marking, null, null, null, 1.6).ShouldNotContain("damage.puncture.worn");
    }

    [Theory]
    [InlineData(DamagePlace.Tread, Verdict.Repair)]
    [InlineData(DamagePlace.Shoulder, Verdict.Discard)]
    [InlineData(DamagePlace.Sidewall, Verdict.Discard)]
    [InlineData(DamagePlace.Bead, Verdict.Discard)]
    public void Only_the_tread_area_is_repaired(DamagePlace place, Verdict verdict)
    {
        foreach (var marking in new[] { Car, Van, LightTruck, Truck })
        {
            PuncturedTyre.Verdict(PuncturedTyre.Subject(marking, null, p => p with { Place = place })).ShouldBe(verdict, marking);
        }
    }

    [Theory]
    [InlineData(0, true)]
    [InlineData(900, false)]
    public void Repairs_do_not_overlap(double apartMillimetres, bool overlaps) =>
        PuncturedTyre.Rules(Car, null, p => p with { FromRepair = Length.FromMillimetres(apartMillimetres) }, Repaired(RepairMethod.StemAndPatch)).Contains("damage.puncture.overlap").ShouldBe(overlaps);

    [Theory]
    [InlineData(RepairMethod.StemAndPatch, false)]
    [InlineData(RepairMethod.PatchAlone, true)]
    [InlineData(RepairMethod.PlugAlone, true)]
    public void A_tyre_with_an_improper_repair_is_scrapped(RepairMethod method, bool scrapped) =>
        (PuncturedTyre.Verdict(PuncturedTyre.Subject(Car, null, null, Repaired(method))) == Verdict.Discard).ShouldBe(scrapped);

    /// <summary>Cords showing; run-flat or underinflation marks; separation; bulge; solvent or oil damage; zipper signs.</summary>
    [Theory]
    [InlineData(DamageKind.Cord)]
    [InlineData(DamageKind.RunLowMarks)]
    [InlineData(DamageKind.Separation)]
    [InlineData(DamageKind.Bulge)]
    [InlineData(DamageKind.Oil)]
    [InlineData(DamageKind.Ripple)]
    public void What_is_never_repaired(DamageKind kind) => PuncturedTyre.Verdict(PuncturedTyre.Subject(Car, null, p => p with { Kind = kind })).ShouldBe(Verdict.Discard);

    [Fact]
    public void A_tyre_with_ageing_cracks_is_not_repaired()
    {
        var subject = PuncturedTyre.Subject(Car, null);
        var cracked = subject with { Fitted = [.. subject.Fitted.Select(a => a with { Damage = [.. a.Damage, new Damage(DamageKind.Crack, DamagePlace.Sidewall, null) { Depth = Length.FromMillimetres(0.5), Joined = false }] })] };
        PuncturedTyre.Verdict(subject).ShouldBe(Verdict.Repair);
        PuncturedTyre.Verdict(cracked).ShouldBe(Verdict.Discard);
    }

    /// <summary>Run-flat and self-sealing: the maker's policy only (read); unknown, it is asked for and the tyre is not repaired.</summary>
    [Fact]
    public void Run_flat_and_self_sealing_tyres_go_by_their_makers_policy_only()
    {
        foreach (var known in new[] { new RepairHistory { RunFlat = true }, new RepairHistory { SelfSealing = true } })
        {
            Of(known).ShouldBe(Verdict.Refer);
            Of(known with { Policy = RepairPolicy.Permitted }).ShouldBe(Verdict.Repair);
            Of(known with { Policy = RepairPolicy.NotPermitted }).ShouldBe(Verdict.Discard);
        }

        static Verdict Of(RepairHistory history) => PuncturedTyre.Verdict(PuncturedTyre.Subject(Car, null, null, history));
    }

    /// <summary>US Army TM 9-2610-200-14 2-23 (read): a sidewall cut of 2/32 in or to the cord, weather cracks of 2/32 in or joined, a bead tear over 2/32 in or wire to be seen: out of service.</summary>
    [Theory]
    [InlineData(DamageKind.Cut, 1.5875, false, false, Verdict.Discard)]
    [InlineData(DamageKind.Cut, 1.58, false, false, Verdict.MayRun)]
    [InlineData(DamageKind.Cut, 1.0, true, false, Verdict.Discard)]
    [InlineData(DamageKind.Crack, 1.5875, false, false, Verdict.Discard)]
    [InlineData(DamageKind.Crack, 1.58, false, false, Verdict.MayRun)]
    [InlineData(DamageKind.Crack, 1.0, false, true, Verdict.Discard)]
    [InlineData(DamageKind.Crack, 1.0, true, false, Verdict.Discard)]
    [InlineData(DamageKind.Bead, 1.59, false, false, Verdict.Discard)]
    [InlineData(DamageKind.Bead, 1.58, false, false, Verdict.Refer)]
    [InlineData(DamageKind.Bead, 1.0, true, false, Verdict.Discard)]
    public void Inspection_numbers_of_the_manual(DamageKind kind, double millimetres, bool cord, bool joined, Verdict verdict)
    {
        var place = kind == DamageKind.Bead ? DamagePlace.Bead : DamagePlace.Sidewall;
        var size = kind == DamageKind.Bead ? Length.FromMillimetres(millimetres) : (Length?)null;
        PuncturedTyre.Verdict(PuncturedTyre.Subject(Car, null, _ => new Damage(kind, place, size) { Depth = Length.FromMillimetres(millimetres), CordShows = cord, Joined = joined })).ShouldBe(verdict);
    }

    private static RepairHistory Repaired(RepairMethod method) => new() { Repairs = [new EarlierRepair(DamagePlace.Tread, null, method)] };
}
