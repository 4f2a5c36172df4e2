using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Web.Api;

namespace Trundle.Web.People;

/// <summary>The people of the workshop, and who enters on this device.</summary>
internal static class PeopleEndpoints
{
    public static void MapPeople(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/v1/people", (HttpContext context, WorkshopStore store) => ApiAnswer.Json(new JsonObject
        {
            ["people"] = new JsonArray([.. store.People.All().Select(p => (JsonNode?)Json(p))]),
            ["me"] = WhoEnters.On(context, store)?.Id,
        }));
        routes.MapPost("/api/v1/people/me", ChooseAsync).DisableAntiforgery();
    }

    /// <summary>A person as JSON.</summary>
    private static JsonObject Json(Person person) => new()
    {
        ["id"] = person.Id,
        ["name"] = person.Name,
        ["role"] = person.Role.Word(),
        ["units"] = new JsonObject
        {
            ["pressure"] = person.Habits.Pressure,
            ["depth"] = person.Habits.Depth,
            ["torque"] = person.Habits.Torque,
            ["mass"] = person.Habits.Mass,
        },
    };

    /// <summary>Chooses who enters on this device, or changes that person's units, or both.</summary>
    private static async Task<IResult> ChooseAsync(HttpContext context, WorkshopStore store)
    {
        var body = await ApiAnswer.BodyAsync(context.Request).ConfigureAwait(false);
        if (!body.IsRead)
        {
            return ApiAnswer.Wrong(body.Problem!, ApiAnswer.StatusOf(body.Problem!));
        }

        var problems = new List<Problem>();
        var o = new FileObject(body.Value, problems);
        var person = o.Whole("id", 1, int.MaxValue) is { } id ? store.People.Find(id) : WhoEnters.On(context, store);
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
            return ApiAnswer.Wrong(new Problem("id", "person-unknown", "Say by 'id' who enters: one of the people of this workshop."));
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

        WhoEnters.Remember(context, person);
        return ApiAnswer.Json(Json(person));
    }
}
