using System.Net;
using Trundle.Engine.Instruments;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Instruments;

namespace Trundle.Web.Tests;

/// <summary>The instruments' pages, sent as a browser without script sends them.</summary>
public sealed class InstrumentTests : IAsyncLifetime
{
    private readonly StandingClock _clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync()
    {
        _bay = await RunningBay.StartAsync(_clock);
        await _bay.EnterAsAsync("T1");
    }

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    private async Task<Guid> AddAsync(string kind, string name)
    {
        var id = Guid.NewGuid();
        var (status, text, to) = await _bay.SendFormAsync("/instruments", "/instruments", ("id", $"{id:D}"), ("name", name), ("identification", "DEMO 1"), ("kind", kind), ("inUseFrom", "2025-01-02"));
        status.ShouldBe(HttpStatusCode.Redirect, text);
        to.ShouldBe($"/instruments/{id:D}");
        return id;
    }

    private Task<(HttpStatusCode Status, string Text, string? To)> SendAsync(Guid id, string form, params (string, string)[] fields) =>
        _bay.SendFormAsync($"/instruments/{id}", $"/instruments/{id}", [("form", form), ("id", $"{Guid.NewGuid():D}"), .. fields]);

    [Fact]
    public async Task A_wrench_is_added_checked_and_stands_overdue_once_its_day_is_past()
    {
        var id = await AddAsync("torque wrench", "wrench <1>");
        (await _bay.GetAsync("/instruments")).Text.ShouldContain("never judged");
        var (status, text, _) = await SendAsync(id, "calibration by outside",
            ("on", "2026-03-10"), ("due", "2026-04-10"), ("by", "invented laboratory"), ("certificate", "C 1"),
            ("points[0].reference", "40"), ("points[0].shown", "41"), ("points[3].reference", "147.5 lbf·ft"), ("points[3].shown", "200"));
        status.ShouldBe(HttpStatusCode.Redirect, text);

        var record = _bay.Store.Instruments.Find(id)!.Records[^1];
        record.Body.ShouldBe("""{"kind":"torque wrench","by":"invented laboratory","certificate":"C 1","points":[{"reference":"40 N·m","shown":"41 N·m"},{"reference":"147.5 lbf·ft","shown":"200 N·m"}]}""");
        record.Verdict.ShouldBe(InstrumentVerdict.Passed);
        record.Role.ShouldBe(Role.Technician);

        var (_, list) = await _bay.GetAsync("/instruments");
        list.ShouldContain("wrench &lt;1&gt;");
        list.ShouldContain("in order");
        list.ShouldContain("10 Apr 2026");
        _clock.Now = new DateTimeOffset(2026, 4, 11, 9, 0, 0, TimeSpan.Zero);
        (await _bay.GetAsync("/instruments")).Text.ShouldContain("overdue");
        var (_, page) = await _bay.GetAsync($"/instruments/{id}");
        page.ShouldContain("was due on 10 Apr 2026");
        page.ShouldContain("(2.50 %); within 1.60 N");
        page.ShouldContain("reckoned by &#x27;instrument check&#x27;");
    }

    [Fact]
    public async Task A_new_record_begins_with_what_the_person_used_last_and_with_nothing_measured()
    {
        var id = await AddAsync("pressure gauge", "gauge");
        (await SendAsync(id, "comparison with a reference", ("on", "2026-01-10"), ("due", "2026-04-10"), ("by", "reference gauge 7"), ("permitted", "7 kPa"),
            ("points[0].reference", "200"), ("points[0].shown", "203"))).Status.ShouldBe(HttpStatusCode.Redirect);
        var (_, page) = await _bay.GetAsync($"/instruments/{id}");
        page.ShouldContain("value=\"reference gauge 7\"");
        page.ShouldContain("value=\"7 kPa\"");
        page.ShouldContain("value=\"200\"");
        page.ShouldNotContain("value=\"203");

        // Ninety days on, as the last time.
        page.ShouldContain("value=\"2026-06-12\"");
    }

