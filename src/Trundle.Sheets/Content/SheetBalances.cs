using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Sheets.Pictures;

namespace Trundle.Sheets;

/// <summary>The balance of a wheel as the answer tells it.</summary>
internal static class SheetBalances
{
    /// <summary>Before, what the weights leave, and what may be left.</summary>
    public static SheetBalance Of(JsonObject answer, SheetUnits units)
    {
        var residual = answer["residual"] as JsonObject;
        var tolerance = answer["tolerance"] as JsonObject;
        var words = string.Join(", ", new[] { ("each plane", "perPlane"), ("static", "static"), ("couple", "couple") }
            .Select(part => (part.Item1, Limit: tolerance?[part.Item2] as JsonObject))
            .Where(part => part.Limit is not null)
            .Select(part => $"{part.Item1} {(PerPlane(part.Limit) is { } mass && units.Habits.Mass != "g" ? $"{units.Mass(mass)} ({part.Limit!["text"]})" : part.Limit!["text"])}"));
        return new SheetBalance(
            Plane("Inner plane", "inner"),
            Plane("Outer plane", "outer"),
            [.. (answer["weights"] as JsonArray ?? []).OfType<JsonObject>().Select(w => Weight(w, units))],
            Number(residual?["staticGramMillimetres"]),
            Number(residual?["coupleGramSquareMillimetres"]),
            answer["withinTolerance"]?.GetValue<bool>() is { } within ? within && answer["leftWithLengths"] is null : null,
            words.Length == 0 ? "" : $"{words} ({tolerance!["source"]}; {tolerance["status"]})");

        PolarPlane Plane(string title, string key) => new(title, Mark(answer["before"], key), Mark(residual, key), PerPlane(tolerance?["perPlane"]));
    }

    private static PolarMark? Mark(JsonNode? pair, string key) =>
        pair is JsonObject planes && planes[key] is JsonObject plane && Number(plane["massGrams"]) is { } grams
            ? new PolarMark(Mass.FromGrams(grams), WheelAngle.FromDegrees(Number(plane["angleDegrees"]) ?? 0))
            : null;

    /// <summary>Only a tolerance in mass can be drawn in a plane.</summary>
    private static Mass? PerPlane(JsonNode? limit) =>
        limit is JsonObject o && o["unit"]?.ToString() == "g" && Number(o["value"]) is { } grams ? Mass.FromGrams(grams) : null;

    private static string Weight(JsonObject weight, SheetUnits units) =>
        $"{weight["plane"]} {units.Mass(Mass.FromGrams(Number(weight["massGrams"]) ?? 0))} {weight["kind"]} at {Quantity.Number(Number(weight["angleDegrees"]) ?? 0, 0)}°";

    private static double? Number(JsonNode? node) => node is JsonValue value && value.TryGetValue<double>(out var number) ? number : null;
}
