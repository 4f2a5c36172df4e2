using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Web.Accounts;
using Trundle.Web.Languages;
using Trundle.Web.People;
using Trundle.Words;

namespace Trundle.Web.Office.People;

/// <summary>Who is in the workshop, who enters on this device, and in which units.</summary>
internal static class PeoplePageEndpoints
{
    public static void MapPeoplePage(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/people", (HttpContext context) => Page(context));
        routes.MapGet("/people/rights", (HttpContext context, WorkshopStore store, TimeProvider clock) =>
            new RazorComponentResult<RightsPage>(new { Frame = OfficeFrame.Of(context, store, clock) }));
        routes.MapPost("/people/choose", Choose).RequireRateLimiting(Gate.Policy);
        routes.MapPost("/people/units", (HttpContext context, IFormCollection sent, WorkshopStore store) => WhoEnters.On(context, store) is { } person
            ? store.People.Remember(person.Id, new UnitHabits(sent["pressure"].ToString(), sent["depth"].ToString(), sent["torque"].ToString(), sent["mass"].ToString()))
                .Match(_ => Read(context, person, sent), problem => Page(context, problem))
            : Page(context, NobodyChosen));
        routes.MapPost("/people/pin", (HttpContext context, IFormCollection sent, WorkshopStore store, Door door) => WhoEnters.On(context, store) is { } person
            ? door.ChangePin(person, sent["password"].ToString(), sent["pin"].ToString().Trim()).Match(_ => Back(), problem => Page(context, problem, "pin"))
            : Page(context, NobodyChosen)).RequireRateLimiting(Gate.Policy);
        routes.MapPost("/people/password", (HttpContext context, IFormCollection sent, WorkshopStore store, Door door) =>
        {
            if (WhoEnters.On(context, store) is not { } person)
            {
                return Page(context, NobodyChosen);
            }

            return door.ChangePassword(person, sent["old"].ToString(), sent["password"].ToString()).Match(
                changed =>
                {
                    Device.SignIn(context, changed);
                    return Back();
                },
                problem => Page(context, problem, "password"));
        }).RequireRateLimiting(Gate.Policy);
        routes.MapPost("/people/add", Add);
        routes.MapPost("/people/{id:long}", Change);
    }

    /// <summary>The roles in which a person may let somebody in: all of them where nobody signs in, and so nobody is proven to be who they say.</summary>
    internal static IReadOnlyList<Role> RolesOf(Person? person, bool signIn) =>
        !signIn || person?.Role.May(Right.LetIn) == true ? RoleWords.All
        : person?.Role.May(Right.LetTraineesIn) == true ? [Role.Trainee]
        : [];

    /// <summary>Keeps in which locale the person reads, where the form told one.</summary>
    private static IResult Read(HttpContext context, Person person, IFormCollection sent)
    {
        if (Locales.Of(sent["texts"]) is { } locale)
        {
            ReaderLocale.Choose(context, person.Id, locale);
        }

        return Back();
    }

    private static Problem NobodyChosen => new("choose", "person-unknown", "First choose who enters.");

    private static IResult Choose(HttpContext context, IFormCollection sent, WorkshopStore store, Door door)
    {
        if (Number(sent["person"]) is not { } id || WhoEnters.Offered(context, store).FirstOrDefault(p => p.Id == id) is not { } person)
        {
            return Page(context, new Problem("choose", "person-unknown", "Choose one of the people."));
        }

        if (!door.Needed)
        {
            WhoEnters.Remember(context, person);
            return Back();
        }

        var device = Device.Of(context)!;
        if (door.PinRefused(device.Id, person.Id, sent["pin"].ToString().Trim()) is { } refused)
        {
            return refused.Code == "signed-out" ? Results.LocalRedirect("~/sign-in") : Page(context, refused, "choose");
        }

        store.Accounts.Switch(device.Id, person.Id);
        return Back();
    }

    private static IResult Add(HttpContext context, IFormCollection sent, WorkshopStore store, Door door)
    {
        var name = sent["name"].ToString();
        if (RoleWords.Of(sent["role"]) is not { } role)
        {
            return Page(context, new Problem("role", "word-unknown", "Choose what the person is."), "add", name);
        }

        if (!RolesOf(WhoEnters.On(context, store), door.Needed).Contains(role))
        {
            return Page(context, MayNot, "add", name);
        }

        return store.People.Add(name, role, UnitHabits.Metric).Match(
            person => door.Needed ? Page(context, null, code: (person.Name, door.Code(person.Id))) : Back(),
            problem => Page(context, problem, "add", name));
    }

    private static IResult Change(long id, HttpContext context, IFormCollection sent, WorkshopStore store, Door door, TimeProvider clock)
    {
        if (store.People.All(withThoseWhoLeft: true).FirstOrDefault(p => p.Id == id) is not { } person)
        {
            return Page(context, new Problem("person", "person-unknown", "There is no such person in this workshop."));
        }

        var mine = RolesOf(WhoEnters.On(context, store), door.Needed);
        if (RoleWords.Of(sent["role"]) is not { } role)
        {
            return Page(context, new Problem("person", "word-unknown", "Choose what the person is."));
        }

        if (!mine.Contains(person.Role) || !mine.Contains(role))
        {
            return Page(context, MayNot with { Where = "person" });
        }

        if (sent["do"] == "code" && door.Needed && !person.Left)
        {
            return Page(context, null, code: (person.Name, door.Code(id)));
        }

        var left = sent["left"] == "true";
        if (door.Needed && person.Role == Role.Owner && (left || role != Role.Owner) && !store.People.All().Any(p => p.Id != id && p.Role == Role.Owner && store.Accounts.Of(p.Id).PasswordHash is not null))
        {
            return Page(context, new Problem("person", "last-owner", $"{person.Name} is the only owner who can sign in. First make somebody else an owner."));
        }

        return store.People.Change(id, role, left).Match(
            _ =>
            {
                if (left)
                {
                    store.Accounts.SignOutEverywhere(id, clock.GetUtcNow());
                }

                return Back();
            },
            problem => Page(context, problem));
    }

    private static Problem MayNot => new("role", "may-not-let-in", "The owner lets people in; an instructor lets trainees in.");

    private static IResult Back() => Results.LocalRedirect("~/people");

    private static RazorComponentResult Page(HttpContext context, Problem? problem = null, string form = "", string typedName = "", (string Name, string Code)? code = null)
    {
        var services = context.RequestServices;
        var (store, door) = (services.GetRequiredService<WorkshopStore>(), services.GetRequiredService<Door>());
        var me = WhoEnters.On(context, store);
        return new RazorComponentResult<PeoplePage>(new Dictionary<string, object?>
        {
            [nameof(PeoplePage.Frame)] = OfficeFrame.Of(context, store, services.GetRequiredService<TimeProvider>()),
            [nameof(PeoplePage.Everybody)] = store.People.All(withThoseWhoLeft: true),
            [nameof(PeoplePage.Offered)] = WhoEnters.Offered(context, store),
            [nameof(PeoplePage.SignIn)] = door.Needed,
            [nameof(PeoplePage.HasPin)] = me is not null && door.HasPin(me.Id),
            [nameof(PeoplePage.NewCode)] = code,
            [nameof(PeoplePage.Problem)] = problem,
            [nameof(PeoplePage.Form)] = form,
            [nameof(PeoplePage.TypedName)] = typedName,
        })
        { StatusCode = problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };
    }

    private static long? Number(string? text) => long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;
}
