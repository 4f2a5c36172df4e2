using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Roll;
using Trundle.Web.Office.Roll;
using Trundle.Web.People;
using Person = Trundle.Store.Person;

namespace Trundle.Web.Office.Lessons;

/// <summary>Lessons: practice for a class, who stands where, and the same on paper. A learner sees the lessons that are for them, and in them only themselves.</summary>
internal static class LessonEndpoints
{
    public static void MapLessons(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/lessons", (HttpContext context, WorkshopStore store, TimeProvider clock) => All(context, store, clock, null, null));
        routes.MapPost("/lessons", Make);
        routes.MapGet("/lessons/{id:guid}", (Guid id, HttpContext context, WorkshopStore store, TimeProvider clock) => One(id, context, store, clock, false));
        routes.MapGet("/lessons/{id:guid}/paper", (Guid id, HttpContext context, WorkshopStore store, TimeProvider clock) => One(id, context, store, clock, true));
    }

    private static bool Sees(Person? person, KeptLesson lesson) => RollEndpoints.SeesAll(person) || (person is not null && lesson.Lesson.For.Contains(RollStore.Name(person)));

    private static RazorComponentResult All(HttpContext context, WorkshopStore store, TimeProvider clock, Problem? problem, Lesson? typed)
    {
        var frame = OfficeFrame.Of(context, store, clock);
        return new RazorComponentResult<LessonsPage>(new Dictionary<string, object?>
        {
            [nameof(LessonsPage.Frame)] = frame,
            [nameof(LessonsPage.Lessons)] = store.Lessons.All().Where(l => Sees(frame.Person, l)).ToList(),
            [nameof(LessonsPage.Trainees)] = RollEndpoints.SeesAll(frame.Person) ? store.People.All().Where(p => p.Role == Role.Trainee).ToList() : [],
            [nameof(LessonsPage.Problem)] = problem,
            [nameof(LessonsPage.Typed)] = typed,
        }) { StatusCode = problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };
    }

    private static IResult Make(HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        if (WhoEnters.On(context, store) is not { } person || !RollEndpoints.SeesAll(person))
        {
            return Results.NotFound();
        }

        var number = sent["seed"].ToString().Trim();
        var seed = int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var read) ? read : number.Length == 0 ? (int?)null : -1;
        var lesson = new Lesson(sent["title"].ToString().Trim(), [.. sent["kind"].OfType<string>()], seed, [.. sent["for"].OfType<string>().Where(f => store.People.All().Any(p => RollStore.Name(p) == f))]);
        var id = Guid.TryParse(sent["id"].ToString(), out var own) ? own : Guid.NewGuid();
        return store.Lessons.Make(id, lesson, DateOnly.FromDateTime(clock.GetLocalNow().DateTime), new Recorder(person.Name, person.Role, clock.GetUtcNow()))
            .Match(made => Results.LocalRedirect($"~/lessons/{made.Id:D}"), problem => All(context, store, clock, problem, lesson));
    }

    private static IResult One(Guid id, HttpContext context, WorkshopStore store, TimeProvider clock, bool paper)
    {
        var frame = OfficeFrame.Of(context, store, clock);
        if (store.Lessons.Find(id) is not { } lesson || !Sees(frame.Person, lesson))
        {
            return Results.NotFound();
        }

        var all = RollEndpoints.SeesAll(frame.Person);
        var book = all ? store.Roll.Book() : store.Roll.Book().Of(RollStore.Name(frame.Person!));
        string[] learners = [.. lesson.Lesson.For.Where(l => all || l == RollStore.Name(frame.Person!))];
        var standings = learners.Select(l => (Name: RollEndpoints.NameOf(store, l), Learner: l, At: LessonStanding.Of(lesson.Lesson, id, l, book))).ToList();
        return paper
            ? new RazorComponentResult<LessonPaper>(new Dictionary<string, object?>
            {
                [nameof(LessonPaper.Frame)] = frame,
                [nameof(LessonPaper.Lesson)] = lesson,
                [nameof(LessonPaper.Learner)] = all ? null : learners[0],
            })
            : new RazorComponentResult<LessonPage>(new Dictionary<string, object?>
            {
                [nameof(LessonPage.Frame)] = frame,
                [nameof(LessonPage.Lesson)] = lesson,
                [nameof(LessonPage.Standings)] = standings,
            });
    }
}
