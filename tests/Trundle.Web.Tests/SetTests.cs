using System.Net;
using Trundle.Visits.Bay;
using Trundle.Visits.Keeping;

namespace Trundle.Web.Tests;

/// <summary>Sets in storage, from the form that takes them in to the visit on which they go on again.</summary>
public sealed class SetTests : IAsyncLifetime
{
    private readonly StandingClock _clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync() => _bay = await RunningBay.StartAsync(_clock);

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    private static (string, string)[] Wheels(string tin = "1AB CDEFHJ 2220") =>
    [
        .. ((string[])["1L", "1R", "2L", "2R"]).SelectMany(p => new[] { ($"fitted.{p}.tyre.marking", "195/65 R15 91T"), ($"fitted.{p}.tread.inner.0", p[0] == '1' ? "4.1" : "5.9"), ($"fitted.{p}.tread.centre.0", p[0] == '1' ? "4.3" : "6.0"), ($"fitted.{p}.tread.outer.0", p[0] == '1' ? "4.2" : "5.8") }),
        ("fitted.1L.tyre.tin", tin),
    ];

    private async Task<Guid> TakeInAsync(params (string, string)[] more)
    {
        var id = Guid.NewGuid();
        var (status, text, to) = await _bay.SendFormAsync("/sets/new", "/sets/new", [("id", $"{id:D}"), ("place", "rack B, shelf 3"), ("on", "2026-03-10"), ("vehicle.name", "Blue hatchback, DEMO 07"), ("vehicle.drive", "front"), ("rules", "uk"), ("season", "winter"), .. Wheels(), .. more]);
        status.ShouldBe(HttpStatusCode.Redirect, text);
        to.ShouldBe($"/sets/{id:D}");
        return id;
    }

    private Guid Visit(params (string Field, string Typed)[] fields)
    {
        var visit = Guid.NewGuid();
        _bay.Store.Visits.Open(visit, "T1", _clock.Now, new DateOnly(2026, 3, 14));
        _bay.Store.Visits.Append(visit, [.. fields.Select(f => new Entry(Guid.NewGuid(), f.Field, f.Typed, "T1", Role.Technician, _clock.Now))], _clock.Now).Value.Refused.ShouldBeEmpty();
        return visit;
    }

    [Fact]
    public async Task A_set_is_taken_in_and_found_by_vehicle_place_and_number()
    {
        await _bay.EnterAsAsync("T1");
        var id = await TakeInAsync();
        var set = _bay.Store.Sets.Find(id)!;
        set.Description.Fields["fitted.1L.tread.inner.0"].ShouldBe("4.1 mm");
        set.Description.Fields["vehicle.axles.0.driven"].ShouldBe("true");
        set.Description.Fields["vehicle.axles.1.driven"].ShouldBe("false");
        foreach (var find in new[] { "hatchback", "shelf%203", "1ABCDEFHJ", "S26-1", $"http%3A%2F%2Flocalhost%2Fsets%2F{id:D}" })
        {
            (await _bay.GetAsync($"/sets?find={find}")).Text.ShouldContain($"/sets/{id:D}", Case.Insensitive, find);
        }

        (await _bay.GetAsync("/sets?find=estate")).Text.ShouldContain("No set is named so.");
    }

    [Fact]
    public async Task Its_page_judges_the_condition_of_today_and_proposes_the_next_positions()
    {
        await _bay.EnterAsAsync("T1");
        var id = await TakeInAsync();
        var (_, page) = await _bay.GetAsync($"/sets/{id}");
        var next = page[page.IndexOf("Where they go next", StringComparison.Ordinal)..];
        next.ShouldContain("forward cross", Case.Insensitive);
        page[page.IndexOf("Condition today", StringComparison.Ordinal)..].ShouldContain("under the rules of uk");
        page.ShouldContain("5.8 years");

        // Eight years on, the same set is older, and the page says so without anything having been entered.
        _clock.Now = _clock.Now.AddYears(8);
        var (_, later) = await _bay.GetAsync($"/sets/{id}");
        later.ShouldContain("13.8 years");
        later.ShouldNotContain("Nothing is found");
        later.ShouldContain(", 1L</strong>");
    }

