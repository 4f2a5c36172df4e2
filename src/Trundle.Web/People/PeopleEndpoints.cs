using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Web.Accounts;
using Trundle.Web.Api;

namespace Trundle.Web.People;

/// <summary>The people of the workshop, and who enters on this device.</summary>
internal static class PeopleEndpoints
{
    public static void MapPeople(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/v1/people", (HttpContext context, WorkshopStore store, Door door) => ApiAnswer.Json(new JsonObject
        {
            ["signIn"] = door.Needed,
            ["people"] = new JsonArray([.. WhoEnters.Offered(context, store).Select(p => (JsonNode?)Json(p, door))]),
            ["me"] = WhoEnters.On(context, store)?.Id,
        }));
        // Units are changed as often as anybody likes; a PIN is tried with a limit.
        routes.MapPost("/api/v1/people/me", (HttpContext context, WorkshopStore store, Door door) => ChooseAsync(context, store, door, withPin: false)).DisableAntiforgery();
        routes.MapPost("/api/v1/people/me/pin", (HttpContext context, WorkshopStore store, Door door) => ChooseAsync(context, store, door, withPin: true))
            .DisableAntiforgery().RequireRateLimiting(Gate.Policy);
    }

    /// <summary>A person as JSON.</summary>
    private static JsonObject Json(Person person, Door door) => new()
    {
        ["id"] = person.Id,
        ["name"] = person.Name,
        ["role"] = person.Role.Word(),
        ["pin"] = door.Needed && door.HasPin(person.Id),
        ["units"] = new JsonObject
        {
            ["pressure"] = person.Habits.Pressure,
            ["depth"] = person.Habits.Depth,
            ["torque"] = person.Habits.Torque,
            ["mass"] = person.Habits.Mass,
        },
    };

    /// <summary>
    /// Chooses who enters on this device, or changes that person's units, or both. Where people sign in, another person's PIN is asked for, and with a PIN
    /// the same person proves to be there still.
    /// </summary>
    private static async Task<IResult> ChooseAsync(HttpContext context, WorkshopStore store, Door door, bool withPin)
    {
        var body = await ApiAnswer.BodyAsync(context.Request).ConfigureAwait(false);
        if (!body.IsRead)
        {
            return ApiAnswer.Wrong(body.Problem!, ApiAnswer.StatusOf(body.Problem!));
        }

        var problems = new List<Problem>();
        var o = new FileObject(body.Value, problems);
        var now = WhoEnters.On(context, store);
        var person = o.Whole("id", 1, int.MaxValue) is { } id ? WhoEnters.Offered(context, store).FirstOrDefault(p => p.Id == id) : now;
        var pin = withPin ? o.Text("pin") ?? "" : null;
        UnitHabits? habits = null;
        if (o.Object("units") is { } units)
        {
            habits = new UnitHabits(
                units.Text("pressure") ?? person?.Habits.Pressure ?? "",
                units.Text("depth") ?? person?.Habits.Depth ?? "",
                units.Text("torque") ?? person?.Habits.Torque ?? "",
                units.Text("mass") ?? person?.Habits.Mass ?? "");
            units.Done();
        }

        o.Done();
        if (problems.Count > 0)
        {
            return ApiAnswer.Wrong(problems[0]);
        }

        if (person is null)
        {
            return ApiAnswer.Wrong(new Problem("id", "person-unknown", door.Needed
                ? "That person is not signed in on this device: sign in with the password first."
                : "Say by 'id' who enters: one of the people of this workshop."));
        }

        if (door.Needed && (pin is not null || person.Id != now?.Id))
        {
            var device = Device.Of(context)!;
            if (door.PinRefused(device.Id, person.Id, pin ?? "") is { } refused)
            {
                return ApiAnswer.Wrong(refused, StatusCodes.Status403Forbidden);
            }

            store.Accounts.Switch(device.Id, person.Id);
        }

        if (habits is not null)
        {
            var remembered = store.People.Remember(person.Id, habits);
            if (!remembered.IsRead)
            {
                return ApiAnswer.Wrong(remembered.Problem!.At($"units.{remembered.Problem.Where}"));
            }

            person = remembered.Value;
        }

        if (!door.Needed)
        {
            WhoEnters.Remember(context, person);
        }

        return ApiAnswer.Json(Json(person, door));
    }
}
