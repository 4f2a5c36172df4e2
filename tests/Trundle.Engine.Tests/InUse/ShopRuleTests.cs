using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Tests.Fitment;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.InUse;

/// <summary>A workshop's rules beside the carried ones, and its corrections in their place: at, inside and outside, made of the carried data.</summary>
public sealed class ShopRuleTests
{
    public static TheoryData<string> Ids => LimitTests.Ids;

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_stricter_rule_of_the_workshop_holds_at_the_same_places_and_dates(string id)
    {
        var carried = InUseLimits.List.Single(l => l.Id == id);
        if (carried.Quantity == JudgedQuantity.WinterMark && carried.Value == 2)
        {
            Stricter(carried).Value.ShouldBe(3, "there is no mark above the snowflake");
            return;
        }

        var own = Own(Stricter(carried), carried.Set is { } set ? [set] : []);
        LimitTests.Holds(own.Limit, RulesInForce.With([own], []), carried.Set);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_limit_that_was_put_right_holds_in_place_of_the_carried_one(string id)
    {
        var carried = InUseLimits.List.Single(l => l.Id == id);
        var value = carried.Quantity == JudgedQuantity.WinterMark ? 3 - carried.Value : carried.Value * 0.9;
        var inForce = RulesInForce.With([], [new RuleCorrection(id, value, carried.Unit, null, "A text", "a clause", "2026", SourceStatus.Read)]);
        var right = inForce.Limits.Single(l => l.Id == id);
        right.Value.ShouldBe(value);
        right.Source.Status.ShouldBe(SourceStatus.Read);
        right.Source.Text.ShouldBe($"A text, a clause (edition: 2026); put right by the workshop, was {carried.Text}");
        LimitTests.Holds(right, inForce);
    }

    [Fact]
    public void A_category_that_was_put_right_is_the_findings_and_says_what_it_was()
    {
        var inForce = RulesInForce.With([], [new RuleCorrection("uk.tread.depth", null, "", Category.Major, "SI 1986/1078", "reg. 27", "2026", SourceStatus.Read)]);
        IReadOnlyList<Length> worn = [Length.FromMillimetres(1.5)];
        var subject = Bay.Four(RuleSet.UnitedKingdom).With("1L", a => a with { Tread = new TreadDepths(worn, worn, worn) }) with { InForce = inForce };
        var finding = ConditionCheck.Run(subject).One("tread.depth", "1L");
        finding.Category.ShouldBe(Category.Major);
        finding.Source.Text.ShouldBe("SI 1986/1078, reg. 27 (edition: 2026); put right by the workshop, category was dangerous; category by common practice");
        finding.Limit!.Amount.Value.ShouldBe(1.6);
        finding.Limit.Source.Status.ShouldBe(SourceStatus.Read);
    }

    [Fact]
    public void A_rule_of_the_workshop_leaves_the_laws_own_finding_as_it_is()
    {
        var own = Own(InUseLimits.List.Single(l => l.Id == "uk.tread.depth") with { Value = 3 }, [RuleSet.UnitedKingdom]);
        IReadOnlyList<Length> depth = [Length.FromMillimetres(2.5)];
        var subject = Bay.Four(RuleSet.UnitedKingdom).With("1L", a => a with { Tread = new TreadDepths(depth, depth, depth) });
        var result = ConditionCheck.Run(subject with { InForce = RulesInForce.With([own], []) });
        var (with, without) = (result.One("tread.depth", "1L"), ConditionCheck.Run(subject).One("tread.depth", "1L"));
        (with with { Cautions = without.Cautions }).ShouldBe(without);
        result.One(own.Rule.Rule, "1L").Category.ShouldBe(Category.Refer);
        ConditionCheck.Run(subject with { Rules = RuleSet.EuropeanUnion, InForce = RulesInForce.With([own], []) }).Findings.ShouldNotContain(f => f.Rule == own.Rule.Rule);
    }

    private static InUseLimit Stricter(InUseLimit carried) => carried with
    {
        Value = carried.Quantity == JudgedQuantity.WinterMark ? carried.Value + 1 : carried.IsFloor ? carried.Value * 1.25 : carried.Value * 0.75,
    };

    private static ShopRule Own(InUseLimit limit, IReadOnlyList<RuleSet> sets)
    {
        const string name = ShopRule.Prefix + "own";
        return new ShopRule(
            new InUseRule(name, null, Category.Refer, false, "Workshop rule", "", "", SourceStatus.Read, "Stricter.", "Decide."),
            limit with { Id = name, Rule = name, Set = null, Source = new Source("Workshop rule", SourceStatus.Read) },
            sets);
    }
}
