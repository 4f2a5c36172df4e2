using Trundle.Engine.Fitment;
using Trundle.Engine.Rotation;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Bay;

/// <summary>The vehicle as it will leave: tyres renewed on their wheels, assemblies moved, pressures as they were set.</summary>
/// <param name="Vehicle">The vehicle.</param>
/// <param name="CameFrom">For each position that the rotation fills: where its assembly came from; empty where none was chosen.</param>
/// <param name="Refused">Why the chosen rotation may not be done, or null. Then nothing is moved.</param>
public sealed record LeavingVehicle(FittedVehicle Vehicle, IReadOnlyDictionary<Position, Position> CameFrom, string? Refused)
{
    /// <summary>Where the assembly at a position came from.</summary>
    public Position From(Position position) => CameFrom.GetValueOrDefault(position, position);

    /// <summary>Makes it of the vehicle as it came and of what was recorded.</summary>
    public static LeavingVehicle Of(FittedVehicle arrived, VisitWork work)
    {
        ArgumentNullException.ThrowIfNull(arrived);
        ArgumentNullException.ThrowIfNull(work);
        var renewed = WithRepairs(WithNewTyres(arrived, work), work);
        var moved = work.Rotation is null || RotationPlan.IsNone(work.Rotation) || arrived.Fitted.Count == 0 ? null : (Reading<RotationVerdict>?)RotationPlan.Verdict(renewed, work.Rotation);
        var (vehicle, cameFrom, refused) = moved switch
        {
            null => (renewed, [], null),
            { IsRead: false } => (renewed, [], moved.Value.Problem!.Message),
            { Value.AllowedWithRemounting: false } => (renewed, [], moved.Value.Value.Why),
            _ => (RotationPlan.After(renewed, moved.Value.Value), moved.Value.Value.Moves.ToDictionary(m => m.To, m => m.From), (string?)null),
        };
        return new LeavingVehicle(vehicle with { Fitted = [.. vehicle.Fitted.Select(a => Set(Mounted(a, cameFrom.GetValueOrDefault(a.Position, a.Position), work), work))] }, cameFrom, refused);
    }

    /// <summary>
    /// A tyre that came in on this vehicle and was mounted anew, its direction and outside checked, stands as the arrow and the word ask where it
    /// goes. What was entered of a new tyre stands as entered; so does an inner dual's, whose arrow a person looks at in its place.
    /// </summary>
    private static Assembly Mounted(Assembly assembly, Position from, VisitWork work)
    {
        if (assembly is not { Tyre: { } tyre, Position: { IsSpare: false } at } || at.Dual == DualPlace.Inner || work.Renewed.ContainsKey(from)
            || work.At(from.ToString(), "mount")?.Word is not { } word || !work.Procedure.Step("mount").Passing.Contains(word)
            || (tyre.MountedFor is null && tyre.OuterFaceOut is null))
        {
            return assembly;
        }

        return assembly with
        {
            Tyre = tyre with
            {
                MountedFor = tyre.MountedFor is null ? null : Facing.TurningSide(at) == Side.Left ? MountedFor.Left : MountedFor.Right,
                OuterFaceOut = tyre.OuterFaceOut is null ? null : true,
            },
        };
    }

    /// <summary>True where the tyre that came in at a position was off its wheel on this visit, or is not on it any more: then its inside was looked at, or does not matter.</summary>
    public static bool TyreWasOff(Position arrivedAt, VisitWork work)
    {
        ArgumentNullException.ThrowIfNull(work);
        return work.Renewed.ContainsKey(arrivedAt) || work.At(arrivedAt.ToString(), "demount")?.Word == ProcedureStep.Done;
    }

    /// <summary>The vehicle with each new tyre on the wheel that it is mounted on, wheels where they came in.</summary>
    public static FittedVehicle WithNewTyres(FittedVehicle arrived, VisitWork work)
    {
        ArgumentNullException.ThrowIfNull(arrived);
        ArgumentNullException.ThrowIfNull(work);
        // A tyre that was condemned on this visit does not become a new one by being entered at another place.
        var condemned = arrived.Fitted.Select(a => a.Tyre).OfType<FittedTyre>().Where(t => t is { Condemned: true, Id: not null }).Select(t => t.Id!).ToHashSet(StringComparer.OrdinalIgnoreCase);
        return arrived with
        {
            Fitted = [.. arrived.Fitted.Select(a => work.Renewed.TryGetValue(a.Position, out var tyre)
                ? a with { Tyre = tyre.Tyre?.Id is { } id && condemned.Contains(id) ? tyre.Tyre with { Condemned = true } : tyre.Tyre, Tread = tyre.Tread, Damage = [], Pressure = null, Valve = tyre.Valve ?? a.Valve }
                : a)],
        };
    }

    /// <summary>The vehicle without the punctures whose repair may be done, was done and is marked: one for each repair.</summary>
    private static FittedVehicle WithRepairs(FittedVehicle vehicle, VisitWork work) => vehicle with
    {
        Fitted = [.. vehicle.Fitted.Select(a => a.Damage.FirstOrDefault(d => d is { Kind: DamageKind.Puncture, Place: DamagePlace.Tread }) is { } puncture
            && work.Repairs.TryGetValue(a.Position, out var repair) && work.At(a.Position.ToString(), "repair-marked") is not null && RepairJudge.Of(vehicle, a, repair, work).MayBeRepaired
            ? a with { Damage = [.. a.Damage.Where(d => !ReferenceEquals(d, puncture))] }
            : a)],
    };

    private static Assembly Set(Assembly assembly, VisitWork work) =>
        work.At(assembly.Position.ToString(), "pressure-set")?.Pressure is { } pressure
            ? assembly with { Pressure = new PressureReading(pressure, null, false) }
            : assembly;
}
