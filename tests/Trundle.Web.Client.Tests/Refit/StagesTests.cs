using AngleSharp.Dom;
using Bunit;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Refit;

namespace Trundle.Web.Client.Tests.Refit;

public sealed class StagesTests : BayContext
{
    [Fact]
    public void Each_stage_says_its_share_and_what_the_wrench_is_set_to()
    {
        BeforeTheWork(Role.Technician, ("work.steps.1L.by-hand", "all by hand"));
        var page = Page(Leg.Refit, "1L", "stages");
        var rows = page.FindAll(".beside-picture tbody tr").Select(r => r.Children.Select(c => c.TextContent.Trim()).ToList()).ToList();
        rows.ShouldBe([["1", "50 %", "60 N·m (44 lbf·ft)"], ["2", "100 %", "120 N·m (89 lbf·ft)"]]);
        page.Find("h1").TextContent.ShouldStartWith("Front left");
        page.FindAll(".caution").ShouldNotBeEmpty();
        page.Markup.ShouldContain("50 to 100 km");
        page.Find(".read--wide").TextContent.ShouldContain("kN");
    }

    [Fact]
    public void The_sequence_is_walked_fixing_by_fixing_and_an_interruption_begins_at_the_first_stage()
    {
        BeforeTheWork(Role.Technician, ("work.steps.1L.by-hand", "all by hand"));
        var page = Page(Leg.Refit, "1L", "stages");
        var order = WheelFixings.PlanAt(Visit, Trundle.Engine.Vehicles.Position.Read("1L").Value)!.OrderInUse;
        foreach (var fixing in order)
        {
            Next(page).TextContent.ShouldBe($"Stage 1: fixing {fixing} is at 50 %");
            Next(page).Click();
        }

        Next(page).TextContent.ShouldBe($"Stage 2: fixing {order[0]} is at 100 %");
        page.FindAll("button").Single(b => b.TextContent == "Interrupted").Click();
        Next(page).TextContent.ShouldBe($"Stage 1: fixing {order[0]} is at 50 %");
        Visit["work.steps.1L.stages"].ShouldBe("interrupted");
        page.FindAll(".stops").Select(s => s.TextContent).ShouldContain("Slacken all, begin again at the first stage.");

        static IElement Next(IRenderedComponent<BayPage> page) => page.Find(".next button.button--first");
    }

    [Fact]
    public void The_makers_own_order_comes_first()
    {
        BeforeTheWork(Role.Technician, ("work.steps.1L.by-hand", "all by hand"), ("vehicle.axles.0.fixings.order.0", "1"), ("vehicle.axles.0.fixings.order.1", "3"), ("vehicle.axles.0.fixings.order.2", "5"), ("vehicle.axles.0.fixings.order.3", "2"), ("vehicle.axles.0.fixings.order.4", "4"));
        var page = Page(Leg.Refit, "1L", "stages");
        page.Find(".beside-picture").TextContent.ShouldContain("The maker’s own order: 1 – 3 – 5 – 2 – 4");
    }

    [Fact]
    public void An_adapter_changes_the_setting_and_not_the_torque()
    {
        BeforeTheWork(Role.Technician, ("work.steps.1L.by-hand", "all by hand"));
        var page = Page(Leg.Refit, "1L", "stages");
        page.Find("#wrench-length").Change("450");
        page.Find("#wrench-adapter").Change("60 mm");

        // 120·450/(450 + 60) = 105.9 N·m.
        var last = page.FindAll(".beside-picture tbody tr")[1].Children.Select(c => c.TextContent.Trim()).ToList();
        last.ShouldBe(["2", "100 %", "120 N·m (89 lbf·ft)", "106 N·m (78 lbf·ft)"]);
    }

    [Fact]
    public void A_turn_without_an_adapter_is_said_at_the_field()
    {
        BeforeTheWork(Role.Technician, ("work.steps.1L.by-hand", "all by hand"));
        var page = Page(Leg.Refit, "1L", "stages");
        page.Find("#wrench-length").Change("450");
        page.Find("#wrench-turn").Change("90");
        page.Find("#wrench-adapter-problem").TextContent.ShouldContain("A turn needs the adapter’s length.");
        page.Find("#wrench-adapter").GetAttribute("aria-invalid").ShouldBe("true");
    }

    [Fact]
    public void Without_the_makers_torque_there_is_none_and_nothing_is_tightened()
    {
        BeforeTheWork(Role.Technician, ("work.steps.1L.by-hand", "all by hand"), ("vehicle.axles.0.fixings.torque", ""));
        var page = Page(Leg.Refit, "1L", "stages");
        page.Find(".beside-picture tbody").TextContent.ShouldNotContain("N·m");
        page.FindAll("button").ShouldNotContain(b => b.TextContent.Contains("fixing", StringComparison.Ordinal));
        page.Find(".beside-picture .stops a").GetAttribute("href").ShouldEndWith("/arrive/axle-1#f-vehicle-axles-0-fixings-torque");
    }
}
