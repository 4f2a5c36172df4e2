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
    public async Task The_office_pages_of_the_procedure_have_no_fault()
    {
        bay.Address.ShouldNotBeNull();
        device.Whole = true;
        await device.CheckAsync("/procedures", "office-procedures", part: "Every step");
        await device.CheckAsync("/procedures/steps/seat", "office-procedure-step", part: "Cautions that stay");
        await device.CheckAsync("/procedures/steps/rim-check/after", "office-procedure-new-step", part: "Its short name");
    }
}
