using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Trundle.Engine.Practice;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Roll;
using Trundle.Web.Accounts;
using Trundle.Web.Api;
using Trundle.Web.People;
using Person = Trundle.Store.Person;

namespace Trundle.Web.Office.Roll;

/// <summary>The roll: who has shown what. An assessor sees everybody's, anybody else their own and no other.</summary>
internal static class RollEndpoints
{
    public static void MapRoll(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/roll", (HttpContext context, WorkshopStore store, TimeProvider clock) => Page(context, store, clock));
        routes.MapGet("/roll.csv", Csv);
        routes.MapGet("/roll/of/{person:long}", (long person, HttpContext context, WorkshopStore store, TimeProvider clock) => Learner(person, context, store, clock));
        routes.MapGet("/roll/{attempt:guid}", (Guid attempt, HttpContext context, WorkshopStore store, TimeProvider clock) => Attempt(attempt, context, store, clock, null));
        routes.MapPost("/roll/{attempt:guid}", Decide).RequireRateLimiting(Gate.Policy);
        routes.MapPost("/api/v1/practice/attempts", TakeAsync).DisableAntiforgery();
    }

    /// <summary>Who sees everybody's rows: whoever may decide them.</summary>
    public static bool SeesAll(Person? person) => person?.Role.May(Right.PermitTrainee) == true;

    /// <summary>The rows that somebody may see.</summary>
    private static RollBook Seen(WorkshopStore store, Person? person) =>
        person is null ? RollBook.Empty : SeesAll(person) ? store.Roll.Book() : store.Roll.Book().Of(RollStore.Name(person));

    /// <summary>Whose lines somebody sees: an assessor every trainee and whoever else tried something, anybody else themselves.</summary>
    private static List<Person> Learners(WorkshopStore store, Person? person, RollBook book) =>
        person is null ? [] : !SeesAll(person) ? [person] : [.. store.People.All().Where(p => p.Role == Role.Trainee || book.Rows.Any(r => r.Learner == RollStore.Name(p)))];

    private static RazorComponentResult Page(HttpContext context, WorkshopStore store, TimeProvider clock)
    {
        var frame = OfficeFrame.Of(context, store, clock);
        var book = Seen(store, frame.Person);
        var learners = Learners(store, frame.Person, book);
        return new RazorComponentResult<RollPage>(new Dictionary<string, object?>
        {
            [nameof(RollPage.Frame)] = frame,
            [nameof(RollPage.Book)] = book,
            [nameof(RollPage.Learners)] = learners,
            [nameof(RollPage.Totals)] = RollTotals.Of(book, learners.Select(RollStore.Name)),
        });
    }

    private static IResult Csv(HttpContext context, WorkshopStore store)
    {
        var person = WhoEnters.On(context, store);
        var book = Seen(store, person);
        var learners = Learners(store, person, book);
        var totals = RollTotals.Of(book, learners.Select(RollStore.Name)).Zip(learners, (t, p) => t with { Learner = p.Name }).ToList();
        return Results.File(Encoding.UTF8.GetBytes(RollTotals.Csv(totals)), "text/csv", "roll.csv");
    }

    private static IResult Learner(long id, HttpContext context, WorkshopStore store, TimeProvider clock)
    {
        var frame = OfficeFrame.Of(context, store, clock);
        if (store.People.Find(id) is not { } learner || (frame.Person?.Id != id && !SeesAll(frame.Person)))
        {
            return Results.NotFound();
        }

        var book = store.Roll.Book().Of(RollStore.Name(learner));
        return new RazorComponentResult<LearnerPage>(new Dictionary<string, object?>
        {
            [nameof(LearnerPage.Frame)] = frame,
            [nameof(LearnerPage.Learner)] = learner,
            [nameof(LearnerPage.Book)] = book,
            [nameof(LearnerPage.Total)] = RollTotals.Of(book, [RollStore.Name(learner)])[0],
        });
    }

