using System.Globalization;
using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Mounting;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Pressure;

/// <summary>Where and how the pressure is set and the vehicle will run. What is null is not known.</summary>
/// <param name="Set">Air temperature where the pressure is set.</param>
/// <param name="Used">Air temperature where the vehicle will run.</param>
/// <param name="AltitudeSet">Height where it is set.</param>
/// <param name="AltitudeUsed">Height where the vehicle will run.</param>
/// <param name="Laden">It will carry its full load.</param>
/// <param name="Rules">Whose rules, or null.</param>
public sealed record PressureConditions(Temperature? Set, Temperature? Used, Length? AltitudeSet, Length? AltitudeUsed, bool Laden, RuleSet? Rules)
{
    /// <summary>In what step calculated pressures are rounded up: 1 psi by the US rules, else 10 kPa.</summary>
    public PressureStep Step => Rules == RuleSet.UnitedStates ? PressureStep.OnePoundPerSquareInch : PressureStep.TenKilopascals;
}

/// <summary>Everything about the pressure of one assembly.</summary>
/// <param name="Position">Where it sits.</param>
/// <param name="Cold">What to set it to cold, with every limit.</param>
/// <param name="Load">What this tyre carries, or null.</param>
/// <param name="AtTemperature">What a tyre set to the cold pressure will show where it is used, or null.</param>
/// <param name="SetHere">What to set where the vehicle stands now, so that it shows the cold pressure where it is used, or null.</param>
/// <param name="Warning">When the low-pressure warning must have come.</param>
/// <param name="Seating">The ceiling for seating the beads; null on a rim that is or may be of several pieces, whose beads no figure of ours seats.</param>
/// <param name="Reading">The reading judged, or null where none was taken.</param>
/// <param name="Cautions">What stands beside the numbers.</param>
public sealed record PositionPressure(
    Position Position,
    ColdPressure Cold,
    Mass? Load,
    SourcedPressure? AtTemperature,
    SourcedPressure? SetHere,
    WarningThreshold Warning,
    SeatingCeiling? Seating,
    JudgedReading? Reading,
    IReadOnlyList<string> Cautions)
{
    /// <summary>
    /// What stops all work on this wheel, or null: its rim is of several pieces, or may be. The cold pressure is told after it, since whoever may inflate
    /// it needs the figure and whoever may not must know whether it ran low.
    /// </summary>
    public Finding? Stop { get; init; }

    /// <summary>The finding for a tyre that ran low by its reading, the same as an inspection's; or null.</summary>
    public Finding? RanLow { get; init; }

    /// <summary>What is above the greatest pressure that its class of tyre is listed with: the reading, or the placard.</summary>
    public IReadOnlyList<Finding> AboveClass { get; init; } = [];
}

/// <summary>The pressures of a whole vehicle.</summary>
/// <param name="Positions">One a position, in the order front to rear, left before right, spare last.</param>
/// <param name="Findings">What the readings and limits amount to.</param>
public sealed record PressurePlan(IReadOnlyList<PositionPressure> Positions, IReadOnlyList<Finding> Findings)
{
    /// <summary>
    /// The pressures of every assembly of a vehicle. Where nothing is fitted, the placard's own size stands in at every position.
    /// </summary>
    /// <param name="subject">The vehicle.</param>
    /// <param name="conditions">Where it is set and used.</param>
    /// <source>placard first (49 CFR 571.110); load, temperature, warning and seating as each names</source>
    public static PressurePlan For(FittedVehicle subject, PressureConditions conditions)
    {
        ArgumentNullException.ThrowIfNull(subject);
        ArgumentNullException.ThrowIfNull(conditions);
        var positions = StandingIn(subject).Fitted
            .OrderBy(a => a.Position.IsSpare ? int.MaxValue : a.Position.Axle).ThenBy(a => a.Position.Side).ThenBy(a => a.Position.Dual)
            .Select(a => ForOne(a, subject, conditions))
            .ToList();
        return new PressurePlan(positions, [.. positions.SelectMany(PressureFindings.Of), .. Missing(subject)]);
    }

    /// <summary>The vehicle itself, or where nothing is fitted with the placard's own size at every position.</summary>
    /// <source>placard first: 49 CFR 571.110</source>
    public static FittedVehicle StandingIn(FittedVehicle subject)
    {
        ArgumentNullException.ThrowIfNull(subject);
        return subject.Fitted.Count > 0 ? subject : subject with { Fitted = PlacardSizes(subject.Vehicle) };
    }

