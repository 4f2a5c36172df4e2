using System.Net;
using System.Text.Json.Nodes;
using Trundle.Engine.Practice;
using Trundle.Engine.Practice.Bench;
using Trundle.Engine.Practice.Drills;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Roll;

namespace Trundle.Web.Tests;

/// <summary>Attempts come in as what was done and are judged here; a trainee sees their own and no other's; an instructor decides.</summary>
public sealed class RollTests : IAsyncLifetime
{
    private readonly StandingClock _clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync()
    {
        _bay = await RunningBay.StartAsync(_clock);
        _bay.Store.People.Add("T5", Role.Trainee, UnitHabits.Metric);
    }

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    private long Id(string name) => _bay.Store.People.All().Single(p => p.Name == name).Id;

    private static string Body(Guid id, string kind, int seed, IEnumerable<string> acts, string day = "2026-03-14") => new JsonObject
    {
        ["id"] = id.ToString("D"),
        ["kind"] = kind,
        ["seed"] = seed,
        ["day"] = day,
        ["acts"] = new JsonArray([.. acts.Select(a => (JsonNode?)a)]),
    }.ToJsonString();

    /// <summary>The order of a demount, done rightly.</summary>
    private static IEnumerable<string> Good => DemountDrill.Deeds.Where(d => !d.IsTrap).Select(d => d.Key);

    private async Task<Guid> SendAsync(string kind, int seed, IEnumerable<string> acts)
    {
        var id = Guid.NewGuid();
        var (status, body) = await _bay.PostAsync("/api/v1/practice/attempts", Body(id, kind, seed, acts));
        status.ShouldBe(HttpStatusCode.OK, body.ToJsonString());
        return id;
    }

    [Fact]
    public async Task An_attempt_is_judged_by_what_was_done_and_taken_once()
    {
        await _bay.EnterAsAsync("T4");
        var bench = PracticeBench.For(PracticeWheels.Of(7, PracticeLevel.OneStaticWeight)).Spin().Value;
        var id = Guid.NewGuid();
        var (status, body) = await _bay.PostAsync("/api/v1/practice/attempts", Body(id, "wheel/one-weight", 7, bench.Acts));
        status.ShouldBe(HttpStatusCode.OK);
        body["points"]!.GetValue<int>().ShouldBe(BenchJudge.Judge(bench).Score);
        (await _bay.PostAsync("/api/v1/practice/attempts", Body(id, "wheel/one-weight", 7, bench.Acts))).Status.ShouldBe(HttpStatusCode.OK);
        _bay.Store.Roll.Book().Rows.ShouldHaveSingleItem().Decision.ShouldBe(AttemptDecision.Open);

        // A score is not believed: it is no part of the form.
        var scored = JsonNode.Parse(Body(Guid.NewGuid(), "wheel/one-weight", 7, bench.Acts))!.AsObject();
        scored["points"] = 100;
        (await _bay.PostAsync("/api/v1/practice/attempts", scored.ToJsonString())).Status.ShouldBe(HttpStatusCode.BadRequest);
        foreach (var (kind, seed, act, day) in new[] { ("wheel/none", 7, "spin down covered", "2026-03-14"), ("wheel/one-weight", 7, "win", "2026-03-14"), ("wheel/one-weight", 0, "spin down covered", "2026-03-14"), ("wheel/one-weight", 7, "spin down covered", "2026-04-14") })
        {
            var (refused, answer) = await _bay.PostAsync("/api/v1/practice/attempts", Body(Guid.NewGuid(), kind, seed, [act], day));
            refused.ShouldBe(HttpStatusCode.BadRequest, kind + act);
            answer["error"]!["message"]!.GetValue<string>().ShouldNotBeEmpty();
        }

        _bay.Store.Roll.Book().Rows.Count.ShouldBe(1);
    }

    [Fact]
    public async Task Nobody_entering_keeps_nothing()
    {
        var (status, body) = await _bay.PostAsync("/api/v1/practice/attempts", Body(Guid.NewGuid(), PracticeAttempts.Demount, 3, Good));
        status.ShouldBe(HttpStatusCode.Conflict);
        body["error"]!["code"]!.GetValue<string>().ShouldBe("person-unknown");
        _bay.Store.Roll.Book().Rows.ShouldBeEmpty();
    }

