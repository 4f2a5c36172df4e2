using System.Net;
using Trundle.Visits.Bay;

namespace Trundle.Web.Tests;

/// <summary>The office's forms, sent as a browser without script sends them.</summary>
public sealed class OfficeTests : IAsyncLifetime
{
    private readonly StandingClock _clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync() => _bay = await RunningBay.StartAsync(_clock);

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    private async Task<Guid> TakeInAsync(params (string, string)[] fields)
    {
        var visit = Guid.NewGuid();
        var (status, text, to) = await _bay.SendFormAsync("/arrive", "/arrive", [("visit", $"{visit:D}"), .. fields]);
        status.ShouldBe(HttpStatusCode.Redirect, text);
        to.ShouldBe($"/bay/{visit:D}");
        return visit;
    }

    [Fact]
    public async Task A_vehicle_is_taken_in_and_stands_on_the_board()
    {
        await _bay.EnterAsAsync("D1");
        var visit = await TakeInAsync(("vehicle.name", "Blue hatchback, DEMO 07"), ("vehicle.odometer", "48200"), ("vehicle.drive", "front"), ("rules", "uk"),
            ("work.promised", "2026-03-14T16:30"), ("work.bay", "2"), ("vehicle.axles.0.placard.size", "195/65 R15 91H"), ("vehicle.axles.0.placard.cold", "230"));
        var stored = _bay.Store.Visits.Find(visit)!;
        stored.Fields["vehicle.odometer"].ShouldBe("48200 km");
        stored.Fields["vehicle.axles.0.placard.cold"].ShouldBe("230 kPa");
        stored.Fields["work.promised"].ShouldBe("2026-03-14 16:30");
        stored.Fields["vehicle.axles.0.steered"].ShouldBe("true");
        stored.Fields["vehicle.axles.0.driven"].ShouldBe("true");
        stored.Fields.EntryOf("vehicle.name")!.By.ShouldBe("D1");

        var (_, board) = await _bay.GetAsync("/");
        board.ShouldContain("Blue hatchback, DEMO 07");
        board.ShouldContain("16:30");
        board.ShouldContain("bay 2");
    }

    [Fact]
    public async Task A_form_sent_twice_takes_one_vehicle_in()
    {
        await _bay.EnterAsAsync("D1");
        var visit = Guid.NewGuid();
        for (var i = 0; i < 2; i++)
        {
            (await _bay.SendFormAsync("/arrive", "/arrive", ("visit", $"{visit:D}"), ("vehicle.name", "Red van"))).Status.ShouldBe(HttpStatusCode.Redirect);
        }

        _bay.Store.Visits.InTheWorkshop().ShouldHaveSingleItem();
    }

    [Fact]
    public async Task A_wrong_entry_is_said_at_its_field_with_what_was_typed_and_nothing_is_kept()
    {
        await _bay.EnterAsAsync("D1");
        var (status, text, _) = await _bay.SendFormAsync("/arrive", "/arrive", ("vehicle.name", "Red <van>"), ("vehicle.odometer", "48,200"), ("vehicle.axles.0.placard.size", "195/65 Q15"));
        status.ShouldBe(HttpStatusCode.BadRequest);
        text.ShouldContain("value=\"48,200\"");
        text.ShouldContain("id=\"vehicle-odometer-problem\"");
        text.ShouldContain("aria-describedby=\"vehicle-odometer-problem\"");
        text.ShouldContain("id=\"vehicle-axles-0-placard-size-problem\"");
        text.ShouldContain("Red &lt;van&gt;");
        text.ShouldNotContain("<van>");
        _bay.Store.Visits.InTheWorkshop().ShouldBeEmpty();
    }

    [Fact]
    public async Task Bare_numbers_are_taken_in_the_persons_own_units()
    {
        await _bay.EnterAsAsync("T1");
        (await _bay.SendFormAsync("/people", "/people/units", ("pressure", "psi"), ("depth", "32nds"), ("torque", "lbf·ft"), ("mass", "oz"))).Status.ShouldBe(HttpStatusCode.Redirect);
        var visit = await TakeInAsync(("vehicle.name", "Grey saloon"), ("vehicle.axles.0.placard.cold", "33"), ("vehicle.axles.0.fixings.torque", "110 Nm"));
        var fields = _bay.Store.Visits.Find(visit)!.Fields;
        fields["vehicle.axles.0.placard.cold"].ShouldBe("33 psi");
        fields["vehicle.axles.0.fixings.torque"].ShouldBe("110 Nm");
    }

