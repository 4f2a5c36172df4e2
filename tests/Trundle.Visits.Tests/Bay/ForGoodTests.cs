using Trundle.Engine.Findings;
using Trundle.Visits.Bay;

namespace Trundle.Visits.Tests.Bay;

/// <summary>What no role lets go, whatever was signed.</summary>
public sealed class ForGoodTests
{
    [Theory]
    [InlineData("rim.diameter", true)]
    [InlineData("wheel.lock-ring", true)]
    [InlineData("condemned.tyre", true)]
    [InlineData("damage.bulge", false)]
    public void A_signed_refusal_lifts_it_or_does_not(string rule, bool forGood)
    {
        var finding = new Finding(rule, Category.Dangerous, "2R", Amount.Word("as found"), null, Source.CommonPractice, "Put it right.");
        var decision = new Decision("driven away at own risk", "O1", Role.Owner, "P. Driver");
        var work = VisitWork.Empty with { Decisions = new Dictionary<string, Decision> { [VisitFindings.DecisionKey(finding)] = decision } };
        VisitFindings.IsForGood(finding).ShouldBe(forGood);
        (VisitFindings.Stops(finding, work) is not null).ShouldBe(forGood);
    }
}
