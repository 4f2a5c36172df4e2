using Trundle.Engine.Mounting;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Procedures;

namespace Trundle.Visits.Bay;

/// <summary>Tells what makes the work at a wheel another than the ordinary, from what was entered of it.</summary>
public static class WheelCircumstances
{
    /// <summary>What is so at the wheel that came in at a position, with the tyre that it leaves with.</summary>
    /// <param name="vehicle">The vehicle with its new tyres on the wheels where they came in.</param>
    /// <param name="position">Where it came in.</param>
    /// <param name="work">What was recorded.</param>
    /// <param name="balance">What was entered for its balance, or null: what it weighs may stand there.</param>
    public static Circumstances At(FittedVehicle vehicle, Position position, VisitWork work, FileNode? balance)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(work);
        var (assembly, vehicleClass) = (vehicle.At(position), vehicle.Vehicle.VehicleClass);
        var (tyre, wheel) = (assembly?.Tyre, assembly?.Wheel);
        var truck = WheelKind.IsTruck(tyre, vehicleClass);
        return new Circumstances(new Dictionary<Circumstance, bool?>
        {
            [Circumstance.LowProfile] = WheelKind.IsLowProfile(tyre),
            [Circumstance.RunFlat] = WheelKind.IsRunFlat(tyre),
            [Circumstance.Sensor] = assembly?.Sensor switch { SensorState.Working or SensorState.NotWorking => true, SensorState.Absent => false, null => null },
            [Circumstance.TubeType] = WheelKind.NeedsTube(tyre),
            [Circumstance.ReversedRim] = wheel?.Reversed,
            [Circumstance.Motorcycle] = WheelKind.IsMotorcycle(tyre, vehicleClass),
            [Circumstance.AirSuspension] = vehicle.Vehicle.AirSuspension,
            [Circumstance.HeavyWheel] = WheelKind.IsHeavy(assembly?.Mass ?? Weighed(balance), truck),
            [Circumstance.Truck] = truck,
            [Circumstance.MultiPiece] = WheelKind.IsOfSeveralPieces(wheel, tyre, vehicleClass),
            [Circumstance.Repair] = work.Repairs.ContainsKey(position),
        });
    }

    /// <summary>The mass of the assembly that was entered for its balance.</summary>
    private static Mass? Weighed(FileNode? balance) =>
        balance?.Member("wheel")?.Member("mass") is { Kind: NodeKind.Text or NodeKind.Number } node && Quantity.Read<Mass>(node.Text, "kg") is { IsRead: true } read ? read.Value : null;
}
