using System.Globalization;
using Trundle.Measures;

namespace Trundle.Engine.InUse;

/// <summary>What a rule with a limit judges.</summary>
public enum JudgedQuantity
{
    /// <summary>The least tread depth of a tyre.</summary>
    TreadDepth,

    /// <summary>How well a tyre is marked for winter: not at all, M+S, or the snowflake.</summary>
    WinterMark,

    /// <summary>The deepest mean tread less the least, with all wheels driven.</summary>
    TreadSpread,

    /// <summary>The greatest circumference over the least, less one, of the wheels of a drive.</summary>
    CircumferenceSpread,

    /// <summary>The difference of the diameters of a dual pair.</summary>
    DualDifference,

    /// <summary>The age of a tyre from its code.</summary>
    TyreAge,

    /// <summary>The load that a tyre must carry, of the load that it may carry.</summary>
    LoadShare,

    /// <summary>The length of a cut.</summary>
    CutLength,

    /// <summary>The length of a cut, of the section width.</summary>
    CutShare,

    /// <summary>The depth of a cut outside the tread.</summary>
    CutDepth,

    /// <summary>The depth of cracks.</summary>
    CrackDepth,

    /// <summary>The length of a tear in a bead.</summary>
    BeadTear,

    /// <summary>The hole of a puncture after preparation.</summary>
    InjurySize,

    /// <summary>Twice the distance of an injury's farthest point from the middle of the tread, of the section width.</summary>
    InjuryReach,

    /// <summary>How far the canal of a puncture leans from square through the tread.</summary>
    InjuryLean,

    /// <summary>The least tread depth of a tyre that is to be repaired.</summary>
    TreadAtRepair,

    /// <summary>The age of a tyre that is to be repaired.</summary>
    AgeAtRepair,

    /// <summary>How many repairs a tyre has that is to be repaired.</summary>
    EarlierRepairs,

    /// <summary>From an injury to the nearest earlier repair.</summary>
    RepairDistance,

    /// <summary>How far round the tyre the nearest earlier repair is.</summary>
    RepairTurn,

    /// <summary>The pressure found, counted back to cold, of the placard's.</summary>
    PressureShare,

    /// <summary>The pressure read cold.</summary>
    ColdPressure,

    /// <summary>How far a bent flange runs out in one turn.</summary>
    FlangeBend,

    /// <summary>The greatest cold pressure asked of a valve.</summary>
    ValvePressure,

    /// <summary>What a regrooved tyre may carry.</summary>
    RegroovedCapacity,
}

/// <summary>The quantities that rules judge: their words, their units, and what can be a limit of each.</summary>
public static class JudgedQuantities
{
    /// <summary>The marks of winter, from none up.</summary>
    private static readonly string[] Marks = ["none", "M+S", "3PMSF"];

    /// <summary>Every quantity with its word.</summary>
    public static IReadOnlyList<(string Word, JudgedQuantity Value)> Words { get; } = [.. Enum.GetValues<JudgedQuantity>().Select(q => (Word(q), q))];

    /// <summary>The word of tables and files.</summary>
    /// <source>the project's own words</source>
    public static string Word(JudgedQuantity quantity) => quantity switch
    {
        JudgedQuantity.TreadDepth => "tread depth",
        JudgedQuantity.WinterMark => "winter mark",
        JudgedQuantity.TreadSpread => "tread spread",
        JudgedQuantity.CircumferenceSpread => "circumference spread",
        JudgedQuantity.DualDifference => "dual difference",
        JudgedQuantity.TyreAge => "tyre age",
        JudgedQuantity.LoadShare => "load share",
        JudgedQuantity.CutLength => "cut length",
        JudgedQuantity.CutShare => "cut share",
        JudgedQuantity.CutDepth => "cut depth",
        JudgedQuantity.CrackDepth => "crack depth",
        JudgedQuantity.BeadTear => "bead tear",
        JudgedQuantity.InjurySize => "injury size",
        JudgedQuantity.InjuryReach => "injury reach",
        JudgedQuantity.InjuryLean => "injury lean",
        JudgedQuantity.TreadAtRepair => "tread at repair",
        JudgedQuantity.AgeAtRepair => "age at repair",
        JudgedQuantity.EarlierRepairs => "earlier repairs",
        JudgedQuantity.RepairDistance => "repair distance",
        JudgedQuantity.RepairTurn => "repair turn",
        JudgedQuantity.PressureShare => "pressure share",
        JudgedQuantity.ColdPressure => "cold pressure",
        JudgedQuantity.FlangeBend => "flange bend",
        JudgedQuantity.ValvePressure => "valve pressure",
        JudgedQuantity.RegroovedCapacity => "regrooved capacity",
    };