    [Fact]
    public async Task A_trainee_sees_their_own_attempts_and_no_way_leads_to_another_trainees()
    {
        await _bay.EnterAsAsync("T4");
        var theirs = await SendAsync(PracticeAttempts.Demount, 3, ["heat"]);
        await _bay.EnterAsAsync("T5");
        var own = await SendAsync(PracticeAttempts.Demount, 3, Good);
        var (_, page) = await _bay.GetAsync("/roll");
        page.ShouldContain($"/roll/{own:D}");
        page.ShouldNotContain($"{theirs:D}");
        page.ShouldNotContain("T4");
        (await _bay.GetAsync($"/roll/{own:D}")).Status.ShouldBe(HttpStatusCode.OK);
        (await _bay.GetAsync($"/roll/{theirs:D}")).Status.ShouldBe(HttpStatusCode.NotFound);
        (await _bay.GetAsync($"/roll/of/{Id("T5")}")).Status.ShouldBe(HttpStatusCode.OK);
        (await _bay.GetAsync($"/roll/of/{Id("T4")}")).Status.ShouldBe(HttpStatusCode.NotFound);
        (await _bay.GetAsync("/roll.csv")).Text.ShouldNotContain("T4");

        // Nor may they decide, their own or another's; nor take another's identifier for their own.
        foreach (var attempt in new[] { own, theirs })
        {
            (await _bay.SendFormAsync("/people", $"/roll/{attempt:D}", ("record", $"{Guid.NewGuid():D}"), ("decision", "satisfactory"))).Status.ShouldBe(HttpStatusCode.NotFound);
        }

        (await _bay.PostAsync("/api/v1/practice/attempts", Body(theirs, PracticeAttempts.Demount, 3, Good))).Status.ShouldBe(HttpStatusCode.BadRequest);

        // A technician is nobody's assessor either.
        await _bay.EnterAsAsync("T1");
        (await _bay.GetAsync($"/roll/{own:D}")).Status.ShouldBe(HttpStatusCode.NotFound);
        _bay.Store.Roll.Book().Rows.Count.ShouldBe(2);
    }

    [Fact]
    public async Task An_instructor_sees_the_class_decides_once_and_cannot_call_a_failed_attempt_satisfactory()
    {
        await _bay.EnterAsAsync("T4");
        var good = await SendAsync(PracticeAttempts.Demount, 3, Good);
        var stopped = await SendAsync(PracticeAttempts.Demount, 4, ["bead-breaking"]);
        await _bay.EnterAsAsync("I2");
        var (_, page) = await _bay.GetAsync("/roll");
        page.ShouldContain("T4");
        page.ShouldContain("T5");
        page.ShouldContain($"/roll/{stopped:D}");
        var record = Guid.NewGuid();
        for (var twice = 0; twice < 2; twice++)
        {
            (await _bay.SendFormAsync($"/roll/{good:D}", $"/roll/{good:D}", ("record", $"{record:D}"), ("decision", "satisfactory"), ("feedback", "Well done."))).Status.ShouldBe(HttpStatusCode.Redirect);
        }

        var refused = await _bay.SendFormAsync($"/roll/{stopped:D}", $"/roll/{stopped:D}", ("record", $"{Guid.NewGuid():D}"), ("decision", "satisfactory"));
        refused.Status.ShouldBe(HttpStatusCode.BadRequest);
        refused.Text.ShouldContain("ended for safety is not satisfactory");
        (await _bay.SendFormAsync($"/roll/{stopped:D}", $"/roll/{stopped:D}", ("record", $"{Guid.NewGuid():D}"))).Text.ShouldContain("Say satisfactory or not yet.");
        var rows = _bay.Store.Roll.Book().Rows;
        rows.Count.ShouldBe(3);
        rows.Count(r => r.Decides == good).ShouldBe(1);
        RollTotals.Of(_bay.Store.Roll.Book(), $"{Id("T4")}", "demount-mount").ShouldBe(TaskStanding.Practised, "practice is not the hand on a real wheel");
        (await _bay.GetAsync($"/roll/{good:D}")).Text.ShouldContain("Well done.");
        (await _bay.GetAsync("/roll.csv")).Text.ShouldContain("\"T4\",");
    }

    [Fact]
    public async Task The_class_is_told_which_criterion_fewest_met()
    {
        await _bay.EnterAsAsync("T4");
        await SendAsync(PracticeAttempts.Demount, 3, Good);
        await SendAsync(PracticeAttempts.Demount, 3, Good.Skip(1));
        await SendAsync(PracticeAttempts.Demount, 3, Good.Skip(2));
        await _bay.EnterAsAsync("I2");
        var (_, page) = await _bay.GetAsync("/roll");
        page.ShouldContain("Where the class is stuck");

        // Whole: met by one of three; the second has no cap off, the third leaves two out.
        page.ShouldContain("0.33");
    }

    [Fact]
    public async Task Work_on_a_visit_that_an_instructor_signed_off_stands_in_the_roll()
    {
        var visit = Guid.NewGuid();
        _bay.Store.Visits.Open(visit, "T4", _clock.Now, new DateOnly(2026, 3, 14));
        Enter("T4", Role.Trainee, ("work.steps.1L.check-spin.done", "true"), ("vehicle.name", "Blue hatchback"));
        Enter("I2", Role.Instructor, ("work.signedOff.1L.check-spin.result", "satisfactory"));
        var row = _bay.Store.Roll.Book().Rows.ShouldHaveSingleItem();
        (row.Task, row.Learner, row.Assessor, row.Visit).ShouldBe(("balance", $"{Id("T4")}", $"{Id("I2")}", visit));
        RollTotals.Of(_bay.Store.Roll.Book(), $"{Id("T4")}", "balance").ShouldBe(TaskStanding.Shown);
        await _bay.EnterAsAsync("T4");
        (await _bay.GetAsync($"/roll/{row.Id:D}")).Text.ShouldContain($"/visits/{visit:D}");

        void Enter(string by, Role role, params (string Field, string Typed)[] entries) =>
            _bay.Store.Visits.Append(visit, [.. entries.Select(e => new Entry(Guid.NewGuid(), e.Field, e.Typed, by, role, _clock.Now))], _clock.Now).Value.Refused.ShouldBeEmpty();
    }
}
