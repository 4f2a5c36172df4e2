using Ical.Net;
using Trundle.Visits.Bay;

namespace Trundle.Web.Tests;

/// <summary>Days to keep in mind as a calendar file, read back by a reader of RFC 5545; nothing is told that nobody knows.</summary>
public sealed class CalendarTests : IAsyncLifetime
{
    private readonly StandingClock _clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync() => _bay = await RunningBay.StartAsync(_clock);

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    private static readonly (string Field, string Typed)[] Van = [("vehicle.name", "Grey, \"long\"; van"), ("vehicle.vin", "1M8GDM9AXKP042788")];

    private static Calendar Read(string text)
    {
        text.ShouldStartWith("BEGIN:VCALENDAR\r\n");
        text.Split("\r\n").ShouldAllBe(line => System.Text.Encoding.UTF8.GetByteCount(line) <= 75, "RFC 5545, 3.1: a line has at most 75 octets");
        return Calendar.Load(text)!;
    }

    [Fact]
    public async Task The_workshops_file_has_each_open_re_torque_on_the_day_to_ask()
    {
        HandedBackVisit.In(_bay.Store, _clock.Now);
        var (_, text) = await _bay.GetAsync("/calendar.ics");
        var events = Read(text).Events;
        var due = _bay.Store.Visits.TightenedSince(_clock.Now.AddDays(-60)).Select(v => (v.Heading.Id, Due: ReTorqueDue.Of(VisitStanding.Of(v.Fields, v.Heading.Id, _bay.Store.Condemned.Standing(), [])))).Where(v => v.Due is { IsOpen: true, AskOn: not null }).ToList();
        due.ShouldNotBeEmpty();
        events.Where(e => e.Uid!.EndsWith("re-torque", StringComparison.Ordinal)).Select(e => (e.Uid, DateOnly.FromDateTime(e.Start!.Value))).ShouldBe(due.Select(d => ((string?)$"{d.Id:D}-re-torque", d.Due!.AskOn!.Value)), ignoreOrder: true);
        events.ShouldAllBe(e => e.IsAllDay);
        events[0]!.Description.ShouldNotBeNull().ShouldContain("never with a power tool");
    }

    [Fact]
    public async Task A_rotation_has_a_day_only_where_the_vehicle_was_here_before()
    {
        var first = HandedBackVisit.In(_bay.Store, _clock.Now, [.. Van, ("date", "2026-03-14"), ("vehicle.odometer", "36000 km")]);
        _clock.Now = _clock.Now.AddDays(365);
        var second = HandedBackVisit.In(_bay.Store, _clock.Now, [.. Van, ("date", "2027-03-14"), ("vehicle.odometer", "48000 km")]);
        var rotation = Read((await _bay.GetAsync($"/visits/{second:D}/calendar.ics")).Text).Events.Single(e => e.Uid == $"{second:D}-rotation")!;
        DateOnly.FromDateTime(rotation.Start!.Value).ShouldBe(new DateOnly(2027, 3, 14).AddDays(304));
        rotation.Summary.ShouldBe("Rotation: Grey, \"long\"; van");
        rotation.Description.ShouldNotBeNull().ShouldContain("12000 km in 365 days before");
        Read((await _bay.GetAsync($"/visits/{first:D}/calendar.ics")).Text).Events.Select(e => e.Uid).ShouldBe([$"{first:D}-re-torque"]);
        (await _bay.GetAsync($"/visits/{Guid.NewGuid():D}/calendar.ics")).Status.ShouldBe(System.Net.HttpStatusCode.NotFound);
    }
}
