using Bunit;
using Trundle.Engine.Vehicles;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Refit;

namespace Trundle.Web.Client.Tests.Prove;

public sealed class ProveTests : BayContext
{
    [Fact]
    public void Wheels_that_are_not_finally_tightened_are_named_at_the_top()
    {
        BeforeTheWork(Role.Technician, ("work.steps.1L.hub-face", "done"), ("work.steps.1L.by-hand", "all by hand"), ("work.steps.1L.stages", "all stages in sequence"), ("work.tightening.1L.stage-1", "1, 3, 5, 2, 4 at 50 %"), ("work.tightening.1L.stage-2", "1, 3, 5, 2, 4 at 100 %"));
        var page = Page(Leg.Prove);
        var text = page.Find(".stops").TextContent;
        text.ShouldContain("Not finally tightened");
        foreach (var name in (string[])["front left", "front right", "rear left", "rear right"])
        {
            text.ShouldContain(name);
        }
    }

    [Fact]
    public void One_touch_records_the_makers_torque_as_typed_for_the_fixing_whose_turn_it_is()
    {
        BeforeTheWork(Role.Technician, ("work.steps.1L.hub-face", "done"), ("work.steps.1L.by-hand", "all by hand"), ("work.steps.1L.stages", "all stages in sequence"), ("work.tightening.1L.stage-1", "1, 3, 5, 2, 4 at 50 %"), ("work.tightening.1L.stage-2", "1, 3, 5, 2, 4 at 100 %"), ("work.steps.vehicle.lowered", "done"), ("vehicle.axles.0.fixings.torque", "90 lbf·ft"));
        var page = Page(Leg.Prove, "1L", "final-torque");
        var order = WheelFixings.PlanAt(Visit, Position.Read("1L").Value)!.OrderInUse;
        page.Find(".next button.button--first").Click();
        Visit[$"work.steps.1L.final-torque.{order[0]}"].ShouldBe("90 lbf·ft");
        page.Find(".next button.button--first").TextContent.ShouldStartWith($"Fixing {order[1]} clicked");
        while (page.FindAll(".next button.button--first") is [var next])
        {
            next.Click();
        }

        Visit.State.NotTightened.Select(p => p.ToString()).ShouldBe(["1R", "2L", "2R"]);
        page.Markup.ShouldContain("All 5 fixings are recorded.");
    }

    [Fact]
    public void Final_torque_waits_until_the_vehicle_stands_on_its_wheels()
    {
        BeforeTheWork(Role.Technician, ("work.steps.1L.hub-face", "done"), ("work.steps.1L.by-hand", "all by hand"), ("work.steps.1L.stages", "all stages in sequence"), ("work.tightening.1L.stage-1", "1, 3, 5, 2, 4 at 50 %"), ("work.tightening.1L.stage-2", "1, 3, 5, 2, 4 at 100 %"));
        var page = Page(Leg.Prove, "1L", "final-torque");
        page.FindAll("button").ShouldNotContain(b => b.TextContent.Contains("clicked", StringComparison.Ordinal));
        page.Markup.ShouldContain("Lowered");
    }

    [Fact]
    public void Another_value_may_be_typed_and_one_that_is_off_is_said()
    {
        BeforeTheWork(Role.Technician, ("work.steps.1L.hub-face", "done"), ("work.steps.1L.by-hand", "all by hand"), ("work.steps.1L.stages", "all stages in sequence"), ("work.tightening.1L.stage-1", "1, 3, 5, 2, 4 at 50 %"), ("work.tightening.1L.stage-2", "1, 3, 5, 2, 4 at 100 %"), ("work.steps.vehicle.lowered", "done"));
        var page = Page(Leg.Prove, "1L", "final-torque");
        page.Find("#f-work-steps-1L-final-torque-3").Change("150");
        Visit["work.steps.1L.final-torque.3"].ShouldBe("150 N·m");
        page.FindAll(".stops").Select(s => s.TextContent).ShouldContain(t => t.StartsWith("Fixing 3 (150 N·m) is more than", StringComparison.Ordinal));
    }

    [Fact]
    public void Without_the_makers_torque_no_fixing_can_be_called_tight()
    {
        BeforeTheWork(Role.Technician, ("work.steps.1L.hub-face", "done"), ("work.steps.1L.by-hand", "all by hand"), ("work.steps.1L.stages", "all stages in sequence"), ("work.tightening.1L.stage-1", "1, 3, 5, 2, 4 at 50 %"), ("work.tightening.1L.stage-2", "1, 3, 5, 2, 4 at 100 %"), ("work.steps.vehicle.lowered", "done"), ("vehicle.axles.0.fixings.torque", ""));
        var page = Page(Leg.Prove, "1L", "final-torque");
        page.FindAll("button").ShouldNotContain(b => b.TextContent.Contains("clicked", StringComparison.Ordinal));
        page.FindAll(".torques").ShouldBeEmpty();
        page.Find(".beside-picture .stops").TextContent.ShouldContain("there is none");
    }

    [Fact]
    public void A_pressure_as_it_leaves_is_held_against_the_planned_one()
    {
        BeforeTheWork(Role.Technician,
        [
            ("work.steps.2L.hub-face", "done"), ("work.steps.2L.by-hand", "all by hand"), ("work.steps.2L.stages", "all stages in sequence"), ("work.tightening.2L.stage-1", "1, 3, 5, 2, 4 at 50 %"), ("work.tightening.2L.stage-2", "1, 3, 5, 2, 4 at 100 %"), ("work.steps.vehicle.lowered", "done"),
            .. Enumerable.Range(1, 5).Select(n => ($"work.steps.2L.final-torque.{n}", "120 N·m")),
        ]);
        var page = Page(Leg.Prove, "2L", "pressure-set");
        page.Find(".lead.step-text ~ .lead").TextContent.ShouldContain("230 kPa (33.4 psi)");
        page.Find("#f-work-steps-2L-pressure-set").Change("215");
        page.FindAll("p[role=status] strong").Select(s => s.TextContent).ShouldContain("215 kPa (31.2 psi)");
        page.Markup.ShouldContain("planned 230 kPa (33.4 psi) cold");
        page.Markup.ShouldContain("The low-pressure warning must have come at");
    }
}
