using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Instruments;

namespace Trundle.Web.Client.Entries;

/// <summary>The re-torque that the last visit of the same vehicle left due, as it came with the visit.</summary>
/// <param name="Visit">That visit's number.</param>
/// <param name="HandedBackOn">When the vehicle left, or null.</param>
/// <param name="From">Due from this reading of the odometer, or null.</param>
/// <param name="To">Due up to this reading, or null.</param>
/// <param name="Open">True where nobody recorded it, or a fixing turned.</param>
/// <param name="DoneOn">When it was checked, or null.</param>
/// <param name="Result">What was found, or null.</param>
public sealed record ReTorqueOfBefore(string Visit, DateOnly? HandedBackOn, Length? From, Length? To, bool Open, DateOnly? DoneOn, string? Result)
{
    /// <summary>Reads it from the host's answer; null where there is none.</summary>
    public static ReTorqueOfBefore? Read(JsonObject body)
    {
        ArgumentNullException.ThrowIfNull(body);
        return body["reTorqueBefore"] is JsonObject json && EntryJson.Text(json, "visit") is { } visit
            ? new ReTorqueOfBefore(visit, InstrumentJson.DayOf(EntryJson.Text(json, "handedBackOn")), Road("fromOdometerKilometres"), Road("toOdometerKilometres"),
                json["open"]?.GetValue<bool>() ?? true, InstrumentJson.DayOf(EntryJson.Text(json, "doneOn")), EntryJson.Text(json, "result"))
            : null;

        Length? Road(string key) => json[key] is JsonValue value ? Length.FromKilometres(value.GetValue<double>()) : null;
    }
}
