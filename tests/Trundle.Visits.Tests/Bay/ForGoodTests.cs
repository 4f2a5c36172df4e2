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

    /// <summary>The law keeps an old tyre off a place, whatever its state: that is no technician's to decide.</summary>
    [Theory]
    [InlineData("age.law", Role.Technician, false, false)]
    [InlineData("age.law", Role.Owner, false, false)]
    [InlineData("age.law", Role.Owner, true, true)]
    [InlineData("age.law", Role.Technician, true, false)]
    [InlineData("size.placard", Role.Technician, false, true)]
    public void What_the_law_forbids_is_not_decided_away(string rule, Role role, bool signed, bool goes)
    {
        var finding = new Finding(rule, Category.Major, "1L", Amount.Word("as found"), null, Source.CommonPractice, "Replace it.");
        var decision = new Decision("stays", "T1", role, signed ? "P. Driver" : null);
        var work = VisitWork.Empty with { Decisions = new Dictionary<string, Decision> { [VisitFindings.DecisionKey(finding)] = decision } };
        (VisitFindings.Stops(finding, work) is null).ShouldBe(goes);
    }
}
