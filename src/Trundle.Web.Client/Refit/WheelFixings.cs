using Trundle.Engine.Fixings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Pictures;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Refit;

/// <summary>The tightening of one wheel on this visit: its plan, its stud circle as a picture, and the words of its re-torque.</summary>
public static class WheelFixings
{
    /// <summary>The plan at a position, or null where the number of fixings is not known.</summary>
    /// <param name="visit">The visit.</param>
    /// <param name="position">The wheel.</param>
    /// <param name="adapter">What lengthens the wrench, or null.</param>
    public static FixingPlan? PlanAt(OpenVisit visit, Position position, WrenchAdapter? adapter = null)
    {
        ArgumentNullException.ThrowIfNull(visit);
        var vehicle = visit.State.Arrived.Vehicle;
        return vehicle.AxleAt(position)?.Fixings?.At(position) is { Count: >= 1 and <= TighteningSequence.MostFixings } fixings
            ? FixingPlanner.Plan(new FixingQuestion(fixings with { SeatWorn = fixings.SeatWorn || visit.State.Leaving.At(position)?.Wheel?.SeatWorn == true }) { Heavy = IsHeavy(visit), Adapter = adapter, Wrench = visit.State.Work.Used("torqueWrench")?.Wrench })
            : null;
    }

    /// <summary>"50 to 100 km".</summary>
    public static string Distance(OpenVisit visit, ReTorque again)
    {
        ArgumentNullException.ThrowIfNull(again);
        var unit = visit.Distance().Bare;
        return $"{Quantity.Number(again.From.In(unit), 0)} to {again.To.Text(unit, 0)}";
    }

    /// <summary>The field of one figure of the fixings at a position.</summary>
    public static string FieldOf(Position position, string figure) =>
        FormattableString.Invariant($"vehicle.axles.{Math.Max(position.Axle, 1) - 1}.fixings.{figure}");

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

    private static bool IsHeavy(OpenVisit visit) => visit.State.Arrived.Vehicle.VehicleClass is "goods over 3500 kg" or "bus";
}
