using Bunit;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Tests.HandBack;

public sealed class HandBackTests : BayContext
{
    [Fact]
    public void Every_stop_is_listed_with_why_and_the_way_to_it_and_nobody_can_sign()
    {
        BeforeTheWork(Role.Owner);
        var page = Page(Leg.HandBack);
        var stops = page.FindAll(".stop-list li");
        stops.Count.ShouldBe(Visit.State.Stops.Count);
        stops.Count.ShouldBeGreaterThan(20);
        var final = stops.Where(s => s.TextContent.Contains("Final torque", StringComparison.Ordinal)).ToList();
        final.Count.ShouldBe(4);
        final[0].TextContent.ShouldStartWith("Front left: Final torque on every fixing", Case.Sensitive);
        final[0].TextContent.ShouldContain("Nobody may let it go without this.");
        final[0].QuerySelector("a")!.GetAttribute("href").ShouldEndWith("/prove/1L/final-torque");
        page.FindAll("button").ShouldNotContain(b => b.TextContent.Contains("Sign", StringComparison.Ordinal));
    }

    [Fact]
    public void Final_torque_is_never_offered_for_a_decision()
    {
        BeforeTheSignature(Role.Owner, ("work.steps.2R.final-torque.4", ""));
        var page = Page(Leg.HandBack);
        Visit.State.Stops.Select(s => (s.Position, s.DecisionKey)).ShouldBe([("2R", null)]);
        page.FindAll(".decision input").ShouldBeEmpty();
        page.FindAll("button").ShouldNotContain(b => b.TextContent == "Sign and hand back");
    }

    [Fact]
    public void A_leak_waits_for_an_instructor_or_the_owner_and_the_signed_refusal()
    {
        BeforeTheSignature(Role.Instructor, ("work.steps.1L.soap-test", "bubbles"));
        var page = Page(Leg.HandBack);
        Visit.State.MayLeave.ShouldBeFalse();
        page.Find("#f-work-decisions-leak-1L-decision").Change("Customer takes it as it is");
        Visit.State.MayLeave.ShouldBeFalse();
        page.Markup.ShouldContain("The signed refusal is missing.");
        page.Find("#f-work-decisions-leak-1L-signedRefusal").Change("the customer");
        Visit.State.MayLeave.ShouldBeTrue();
    }

    [Fact]
    public void A_technician_is_not_offered_to_let_a_leak_go()
    {
        BeforeTheSignature(Role.Technician, ("work.steps.1L.soap-test", "bubbles"));
        var page = Page(Leg.HandBack);
        page.FindAll("#f-work-decisions-leak-1L-signedRefusal").ShouldBeEmpty();
        page.Find(".decision").TextContent.ShouldContain("may not decide this");
        page.Find(".decision a").GetAttribute("href").ShouldEndWith("/who");
    }

    [Fact]
    public void Whoever_may_signs_when_nothing_stops_it_any_more()
    {
        BeforeTheSignature(Role.Technician);
        var page = Page(Leg.HandBack);
        Visit.State.Stops.ShouldBeEmpty();
        page.FindAll("button").Single(b => b.TextContent == "Sign and hand back").Click();
        Visit.State.HandedBack.ShouldBeTrue();
        page.Find("h1").TextContent.ShouldBe("Handed back · by T2, technician");
        page.FindAll("button").Single(b => b.TextContent == "Take the signature back").Click();
        Visit.State.HandedBack.ShouldBeFalse();
    }

    [Fact]
    public void A_trainee_may_not_sign_and_is_told_who_may()
    {
        BeforeTheSignature(Role.Trainee);
        var page = Page(Leg.HandBack);
        page.FindAll("button").ShouldNotContain(b => b.TextContent == "Sign and hand back");
        page.Markup.ShouldContain("T2, trainee, may not hand a vehicle back: a technician, an instructor or the owner signs.");
    }

    [Fact]
    public void Paper_and_the_next_distances_are_there()
    {
        BeforeTheWork(Role.Technician);
        var page = Page(Leg.HandBack);
        page.FindAll("a[download]").Select(a => a.GetAttribute("href")!).ShouldContain(h => h.EndsWith("/sheet.pdf?for=customer&paper=a4", StringComparison.Ordinal));
        page.FindAll("a[download]").Count.ShouldBe(5);
        page.Markup.ShouldContain("48\u202f250 km");
        page.Markup.ShouldContain("48\u202f300 km");
        page.Markup.ShouldContain("58\u202f200 km");
    }
}
