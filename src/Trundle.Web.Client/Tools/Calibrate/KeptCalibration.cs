using System.Text.Json;
using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tools.Calibrate;

/// <summary>The balancer's calibration as this browser keeps it: the page of a recorded spin takes it from there.</summary>
public static class KeptCalibration
{
    private const string Name = "trundle-machine-calibration";

    /// <summary>Keeps one in the place of the last; false where the browser has no room.</summary>
    public static Task<bool> KeepAsync(Browser browser, JsonObject calibration)
    {
        ArgumentNullException.ThrowIfNull(browser);
        ArgumentNullException.ThrowIfNull(calibration);
        return browser.RememberAsync(Name, calibration.ToJsonString());
    }

    /// <summary>The one that is kept, or null.</summary>
    public static async Task<JsonObject?> RecallAsync(Browser browser)
    {
        ArgumentNullException.ThrowIfNull(browser);
        try
        {
            return await browser.RecallAsync(Name) is { } text && JsonNode.Parse(text) is JsonObject { Count: > 0 } kept && kept["speeds"] is JsonArray ? kept : null;
        }
        catch (JsonException)
        {
            // What another program wrote there is not ours.
            return null;
        }
    }

    /// <summary>What it serves for, in words: "clockwise, at 120, 180 and 240 r/min".</summary>
    public static string Words(JsonObject calibration)
    {
        ArgumentNullException.ThrowIfNull(calibration);
        var speeds = calibration["speeds"].Each().Select(s => Quantity.Number(s["speedRevolutionsPerMinute"].Number(), 0)).ToList();
        return $"{calibration["rotation"].Words()}, at {(speeds.Count < 2 ? string.Concat(speeds) : $"{string.Join(", ", speeds[..^1])} and {speeds[^1]}")} r/min";
    }
}