    /// <summary>The unit in which values of the quantity are held against each other: mm, %, years, °, kPa or repairs; empty for a mark, which counts 0 to 2.</summary>
    /// <source>the project's own choice</source>
    public static string Unit(JudgedQuantity quantity) => quantity switch
    {
        JudgedQuantity.TreadDepth or JudgedQuantity.TreadSpread or JudgedQuantity.DualDifference or JudgedQuantity.CutLength or JudgedQuantity.CutDepth
            or JudgedQuantity.CrackDepth or JudgedQuantity.BeadTear or JudgedQuantity.InjurySize or JudgedQuantity.TreadAtRepair
            or JudgedQuantity.RepairDistance or JudgedQuantity.FlangeBend => "mm",
        JudgedQuantity.CircumferenceSpread or JudgedQuantity.LoadShare or JudgedQuantity.CutShare or JudgedQuantity.InjuryReach or JudgedQuantity.PressureShare => "%",
        JudgedQuantity.TyreAge or JudgedQuantity.AgeAtRepair => "years",
        JudgedQuantity.InjuryLean or JudgedQuantity.RepairTurn => "°",
        JudgedQuantity.EarlierRepairs => "repairs",
        JudgedQuantity.ColdPressure or JudgedQuantity.ValvePressure => "kPa",
        JudgedQuantity.RegroovedCapacity => "kg",
        JudgedQuantity.WinterMark => "",
    };

    /// <summary>True where more is better: a limit is kept at it or above.</summary>
    /// <source>the meaning of the quantities</source>
    public static bool IsFloor(JudgedQuantity quantity) => quantity is JudgedQuantity.TreadDepth or JudgedQuantity.WinterMark or JudgedQuantity.TreadAtRepair
        or JudgedQuantity.RepairDistance or JudgedQuantity.RepairTurn or JudgedQuantity.PressureShare;

    /// <summary>The greatest number that can be meant as a limit, in the quantity's unit of comparison.</summary>
    private static double Most(JudgedQuantity quantity) => quantity switch
    {
        JudgedQuantity.TreadDepth or JudgedQuantity.TreadSpread or JudgedQuantity.TreadAtRepair or JudgedQuantity.CutDepth or JudgedQuantity.CrackDepth => 40,
        JudgedQuantity.DualDifference or JudgedQuantity.BeadTear or JudgedQuantity.InjurySize or JudgedQuantity.FlangeBend => 100,
        JudgedQuantity.CutLength => 500,
        JudgedQuantity.RepairDistance => 2000,
        JudgedQuantity.CircumferenceSpread or JudgedQuantity.EarlierRepairs => 20,
        JudgedQuantity.LoadShare => 150,
        JudgedQuantity.CutShare or JudgedQuantity.InjuryReach or JudgedQuantity.PressureShare => 100,
        JudgedQuantity.InjuryLean => 90,
        JudgedQuantity.RepairTurn => 180,
        JudgedQuantity.TyreAge or JudgedQuantity.AgeAtRepair => 40,
        JudgedQuantity.ColdPressure or JudgedQuantity.ValvePressure => 2000,
        JudgedQuantity.RegroovedCapacity => 20_000,
        JudgedQuantity.WinterMark => 2,
    };

    /// <summary>A mark's rank as a word.</summary>
    /// <source>the order of the marks: M+S is declared, the snowflake (3PMSF) is tested (UN R117 6.4, second-hand)</source>
    public static string Mark(int rank) => Marks[rank];

    /// <summary>The limit that a person wrote, with its unit, as a number in a unit; a length keeps the unit that it was written in.</summary>
    /// <source>the greatest and least that can be meant; the project's own choice</source>
    public static Reading<(double Value, string Unit)> ReadLimit(JudgedQuantity quantity, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (quantity == JudgedQuantity.WinterMark)
        {
            var rank = Array.FindIndex(Marks, m => string.Equals(m, text.Trim(), StringComparison.OrdinalIgnoreCase));
            return rank > 0
                ? Reading<(double, string)>.Of((rank, ""))
                : Reading<(double, string)>.Failed("word-unknown", $"'{NumberText.Shown(text)}' is not a winter mark; write M+S or 3PMSF.");
        }

        return Unit(quantity) switch
        {
            "mm" => InUnit<Length>(quantity, text),
            "kPa" => InUnit<GaugePressure>(quantity, text),
            "°" => InUnit<Angle>(quantity, text),
            var unit => Counted(quantity, text, unit),
        };
    }

    private static Reading<(double Value, string Unit)> InUnit<T>(JudgedQuantity quantity, string text) where T : struct, IQuantity<T>
    {
        var compared = Unit(quantity);
        return Quantity.Read<T>(text, compared).Then(read => read.In(compared) > 0 && read.In(compared) <= Most(quantity)
            ? Reading<(double, string)>.Of((read.In(Quantity.UnitIn<T>(text, compared)), Quantity.UnitIn<T>(text, compared)))
            : OutOfRange(quantity, text));
    }

    private static Reading<(double Value, string Unit)> Counted(JudgedQuantity quantity, string text, string unit)
    {
        var typed = text.Trim();
        var number = typed.EndsWith(unit, StringComparison.OrdinalIgnoreCase) ? typed[..^unit.Length] : typed;
        return NumberText.Read(number).Then(n => n > 0 && n <= Most(quantity) ? Reading<(double, string)>.Of((n, unit)) : OutOfRange(quantity, text));
    }

    private static Reading<(double Value, string Unit)> OutOfRange(JudgedQuantity quantity, string text) =>
        Reading<(double, string)>.Failed("out-of-range", string.Create(CultureInfo.InvariantCulture, $"'{NumberText.Shown(text)}' cannot be a limit of the {Word(quantity)}; it lies over 0 and up to {Most(quantity)} {Unit(quantity)}."));
}
