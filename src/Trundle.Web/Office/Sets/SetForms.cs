using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Keeping;
using Trundle.Web.Office.Forms;

namespace Trundle.Web.Office.Sets;

/// <summary>The forms about a set in storage: its description, and what happens to it later.</summary>
internal static class SetForms
{
    private static readonly string[] CarPositions = ["1L", "1R", "2L", "2R", "S"];

    private static readonly (string Word, string Text)[] DamageKinds =
        [("", "none seen"), ("puncture", "puncture"), ("cut", "cut"), ("bulge", "bulge"), ("cord", "cord to be seen"), ("crack", "cracks"), ("bead", "bead damage"), ("other", "other")];

    private static readonly (string Word, string Text)[] DamagePlaces = [("", "–"), ("tread", "tread"), ("shoulder", "shoulder"), ("sidewall", "sidewall"), ("bead", "bead")];

    /// <summary>The description's form over what is known already: the fields of a visit, of the set itself, or nothing.</summary>
    /// <param name="key">Which form.</param>
    /// <param name="before">What is known.</param>
    /// <param name="head">Owner, season and place as they stand.</param>
    /// <param name="on">The day that stands in it.</param>
    /// <param name="units">The person's units.</param>
    public static OfficeForm Description(string key, VisitFields before, (string? Owner, string? Season, string? Place) head, DateOnly on, UnitHabits units)
    {
        var positions = Positions(before);
        FormField[] fields =
        [
            new("place", "Place", "Rack and shelf, as the workshop calls them"),
            new("on", key == SetRecords.TakenIn ? "In storage since" : "Put right on") { IsDay = true },
            new("vehicle.name", "Vehicle", "What the workshop calls it: blue hatchback, DEMO 07"),
            new("owner", "Whom to call", "No more than is needed to give it out"),
            new("season", "Season") { Choices = [("", "not said"), ("summer", "summer"), ("winter", "winter"), ("all seasons", "all seasons")] },
            new("rules", "Whose rules", "By which its condition is judged") { Choices = [("", "none"), ("uk", "uk"), ("eu", "eu"), ("us", "us")] },
            new("vehicle.drive", "Driven axle", "For the next positions") { Choices = [("", "not known"), ("front", "front"), ("rear", "rear"), ("all", "all")] },
            .. positions.SelectMany(p => Wheel(p, before, units)),
        ];
        var typed = fields.ToDictionary(f => f.Name, f => Shown(f, before[f.Name] ?? ""), StringComparer.Ordinal);
        (typed["owner"], typed["season"], typed["place"], typed["on"]) = (head.Owner ?? "", head.Season ?? "", head.Place ?? "", Day(on));
        foreach (var position in positions.Where(p => typed.ContainsKey($"keep.{p}")))
        {
            // A condemned tyre or wheel is not kept to be fitted again.
            typed[$"keep.{position}"] = before[$"fitted.{position}.tyre.condemned"] == "true" || before[$"fitted.{position}.wheel.condemned"] == "true" ? "no" : "yes";
        }

        return new OfficeForm(key, fields, typed, null);
    }

    /// <summary>The description that a form makes of what was known and what was typed.</summary>
    public static string Body(OfficeForm form, VisitFields before)
    {
        var fields = new SortedDictionary<string, string>(StringComparer.Ordinal);
        foreach (var entry in before.Newest.Where(e => e.Typed.Length > 0 && SetDescription.Takes(e.Field)))
        {
            fields[entry.Field] = entry.Typed;
        }

        foreach (var field in form.Fields.Where(f => SetDescription.Takes(f.Name)))
        {
            fields[field.Name] = form.Recorded(field);
        }

        foreach (var position in Positions(before).Where(p => form[$"keep.{p}"] == "no"))
        {
            foreach (var name in fields.Keys.Where(f => f.StartsWith($"fitted.{position}.", StringComparison.Ordinal)).ToList())
            {
                fields.Remove(name);
            }
        }

        Axles(fields, before);
        return new JsonObject
        {
            ["place"] = form["place"],
            ["owner"] = form["owner"],
            ["season"] = form["season"],
            ["fields"] = new JsonObject([.. fields.Where(f => f.Value.Length > 0).Select(f => KeyValuePair.Create(f.Key, (JsonNode?)JsonValue.Create(f.Value)))]),
        }.ToJsonString();
    }

