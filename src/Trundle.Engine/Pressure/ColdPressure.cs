using System.Globalization;
using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Pressure;

/// <summary>How the question for the cold pressure came out.</summary>
public enum ColdPressureCase
{
    /// <summary>There is a pressure to set.</summary>
    Set,

    /// <summary>The tyre carries more than it may: no pressure makes that right.</summary>
    Overloaded,

    /// <summary>What is needed at least is more than what is allowed at most.</summary>
    LimitsConflict,

    /// <summary>No placard pressure was given, and no load from which one follows.</summary>
    NotKnown,
}

/// <summary>The pressure to set cold, with every limit that was looked at.</summary>
/// <param name="Case">How it came out.</param>
/// <param name="Pressure">What to set, or null where there is none.</param>
/// <param name="Ceiling">The lowest of the known greatest pressures, or null.</param>
/// <param name="Considered">Every limit, known or not.</param>
/// <param name="Cautions">What stands beside the number.</param>
public sealed record ColdPressure(ColdPressureCase Case, SourcedPressure? Pressure, SourcedPressure? Ceiling, IReadOnlyList<ConsideredLimit> Considered, IReadOnlyList<string> Cautions)
{
    /// <summary>
    /// The cold pressure of one assembly: the highest of the placard, the pressure for the load it carries and the pressure at which it
    /// carries what the placard's tyre carries; never above the sidewall's or the wheel's greatest pressure.
    /// </summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="placard">The placard that governs its position, or null.</param>
    /// <param name="load">What this tyre carries, or null.</param>
    /// <param name="vehicle">The vehicle: its class and top speed count.</param>
    /// <param name="conditions">Laden or not; the rounding step.</param>
    /// <returns>One of four cases. Calculated pressures are rounded up to the step, but not past the ceiling.</returns>
    /// <source>placard: 49 CFR 571.110; load over pressure by class; high-speed addition: Automotive Engineering (textbook), p. 291</source>
    public static ColdPressure For(Assembly assembly, Placard? placard, Mass? load, Vehicle vehicle, PressureConditions conditions)
    {
        ArgumentNullException.ThrowIfNull(assembly);
        ArgumentNullException.ThrowIfNull(vehicle);
        ArgumentNullException.ThrowIfNull(conditions);
        var cautions = new List<string>();
        var limits = new List<ConsideredLimit>();
        var dual = assembly.Position.Dual != DualPlace.Single;
        AddPlacard(placard, conditions, limits, cautions);
        var (overload, whyNone) = AddLoad(assembly, load, dual, vehicle, conditions, limits, cautions);
        AddPlacardLoad(assembly, placard, dual, conditions, vehicle, limits, cautions);
        limits.Add(new ConsideredLimit("tyre's marked maximum", LimitBound.Most, assembly.Tyre?.MaximumPressure, Source.Entered("maximum pressure on the sidewall, as entered")));
        limits.Add(new ConsideredLimit("wheel's greatest pressure", LimitBound.Most, assembly.Wheel?.MaximumPressure, Source.Entered("wheel's marked greatest pressure, as entered")));
        if (PressureCeiling.OfClass(new FittedVehicle(vehicle, [assembly], conditions.Rules, null), assembly.Position) is { } listed)
        {
            limits.Add(new ConsideredLimit(ClassName, LimitBound.Most, GaugePressure.FromKilopascals(listed.Compared), listed.Source));
        }

        var ceiling = limits.Where(l => l is { Bound: LimitBound.Most, Pressure: not null }).MinBy(l => l.Pressure!.Value.Pascals);
        if (assembly.Tyre?.MaximumPressure is null)
        {
            cautions.Add("The greatest pressure on the sidewall was not entered: read it before inflating, and stay below it.");
        }

        var floor = Rounded(limits, conditions.Step, ceiling);
        var most = ceiling is null ? null : new SourcedPressure(ceiling.Pressure!.Value, ceiling.Source);
        if (overload is not null)
        {
            cautions.Insert(0, $"This tyre would carry {overload.Load.Text("kg", 0)} and may carry {overload.Capacity.Text("kg", 0)}{(overload.OfSingle ? " singly, and no more in a dual pair" : "")}: no pressure makes that right. Take load off, or fit tyres of enough load index.");
            return new ColdPressure(ColdPressureCase.Overloaded, null, most, limits, cautions);
        }

        if (floor is not var (ruling, pressure))
        {
            cautions.RemoveAll(c => c == whyNone);
            cautions.Insert(0, whyNone is null
                ? "Neither a placard pressure nor a load was given: read the placard. The maximum on the sidewall is no target."
                : $"No placard pressure was given, and none follows from the load. {whyNone} The maximum on the sidewall is no target.");
            return new ColdPressure(ColdPressureCase.NotKnown, null, most, limits, cautions);
        }

        if (ceiling is not null && pressure.Pascals > ceiling.Pressure!.Value.Pascals + 1)
        {
            cautions.Insert(0, $"At least {pressure.Text("kPa", 0)} is needed ({ruling.Name}) and at most {ceiling.Pressure.Value.Text("kPa", 0)} is allowed ({ceiling.Name}): no pressure is right for this assembly. {(ceiling.Name == ClassName ? "Read the placard and the sidewall again. " : "")}Fit what the placard asks for.");
            return new ColdPressure(ColdPressureCase.LimitsConflict, null, most, Marked(limits, ruling, ceiling), cautions);
        }

        if (ruling.Name != PlacardName && placard?.Cold is null)
        {
            cautions.Add("No placard pressure was given: this is the least for the load alone, and the vehicle maker's figure comes first.");
        }

        cautions.Add(string.Create(CultureInfo.InvariantCulture, $"Set it cold: after {Figures.Of("pressure.cold-hours").Value} hours' standing, or before {Figures.Of("pressure.cold-distance").Value} km have been driven."));
        return new ColdPressure(ColdPressureCase.Set, new SourcedPressure(pressure, ruling.Source), most, Marked(limits, ruling), cautions);
    }