    [Fact]
    public async Task A_correction_supersedes_only_what_was_changed()
    {
        await _bay.EnterAsAsync("D1");
        var visit = await TakeInAsync(("vehicle.name", "Red van"), ("vehicle.odometer", "48200"), ("work.bay", "1"));
        var before = _bay.Store.Visits.Find(visit)!.Entries.Count;
        var (status, text, _) = await _bay.SendFormAsync($"/visits/{visit}/arrival", $"/visits/{visit}/arrival", ("vehicle.name", "Red van"), ("vehicle.odometer", "48200"), ("work.bay", "3"));
        status.ShouldBe(HttpStatusCode.Redirect, text);
        var stored = _bay.Store.Visits.Find(visit)!;
        stored.Entries.Count.ShouldBe(before + 1);
        stored.Fields["work.bay"].ShouldBe("3");
        var (_, page) = await _bay.GetAsync($"/visits/{visit}");
        page.ShouldContain("<span class=\"unseen\">superseded: </span><span translate=\"no\">1");
    }

    [Theory]
    [InlineData("/arrive")]
    [InlineData("/people/add")]
    [InlineData("/people/choose")]
    [InlineData("/condemned/withdraw")]
    [InlineData("/instruments")]
    public async Task A_form_without_its_token_is_refused(string action)
    {
        using var content = new FormUrlEncodedContent([new("vehicle.name", "Red van"), new("name", "X1"), new("role", "owner"), new("person", "1")]);
        using var answer = await _bay.Client.PostAsync(new Uri(action, UriKind.Relative), content);
        answer.StatusCode.ShouldBe(HttpStatusCode.BadRequest);
        _bay.Store.Visits.InTheWorkshop().ShouldBeEmpty();
        _bay.Store.People.All().Count.ShouldBe(4);
    }

    [Fact]
    public async Task The_board_goes_by_promised_time_and_shows_what_is_late()
    {
        await _bay.EnterAsAsync("D1");
        await TakeInAsync(("vehicle.name", "Third"), ("work.promised", ""));
        await TakeInAsync(("vehicle.name", "Second"), ("work.promised", "2026-03-15T10:00"));
        await TakeInAsync(("vehicle.name", "First"), ("work.promised", "2026-03-14T08:00"));
        var (_, board) = await _bay.GetAsync("/");
        board.IndexOf(">First<", StringComparison.Ordinal).ShouldBeLessThan(board.IndexOf(">Second<", StringComparison.Ordinal));
        board.IndexOf(">Second<", StringComparison.Ordinal).ShouldBeLessThan(board.IndexOf(">Third<", StringComparison.Ordinal));
        board.ShouldContain("<strong class=\"small\">late</strong>");
        board.ShouldContain("1 late");
    }

    [Fact]
    public async Task A_wheel_that_was_off_and_is_not_finally_tightened_stands_on_every_page()
    {
        await _bay.EnterAsAsync("T1");
        var visit = await TakeInAsync(("vehicle.name", "Blue hatchback"), ("vehicle.axles.0.placard.size", "195/65 R15 91H"), ("vehicle.axles.0.fixings.count", "5"), ("vehicle.axles.0.fixings.torque", "120"));
        (await _bay.GetAsync("/")).Text.ShouldNotContain("Not finally tightened:");
        void Enter(string field, string typed) => _bay.Store.Visits.Append(visit, [new Entry(Guid.NewGuid(), field, typed, "T1", Role.Trainee, _clock.Now)], _clock.Now).Value.Refused.ShouldBeEmpty();
        Enter("work.jobs.1L", "balance");
        Enter("work.steps.1L.slacken", "done");
        (await _bay.GetAsync("/")).Text.ShouldContain("Not finally tightened: front left");
        (await _bay.GetAsync("/history")).Text.ShouldContain("Wheels not finally tightened: Blue hatchback");

        for (var i = 1; i <= 5; i++)
        {
            Enter($"work.steps.1L.final-torque.{i}", "120 N·m");
        }

        (await _bay.GetAsync("/")).Text.ShouldNotContain("Not finally tightened:");
    }

