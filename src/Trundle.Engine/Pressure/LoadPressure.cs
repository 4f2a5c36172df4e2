using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Pressure;

/// <summary>The least pressure that carries a load on one tyre.</summary>
public abstract record LoadPressure
{
    private LoadPressure()
    {
    }

    /// <summary>There is a pressure.</summary>
    /// <param name="Pressure">Not rounded.</param>
    /// <param name="Capacity">The most that the tyre may carry here at its reference pressure.</param>
    /// <param name="Cautions">What stands beside the number.</param>
    public sealed record Found(SourcedPressure Pressure, Mass Capacity, IReadOnlyList<string> Cautions) : LoadPressure;

    /// <summary>No pressure lets this tyre carry the load.</summary>
    /// <param name="Load">The load.</param>
    /// <param name="Capacity">The most that the tyre may carry here.</param>
    /// <param name="OfSingle">The capacity is that of a single tyre: none is known for a dual pair, and in one it is not more.</param>
    public sealed record Overloaded(Mass Load, Mass Capacity, bool OfSingle = false) : LoadPressure;

    /// <summary>Only the tyre maker's table can tell.</summary>
    /// <param name="Why">What is missing, in a sentence.</param>
    public sealed record MakerMustSay(string Why) : LoadPressure;

    /// <summary>Goes on with one of the three cases.</summary>
    public T Match<T>(Func<Found, T> found, Func<Overloaded, T> overloaded, Func<MakerMustSay, T> makerMustSay)
    {
        ArgumentNullException.ThrowIfNull(found);
        ArgumentNullException.ThrowIfNull(overloaded);
        ArgumentNullException.ThrowIfNull(makerMustSay);
        return this switch
        {
            Found f => found(f),
            Overloaded o => overloaded(o),
            MakerMustSay m => makerMustSay(m),
            _ => throw new InvalidOperationException(),
        };
    }