    internal const string PlacardName = "placard";
    private const string ClassName = "greatest listed for any tyre of this class";
    private const string LoadName = "load carried";
    private const string LadenName = "placard, full load";
    private const string PlacardLoadName = "the placard's load on the fitted tyre";

    /// <summary>
    /// The least that the placard asks of this tyre: its own figure, the one for full load where it will be laden, and where another tyre than the
    /// placard's is fitted the pressure at which that one carries as much. What the load alone would need by a law is not in it.
    /// </summary>
    public ConsideredLimit? ByPlacard => Considered
        .Where(l => l is { Bound: LimitBound.Least, Pressure: not null, Name: PlacardName or LadenName or PlacardLoadName })
        .MaxBy(l => l.Pressure!.Value.Pascals);

    /// <summary>What the load carried needs of this tyre; null in it where no table and no rule tells.</summary>
    public ConsideredLimit? ForLoad => Considered.FirstOrDefault(l => l.Name == LoadName);

    private static void AddPlacard(Placard? placard, PressureConditions conditions, List<ConsideredLimit> limits, List<string> cautions)
    {
        limits.Add(new ConsideredLimit(PlacardName, LimitBound.Least, placard?.Cold, Source.Entered("placard, cold, as entered")));
        if (conditions.Laden)
        {
            limits.Add(new ConsideredLimit(LadenName, LimitBound.Least, placard?.Laden, Source.Entered("placard, full load, as entered")));
            if (placard is { Cold: not null, Laden: null })
            {
                cautions.Add("The vehicle will be fully laden and the placard's figure for full load was not given: look for it on the placard or in the handbook.");
            }
        }
    }

    /// <summary>Adds the pressure for the load; returns an overload, or why a load that was given leads to no pressure.</summary>
    private static (LoadPressure.Overloaded? Overload, string? WhyNone) AddLoad(Assembly assembly, Mass? load, bool dual, Vehicle vehicle, PressureConditions conditions, List<ConsideredLimit> limits, List<string> cautions)
    {
        if (load is not { } carried || assembly.Tyre?.Marking is not { } marking || assembly.Position.IsSpare)
        {
            limits.Add(new ConsideredLimit(LoadName, LimitBound.Least, null, new Source(load is null ? "no load was given" : "no marking was given", SourceStatus.Calculated)));
            return (null, load is null || assembly.Position.IsSpare ? null : "The tyre's marking was not given: its load index is read from it.");
        }

        return LoadPressure.For(marking, assembly.Tyre.MaximumPressure, carried, dual, vehicle.VehicleClass, conditions.Rules, MouldedLoad.Of(assembly.Tyre, dual)).Match<(LoadPressure.Overloaded?, string?)>(
            found =>
            {
                limits.Add(new ConsideredLimit(LoadName, LimitBound.Least, found.Pressure.Pressure, found.Pressure.Source));
                cautions.AddRange(found.Cautions);
                AddSpeed(found.Pressure, marking, vehicle.TopSpeed, limits, cautions);
                return (null, null);
            },
            overloaded =>
            {
                limits.Add(new ConsideredLimit(LoadName, LimitBound.Least, null, new Source("more than the tyre's load index or MAX LOAD", SourceStatus.Calculated)));
                return (overloaded, null);
            },
            maker =>
            {
                limits.Add(new ConsideredLimit(LoadName, LimitBound.Least, null, new Source("the tyre maker's load table", SourceStatus.Read)));
                cautions.Add(maker.Why);
                return (null, maker.Why);
            });
    }

