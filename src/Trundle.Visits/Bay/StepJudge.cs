using System.Globalization;
using Trundle.Engine.Balance;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Bay;

/// <summary>What a step is held against at one wheel. Null where nobody gave it.</summary>
/// <param name="FixingCount">How many fixings the wheel has.</param>
/// <param name="Torque">The vehicle maker's torque.</param>
/// <param name="SeatingLimit">The lowest of the known limits for seating the beads.</param>
/// <param name="Balance">What was entered for balancing the wheel, with its tolerance; null where nothing was.</param>
public sealed record StepLimits(int? FixingCount, Torque? Torque, Limit? SeatingLimit, BalanceProblem? Balance)
{
    /// <summary>The greatest pressure that tyre and wheel may hold; null where nobody gave it.</summary>
    public Limit? PressureCeiling { get; init; }

    /// <summary>Why the rim is not the tyre's, or null where they match or are not known.</summary>
    public string? RimMismatch { get; init; }

    /// <summary>How far the stages had come, fixing by fixing; null where nothing of them was recorded.</summary>
    public TighteningRecord? Tightening { get; init; }

    /// <summary>What is known of the puncture that is repaired here; null where none is.</summary>
    public RepairVerdict? Repair { get; init; }

    /// <summary>What a licensed shop did to the wheel; null where nothing is recorded.</summary>
    public LicensedWork? Licensed { get; init; }

    /// <summary>Why the tyre counts as flat by what was measured when it came, or null.</summary>
    public string? RanLow { get; init; }

    /// <summary>The rim is of several pieces: no air goes in here.</summary>
    public bool OfSeveralPieces { get; init; }

    /// <summary>Nobody said of how many pieces the rim is, and it may be of several.</summary>
    public bool PiecesNotKnown { get; init; }

    /// <summary>Nothing to hold a step against: the steps of the vehicle as a whole.</summary>
    public static StepLimits None { get; } = new(null, null, null, null);
}

/// <summary>Judges what was recorded at a step.</summary>
public static class StepJudge
{
    /// <summary>How a step stands at a place.</summary>
    /// <param name="step">The step.</param>
    /// <param name="at">A position, or <c>vehicle</c>.</param>
    /// <param name="record">What was recorded, or null.</param>
    /// <param name="limits">What it is held against there.</param>
    public static StepState Judge(ProcedureStep step, string at, StepRecord? record, StepLimits limits)
    {
        ArgumentNullException.ThrowIfNull(step);
        ArgumentNullException.ThrowIfNull(limits);
        var (standing, why) = step.Entry == StepEntry.Nothing ? Licensed(step, limits)
            : step.Entry == StepEntry.Repair ? Repair(step, limits)
            : limits.PiecesNotKnown && OfTheTyre(step) ? (record is null ? StepStanding.Open : StepStanding.Failed, "Nobody has said whether this rim is of one piece. Look at it and enter it first: a rim of several pieces is not worked on here.")
            : record is null ? (StepStanding.Open, Begun(step, limits))
            : limits.RanLow is { } low && (step.Id == "ran-low" ? record.Word == step.Passing[0] : step.Id == "pressure-set" && limits is { OfSeveralPieces: true, Licensed: not { Whole: true } })
                ? (StepStanding.Failed, $"{low} {(step.Id == "ran-low" ? step.Stop : "It is referred to the licensed shop: no air goes in here.")}")
            : limits.RimMismatch is { } mismatch && step.Id is "rim-check" or "mount" or "seat" ? (StepStanding.Failed, $"{mismatch} Never put air into it: {step.Stop}")
            : step.Entry switch
        {
            StepEntry.Confirm => record.Word is null ? (StepStanding.Open, null)
                : string.Equals(record.Word, ProcedureStep.Done, StringComparison.OrdinalIgnoreCase) ? (StepStanding.Passed, (string?)null)
                : (StepStanding.Failed, $"'{NumberText.Shown(record.Word)}' is recorded; '{ProcedureStep.Done}' says that it was done."),
            StepEntry.Text => record.Word is null ? (StepStanding.Open, null) : (StepStanding.Passed, null),
            StepEntry.Choice => record.Word is null
                ? (StepStanding.Open, null)
                : step.Passing.Contains(record.Word) ? (StepStanding.Passed, (string?)null) : (StepStanding.Failed, step.Stop),
            StepEntry.Pressure => Pressure(step, record, limits),
            StepEntry.Torques => Torques(record, limits),
            StepEntry.Spin => Spin(record, limits),
            StepEntry.Repair => Repair(step, limits),
            StepEntry.Nothing => Licensed(step, limits),
        };
        if (step.Id == "stages" && standing == StepStanding.Passed && OverTight(limits) is { } over)
        {
            (standing, why) = (StepStanding.Failed, over);
        }
        else if (step.Id == "stages" && standing == StepStanding.Passed && TighteningJudge.NotDone(limits) is { } notDone)
        {
            (standing, why) = notDone;
        }

        return new StepState(step, at, standing, record, why);
    }