    private static IEnumerable<Finding> Missing(FittedVehicle subject)
    {
        var book = new CheckBook(subject);
        for (var axle = 1; axle <= subject.Vehicle.Axles.Count; axle++)
        {
            MissingWheels.Check(book, axle);
        }

        return book.Result().Findings;
    }

    private static PositionPressure ForOne(Assembly assembly, FittedVehicle subject, PressureConditions conditions)
    {
        var position = Plain(assembly, subject, conditions);
        var book = new CheckBook(subject);
        PressureCeiling.Check(book, assembly);
        var specified = subject.Vehicle.PlacardOf(assembly)?.Cold ?? position.Cold.Pressure?.Pressure;
        var flat = assembly.Pressure is { } empty ? PressureFound.RanLow(subject, assembly, empty, 100, Kilopascals(empty.Value)) : null;
        return position with
        {
            AboveClass = [.. book.Result().Faults.Where(f => f.Rule is "pressure.above-class" or "pressure.placard-doubt")],
            RanLow = flat ?? (position.Reading is { Verdict: ReadingVerdict.RunLow } read && specified is { } asked
                ? PressureFound.RanLow(subject, assembly, read.Found, (read.ColdEquivalent ?? read.Found.Value) / asked * 100, Kilopascals(read.Found.Value))
                : null),
        };
    }

    private static Amount Kilopascals(GaugePressure pressure) => Amount.Of(pressure, "kPa", 0);

    private static PositionPressure Plain(Assembly assembly, FittedVehicle subject, PressureConditions conditions)
    {
        var vehicle = subject.Vehicle;
        var dual = assembly.Position.Dual != DualPlace.Single;
        var (load, taken) = LoadOn(subject, assembly.Position);
        var placard = vehicle.PlacardOf(assembly);
        var cold = ColdPressure.For(assembly, placard, load, vehicle, conditions);
        var cautions = new List<string>(cold.Cautions);
        if (taken is not null)
        {
            cautions.Add(taken);
        }

        var (atTemperature, setHere) = Elsewhere(cold, assembly, conditions, cautions);
        var recommended = conditions.Laden ? placard?.Laden ?? placard?.Cold : placard?.Cold;
        var warning = assembly.Position.IsSpare
            ? new WarningThreshold(null, [], ["A spare in its stowage has no low-pressure warning that the rules ask for."])
            : vehicle.SingleTrack || vehicle.VehicleClass == "trailer"
            ? new WarningThreshold(null, [], ["The rules for low-pressure warnings reach neither a motorcycle nor a light trailer: where there is a warning, its maker's figure holds."])
            : WarningThreshold.For(recommended, cold.Pressure?.Pressure, assembly.Tyre?.Marking ?? placard?.Size, dual, conditions.Rules);
        var reading = assembly.Pressure is { } found ? JudgedReading.Of(found, cold.Pressure, conditions.Set, placard?.Cold) : null;
        if (SeveralPieces.Finding(subject, assembly) is { } stop)
        {
            cautions.InsertRange(0, stop.Cautions);
            cautions.Add("No ceiling for seating the beads is told: the published ones are for rims of one piece.");
            return new PositionPressure(assembly.Position, cold, load, atTemperature, setHere, warning, null, reading is null ? null : reading with { Advice = $"{stop.Action} Then: {reading.Advice}" }, cautions) { Stop = stop };
        }

        if (assembly.Tyre?.Marking is not null && WheelKind.Pieces(assembly.Wheel, assembly.Tyre, vehicle.VehicleClass) == RimPieces.NotKnown)
        {
            cautions.Add("Whether the rim is of one piece was not entered: look before any air goes in; with a lock ring, a side ring or two halves, stop (29 CFR 1910.177).");
        }

        return new PositionPressure(assembly.Position, cold, load, atTemperature, setHere, warning, SeatingCeiling.For(assembly.Tyre, assembly.Wheel), reading, cautions);
    }

