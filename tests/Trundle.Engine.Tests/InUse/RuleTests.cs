using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Tests.Fitment;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Tests.InUse;

/// <summary>Every rule that is carried, under its own rule set: said with its own category, source and action where it is broken, and not said where it is kept.</summary>
public sealed class RuleTests
{
    public static TheoryData<string> WithoutALimit => [.. InUseRules.List.Where(r => InUseLimits.List.All(l => l.Rule != r.Rule)).Select(r => r.Id)];

    [Theory]
    [MemberData(nameof(WithoutALimit))]
    public void Broken_and_kept(string id)
    {
        var rule = InUseRules.List.Single(r => r.Id == id);
        RuleCases.All.ShouldContainKey(rule.Rule, "a rule without a limit row has a case of its own");
        var tried = RuleCases.All[rule.Rule];
        var finding = Said(rule, tried.Said(Bay.Four(rule.Set)), tried.At).ShouldNotBeNull();
        finding.Category.ShouldBe(rule.Category);
        finding.Source.ShouldBe(rule.Source);
        finding.Action.ShouldNotBeNullOrWhiteSpace();
        foreach (var kept in tried.NotSaid)
        {
            Said(rule, kept(Bay.Four(rule.Set)), tried.At).ShouldBeNull();
        }
    }

    [Fact]
    public void No_case_is_left_of_a_rule_that_is_gone() =>
        RuleCases.All.Keys.Except(InUseRules.List.Select(r => r.Rule)).ShouldBeEmpty();

    /// <summary>A rule with a limit is tried at it elsewhere; here, that a law's own limit is said with the law's own rule.</summary>
    [Fact]
    public void A_limit_is_said_with_its_rules_category_and_source()
    {
        foreach (var limit in InUseLimits.List)
        {
            var rule = InUseRules.Of(limit.Rule, limit.Set);
            foreach (var vehicleClass in LimitVehicles.Classes(limit))
            {
                var outside = limit.IsFloor ? limit.Holds == Comparison.Above ? 0 : -1 : 1;
                var made = LimitVehicles.Make(limit, vehicleClass, limit.Compared + (outside * LimitVehicles.Step(limit.Quantity)));
                var finding = Said(rule, made.Subject, made.At).ShouldNotBeNull(limit.Id);
                (finding.Category, finding.Source).ShouldBe((rule.Category, rule.Source), limit.Id);
                if (limit.Quantity is not (JudgedQuantity.LoadShare or JudgedQuantity.CutShare))
                {
                    finding.Limit.ShouldBe(limit.Limit, limit.Id);
                }

                finding.Cautions.Count(c => c.StartsWith("One reading: ", StringComparison.Ordinal) || c.StartsWith("Another reading: ", StringComparison.Ordinal)).ShouldBe(rule.OtherReading is null ? 0 : 2, limit.Id);
            }
        }
    }

    /// <summary>What only tells (category none) is said where it stands at all; else what is not in order.</summary>
    private static Finding? Said(InUseRule rule, FittedVehicle subject, string? at) => ConditionCheck.Run(subject).With(FitmentCheck.Run(subject)).Findings
        .SingleOrDefault(f => f.Rule == rule.Rule && f.Position == at && (f.Action != "In order." || rule.Rule == "wear.even"));
}
