using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Store;

namespace Trundle.Web.Accounts;

/// <summary>Signing in with a password, coming in with a one-time code, and signing out.</summary>
internal static class SignInEndpoints
{
    public static void MapSignIn(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/sign-in", (HttpContext context, Door door) => door.First ? Results.LocalRedirect("~/code") : Page(context, door, null, "")).WithMetadata(HoldsNothing.Mark);
        routes.MapPost("/sign-in", (HttpContext context, IFormCollection sent, Door door) =>
        {
            var name = sent["name"].ToString();
            return door.ByPassword(name, sent["password"].ToString()).Match(person => In(context, person, sent["to"].ToString()), problem => Page(context, door, problem, name));
        }).WithMetadata(HoldsNothing.Mark).RequireRateLimiting(Gate.Policy);

        routes.MapGet("/code", (Door door) => CodePage(door, null, "")).WithMetadata(HoldsNothing.Mark);
        routes.MapPost("/code", (HttpContext context, IFormCollection sent, Door door) =>
        {
            var name = sent["name"].ToString();
            return door.ByCode(sent["code"].ToString(), name, sent["password"].ToString(), sent["pin"].ToString().Trim())
                .Match(person => In(context, person, ""), problem => CodePage(door, problem, name));
        }).WithMetadata(HoldsNothing.Mark).RequireRateLimiting(Gate.Policy);

        routes.MapPost("/sign-out", (HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock) =>
        {
            if (Device.Of(context) is { Now: { } person } device)
            {
                if (sent["where"] == "everywhere")
                {
                    store.Accounts.SignOutEverywhere(person.Id, clock.GetUtcNow());
                }
                else
                {
                    store.Accounts.SignOut(device.Id, person.Id, clock.GetUtcNow());
                }
            }

            return Results.LocalRedirect("~/sign-in");
        }).WithMetadata(HoldsNothing.Mark);
    }

    private static IResult In(HttpContext context, Person person, string to)
    {
        Device.SignIn(context, person);
        return Results.LocalRedirect(Local(to) ? to : "~/");
    }

    /// <summary>An address of this host: an outside one is not followed.</summary>
    private static bool Local(string to) => to.Length > 1 && to[0] == '/' && to[1] is not ('/' or '\\') && !to.Any(char.IsControl);

    private static RazorComponentResult Page(HttpContext context, Door door, Problem? problem, string name) =>
        new RazorComponentResult<SignInPage>(new Dictionary<string, object?>
        {
            [nameof(SignInPage.Problem)] = problem,
            [nameof(SignInPage.TypedName)] = name,
            [nameof(SignInPage.To)] = context.Request.HasFormContentType ? context.Request.Form["to"].ToString() : context.Request.Query["to"].ToString(),
            [nameof(SignInPage.Needed)] = door.Needed,
        })
        { StatusCode = problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };

    private static RazorComponentResult CodePage(Door door, Problem? problem, string name) =>
        new RazorComponentResult<CodePage>(new Dictionary<string, object?>
        {
            [nameof(Accounts.CodePage.Problem)] = problem,
            [nameof(Accounts.CodePage.TypedName)] = name,
            [nameof(Accounts.CodePage.First)] = door.First,
        })
        { StatusCode = problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };
}
