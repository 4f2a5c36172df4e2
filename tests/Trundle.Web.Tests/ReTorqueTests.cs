using System.Net;
using System.Text.Json.Nodes;
using Trundle.Visits.Bay;

namespace Trundle.Web.Tests;

/// <summary>A re-torque that a visit leaves due: listed, asked about, recorded, and seen on the next visit of the same vehicle.</summary>
public sealed class ReTorqueTests : IAsyncLifetime
{
    private readonly StandingClock _clock = new(new DateTimeOffset(2026, 3, 14, 17, 0, 0, TimeSpan.Zero));
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync() => _bay = await RunningBay.StartAsync(_clock);

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    private Guid HandedBack(string name = "Blue hatchback, DEMO 07", string? vin = null) =>
        HandedBackVisit.In(_bay.Store, _clock.Now, vin is null ? [("vehicle.name", name)] : [("vehicle.name", name), ("vehicle.vin", vin)]);

    [Fact]
    public async Task It_is_listed_asked_about_on_its_day_and_recorded_with_the_torques_found()
    {
        var id = HandedBack();
        var (_, list) = await _bay.GetAsync("/re-torque");
        list.ShouldContain("Between 48250 km and 48300 km");
        list.ShouldContain("ask from 28 Mar 2026");
        (await _bay.GetAsync("/")).Text.ShouldNotContain("to ask about");

        _clock.Now = _clock.Now.AddDays(14);
        (await _bay.GetAsync("/")).Text.ShouldContain("One re-torque");
        (await _bay.GetAsync("/re-torque")).Text.ShouldContain("not recorded: ask");

        var nobody = await _bay.SendFormAsync("/re-torque", $"/re-torque/{id:D}", ("on", "2026-03-20"), ("result", "none turned"));
        nobody.Status.ShouldBe(HttpStatusCode.BadRequest);
        nobody.Text.ShouldContain("choose who enters");

        await _bay.EnterAsAsync("T4");
        var wrong = await _bay.SendFormAsync("/re-torque", $"/re-torque/{id:D}", ("on", "2026-03-20"), ("result", ""));
        wrong.Status.ShouldBe(HttpStatusCode.BadRequest);
        wrong.Text.ShouldContain("none turned or some turned");
        _bay.Store.Visits.Find(id)!.Fields["work.reTorque.on"].ShouldBeNull();

        var kept = await _bay.SendFormAsync("/re-torque", $"/re-torque/{id:D}", ("on", "2026-03-20"), ("odometer", "48290"), ("result", "none turned"), ("torques.1L", "118 120 119 121 117"), ("torques.1R", ""));
        kept.Status.ShouldBe(HttpStatusCode.Redirect, kept.Text);
        var fields = _bay.Store.Visits.Find(id)!.Fields;
        fields["work.reTorque.odometer"].ShouldBe("48290 km");
        fields["work.reTorque.torques.1L.3"].ShouldBe("119 N·m");
        fields.EntryOf("work.reTorque.on")!.By.ShouldBe("T4");
        _bay.Store.Visits.Find(id)!.Heading.HandedBackAt.ShouldNotBeNull("recording it afterwards takes no signature back");
        (await _bay.GetAsync("/")).Text.ShouldNotContain("to ask about");
        (await _bay.GetAsync("/re-torque")).Text.ShouldContain("done on 20 Mar 2026");
    }

