using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Tests.Fitment;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Condition;

/// <summary>
/// Several punctures of one tread, and earlier repairs with them. One only for V and above: a workshop's statement of BS AU 159 (second-hand); a quarter
/// turn or 40 cm apart and not opposite: common practice, from memory.
/// </summary>
public sealed class SeveralPuncturesTests
{
    private static readonly RepairHistory Sound = new() { Policy = RepairPolicy.Permitted, Repairs = [], RanLow = false };

    private static Damage Hole(double? around) => new(DamageKind.Puncture, DamagePlace.Tread, Length.FromMillimetres(4))
    {
        FromMiddle = Length.FromMillimetres(20), Lean = Angle.FromDegrees(5), Around = around is { } degrees ? Angle.FromDegrees(degrees) : null,
    };

    [Fact]
    public void One_hole_alone_is_repaired_and_two_of_a_V_tyre_are_referred_each()
    {
        Tyre("205/55 R16 91V", Sound, Hole(0)).Verdict.ShouldBe(Verdict.Repair);
        var two = Tyre("205/55 R16 91V", Sound, Hole(0), Hole(100));
        two.Verdict.ShouldBe(Verdict.Refer);
        two.Damage.Select(d => d.Verdict).ShouldBe([Verdict.Refer, Verdict.Refer]);
        var count = two.Reasons.Single(f => f.Rule == "damage.puncture.repairs");
        count.Measured.Text.ShouldBe("2 punctures and 0 earlier repairs: 2 repairs in one tyre");
        two.Reasons.ShouldNotContain(f => f.Rule == "damage.puncture.near" || f.Rule == "damage.puncture.crown");
    }

    [Fact]
    public void Below_V_the_standards_table_is_asked_for()
    {
        var two = Tyre("205/55 R16 91T", Sound with { Repairs = [new EarlierRepair(DamagePlace.Tread, null, RepairMethod.StemAndPatch) { Around = Angle.FromDegrees(260) }] }, Hole(0), Hole(100));
        two.Reasons.Single(f => f.Rule == "damage.puncture.repairs-table").Measured.Text.ShouldBe("2 punctures and 1 earlier repair: 3 repairs in one tyre");
        two.Verdict.ShouldBe(Verdict.Refer);
    }

    /// <summary>The workshop has put the number right, so that only the places decide. 205/55 R16: 632 mm across, so 40 cm are 72.5°.</summary>
    [Theory]
    [InlineData(0.0, 100.0, null)]
    [InlineData(0.0, 90.0, null)]
    [InlineData(0.0, 73.0, null)]
    [InlineData(0.0, 72.0, "damage.puncture.near")]
    [InlineData(350.0, 20.0, "damage.puncture.near")]
    [InlineData(10.0, 10.0, "damage.puncture.near")]
    [InlineData(0.0, 360.0, "damage.puncture.near")]
    [InlineData(0.0, 166.0, "damage.puncture.opposite")]
    [InlineData(300.0, 105.0, "damage.puncture.opposite")]
    [InlineData(0.0, null, "damage.puncture.near")]
    [InlineData(null, null, "damage.puncture.near")]
    public void Places_round_the_tyre_decide(double? first, double? second, string? rule)
    {
        var verdict = Tyre("205/55 R16 91V", Sound, Most(3), Hole(first), Hole(second));
        verdict.Verdict.ShouldBe(rule is null ? Verdict.Repair : Verdict.Refer);
        verdict.Damage.ShouldAllBe(d => d.Verdict == verdict.Verdict);
        if (rule is not null)
        {
            verdict.Reasons.Count(f => f.Rule == rule).ShouldBe(1, "what is true of both is said once");
        }

        verdict.Asked.Any(n => n.What.Contains("each puncture lies", StringComparison.Ordinal)).ShouldBe(first is null || second is null);
    }

    [Fact]
    public void An_earlier_repair_whose_place_is_told_counts_like_another_hole()
    {
        EarlierRepair At(double? around) => new(DamagePlace.Tread, null, RepairMethod.StemAndPatch) { Around = around is { } a ? Angle.FromDegrees(a) : null };
        Tyre("205/55 R16 91V", Sound with { Repairs = [At(100)] }, Most(3), Hole(0)).Verdict.ShouldBe(Verdict.Repair);
        Tyre("205/55 R16 91V", Sound with { Repairs = [At(100), At(30)] }, Most(3), Hole(0)).Reasons.ShouldContain(f => f.Rule == "damage.puncture.near");
        Tyre("205/55 R16 91V", Sound with { Repairs = [At(null)] }, Most(3), Hole(0)).Verdict.ShouldBe(Verdict.Refer);
    }

    private static RulesInForce Most(int repairs)
    {
        var carried = InUseLimits.List.Single(l => l.Id == "trade.damage.puncture.repairs");
        return RulesInForce.With([], [new RuleCorrection(carried.Id, repairs, carried.Unit, null, "A text", "", "2026", SourceStatus.Read)]);
    }

    private static PartVerdict Tyre(string marking, RepairHistory history, params Damage[] damage) => Tyre(marking, history, null, damage);

    private static PartVerdict Tyre(string marking, RepairHistory history, RulesInForce? rules, params Damage[] damage)
    {
        var subject = Bay.Four().With("1L", a => a with { Damage = damage, Tyre = a.Tyre! with { Marking = Bay.Marked(marking), History = history } }) with { Date = new DateOnly(2022, 6, 1) };
        subject = rules is null ? subject : subject with { InForce = rules };
        return InspectionVerdicts.Of(subject, ConditionCheck.Run(subject)).Single(v => v.Position == Bay.At("1L") && v.Part == InspectedPart.Tyre);
    }
}