    /// <summary>
    /// What a tyre is set for: an equal part of its axle's load, or where wheels were weighed one by one the heaviest of that axle, since both sides of an
    /// axle get one pressure.
    /// </summary>
    private static (Mass? Load, string? Taken) LoadOn(FittedVehicle subject, Position position)
    {
        if (position.IsSpare || subject.Vehicle.AxleAt(position) is not { } axle)
        {
            return (null, null);
        }

        var share = axle.Load is { } whole ? WheelLoad.Share(subject, position, whole) : (Mass?)null;
        var on = subject.OnAxle(position.Axle);
        var weighed = on.Select(a => a.Load).OfType<Mass>().ToList();
        if (weighed.Count == 0)
        {
            return (share, share is { } alone && MissingWheels.StandsAlone(subject, position) ? $"The other wheel of this dual pair is missing: this one alone is taken to carry {alone.Text("kg", 0)}."
                : share is { } part && !subject.Vehicle.SingleTrack ? $"Each tyre is taken to carry {part.Text("kg", 0)}, an equal part of its axle; weigh each side where the load is one-sided." : null);
        }

        var heaviest = weighed.Max();
        var most = weighed.Count < on.Count && share is { } equal && equal > heaviest ? equal : heaviest;
        return (most, $"Weighed wheel by wheel: every tyre of this axle is set for {most.Text("kg", 0)}, the heaviest{(weighed.Count < on.Count ? " that is known; weigh the others too" : "")}.");
    }

    private static (SourcedPressure? At, SourcedPressure? SetHere) Elsewhere(ColdPressure cold, Assembly assembly, PressureConditions conditions, List<string> cautions)
    {
        var set = conditions.Set ?? (assembly.Pressure is { Hot: false, Temperature: { } t } ? t : null);
        var temperatures = set is not null && conditions.Used is not null;
        var heights = conditions.AltitudeSet is not null && conditions.AltitudeUsed is not null;
        if (cold.Pressure is not { } pressure)
        {
            return (null, null);
        }

        if (!temperatures && !heights)
        {
            cautions.Add("What the gauge will show elsewhere needs both temperatures, or both heights: where the pressure is set and where the vehicle will run.");
            return (null, null);
        }

        if (!temperatures)
        {
            cautions.Add("Both temperatures are not given: only the difference in height is counted.");
        }
        else if (conditions.AltitudeSet is not null != conditions.AltitudeUsed is not null)
        {
            cautions.Add("Only one of the two heights is given: no difference in height is counted.");
        }

        var from = temperatures ? set!.Value : Temperature.FromDegreesCelsius(20);
        var to = temperatures ? conditions.Used!.Value : from;
        var airSet = heights ? AirLaw.At(conditions.AltitudeSet!.Value) : AirLaw.SeaLevel;
        var airUsed = heights ? AirLaw.At(conditions.AltitudeUsed!.Value) : AirLaw.SeaLevel;
        var source = new Source("ideal gas at constant volume with the air of ISO 2533", SourceStatus.Calculated);
        var setHere = AirLaw.After(pressure.Pressure, to, from, airUsed, airSet);
        if (cold.Ceiling is { } ceiling && setHere > ceiling.Pressure)
        {
            cautions.Add($"Setting {setHere.Text("kPa", 0)} here would pass the limit of {ceiling.Pressure.Text("kPa", 0)}: set no more than the limit, and set again where the vehicle will run.");
            return (new SourcedPressure(AirLaw.After(pressure.Pressure, from, to, airSet, airUsed), source), null);
        }

        return (new SourcedPressure(AirLaw.After(pressure.Pressure, from, to, airSet, airUsed), source), new SourcedPressure(setHere, source));
    }

    /// <summary>The placard's size at every position of the axles, for a file that holds no fitted tyres.</summary>
    private static List<Assembly> PlacardSizes(Vehicle vehicle)
    {
        var assemblies = new List<Assembly>();
        for (var axle = 1; axle <= vehicle.Axles.Count; axle++)
        {
            DualPlace[] places = vehicle.Axles[axle - 1].Dual ? [DualPlace.Inner, DualPlace.Outer] : [DualPlace.Single];
            foreach (var side in vehicle.SingleTrack ? (Side[])[Side.Left] : [Side.Left, Side.Right])
            {
                assemblies.AddRange(places.Select(place => new Assembly
                {
                    Position = Position.On(axle, side, place),
                    Tyre = new FittedTyre { Marking = vehicle.Axles[axle - 1].Placard?.Size },
                }));
            }
        }

        return assemblies;
    }
}
