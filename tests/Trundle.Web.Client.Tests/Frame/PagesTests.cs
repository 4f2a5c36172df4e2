using Bunit;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tests.Frame;

/// <summary>The pages of the legs on real data.</summary>
public sealed class PagesTests : BayContext
{
    [Fact]
    public void Every_leg_and_every_step_of_the_sample_is_drawn()
    {
        Browser.Enter(Sample.Fields(), Sample.Noon);
        foreach (var leg in LegWords.All)
        {
            var page = Page(leg);
            page.Find("h1").TextContent.ShouldNotBeNullOrWhiteSpace();
            page.FindAll("nav.legs li").Count.ShouldBe(7);
        }

        foreach (var step in Visit.State.Legs.SelectMany(l => l.Steps).ToList())
        {
            var page = Page(step.Step.Leg, step.At, step.Step.Id);
            page.Find("h1").TextContent.ShouldContain(step.Step.Title[1..]);
            var cautions = page.FindAll("p.caution").Select(c => c.TextContent).ToList();
            step.Step.Cautions.ShouldAllBe(c => cautions.Contains(c.Text));

            (page.FindAll(".hold").Count > 0).ShouldBe(step.Step.HoldPoint);
        }
    }

    [Fact]
    public void Every_part_of_arrive_look_over_and_plan_is_drawn_on_a_visit_with_nothing_entered()
    {
        foreach (var leg in LegWords.All)
        {
            Page(leg).Find("h1").TextContent.ShouldNotBeNullOrWhiteSpace();
        }

        Page(Leg.Arrive, "axle-1").Find("h1").TextContent.ShouldContain("Arrive");
        Page(Leg.LookOver, "1L").Find("h1").TextContent.ShouldContain("Look over");
        foreach (var place in new[] { "rotation", "pressures", "jobs" })
        {
            Page(Leg.Plan, place).Find("h1").TextContent.ShouldContain("Plan");
        }
    }

    [Fact]
    public void A_wrong_entry_is_said_at_its_field_and_what_was_typed_stays()
    {
        Browser.Enter(Sample.Fields(), Sample.Noon);
        var page = Page(Leg.LookOver, "1L");

        Control(page, "fitted.1L.pressure.value").Change("2,345 kPa");

        var input = Control(page, "fitted.1L.pressure.value");
        input.GetAttribute("value").ShouldBe("2,345 kPa");
        input.GetAttribute("aria-invalid").ShouldBe("true");
        var problem = page.Find($"#{FieldPart.IdOf("fitted.1L.pressure.value")}-problem");
        problem.TextContent.ShouldContain("2,345");
        input.GetAttribute("aria-describedby")!.Split(' ').ShouldContain(problem.Id!);
    }

    [Fact]
    public void A_bare_number_is_recorded_in_the_persons_unit_and_shown_in_both_systems()
    {
        Browser.Units = ["psi", "32nds", "lbf·ft", "oz"];
        Browser.Enter(Sample.Fields("fitted.1L.pressure"), Sample.Noon);
        var page = Page(Leg.LookOver, "1L");

        page.Find($"#{FieldPart.IdOf("fitted.1L.pressure.value")}-unit").TextContent.ShouldBe("psi");
        Control(page, "fitted.1L.pressure.value").Change("33");

        Visit["fitted.1L.pressure.value"].ShouldBe("33 psi");
        Control(page, "fitted.1L.pressure.value").GetAttribute("value").ShouldBe("33");
        page.Find($"#{FieldPart.IdOf("fitted.1L.pressure.value")}-also").TextContent.ShouldContain("228");
    }

    [Fact]
    public void Nobody_enters_before_it_is_known_who_enters()
    {
        Browser.Me = null;
        Page(Leg.Arrive).Find("h1").TextContent.ShouldBe("Who enters?");
    }

    [Fact]
    public void A_vehicle_with_an_open_hold_point_cannot_be_signed_and_the_way_to_it_is_under_the_thumb()
    {
        Browser.Enter(Sample.Fields("work.steps.1R.final-torque", "work.handBack"), Sample.Noon);
        var page = Page(Leg.HandBack);

        page.FindAll("button").ShouldNotContain(b => b.TextContent.Contains("Sign"));
        page.Find(".next a").GetAttribute("href")!.ShouldEndWith("/prove/1R/final-torque");
        page.Find("p.stops").TextContent.ShouldContain("Not finally tightened: front right");
    }

    [Fact]
    public void Final_torque_is_one_touch_a_fixing_in_sequence_until_every_fixing_is_recorded()
    {
        Browser.Enter(Sample.Fields("work.steps.1R.final-torque"), Sample.Noon);
        var page = Page(Leg.Prove, "1R", "final-torque");
        foreach (var fixing in new[] { 1, 3, 5, 2, 4 })
        {
            var button = page.Find(".next .button--first");
            button.TextContent.ShouldContain($"Fixing {fixing} ");
            button.Click();
            Visit[FormattableString.Invariant($"work.steps.1R.final-torque.{fixing}")].ShouldBe("120 N·m");
        }

        Visit.State.NotTightened.ShouldBeEmpty();
        page.Markup.ShouldContain("All 5 fixings are recorded.");
    }

