using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Rotation;

/// <summary>Holds a rotation pattern against a vehicle and what is fitted to it.</summary>
public static class RotationRules
{
    /// <summary>
    /// Judges one pattern.
    /// </summary>
    /// <param name="vehicle">The vehicle with what is fitted.</param>
    /// <param name="pattern">The pattern.</param>
    /// <param name="settled">True for a finding that a person decided or that was seen to since; null where there is none such.</param>
    /// <returns>Its moves and every reason against it.</returns>
    /// <source>published rotation guidance (directional tyres front to rear only; temporary spares never: tyre maker's text); mixing of constructions: UK C&amp;U reg. 26 and common practice; the rest common practice</source>
    public static RotationVerdict Judge(FittedVehicle vehicle, RotationPattern pattern, Func<Finding, bool>? settled = null)
    {
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(pattern);
        return Judge(vehicle, pattern, KeptOut.Of(vehicle, settled), settled);
    }

    internal static RotationVerdict Judge(FittedVehicle vehicle, RotationPattern pattern, IReadOnlyList<KeptOut> keptOut, Func<Finding, bool>? settled)
    {
        if (Layout(vehicle, pattern) is { } layout)
        {
            return new RotationVerdict(pattern, [], [layout], []);
        }

        var refusals = new List<Refusal>();
        var cautions = new List<string>();
        var moves = new List<RotationMove>();
        foreach (var move in pattern.Moves)
        {
            var moved = vehicle.At(move.From)!;
            var there = vehicle.At(move.To)!;
            refusals.AddRange(keptOut.Where(k => k.Position == move.From).Select(k => new Refusal(k.Reason, k.Why)));
            Spare(moved, there, refusals);
            Size(vehicle, moved, there, refusals, cautions);
            Load(vehicle, moved, move.To, refusals);
            WheelFits(vehicle, moved, there, refusals);
            moves.Add(new RotationMove(move.From, move.To, Turns(moved, move.To, refusals)));
        }

        var after = Rotated.After(vehicle, moves);
        Constructions(after, refusals, cautions);
        NotThere(after, moves, refusals, settled);

        if (pattern.NeedsMakerDiagram)
        {
            cautions.Add($"'{pattern.Name}' is a candidate that was worked out, not published: hold it against the diagram of the vehicle's maker first, and line up the hand holes of each pair.");
        }

        if (moves.Any(m => m.Remount))
        {
            cautions.Add("Tyres that are turned round on their wheels are demounted, looked at inside, mounted, seated and balanced afresh.");
        }

        return new RotationVerdict(pattern, moves, [.. refusals.DistinctBy(r => r.Why)], [.. cautions.Distinct(StringComparer.Ordinal)]);
    }

    private static Refusal? Layout(FittedVehicle vehicle, RotationPattern pattern)
    {
        var positions = pattern.Moves.Select(m => m.From).ToList();
        var axles = vehicle.Vehicle.Axles.Count > 0 ? vehicle.Vehicle.Axles.Count : vehicle.Fitted.Select(a => a.Position.Axle).DefaultIfEmpty(0).Max();
        var trade = pattern.Drives.Count > 0;
        if (positions.FirstOrDefault(p => p.Axle > axles) is { Axle: > 0 } beyond)
        {
            return new Refusal(RefusalReason.Layout, $"The vehicle has no position {beyond}.");
        }

        if (trade && axles != 2)
        {
            return new Refusal(RefusalReason.Layout, string.Create(CultureInfo.InvariantCulture, $"It is for two axles and the vehicle has {axles}: only the maker's own rotation can be used."));
        }

        var dual = vehicle.Fitted.Where(a => a.Position.Dual != DualPlace.Single).Select(a => a.Position.Axle).Distinct().ToList();
        if (trade && positions.Any(p => !p.IsSpare && dual.Contains(p.Axle) != (p.Dual != DualPlace.Single)))
        {
            return new Refusal(RefusalReason.Layout, dual.Count > 0 ? "It is for single wheels, and an axle has dual ones." : "It is for dual rear wheels, and the vehicle has none.");
        }

        if (trade && dual.Count > 0 && !positions.Any(p => p.Dual != DualPlace.Single))
        {
            return new Refusal(RefusalReason.Layout, "It is for single wheels, and an axle has dual ones.");
        }

        if (positions.Any(p => p.IsSpare) && vehicle.At(Position.Spare) is null)
        {
            return vehicle.Vehicle.SparePlacard?.Size?.Size.TyreClass == TyreClass.TemporarySpare
                ? new Refusal(RefusalReason.TemporarySpare, "The spare is a temporary one, and a temporary spare is never part of a rotation.")
                : new Refusal(RefusalReason.NothingFitted, "No spare is entered.");
        }

        var empty = positions.Where(p => vehicle.At(p) is null).ToList();
        return empty.Count > 0 ? new Refusal(RefusalReason.NothingFitted, $"Nothing is entered at {string.Join(", ", empty)}.") : null;
    }

