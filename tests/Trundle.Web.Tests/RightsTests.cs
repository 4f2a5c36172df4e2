using System.Net;
using Trundle.Engine.Findings;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Web.Tests;

/// <summary>Each right is tried by each role where the program holds it: whoever has it by the table is let, and nobody else.</summary>
public sealed class RightsTests(RightsTests.Workshop workshop) : IClassFixture<RightsTests.Workshop>
{
    private const string Rules = """{"rules":[{"id":"tread","quantity":"tread depth","holds":"at least","limit":"3 mm","ruleSets":["uk"],"category":"refer","text":"Three millimetres.","action":"Offer a tyre.","source":"Workshop rule"}]}""";

    private readonly StandingClock _clock = workshop.Clock;
    private readonly RunningBay _bay = workshop.Bay;

    /// <summary>One workshop for every try: each makes a visit, a sign-in and a person of its own.</summary>
    public sealed class Workshop : IAsyncLifetime
    {
        public StandingClock Clock { get; } = new(new DateTimeOffset(2026, 3, 14, 9, 0, 0, TimeSpan.Zero));

        public RunningBay Bay { get; private set; } = null!;

        public async ValueTask InitializeAsync()
        {
            Bay = await RunningBay.StartAsync(Clock, WorkshopRules.Read(FileNode.Parse(Rules, "rules").Value).Value, signIn: true);
            foreach (var role in RoleWords.All)
            {
                Bay.Store.People.Add(Name(role), role, UnitHabits.Metric);
            }

            await Bay.SendFormAsync("/code", "/code", ("code", Bay.FirstCode!), ("name", "O9"), ("password", "four plain grey words"), ("pin", ""));
        }

        public ValueTask DisposeAsync() => Bay.DisposeAsync();
    }

    /// <summary>One try of each right by somebody of a role: true where it was let.</summary>
    private Dictionary<Right, Func<Role, Task<bool>>> Tries => new()
    {
        [Right.Enter] = role => Task.FromResult(Enter(Visit(), role, "vehicle.name", "Grey van") is null),
        [Right.Decide] = role => Task.FromResult(VisitFindings.Stops(Of(Category.Major), Decided(role, null)) is null && VisitFindings.Stops(Of(Category.Refer), Decided(role, null)) is null),
        [Right.LetGo] = role => Task.FromResult(VisitFindings.Stops(Of(Category.Dangerous), Decided(role, "the customer")) is null),
        // Something else stops this visit; who may not sign at all is told so first.
        [Right.HandBack] = role => Task.FromResult(Enter(Visit(), role, EntryGate.HandBackField, Name(role)) is "hand-back-stopped" or "unread"),
        [Right.TakeBackStop] = role =>
        {
            var visit = Visit();
            Enter(visit, Role.Trainee, "fitted.1L.tyre.condemned", "true").ShouldBeNull();
            Enter(visit, Role.Trainee, "fitted.1L.wheel.multiPiece", "true").ShouldBeNull();
            var taken = (Enter(visit, role, "fitted.1L.tyre.condemned", "false"), Enter(visit, role, "fitted.1L.wheel.multiPiece", "false"));
            (taken.Item1 is null).ShouldBe(taken.Item2 is null);
            return Task.FromResult(taken.Item1 is null);
        },
        [Right.PermitTrainee] = role =>
        {
            var visit = Visit();
            var let = (Enter(visit, role, "work.permissions.0.act", "lift"), Enter(visit, role, "work.signedOff.1L.seat.result", "satisfactory"));
            (let.Item1 is null).ShouldBe(let.Item2 is null);
            return Task.FromResult(let.Item1 is null);
        },
        [Right.TakeRuleOff] = role => Task.FromResult(Enter(Visit(), role, "shopRules.rules.0.limit", "") is null),
        [Right.ChangeProcedure] = role => Task.FromResult(_bay.Store.Procedures.Add(Guid.NewGuid(), "not a procedure", 0, By(role)).Problem!.Code != "may-not-edit"),
        [Right.AnswerForRegistration] = role => Task.FromResult(_bay.Store.Registrations.Declare(null, new DateOnly(2026, 3, 14), By(role)) is null),
        [Right.EraseContact] = role =>
        {
            var visit = Visit();
            Enter(visit, Role.Desk, EntryGate.ContactField, "somebody, by telephone").ShouldBeNull();
            return Task.FromResult(_bay.Store.Visits.EraseContact(visit, Name(role), role, _clock.Now).IsRead);
        },
        [Right.TakeOut] = async role =>
        {
            using var browser = await SignedInAsync(role);
            using var answer = await browser.GetAsync(new Uri("/export.zip", UriKind.Relative));
            return answer.StatusCode == HttpStatusCode.OK;
        },
        [Right.LetTraineesIn] = role => AddAsync(role, Role.Trainee),
        [Right.LetIn] = role => AddAsync(role, Role.Technician),
    };

