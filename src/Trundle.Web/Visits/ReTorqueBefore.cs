using System.Text.Json.Nodes;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Instruments;

namespace Trundle.Web.Visits;

/// <summary>What the last visit of the same vehicle left due, beside a visit: who has it in the bay again sees whether it was done.</summary>
internal static class ReTorqueBefore
{
    /// <summary>The answer with the re-torque of the last visit, or with none.</summary>
    public static JsonObject WithReTorqueBefore(this JsonObject answer, StoredVisit visit, WorkshopStore store)
    {
        if (store.Visits.TightenedBefore(visit) is { } before && ReTorqueDue.Of(VisitStanding.Of(before.Fields, before.Heading.Id, store.Condemned.Standing(), [])) is { } due)
        {
            answer["reTorqueBefore"] = new JsonObject
            {
                ["visit"] = before.Heading.Number,
                ["handedBackOn"] = InstrumentJson.Day(before.Heading.HandedBackAt is { } at ? DateOnly.FromDateTime(at.UtcDateTime) : null),
                ["fromOdometerKilometres"] = due.From?.Kilometres,
                ["toOdometerKilometres"] = due.To?.Kilometres,
                ["open"] = due.IsOpen,
                ["doneOn"] = InstrumentJson.Day(due.Done?.On),
                ["result"] = due.Done?.Words,
            };
        }

        return answer;
    }
}
