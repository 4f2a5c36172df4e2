using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Sheets.Drawing;

namespace Trundle.Sheets;

/// <summary>The size that was chosen to stand in for the placard's, with what it changes.</summary>
internal static class FileStandIn
{
    /// <summary>The lines; nothing where none was chosen.</summary>
    public static void Write(SheetFlow flow, SheetContent content)
    {
        if (content.StandIns is not { } answer || answer["chosen"] is not JsonObject chosen)
        {
            return;
        }

        var judged = answer["candidates"]!.AsArray().OfType<JsonObject>().First(c => c["marking"]!.ToString() == chosen["marking"]!.ToString());
        flow.SubHeading("Stand-in for the placard's size");
        flow.Paragraph($"{chosen["marking"]}, {Verdict(chosen["verdict"]!.ToString())}. {string.Join(" ", judged["why"]!.AsArray())}".Trim());
        foreach (var axle in judged["axles"]!.AsArray().OfType<JsonObject>())
        {
            flow.Paragraph($"Axle {axle["axle"]}, placard {axle["placard"]}: circumference {Percent(axle["circumferencePercent"])}, cold {Cold(axle["cold"], content)}.");
        }

        if (judged["speedometer"] is JsonObject speedometer)
        {
            flow.Paragraph($"Where it was exact before, {Quantity.Number(speedometer["shownKilometresPerHour"]!.GetValue<double>(), 0)} km/h shown are {Quantity.Number(speedometer["trueKilometresPerHour"]!.GetValue<double>(), 1)} km/h, and 1000 km on the odometer {Quantity.Number(judged["odometer"]!["trueKilometres"]!.GetValue<double>(), 0)} km.");
        }

        foreach (var caution in judged["cautions"]!.AsArray())
        {
            flow.Paragraph($"Caution: {caution}", SheetInk.Soft, 7.4);
        }
    }

    private static string Verdict(string word) => word switch
    {
        "asPlacard" => "as the placard",
        "withApproval" => "only with approval",
        "ask" => "with something still to ask",
        _ => "REFUSED",
    };

    private static string Percent(JsonNode? percent) => percent is null ? "not known" : $"{(percent.GetValue<double>() > 0 ? "+" : "")}{Quantity.Number(percent.GetValue<double>(), 2)} %";

    private static string Cold(JsonNode? cold, SheetContent content) =>
        cold is JsonObject known ? $"{content.Units.Pressure(GaugePressure.FromKilopascals(known["kilopascals"]!.GetValue<double>()))} ({known["source"]}; {known["status"]})" : "not known";
}
