using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Vehicles;

namespace Trundle.Visits.Bay;

/// <summary>A vehicle with what its fitment and condition gave.</summary>
/// <param name="Vehicle">What was judged.</param>
/// <param name="Fitment">What is fitted, against placard, hubs and each other.</param>
/// <param name="Condition">In what state it is.</param>
public sealed record JudgedVehicle(FittedVehicle Vehicle, IReadOnlyList<Finding> Fitment, IReadOnlyList<Finding> Condition)
{
    /// <summary>Judges a vehicle; nothing is judged where nothing is fitted.</summary>
    public static JudgedVehicle Of(FittedVehicle vehicle)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        return vehicle.Fitted.Count == 0
            ? new JudgedVehicle(vehicle, [], [])
            : new JudgedVehicle(vehicle, FitmentCheck.Run(vehicle).Findings, ConditionCheck.Run(vehicle).Findings);
    }

    /// <summary>True where the same is fitted to the same vehicle, so that the same would be found.</summary>
    public bool IsOf(FittedVehicle other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return ReferenceEquals(Vehicle, other)
            || (ReferenceEquals(Vehicle.Vehicle, other.Vehicle)
                && Vehicle.Rules == other.Rules && Vehicle.Date == other.Date && Vehicle.Ambient == other.Ambient
                && Vehicle.Country == other.Country && ReferenceEquals(Vehicle.InForce, other.InForce)
                && Vehicle.Fitted.Count == other.Fitted.Count
                && Vehicle.Fitted.Zip(other.Fitted).All(p => Same(p.First, p.Second)));
    }

    /// <summary>Parts that were read once are one object for as long as nothing is entered in them.</summary>
    private static bool Same(Assembly a, Assembly b) => ReferenceEquals(a, b)
        || (a.Position == b.Position
            && ReferenceEquals(a.Tyre, b.Tyre) && ReferenceEquals(a.Wheel, b.Wheel) && ReferenceEquals(a.Tread, b.Tread)
            && Equals(a.Pressure, b.Pressure) && Equals(a.Valve, b.Valve) && a.Sensor == b.Sensor && Equals(a.SensorParts, b.SensorParts)
            && (ReferenceEquals(a.Fixings, b.Fixings) || (a.Fixings.Count == 0 && b.Fixings.Count == 0))
            && (ReferenceEquals(a.Damage, b.Damage) || (a.Damage.Count == 0 && b.Damage.Count == 0)));
}

/// <summary>Judges the vehicle of one visit as it came, with its new tyres, and as it leaves: often that is one and the same.</summary>
/// <param name="before">What was judged when the visit was read last.</param>
internal sealed class VehicleJudge(IReadOnlyList<JudgedVehicle> before)
{
    private readonly List<JudgedVehicle> _now = [];

    /// <summary>All that was judged, to be handed on to the next reading.</summary>
    public IReadOnlyList<JudgedVehicle> Judged => _now;

    public JudgedVehicle Of(FittedVehicle vehicle)
    {
        if (_now.Find(j => j.IsOf(vehicle)) is { } twice)
        {
            return twice;
        }

        var judged = before.FirstOrDefault(j => j.IsOf(vehicle)) ?? JudgedVehicle.Of(vehicle);
        _now.Add(judged);
        return judged;
    }
}
