using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Web.People;

namespace Trundle.Web.Office.Condemned;

/// <summary>The register of tyres and wheels that may not be fitted again.</summary>
internal static class CondemnedEndpoints
{
    public static void MapCondemned(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/condemned", (HttpContext context, WorkshopStore store, TimeProvider clock) => Page(context, store, clock, null));
        routes.MapPost("/condemned/withdraw", (HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock) =>
        {
            if (WhoEnters.On(context, store) is not { } person)
            {
                return Page(context, store, clock, new Problem("by", "person-unknown", "First choose who enters, on the people page."));
            }

            if (Kind(sent["kind"]) is not { } kind)
            {
                return Page(context, store, clock, new Problem("kind", "word-unknown", "Choose a line of the register."));
            }

            return store.Condemned.Withdraw(kind, sent["name"].ToString(), person.Name, person.Role, sent["why"], clock.GetUtcNow()).Match(
                _ => Results.LocalRedirect("~/condemned"),
                problem => Page(context, store, clock, problem));
        });
    }

    /// <summary>What a name names, as a person reads it.</summary>
    public static string Word(CondemnedKind kind) => kind switch
    {
        CondemnedKind.Tyre => "tyre",
        CondemnedKind.Tin => "TIN",
        CondemnedKind.Wheel => "wheel",
    };

    private static CondemnedKind? Kind(string? word)
    {
        foreach (var kind in (CondemnedKind[])[CondemnedKind.Tyre, CondemnedKind.Tin, CondemnedKind.Wheel])
        {
            if (Word(kind) == word)
            {
                return kind;
            }
        }

        return null;
    }

    private static RazorComponentResult Page(HttpContext context, WorkshopStore store, TimeProvider clock, Problem? problem) =>
        new RazorComponentResult<CondemnedPage>(new Dictionary<string, object?>
        {
            [nameof(CondemnedPage.Frame)] = OfficeFrame.Of(context, store, clock),
            [nameof(CondemnedPage.Names)] = store.Condemned.All(),
            [nameof(CondemnedPage.Problem)] = problem,
        })
        { StatusCode = problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };
}
