using System.Text.RegularExpressions;
using Trundle.Visits.Bay;

namespace Trundle.Web.Tests;

/// <summary>The board: by promised time, what each person does next, and the word that something changed.</summary>
public sealed class BoardTests : IAsyncLifetime
{
    private readonly StandingClock _clock = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));
    private RunningBay _bay = null!;

    public async ValueTask InitializeAsync() => _bay = await RunningBay.StartAsync(_clock);

    public ValueTask DisposeAsync() => _bay.DisposeAsync();

    private Guid Visit(params (string Field, string Typed, string By)[] fields)
    {
        var id = Guid.NewGuid();
        _bay.Store.Visits.Open(id, "D1", _clock.Now, new DateOnly(2026, 3, 14));
        Enter(id, fields);
        return id;
    }

    private void Enter(Guid visit, params (string Field, string Typed, string By)[] fields)
    {
        _clock.Now = _clock.Now.AddSeconds(1);
        _bay.Store.Visits.Append(visit, [.. fields.Select(f => new Entry(Guid.NewGuid(), f.Field, f.Typed, f.By, Role.Trainee, _clock.Now))], _clock.Now).Value.Refused.ShouldBeEmpty();
    }

    /// <summary>The people of the board with what is next for each.</summary>
    private async Task<Dictionary<string, string>> NextAsync()
    {
        var (_, page) = await _bay.GetAsync("/");
        return Regex.Matches(page, "<div><dt>(?<who>.*?)<span.*?</dt>(?<what>.*?)</div>", RegexOptions.Singleline)
            .ToDictionary(m => m.Groups["who"].Value, m => System.Net.WebUtility.HtmlDecode(Regex.Replace(m.Groups["what"].Value, "<.*?>", "")).Trim());
    }

    private static readonly (string, string, string)[] Two =
    [
        ("vehicle.axles.0.steered", "true", "D1"), ("vehicle.axles.0.placard.size", "195/65 R15 91H", "D1"), ("vehicle.axles.0.placard.cold", "230 kPa", "D1"), ("vehicle.odometer", "48200 km", "D1"), ("rules", "uk", "D1"), ("date", "2026-03-14", "D1"),
    ];

    [Fact]
    public async Task The_promised_time_orders_and_a_line_is_made_anew_only_when_something_was_entered()
    {
        var late = Visit([("vehicle.name", "Later van", "D1"), ("work.promised", "2026-03-14 16:00", "D1")]);
        Visit([("vehicle.name", "Sooner van", "D1"), ("work.promised", "2026-03-14 09:30", "D1")]);
        Visit([("vehicle.name", "Any time van", "D1")]);
        (await OrderAsync()).ShouldBe(["Sooner van", "Later van", "Any time van"]);
        Enter(late, ("work.promised", "2026-03-14 09:10", "D1"), ("vehicle.name", "Hurried van", "D1"));
        (await OrderAsync()).ShouldBe(["Hurried van", "Sooner van", "Any time van"]);
        (await _bay.GetAsync("/")).Text.ShouldNotContain(">late<");
        _clock.Now = _clock.Now.AddMinutes(20);
        Regex.Count((await _bay.GetAsync("/")).Text, ">late<").ShouldBe(1, "a time passes by itself");
    }

    private async Task<string[]> OrderAsync() => [.. Regex.Matches((await _bay.GetAsync("/")).Text, "<h2><a href=\"/bay/[^\"]+\" translate=\"no\">([^<]+)</a></h2>").Select(m => m.Groups[1].Value)];

    [Fact]
    public async Task The_next_thing_belongs_to_whoever_entered_last_at_the_vehicle()
    {
        var visit = Visit([("vehicle.name", "Grey van", "D1"), .. Two]);
        (await NextAsync()).ShouldBeEmpty("the desk works on no vehicle");
        Enter(visit, ("fitted.1L.tyre.marking", "195/65 R15 91H", "T1"));
        var next = await NextAsync();
        next.Keys.ShouldBe(["T1"]);
        next["T1"].ShouldStartWith("Grey van: ");
        Enter(visit, ("fitted.1R.tyre.marking", "195/65 R15 91H", "T4"));
        (await NextAsync()).Keys.ShouldBe(["T4"]);
    }

    [Fact]
    public async Task What_a_trainee_may_not_do_is_asked_of_those_who_may()
    {
        var visit = Visit([("vehicle.name", "Grey van", "D1"), .. Two, ("fitted.1L.tyre.marking", "195/65 R15 91H", "T4")]);
        var lines = Office.Board.BoardLine.Of(_bay.Store.Visits.Find(visit)!, [], _clock.Now);
        foreach (var (needs, asked) in new[] { (Right.Enter, Array.Empty<string>()), (Right.HandBack, ["I2", "T1"]), (Right.Decide, ["I2", "T1"]), (Right.PermitTrainee, ["I2"]), (Right.LetGo, ["I2"]) })
        {
            var next = Office.Board.PersonNext.All(_bay.Store.People.All(), [lines with { Next = lines.Next with { Needs = needs } }]);
            next.Where(n => n.Asked.Count > 0).Select(n => n.Person.Name).ShouldBe(asked, needs.ToString());
            next.Where(n => n.Own.Count > 0).Select(n => n.Person.Name).ShouldBe(needs == Right.Enter ? ["T4"] : [], needs.ToString());
        }
    }

    [Fact]
    public async Task A_board_that_stands_open_is_told_that_something_was_entered()
    {
        var visit = Visit(("vehicle.name", "Grey van", "D1"));
        using var stop = new CancellationTokenSource(TimeSpan.FromSeconds(30));
        using var answer = await _bay.Client.GetAsync(new Uri("/board/events", UriKind.Relative), HttpCompletionOption.ResponseHeadersRead, stop.Token);
        answer.Content.Headers.ContentType!.MediaType.ShouldBe("text/event-stream");
        using var reader = new StreamReader(await answer.Content.ReadAsStreamAsync(stop.Token));
        var first = await reader.ReadLineAsync(stop.Token);
        first.ShouldStartWith("data: ");
        (await reader.ReadLineAsync(stop.Token)).ShouldBe("");
        Enter(visit, ("work.bay", "2", "T1"));
        string? next;
        do
        {
            // The clock of the test stands still: it is put forward by the look at the table.
            _clock.Now = _clock.Now.AddSeconds(1);
            next = await reader.ReadLineAsync(stop.Token);
        }
        while (next is not null && !next.StartsWith("data: ", StringComparison.Ordinal));
        next.ShouldNotBe(first);
    }
}
