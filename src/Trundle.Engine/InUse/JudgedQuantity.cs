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
    };

    /// <summary>The unit in which values of the quantity are held against each other: mm, % or years; empty for a mark, which counts 0 to 2.</summary>
    /// <source>the project's own choice</source>
    public static string Unit(JudgedQuantity quantity) => quantity switch
    {
        JudgedQuantity.TreadDepth or JudgedQuantity.TreadSpread or JudgedQuantity.DualDifference => "mm",
        JudgedQuantity.CircumferenceSpread or JudgedQuantity.LoadShare => "%",
        JudgedQuantity.TyreAge => "years",
        JudgedQuantity.WinterMark => "",
    };

    /// <summary>True where more is better: a limit is kept at it or above.</summary>
    /// <source>the meaning of the quantities</source>
    public static bool IsFloor(JudgedQuantity quantity) => quantity is JudgedQuantity.TreadDepth or JudgedQuantity.WinterMark;

    /// <summary>A mark's rank as a word.</summary>
    /// <source>the order of the marks: M+S is declared, the snowflake (3PMSF) is tested (UN R117 6.4, second-hand)</source>
    public static string Mark(int rank) => Marks[rank];

    /// <summary>The limit that a person wrote, with its unit, as a number in a unit; a length keeps the unit that it was written in.</summary>
    /// <source>the greatest and least that can be meant; the project's own choice</source>
    public static Reading<(double Value, string Unit)> ReadLimit(JudgedQuantity quantity, string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        switch (quantity)
        {
            case JudgedQuantity.WinterMark:
                var rank = Array.FindIndex(Marks, m => string.Equals(m, text.Trim(), StringComparison.OrdinalIgnoreCase));
                return rank > 0
                    ? Reading<(double, string)>.Of((rank, ""))
                    : Reading<(double, string)>.Failed("word-unknown", $"'{NumberText.Shown(text)}' is not a winter mark; write M+S or 3PMSF.");
            case JudgedQuantity.TreadDepth or JudgedQuantity.TreadSpread or JudgedQuantity.DualDifference:
                var most = quantity == JudgedQuantity.DualDifference ? 100 : 40;
                return Quantity.Read<Length>(text, "mm").Then(length => length.Millimetres > 0 && length.Millimetres <= most
                    ? Reading<(double, string)>.Of((length.In(Quantity.UnitIn<Length>(text, "mm")), Quantity.UnitIn<Length>(text, "mm")))
                    : OutOfRange(quantity, text, string.Create(CultureInfo.InvariantCulture, $"over 0 and up to {most} mm")));
            default:
                var unit = Unit(quantity);
                var (above, upTo) = quantity switch { JudgedQuantity.CircumferenceSpread => (0, 20), JudgedQuantity.LoadShare => (0, 150), _ => (0, 40) };
                var typed = text.Trim();
                var number = typed.EndsWith(unit, StringComparison.OrdinalIgnoreCase) ? typed[..^unit.Length] : typed;
                return NumberText.Read(number).Then(n => n > above && n <= upTo
                    ? Reading<(double, string)>.Of((n, unit))
                    : OutOfRange(quantity, text, string.Create(CultureInfo.InvariantCulture, $"over {above} and up to {upTo} {unit}")));
        }
    }

    private static Reading<(double Value, string Unit)> OutOfRange(JudgedQuantity quantity, string text, string range) =>
        Reading<(double, string)>.Failed("out-of-range", $"'{NumberText.Shown(text)}' cannot be a limit of the {Word(quantity)}; it lies {range}.");
}