    [Fact]
    public async Task A_set_of_a_visit_takes_what_was_entered_and_leaves_the_condemned_wheel_out()
    {
        await _bay.EnterAsAsync("T1");
        var visit = Visit(
            ("vehicle.name", "Grey saloon"), ("vehicle.drive", "rear"), ("vehicle.complaint", "hums"), ("rules", "uk"), ("fitted.1L.tyre.marking", "225/45 R17 91W"), ("fitted.1L.tyre.tin", "1AB CDEFHJ 1824"), ("fitted.1L.tread.inner.1", "4.4 mm"),
            ("fitted.1L.damage.0.kind", "cut"), ("fitted.1L.damage.0.place", "shoulder"), ("fitted.1R.tyre.marking", "225/45 R17 91W"), ("fitted.1R.tyre.condemned", "true"));
        var (_, form) = await _bay.GetAsync($"/sets/new?visit={visit}");
        form.ShouldContain("value=\"1AB CDEFHJ 1824\"");
        form.ShouldContain("Grey saloon");
        var (status, text, to) = await _bay.SendFormAsync($"/sets/new?visit={visit}", "/sets/new", ("visit", $"{visit:D}"), ("id", $"{Guid.NewGuid():D}"), ("place", "rack A"), ("on", "2026-03-14"), ("vehicle.name", "Grey saloon"), ("rules", "uk"), ("vehicle.drive", "rear"),
            ("keep.1L", "yes"), ("fitted.1L.tyre.marking", "225/45 R17 91W"), ("fitted.1L.tyre.tin", "1AB CDEFHJ 1824"), ("fitted.1L.damage.0.kind", "cut"), ("fitted.1L.damage.0.place", "shoulder"), ("keep.1R", "no"), ("fitted.1R.tyre.marking", "225/45 R17 91W"));
        status.ShouldBe(HttpStatusCode.Redirect, text);
        var set = _bay.Store.Sets.All().ShouldHaveSingleItem();
        set.Positions.ShouldBe(["1L"]);
        set.Kept.Visit.ShouldBe(visit);
        set.Description.Fields["fitted.1L.tread.inner.1"].ShouldBe("4.4 mm");
        set.Description.Fields["vehicle.complaint"].ShouldBeNull();
        (await _bay.GetAsync(to!)).Text.ShouldContain("cut shoulder");
    }

    [Fact]
    public async Task A_visit_is_opened_with_a_set_once_and_its_pressures_are_left_to_be_measured()
    {
        await _bay.EnterAsAsync("T1");
        var id = await TakeInAsync(("fitted.1L.pressure.value", "225"));
        var visit = Guid.NewGuid();
        for (var i = 0; i < 2; i++)
        {
            var (status, text, to) = await _bay.SendFormAsync($"/sets/{id}", $"/sets/{id}/visit", ("id", $"{visit:D}"));
            status.ShouldBe(HttpStatusCode.Redirect, text);
            to.ShouldBe($"/bay/{visit:D}");
        }

        var fields = _bay.Store.Visits.Find(visit)!.Fields;
        (fields["vehicle.name"], fields["fitted.1L.tyre.tin"], fields["fitted.2R.tread.centre.0"], fields["fitted.1L.pressure.value"]).ShouldBe(("Blue hatchback, DEMO 07", "1AB CDEFHJ 2220", "6.0 mm", null));
        _bay.Store.Sets.Find(id)!.Kept.Records.Count(r => r.Kind == SetRecords.Note).ShouldBe(1);
    }

    [Fact]
    public async Task Giving_out_is_recorded_and_the_set_is_found_among_those_given_out()
    {
        await _bay.EnterAsAsync("T1");
        var id = await TakeInAsync();
        (await _bay.SendFormAsync($"/sets/{id}", $"/sets/{id}", ("form", "given out"), ("id", $"{Guid.NewGuid():D}"), ("on", "2026-03-14"), ("to", "on the blue hatchback"))).Status.ShouldBe(HttpStatusCode.Redirect);
        (await _bay.GetAsync("/sets")).Text.ShouldContain("No set is in storage.");
        (await _bay.GetAsync("/sets?out=yes")).Text.ShouldContain("14 Mar 2026");
        var (_, page) = await _bay.GetAsync($"/sets/{id}");
        page.ShouldContain("Given out on 14 Mar 2026: on the blue hatchback");
        page.ShouldNotContain("Open a visit with it");
    }

    [Fact]
    public async Task Whom_to_call_is_erased_by_its_form()
    {
        await _bay.EnterAsAsync("T1");
        var id = await TakeInAsync(("owner", "nobody real"));
        (await _bay.GetAsync($"/sets/{id}")).Text.ShouldContain("nobody real");
        (await _bay.SendFormAsync($"/sets/{id}", $"/sets/{id}/erase")).Status.ShouldBe(HttpStatusCode.Redirect);
        var (_, page) = await _bay.GetAsync($"/sets/{id}");
        page.ShouldNotContain("nobody real");
        page.ShouldContain("whom to call erased");
    }

    [Fact]
    public async Task A_wrong_entry_is_said_at_its_field_and_nothing_is_kept()
    {
        await _bay.EnterAsAsync("T1");
        var (status, text, _) = await _bay.SendFormAsync("/sets/new", "/sets/new", [("id", $"{Guid.NewGuid():D}"), ("place", "rack"), ("on", "2026-03-14"), ("vehicle.name", "<van>"), .. Wheels("1AB CDEFHJ 5420")]);
        status.ShouldBe(HttpStatusCode.BadRequest);
        text.ShouldContain("there is no week 54");
        text.ShouldContain("value=\"1AB CDEFHJ 5420\"");
        text.ShouldNotContain("<van>");
        _bay.Store.Sets.All().ShouldBeEmpty();
    }

    [Theory]
    [InlineData("a4", "application/pdf")]
    [InlineData("label", "application/pdf")]
    [InlineData("a5", "application/json")]
    public async Task The_labels_are_a_pdf_of_a_known_paper(string paper, string type)
    {
        await _bay.EnterAsAsync("T1");
        var id = await TakeInAsync();
        using var answer = await _bay.Client.GetAsync(new Uri($"/sets/{id}/label.pdf?paper={paper}", UriKind.Relative));
        answer.Content.Headers.ContentType!.MediaType.ShouldBe(type);
        answer.StatusCode.ShouldBe(type == "application/pdf" ? HttpStatusCode.OK : HttpStatusCode.BadRequest);
    }
}
