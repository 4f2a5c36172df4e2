using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Tests.Fitment;

public sealed class InUseRulesTests
{
    [Fact]
    public void Every_rule_says_what_it_asks_what_to_do_and_where_it_stands()
    {
        foreach (var rule in InUseRules.List.Concat(MixingRules.List.Select(r => r.InUse)))
        {
            rule.Text.ShouldNotBeNullOrWhiteSpace(rule.Rule);
            rule.Action.ShouldEndWith(".", customMessage: rule.Rule);
            rule.Document.ShouldNotBeNullOrWhiteSpace(rule.Rule);
            if (rule.Set is not null)
            {
                rule.Clause.ShouldNotBeNullOrWhiteSpace(rule.Rule);
                rule.Edition.ShouldNotBeNullOrWhiteSpace(rule.Rule);
                (rule.CategoryByLaw || rule.Source.Text.Contains("category by common practice", StringComparison.Ordinal)).ShouldBeTrue(rule.Rule);
            }
        }
    }

    /// <summary>Who does not know the edition has not read the text.</summary>
    [Fact]
    public void A_rule_of_an_unknown_edition_is_never_called_read()
    {
        var rules = InUseRules.List.Concat(MixingRules.List.Select(r => r.InUse)).ToList();
        rules.ShouldNotContain(r => r.Edition == "not recorded");
        rules.Where(r => r.Edition == InUseRule.EditionNotKnown && r.Status == SourceStatus.Read).Select(r => r.Id).ShouldBeEmpty();
        rules.First(r => r.Edition == InUseRule.EditionNotKnown).Source.Text.ShouldContain("(edition not known)");
    }

    [Fact]
    public void Only_the_european_directive_has_categories_of_its_own()
    {
        var own = InUseRules.List.Concat(MixingRules.List.Select(r => r.InUse)).Where(r => r.CategoryByLaw).ToList();
        own.ShouldNotBeEmpty();
        own.ShouldAllBe(r => r.Set == RuleSet.EuropeanUnion && r.Document == "Directive 2014/45/EU");
    }

    [Fact]
    public void A_law_wins_over_the_trade_and_the_trade_stands_in_where_the_law_is_silent()
    {
        InUseRules.Of("axle.size", RuleSet.UnitedKingdom).Set.ShouldBe(RuleSet.UnitedKingdom);
        InUseRules.Of("axle.size", null).Source.ShouldBe(Source.CommonPractice);
        InUseRules.Of("axle.season", RuleSet.UnitedKingdom).Set.ShouldBeNull();
        InUseRules.LawOf("axle.season", RuleSet.UnitedKingdom).ShouldBeNull();
    }
}
