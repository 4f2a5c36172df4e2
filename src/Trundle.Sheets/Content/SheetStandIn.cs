using System.Text.Json.Nodes;
using Trundle.Engine.Sidewall;
using Trundle.Measures;
using Trundle.Visits.Bay;

namespace Trundle.Sheets;

/// <summary>A size that stands in for the placard's and leaves on the vehicle, as plain sentences.</summary>
/// <param name="Fitted">That it is fitted, where, and by whose leave.</param>
/// <param name="Watch">What its speedometer and odometer show, and which pressures hold.</param>
internal sealed record SheetStandIn(string Fitted, string Watch)
{
    /// <summary>The sentences; null where none was chosen, it is the placard's own size, or it is on no wheel as the vehicle leaves.</summary>
    public static SheetStandIn? Of(JsonObject? answer, VisitState state, SheetUnits units)
    {
        if (answer?["chosen"] is not JsonObject chosen || chosen["verdict"]!.GetValue<string>() == "asPlacard"
            || answer["candidates"]!.AsArray().OfType<JsonObject>().First(c => c["marking"]!.GetValue<string>() == chosen["marking"]!.GetValue<string>()) is not { } judged
            || MarkingReader.Read(chosen["marking"]!.GetValue<string>()) is not { IsRead: true, Value: var marking })
        {
            return null;
        }

        var on = state.Leaving.Fitted.Where(a => !a.Position.IsSpare && a.Tyre?.Marking?.Size.Text == marking.Size.Text).Select(a => a.Position).ToList();
        if (on.Count == 0)
        {
            return null;
        }

        var placard = string.Join(" and ", judged["axles"]!.AsArray().Select(a => a!["placard"]!.GetValue<string>()).Distinct(StringComparer.Ordinal));
        var fitted = $"{marking.Typed} stands in for the placard's {placard} at {string.Join(" ", on)}{(chosen["verdict"]!.GetValue<string>() == "withApproval" ? ": only with the vehicle maker's list of sizes or papers that approve it" : "")}.";
        return new SheetStandIn(fitted, $"With {marking.Typed} on it: {Speedometer(judged, units)} Its pressures are those on this sheet, not the placard's.");
    }

    private static string Speedometer(JsonObject judged, SheetUnits units)
    {
        if (judged["speedometer"] is not JsonObject meter)
        {
            return "what it does to the speedometer is not known.";
        }

        var percent = meter["showsPercent"]!.GetValue<double>();
        if (Math.Abs(percent) < 0.05)
        {
            return "the speedometer reads as before.";
        }

        var shown = units.Miles ? Speed.FromMilesPerHour(60) : Speed.FromKilometresPerHour(100);
        var truly = shown * (meter["trueKilometresPerHour"]!.GetValue<double>() / meter["shownKilometresPerHour"]!.GetValue<double>());
        var unit = units.Miles ? "mph" : "km/h";
        return $"the speedometer reads {Quantity.Number(Math.Abs(percent), 1)} % {(percent > 0 ? "more" : "less")} than it did: where it was exact, {shown.Text(unit, 0)} shown are {truly.Text(unit, 1)}.";
    }
}