    [Fact]
    public async Task A_wrong_entry_is_said_at_its_field_with_what_was_typed_and_nothing_is_kept()
    {
        var id = await AddAsync("torque wrench", "wrench 1");
        var (status, text, _) = await SendAsync(id, "comparison with a reference", ("on", "2026-03-10"), ("points[2].reference", "40"), ("points[2].shown", "4,000"));
        status.ShouldBe(HttpStatusCode.BadRequest);
        text.ShouldContain("value=\"4,000\"");
        var field = text.IndexOf("value=\"4,000\"", StringComparison.Ordinal);
        text.IndexOf("class=\"problem\"", StringComparison.Ordinal).ShouldBeInRange(field, field + 700);
        (await SendAsync(id, "comparison with a reference", ("on", "yesterday"), ("points[0].reference", "40"), ("points[0].shown", "40"))).Text.ShouldContain("year-month-day");
        (await SendAsync(id, "comparison with a reference", ("on", "2026-03-15"), ("points[0].reference", "40"), ("points[0].shown", "40"))).Text.ShouldContain("still to come");
        (await SendAsync(id, "profile", ("least", "forty"))).Status.ShouldBe(HttpStatusCode.BadRequest);
        _bay.Store.Instruments.Find(id)!.Records.ShouldHaveSingleItem();
    }

    [Fact]
    public async Task A_balancers_profile_is_entered_by_its_form_and_comes_with_every_visit()
    {
        var id = await AddAsync("balancer", "balancer by the window");
        var (status, text, _) = await SendAsync(id, "profile",
            ("distanceUnit", "cm"), ("distanceZero", "-40"), ("weightPlaces.outerAdhesive.radial", "-22"), ("weightPlaces.outerAdhesive.axial", "-45"), ("displayStep", "1"), ("displayHidesBelow", "4"));
        status.ShouldBe(HttpStatusCode.Redirect, text);
        (await SendAsync(id, "profile", ("weightPlaces.innerClip.radial", "3"))).Text.ShouldContain("axial");

        var visit = Guid.NewGuid();
        await _bay.PostAsync("/api/v1/visits", $$"""{"id": "{{visit:D}}"}""");
        var (_, body) = await _bay.JsonAsync($"/api/v1/visits/{visit}?since=0");
        var instrument = InstrumentJson.Read(body["instruments"]!.AsArray()[0]!.AsObject())!;
        instrument.Name.ShouldBe("balancer by the window");
        instrument.Profile!["weightPlaces"]!["outerAdhesive"]!["axial"]!.GetValue<string>().ShouldBe("-45");
        instrument.StandingOn(new DateOnly(2026, 3, 14)).ShouldBe(InstrumentStanding.NeverChecked);
    }

    [Fact]
    public async Task Nobody_records_without_a_name_and_no_form_goes_without_its_token()
    {
        var id = await AddAsync("other", "lamp");
        using var content = new FormUrlEncodedContent([new("form", "note"), new("text", "dropped"), new("on", "2026-03-14")]);
        using var answer = await _bay.Client.PostAsync(new Uri($"/instruments/{id}", UriKind.Relative), content);
        answer.StatusCode.ShouldBe(HttpStatusCode.BadRequest);
        _bay.Store.Instruments.Find(id)!.Records.ShouldHaveSingleItem();
        (await _bay.GetAsync($"/instruments/{Guid.NewGuid()}")).Status.ShouldBe(HttpStatusCode.NotFound);
    }

    [Fact]
    public void The_demo_has_an_overdue_wrench_a_balancer_with_a_profile_and_a_gauge_in_order()
    {
        var folder = Directory.CreateTempSubdirectory("trundle-demo-").FullName;
        try
        {
            var store = WorkshopStore.Open(Path.Combine(folder, "demo.db"));
            Demo.DemoWorkshop.Fill(store, _clock).ShouldBeTrue();
            var day = DateOnly.FromDateTime(_clock.Now.DateTime);
            store.Instruments.All().Select(i => (i.Instrument.Kind, i.Instrument.StandingOn(day))).ShouldBe(
            [
                (InstrumentKind.Balancer, InstrumentStanding.InOrder), (InstrumentKind.Cage, InstrumentStanding.InOrder), (InstrumentKind.PressureGauge, InstrumentStanding.InOrder),
                (InstrumentKind.Stands, InstrumentStanding.Overdue), (InstrumentKind.Lift, InstrumentStanding.InOrder),
                (InstrumentKind.TorqueWrench, InstrumentStanding.Overdue), (InstrumentKind.TorqueWrench, InstrumentStanding.NeverChecked),
            ]);
            store.Instruments.All()[0].Instrument.Profile.ShouldNotBeNull();
        }
        finally
        {
            Microsoft.Data.Sqlite.SqliteConnection.ClearAllPools();
            Directory.Delete(folder, true);
        }
    }

