using Trundle.Engine.Vehicles;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;
using Trundle.Web.Client.Frame;

namespace Trundle.Web.Client.HandBack;

/// <summary>Where each thing that stops hand-back is put right, and its words.</summary>
public static class StopPlaces
{
    /// <summary>The step at which it is recorded, or null where it is a finding or an entry that is missing.</summary>
    public static StepState? StepOf(OpenVisit visit, Stop stop)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(stop);
        return stop.DecisionKey is null
            ? visit.State.On(stop.Leg).Steps.FirstOrDefault(s => s.Step.Title == stop.What && s.At == (stop.Position ?? "vehicle"))
            : null;
    }

    /// <summary>The page, and the field on it.</summary>
    public static string Of(OpenVisit visit, Stop stop)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(stop);
        return stop.DecisionKey is { } key ? Places.OfField(visit.Id, Leg.HandBack, null, $"work.decisions.{key}.decision")
            : StepOf(visit, stop) is { } step ? Places.Of(visit.Id, stop.Leg, step.At, step.Step.Id)
            : visit.State.On(stop.Leg).Needs.FirstOrDefault(n => n.What == stop.What && n.Position == stop.Position) is { } need ? Places.OfField(visit.Id, need.Leg, need.Position, need.Field)
            : Places.Of(visit.Id, stop.Leg, stop.Position);
    }

    /// <summary>"Front left: Final torque on every fixing".</summary>
    public static string Words(OpenVisit visit, Stop stop)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(stop);
        var at = stop.Position is null ? null
            : Position.Read(stop.Position) is { IsRead: true } position ? visit.Reading.Name(position.Value).Capital()
            : stop.Position.Capital();

        // What is missing on the look over names its wheel itself.
        return at is null || stop.What.StartsWith(at, StringComparison.Ordinal) ? stop.What.Capital() : $"{at}: {stop.What}";
    }
}
