namespace Trundle.Browser.Tests;

/// <summary>The fixings of a wheel under the hand: seats and ring, stages with their torques, an overdue wrench, and the re-torque that is left due.</summary>
public sealed class FixingPagesTests(Bay bay, Device device) : IClassFixture<Device>
{
    [Fact]
    public async Task A_wheel_with_left_hand_threads_a_ring_and_an_overdue_wrench_has_no_fault_on_any_page()
    {
        const string fixings = "vehicle.axles.0.fixings";
        var visit = await bay.VisitAsync("Grey saloon");
        await device.SendAsync(
            visit,
            ("work.steps.1L.stages", ""), ("work.tightening.1L.stage-1", ""), ("work.tightening.1L.stage-2", ""), ($"{fixings}.leftHandSide", "left"), ($"{fixings}.engagement", "7 turns"), ($"{fixings}.leastEngagement", "8 turns"),
            ("fitted.1L.wheel.bore", "63.4 mm"), ("fitted.1L.wheel.hubRing.material", "plastic"), ("fitted.1L.wheel.hubRing.inner", "57.1 mm"), ("fitted.1L.wheel.hubRing.outer", "63.4 mm"),
            ("fitted.1L.fixings.0.count", "4"), ("fitted.1L.fixings.0.kind", "bolt"), ("fitted.1L.fixings.0.seat", "ball"), ("fitted.1L.fixings.1.count", "1"), ("fitted.1L.fixings.1.kind", "bolt"), ("fitted.1L.fixings.1.seat", "cone"),
            ("work.instruments.torqueWrench", "wrench 1"), ("work.instruments.standing.torqueWrench.verdict", "passed"), ("work.instruments.standing.torqueWrench.due", "2026-01-01"),
            ("work.instruments.standing.torqueWrench.least", "70 N·m"), ("work.instruments.standing.torqueWrench.most", "200 N·m"), ("work.instruments.standing.torqueWrench.deviation.0", "-6.5 %"));
        device.Whole = true;
        await device.CheckAsync($"/bay/{visit}/refit/1L/hub-face", "bay-fixings-hub-face");
        await device.CheckAsync($"/bay/{visit}/refit/1L/by-hand", "bay-fixings-by-hand");
        await device.CheckAsync($"/bay/{visit}/refit/1L/stages", "bay-fixings-stages", unfolded: true);
        await device.CheckAsync($"/bay/{visit}/prove/1L/final-torque", "bay-fixings-final-torque");
        await device.CheckAsync($"/bay/{visit}/lookOver/1L", "bay-fixings-wheel", part: "Fixings as they were found");
        await device.CheckAsync($"/bay/{visit}/handBack", "bay-fixings-hand-back");
    }

    [Fact]
    public async Task The_list_of_re_torques_has_no_fault_with_its_form_unfolded()
    {
        bay.Address.ShouldNotBeNull();
        device.Whole = true;
        await device.CheckAsync("/re-torque", "office-re-torque-open", unfolded: true);
    }
}