    /// <summary>What the load needs at the vehicle's top speed, where that is above the speed to which the load tables hold.</summary>
    private static void AddSpeed(SourcedPressure forLoad, Marking marking, Speed? topSpeed, List<ConsideredLimit> limits, List<string> cautions)
    {
        if (marking.Size.TyreClass != TyreClass.Passenger || topSpeed is not { } top)
        {
            return;
        }

        var from = Figures.Of("pressure.speed-from").As<Speed>();
        var to = Figures.Of("pressure.speed-to").As<Speed>();
        if (top <= (marking.Service.SpeedSymbol is "W" or "Y" ? Figures.Of("pressure.speed-w-from").As<Speed>() : from))
        {
            return;
        }

        if (marking.Service.SpeedSymbol is "W" or "Y" || top > to)
        {
            cautions.Add($"At the vehicle's top speed of {top.Text("km/h", 0)} the load table's pressure is not enough: take the pressure for that speed from the tyre's maker.");
        }

        if (marking.Service.SpeedSymbol is "W" or "Y")
        {
            return;
        }

        var addition = Figures.Of("pressure.speed-addition");
        var part = Math.Min(1, (top.Si - from.Si) / (to.Si - from.Si));
        limits.Add(new ConsideredLimit("load carried, at top speed", LimitBound.Least, forLoad.Pressure + (addition.As<GaugePressure>() * part), new Source($"{forLoad.Source.Text}; addition for speed: {addition.Source.Text}", forLoad.Source.Status == SourceStatus.Read ? SourceStatus.Calculated : forLoad.Source.Status)));
    }

    /// <summary>The pressure at which the fitted tyre carries what the placard's tyre carries at the placard's pressure.</summary>
    private static void AddPlacardLoad(Assembly assembly, Placard? placard, bool dual, PressureConditions conditions, Vehicle vehicle, List<ConsideredLimit> limits, List<string> cautions)
    {
        var asked = conditions.Laden ? placard?.Laden ?? placard?.Cold : placard?.Cold;
        if (assembly.Tyre?.Marking is not { } marking || placard?.Size is not { } size || asked is not { } pressure || SameService(marking, size)
            || LoadPressure.LoadAt(size, null, pressure, dual) is not { } carried)
        {
            return;
        }

        // The car-tyre factor would fall on both tyres alike where both are car tyres; else it falls on the fitted one.
        var vehicleClass = size.Size.TyreClass == TyreClass.Passenger ? "car" : vehicle.VehicleClass;
        LoadPressure.For(marking, assembly.Tyre.MaximumPressure, carried, dual, vehicleClass, conditions.Rules, MouldedLoad.Of(assembly.Tyre, dual)).Match(
            found =>
            {
                limits.Add(new ConsideredLimit(PlacardLoadName, LimitBound.Least, found.Pressure.Pressure, found.Pressure.Source));
                return 0;
            },
            overloaded =>
            {
                cautions.Add($"The placard's tyre carries {overloaded.Load.Text("kg", 0)} at the placard's pressure; the fitted one may carry {overloaded.Capacity.Text("kg", 0)}.");
                return 0;
            },
            _ => 0);
    }

    private static bool SameService(Marking a, Marking b) =>
        a.Size.TyreClass == b.Size.TyreClass && a.Size.Prefix == b.Size.Prefix && a.Service.LoadIndexSingle == b.Service.LoadIndexSingle
        && a.Service.ExtraLoad == b.Service.ExtraLoad && a.Service.HighLoad == b.Service.HighLoad;

    /// <summary>The highest of what is needed, calculated ones rounded up, but not past a ceiling that the exact value keeps.</summary>
    private static (ConsideredLimit Ruling, GaugePressure Pressure)? Rounded(List<ConsideredLimit> limits, PressureStep step, ConsideredLimit? ceiling)
    {
        (ConsideredLimit, GaugePressure)? best = null;
        foreach (var limit in limits.Where(l => l is { Bound: LimitBound.Least, Pressure: not null }))
        {
            var pressure = limit.Pressure!.Value;
            if (!limit.Name.StartsWith(PlacardName, StringComparison.Ordinal))
            {
                var up = step.Up(pressure);
                pressure = ceiling is { Pressure: { } most } && up > most && pressure <= most ? most : up;
            }

            if (best is not var (_, highest) || pressure > highest)
            {
                best = (limit, pressure);
            }
        }

        return best;
    }

    private static List<ConsideredLimit> Marked(List<ConsideredLimit> limits, params ConsideredLimit[] ruling) =>
        [.. limits.Select(l => ruling.Any(r => ReferenceEquals(r, l)) ? l with { Ruled = true } : l)];
}
