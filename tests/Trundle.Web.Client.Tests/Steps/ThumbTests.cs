using Bunit;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Tests.Steps;

/// <summary>On every wheel page the bar at the thumb names what this wheel still needs, and the next wheel where it needs nothing.</summary>
public sealed class ThumbTests : BayContext
{
    private string First(IRenderedComponent<BayPage> page) => page.Find(".next .button--first").TextContent.Trim();

    [Theory]
    [InlineData("fitted.2L.pressure.value", "pressure", "f-fitted-2L-pressure-value")]
    [InlineData("fitted.2L.tyre.marking", "marking", "f-fitted-2L-tyre-marking")]
    [InlineData("fitted.2L.tread.centre.0", "depths", "f-fitted-2L-tread-inner-0")]
    public void The_look_over_names_what_is_missing_and_a_touch_puts_the_hand_on_it(string taken, string what, string control)
    {
        BeforeTheWork(Role.Technician, [(taken, ""), .. taken.Contains("tread", StringComparison.Ordinal) ? [("fitted.2L.tread.centre.1", ""), ("fitted.2L.tread.centre.2", "")] : Array.Empty<(string, string)>()]);
        var page = Page(Leg.LookOver, "2L");
        First(page).ShouldBe($"Still needed: {what}");
        page.Find(".next .button--first").Click();
        Browser.Settled.ShouldBe(control);
    }

    [Fact]
    public void What_could_not_be_read_is_still_needed_too()
    {
        BeforeTheWork(Role.Technician, ("fitted.2L.wheel.rim", "6 by fifteen"));
        First(Page(Leg.LookOver, "2L")).ShouldBe("Still needed: rim stamp put right");
    }

    [Fact]
    public void A_wheel_that_needs_nothing_names_the_next_that_does()
    {
        BeforeTheWork(Role.Technician, ("fitted.2L.pressure.value", ""));
        First(Page(Leg.LookOver, "1L")).ShouldBe("Rear left");
    }

    [Theory]
    [InlineData(Leg.OffTheCar, "1L", "seat", "Still needed: what the gauge shows")]
    [InlineData(Leg.OffTheCar, "1L", "check-spin", "Still needed: the display of both planes")]
    [InlineData(Leg.Prove, "1L", "pressure-set", "Still needed: what the gauge shows")]
    public void A_step_that_is_typed_names_what_it_waits_for(Leg leg, string at, string step, string words)
    {
        BeforeTheSignature(Role.Technician, step == "check-spin"
            ? [.. new[] { "inner", "outer" }.SelectMany(p => new[] { ($"work.steps.{at}.{step}.{p}.mass", ""), ($"work.steps.{at}.{step}.{p}.angle", "") })]
            : [($"work.steps.{at}.{step}", "")]);
        First(Page(leg, at, step)).ShouldBe(words);
    }

    [Fact]
    public void The_first_spin_names_the_parts_of_the_balance_that_are_missing()
    {
        BeforeTheSignature(Role.Technician, ("work.steps.1R.first-spin", ""), ("fitted.1R.balance.planes.outer.kind", ""), ("fitted.1R.balance.readings.inner.mass", ""));
        var page = Page(Leg.OffTheCar, "1R", "first-spin");
        First(page).ShouldStartWith("Still needed: outer plane");
        First(page).ShouldEndWith("what the balancer shows");
        page.FindAll(".next button").Select(b => b.TextContent.Trim()).ShouldContain("Done: first spin");
    }

    [Theory]
    [InlineData("vehicle.axles.0.fixings.torque", Leg.Refit, "stages", "the vehicle maker’s torque")]
    [InlineData("vehicle.axles.0.fixings.torque", Leg.Prove, "final-torque", "the vehicle maker’s torque")]
    [InlineData("vehicle.axles.0.fixings.count", Leg.Refit, "stages", "how many fixings the wheel has")]
    public void Without_the_makers_figures_the_bar_leads_to_where_they_are_entered(string field, Leg leg, string step, string what)
    {
        BeforeTheSignature(Role.Technician, [(field, ""), ("work.steps.1L.stages", ""), .. Enumerable.Range(1, 5).Select(n => ($"work.steps.1L.final-torque.{n}", ""))]);
        if (leg == Leg.Prove)
        {
            Browser.Enter([("work.steps.1L.stages", "all stages in sequence"), ("work.tightening.1L.stage-1", "1, 3, 5, 2, 4 at 50 %"), ("work.tightening.1L.stage-2", "1, 3, 5, 2, 4 at 100 %")], Sample.Noon.AddMinutes(2));
        }

        var page = Page(leg, "1L", step);
        First(page).ShouldBe($"Still needed: {what}");
        page.Find(".next .button--first").GetAttribute("href").ShouldEndWith($"/arrive/axle-1#f-{field.Replace('.', '-')}");
    }

    [Fact]
    public void A_step_left_behind_at_the_wheel_comes_before_the_next_wheel()
    {
        BeforeTheSignature(Role.Technician, ("work.steps.1L.covers-off", ""), ("work.steps.1R.covers-off", ""));
        First(Page(Leg.OffTheCar, "1L", "slacken")).ShouldBe(Procedure.BuiltIn.Step("covers-off").Title);
    }
}
