using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Fleet;
using Trundle.Web.People;

namespace Trundle.Web.Office.Fleet;

/// <summary>Vehicles of fleets: the list, how it comes in, and the way from a vehicle to a new visit.</summary>
internal static class FleetEndpoints
{
    public static void MapFleet(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/fleet", (HttpContext context, WorkshopStore store, TimeProvider clock) => Page(context, store, clock, null, []));
        routes.MapGet("/fleet/columns.csv", () => Results.File(
            System.Text.Encoding.UTF8.GetBytes($"{FleetList.UnitColumn},{string.Join(',', FleetList.Columns.Select(c => c.Column))}\r\n"), "text/csv", "fleet-list.csv"));
        routes.MapPost("/fleet", Take);
        routes.MapPost("/fleet/{id:guid}/remove", (Guid id, HttpContext context, WorkshopStore store, TimeProvider clock) =>
            Person(context, store).Then(person => store.Fleet.Remove(id, Today(clock), By(person, clock)))
                .Match(_ => Results.LocalRedirect("~/fleet"), problem => Page(context, store, clock, null, [problem])));
    }

    private static async Task<IResult> Take(HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        if (sent.Files.GetFile("list") is not { Length: > 0 } file)
        {
            return Page(context, store, clock, null, [new Problem("list", "file-missing", "Choose the file of the list first: a CSV whose first line names the columns.")]);
        }

        if (WhoEnters.On(context, store) is not { } person)
        {
            return Page(context, store, clock, null, [Nobody]);
        }

        using var memory = new MemoryStream();
        await file.CopyToAsync(memory, context.RequestAborted).ConfigureAwait(false);
        var (vehicles, problems) = FleetFile.Read(memory.ToArray());
        return problems.Count > 0
            ? Page(context, store, clock, null, problems)
            : Page(context, store, clock, store.Fleet.Take(vehicles, Today(clock), By(person, clock)), []);
    }

    private static readonly Problem Nobody = new("by", "person-unknown", "First choose who enters, on the people page.");

    private static Reading<Trundle.Store.Person> Person(HttpContext context, WorkshopStore store) =>
        WhoEnters.On(context, store) is { } person ? Reading<Trundle.Store.Person>.Of(person) : Reading<Trundle.Store.Person>.Failed(Nobody);

    private static Recorder By(Trundle.Store.Person person, TimeProvider clock) => new(person.Name, person.Role, clock.GetUtcNow());

    private static DateOnly Today(TimeProvider clock) => DateOnly.FromDateTime(clock.GetLocalNow().DateTime);

    private static RazorComponentResult Page(HttpContext context, WorkshopStore store, TimeProvider clock, FleetTaken? taken, IReadOnlyList<Problem> problems) =>
        new RazorComponentResult<FleetPage>(new Dictionary<string, object?>
        {
            [nameof(FleetPage.Frame)] = OfficeFrame.Of(context, store, clock),
            [nameof(FleetPage.Vehicles)] = store.Fleet.All(),
            [nameof(FleetPage.Taken)] = taken,
            [nameof(FleetPage.Problems)] = problems,
        })
        { StatusCode = problems.Count == 0 ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };
}
