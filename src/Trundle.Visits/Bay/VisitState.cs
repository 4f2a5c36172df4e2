using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Visits.Files;

namespace Trundle.Visits.Bay;

/// <summary>How a step of the procedure stands.</summary>
public enum StepStanding
{
    /// <summary>Nothing recorded yet.</summary>
    Open,

    /// <summary>Recorded, and the work may go on.</summary>
    Passed,

    /// <summary>Recorded, and it stops the work.</summary>
    Failed,
}

/// <summary>One step at one place, and how it stands.</summary>
/// <param name="Step">The step.</param>
/// <param name="At">A position, or <c>vehicle</c>.</param>
/// <param name="Standing">How it stands.</param>
/// <param name="Record">What was recorded, or null.</param>
/// <param name="Why">What is wrong or still missing, or null.</param>
public sealed record StepState(ProcedureStep Step, string At, StepStanding Standing, StepRecord? Record, string? Why)
{
    /// <summary>An earlier hold point that is not passed: until it is, this step waits. Null where nothing holds it.</summary>
    public StepState? HeldBy { get; init; }
}

/// <summary>One thing that stops hand-back.</summary>
/// <param name="Leg">Where it is put right.</param>
/// <param name="Position">At which wheel, or null.</param>
/// <param name="What">What, in words.</param>
/// <param name="Why">Why it stops.</param>
/// <param name="DecisionKey">The key of the decision that would lift it, or null where nobody may.</param>
public sealed record Stop(Leg Leg, string? Position, string What, string Why, string? DecisionKey);

/// <summary>How one leg stands.</summary>
/// <param name="Leg">The leg.</param>
/// <param name="Needs">What is still to be entered.</param>
/// <param name="Steps">Its steps at every place where they are due.</param>
/// <param name="Findings">What was found that belongs here.</param>
public sealed record LegState(Leg Leg, IReadOnlyList<Need> Needs, IReadOnlyList<StepState> Steps, IReadOnlyList<Finding> Findings)
{
    /// <summary>True where nothing is left to do on the leg.</summary>
    public bool Done => Needs.Count == 0 && Steps.All(s => s.Standing == StepStanding.Passed);

    /// <summary>True where something was already done on it.</summary>
    public bool Begun { get; init; }
}

/// <summary>A visit as it stands: legs, what stops hand-back, and the wheels that are not finally tightened.</summary>
/// <param name="Entered">The visit's file as read.</param>
/// <param name="Leaving">The vehicle as it will leave: tyres renewed, assemblies moved, pressures as set.</param>
/// <param name="Work">What was recorded.</param>
/// <param name="Legs">The legs in order.</param>
/// <param name="Stops">All that stops hand-back; empty where the vehicle may go.</param>
/// <param name="NotTightened">Wheels that were off, or are to come off, without every fixing finally tightened.</param>
/// <param name="Loose">Of these, the wheels at which work has begun: what the board shows.</param>
public sealed record VisitState(
    VisitFile Entered, FittedVehicle Leaving, VisitWork Work, IReadOnlyList<LegState> Legs, IReadOnlyList<Stop> Stops,
    IReadOnlyList<Position> NotTightened, IReadOnlyList<Position> Loose)
{
    /// <summary>The vehicle as it came.</summary>
    public FittedVehicle Arrived => Entered.Subject;

    /// <summary>The vehicles that were judged for this state, for the next reading of the same visit.</summary>
    public IReadOnlyList<JudgedVehicle> Judged { get; init; } = [];

    /// <summary>True where nothing stops hand-back.</summary>
    public bool MayLeave => Stops.Count == 0;

    /// <summary>True where somebody who may signed the hand-back, and nothing stops it.</summary>
    public bool HandedBack => MayLeave && Signed(Work);

    /// <summary>True where somebody who may release a vehicle signed.</summary>
    internal static bool Signed(VisitWork work) => work.HandedBackBy is not null && work.HandedBackRole is { } role && role.May(Right.HandBack);

    /// <summary>The first leg that is not done, or hand back.</summary>
    public Leg Current => HandedBack ? Leg.HandBack : Legs.FirstOrDefault(l => !l.Done)?.Leg ?? Leg.HandBack;

    /// <summary>The state of a leg.</summary>
    public LegState On(Leg leg) => Legs.First(l => l.Leg == leg);

    /// <summary>Every finding of the vehicle as it will leave.</summary>
    public IReadOnlyList<Finding> LeavingFindings => On(Leg.Prove).Findings;
}
