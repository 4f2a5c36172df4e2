using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Web.People;

namespace Trundle.Web.Office.Visit;

/// <summary>One visit as the office sees it: how it stands, its papers, and every entry.</summary>
internal static class VisitPageEndpoints
{
    public static void MapVisitPage(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/visits/{id:guid}", (Guid id, HttpContext context, WorkshopStore store, TimeProvider clock) =>
            store.Visits.Find(id) is { } visit ? Page(context, store, clock, visit, null) : Results.NotFound());
        routes.MapPost("/visits/{id:guid}/decide", Decide);
        routes.MapPost("/visits/{id:guid}/erase", Erase);
    }

    /// <summary>Records a person's decision about a TIN that stands in the condemned register.</summary>
    private static IResult Decide(Guid id, HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        if (store.Visits.Find(id) is not { } visit)
        {
            return Results.NotFound();
        }

        var field = sent["field"].ToString();
        var text = sent["decision"].ToString().Trim();
        if (WhoEnters.On(context, store) is not { } person)
        {
            return Page(context, store, clock, visit, new Problem("by", "person-unknown", "First choose who enters, on the people page."));
        }

        if (!person.Role.May(Right.HandBack))
        {
            return Page(context, store, clock, visit, new Problem("by", "may-not-decide", "A technician, an instructor or the owner decides this."));
        }

        if (text.Length == 0 || !store.Condemned.Matches(visit).Any(m => m.DecisionField == field))
        {
            return Page(context, store, clock, visit, new Problem(field, "missing", "Say what was decided: which tyre it is, and how you can tell."));
        }

        var now = clock.GetUtcNow();
        return store.Visits.Append(id, [new Entry(Guid.CreateVersion7(now), field, text, person.Name, person.Role, now)], now).Match(
            taken => taken.Refused.Count == 0 ? Results.LocalRedirect($"~/visits/{id:D}") : Page(context, store, clock, visit, taken.Refused[0].Problem),
            problem => Page(context, store, clock, visit, problem));
    }

    /// <summary>Erases whom to call, or one photograph, for good.</summary>
    private static IResult Erase(Guid id, HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        if (store.Visits.Find(id) is not { } visit)
        {
            return Results.NotFound();
        }

        if (WhoEnters.On(context, store) is not { } person)
        {
            return Page(context, store, clock, visit, new Problem("by", "person-unknown", "First choose who enters, on the people page."));
        }

        var erased = sent["what"].ToString() == "contact" ? store.Visits.EraseContact(id, person.Name, person.Role, clock.GetUtcNow())
            : !person.Role.May(Right.EraseContact) ? Reading<int>.Failed(new Problem("by", "may-not-erase", "A trainee may not erase it; somebody else of the workshop does."))
            : Guid.TryParseExact(sent["photo"], "D", out var photo) && store.Photos.Erase(id, photo) ? Reading<int>.Of(1)
            : Reading<int>.Failed(new Problem("photo", "photo-unknown", "The workshop has no such photograph of this visit."));
        return erased.Match(_ => Results.LocalRedirect($"~/visits/{id:D}"), problem => Page(context, store, clock, visit, problem));
    }

    private static RazorComponentResult Page(HttpContext context, WorkshopStore store, TimeProvider clock, StoredVisit visit, Problem? problem) =>
        new RazorComponentResult<VisitPage>(new Dictionary<string, object?>
        {
            [nameof(VisitPage.Frame)] = OfficeFrame.Of(context, store, clock),
            [nameof(VisitPage.Stored)] = visit,
            [nameof(VisitPage.Matches)] = store.Condemned.Matches(visit),
            [nameof(VisitPage.Register)] = store.Condemned.Standing(),
            [nameof(VisitPage.Photos)] = store.Photos.Ids(visit.Heading.Id),
            [nameof(VisitPage.Registers)] = store.Registrations.Seller() is not null,
            [nameof(VisitPage.Problem)] = problem,
        })
        { StatusCode = problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };
}
