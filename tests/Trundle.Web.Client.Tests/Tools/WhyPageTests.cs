using System.Text.Json.Nodes;
using Bunit;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Instruments;

namespace Trundle.Web.Client.Tests.Tools;

/// <summary>Why a wheel does not come to zero: the page beside any visit, and at a wheel.</summary>
public sealed class WhyPageTests : ToolContext
{
    [Fact]
    public void The_page_answers_as_the_command_does_for_the_same_file()
    {
        var page = Tool("why", "balance-why-worked.json");
        Form(page).Body!.ToJsonString().ShouldBe(Command("balance why", "balance-why-worked.json").Body.ToJsonString());
        page.Find(".cause--first").TextContent.ShouldContain("Rim width entered wrongly");
        page.Find(".cause--first").TextContent.ShouldContain("7 in is entered");
        page.Find(".do-next").TextContent.ShouldContain("rim width");
    }

    [Fact]
    public void It_is_entered_by_hand_field_by_field_and_a_reload_loses_nothing()
    {
        var page = Tool("why");
        page.FindAll(".do-next").ShouldBeEmpty();
        page.Find(".next .button--first").TextContent.ShouldBe("Still needed: the settings");
        Control(page, "entered.rimDistance").Change("60");
        Control(page, "entered.rimDiameter").Change("16");
        Control(page, "entered.rimWidth").Change("7");
        Control(page, "machine.repeatability").Change("1");
        page.Find("[role=status]").TextContent.ShouldBe("Still needed: what the first spin showed.");
        Control(page, "spins.0.display.inner.mass").Change("35");
        Control(page, "spins.0.display.inner.angle").Change("90");
        Control(page, "spins.0.display.outer.mass").Change("70");
        Control(page, "spins.0.display.outer.angle").Change("270");
        page.FindAll("button").Single(b => b.TextContent == "Fitted just as shown").Click();
        page.FindAll(".weight-row").Count.ShouldBe(2);
        page.Find(".next .button--first").Click();
        Browser.Settled.ShouldBe("f-spins-1-display-inner-mass");
        Control(page, "spins.1.display.inner.mass").Change("10");
        Control(page, "spins.1.display.inner.angle").Change("90");
        Control(page, "spins.1.display.outer.mass").Change("10");
        Control(page, "spins.1.display.outer.angle").Change("270");
        page.Find(".cause--first").TextContent.ShouldContain("Rim width entered wrongly");

        var again = Tool("why");
        again.Find(".cause--first").TextContent.ShouldContain("Rim width entered wrongly");
        again.FindAll(".weight-row").Count.ShouldBe(2);
    }

    [Fact]
    public void A_wrong_entry_is_said_at_its_field_with_what_was_typed_kept()
    {
        var page = Tool("why", "balance-why-worked.json");
        Control(page, "spins.1.display.outer.mass").Change("10 kPa");
        Control(page, "spins.1.display.outer.mass").GetAttribute("value").ShouldBe("10 kPa");
        page.FindAll(".problem").ShouldHaveSingleItem().TextContent.ShouldContain("kPa");
        page.FindAll(".do-next").ShouldBeEmpty();
        page.Find(".next .button--first").Click();
        Browser.Settled.ShouldBe("f-spins-1-display-outer-mass");
    }

    [Fact]
    public void A_weight_or_a_spin_is_taken_out_and_what_follows_closes_up()
    {
        var page = Tool("why", "balance-why-worked.json");
        page.FindAll("button").First(b => b.TextContent.StartsWith("Take weight 1 out", StringComparison.Ordinal)).Click();
        var form = Form(page);
        form["spins.0.fittedAfter.0.plane"].ShouldBe("outer");
        form["spins.0.fittedAfter.0.mass"].ShouldBe("70 g");
        form["spins.0.fittedAfter.1.mass"].ShouldBeNull();
        page.FindAll("button").First(b => b.TextContent == "Take spin 1 out").Click();
        form["spins.0.display.inner.mass"].ShouldBe("10 g");
        form.Count("spins").ShouldBe(1);
    }

    [Fact]
    public void At_a_wheel_the_balancers_repeat_spin_study_tells_its_repeatability_and_may_be_overruled()
    {
        Browser.Instruments = new JsonArray(InstrumentJson.Of(new Instrument(Guid.NewGuid(), InstrumentKind.Balancer, "balancer by the window", null, new DateOnly(2025, 1, 7), null, null)
        {
            Repeatability = new InstrumentRepeatability(new DateOnly(2026, 2, 11), Mass.FromGrams(0.832), 10),
        }));
        BeforeTheSignature(Role.Technician, ("fitted.1R.balance.balancer.instrument", "balancer by the window"));
        var page = AtWheel("1R", "why");
        Form(page)["machine.repeatability"].ShouldBe("0.83 g");
        page.Find("#f-machine").TextContent.ShouldContain("The repeat-spin study of balancer by the window of 11 Feb 2026, 10 spins, found 0.83 g: it stands above, and may be changed.");

        Control(page, "machine.repeatability").Change("1.5");
        Visit["fitted.1R.why.machine.repeatability"].ShouldBe("1.5 g");
        page.FindAll("button").Single(b => b.TextContent == "Take 0.83 g").Click();
        Visit["fitted.1R.why.machine.repeatability"].ShouldBe("0.83 g");

        // A balancer that the register does not know tells nothing.
        Visit.EnterAsync(("fitted.1R.balance.balancer.instrument", "another"));
        page.Find("#f-machine").TextContent.ShouldNotContain("repeat-spin study");
    }

    [Fact]
    public void At_a_wheel_it_begins_with_what_the_visit_tells_and_its_entries_go_into_the_visit()
    {
        BeforeTheSignature(Role.Technician, ("fitted.1R.balance.settings.rimDistance", "64 mm"), ("fitted.1R.balance.settings.rimDiameter", "15 in"), ("fitted.1R.balance.settings.rimWidth", "6 in"));
        var page = AtWheel("1R", "why");
        var form = Form(page);
        form["entered.rimDiameter"].ShouldBe("15 in");

        // The sample's strip sits at 165 mm, 110 mm from the inner clip: 25.5 mm inside half the rim diameter, 42.4 mm inside the outer flange.
        form["balancer.weightPlaces.outerAdhesive.radial"].ShouldBe("-25.5 mm");
        form["balancer.weightPlaces.outerAdhesive.axial"].ShouldBe("-42.4 mm");
        form["spins.0.display.inner.mass"].ShouldBe(Visit["fitted.1R.balance.readings.inner.mass"]);
        form.Fields.Under("spins.0.fittedAfter").ShouldNotBeEmpty();
        form["spins.1.display.inner.mass"].ShouldBe(Visit["work.steps.1R.check-spin.inner.mass"]);
        Visit.Fields.Under("fitted.1R.why").ShouldBeEmpty();

        Control(page, "machine.repeatability").Change("1");
        Visit["fitted.1R.why.machine.repeatability"].ShouldBe("1 g");
        Visit["fitted.1R.why.entered.rimDiameter"].ShouldBe("15 in");
        Visit.Reading.Whole.ShouldBeTrue(string.Join("; ", Visit.Reading.Problems));
        page.Find(".do-next").TextContent.Length.ShouldBeGreaterThan(20);

        // The visit's own file holds the part, and the check of the visit answers it as the page does.
        var told = Trundle.Visits.Operations.VisitCheckOperation.Run(Visit.Fields.Assemble().Root).Value.Body["legs"]!["offTheCar"]!["why"]!["1R"]!;
        told.ToJsonString().ShouldBe(Form(page).Body!.ToJsonString());
    }
}
