using System.Net;
using Trundle.Engine.Practice;
using Trundle.Engine.Practice.Drills;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Roll;

namespace Trundle.Web.Tests;

/// <summary>An instructor makes a lesson; each learner sees it and in it only themselves; the class is gone through without names; and the same on paper.</summary>
public sealed class LessonTests : IAsyncLifetime
{
    private readonly StandingClock _clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync()
    {
        _bay = await RunningBay.StartAsync(_clock);
        _bay.Store.People.Add("T5", Role.Trainee, UnitHabits.Metric);
        _bay.Store.People.Add("T6", Role.Trainee, UnitHabits.Metric);
    }

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    private Person Person(string name) => _bay.Store.People.All().Single(p => p.Name == name);

    private string Key(string name) => RollStore.Name(Person(name));

    private async Task<Guid> LessonAsync(string seed = "9")
    {
        await _bay.EnterAsAsync("I2");
        var id = Guid.NewGuid();
        var (status, text, to) = await _bay.SendFormAsync("/lessons", "/lessons", ("id", $"{id:D}"), ("title", "Monday <b>"), ("seed", seed), ("kind", PracticeAttempts.Demount), ("kind", "drill/tread"), ("kind", "wheel/two-planes"), ("kind", PracticeAttempts.Tightening), ("for", Key("T4")), ("for", Key("T5")));
        status.ShouldBe(HttpStatusCode.Redirect, text);
        to.ShouldBe($"/lessons/{id:D}");
        return id;
    }

    private AttemptRow Attempt(string name, int seed, params IEnumerable<string> acts) =>
        _bay.Store.Roll.Take(Guid.NewGuid(), new PracticeAttempt(PracticeAttempts.Demount, (ulong)seed, new DateOnly(2026, 3, 14), [.. acts]), Person(name), new DateOnly(2026, 3, 14), _clock.Now).Value;

    private static IEnumerable<string> Good => DemountDrill.Deeds.Where(d => !d.IsTrap).Select(d => d.Key);

    [Fact]
    public async Task The_instructor_sees_who_is_stuck_where_and_goes_through_an_attempt_that_has_no_name()
    {
        var id = await LessonAsync();
        Attempt("T4", 9, Good);
        var stuck = Attempt("T5", 9, ["bead-breaking"]);
        var (_, page) = await _bay.GetAsync($"/lessons/{id:D}");
        page.ShouldContain("Monday &lt;b&gt;");
        page.ShouldContain("passed at attempt 1");
        page.ShouldContain("stopped, 1 attempt");
        page.ShouldContain("not tried");
        page.ShouldContain("<strong>1 of 2</strong> not yet: stopped for safety (Order of a demount)");
        page.ShouldNotContain("T6");
        page.ShouldContain($"/roll/{stuck.Id:D}?unnamed=1");
        var (_, unnamed) = await _bay.GetAsync($"/roll/{stuck.Id:D}?unnamed=1");
        unnamed.ShouldContain("a trainee");
        unnamed.ShouldNotContain("T5");
        unnamed.ShouldNotContain("Decide and sign");
    }

    [Fact]
    public async Task A_learner_sees_the_lesson_with_themselves_alone_and_nobody_else_sees_it()
    {
        var id = await LessonAsync("");
        Attempt("T4", LessonSeed(id, "T4"), Good);
        await _bay.EnterAsAsync("T5");
        var (_, page) = await _bay.GetAsync($"/lessons/{id:D}");
        page.ShouldContain("T5");
        page.ShouldNotContain("T4");
        page.ShouldNotContain("passed");
        page.ShouldNotContain("Commonest mistakes");
        page.ShouldContain($"/bay/practice/drill/demount/{LessonSeed(id, "T5")}");
        (await _bay.GetAsync("/lessons")).Text.ShouldContain($"/lessons/{id:D}");
        (await _bay.GetAsync("/lessons")).Text.ShouldNotContain("A new lesson");
        (await _bay.SendFormAsync("/people", "/lessons", ("title", "Mine"), ("kind", "drill/tin"), ("for", Key("T5")))).Status.ShouldBe(HttpStatusCode.NotFound);
        await _bay.EnterAsAsync("T6");
        (await _bay.GetAsync($"/lessons/{id:D}")).Status.ShouldBe(HttpStatusCode.NotFound);
        (await _bay.GetAsync($"/lessons/{id:D}/paper")).Status.ShouldBe(HttpStatusCode.NotFound);
        (await _bay.GetAsync("/lessons")).Text.ShouldNotContain($"{id:D}");
    }

    [Fact]
    public async Task On_paper_stands_what_is_asked_and_no_answer()
    {
        var id = await LessonAsync();
        var (status, page) = await _bay.GetAsync($"/lessons/{id:D}/paper");
        status.ShouldBe(HttpStatusCode.OK);
        foreach (var deed in DemountDrill.Of(9).Offered)
        {
            page.ShouldContain(System.Text.Encodings.Web.HtmlEncoder.Default.Encode(deed.Words));
        }

        page.ShouldContain("The depth that counts.");
        page.ShouldContain("<svg");
        page.ShouldContain("First spin: inner");
        page.ShouldNotContain("<script");
        var drill = DrillList.Of(DrillKind.Tread, 9, new DateOnly(2026, 3, 14));
        page.ShouldNotContain(drill.Questions[1].Hold("0").Required!.Amount.Text, Case.Sensitive, "the limit is to be known");
    }

    [Fact]
    public async Task A_form_that_is_no_lesson_is_told_and_keeps_what_was_typed()
    {
        await _bay.EnterAsAsync("I2");
        var (status, text, _) = await _bay.SendFormAsync("/lessons", "/lessons", ("title", "Tuesday"), ("seed", "many"), ("kind", "drill/tin"), ("for", Key("T4")));
        status.ShouldBe(HttpStatusCode.BadRequest);
        text.ShouldContain("A number is from 1 to 999999");
        text.ShouldContain("value=\"Tuesday\"");
        _bay.Store.Lessons.All().ShouldBeEmpty();
    }

    private int LessonSeed(Guid id, string name) => _bay.Store.Lessons.Find(id)!.Lesson.SeedFor(id, Key(name));
}
