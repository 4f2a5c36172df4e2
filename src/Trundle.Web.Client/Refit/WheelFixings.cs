using Trundle.Engine.Fixings;
using Trundle.Engine.Vehicles;
using Trundle.Visits.Pictures;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Refit;

/// <summary>The tightening of one wheel on this visit: its plan, and its stud circle as a picture.</summary>
public static class WheelFixings
{
    /// <summary>The plan at a position, or null where the number of fixings is not known.</summary>
    public static FixingPlan? PlanAt(OpenVisit visit, Position position)
    {
        ArgumentNullException.ThrowIfNull(visit);
        var vehicle = visit.State.Arrived.Vehicle;
        return vehicle.AxleAt(position)?.Fixings is { Count: >= 1 and <= TighteningSequence.MostFixings } fixings
            ? FixingPlanner.Plan(new FixingQuestion(fixings) { Heavy = vehicle.VehicleClass is "goods over 3500 kg" or "bus" })
            : null;
    }

    /// <summary>The stud circle at a position with what is done and what is next.</summary>
    public static StudView Picture(OpenVisit visit, Position position, FixingPlan plan, IReadOnlySet<int> done, int? now)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(plan);
        var hub = visit.State.Arrived.Vehicle.AxleAt(position)?.Hub;
        var wheel = visit.State.Leaving.At(position)?.Wheel;
        var circle = hub?.BoltCircle ?? wheel?.BoltCircle;
        return new StudView(
            $"Fixings of {visit.Reading.Name(position)}",
            plan.OrderInUse.Count,
            plan.OrderInUse,
            done,
            now,
            circle?.Count == plan.OrderInUse.Count ? circle : null,
            hub?.Bore ?? wheel?.Bore);
    }
}
