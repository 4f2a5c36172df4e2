using System.Net;
using System.Text;
using Trundle.Visits.Bay;

namespace Trundle.Web.Tests;

public sealed class ScanTests : IAsyncLifetime
{
    private readonly StandingClock _clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync() => _bay = await RunningBay.StartAsync(_clock);

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    [Fact]
    public async Task A_visits_label_opens_it_and_never_leads_elsewhere()
    {
        var id = Guid.NewGuid();
        _bay.Store.People.Add("T2", Role.Technician, UnitHabits.Metric);
        var heading = _bay.Store.Visits.Open(id, "T2", _clock.Now, new DateOnly(2026, 3, 14));
        _bay.Store.Visits.Append(id, [new Entry(Guid.NewGuid(), "work.number", heading.Number, "T2", Role.Technician, _clock.Now)], _clock.Now).Value.Refused.ShouldBeEmpty();

        foreach (var code in new[] { $"http://old-name.invalid:8080/visits/{id:D}", $"/bay/{id:D}/arrive", heading.Number, heading.Number.Replace("-", " ", StringComparison.Ordinal) })
        {
            (await ScanAsync(code)).To.ShouldBe($"/bay/{id:D}", code);
        }

        foreach (var code in new[] { $"http://elsewhere.invalid/visits/{Guid.NewGuid():D}", "http://elsewhere.invalid/", "//elsewhere.invalid", "no such number" })
        {
            var (status, to, text) = await ScanAsync(code);
            status.ShouldBe(HttpStatusCode.OK, code);
            to.ShouldBeNull();
            text.ShouldContain("No visit and no set of this workshop");
        }
    }

    [Fact]
    public async Task A_visit_has_a_label_and_a_wrong_paper_is_told()
    {
        var id = Guid.NewGuid();
        _bay.Store.Visits.Open(id, "T2", _clock.Now, new DateOnly(2026, 3, 14));

        var label = await _bay.Client.GetByteArrayAsync(new Uri($"/visits/{id:D}/label.pdf", UriKind.Relative));
        Encoding.ASCII.GetString(label, 0, 5).ShouldBe("%PDF-");
        using var wrong = await _bay.Client.GetAsync(new Uri($"/visits/{id:D}/label.pdf?paper=wall", UriKind.Relative));
        wrong.StatusCode.ShouldBe(HttpStatusCode.BadRequest);
        (await _bay.Client.GetStringAsync(new Uri($"/visits/{id:D}", UriKind.Relative))).ShouldContain($"/visits/{id:D}/label.pdf");
    }

    private async Task<(HttpStatusCode Status, string? To, string Text)> ScanAsync(string code)
    {
        using var browser = _bay.OtherBrowser();
        using var answer = await browser.GetAsync(new Uri($"/scan?code={Uri.EscapeDataString(code)}", UriKind.Relative));
        return (answer.StatusCode, answer.Headers.Location?.ToString(), await answer.Content.ReadAsStringAsync());
    }
}
