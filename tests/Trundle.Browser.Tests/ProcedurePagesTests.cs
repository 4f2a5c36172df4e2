namespace Trundle.Browser.Tests;

/// <summary>Steps of the procedure's parts at the wheel, and the office pages on which it is written, at two sizes, in light and dark.</summary>
public sealed class ProcedurePagesTests(Bay bay, Device device) : IClassFixture<Device>
{
    [Fact]
    public async Task The_steps_of_a_circumstance_have_no_fault()
    {
        // A visit of its own: what is entered here holds steps that others look at.
        var visit = await device.CopyAsync(await bay.VisitAsync("Blue hatchback"), "Teal hatchback, DEMO 41");
        await device.SendAsync(visit,
            ("vehicle.airSuspension", "true"), ("fitted.1L.wheel.multiPiece", "true"), ("fitted.1R.sensor", "working"), ("work.steps.vehicle.air-to-lifting", "set for lifting, as its maker says"),
            ("work.jobs.1L", "demount"), ("work.steps.1R.assist-ready", "warm, and the assist is in place"),
            ("work.repairs.1R.asked", "true"), ("work.repairs.1R.place", "tread"), ("work.repairs.1R.size", "9 mm"), ("work.repairs.1R.kind", "patch alone"),
            ("work.steps.1R.repair-inside", "sound inside"));
        device.Whole = true;
        await device.CheckAsync($"/bay/{visit}/offTheCar/1L/licensed-only", "procedure-several-pieces", part: "licensed");
        await device.CheckAsync($"/bay/{visit}/offTheCar/1R/bead-breaking", "procedure-bead-breaking", part: "mounting machine");
        await device.CheckAsync($"/bay/{visit}/offTheCar/1R/repair-probed", "procedure-repair", part: "Probed");
        await device.CheckAsync($"/bay/{visit}/offTheCar/vehicle/lift-points", "procedure-lift", part: "stand on air");
        await device.CheckAsync($"/bay/{visit}/offTheCar/1R/core-out", "procedure-core-out", unfolded: true, part: "Core out");
    }

    [Fact]
    public async Task The_new_valve_and_another_wheel_are_entered_at_the_wheel_without_a_fault()
    {
        var visit = await device.CopyAsync(await bay.VisitAsync("Blue hatchback"), "Amber hatchback, DEMO 42");
        await device.SendAsync(visit,
            ("work.jobs.2L", "demount"), ("fitted.2L.sensor", "none"), ("fitted.2L.valve.kind", "rubber-snap-in"), ("fitted.2L.valve.state", "cracked"),
            ("work.steps.vehicle.chocks", "done"), ("work.steps.vehicle.lift-points", "done"), ("work.steps.vehicle.stands", "stands firm"),
            ("work.steps.2L.core-out", "no more air"), ("work.steps.2L.rim-check", "sound"), ("work.renewed.2L.valve.kind", "clamp-in"), ("work.renewed.2L.valve.rating", "200 kPa"),
            ("work.renewed.2L.tyre.marking", "195/65 R15 91H"), ("work.renewed.2L.wheel.rim", "6J x 15"));
        device.Whole = true;
        await device.CheckAsync($"/bay/{visit}/offTheCar/2L/valve", "procedure-new-valve", part: "The new valve is");
        await device.CheckAsync($"/bay/{visit}/offTheCar/2L/mount", "procedure-another-wheel", unfolded: true, part: "takes this one’s place");
        await device.CheckAsync($"/bay/{visit}/plan/jobs", "plan-renewed", part: "Renewed with the new tyres");
    }

    [Fact]
    public async Task The_office_pages_of_the_procedure_have_no_fault()
    {
        bay.Address.ShouldNotBeNull();
        device.Whole = true;
        await device.CheckAsync("/procedures", "office-procedures", part: "Every step");
        await device.CheckAsync("/procedures/steps/seat", "office-procedure-step", part: "Cautions that stay");
        await device.CheckAsync("/procedures/steps/rim-check/after", "office-procedure-new-step", part: "Its short name");
    }
}