    [Fact]
    public async Task A_condemned_tyres_TIN_waits_for_a_persons_decision()
    {
        await _bay.EnterAsAsync("T1");
        var first = await TakeInAsync(("vehicle.name", "First"));
        var second = await TakeInAsync(("vehicle.name", "Second"));
        void Enter(Guid visit, string field, string typed) => _bay.Store.Visits.Append(visit, [new Entry(Guid.NewGuid(), field, typed, "T1", Role.Trainee, _clock.Now)], _clock.Now).Value.Refused.ShouldBeEmpty();
        Enter(first, "fitted.1L.tyre.tin", "1AB CDEFHJ 2220");
        Enter(first, "fitted.1L.tyre.condemned", "true");
        Enter(second, "fitted.2R.tyre.tin", "1ab cdefhj 2220");
        var (_, page) = await _bay.GetAsync($"/visits/{second}");
        page.ShouldContain("What was decided");

        // What hand-back is refused for stands in the list of what stops it, and on paper.
        var stop = $"TIN of the register of condemned tyres: 1ab cdefhj 2220";
        page[page.IndexOf("What stops hand-back", StringComparison.Ordinal)..].ShouldContain(stop);
        var refused = _bay.Store.Visits.Append(second, [new Entry(Guid.NewGuid(), "work.handBack.by", "T1", "T1", Role.Technician, _clock.Now)], _clock.Now).Value.Refused.ShouldHaveSingleItem();
        refused.Problem.Code.ShouldBe("hand-back-stopped");

        // What a tablet holds of the register, and the edition that tells it when to ask again.
        var (_, told) = await _bay.JsonAsync($"/api/v1/visits/{second}");
        told["condemned"]!.AsArray().ShouldHaveSingleItem()!["field"]!.GetValue<string>().ShouldBe("fitted.2R.tyre.tin");
        var (_, register) = await _bay.JsonAsync("/api/v1/condemned");
        register["register"]!.GetValue<string>().ShouldBe(told["register"]!.GetValue<string>());
        var line = register["condemned"]!.AsArray().ShouldHaveSingleItem()!;
        (line["kind"]!.GetValue<string>(), line["name"]!.GetValue<string>(), line["place"]!.GetValue<string>()).ShouldBe(("tin", "1AB CDEFHJ 2220", "fitted.1L"));

        const string field = "work.decisions.condemned-tin@2R.decision";
        var (status, _, _) = await _bay.SendFormAsync($"/visits/{second}", $"/visits/{second}/decide", ("field", field), ("decision", "another of the batch: no cut in its sidewall"));
        status.ShouldBe(HttpStatusCode.Redirect);
        _bay.Store.Visits.Find(second)!.Fields.EntryOf(field)!.Role.ShouldBe(Role.Technician);
        var (_, decided) = await _bay.GetAsync($"/visits/{second}");
        decided[decided.IndexOf("What stops hand-back", StringComparison.Ordinal)..].ShouldNotContain(stop);
    }

    [Fact]
    public async Task The_register_is_withdrawn_by_an_instructor_with_a_reason()
    {
        await _bay.EnterAsAsync("T1");
        var visit = await TakeInAsync(("vehicle.name", "First"));
        foreach (var (field, typed) in new[] { ("fitted.1L.tyre.id", "A17"), ("fitted.1L.tyre.condemned", "true") })
        {
            _bay.Store.Visits.Append(visit, [new Entry(Guid.NewGuid(), field, typed, "T1", Role.Trainee, _clock.Now)], _clock.Now);
        }

        (await _bay.GetAsync("/condemned")).Text.ShouldNotContain("Take back");
        var before = (await _bay.JsonAsync("/api/v1/condemned")).Body;
        before["condemned"]!.AsArray().Count.ShouldBe(1);
        await _bay.EnterAsAsync("I2");
        (await _bay.SendFormAsync("/condemned", "/condemned/withdraw", ("kind", "tyre"), ("name", "A17"), ("why", ""))).Status.ShouldBe(HttpStatusCode.BadRequest);
        (await _bay.SendFormAsync("/condemned", "/condemned/withdraw", ("kind", "tyre"), ("name", "A17"), ("why", "another was meant"))).Status.ShouldBe(HttpStatusCode.Redirect);
        (await _bay.GetAsync("/condemned")).Text.ShouldContain("taken back by I2: another was meant");
        var after = (await _bay.JsonAsync("/api/v1/condemned")).Body;
        after["condemned"]!.AsArray().ShouldBeEmpty();
        after["register"]!.GetValue<string>().ShouldNotBe(before["register"]!.GetValue<string>());
    }

    [Fact]
    public async Task Sources_lists_every_single_figure_with_its_status()
    {
        var (_, page) = await _bay.GetAsync("/sources");
        var figures = Trundle.Engine.Reference.Figures.List;
        (page.Split("<tr>").Length - 1).ShouldBeGreaterThanOrEqualTo(figures.Count);
        foreach (var figure in figures)
        {
            page.ShouldContain(System.Text.Encodings.Web.HtmlEncoder.Default.Encode(figure.What));
        }
    }
}
