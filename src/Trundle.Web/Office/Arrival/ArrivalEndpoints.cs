using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Web.People;
using Trundle.Web.Visits;

namespace Trundle.Web.Office.Arrival;

/// <summary>The desk takes a vehicle in, and corrects what it took down.</summary>
internal static class ArrivalEndpoints
{
    public static void MapArrival(this IEndpointRouteBuilder routes)
    {
        // The identifier of the visit is made with the form: sent twice, it opens one visit.
        routes.MapGet("/arrive", (HttpContext context, WorkshopStore store, TimeProvider clock) =>
            Page(context, store, clock, ArrivalForm.For(VisitFields.Empty, Units(context, store)), Guid.CreateVersion7(), null, 200));
        routes.MapPost("/arrive", Open);
        routes.MapGet("/visits/{id:guid}/arrival", (Guid id, HttpContext context, WorkshopStore store, TimeProvider clock) =>
            store.Visits.Find(id) is { } visit
                ? Page(context, store, clock, ArrivalForm.For(visit.Fields, Units(context, store)), id, visit.Heading.Number, 200)
                : Results.NotFound());
        routes.MapPost("/visits/{id:guid}/arrival", Correct);
    }

    private static IResult Open(HttpContext context, IFormCollection sent, WorkshopStore store, WorkshopRules rules, TimeProvider clock)
    {
        var id = Guid.TryParseExact(sent["visit"], "D", out var made) && made != Guid.Empty ? made : Guid.CreateVersion7();
        var form = ArrivalForm.Read(sent, VisitFields.Empty, Units(context, store));
        var person = WhoEnters.On(context, store);
        if (!form.Good || person is null)
        {
            return Page(context, store, clock, form, id, null, StatusCodes.Status400BadRequest);
        }

        if (store.Visits.Find(id) is null)
        {
            var opened = Opening.Open(store, rules, clock, id, person.Name, form.Entries(VisitFields.Empty, person.Name, clock.GetUtcNow()));
            if (!opened.IsRead)
            {
                return Page(context, store, clock, form, id, null, StatusCodes.Status400BadRequest);
            }
        }

        return Results.LocalRedirect($"~/bay/{id:D}");
    }

    private static IResult Correct(Guid id, HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        if (store.Visits.Find(id) is not { } visit)
        {
            return Results.NotFound();
        }

        var form = ArrivalForm.Read(sent, visit.Fields, Units(context, store));
        var person = WhoEnters.On(context, store);
        if (!form.Good || person is null)
        {
            return Page(context, store, clock, form, id, visit.Heading.Number, StatusCodes.Status400BadRequest);
        }

        store.Visits.Append(id, form.Entries(visit.Fields, person.Name, clock.GetUtcNow()), clock.GetUtcNow());
        return Results.LocalRedirect($"~/visits/{id:D}");
    }

    private static RazorComponentResult Page(HttpContext context, WorkshopStore store, TimeProvider clock, ArrivalForm form, Guid id, string? number, int status) =>
        new RazorComponentResult<ArrivalPage>(new Dictionary<string, object?>
        {
            [nameof(ArrivalPage.Frame)] = OfficeFrame.Of(context, store, clock),
            [nameof(ArrivalPage.Form)] = form,
            [nameof(ArrivalPage.VisitId)] = id,
            [nameof(ArrivalPage.Number)] = number,
        })
        { StatusCode = status };

    private static UnitHabits Units(HttpContext context, WorkshopStore store) => WhoEnters.On(context, store)?.Habits ?? UnitHabits.Metric;
}