    public static OfficeForm Moved(WheelSet set, DateOnly today) =>
        Of(SetRecords.Moved, today, new FormField("place", "It stands now at", "Rack and shelf"), set.Place);

    public static OfficeForm GivenOut(WheelSet set, DateOnly today) =>
        Of(SetRecords.GivenOut, today, new FormField("to", "To whom, or onto which vehicle"), set.Vehicle);

    public static OfficeForm Note(DateOnly today) => Of(SetRecords.Note, today, new FormField("text", "What is to be known", "Washed, a nut is missing, owner was called") { Lines = 3 }, "");

    private static OfficeForm Of(string key, DateOnly today, FormField field, string typed) => new(
        key,
        [new("on", "On") { IsDay = true }, field],
        new Dictionary<string, string>(StringComparer.Ordinal) { ["on"] = Day(today), [field.Name] = typed },
        null);

    private static IReadOnlyList<string> Positions(VisitFields before) =>
        before.Under("fitted").Select(e => e.Field.Split('.')[1]).Distinct().ToList() is { Count: > 0 } known ? known : CarPositions;

    private static IEnumerable<FormField> Wheel(string position, VisitFields before, UnitHabits units)
    {
        var at = $"fitted.{position}";
        var group = $"{Word(position)}, {position}";
        FormField[] fields =
        [
            .. before.Under(at).Any() ? new FormField[] { new($"keep.{position}", "Belongs to the set") { Choices = [("yes", "yes"), ("no", "no")] } } : [],
            new($"{at}.tyre.marking", "Tyre", "195/65 R15 91H; empty where there is none"),
            new($"{at}.tyre.tin", "TIN", "DOT 1AB CDEFHJ 2218"),
            new($"{at}.tyre.id", "Our name for the tyre"),
            new($"{at}.wheel.rim", "Rim", "6J x 15"),
            new($"{at}.tread.inner.0", "Tread inner") { Unit = units.Depth },
            new($"{at}.tread.centre.0", "Tread centre") { Unit = units.Depth },
            new($"{at}.tread.outer.0", "Tread outer") { Unit = units.Depth },
            new($"{at}.pressure.value", "Pressure as it came") { Unit = units.Pressure },
            new($"{at}.damage.0.kind", "Damage") { Choices = DamageKinds },
            new($"{at}.damage.0.place", "Where") { Choices = DamagePlaces },
            new($"{at}.damage.0.size", "Size") { Unit = "mm" },
        ];
        return fields.Select(f => f with { Group = group });
    }

    /// <summary>A car's front axle steers, and the drive tells which axle is driven; where a visit said more, that stands.</summary>
    private static void Axles(SortedDictionary<string, string> fields, VisitFields before)
    {
        if (before.Under("vehicle.axles").Any() || Positions(before).Any(p => !CarPositions.Contains(p)))
        {
            return;
        }

        var drive = fields.GetValueOrDefault("vehicle.drive", "");
        for (var i = 0; i < 2; i++)
        {
            var at = string.Create(CultureInfo.InvariantCulture, $"vehicle.axles.{i}");
            fields[$"{at}.steered"] = i == 0 ? "true" : "false";
            if (drive.Length > 0)
            {
                fields[$"{at}.driven"] = drive == "all" || (drive == "front") == (i == 0) ? "true" : "false";
            }
        }
    }

    /// <summary>A position in words.</summary>
    public static string Word(string position) => Engine.Vehicles.Position.Read(position) is { IsRead: true } read
        ? string.Concat(read.Value.InWords(2)[..1].ToUpperInvariant(), read.Value.InWords(2).AsSpan(1))
        : position;

    /// <summary>A day as a form writes it.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Shown(FormField field, string kept) =>
        field.Unit is { } unit && kept.EndsWith($" {unit}", StringComparison.Ordinal) ? kept[..^(unit.Length + 1)] : kept;
}
