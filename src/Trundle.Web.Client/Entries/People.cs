using System.Text.Json.Nodes;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Entries;

/// <summary>Somebody of the workshop, and in which units that person reads and types.</summary>
/// <param name="Id">The workshop's number of the person.</param>
/// <param name="Name">As it stands beside every entry.</param>
/// <param name="Role">What the person is.</param>
/// <param name="Units">The units.</param>
/// <param name="Pin">True where the person enters and signs with a PIN.</param>
public sealed record Person(int Id, string Name, Role Role, UnitHabits Units, bool Pin = false);

/// <summary>The people of the workshop, as the host tells them.</summary>
/// <param name="All">Who may enter.</param>
/// <param name="Me">Who enters on this device, or null.</param>
/// <param name="SignIn">True where people sign in; then only those who are signed in on this device are told.</param>
public sealed record People(IReadOnlyList<Person> All, Person? Me, bool SignIn)
{
    private const string Name = "trundle-people";

    /// <summary>Asks the host; null where it did not answer. Where nobody is signed in there is nobody to choose from.</summary>
    public static async Task<People?> AskAsync(Browser browser)
    {
        ArgumentNullException.ThrowIfNull(browser);
        var answer = await browser.AskAsync("GET", "/api/v1/people");
        if (answer.Status == 0 && await browser.RecallAsync(Name) is { } told)
        {
            // With no network who entered here last goes on.
            answer = new HostAnswer(200, told);
        }
        else if (answer.Good || answer.Status == HostAnswer.NotSignedIn)
        {
            await browser.RememberAsync(Name, answer.Good ? answer.Text : null);
        }

        if (answer.Status == HostAnswer.NotSignedIn)
        {
            return new People([], null, true);
        }

        if (!answer.Good || answer.Body is not { } body)
        {
            return null;
        }

        List<Person> all = [.. (body["people"] as JsonArray ?? []).OfType<JsonObject>().Select(Read).OfType<Person>()];
        var me = (body["me"] as JsonValue)?.TryGetValue<int>(out var id) == true ? id : 0;
        return new People(all, all.FirstOrDefault(p => p.Id == me), Flag(body["signIn"]));
    }

    private static bool Flag(JsonNode? node) => (node as JsonValue)?.TryGetValue<bool>(out var flag) == true && flag;

    private static Person? Read(JsonObject json)
    {
        var units = json["units"] ?? new JsonObject();
        return (json["id"] as JsonValue)?.TryGetValue<int>(out var id) == true && EntryJson.Text(json, "name") is { } name && RoleWords.Of(EntryJson.Text(json, "role")) is { } role
            ? new Person(id, name, role, new UnitHabits(
                One(EntryJson.Text(units, "pressure"), UnitHabits.PressureUnits),
                One(EntryJson.Text(units, "depth"), UnitHabits.DepthUnits),
                One(EntryJson.Text(units, "torque"), UnitHabits.TorqueUnits),
                One(EntryJson.Text(units, "mass"), UnitHabits.MassUnits)), Flag(json["pin"]))
            : null;

        static string One(string? unit, IReadOnlyList<string> units) => unit is not null && units.Contains(unit) ? unit : units[0];
    }
}