    /// <summary>The steps at which air goes out or in, or a bead over a flange.</summary>
    private static bool OfTheTyre(ProcedureStep step) => step.Id is "core-out" or "bead-breaking" or "demount" or "mount" or "seat" or "core-in";

    /// <summary>A step that stops the work here passes by nothing that anybody enters at it: only what a licensed shop did, with its paper, accounts for the wheel.</summary>
    private static (StepStanding, string?) Licensed(ProcedureStep step, StepLimits limits) => limits.Licensed switch
    {
        { Whole: true } => (StepStanding.Passed, null),
        { By: not null } => (StepStanding.Failed, $"{step.Stop} The number of the licensed shop's paper is not entered."),
        { Paper: not null } => (StepStanding.Failed, $"{step.Stop} Which licensed shop did it is not entered."),
        _ => (StepStanding.Failed, step.Stop),
    };

    private static (StepStanding, string?) Repair(ProcedureStep step, StepLimits limits) => limits.Repair switch
    {
        null => (StepStanding.Open, null),
        { Refused: { Count: > 0 } refused } => (StepStanding.Failed, $"{step.Stop} {string.Join(" ", refused)}".TrimStart()),
        { Missing: { Count: > 0 } missing } => (StepStanding.Open, $"Not entered yet: {string.Join(", ", missing.Select(m => m.What))}."),
        _ => (StepStanding.Passed, null),
    };

    /// <summary>What of a step is done that is not recorded yet, or null.</summary>
    private static string? Begun(ProcedureStep step, StepLimits limits) =>
        step.Id == "stages" && limits is { Tightening.Stages.Count: > 0, FixingCount: { } count }
            ? $"Begun and not recorded as done: {limits.Tightening.Words(count)}."
            : null;

    /// <summary>A fixing that got more than the maker's torque at a stage, or null: what was stretched is not made good by slackening it.</summary>
    private static string? OverTight(StepLimits limits)
    {
        if (limits is not { Torque: { } maker, Tightening: { } tightening })
        {
            return null;
        }

        var band = Figures.Of("fixings.wrench-tolerance");
        var over = tightening.Torques.SelectMany(s => s.Torques.Where(t => t.Value / maker > 1 + (band.Value / 100) + 1e-9).Select(t => string.Create(CultureInfo.InvariantCulture, $"{t.Key} at stage {s.Stage + 1} ({t.Value.Text("N·m", 0)})"))).ToList();
        return over.Count == 0 ? null : $"Fixing {string.Join(", ", over)} got more than {Quantity.Number(band.Value, 0)} % above the maker's {maker.Text("N·m", 0)} ({band.Source.ForPeople}): take it out, look at thread and seat, and renew what is stretched.";
    }

    private static (StepStanding, string?) Pressure(ProcedureStep step, StepRecord record, StepLimits limits)
    {
        if (record.Pressure is not { } pressure)
        {
            return (StepStanding.Open, null);
        }

        // While the beads are being seated the ruling limit holds; a pressure that is set stays under what tyre and wheel may hold.
        // One kilopascal is left for the gauge and for guidance that is printed in two units (40 psi, 275 kPa).
        var ceiling = step.Id == "seat" ? limits.SeatingLimit : limits.PressureCeiling;
        return ceiling is { Amount.Value: { } most } limit && pressure.Kilopascals > most + 1
            ? (StepStanding.Failed, $"{pressure.Text("kPa", 0)} is above the limit of {limit.Amount.Text} ({limit.Source.ForPeople}). {step.Stop}".TrimEnd())
            : (StepStanding.Passed, null);
    }