    [Fact]
    public async Task A_balancers_own_test_is_entered_field_by_field_and_reckoned_as_the_command_does()
    {
        var id = await AddAsync("balancer", "balancer");
        var (_, blank) = await _bay.GetAsync($"/instruments/{id}");
        blank.ShouldContain("Traverse test");
        blank.ShouldNotContain("<textarea id=\"machine-check");

        // The worked sample, with a row left open in between: it closes up.
        var (status, text, _) = await SendAsync(id, "machine check",
            ("on", "2026-03-12"), ("planes.inner.radius", "200"), ("planes.outer.radius", "200 mm"),
            ("knownMass.reductionRatio", "95"),
            ("knownMass.base.inner.mass", "0"), ("knownMass.base.outer.mass", "0"),
            ("knownMass.spins[0].added[0].plane", "inner"), ("knownMass.spins[0].added[0].mass", "100"), ("knownMass.spins[0].added[0].angle", "0"),
            ("knownMass.spins[0].display.inner.mass", "97"), ("knownMass.spins[0].display.inner.angle", "182"), ("knownMass.spins[0].display.outer.mass", "1"), ("knownMass.spins[0].display.outer.angle", "90"),
            ("knownMass.spins[2].added[0].plane", "outer"), ("knownMass.spins[2].added[0].mass", "100"), ("knownMass.spins[2].added[0].angle", "90"),
            ("knownMass.spins[2].display.inner.mass", "0"), ("knownMass.spins[2].display.outer.mass", "99"), ("knownMass.spins[2].display.outer.angle", "271"));
        status.ShouldBe(HttpStatusCode.Redirect, text);
        var record = _bay.Store.Instruments.Find(id)!.Records[^1];
        var body = System.Text.Json.Nodes.JsonNode.Parse(record.Body)!;
        body["knownMass"]!["spins"]!.AsArray().Count.ShouldBe(2);
        body["knownMass"]!["spins"]![1]!["added"]![0]!["mass"]!.GetValue<string>().ShouldBe("100 g");
        body["planes"]!["inner"]!["radius"]!.GetValue<string>().ShouldBe("200 mm");

        var sample = System.Text.Json.Nodes.JsonNode.Parse(File.ReadAllText(Path.Combine(OperationTests.Root(), "samples", "balance-machine-worked.json")))!.AsObject();
        foreach (var other in new[] { "rotor", "traverse", "index", "repeat", "shop", "permissible" })
        {
            sample.Remove(other);
        }

        var command = Trundle.Visits.Operations.OperationList.Of("balance machine").Run(Trundle.Visits.Files.FileNode.From(sample)).Value.Body;
        System.Text.Json.Nodes.JsonNode.Parse(record.Answer!)!["unbalanceReductionRatioPercent"]!.GetValue<double>().ShouldBe(command["unbalanceReductionRatioPercent"]!.GetValue<double>(), 1e-9);

        // The next one begins with where the masses sit and what the maker states, and with nothing measured.
        var (_, next) = await _bay.GetAsync($"/instruments/{id}");
        next.ShouldContain("name=\"knownMass.reductionRatio\" type=\"text\" value=\"95\"");
        next.ShouldContain("name=\"planes.inner.radius\" type=\"text\" value=\"200\"");
        next.ShouldNotContain("value=\"182\"");
    }

    [Fact]
    public async Task A_wrong_spin_is_said_in_its_row_with_what_was_typed_and_what_stands_ready_makes_no_test()
    {
        var id = await AddAsync("balancer", "balancer");
        (string, string)[] spins = [.. Enumerable.Range(0, 3).SelectMany(i => new[]
        {
            ($"repeat.spins[{i * 2}].inner.mass", "22"), ($"repeat.spins[{i * 2}].inner.angle", i == 2 ? "wrong" : "320"),
            ($"repeat.spins[{i * 2}].outer.mass", "15"), ($"repeat.spins[{i * 2}].outer.angle", "140"),
        })];
        var (status, text, _) = await SendAsync(id, "repeat-spin study", [("on", "2026-03-12"), ("planes.inner.radius", "200"), ("planes.outer.radius", "200"), .. spins]);
        status.ShouldBe(HttpStatusCode.BadRequest);
        text.ShouldContain("value=\"wrong\"");
        var field = text.IndexOf("name=\"repeat.spins[4].inner.angle\"", StringComparison.Ordinal);
        text.IndexOf("class=\"problem\"", field, StringComparison.Ordinal).ShouldBeLessThan(text.IndexOf("name=\"repeat.spins[4].outer.mass\"", field, StringComparison.Ordinal));
        _bay.Store.Instruments.Find(id)!.Records.ShouldNotContain(r => r.Kind == InstrumentRecordKind.RepeatSpins);

        // A limit alone is no test.
        (await SendAsync(id, "machine check", ("on", "2026-03-12"), ("planes.inner.radius", "200"), ("planes.outer.radius", "200"), ("index.limit", "10"))).Text.ShouldContain("There is no test here");
    }
}
