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
    public void The_re_torque_is_shown_with_its_day_and_as_done_once_it_is()
    {
        BeforeTheSignature(Role.Technician);
        Page(Leg.HandBack).Markup.ShouldContain("the office asks from 28 Mar 2026 on");
        Visit.EnterAsync(("work.reTorque.on", "2026-03-20"), ("work.reTorque.result", "some turned"));
        Page(Leg.HandBack).Markup.ShouldContain("Checked on 20 Mar 2026 by T2: a fixing turned before the click, so it is due once more.");
    }

    [Theory]
    [InlineData("""{"visit": "26-0301-2", "handedBackOn": "2026-03-01", "fromOdometerKilometres": 48250, "toOdometerKilometres": 48300, "open": true}""", ".caution", "is not recorded. Ask, and check every fixing now.")]
    [InlineData("""{"visit": "26-0301-2", "open": false, "doneOn": "2026-03-05", "result": "no fixing turned before the click"}""", ".note", "was checked on 5 Mar 2026: no fixing turned before the click.")]
    public void The_next_visit_of_the_vehicle_says_on_arrival_whether_it_was_done(string before, string where, string words)
    {
        Browser.ReTorqueBefore = System.Text.Json.Nodes.JsonNode.Parse(before)!.AsObject();
        BeforeTheWork(Role.Technician);
        Page(Leg.Arrive).FindAll(where).Select(p => p.TextContent).ShouldContain(t => t.Contains("26-0301-2", StringComparison.Ordinal) && t.Contains(words, StringComparison.Ordinal));
    }

    [Fact]
    public void A_vehicle_that_was_not_here_before_is_told_nothing_of_it()
    {
        BeforeTheWork(Role.Technician);
        Page(Leg.Arrive).Markup.ShouldNotContain("Wheels were off on visit");
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