    private static IResult Attempt(Guid id, HttpContext context, WorkshopStore store, TimeProvider clock, Problem? problem)
    {
        var frame = OfficeFrame.Of(context, store, clock);
        var book = Seen(store, frame.Person);
        return book.Rows.FirstOrDefault(r => r.Id == id && r.Decides is null) is not { } row ? Results.NotFound() : new RazorComponentResult<AttemptPage>(new Dictionary<string, object?>
        {
            [nameof(AttemptPage.Frame)] = frame,
            [nameof(AttemptPage.Row)] = row,
            [nameof(AttemptPage.Decisions)] = book.Rows.Where(r => r.Decides == id).ToList(),
            // Before a class an attempt has no name.
            [nameof(AttemptPage.NameOf)] = (Func<string, string>)(name => name == row.Learner && context.Request.Query.ContainsKey("unnamed") ? "a trainee" : NameOf(store, name)),
            [nameof(AttemptPage.AsksPin)] = context.RequestServices.GetRequiredService<Door>().Needed,
            [nameof(AttemptPage.Unnamed)] = context.Request.Query.ContainsKey("unnamed"),
            [nameof(AttemptPage.Problem)] = problem,
        }) { StatusCode = problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };
    }

    /// <summary>The name of whoever has a number.</summary>
    public static string NameOf(WorkshopStore store, string number) =>
        long.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var id) && store.People.Find(id) is { } person ? person.Name : $"number {number}";

    private static IResult Decide(Guid attempt, HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        if (WhoEnters.On(context, store) is not { } person || !SeesAll(person))
        {
            return Results.NotFound();
        }

        bool? satisfactory = sent["decision"].ToString() switch
        {
            "satisfactory" => true,
            "not-yet" => false,
            _ => null,
        };
        if (satisfactory is null || !Guid.TryParse(sent["record"].ToString(), out var record))
        {
            return Attempt(attempt, context, store, clock, new Problem("decision", "missing", "Say satisfactory or not yet."));
        }

        // Where people sign in, a decision is signed by the PIN of whoever decides.
        var door = context.RequestServices.GetRequiredService<Door>();
        if (door.Needed && door.PinRefused(Device.Of(context)!.Id, person.Id, sent["pin"].ToString().Trim()) is { } refused)
        {
            return Attempt(attempt, context, store, clock, refused);
        }

        var feedback = sent["feedback"].ToString().Trim();
        return store.Roll.Decide(attempt, record, satisfactory.Value, feedback.Length > 1000 ? feedback[..1000] : feedback, person, Today(clock), clock.GetUtcNow())
            .Match(_ => Results.LocalRedirect($"~/roll/{attempt:D}"), problem => Attempt(attempt, context, store, clock, problem));
    }

    /// <summary>An attempt comes in from a tablet: what was done, never a score.</summary>
    private static async Task<IResult> TakeAsync(HttpContext context, WorkshopStore store, TimeProvider clock)
    {
        var body = await ApiAnswer.BodyAsync(context.Request).ConfigureAwait(false);
        if (!body.IsRead)
        {
            return ApiAnswer.Wrong(body.Problem!, ApiAnswer.StatusOf(body.Problem!));
        }

        if (WhoEnters.On(context, store) is not { } person)
        {
            return ApiAnswer.Wrong(new Problem("by", "person-unknown", "First choose who enters, on the people page."), StatusCodes.Status409Conflict);
        }

        var problems = new List<Problem>();
        var o = new FileObject(body.Value, problems);
        var id = o.Require("id", "the attempt's own identifier") && Guid.TryParse(o.Text("id"), out var read) ? read : (Guid?)null;
        var kind = o.Require("kind", "say which practice") ? o.Text("kind") : null;
        var seed = o.Require("seed", "the number of the wheel or the drill") ? o.Whole("seed", 1, 999_999) : null;
        var day = o.Require("day", "the day on which it was done") ? o.Date("day") : null;
        var acts = o.Texts("acts");
        o.Done();
        if (problems.Count > 0)
        {
            return ApiAnswer.Wrong(problems[0]);
        }

        if (id is null || kind is null || seed is null || day is null)
        {
            return ApiAnswer.Wrong(new Problem("id", "not-an-identifier", "An attempt has an identifier such as 01920000-0000-7000-8000-000000000001."));
        }

        return store.Roll.Take(id.Value, new PracticeAttempt(kind, (ulong)seed.Value, day.Value, acts), person, Today(clock), clock.GetUtcNow())
            .Match(row => ApiAnswer.Json(new System.Text.Json.Nodes.JsonObject { ["id"] = row.Id.ToString("D"), ["points"] = row.Points, ["number"] = row.Number }), problem => ApiAnswer.Wrong(problem));
    }

    private static DateOnly Today(TimeProvider clock) => DateOnly.FromDateTime(clock.GetLocalNow().DateTime);
}
