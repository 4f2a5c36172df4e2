using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Pressure;

/// <summary>The pressure at which the vehicle's low-pressure warning must have come.</summary>
/// <param name="Ruling">The threshold, or null where no rule covers this wheel or the placard is not known.</param>
/// <param name="Considered">Every part of the rule that was looked at.</param>
/// <param name="Cautions">What stands beside the number.</param>
public sealed record WarningThreshold(SourcedPressure? Ruling, IReadOnlyList<ConsideredLimit> Considered, IReadOnlyList<string> Cautions)
{
    /// <summary>
    /// The threshold for one wheel.
    /// </summary>
    /// <param name="placard">The vehicle maker's cold pressure for this wheel, or null.</param>
    /// <param name="set">The cold pressure that is to be set, where it is known; it may be above the placard's.</param>
    /// <param name="marking">The tyre's marking, or null.</param>
    /// <param name="dual">The axle has dual wheels, which both rules leave out.</param>
    /// <param name="rules">Whose rules; null shows the earliest warning of all that are known.</param>
    /// <returns>us: the higher of placard less 25 % and the least of Table 1. uk, eu: the higher of the pressure set (at least the placard's) less 20 % and 150 kPa.</returns>
    /// <source>49 CFR 571.138 S4.2 and Table 1 (table partly from memory); UN R141 (from memory)</source>
    public static WarningThreshold For(GaugePressure? placard, GaugePressure? set, Marking? marking, bool dual, RuleSet? rules)
    {
        if (dual)
        {
            return Unknown("The rules for low-pressure warnings leave dual wheels out: ask the vehicle's maker.");
        }

        if (placard is not { } p)
        {
            return Unknown("Without the placard's pressure there is no warning threshold: read the placard.");
        }

        var cautions = new List<string>();
        var limits = new List<ConsideredLimit>();
        if (rules is null or RuleSet.UnitedStates)
        {
            UnitedStates(p, marking, limits, cautions);
        }

        if (rules is null or RuleSet.UnitedKingdom or RuleSet.EuropeanUnion)
        {
            var fraction = Figures.Of("pressure.warning-un-fraction");
            var least = Figures.Of("pressure.warning-un-least");
            limits.Add(new ConsideredLimit("pressure less 20 %", LimitBound.Least, (set is { } s && s > p ? s : p) * (1 - fraction.Value), fraction.Source));
            limits.Add(new ConsideredLimit("least of UN R141", LimitBound.Least, least.As<GaugePressure>(), least.Source));
            cautions.Add("UN R141 counts the 20 % from the warm running pressure, which is higher than the cold one used here: the warning may rightly come earlier.");
        }

        if (rules is null)
        {
            cautions.Add("No rule set was named: the earliest warning of the known rules is shown; say us, uk or eu.");
        }

        var ruling = limits.MaxBy(l => l.Pressure!.Value.Pascals)!;
        if (set is { } cold && cold > p)
        {
            cautions.Add($"The pressure to set ({cold.Text("kPa", 0)}) is above the placard's ({p.Text("kPa", 0)}): a vehicle that warns by the placard's warns late. Ask its maker whether the warning can be set to it.");
        }

        if (set is { } s0 && ruling.Pressure >= s0)
        {
            cautions.Add($"The threshold is not below the pressure to set ({s0.Text("kPa", 0)}): the lamp would stay lit. Check tyre and placard, and ask the vehicle's maker.");
        }

        return new WarningThreshold(
            new SourcedPressure(ruling.Pressure!.Value, ruling.Source),
            [.. limits.Select(l => ReferenceEquals(l, ruling) ? l with { Ruled = true } : l)],
            cautions);
    }

    private static void UnitedStates(GaugePressure placard, Marking? marking, List<ConsideredLimit> limits, List<string> cautions)
    {
        limits.Add(new ConsideredLimit("placard less 25 %", LimitBound.Least, placard * (RunLow.Warning.Value / 100), RunLow.Warning.Source));
        if (TableKey(marking) is { } key)
        {
            var figure = Figures.Of(key);
            limits.Add(new ConsideredLimit("least of FMVSS 138 Table 1", LimitBound.Least, figure.As<GaugePressure>(), figure.Source));
        }
        else
        {
            cautions.Add("The least activation pressure of FMVSS 138 Table 1 is not known for this tyre: only the placard less 25 % is shown.");
        }
    }

    private static string? TableKey(Marking? marking)
    {
        if (marking is null)
        {
            return null;
        }

        if (marking.Size.TyreClass == TyreClass.Passenger)
        {
            return marking.Service.ExtraLoad || marking.Service.HighLoad ? "pressure.warning-us-extra" : "pressure.warning-us-standard";
        }

        return marking.Size.TyreClass == TyreClass.LightTruck
            ? marking.Service.LoadRange switch
            {
                "C" => "pressure.warning-us-c",
                "D" => "pressure.warning-us-d",
                "E" => "pressure.warning-us-e",
                _ => null,
            }
            : null;
    }

    private static WarningThreshold Unknown(string caution) => new(null, [], [caution]);
}
