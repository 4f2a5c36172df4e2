using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Web.People;

namespace Trundle.Web.Office.People;

/// <summary>Who is in the workshop, who enters on this device, and in which units.</summary>
internal static class PeoplePageEndpoints
{
    public static void MapPeoplePage(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/people", (HttpContext context, WorkshopStore store, TimeProvider clock) => Page(context, store, clock, null, ""));
        routes.MapPost("/people/choose", (HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock) =>
        {
            if (Number(sent["person"]) is not { } id || store.People.Find(id) is not { } person)
            {
                return Page(context, store, clock, new Problem("choose", "person-unknown", "Choose one of the people."), "");
            }

            WhoEnters.Remember(context, person);
            return Results.LocalRedirect("~/people");
        });
        routes.MapPost("/people/units", (HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock) =>
        {
            if (WhoEnters.On(context, store) is not { } person)
            {
                return Page(context, store, clock, new Problem("choose", "person-unknown", "First choose who enters."), "");
            }

            return store.People.Remember(person.Id, new UnitHabits(sent["pressure"].ToString(), sent["depth"].ToString(), sent["torque"].ToString(), sent["mass"].ToString())).Match(
                _ => Results.LocalRedirect("~/people"),
                problem => Page(context, store, clock, problem, ""));
        });
        routes.MapPost("/people/add", (HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock) =>
        {
            var name = sent["name"].ToString();
            return RoleWords.Of(sent["role"]) is { } role
                ? store.People.Add(name, role, UnitHabits.Metric).Match(_ => Results.LocalRedirect("~/people"), problem => Page(context, store, clock, problem, name))
                : Page(context, store, clock, new Problem("role", "word-unknown", "Choose what the person is."), name);
        });
        routes.MapPost("/people/{id:long}", (long id, HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock) =>
            RoleWords.Of(sent["role"]) is { } role
                ? store.People.Change(id, role, sent["left"] == "true").Match(_ => Results.LocalRedirect("~/people"), problem => Page(context, store, clock, problem, ""))
                : Page(context, store, clock, new Problem("role", "word-unknown", "Choose what the person is."), ""));
    }

    private static RazorComponentResult Page(HttpContext context, WorkshopStore store, TimeProvider clock, Problem? problem, string typedName) =>
        new RazorComponentResult<PeoplePage>(new Dictionary<string, object?>
        {
            [nameof(PeoplePage.Frame)] = OfficeFrame.Of(context, store, clock),
            [nameof(PeoplePage.Everybody)] = store.People.All(withThoseWhoLeft: true),
            [nameof(PeoplePage.Problem)] = problem,
            [nameof(PeoplePage.TypedName)] = typedName,
        })
        { StatusCode = problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };

    private static long? Number(string? text) => long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;
}
