using System.Net;
using System.Text;
using Trundle.Visits.Bay;

namespace Trundle.Web.Tests;

/// <summary>A fleet's list in the office, and the way from one of its vehicles to a visit that begins with what is known.</summary>
public sealed class FleetPageTests : IAsyncLifetime
{
    private readonly StandingClock _clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync()
    {
        _bay = await RunningBay.StartAsync(_clock);
        await _bay.EnterAsAsync("D1");
    }

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    private async Task<(HttpStatusCode Status, string Text)> SendAsync(string list)
    {
        var page = await _bay.Client.GetStringAsync(new Uri("/fleet", UriKind.Relative));
        var token = System.Text.RegularExpressions.Regex.Match(page, "name=\"__RequestVerificationToken\" value=\"([^\"]+)\"").Groups[1].Value;
        using var form = new MultipartFormDataContent();
        using var field = new StringContent(token);
        using var file = new ByteArrayContent(Encoding.UTF8.GetBytes(list));
        form.Add(field, "__RequestVerificationToken");
        form.Add(file, "list", "list.csv");
        using var answer = await _bay.Client.PostAsync(new Uri("/fleet", UriKind.Relative), form);
        return (answer.StatusCode, await answer.Content.ReadAsStringAsync());
    }

    [Fact]
    public async Task A_vehicle_of_the_list_begins_a_visit_with_what_is_known_and_with_further_axles()
    {
        var (status, text) = await SendAsync("unit,vehicle,class,front tyre,front torque,vehicle.axles.2.placard.size\nT-1,Box trailer,trailer,195/65 R15 91H,110 N·m,195/65 R15 91H\n");
        status.ShouldBe(HttpStatusCode.OK, text);
        text.ShouldContain("1 added, 0 changed, 0 as before.");
        var id = _bay.Store.Fleet.All().ShouldHaveSingleItem().Id;
        var (_, form) = await _bay.GetAsync($"/arrive?fleet={id:D}");
        form.ShouldContain("value=\"Box trailer\"");
        form.ShouldContain("hold it against the placard");
        var visit = Guid.NewGuid();
        var sent = await _bay.SendFormAsync($"/arrive?fleet={id:D}", "/arrive", ("visit", visit.ToString("D")), ("fleet", id.ToString("D")),
            ("vehicle.name", "Box trailer"), ("vehicle.axles.0.placard.size", "195/65 R15 91H"), ("vehicle.axles.0.fixings.torque", "120"));
        sent.Status.ShouldBe(HttpStatusCode.Redirect, sent.Text);
        var fields = _bay.Store.Visits.Find(visit)!.Fields;
        fields["vehicle.axles.0.fixings.torque"].ShouldBe("120 N·m", "what was put right in the form stands");
        fields["vehicle.axles.2.placard.size"].ShouldBe("195/65 R15 91H");
        fields["vehicle.class"].ShouldBe("trailer");
        fields.EntryOf("vehicle.class")!.By.ShouldBe("D1");
    }

    [Fact]
    public async Task A_wrong_list_is_told_line_by_line_and_not_taken()
    {
        var (status, text) = await SendAsync("unit,front tyre\nA1,195/65 R15 91H\nA2,<b>banana</b>\nA3,no size\n");
        status.ShouldBe(HttpStatusCode.BadRequest);
        text.ShouldContain("line 3, front tyre:");
        text.ShouldContain("line 4, front tyre:");
        text.ShouldNotContain("<b>banana");
        _bay.Store.Fleet.All().ShouldBeEmpty();
        (await SendAsync("")).Status.ShouldBe(HttpStatusCode.BadRequest);
    }
}
