using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Pressure;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Rotation;

/// <summary>The rotation proposed for a vehicle, with every pattern that was considered.</summary>
/// <param name="Chosen">The pattern proposed with its moves, or null where none may be done.</param>
/// <param name="Verdicts">Every pattern considered, the makers' own first.</param>
/// <param name="Steps">The chosen moves in order for the lift.</param>
/// <param name="Why">Why this one, or why none, in a sentence.</param>
/// <param name="Cautions">What stands beside it.</param>
public sealed record RotationPlan(RotationVerdict? Chosen, IReadOnlyList<RotationVerdict> Verdicts, IReadOnlyList<LiftStep> Steps, string Why, IReadOnlyList<string> Cautions)
{
    /// <summary>The patterns that may not be done as the assemblies are, with the reason.</summary>
    public IEnumerable<RotationVerdict> Refused => Verdicts.Where(v => !v.Allowed && !ReferenceEquals(v, Chosen));

    /// <summary>The tyres and wheels that no rotation moves as they are, whichever is chosen.</summary>
    public IReadOnlyList<KeptOut> KeptOut { get; init; } = [];

    /// <summary>
    /// Proposes a rotation: the vehicle maker's own, else the wheel maker's own, else the trade's pattern for the drive; never one that is
    /// refused. A pattern that needs tyres turned round on their wheels is proposed only where no other may be done.
    /// </summary>
    /// <param name="vehicle">The vehicle with what is fitted.</param>
    /// <param name="settled">True for a finding that a person decided or that was seen to since; null where there is none such.</param>
    /// <returns>A plan; where a maker's own rotation cannot be read, its problem, placed at <c>vehicle.makerRotation</c> or <c>fitted.wheel.makerRotation</c>.</returns>
    /// <source>maker first; by drive: tyre safety consumer page and tyre makers' guidance (read); the rest common practice</source>
    public static Reading<RotationPlan> For(FittedVehicle vehicle, Func<Finding, bool>? settled = null)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        var keptOut = Rotation.KeptOut.Of(vehicle, settled);
        return Propose(vehicle, keptOut, settled).Then(plan => Reading<RotationPlan>.Of(plan with { KeptOut = keptOut }));
    }

    private static Reading<RotationPlan> Propose(FittedVehicle vehicle, IReadOnlyList<KeptOut> keptOut, Func<Finding, bool>? settled)
    {
        var own = MakerRotations.Of(vehicle);
        if (!own.IsRead)
        {
            return Reading<RotationPlan>.Failed(own.Problem!);
        }

        var cautions = new List<string>(own.Value.Cautions);
        var trade = RotationPattern.Trade.Where(p => HasDuals(p.Moves.Select(m => m.From)) == HasDuals(vehicle.Fitted.Select(a => a.Position))).ToList();
        if (own.Value.VehicleMakerSaysNone)
        {
            var none = trade.Select(p => new RotationVerdict(p, [], [new Refusal(RefusalReason.MakerSaysNone, "The vehicle's maker says that its wheels are not rotated.")], [])).ToList();
            return Reading<RotationPlan>.Of(new RotationPlan(null, none, [], "The vehicle's maker says that its wheels are not rotated.", cautions));
        }

        if (vehicle.Vehicle.SingleTrack && own.Value.Patterns.Count == 0)
        {
            return Reading<RotationPlan>.Of(new RotationPlan(null, [], [], "A motorcycle has one wheel on each axle, and front and rear tyres of their own: nothing is moved.", cautions));
        }

        var verdicts = own.Value.Patterns.Concat(trade).Select(p => RotationRules.Judge(vehicle, p, keptOut, settled)).ToList();
        var drive = DriveOf(vehicle.Vehicle);
        var owns = own.Value.Patterns.Count;
        var meant = verdicts.Take(owns).Concat(verdicts.Skip(owns).Where(v => IsMeant(v.Pattern, drive))).ToList();
        var chosen = verdicts.Take(owns).FirstOrDefault(v => v.AllowedWithRemounting)
            ?? meant.FirstOrDefault(v => v.Allowed)
            ?? meant.Where(v => v.Refusals.Count > 0 && v.AllowedWithRemounting).OrderBy(v => v.Moves.Count(m => m.Remount)).FirstOrDefault();
        if (chosen is null)
        {
            return Reading<RotationPlan>.Of(new RotationPlan(null, verdicts, [], keptOut.Count == 0
                ? "No rotation may be done with what is fitted."
                : $"No rotation may be done before what is kept out is replaced or judged: {string.Join(", ", keptOut.Select(k => $"{k.Part.Word()} {k.Position}"))}.", cautions));
        }

        if (drive is null && chosen.Pattern.Drives.Count > 0 && !VehicleClasses.IsTrailer(vehicle.Vehicle.VehicleClass))
        {
            cautions.Add("Which axle is driven was not entered: a pattern that crosses sides cannot be chosen; say front, rear or all.");
        }

        cautions.AddRange(Beside(vehicle, chosen));
        var steps = LiftOrder.Of(chosen.Pattern, chosen.Moves, vehicle.Vehicle.Axles.Count > 0 ? vehicle.Vehicle.Axles.Count : 2);
        var byFrom = chosen.Moves.ToDictionary(m => m.From);
        chosen = chosen with { Moves = [.. steps.Where(s => s.Action != LiftAction.Off).Select(s => byFrom[s.From])] };
        var why = owns > 0 && own.Value.Patterns.Any(p => ReferenceEquals(p, chosen.Pattern))
            ? $"The maker's own rotation comes first ({chosen.Pattern.Source.Text})."
            : chosen.Allowed ? $"For {chosen.Pattern.Use}." : "With the assemblies as they are nothing may be done; this one may, with the tyres named turned round on their wheels.";
        var pattern = chosen.Pattern;
        return Reading<RotationPlan>.Of(new RotationPlan(chosen, [.. verdicts.Select(v => ReferenceEquals(v.Pattern, pattern) ? chosen : v)], steps, why, cautions));
    }

    /// <summary>
    /// The vehicle after a rotation: what was measured stays with each tyre.
    /// </summary>
    /// <param name="vehicle">The vehicle before.</param>
    /// <param name="pattern">The name of a trade pattern, <c>none</c>, moves such as <c>1L&gt;2L, 2L&gt;1L</c>, or the maker's own by the name that the plan gave it.</param>
    /// <returns>The vehicle after it; a problem where the pattern is not known or may not be done.</returns>
    /// <source>calculated</source>
    public static Reading<FittedVehicle> Apply(FittedVehicle vehicle, string pattern)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(pattern);
        if (IsNone(pattern))
        {
            return Reading<FittedVehicle>.Of(vehicle);
        }

        return Verdict(vehicle, pattern).Then(verdict => verdict.AllowedWithRemounting
            ? Reading<FittedVehicle>.Of(After(vehicle, verdict))
            : Reading<FittedVehicle>.Failed("rotation-refused", verdict.Why));
    }

    /// <summary>True where the word says that nothing is moved.</summary>
    /// <source>calculated</source>
    public static bool IsNone(string pattern) => string.Equals(pattern?.Trim(), MakerRotations.None, StringComparison.OrdinalIgnoreCase);

    /// <summary>One pattern, by a name or by its moves, held against the vehicle.</summary>
    /// <returns>The verdict, allowed or not; a problem where the pattern is not known.</returns>
    /// <source>each refusal names its own</source>
    public static Reading<RotationVerdict> Verdict(FittedVehicle vehicle, string pattern, Func<Finding, bool>? settled = null)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(pattern);
        var own = MakerRotations.Of(vehicle);
        var known = own.IsRead ? own.Value.Patterns.FirstOrDefault(p => string.Equals(p.Name, pattern.Trim(), StringComparison.OrdinalIgnoreCase)) : null;
        return (known is null ? RotationPattern.Read(pattern, "as entered", Source.Entered("moves, as entered")) : Reading<RotationPattern>.Of(known))
            .Then(p => Reading<RotationVerdict>.Of(RotationRules.Judge(vehicle, p, settled)));
    }

    /// <summary>The vehicle after the moves of a verdict: what was measured stays with each tyre.</summary>
    /// <source>calculated</source>
    public static FittedVehicle After(FittedVehicle vehicle, RotationVerdict verdict)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(verdict);
        return Rotated.After(vehicle, verdict.Moves);
    }

    /// <summary>The vehicle after a pattern's moves; a problem where the pattern may not be done even with tyres remounted.</summary>
    /// <source>calculated</source>
    public static Reading<FittedVehicle> Apply(FittedVehicle vehicle, RotationPattern pattern)
    {
        var verdict = RotationRules.Judge(vehicle, pattern);
        return verdict.AllowedWithRemounting
            ? Reading<FittedVehicle>.Of(Rotated.After(vehicle, verdict.Moves))
            : Reading<FittedVehicle>.Failed("rotation-refused", verdict.Why);
    }

    /// <summary>Which axles are driven: as told, else as the axles say, else null.</summary>
    private static Drive? DriveOf(Vehicle vehicle)
    {
        if (vehicle.Drive is { } told)
        {
            return told;
        }

        var driven = Drivetrain.DrivenAxles(vehicle);
        return driven.Count == 0 || vehicle.Axles.Count < 2 ? null
            : Drivetrain.AllWheelsDriven(vehicle) ? Drive.All
            : driven.Contains(1) ? Drive.Front : Drive.Rear;
    }

    /// <summary>Patterns for single and for dual wheels are two worlds: those of the other one are not considered at all.</summary>
    private static bool HasDuals(IEnumerable<Position> positions) => positions.Any(p => p.Dual != DualPlace.Single);

    /// <summary>A pattern for every drive is meant for one that nobody told too.</summary>
    private static bool IsMeant(RotationPattern pattern, Drive? drive) => drive is { } d ? pattern.Drives.Contains(d) : pattern.Drives.Count == 3;

    /// <summary>What stands beside a rotation whichever is chosen: before it, at it and after it.</summary>
    /// <param name="vehicle">The vehicle before.</param>
    /// <param name="verdict">The rotation as held against it.</param>
    /// <source>common practice; on the pressure monitor 49 USC 30122(b) (second-hand)</source>
    public static IReadOnlyList<string> Beside(FittedVehicle vehicle, RotationVerdict verdict)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(verdict);
        return [.. verdict.Cautions, .. Always(vehicle, verdict)];
    }

    private static IEnumerable<string> Always(FittedVehicle vehicle, RotationVerdict chosen)
    {
        yield return "Before: measure and record the tread depth of every tyre where it sits, and the state of the pressure monitor's lamp.";
        foreach (var assembly in vehicle.Fitted.Where(a => chosen.Moves.Any(m => m.From == a.Position) && a.Damage.Count > 0))
        {
            yield return $"{assembly.Position}: damage is recorded. A puncture is repaired before its tyre moves; what may not stay in use is replaced, not moved.";
        }

        if (vehicle.Fitted.Any(a => a.Tyre is { MountedFor: null } tyre && Facing.IsDirectional(tyre) && chosen.Moves.Any(m => m.From == a.Position)))
        {
            yield return "A directional tyre's side was not entered: look at its arrow before and after the move.";
        }

        if (vehicle.Fitted.Any(a => a.Tyre is { } tyre && Facing.IsAsymmetric(tyre) && chosen.Moves.Any(m => m.From == a.Position)))
        {
            yield return vehicle.Fitted.Any(a => a.Position.Dual != DualPlace.Single)
                ? "Asymmetric tyres among dual wheels: ask the tyre's maker which face stands out at the inner place, before a wheel changes between inner and outer."
                : "Asymmetric tyres: the outside stays outside.";
        }

        if (vehicle.Fitted.Any(a => a.Tyre?.Marking?.Size.TyreClass == TyreClass.TemporarySpare || (a.Position.IsSpare && chosen.Moves.All(m => !m.From.IsSpare))))
        {
            yield return "The spare takes no part; check its pressure and age.";
        }

        if (vehicle.Fitted.Any(a => a.Position.Dual != DualPlace.Single))
        {
            yield return "Dual wheels: hold the diameters of each new pair against each other; the larger one stands outside.";
        }

        var set = chosen.Moves.Where(m => !m.To.IsSpare && vehicle.Vehicle.PlacardAt(m.To)?.Cold is not null)
            .GroupBy(m => m.To.Axle).OrderBy(g => g.Key)
            .Select(g => $"axle {g.Key.ToString(System.Globalization.CultureInfo.InvariantCulture)} {vehicle.Vehicle.PlacardAt(g.First().To)!.Cold!.Value.Text("kPa", 0)}")
            .ToList();
        yield return set.Count > 0
            ? $"After: set each pressure cold for its new axle: {string.Join(", ", set)}."
            : "After: set each pressure cold for its new axle, as the placard says.";
        foreach (var duty in SensorDuty.AfterMoving(vehicle, [.. chosen.Moves.Select(m => m.From)]))
        {
            yield return $"After: {char.ToLowerInvariant(duty[0])}{duty[1..]}";
        }

        yield return "After: fixings by hand first, then in stages to the vehicle maker's torque with the wheels on the ground; check the tightening again after the first kilometres.";
    }
}
