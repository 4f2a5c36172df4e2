using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Instruments;
using Trundle.Visits.Paper;

namespace Trundle.Visits.Bay;

/// <summary>What one plane of a balancer showed.</summary>
public sealed record PlaneDisplay(Mass Mass, double AngleDegrees);

/// <summary>What was recorded at one step. Only the part that the step asks for is filled.</summary>
/// <param name="Word">The word of a confirmation or a choice, or free text.</param>
/// <param name="Pressure">A pressure.</param>
/// <param name="Torques">The torque of each fixing, from 1.</param>
/// <param name="Inner">The inner plane's display.</param>
/// <param name="Outer">The outer plane's display.</param>
public sealed record StepRecord(string? Word, GaugePressure? Pressure, IReadOnlyDictionary<int, Torque> Torques, PlaneDisplay? Inner, PlaneDisplay? Outer);

/// <summary>What a person decided about a finding.</summary>
/// <param name="Text">The decision in words.</param>
/// <param name="By">Who.</param>
/// <param name="Role">What that person was.</param>
/// <param name="SignedRefusal">The name that the customer signed with, where the customer refused the work; or null.</param>
public sealed record Decision(string Text, string By, Role? Role, string? SignedRefusal);

/// <summary>A tyre that is mounted on this visit in place of the one that came on a wheel.</summary>
/// <param name="Tyre">The tyre.</param>
/// <param name="Tread">Its depths, or null.</param>
public sealed record RenewedTyre(FittedTyre Tyre, TreadDepths? Tread);

/// <summary>The <c>work</c> part of a visit: what was agreed, done and decided.</summary>
public sealed record VisitWork
{
    /// <summary>Nothing recorded.</summary>
    public static VisitWork Empty { get; } = new();

    /// <summary>The visit's number on paper.</summary>
    public string? Number { get; init; }

    /// <summary>Which bay.</summary>
    public string? Bay { get; init; }

    /// <summary>Whom to call.</summary>
    public string? Contact { get; init; }

    /// <summary>When it was promised, as typed: 2026-03-14 16:30.</summary>
    public string? Promised { get; init; }

    /// <summary>The rotation chosen: a pattern's name or 'none'.</summary>
    public string? Rotation { get; init; }

    /// <summary>What is done to the wheel that came in at a position.</summary>
    public IReadOnlyDictionary<Position, WheelJob> Jobs { get; init; } = new Dictionary<Position, WheelJob>();

    /// <summary>New tyres, by the position at which their wheel came in.</summary>
    public IReadOnlyDictionary<Position, RenewedTyre> Renewed { get; init; } = new Dictionary<Position, RenewedTyre>();

    /// <summary>Valves that were renewed, with a new tyre or under the old one, by the position at which their wheel came in.</summary>
    public IReadOnlyDictionary<Position, Valve> RenewedValves { get; init; } = new Dictionary<Position, Valve>();

    /// <summary>Wheels that took the place of the one that came in at a position, under its tyre or a new one.</summary>
    public IReadOnlyDictionary<Position, Wheel> RenewedWheels { get; init; } = new Dictionary<Position, Wheel>();

    /// <summary>Steps recorded, by position or <c>vehicle</c>, then by step.</summary>
    public IReadOnlyDictionary<string, IReadOnlyDictionary<string, StepRecord>> Steps { get; init; } = new Dictionary<string, IReadOnlyDictionary<string, StepRecord>>();

    /// <summary>How far the stages at a wheel had come, by the position that it goes to.</summary>
    public IReadOnlyDictionary<Position, TighteningRecord> Tightening { get; init; } = new Dictionary<Position, TighteningRecord>();

    /// <summary>Punctures that are repaired, by the position at which their wheel came in.</summary>
    public IReadOnlyDictionary<Position, RepairRecord> Repairs { get; init; } = new Dictionary<Position, RepairRecord>();

    /// <summary>What a licensed shop did, by the position at which the wheel came in.</summary>
    public IReadOnlyDictionary<Position, LicensedWork> Licensed { get; init; } = new Dictionary<Position, LicensedWork>();

    /// <summary>The procedure by which the visit is worked.</summary>
    public Procedure Procedure { get; init; } = Procedure.BuiltIn;

    /// <summary>Decisions, by <see cref="VisitFindings.DecisionKey"/>.</summary>
    public IReadOnlyDictionary<string, Decision> Decisions { get; init; } = new Dictionary<string, Decision>();

    /// <summary>What trainees were permitted, in order.</summary>
    public IReadOnlyList<Permission> Permissions { get; init; } = [];

    /// <summary>Steps that a trainee recorded, by position or <c>vehicle</c>, then by step.</summary>
    public IReadOnlyDictionary<string, IReadOnlyDictionary<string, TraineeStep>> Trainees { get; init; } = new Dictionary<string, IReadOnlyDictionary<string, TraineeStep>>();

    /// <summary>What an instructor said of a trainee's work, by position or <c>vehicle</c>, then by step.</summary>
    public IReadOnlyDictionary<string, IReadOnlyDictionary<string, SignedOff>> SignedOff { get; init; } = new Dictionary<string, IReadOnlyDictionary<string, SignedOff>>();

    /// <summary>Incidents and near misses, in order.</summary>
    public IReadOnlyList<Incident> Incidents { get; init; } = [];

    /// <summary>Who signed the hand-back, or null.</summary>
    public string? HandedBackBy { get; init; }

    /// <summary>What that person was, or null where the file does not say.</summary>
    public Role? HandedBackRole { get; init; }

    /// <summary>Notes for the customer: what to watch.</summary>
    public string? Watch { get; init; }

    /// <summary>The name of the torque wrench that the final torques were set with, or null.</summary>
    public string? TorqueWrench => Used("torqueWrench")?.Name;

    /// <summary>The name of the gauge that the pressures were set with, or null.</summary>
    public string? PressureGauge => Used("pressureGauge")?.Name;

    /// <summary>That the tightening was checked again, or null where nobody recorded it.</summary>
    public ReTorqueRecord? ReTorque { get; init; }

    /// <summary>The instruments that were used, each with its record as it stood then.</summary>
    public IReadOnlyList<UsedInstrument> Instruments { get; init; } = [];

    /// <summary>The instrument of a use, or null.</summary>
    public UsedInstrument? Used(string key) => Instruments.FirstOrDefault(i => i.Use.Key == key);

    /// <summary>The visit's paper: what was agreed and declined, the locking key, what was seen with the wheels off, stock used, scrap out.</summary>
    public VisitPaper Paper { get; init; } = VisitPaper.Empty;

    /// <summary>The trainee who recorded a step, or null.</summary>
    public TraineeStep? TraineeAt(string positionOrVehicle, string step) => Trainees.GetValueOrDefault(positionOrVehicle)?.GetValueOrDefault(step);

    /// <summary>What an instructor said of a step, or null.</summary>
    public SignedOff? SignedOffAt(string positionOrVehicle, string step) => SignedOff.GetValueOrDefault(positionOrVehicle)?.GetValueOrDefault(step);

    /// <summary>The record of a step, or null.</summary>
    public StepRecord? At(string positionOrVehicle, string step) =>
        Steps.TryGetValue(positionOrVehicle, out var steps) && steps.TryGetValue(step, out var record) ? record : null;
}
