using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Pressure;

/// <summary>A tyre that was read with no pressure at all: run low by any cold pressure, known or not, and the end of what its readings tell of a loss.</summary>
public static class FlatReading
{
    /// <summary>The rule of a tyre without air, by which an inspection tells it too.</summary>
    public const string Rule = "pressure.flat";

    /// <summary>Every rule by which a pressure that was found makes a tyre one that ran low.</summary>
    public static IReadOnlyList<string> RunLowRules { get; } = [Rule, "pressure.run-low", "pressure.run-low-truck", "pressure.warning"];

    /// <summary>True where a gauge showed nothing.</summary>
    /// <param name="reading">The reading.</param>
    internal static bool Is(DatedPressure reading) => reading.Value.Pascals <= 0;

    /// <summary>The finding for a tyre that was flat at any reading, air let in since or not; null where none was.</summary>
    /// <param name="readings">The readings.</param>
    /// <source>the trade's row of in-use-rules.csv</source>
    public static Finding? Of(IReadOnlyList<DatedPressure> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        var rule = InUseRules.Of(Rule, null);
        return readings.Any(Is)
            ? new Finding(Rule, rule.Category, null, Amount.Of(GaugePressure.FromPascals(0), "kPa", 0), null, rule.Source,
                "The tyre was flat: it counts as run low, whatever its pressure should be. Put no air in: take the assembly off, let out what is left by the valve core, demount and look inside first. Ask how far it was driven so; a run-flat tyre by its maker's word only. Air let in since then changes nothing of this.")
            : null;
    }

    /// <summary>What stands beside it: that the loss is a least one, and what a large tyre asks for.</summary>
    /// <param name="readings">The readings.</param>
    /// <param name="tyre">The tyre, for its class; or null.</param>
    /// <source>that a flat tyre's loss is a least one follows from the readings; large tyres: 29 CFR 1910.177 (from memory)</source>
    public static IEnumerable<string> Cautions(IReadOnlyList<DatedPressure> readings, FittedTyre? tyre)
    {
        ArgumentNullException.ThrowIfNull(readings);
        return readings.Any(Is)
            ? ["A flat tyre has no more to lose: when it went flat is not known, and the true loss was at least what the readings tell.", .. RunLow.Cautions(tyre)]
            : [];
    }
}
