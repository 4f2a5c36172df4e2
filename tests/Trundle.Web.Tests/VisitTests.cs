using System.Net;
using System.Text.Json.Nodes;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Web.Tests;

/// <summary>Visits over HTTP: opened once, entries taken once, and one file for the bay, the command and the paper.</summary>
public sealed class VisitTests : IAsyncLifetime
{
    private readonly StandingClock _clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync() => _bay = await RunningBay.StartAsync(_clock);

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    private static string Entry(Guid id, string field, string typed, string by = "T1", string at = "2026-03-14T08:52:00.000Z") =>
        new JsonObject { ["id"] = id.ToString("D"), ["field"] = field, ["typed"] = typed, ["by"] = by, ["at"] = at }.ToJsonString();

    private async Task<string> OpenAsync()
    {
        var (status, body) = await _bay.PostAsync("/api/v1/visits", """{"by":"D1"}""");
        status.ShouldBe(HttpStatusCode.Created);
        return body["id"]!.GetValue<string>();
    }

    [Fact]
    public async Task A_visit_is_opened_with_its_number_and_date_and_only_once()
    {
        var id = Guid.NewGuid();
        var first = await _bay.PostAsync("/api/v1/visits", $$"""{"id":"{{id:D}}","by":"D1"}""");
        var second = await _bay.PostAsync("/api/v1/visits", $$"""{"id":"{{id:D}}","by":"D1"}""");
        first.Body["number"]!.GetValue<string>().ShouldBe("26-0314-1");
        second.Body["number"]!.GetValue<string>().ShouldBe("26-0314-1");
        second.Body["fields"]!["date"]!.GetValue<string>().ShouldBe("2026-03-14");
        second.Body["entries"]!.AsArray().Count.ShouldBe(3);
        (await _bay.JsonAsync("/api/v1/visits")).Body["visits"]!.AsArray().Count.ShouldBe(1);
    }

    [Fact]
    public async Task Two_values_made_without_knowing_of_each_other_hold_the_hand_back_until_one_is_made_after_both()
    {
        var visit = await OpenAsync();
        var (one, two) = (Guid.NewGuid(), Guid.NewGuid());
        await SendAsync(one, "5.1 mm", "08:52");
        await SendAsync(two, "5.4 mm", "08:53");
        (await HandBackAsync()).ShouldBe("two-values");
        var told = (await _bay.JsonAsync($"/api/v1/visits/{visit}")).Body["entries"]!.AsArray().Where(e => e!["field"]!.GetValue<string>() == "fitted.1L.tread.inner.0").ToList();
        told.ShouldAllBe(e => e!["after"]!.AsArray().Count == 0);

        await SendAsync(Guid.NewGuid(), "5.1 mm", "08:54", one, two);
        (await HandBackAsync()).ShouldNotBe("two-values");

        var (wrong, error) = await _bay.PostAsync($"/api/v1/visits/{visit}/entries", $$"""{"entries":[{"id":"{{Guid.NewGuid():D}}","field":"vehicle.name","typed":"x","by":"T1","at":"2026-03-14T08:52:00.000Z","after":["the one before"]}]}""");
        wrong.ShouldBe(HttpStatusCode.BadRequest);
        error["error"]!["where"]!.GetValue<string>().ShouldBe("entries[0].after");

        async Task SendAsync(Guid id, string typed, string time, params Guid[] after)
        {
            var entry = JsonNode.Parse(Entry(id, "fitted.1L.tread.inner.0", typed, at: $"2026-03-14T{time}:00.000Z"))!;
            entry["after"] = new JsonArray([.. after.Select(a => (JsonNode?)a.ToString("D"))]);
            (await _bay.PostAsync($"/api/v1/visits/{visit}/entries", $$"""{"entries":[{{entry.ToJsonString()}}]}""")).Body["taken"]!.AsArray().Count.ShouldBe(1);
        }

        async Task<string> HandBackAsync() => (await _bay.PostAsync($"/api/v1/visits/{visit}/entries", $$"""{"entries":[{{Entry(Guid.NewGuid(), "work.handBack.by", "T1")}}]}""")).Body["refused"]![0]!["error"]!["code"]!.GetValue<string>();
    }

