using Trundle.Engine.Findings;
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
        var renewed = WithRepairs(WithRenewals(arrived, work), work);
        var moved = work.Rotation is null || RotationPlan.IsNone(work.Rotation) || arrived.Fitted.Count == 0 ? null : (Reading<RotationVerdict>?)RotationPlan.Verdict(renewed, work.Rotation, f => IsSettled(f, work));
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
        return work.Renewed.ContainsKey(arrivedAt) || work.RenewedWheels.ContainsKey(arrivedAt) || work.At(arrivedAt.ToString(), "demount")?.Word == ProcedureStep.Done;
    }

    /// <summary>
    /// True for a finding that keeps its tyre out of a rotation no longer: a person decided what was referred, or a tyre that was low has been off its
    /// wheel and was looked at inside. What is major or dangerous otherwise is put right, and never moved.
    /// </summary>
    public static bool IsSettled(Finding finding, VisitWork work)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return (finding.Category == Category.Refer && VisitFindings.Stops(finding, work) is null)
            || (finding.Rule.StartsWith("pressure.", StringComparison.Ordinal) && Position.Read(finding.Position ?? "") is { IsRead: true } at && TyreWasOff(at.Value, work));
    }

    /// <summary>The vehicle with each new tyre, valve and wheel in the place of the old one, assemblies where they came in.</summary>
    public static FittedVehicle WithRenewals(FittedVehicle arrived, VisitWork work)
    {
        ArgumentNullException.ThrowIfNull(arrived);
        ArgumentNullException.ThrowIfNull(work);
        // What was condemned on this visit does not become new by being entered at another place.
        var tyres = Names(arrived.Fitted.Where(a => a.Tyre is { Condemned: true }).Select(a => a.Tyre!.Id));
        var wheels = Names(arrived.Fitted.Where(a => a.Wheel is { Condemned: true }).Select(a => a.Wheel!.Id));
        return arrived with { Fitted = [.. arrived.Fitted.Select(a => WithValve(WithTyre(WithWheel(a, work, wheels), work, tyres), arrived, work))] };
    }

    private static HashSet<string> Names(IEnumerable<string?> names) => names.OfType<string>().ToHashSet(StringComparer.OrdinalIgnoreCase);

    private static Assembly WithTyre(Assembly came, VisitWork work, HashSet<string> condemned) => !work.Renewed.TryGetValue(came.Position, out var renewed) ? came : came with
    {
        Tyre = renewed.Tyre.Id is { } id && condemned.Contains(id) ? renewed.Tyre with { Condemned = true } : renewed.Tyre,
        Tread = renewed.Tread, Damage = [], Pressure = null, Mass = null,
    };

    /// <summary>Another wheel under the tyre: the air is out, and what its fixings looked like in the old holes is past.</summary>
    private static Assembly WithWheel(Assembly came, VisitWork work, HashSet<string> condemned) => !work.RenewedWheels.TryGetValue(came.Position, out var wheel) ? came : came with
    {
        Wheel = wheel.Id is { } id && condemned.Contains(id) ? wheel with { Condemned = true } : wheel,
        Pressure = null, Mass = null,
    };

    /// <summary>A valve that went in on this visit is as old as the visit, unless somebody says otherwise.</summary>
    private static Assembly WithValve(Assembly came, FittedVehicle arrived, VisitWork work) => !work.RenewedValves.TryGetValue(came.Position, out var valve) ? came : came with
    {
        Valve = valve with { Renewed = valve.Renewed ?? arrived.Date },
    };

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