    [Fact]
    public async Task A_later_visit_of_the_same_vehicle_tells_whether_it_was_done()
    {
        var first = HandedBack(vin: "1M8GDM9AXKP042788");
        _clock.Now = _clock.Now.AddDays(30);
        var next = Open("Another name by now", "1M8GDM9AXKP042788");
        var (_, body) = await _bay.JsonAsync($"/api/v1/visits/{next:D}");
        body["reTorqueBefore"]!["visit"]!.GetValue<string>().ShouldBe(_bay.Store.Visits.Find(first)!.Heading.Number);
        body["reTorqueBefore"]!["open"]!.GetValue<bool>().ShouldBeTrue();
        body["reTorqueBefore"]!["toOdometerKilometres"]!.GetValue<double>().ShouldBe(48300, 1e-6);

        await _bay.EnterAsAsync("T1");
        (await _bay.SendFormAsync("/re-torque", $"/re-torque/{first:D}", ("on", "2026-03-18"), ("result", "none turned"))).Status.ShouldBe(HttpStatusCode.Redirect);
        var after = (await _bay.JsonAsync($"/api/v1/visits/{next:D}")).Body["reTorqueBefore"]!;
        after["open"]!.GetValue<bool>().ShouldBeFalse();
        after["doneOn"]!.GetValue<string>().ShouldBe("2026-03-18");

        // The same name on another VIN is another vehicle; without one the name tells.
        (await _bay.JsonAsync($"/api/v1/visits/{Open("Blue hatchback, DEMO 07", "1M8GDM9AXKP042789"):D}")).Body.ContainsKey("reTorqueBefore").ShouldBeFalse();
        (await _bay.JsonAsync($"/api/v1/visits/{Open("Blue hatchback, DEMO 07", null):D}")).Body.ContainsKey("reTorqueBefore").ShouldBeTrue();
        (await _bay.JsonAsync($"/api/v1/visits/{Open("Red van", null):D}")).Body.ContainsKey("reTorqueBefore").ShouldBeFalse();
    }

    [Fact]
    public async Task A_wrench_counts_its_clicks_on_visits_since_its_last_check()
    {
        var wrench = Guid.NewGuid();
        var by = new Store.Recorder("T1", Role.Technician, _clock.Now);
        _bay.Store.Instruments.Add(wrench, Trundle.Visits.Instruments.InstrumentKind.TorqueWrench, new Store.InstrumentDetails("wrench 9", null, new DateOnly(2026, 3, 1), null), by).IsRead.ShouldBeTrue();
        var visit = HandedBack();
        Entry Typed(string field, string typed) => new(Guid.NewGuid(), field, typed, "T1", Role.Technician, _clock.Now);
        _bay.Store.Visits.ClicksOf("wrench 9", _clock.Now.AddDays(-1)).ShouldBe(0);
        _bay.Store.Visits.Append(visit, [Typed("work.instruments.torqueWrench", "wrench 9"), Typed("work.tightening.1L.torques.stage-1.1", "60 N·m"), Typed("work.tightening.1L.torques.stage-1.wrench", "wrench 9")], _clock.Now).Value.Refused.ShouldBeEmpty();

        // Twenty fixings finally tightened, and one at a stage.
        _bay.Store.Visits.ClicksOf("wrench 9", _clock.Now.AddDays(-1)).ShouldBe(21);
        _bay.Store.Visits.ClicksOf("wrench 9", _clock.Now.AddDays(1)).ShouldBe(0);
        (await _bay.GetAsync($"/instruments/{wrench:D}")).Text.ShouldContain("21 recorded on visits, of 5000");
    }

    [Fact]
    public async Task A_vehicle_that_is_still_in_the_workshop_has_none_recorded()
    {
        await _bay.EnterAsAsync("T1");
        HandedBack();
        var here = Open("Red van", null);
        (await _bay.SendFormAsync("/re-torque", $"/re-torque/{here:D}", ("on", "2026-03-14"), ("result", "none turned"))).Status.ShouldBe(HttpStatusCode.BadRequest);
        (await _bay.SendFormAsync("/re-torque", $"/re-torque/{Guid.NewGuid():D}", ("on", "2026-03-14"), ("result", "none turned"))).Status.ShouldBe(HttpStatusCode.NotFound);
        _bay.Store.Visits.Find(here)!.Fields.Under("work.reTorque").ShouldBeEmpty();
    }

    private Guid Open(string name, string? vin)
    {
        var id = Guid.CreateVersion7();
        _bay.Store.Visits.Open(id, "T1", _clock.Now, DateOnly.FromDateTime(_clock.Now.DateTime));
        (string, string)[] fields = vin is null ? [("vehicle.name", name)] : [("vehicle.name", name), ("vehicle.vin", vin)];
        _bay.Store.Visits.Append(id, [.. fields.Select(f => new Entry(Guid.NewGuid(), f.Item1, f.Item2, "T1", Role.Technician, _clock.Now))], _clock.Now).Value.Refused.ShouldBeEmpty();
        return id;
    }

    /// <summary>The sample visit taken apart into fields.</summary>
}
