using Trundle.Engine.Vehicles;

namespace Trundle.Visits.Bay;

/// <summary>The vehicle as it will leave: tyres renewed on their wheels, assemblies moved, pressures as they were set.</summary>
public static class LeavingVehicle
{
    /// <summary>Makes it of the vehicle as it came and of what was recorded.</summary>
    /// <returns>The vehicle, and from where to where each assembly moves; the moves are empty where no rotation was chosen.</returns>
    public static (FittedVehicle Vehicle, IReadOnlyDictionary<Position, Position> CameFrom) Of(FittedVehicle arrived, VisitWork work)
    {
        ArgumentNullException.ThrowIfNull(arrived);
        ArgumentNullException.ThrowIfNull(work);
        var renewed = arrived with { Fitted = [.. arrived.Fitted.Select(a => Renewed(a, work))] };
        var cameFrom = new Dictionary<Position, Position>();
        var moved = renewed with { Fitted = [.. renewed.Fitted.Select(a => Moved(a, renewed, cameFrom))] };
        var set = moved with { Fitted = [.. moved.Fitted.Select(a => Set(a, work))] };
        return (set, cameFrom);
    }

    private static Assembly Renewed(Assembly assembly, VisitWork work) =>
        work.Renewed.TryGetValue(assembly.Position, out var tyre)
            ? assembly with { Tyre = tyre.Tyre, Tread = tyre.Tread, Damage = [], Pressure = null }
            : assembly;

    private static Assembly Moved(Assembly at, FittedVehicle vehicle, Dictionary<Position, Position> cameFrom) =>
        cameFrom.TryGetValue(at.Position, out var from) && vehicle.At(from) is { } assembly
            ? assembly with { Position = at.Position }
            : at;

    private static Assembly Set(Assembly assembly, VisitWork work) =>
        work.At(assembly.Position.ToString(), "pressure-set")?.Pressure is { } pressure
            ? assembly with { Pressure = new PressureReading(pressure, null, false) }
            : assembly;
}
