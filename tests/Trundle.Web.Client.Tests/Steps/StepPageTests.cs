using Bunit;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Tests.Steps;

/// <summary>What a step's page says: the machine maker's word first, what to do, what can hurt, why, with what; and what stops the hand there.</summary>
public sealed class StepPageTests : BayContext
{
    private static int At(IRenderedComponent<BayPage> page, string words)
    {
        var at = page.Markup.IndexOf(words, StringComparison.Ordinal);
        at.ShouldBeGreaterThan(0, words);
        return at;
    }

    [Fact]
    public void The_machine_makers_own_instruction_comes_first_at_the_mounting_machine()
    {
        BeforeTheSignature(Role.Technician, ("procedure.machines.0.name", "the machine by the door"), ("procedure.machines.0.instruction", "its book, page 12"));
        foreach (var id in new[] { "bead-breaking", "clamp", "demount", "mount", "clamps-released", "seat" })
        {
            var page = Page(Leg.OffTheCar, "1L", id);
            var step = Procedure.BuiltIn.Step(id);
            page.Find(".machine").TextContent.ShouldContain("the machine by the door: its book, page 12");
            new[] { At(page, "its book, page 12"), At(page, "step-text"), At(page, $"caution\">{step.Cautions[0].Text}"), At(page, "step-why") }.ShouldBeInOrder(SortDirection.Ascending);
        }

        Page(Leg.OffTheCar, "1L", "core-out").FindAll(".machine").ShouldBeEmpty();
    }

    [Fact]
    public void Where_no_machine_is_entered_the_page_sends_to_the_machine()
    {
        BeforeTheSignature(Role.Technician);
        Page(Leg.OffTheCar, "1L", "demount").Find(".machine").TextContent.ShouldContain("None is entered for this workshop");
    }

    [Fact]
    public void Why_and_tools_are_said()
    {
        BeforeTheSignature(Role.Technician);
        var told = Page(Leg.Refit, "1L", "hub-face").Find(".step-why").TextContent;
        told.ShouldContain(Procedure.BuiltIn.Step("hub-face").Why!);
        told.ShouldContain("wire brush, wipes");
    }

    [Fact]
    public void A_rim_of_several_pieces_stops_the_wheel_and_asks_for_the_licensed_shops_paper()
    {
        BeforeTheSignature(Role.Owner, ("fitted.1L.wheel.multiPiece", "true"));
        var page = Page(Leg.OffTheCar, "1L", "licensed-only");
        page.Find(".stops").TextContent.ShouldContain("nothing is demounted, mounted or inflated here");
        page.Find(".hold").ShouldNotBeNull();
        Control(page, "work.licensed.1L.by").ShouldNotBeNull();
        page.FindAll(".next .button").ShouldHaveSingleItem().TextContent.ShouldBe("Still needed: what the licensed shop did", "no further step of the wheel is offered");
        var seat = Page(Leg.OffTheCar, "1L", "seat");
        seat.FindAll("input").ShouldBeEmpty("nothing is entered at a step that waits");
    }

    [Fact]
    public void A_refused_repair_says_why_where_it_is_entered()
    {
        BeforeTheSignature(Role.Technician, ("work.repairs.1L.asked", "true"), ("work.steps.1L.repair-inside", "sound inside"), ("work.repairs.1L.place", "tread"), ("work.repairs.1L.size", "9 mm"), ("work.repairs.1L.kind", "patch alone"));
        var page = Page(Leg.OffTheCar, "1L", "repair-probed");
        foreach (var key in new[] { "place", "size", "fromMiddle", "lean", "around", "kind", "material" })
        {
            Control(page, $"work.repairs.1L.{key}").ShouldNotBeNull(key);
        }

        // The sample's wheel has a new tyre on it: its past is that tyre's.
        Control(page, "work.renewed.1L.tyre.repaired").ShouldNotBeNull();

        var said = page.Find(".stops").TextContent;
        said.ShouldContain("Replace this tyre");
        said.ShouldContain("A patch alone is no repair");
    }