    [Fact]
    public void Every_right_has_its_words_once_and_is_tried()
    {
        Rights.All.Select(r => r.Right).ShouldBe(Enum.GetValues<Right>());
        Tries.Keys.ShouldBe(Enum.GetValues<Right>(), ignoreOrder: true);
    }

    [Theory, MemberData(nameof(Each))]
    public async Task A_role_is_let_where_the_table_says_so_and_nowhere_else(Right right, Role role) =>
        (await Tries[right](role)).ShouldBe(role.May(right), $"{role.Word()}: {Rights.All.Single(r => r.Right == right).Words}");

    public static TheoryData<Right, Role> Each() => [.. Enum.GetValues<Right>().SelectMany(right => RoleWords.All.Select(role => (right, role)))];

    private static string Name(Role role) => $"Some {role.Word()}";

    private Recorder By(Role role) => new(Name(role), role, _clock.Now);

    private Guid Visit()
    {
        var id = Guid.NewGuid();
        _bay.Store.Visits.Open(id, Name(Role.Desk), _clock.Now, new DateOnly(2026, 3, 14));
        foreach (var (field, typed) in new[] { ("shopRules.rules.0.limit", "3 mm"), (EntryGate.NumberField, "26-0314-9") })
        {
            Enter(id, Role.Desk, field, typed).ShouldBeNull();
        }

        return id;
    }

    /// <returns>Null where the entry was taken, else the code of the refusal.</returns>
    private string? Enter(Guid visit, Role role, string field, string typed)
    {
        _clock.Now = _clock.Now.AddSeconds(1);
        // The role that is claimed does not count; the store knows the person's own.
        var taken = _bay.Store.Visits.Append(visit, [new Entry(Guid.NewGuid(), field, typed, Name(role), Role.Owner, _clock.Now)], _clock.Now).Value;
        return taken.Refused.Count == 0 ? null : taken.Refused[0].Problem.Code;
    }

    private static Finding Of(Category category) => new("tread.depth", category, "1L", Amount.Word("as found"), null, Source.CommonPractice, "Put it right.");

    private static VisitWork Decided(Role role, string? refusal) => VisitWork.Empty with
    {
        Decisions = new[] { Category.Refer, Category.Major, Category.Dangerous }.Select(c => VisitFindings.DecisionKey(Of(c))).Distinct()
            .ToDictionary(key => key, _ => new Decision("As agreed.", Name(role), role, refusal)),
    };

    /// <summary>Somebody of a role signs in.</summary>
    private async Task<HttpClient> SignedInAsync(Role role)
    {
        var browser = _bay.OtherBrowser();
        var code = await _bay.CodeForAsync(Name(role));
        (await RunningBay.SendFormAsync(browser, "/code", "/code", ("code", code), ("password", "four plain grey words"), ("pin", ""))).Status.ShouldBe(HttpStatusCode.Redirect);
        return browser;
    }

    /// <summary>Somebody of a role signs in and adds a person.</summary>
    private async Task<bool> AddAsync(Role role, Role added)
    {
        using var browser = await SignedInAsync(role);
        var face = $"New {added.Word()} of {role.Word()}";
        var (status, text, _) = await RunningBay.SendFormAsync(browser, "/people", "/people/add", ("name", face), ("role", added.Word()));
        var there = _bay.Store.People.All().Any(p => p.Name == face);
        there.ShouldBe(status == HttpStatusCode.OK, text);
        return there;
    }
}