    [Fact]
    public async Task Entries_are_taken_once_and_read_from_where_a_tablet_left_off()
    {
        var visit = await OpenAsync();
        var (one, two) = (Guid.NewGuid(), Guid.NewGuid());
        var (_, first) = await _bay.PostAsync($"/api/v1/visits/{visit}/entries", $$"""{"entries":[{{Entry(one, "vehicle.name", "Blue hatchback")}}]}""");
        first["taken"]!.AsArray().Select(n => n!.GetValue<string>()).ShouldBe([one.ToString("D")]);
        var last = (await _bay.JsonAsync($"/api/v1/visits/{visit}")).Body["last"]!.GetValue<long>();

        var (_, second) = await _bay.PostAsync($"/api/v1/visits/{visit}/entries", $$"""{"entries":[{{Entry(one, "vehicle.name", "Blue hatchback")}},{{Entry(two, "vehicle.odometer", "30000 mi")}}]}""");
        second["already"]!.AsArray().Count.ShouldBe(1);
        second["taken"]!.AsArray().Count.ShouldBe(1);

        var entry = (await _bay.JsonAsync($"/api/v1/visits/{visit}?since={last}")).Body["entries"]!.AsArray().ShouldHaveSingleItem()!;
        entry["typed"]!.GetValue<string>().ShouldBe("30000 mi");
        // 30 000 mi × 1 609.344 m, exact.
        entry["si"]!["value"]!.GetValue<double>().ShouldBe(48_280_320, 1e-3);
        entry["role"]!.GetValue<string>().ShouldBe("technician");
        entry["at"]!.GetValue<string>().ShouldBe("2026-03-14T08:52:00.000Z");
    }

    [Fact]
    public async Task What_may_not_stand_is_refused_by_itself()
    {
        var visit = await OpenAsync();
        var bad = Guid.NewGuid();
        var (status, body) = await _bay.PostAsync($"/api/v1/visits/{visit}/entries", $$"""{"entries":[{{Entry(bad, "vehicle.name", "x", by: "nobody")}},{{Entry(Guid.NewGuid(), "vehicle.name", "y")}}]}""");
        status.ShouldBe(HttpStatusCode.OK);
        var refused = body["refused"]!.AsArray().ShouldHaveSingleItem()!;
        refused["id"]!.GetValue<string>().ShouldBe(bad.ToString("D"));
        refused["error"]!["code"]!.GetValue<string>().ShouldBe("person-unknown");
        body["taken"]!.AsArray().Count.ShouldBe(1);
    }

    [Theory]
    [InlineData("{}", "entries", "missing")]
    [InlineData("""{"entries":[{}]}""", "entries[0].id", "missing")]
    [InlineData("""{"entries":[{"id":"1","field":"vehicle.name","typed":"","by":"T1","at":"2026-03-14T08:52:00Z"}]}""", "entries[0].id", "id-unreadable")]
    [InlineData("""{"entries":[{"id":"00000000-0000-0000-0000-000000000001","field":"vehicle.name","typed":7,"by":"T1","at":"2026-03-14T08:52:00Z"}]}""", "entries[0].typed", "not-a-text")]
    [InlineData("""{"entries":[{"id":"00000000-0000-0000-0000-000000000001","field":"vehicle.name","typed":"x","by":"T1","at":"yesterday"}]}""", "entries[0].at", "time-unreadable")]
    [InlineData("""{"entries":[{"id":"00000000-0000-0000-0000-000000000001","field":"vehicle.name","typed":"x","by":"T1","at":"2026-03-14T08:52:00Z","colour":"red"}]}""", "entries[0].colour", "key-unknown")]
    public async Task A_batch_that_cannot_be_read_takes_nothing_and_names_the_place(string json, string where, string code)
    {
        var visit = await OpenAsync();
        var (status, body) = await _bay.PostAsync($"/api/v1/visits/{visit}/entries", json);
        status.ShouldBe(HttpStatusCode.BadRequest);
        body["error"]!["where"]!.GetValue<string>().ShouldBe(where);
        body["error"]!["code"]!.GetValue<string>().ShouldBe(code);
        (await _bay.JsonAsync($"/api/v1/visits/{visit}")).Body["entries"]!.AsArray().Count.ShouldBe(3);
    }

    [Fact]
    public async Task A_visit_that_is_not_there_is_said_so()
    {
        foreach (var address in new[] { $"/api/v1/visits/{Guid.NewGuid()}", $"/api/v1/visits/{Guid.NewGuid()}/file.json" })
        {
            var (status, body) = await _bay.JsonAsync(address);
            status.ShouldBe(HttpStatusCode.NotFound);
            body["error"]!["code"]!.GetValue<string>().ShouldBe("visit-unknown");
        }
    }

