using System.Text.Json.Nodes;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Entries;

/// <summary>Somebody of the workshop, and in which units that person reads and types.</summary>
public sealed record Person(int Id, string Name, Role Role, UnitHabits Units);

/// <summary>The people of the workshop, as the host tells them.</summary>
/// <param name="All">Who may enter.</param>
/// <param name="Me">Who enters on this device, or null.</param>
public sealed record People(IReadOnlyList<Person> All, Person? Me)
{
    /// <summary>Asks the host; null where it did not answer.</summary>
    public static async Task<People?> AskAsync(Browser browser)
    {
        ArgumentNullException.ThrowIfNull(browser);
        var answer = await browser.AskAsync("GET", "/api/v1/people");
        if (!answer.Good || answer.Body is not { } body)
        {
            return null;
        }

        List<Person> all = [.. (body["people"] as JsonArray ?? []).OfType<JsonObject>().Select(Read).OfType<Person>()];
        var me = (body["me"] as JsonValue)?.TryGetValue<int>(out var id) == true ? id : 0;
        return new People(all, all.FirstOrDefault(p => p.Id == me));
    }

    private static Person? Read(JsonObject json)
    {
        var units = json["units"] ?? new JsonObject();
        return (json["id"] as JsonValue)?.TryGetValue<int>(out var id) == true && EntryJson.Text(json, "name") is { } name && RoleWords.Of(EntryJson.Text(json, "role")) is { } role
            ? new Person(id, name, role, new UnitHabits(
                One(EntryJson.Text(units, "pressure"), UnitHabits.PressureUnits),
                One(EntryJson.Text(units, "depth"), UnitHabits.DepthUnits),
                One(EntryJson.Text(units, "torque"), UnitHabits.TorqueUnits),
                One(EntryJson.Text(units, "mass"), UnitHabits.MassUnits)))
            : null;

        static string One(string? unit, IReadOnlyList<string> units) => unit is not null && units.Contains(unit) ? unit : units[0];
    }
}
