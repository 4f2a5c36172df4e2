using Trundle.Engine.Vehicles;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Fitment;

/// <summary>What the rules ask of a vehicle as a whole: which axles are driven, how heavy it is, how many wheels share an axle's load.</summary>
public static class Drivetrain
{
    /// <summary>The driven axles, counted from 1; empty where nobody said.</summary>
    /// <remarks>The axles' own flags rule; where none is set, <c>drive</c> stands for them: front is axle 1, rear every axle behind it, all is every axle.</remarks>
    /// <source>common practice</source>
    public static IReadOnlyList<int> DrivenAxles(Vehicle vehicle)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        var all = Enumerable.Range(1, vehicle.Axles.Count).ToList();
        var flagged = all.Where(a => vehicle.Axles[a - 1].Driven).ToList();
        return vehicle.Drive switch
        {
            Drive.All => all,
            _ when flagged.Count > 0 => flagged,
            Drive.Front => [.. all.Take(1)],
            Drive.Rear => [.. all.Skip(1)],
            null => [],
            _ => throw new InvalidOperationException("No such drive."),
        };
    }

    /// <summary>How many axles the vehicle has: those described, or as many as the assemblies' positions tell.</summary>
    /// <source>common practice</source>
    public static int AxleCount(FittedVehicle subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        return Math.Max(subject.Vehicle.Axles.Count, subject.Fitted.Select(a => a.Position.Axle).DefaultIfEmpty(0).Max());
    }

    /// <summary>True where every axle is driven.</summary>
    /// <source>common practice</source>
    public static bool AllWheelsDriven(Vehicle vehicle)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        return vehicle.Axles.Count > 1 && DrivenAxles(vehicle).Count == vehicle.Axles.Count;
    }

    /// <summary>How many wheels share the load of an axle.</summary>
    /// <source>common practice</source>
    public static int WheelsOn(Vehicle vehicle, int axle)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        return vehicle.SingleTrack ? 1 : vehicle.Axles[axle - 1].Dual ? 4 : 2;
    }

    /// <summary>True where the US rules for heavy vehicles hold: by the axle loads where all are known, else by the class.</summary>
    /// <source>49 CFR 570 subpart B, over 10,000 lb (from memory)</source>
    public static bool HeavyByUnitedStatesRules(Vehicle vehicle)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        var loads = vehicle.Axles.Select(a => a.Load).OfType<Mass>().ToList();
        return loads.Count == vehicle.Axles.Count && loads.Count > 0
            ? loads.Sum(l => l.Kilograms) > Figures.Of("fitment.heavy-vehicle").As<Mass>().Kilograms
            : vehicle.VehicleClass is "goods over 3500 kg" or "bus" or "trailer over 3500 kg";
    }
}
