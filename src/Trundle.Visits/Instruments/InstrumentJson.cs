using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Instruments;
using Trundle.Measures;

namespace Trundle.Visits.Instruments;

/// <summary>An instrument as the host tells it to the bay: written and read here, so that the two agree.</summary>
public static class InstrumentJson
{
    private const string DayForm = "yyyy-MM-dd";

    /// <summary>The instrument as JSON.</summary>
    public static JsonObject Of(Instrument instrument)
    {
        ArgumentNullException.ThrowIfNull(instrument);
        return new JsonObject
        {
            ["id"] = instrument.Id.ToString("D"),
            ["kind"] = instrument.Kind.Word(),
            ["name"] = instrument.Name,
            ["identification"] = instrument.Identification,
            ["inUseFrom"] = Day(instrument.InUseFrom),
            ["outOfUseFrom"] = Day(instrument.OutOfUseFrom),
            ["profile"] = instrument.Profile?.DeepClone(),
            ["checks"] = new JsonArray([.. instrument.Checks.Select(c => (JsonNode?)new JsonObject
            {
                ["on"] = Day(c.On), ["verdict"] = c.Verdict.Word(), ["due"] = Day(c.Due), ["deviations"] = c.Deviations.Count == 0 ? null : new JsonArray([.. c.Deviations.Select(d => (JsonNode?)d)]),
            })]),
            ["repeatability"] = instrument.Repeatability is { } r
                ? new JsonObject { ["on"] = Day(r.On), ["grams"] = r.Deviation.Grams, ["spins"] = r.Spins }
                : null,
        };
    }

    /// <summary>The instrument of JSON, or null where it is none.</summary>
    public static Instrument? Read(JsonObject json)
    {
        ArgumentNullException.ThrowIfNull(json);
        return Guid.TryParse(Text(json, "id"), out var id) && InstrumentWords.KindOf(Text(json, "kind")) is { } kind && Text(json, "name") is { } name && DayOf(json, "inUseFrom") is { } from
            ? new Instrument(id, kind, name, Text(json, "identification"), from, DayOf(json, "outOfUseFrom"), json["profile"] as JsonObject)
            {
                Checks = [.. (json["checks"] as JsonArray ?? []).OfType<JsonObject>().Select(Check).OfType<InstrumentCheck>()],
                Repeatability = json["repeatability"] is JsonObject r ? RepeatabilityOf(r) : null,
            }
            : null;
    }

    /// <summary>A day as a file and a form write it.</summary>
    public static string? Day(DateOnly? day) => day?.ToString(DayForm, CultureInfo.InvariantCulture);

    /// <summary>The day of a text, or null.</summary>
    public static DateOnly? DayOf(string? text) =>
        DateOnly.TryParseExact(text?.Trim(), DayForm, CultureInfo.InvariantCulture, DateTimeStyles.None, out var day) ? day : null;

    private static InstrumentCheck? Check(JsonObject json) =>
        DayOf(json, "on") is { } on && InstrumentVerdictWords.Of(Text(json, "verdict")) is { } verdict ? new InstrumentCheck(on, verdict, DayOf(json, "due")) { Deviations = json["deviations"] is JsonArray list ? [.. list.OfType<JsonValue>().Select(v => v.GetValue<double>())] : [] } : null;

    private static InstrumentRepeatability? RepeatabilityOf(JsonObject json) =>
        DayOf(json, "on") is { } on && json["grams"] is JsonValue grams && grams.TryGetValue<double>(out var g) && g > 0 && json["spins"] is JsonValue spins && spins.TryGetValue<int>(out var n)
            ? new InstrumentRepeatability(on, Mass.FromGrams(g), n)
            : null;

    private static DateOnly? DayOf(JsonObject json, string key) => DayOf(Text(json, key));

    private static string? Text(JsonObject json, string key) => json[key] is JsonValue value && value.TryGetValue<string>(out var text) ? text : null;
}