    /// <summary>What its condition lets run where it is, and not where it would come to.</summary>
    private static void NotThere(FittedVehicle after, List<RotationMove> moves, List<Refusal> refusals, Func<Finding, bool>? settled)
    {
        foreach (var kept in KeptOut.There(after, settled))
        {
            if (moves.Find(m => m.To == kept.Position) is { } move)
            {
                refusals.Add(new Refusal(kept.Reason, $"From {move.From} to {move.To}: {char.ToLowerInvariant(kept.Why[0])}{kept.Why[1..]}"));
            }
        }
    }

    private static void Spare(Assembly moved, Assembly there, List<Refusal> refusals)
    {
        if (moved.Tyre?.Marking?.Size.TyreClass == TyreClass.TemporarySpare)
        {
            refusals.Add(new Refusal(RefusalReason.TemporarySpare, $"The tyre at {moved.Position} is a temporary spare, and a temporary spare is never part of a rotation."));
            return;
        }

        if (!moved.Position.IsSpare)
        {
            return;
        }

        var spare = moved.Tyre?.Marking;
        var other = there.Tyre?.Marking;
        if (spare is null || other is null)
        {
            refusals.Add(new Refusal(RefusalReason.SpareNotAlike, "Whether the spare is like the others is not known: its marking or theirs was not entered."));
        }
        else if (spare.Size.Text != other.Size.Text || spare.Service.LoadIndexSingle != other.Service.LoadIndexSingle || spare.Service.SpeedSymbol != other.Service.SpeedSymbol)
        {
            refusals.Add(new Refusal(RefusalReason.SpareNotAlike, $"The spare ({spare.Typed}) is not like the tyre at {there.Position} ({other.Typed})."));
        }
    }

    private static void Size(FittedVehicle vehicle, Assembly moved, Assembly there, List<Refusal> refusals, List<string> cautions)
    {
        if (moved.Position.Axle == there.Position.Axle || moved.Position.IsSpare)
        {
            return;
        }

        var here = SizeAt(vehicle, moved);
        var target = SizeAt(vehicle, there);
        if (here is null || target is null)
        {
            cautions.Add("Not every marking was entered: sizes front and rear were not held against each other. Read them before a wheel comes off.");
        }
        else if (!there.Position.IsSpare && Fitment.SizeMatch.Relation(here, target) != SizeRelation.Same)
        {
            // The construction in the size is no other size: the rules of constructions judge it, for the vehicle as it would be.
            refusals.Add(new Refusal(RefusalReason.Size, $"Sizes differ: {moved.Position} has {here.Text} and {there.Position} has {target.Text}."));
        }
    }

    /// <summary>The size fitted; where it was not read, the placard's.</summary>
    private static SizeDesignation? SizeAt(FittedVehicle vehicle, Assembly assembly) =>
        (assembly.Tyre?.Marking ?? vehicle.Vehicle.PlacardAt(assembly.Position)?.Size)?.Size;

    private static void Load(FittedVehicle vehicle, Assembly moved, Position to, List<Refusal> refusals)
    {
        if (to.IsSpare || moved.Position.Axle == to.Axle)
        {
            return;
        }

        var dual = to.Dual != DualPlace.Single;
        if (moved.Tyre?.Marking?.Service is { } service && vehicle.Vehicle.PlacardAt(to)?.Size?.Service is { } asked
            && SizeAndService.BelowPlacard(service, asked, dual) is var (has, needs))
        {
            refusals.Add(new Refusal(RefusalReason.Load, string.Create(CultureInfo.InvariantCulture, $"The tyre at {moved.Position} has load index {has}, and the placard asks for {needs} at {to}.")));
        }

        if (WheelLoad.On(vehicle, to) is not { Load: var carried })
        {
            return;
        }

        if (SizeAndService.MayCarry(vehicle, moved with { Position = to }) is { AtMost: var may } && may < carried)
        {
            refusals.Add(new Refusal(RefusalReason.Load, $"The tyre at {moved.Position} may carry {may.Text("kg", 0)} and would carry {carried.Text("kg", 0)} at {to}."));
        }

        if (moved.Wheel?.LoadRating is { } rating && rating < carried)
        {
            refusals.Add(new Refusal(RefusalReason.Load, $"The wheel at {moved.Position} may carry {rating.Text("kg", 0)} and would carry {carried.Text("kg", 0)} at {to}."));
        }
    }