    private static (StepStanding, string?) Torques(StepRecord record, StepLimits limits)
    {
        if (limits.Torque is not { } maker)
        {
            return (StepStanding.Failed, "The vehicle maker's torque was not given: without it no fixing can be called tight.");
        }

        if (limits.FixingCount is not { } count)
        {
            return (StepStanding.Failed, "How many fixings the wheel has was not given.");
        }

        var band = Figures.Of("fixings.wrench-tolerance");
        var missing = Enumerable.Range(1, count).Where(n => !record.Torques.ContainsKey(n)).ToList();
        var wrong = record.Torques
            .Where(t => t.Key <= count && Math.Abs((t.Value / maker) - 1) > (band.Value / 100) + 1e-9)
            .Select(t => string.Create(CultureInfo.InvariantCulture, $"{t.Key} ({t.Value.Text("N·m", 0)})"))
            .ToList();
        var beyond = record.Torques.Where(t => t.Key > count)
            .Select(t => string.Create(CultureInfo.InvariantCulture, $"{t.Key} ({t.Value.Text("N·m", 0)})")).ToList();
        if (beyond.Count > 0)
        {
            return (StepStanding.Failed, string.Create(CultureInfo.InvariantCulture, $"Fixing {string.Join(", ", beyond)} is recorded on a wheel of {count}: count the fixings, and enter one torque for each."));
        }

        if (wrong.Count > 0)
        {
            return (StepStanding.Failed, $"Fixing {string.Join(", ", wrong)} is more than {Quantity.Number(band.Value, 0)} % off the maker's {maker.Text("N·m", 0)} ({band.Source.ForPeople}).");
        }

        return missing.Count == 0
            ? (StepStanding.Passed, null)
            : (StepStanding.Open, $"Fixing {string.Join(", ", missing)} is not recorded.");
    }

    private static (StepStanding, string?) Spin(StepRecord record, StepLimits limits)
    {
        if (record.Inner is not { } inner || record.Outer is not { } outer)
        {
            return (StepStanding.Open, null);
        }

        return limits.Balance is { } problem
            ? AgainstTolerance(problem, inner, outer)
            : AgainstCommonPractice(inner, outer);
    }

    /// <summary>The check spin's display is a reading like the first: what it leaves without any weight is held against the wheel's own tolerance.</summary>
    private static (StepStanding, string?) AgainstTolerance(BalanceProblem problem, PlaneDisplay inner, PlaneDisplay outer)
    {
        var planes = problem.ReadingPlanes ?? problem.Planes;
        var shown = new UnbalancePair(
            UnbalanceVector.OfMass(inner.Mass, planes.Inner.Radius, WheelAngle.FromDegrees(inner.AngleDegrees)),
            UnbalanceVector.OfMass(outer.Mass, planes.Outer.Radius, WheelAngle.FromDegrees(outer.AngleDegrees)));
        var left = BalanceSolve.Run(problem with { Readings = shown, Stock = new WeightStock([], []) });
        return left.WithinTolerance
            ? (StepStanding.Passed, null)
            : (StepStanding.Failed, $"Left: {string.Join(", ", left.Parts.Where(p => p.Ratio > 1).Select(p => $"{p.Name} {Quantity.Number(p.Left, 0)} of {Quantity.Number(p.Tolerance, 0)} {p.Unit}"))} ({problem.Tolerance.Source.ForPeople}).");
    }

    private static (StepStanding, string?) AgainstCommonPractice(PlaneDisplay inner, PlaneDisplay outer)
    {
        var most = Figures.Of("balance.perPlane");
        return Math.Max(inner.Mass.Grams, outer.Mass.Grams) > most.Value + 1e-9
            ? (StepStanding.Failed, $"{inner.Mass.Text("g", 0)} inner and {outer.Mass.Text("g", 0)} outer: more than {Quantity.Number(most.Value, 0)} g a plane ({most.Source.ForPeople}).")
            : (StepStanding.Passed, null);
    }
}
