using System.Net;
using Trundle.Visits.Bay;

namespace Trundle.Web.Tests;

/// <summary>The recall look-up as page, CSV and for programs.</summary>
public sealed class RecallTests : IAsyncLifetime
{
    private readonly StandingClock _clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync()
    {
        _bay = await RunningBay.StartAsync(_clock);
        var visit = Guid.NewGuid();
        _bay.Store.Visits.Open(visit, "T1", _clock.Now, new DateOnly(2026, 3, 14));
        foreach (var (field, typed) in new[] { ("vehicle.name", "Red <coupé>"), ("fitted.1L.tyre.tin", "1AB CDEFHJ 1025"), ("fitted.1R.tyre.tin", "1AB CDEFHJ") })
        {
            _bay.Store.Visits.Append(visit, [new Entry(Guid.NewGuid(), field, typed, "T1", Role.Technician, _clock.Now)], _clock.Now).Value.Refused.ShouldBeEmpty();
        }
    }

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    [Fact]
    public async Task The_page_shows_what_matches_and_what_may()
    {
        var (status, page) = await _bay.GetAsync("/recall?plant=1AB&code=CD&from=1025&to=2225");
        status.ShouldBe(HttpStatusCode.OK);
        page.ShouldContain("1 tyre matches, 1 may match, of 2 recorded numbers.");
        page.ShouldContain("Red &lt;coup");
        page.ShouldContain("it was recorded without its date");
        page.ShouldContain("/recall.csv?plant=1AB&amp;code=CD&amp;from=1025&amp;to=2225");

        // What must not be done with a recalled tyre stands over the list of them, and where there is none it warns of nothing.
        page.IndexOf("may not be sold or fitted again", StringComparison.Ordinal).ShouldBeInRange(page.IndexOf("class=\"caution\"", StringComparison.Ordinal), page.IndexOf("What is known", StringComparison.Ordinal));
        var (_, none) = await _bay.GetAsync("/recall?plant=1AC");
        none.ShouldContain("0 tyres match, 0 may match");
        none.ShouldNotContain("may not be sold or fitted again");
        (await _bay.GetAsync("/recall")).Text.ShouldNotContain("recorded number");
    }

    [Fact]
    public async Task A_range_that_cannot_be_is_said_at_its_field()
    {
        var (status, page) = await _bay.GetAsync("/recall?plant=1AB&code=&from=5425&to=");
        status.ShouldBe(HttpStatusCode.BadRequest);
        page.ShouldContain("id=\"from-problem\"");
        page.ShouldContain("value=\"5425\"");
        (await _bay.GetAsync("/recall.csv?plant=1ABC")).Status.ShouldBe(HttpStatusCode.BadRequest);
    }

    [Fact]
    public async Task Programs_get_the_same_answer()
    {
        var (status, body) = await _bay.PostAsync("/api/v1/recall", """{"plant": "1AB", "from": "1025", "to": "2225"}""");
        status.ShouldBe(HttpStatusCode.OK);
        body["matches"]!.AsArray().Select(m => m!["match"]!.GetValue<string>()).ShouldBe(["yes", "may"]);
        (await _bay.PostAsync("/api/v1/recall", """{"plants": "1AB"}""")).Body["error"]!["message"]!.GetValue<string>().ShouldContain("'plant'");
        var (_, csv) = await _bay.GetAsync("/recall.csv?plant=1AB");
        csv.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length.ShouldBe(3);
    }
}