    [Fact]
    public void The_new_valve_is_entered_at_its_step_and_held_against_what_it_must_bear()
    {
        BeforeTheSignature(Role.Technician, ("fitted.1L.valve.kind", "rubber-snap-in"), ("fitted.1L.valve.state", "cracked"));
        var page = Page(Leg.OffTheCar, "1L", "valve");
        page.Find(".note").TextContent.ShouldBe("The old one: rubber snap-in, cracked.");
        page.FindAll(".stops").ShouldBeEmpty();
        Control(page, "work.renewed.1L.valve.kind").QuerySelectorAll("input").Single(i => i.GetAttribute("value") == "clamp-in").Change(true);
        Control(page, "work.renewed.1L.valve.rating").Change("200");
        Visit.State.Work.RenewedValves.Values.ShouldHaveSingleItem().Rating!.Value.Kilopascals.ShouldBe(200, 1e-9);

        // The placard's laden pressure is 250 kPa.
        page.Find(".stops").TextContent.ShouldContain("250 kPa asked of the valve, limit 200 kPa");
        Control(page, "work.renewed.1L.valve.rating").Change("1400");
        page.FindAll(".stops").ShouldBeEmpty();
    }

    [Theory]
    [InlineData("rim-check")]
    [InlineData("mount")]
    public void Another_wheel_is_entered_where_the_hand_has_it(string step)
    {
        BeforeTheSignature(Role.Technician, ("fitted.1L.wheel.id", "W-17"), ("fitted.1L.wheel.seatState", "worn"));
        var page = Page(Leg.OffTheCar, "1L", step);
        page.FindAll("button").Single(b => b.TextContent == "Stamped as the one that comes off").Click();
        Visit["work.renewed.1L.wheel.rim"].ShouldBe(Visit["fitted.1L.wheel.rim"]);
        Visit["work.renewed.1L.wheel.id"].ShouldBeNull("that is the old one's name");
        Visit["work.renewed.1L.wheel.seatState"].ShouldBeNull("that was found on the old one");
        Control(page, "work.renewed.1L.wheel.rim").Change("6.5J x 15");
        Visit.State.Work.RenewedWheels.Values.ShouldHaveSingleItem().Rim!.Width.Inches.ShouldBe(6.5, 1e-9);
        page.FindAll("button").Single(b => b.TextContent == "No other wheel here").Click();
        Visit.Fields.Under("work.renewed.1L.wheel").ShouldBeEmpty();
        Visit.Fields.Under("work.renewed.1L.tyre").ShouldNotBeEmpty();
    }

    [Fact]
    public void Another_wheel_of_another_diameter_than_the_tyre_stops_the_hand()
    {
        BeforeTheSignature(Role.Technician, ("work.renewed.1L.wheel.rim", "6J x 16"));
        var page = Page(Leg.OffTheCar, "1L", "rim-check");
        page.FindAll(".read")[^1].TextContent.ShouldContain("stamped 6J × 16: diameter 16 in");
        page.Find(".stops").TextContent.ShouldContain("not of one diameter");
        Visit.State.On(Leg.OffTheCar).Steps.Single(s => s.At == "1L" && s.Step.Id == "mount").Standing.ShouldBe(StepStanding.Failed);
    }

    [Fact]
    public void What_is_not_known_of_a_wheel_is_asked_where_the_core_comes_out()
    {
        BeforeTheSignature(Role.Technician);
        var page = Page(Leg.OffTheCar, "1L", "core-out");
        foreach (var field in new[] { "fitted.1L.sensor", "fitted.1L.wheel.multiPiece", "fitted.1L.wheel.reversed", "fitted.1L.mass" })
        {
            Control(page, field).ShouldNotBeNull(field);
        }

        Control(Page(Leg.OffTheCar, "vehicle", "lift-points"), "vehicle.airSuspension").ShouldNotBeNull();
    }
}