    /// <summary>
    /// The least cold pressure for a load: by the published rows for this tyre where they are held, else by the law of its class.
    /// </summary>
    /// <param name="marking">The tyre's marking.</param>
    /// <param name="markedMaximum">The greatest pressure on its sidewall, or null.</param>
    /// <param name="load">What this one tyre carries.</param>
    /// <param name="dual">It stands in a dual pair: its dual load index counts.</param>
    /// <param name="vehicleClass">The vehicle's class; by the US rules a car tyre on another vehicle carries its load divided by 1.10.</param>
    /// <param name="rules">Whose rules; where none are named, the strictest known hold, and so the division too.</param>
    /// <param name="moulded">MAX LOAD of its sidewall: the tyre carries no more, whatever its load index says; at its reference pressure it carries that.</param>
    /// <source>load tables and laws of each class (see LoadPressureRule and LoadInflationTable); 49 CFR 571.110 S4.2.2.2 for 1.10 (from memory)</source>
    public static LoadPressure For(Marking marking, GaugePressure? markedMaximum, Mass load, bool dual, string vehicleClass, RuleSet? rules, MouldedLoad moulded = default)
    {
        ArgumentNullException.ThrowIfNull(marking);
        var cautions = new List<string>();
        var factor = 1.0;
        if ((rules is null or RuleSet.UnitedStates) && marking.Size.TyreClass == TyreClass.Passenger && vehicleClass is not ("car" or "motorcycle"))
        {
            var division = Figures.Of("pressure.cartyre-factor");
            factor = division.Value;
            cautions.Add(string.Create(CultureInfo.InvariantCulture, $"A car tyre on a vehicle that is no car: its load rating is divided by {division.Value:0.00} ({division.Source.ForPeople})."));
        }

        // A load rating divided by 1.10 is the same as a load multiplied by it, on the published rows too.
        var counted = load * factor;
        var rows = LoadInflationTable.For(marking, dual);
        var rule = LoadPressureRule.For(marking, markedMaximum);
        var full = FullLoad(marking, dual);
        if (rows.Count > 0 && (rule is null || rows[^1].Pressure >= rule.Reference || full is null))
        {
            // The published table reaches the reference pressure: its last load and the load index are both limits, and the lower one holds.
            full = full is { } byIndex && byIndex < rows[^1].Load ? byIndex : rows[^1].Load;
        }
        else if (rows.Count > 0 && rule is not null)
        {
            rows = [.. rows, new LoadInflationRow(rows[0].Tyre, rows[0].System, rule.Reference, full!.Value, null, rule.Source)];
        }

        if (moulded.Load is { } most && (full is null ? !dual || moulded.ForPair : most < full))
        {
            full = most;
        }

        if (full is not { } fullLoad)
        {
            if (dual && Lower(marking.Service.LoadAtMost(dual), moulded.Load) is { } single && counted > single * (1 + 1e-9))
            {
                return new Overloaded(load, single / factor, true);
            }

            return new MakerMustSay(dual
                ? "The marking has no load index for dual wheels: take the load in a dual pair from the tyre's maker."
                : "The marking has no load index: take the load from the sidewall or the tyre's maker.");
        }

        if (counted > fullLoad * (1 + 1e-9))
        {
            return new Overloaded(load, fullLoad / factor);
        }

        if (rows.Count > 1 && LoadInflationTable.Pressure(rows, counted) is { } published)
        {
            return new Found(published, fullLoad / factor, cautions);
        }

        if (rule is null)
        {
            var asksForMarked = marking.Size.Construction == Construction.Radial && marking.Size.TyreClass is (TyreClass.Commercial or TyreClass.Truck or TyreClass.LightTruck);
            return new MakerMustSay(
                asksForMarked ? "The pressure at which this tyre carries its full load is not known: give the greatest pressure marked on its sidewall, or take the maker's load table."
                : marking.Size.TyreClass == TyreClass.TemporarySpare ? "A temporary spare is set to the pressure on its own sidewall and label."
                : "For this kind of tyre only its maker's load table can tell the pressure for a load.");
        }

        if (marking.Size.TyreClass is TyreClass.Commercial or TyreClass.Truck || (marking.Size.TyreClass == TyreClass.LightTruck && marking.Service.LoadRange is not ("C" or "D" or "E")))
        {
            cautions.Add("The greatest pressure on the sidewall is taken as the pressure of the full load; the maker's table comes first.");
        }

        var exact = rule.For(counted, fullLoad);
        return new Found(
            new SourcedPressure(exact, new Source($"{rule.Name}: load over pressure; {rule.Source.Text}", rule.Source.Status == SourceStatus.Read ? SourceStatus.Calculated : rule.Source.Status)),
            fullLoad / factor,
            cautions);
    }

    /// <summary>
    /// What a tyre carries at a pressure, by the law of its class: to compare the placard's tyre with the fitted one.
    /// </summary>
    /// <returns>Null where the law or the load index is not known. Above the reference pressure it stays at the full load.</returns>
    /// <source>L = Lref (P / Pref)ⁿ by class, see LoadPressureRule</source>
    public static Mass? LoadAt(Marking marking, GaugePressure? markedMaximum, GaugePressure pressure, bool dual)
    {
        ArgumentNullException.ThrowIfNull(marking);
        return LoadPressureRule.For(marking, markedMaximum) is { } rule && FullLoad(marking, dual) is { } full
            ? rule.LoadAt(pressure <= rule.Reference ? pressure : rule.Reference, full)
            : null;
    }

    private static Mass? Lower(Mass? a, Mass? b) => a is { } x && b is { } y ? (x < y ? x : y) : a ?? b;

    /// <summary>The load of a tyre at its place by its load index; null in a dual pair without a dual index.</summary>
    private static Mass? FullLoad(Marking marking, bool dual) => dual && marking.Service.LoadDual is null ? null : marking.Service.LoadAtMost(dual);
}