    private static void WheelFits(FittedVehicle vehicle, Assembly moved, Assembly there, List<Refusal> refusals)
    {
        if (moved.Position.Axle == there.Position.Axle || moved.Wheel is not { } wheel)
        {
            return;
        }

        if (!there.Position.IsSpare && there.Wheel is { } other && (Differ(wheel.Rim?.Width, other.Rim?.Width) || wheel.Rim?.DiameterInches != other.Rim?.DiameterInches && wheel.Rim is not null && other.Rim is not null || Differ(wheel.Offset, other.Offset)))
        {
            refusals.Add(new Refusal(RefusalReason.Wheel, $"The wheels at {moved.Position} and {there.Position} differ in rim or offset."));
        }

        if (vehicle.Vehicle.AxleAt(there.Position)?.Hub is not { } hub)
        {
            return;
        }

        if (wheel.BoltCircle is { } circle && hub.BoltCircle is { } asked && (circle.Count != asked.Count || Differ(circle.Diameter, asked.Diameter)))
        {
            refusals.Add(new Refusal(RefusalReason.Wheel, $"The bolt circle of the wheel at {moved.Position} is not that of the hub at {there.Position}."));
        }

        if (wheel.Bore is { } bore && hub.Bore is { } spigot && bore.Millimetres < spigot.Millimetres - 0.05)
        {
            refusals.Add(new Refusal(RefusalReason.Wheel, $"The bore of the wheel at {moved.Position} is smaller than the hub at {there.Position}."));
        }
    }

    private static bool Differ(Length? a, Length? b) => a is { } x && b is { } y && Math.Abs(x.Millimetres - y.Millimetres) > 0.05;

    /// <summary>The shared rules of constructions, held against the vehicle as it would be.</summary>
    private static void Constructions(FittedVehicle after, List<Refusal> refusals, List<string> cautions)
    {
        if (after.Vehicle.Axles.Count == 0)
        {
            var axles = after.Fitted.Max(a => a.Position.Axle);
            after = after with { Vehicle = after.Vehicle with { Axles = [.. Enumerable.Range(1, axles).Select(axle => new Axle { Dual = after.OnAxle(axle).Any(a => a.Position.Dual != DualPlace.Single) })] } };
        }

        var check = ConstructionMix.Check(after);
        refusals.AddRange(check.Findings.Where(f => f.Category >= Category.Refer)
            .Select(f => new Refusal(RefusalReason.Construction, $"Constructions would stand as they may not: {f.Measured.Text} ({f.Source.ForPeople}).")));
        if (check.Needs.Count > 0)
        {
            cautions.Add($"Read on the sidewall first, since constructions are never mixed on an axle and radial never stands in front of others: {string.Join(", ", check.Needs.Select(n => n.Position).Distinct())}.");
        }
    }

    /// <summary>True where the tyre must be turned round on its wheel to turn its arrow's way at the new place.</summary>
    private static bool Turns(Assembly moved, Position to, List<Refusal> refusals)
    {
        if (moved.Tyre is not { } tyre || !Facing.IsDirectional(tyre) || to.IsSpare)
        {
            return false;
        }

        // A tyre whose side was not told is taken to turn rightly where it is; a spare is nowhere.
        if (moved.Position.IsSpare && tyre.MountedFor is null)
        {
            refusals.Add(new Refusal(RefusalReason.DirectionForGood, "The spare is directional and the side that it is mounted for was not entered."));
            return false;
        }

        if (tyre.MountedFor is { } side ? Facing.TurnsItsWay(to, side) : Facing.TurningSide(moved.Position) == Facing.TurningSide(to))
        {
            return false;
        }

        var sided = Facing.IsAsymmetric(tyre);
        refusals.Add(sided
            ? new Refusal(RefusalReason.DirectionForGood, $"The tyre at {moved.Position} is directional and has an outside: at {to} it would turn against its arrow, or stand inside out.")
            : new Refusal(RefusalReason.Direction, $"The tyre at {moved.Position} is directional and would turn against its arrow at {to}."));
        return !sided;
    }
}