    [Fact]
    public async Task The_file_of_a_visit_is_the_contracts_and_the_command_checks_it()
    {
        var visit = await OpenAsync();
        await _bay.PostAsync($"/api/v1/visits/{visit}/entries", $$"""
            {"entries":[{{Entry(Guid.NewGuid(), "rules", "uk")}},{{Entry(Guid.NewGuid(), "vehicle.name", "Blue hatchback")}},
             {{Entry(Guid.NewGuid(), "vehicle.axles.0.placard.size", "195/65 R15 91H")}},{{Entry(Guid.NewGuid(), "vehicle.axles.0.placard.cold", "230 kPa")}},
             {{Entry(Guid.NewGuid(), "fitted.1L.tyre.marking", "195/65 R15 91H")}},{{Entry(Guid.NewGuid(), "fitted.1L.tread.inner.0", "3 mm")}}]}
            """);
        var (_, text) = await _bay.GetAsync($"/api/v1/visits/{visit}/file.json");
        var file = JsonNode.Parse(text)!;
        file["fitted"]![0]!["position"]!.GetValue<string>().ShouldBe("1L");
        file["fitted"]![0]!["tread"]!["inner"]![0]!.GetValue<string>().ShouldBe("3 mm");

        foreach (var name in new[] { "fitment", "inspect" })
        {
            var (status, byHttp) = await _bay.PostAsync($"/api/v1/{name}", text);
            status.ShouldBe(HttpStatusCode.OK);
            byHttp["findings"]!.AsArray().ShouldNotBeEmpty();
            var here = OperationList.All.Single(o => o.Name == name).Run(FileNode.Parse(text, "visit.json").Value).Value.Body;
            JsonNode.DeepEquals(byHttp, here).ShouldBeTrue();
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("?for=customer&paper=letter")]
    [InlineData("?for=file&paper=a4")]
    public async Task The_sheet_of_a_visit_comes_as_PDF(string query)
    {
        var visit = await OpenAsync();
        using var answer = await _bay.Client.GetAsync(new Uri($"/api/v1/visits/{visit}/sheet.pdf{query}", UriKind.Relative));
        answer.StatusCode.ShouldBe(HttpStatusCode.OK);
        answer.Content.Headers.ContentType!.MediaType.ShouldBe("application/pdf");
        (await answer.Content.ReadAsByteArrayAsync()).AsSpan(0, 5).ToArray().ShouldBe("%PDF-"u8.ToArray());
    }

    [Theory]
    [InlineData("?for=nobody", "for")]
    [InlineData("?paper=a3", "paper")]
    public async Task A_sheet_that_there_is_not_is_told_with_its_place(string query, string where)
    {
        var visit = await OpenAsync();
        var (status, body) = await _bay.JsonAsync($"/api/v1/visits/{visit}/sheet.pdf{query}");
        status.ShouldBe(HttpStatusCode.BadRequest);
        body["error"]!["where"]!.GetValue<string>().ShouldBe(where);
    }

    [Fact]
    public async Task Nobody_hands_back_what_a_hold_point_stops()
    {
        var visit = await OpenAsync();
        var (_, body) = await _bay.PostAsync($"/api/v1/visits/{visit}/entries", $$"""{"entries":[{{Entry(Guid.NewGuid(), "work.handBack.by", "T1")}},{{Entry(Guid.NewGuid(), "work.handBack.by", "T4", by: "T4")}}]}""");
        body["refused"]!.AsArray().Select(r => r!["error"]!["code"]!.GetValue<string>()).ShouldBe(["hand-back-stopped", "may-not-release"]);
        (await _bay.JsonAsync($"/api/v1/visits/{visit}")).Body["handedBackAt"].ShouldBeNull();
    }

    [Fact]
    public async Task Who_enters_and_in_which_units_is_remembered_by_the_browser_and_the_store()
    {
        (await _bay.JsonAsync("/api/v1/people")).Body["me"].ShouldBeNull();
        var id = _bay.Store.People.All().Single(p => p.Name == "T1").Id;
        var (status, me) = await _bay.PostAsync("/api/v1/people/me", $$$"""{"id":{{{id}}},"units":{"pressure":"psi"}}""");
        status.ShouldBe(HttpStatusCode.OK);
        me["units"]!["pressure"]!.GetValue<string>().ShouldBe("psi");
        me["units"]!["depth"]!.GetValue<string>().ShouldBe("mm");
        (await _bay.JsonAsync("/api/v1/people")).Body["me"]!.GetValue<long>().ShouldBe(id);

        var (wrong, error) = await _bay.PostAsync("/api/v1/people/me", """{"units":{"pressure":"stone"}}""");
        wrong.ShouldBe(HttpStatusCode.BadRequest);
        error["error"]!["where"]!.GetValue<string>().ShouldBe("units.pressure");
    }
}
