using Bunit;
using Trundle.Engine.Findings;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Tests.LookOver;

/// <summary>What stands in the workshop's register is told at the wheel, with or without a connection.</summary>
public sealed class CondemnedTests : BayContext
{
    private const string Tin = "fitted.2R.tyre.tin";
    private const string Decision = "work.decisions.condemned-tin@2R.decision";

    [Fact]
    public void A_TIN_of_a_condemned_tyre_is_told_at_its_field_on_the_wheel_and_in_what_is_still_needed()
    {
        BeforeTheWork(Role.Technician);
        Browser.Condemn("tin", "DOT XX12 ABC 2423");
        var page = Page(Leg.LookOver, "2R");
        page.FindAll(".stops").ShouldBeEmpty();

        Control(page, Tin).Change("dotxx12abc2423");
        page.Find(".wide .stops").TextContent.ShouldContain("In the register of condemned tyres: DOT XX12 ABC 2423, by I2 on visit 26-0313-2, 2026-03-13.");
        page.FindAll("article.finding h3").Select(h => h.TextContent).ShouldContain(t => t.Contains("condemned tin", StringComparison.Ordinal) && t.Contains("refer", StringComparison.OrdinalIgnoreCase));
        page.Find(".next .button--first").TextContent.ShouldBe("Still needed: a decision on its TIN");
        page.Find("aside.needed li").TextContent.ShouldContain("a decision on its TIN");
        Visit.State.Stops.ShouldContain(s => s.DecisionKey == "condemned-tin@2R");

        page.Find(".next .button--first").Click();
        Browser.Settled.ShouldBe("f-work-decisions-condemned-tin-2R-decision");
        Control(page, Decision).Change("another tyre of the batch: its bead is whole");
        Visit.State.Stops.ShouldNotContain(s => s.DecisionKey == "condemned-tin@2R");
        Visit.State.On(Leg.LookOver).Findings.ShouldContain(f => f.Rule == CondemnedHit.TinRule && f.Category == Category.Refer);
        page.FindAll(".next a").Select(a => a.TextContent).ShouldNotContain(t => t.StartsWith("Still needed", StringComparison.Ordinal));
    }

    [Fact]
    public void The_register_is_known_while_nothing_is_connected_and_asked_for_again_only_when_it_changed()
    {
        BeforeTheWork(Role.Technician);
        Browser.Condemn("tin", "DOT XX12 ABC 2423");
        var page = Page(Leg.LookOver, "2R");
        Browser.Mood = HostMood.Down;
        Control(page, Tin).Change("DOT XX12 ABC 2423");
        page.FindAll(".wide [role=status]").Count.ShouldBe(1);

        Browser.Mood = HostMood.Answers;
        Visit.NetworkIsBack();
        Visit.NetworkIsBack();
        Browser.Calls.Count(c => c == "GET /api/v1/condemned").ShouldBe(1);
        Browser.Register.Clear();
        Browser.RegisterEdition++;
        Visit.NetworkIsBack();
        Browser.Calls.Count(c => c == "GET /api/v1/condemned").ShouldBe(2);
        page.FindAll(".wide [role=status]").ShouldBeEmpty();
    }

    [Fact]
    public void Our_own_name_of_a_condemned_tyre_leaves_nothing_to_decide()
    {
        BeforeTheWork(Role.Technician);
        Browser.Condemn("tyre", "A-17");
        var page = Page(Leg.LookOver, "2R");
        Control(page, "fitted.2R.tyre.id").Change("a 17");
        page.Find(".wide [role=status]").TextContent.ShouldContain("It may not be fitted again.");
        page.FindAll("#f-work-decisions-condemned-tin-2R-decision").ShouldBeEmpty();
    }

    [Fact]
    public void The_new_tyre_on_a_wheel_is_decided_apart_from_the_one_that_came_on_it()
    {
        BeforeTheWork(Role.Technician, ("work.renewed.2R.tyre.tin", "DOT XX12 ABC 2423"));
        Browser.Condemn("tin", "DOT XX12 ABC 2423");
        Page(Leg.LookOver, "2R");
        Visit.State.Stops.Select(s => s.DecisionKey).OfType<string>().ShouldContain("condemned-tin@2R-renewed");
    }
}
