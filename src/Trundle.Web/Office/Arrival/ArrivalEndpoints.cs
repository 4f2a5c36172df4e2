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
            Page(context, store, clock, ArrivalForm.For(Known(context.Request.Query["fleet"], store), Units(context, store)), Guid.CreateVersion7(), null, 200, Listed(context.Request.Query["fleet"], store)));
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
        var listed = Listed(sent["fleet"], store);
        if (!form.Good || person is null)
        {
            return Page(context, store, clock, form, id, null, StatusCodes.Status400BadRequest, listed);
        }

        if (store.Visits.Find(id) is null)
        {
            var opened = Opening.Open(store, rules, clock, id, person.Name, [.. form.Entries(VisitFields.Empty, person.Name, clock.GetUtcNow()), .. Besides(form, listed, person.Name, clock.GetUtcNow())]);
            if (!opened.IsRead)
            {
                return Page(context, store, clock, form, id, null, StatusCodes.Status400BadRequest, listed);
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

    private static RazorComponentResult Page(HttpContext context, WorkshopStore store, TimeProvider clock, ArrivalForm form, Guid id, string? number, int status, ListedVehicle? listed = null) =>
        new RazorComponentResult<ArrivalPage>(new Dictionary<string, object?>
        {
            [nameof(ArrivalPage.Frame)] = OfficeFrame.Of(context, store, clock),
            [nameof(ArrivalPage.Form)] = form,
            [nameof(ArrivalPage.VisitId)] = id,
            [nameof(ArrivalPage.Number)] = number,
            [nameof(ArrivalPage.Listed)] = listed,
        })
        { StatusCode = status };

    /// <summary>The fleet's vehicle of an identifier, or null.</summary>
    private static ListedVehicle? Listed(string? id, WorkshopStore store) => Guid.TryParseExact(id, "D", out var vehicle) ? store.Fleet.Find(vehicle) : null;

    private static VisitFields Known(string? id, WorkshopStore store) => Listed(id, store) is { } listed
        ? VisitFields.Of(listed.Vehicle.Fields.Select(f => new Entry(Guid.CreateVersion7(), f.Field, f.Typed, "", Role.Desk, DateTimeOffset.MinValue)))
        : VisitFields.Empty;

    /// <summary>What the fleet's list says besides what the form asks for: further axles, the class, threads.</summary>
    private static IEnumerable<Entry> Besides(ArrivalForm form, ListedVehicle? listed, string by, DateTimeOffset at)
    {
        var asked = form.Groups.SelectMany(g => g.Fields).Select(f => f.Field).ToHashSet(StringComparer.Ordinal);
        return (listed?.Vehicle.Fields ?? []).Where(f => !asked.Contains(f.Field) && !f.Field.EndsWith(".driven", StringComparison.Ordinal) && f.Field != "vehicle.axles.0.steered")
            .Select(f => new Entry(Guid.CreateVersion7(at), f.Field, f.Typed, by, Role.Trainee, at));
    }

    private static UnitHabits Units(HttpContext context, WorkshopStore store) => WhoEnters.On(context, store)?.Habits ?? UnitHabits.Metric;
}
