using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Sheets.Drawing;

namespace Trundle.Sheets;

/// <summary>How fast tyres lose air, a line for each wheel whose loss was followed.</summary>
internal static class FileLosses
{
    /// <summary>The lines; nothing where none was followed.</summary>
    public static void Write(SheetFlow flow, SheetContent content)
    {
        var wheels = content.Wheels.Where(w => w.Leak is not null).ToList();
        if (wheels.Count == 0)
        {
            return;
        }

        flow.Heading("Loss of air, temperature taken out", 40);
        foreach (var wheel in wheels)
        {
            flow.Paragraph($"{wheel.Name}, {wheel.Position}: {Line(wheel.Leak!, content.Units)}");
        }
    }

    private static string Line(JsonObject leak, SheetUnits units)
    {
        if (leak["notAnswered"] is JsonObject open)
        {
            return $"not answered yet. {open["message"]}";
        }

        var month = leak["lossPerMonth"]!;
        var readings = leak["readings"]!.AsArray();
        var judged = leak["findings"]!.AsArray()[0]!;
        return $"{Loss(month["estimateKilopascals"]!, units)} a month ({Loss(month["lowKilopascals"]!, units)} to {Loss(month["highKilopascals"]!, units)}, 95 %) by {readings.Count.ToString(System.Globalization.CultureInfo.InvariantCulture)} readings from {readings[0]!["at"]} to {readings[^1]!["at"]}. "
            + $"A sound tyre loses at most {leak["sound"]!["text"]} ({leak["sound"]!["source"]}; {leak["sound"]!["status"]}). {judged["action"]} {Warning(leak, units)}";
    }

    private static string Warning(JsonObject leak, SheetUnits units)
    {
        if (leak["warning"] is not JsonObject warning || leak["toWarning"] is not JsonObject until)
        {
            return "The warning pressure is not known.";
        }

        var at = $"The warning at {units.Pressure(GaugePressure.FromKilopascals(warning["kilopascals"]!.GetValue<double>()))} ({warning["source"]}; {warning["status"]})";
        return until["reached"]!.GetValue<bool>()
            ? $"{at} is reached already."
            : $"{at} comes {(until["days"] is { } days ? $"in {Days(days)}" : "not within ten years by the line")}, at the earliest {(until["earliestDays"] is { } early ? $"in {Days(early)}" : "after ten years")}, at the latest {(until["latestDays"] is { } late ? $"in {Days(late)}" : "at a time that cannot be told")}, counted from the last reading.";
    }

    private static string Days(JsonNode days) => $"{Quantity.Number(days.GetValue<double>(), 0)} days";

    /// <summary>A loss of air in the reader's unit.</summary>
    internal static string Loss(JsonNode kilopascals, SheetUnits units) =>
        GaugePressure.FromKilopascals(kilopascals.GetValue<double>()).Text(units.Habits.Pressure, units.Habits.Pressure == "bar" ? 3 : 1);
}