    [Fact]
    public void An_interrupted_wheel_starts_again_at_the_first_stage()
    {
        Browser.Enter(Sample.Fields("work.steps.1R.stages", "work.tightening.1R"), Sample.Noon);
        var page = Page(Leg.Refit, "1R", "stages");
        page.Find(".next .button--first").Click();
        page.Find(".now-fixing").TextContent.Trim().ShouldBe("Stage 1, fixing 3");

        page.FindAll(".next button").Single(b => b.TextContent == "Interrupted").Click();

        page.Find(".now-fixing").TextContent.Trim().ShouldBe("Stage 1, fixing 1");
        Visit.State.On(Leg.Refit).Steps.Single(s => s.At == "1R" && s.Step.Id == "stages").Standing.ShouldBe(StepStanding.Failed);
    }

    [Fact]
    public void Without_the_makers_torque_there_is_no_torque_and_no_button_for_one()
    {
        Browser.Enter(Sample.Fields("vehicle.axles.0.fixings.torque", "work.steps.1R.final-torque"), Sample.Noon);
        var page = Page(Leg.Prove, "1R", "final-torque");
        page.FindAll(".next button").ShouldBeEmpty();
        page.Find(".beside-picture p.stops").TextContent.ShouldContain("there is none");
    }

    [Fact]
    public void The_seating_step_shows_the_lowest_known_limit_and_that_the_makers_gave_none()
    {
        Browser.Enter(Sample.Fields("work.steps.1L.seat"), Sample.Noon);
        var page = Page(Leg.OffTheCar, "1L", "seat");
        page.Find(".ceiling").TextContent.ShouldContain("275");
        page.FindAll("tr.rules").Count.ShouldBe(1);
        page.Markup.ShouldContain("mounting limits were not given");
    }

    [Fact]
    public void The_weights_of_the_sample_are_drawn_with_what_they_leave_and_why()
    {
        Browser.Enter(Sample.Fields("work.steps.1L.weights-on"), Sample.Noon);
        var page = Page(Leg.OffTheCar, "1L", "weights-on");
        page.FindAll(".polar svg").Count.ShouldBe(2);
        page.FindAll(".face svg").Count.ShouldBe(1);
        page.Markup.ShouldContain("35 g at 115°", Case.Sensitive);
        page.Markup.ShouldContain("Why this set");
    }

    [Theory]
    [InlineData("technician", false)]
    [InlineData("trainee", false)]
    [InlineData("instructor", true)]
    [InlineData("owner", true)]
    public void A_dangerous_finding_can_be_let_go_only_by_who_may_and_only_with_the_signed_refusal(string role, bool may)
    {
        Browser.RoleWord = role;
        Browser.Enter(Sample.Fields("work.renewed", "work.handBack", "work.decisions"), Sample.Noon);
        var page = Page(Leg.HandBack);
        var refusals = page.FindAll("input[id$='signedRefusal']");
        (refusals.Count > 0).ShouldBe(may);
        if (!may)
        {
            return;
        }

        var dangerous = Visit.State.LeavingFindings.First(f => f.Category == Engine.Findings.Category.Dangerous);
        var key = VisitFindings.DecisionKey(dangerous);
        Control(page, $"work.decisions.{key}.decision").Change("The customer drives straight home and has it replaced there.");
        VisitFindings.Stops(dangerous, Visit.State.Work).ShouldNotBeNull();
        Control(page, $"work.decisions.{key}.signedRefusal").Change("the customer");
        VisitFindings.Stops(dangerous, Visit.State.Work).ShouldBeNull();
    }

    [Fact]
    public void A_step_that_waits_for_a_hold_point_offers_nothing_to_record()
    {
        Browser.Enter(Sample.Fields("work.steps.1R.stages", "work.steps.1R.final-torque"), Sample.Noon);
        var page = Page(Leg.Prove, "1R", "final-torque");
        page.FindAll(".next button").ShouldBeEmpty();
        page.Find(".next a").GetAttribute("href")!.ShouldEndWith("/refit/1R/stages");
    }

    [Fact]
    public void What_is_not_yet_sent_is_said_in_its_own_line()
    {
        Browser.Enter(Sample.Fields(), Sample.Noon);
        var page = Page(Leg.Arrive);
        page.Find(".unsent").TextContent.ShouldBeEmpty();
        Browser.Mood = HostMood.Down;

        Control(page, "vehicle.complaint").Change("shakes at 70");

        page.Find(".unsent").TextContent.ShouldBe("1 entry on this device not yet sent");
    }
}
