using System.Globalization;

namespace Trundle.Measures;

/// <summary>One unit of a quantity: its symbol as we write it, how many of the quantity's own SI unit it is, and an offset for temperatures.</summary>
/// <param name="Symbol">As written, for example <c>N·m</c>.</param>
/// <param name="Factor">SI value of one unit, exact.</param>
/// <param name="Offset">SI value of the unit's zero (temperatures only).</param>
/// <param name="Spellings">Every form that people type, lower case, with blanks, dots and dashes between factors removed.</param>
public sealed record Unit(string Symbol, double Factor, double Offset, params string[] Spellings)
{
    private readonly decimal _factor = decimal.Parse(Factor.ToString("R", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);
    private readonly decimal _offset = decimal.Parse(Offset.ToString("R", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);

    /// <summary>
    /// The SI value of so many of this unit, as typed. Computed in decimal where the number has a short decimal form, so that "2.3 bar" and
    /// "230 kPa" are the same pressure to the last bit and neither is below the other; in binary, 2.3 × 100 000 is 229 999.99999999997.
    /// </summary>
    internal double ToSi(double number)
    {
        if (Math.Abs(number) <= NumberText.Greatest)
        {
            var exact = (decimal)number;
            if ((double)exact == number)
            {
                return (double)((exact * _factor) + _offset);
            }
        }

        return (number * Factor) + Offset;
    }
}

/// <summary>A physical quantity with its table of units. SI inside; a unit only where it is read or written.</summary>
/// <typeparam name="TSelf">The quantity.</typeparam>
public interface IQuantity<TSelf> : IComparable<TSelf> where TSelf : struct, IQuantity<TSelf>
{
    /// <summary>What the quantity is called in a message, for example "a pressure".</summary>
    static abstract string Kind { get; }

    /// <summary>The units that are read; the first is the one that messages give as an example.</summary>
    static abstract IReadOnlyList<Unit> Units { get; }

    /// <summary>The quantity of so many SI units (metre, kilogram, newton, newton metre, pascal, kelvin, radian, metre per second, radian per second, kilogram metre, kilogram square metre).</summary>
    static abstract TSelf FromSi(double value);

    /// <summary>The value in SI units.</summary>
    double Si { get; }
}

/// <summary>Strict reading and writing of quantities.</summary>
public static class Quantity
{
    /// <summary>
    /// Reads a quantity such as "2.3 bar", "6/32 in" or "90 lbf·ft".
    /// </summary>
    /// <param name="text">What was typed.</param>
    /// <param name="bareUnit">The symbol of the unit of a bare number, or null where a unit must be given.</param>
    /// <returns>The quantity, or one problem: empty, not a number, thousands mark, unknown unit, unit missing.</returns>
    public static Reading<T> Read<T>(string? text, string? bareUnit = null) where T : struct, IQuantity<T>
    {
        var trimmed = Tidy(text);
        if (trimmed.Length == 0)
        {
            return Reading<T>.Failed("empty", $"Nothing was entered where {T.Kind} is expected, for example {Example<T>()}.");
        }

        var number = NumberText.ReadStart(trimmed, out var consumed);
        if (!number.IsRead)
        {
            return Reading<T>.Failed(number.Problem!.Code, $"{number.Problem.Message} {Capital(T.Kind)} reads like {Example<T>()}.");
        }

        var unitText = trimmed[consumed..].Trim();
        if (unitText.Length == 0)
        {
            // "6/32" in a field of millimetres is a tread depth in inches with its unit forgotten, not 0.19 mm.
            var fraction = trimmed.Contains('/', StringComparison.Ordinal) && bareUnit is not ("in" or "oz" or "lb");
            return bareUnit is null || fraction
                ? Reading<T>.Failed("unit-missing", $"'{NumberText.Shown(trimmed)}' has no unit; {T.Kind} reads like {Example<T>()}.")
                : Finite(number.Value, UnitOf<T>(bareUnit), trimmed);
        }

        if (unitText[0] is 'e' or 'E' && unitText.AsSpan(1).TrimStart("+-−") is [>= '0' and <= '9', ..])
        {
            return Reading<T>.Failed("unit-unknown", $"'{NumberText.Shown(trimmed)}' is written with a power of ten; write the number out, no larger than a measurement can be. {Capital(T.Kind)} reads like {Example<T>()}.");
        }

        return Spelled<T>(unitText) is { } unit
            ? Finite(number.Value, unit, trimmed)
            : Reading<T>.Failed("unit-unknown",
                $"'{NumberText.Shown(unitText)}' is not a unit of {Bare(T.Kind)}; use {ChoiceText.Of(T.Units.Select(u => u.Symbol))}.");

        static Reading<T> Finite(double number, Unit unit, string typed)
        {
            var si = unit.ToSi(number);
            return typeof(T) == typeof(Temperature) && si < 0
                ? Reading<T>.Failed("below-absolute-zero", $"'{NumberText.Shown(typed)}' is below absolute zero.")
                : Reading<T>.Of(T.FromSi(si));
        }
    }

    /// <summary>The symbol of the unit that a readable text is written in, so that an answer to it can keep to that unit; the bare unit, or the quantity's first, where none is written.</summary>
    public static string UnitIn<T>(string? text, string? bareUnit = null) where T : struct, IQuantity<T>
    {
        var trimmed = Tidy(text);
        return NumberText.ReadStart(trimmed, out var consumed).IsRead && Spelled<T>(trimmed[consumed..].Trim()) is { } unit
            ? unit.Symbol
            : bareUnit ?? T.Units[0].Symbol;
    }

    /// <summary>A quantity of a number in a unit named by its symbol; throws where the unit is not one of the quantity's.</summary>
    public static T Of<T>(double number, string symbol) where T : struct, IQuantity<T> =>
        T.FromSi(UnitOf<T>(symbol).ToSi(number));

    /// <summary>The number of a quantity in a unit named by its symbol; throws where the unit is not one of the quantity's.</summary>
    public static double In<T>(this T quantity, string symbol) where T : struct, IQuantity<T>
    {
        var unit = UnitOf<T>(symbol);
        var number = (quantity.Si - unit.Offset) / unit.Factor;

        // A 6 in rim is 6 in again, not 5.999999999999999: where a number of fifteen figures is read as this very quantity, that is the number.
        var typed = double.Parse(number.ToString("G15", CultureInfo.InvariantCulture), NumberStyles.Float, CultureInfo.InvariantCulture);
        return typed != number && unit.ToSi(typed) == quantity.Si ? typed : number;
    }

    /// <summary>Writes a quantity for a person, with a fixed number of decimals, a point and a no-break space: "230 kPa".</summary>
    public static string Text<T>(this T quantity, string symbol, int decimals) where T : struct, IQuantity<T> =>
        string.Create(CultureInfo.InvariantCulture, $"{Number(quantity.In(symbol), decimals)} {symbol}");

    /// <summary>Writes a number with a fixed number of decimals, halves away from zero, and never "-0".</summary>
    public static string Number(double value, int decimals)
    {
        var rounded = Math.Round(value, decimals, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }

    private static Unit? Spelled<T>(string unitText) where T : struct, IQuantity<T>
    {
        var key = Key(unitText);
        return T.Units.FirstOrDefault(unit => unit.Spellings.Contains(key, StringComparer.Ordinal));
    }

    private static Unit UnitOf<T>(string symbol) where T : struct, IQuantity<T> =>
        T.Units.FirstOrDefault(u => u.Symbol == symbol)
        ?? throw new ArgumentException($"'{symbol}' is not a unit of {Bare(T.Kind)}.", nameof(symbol));

    private static string Example<T>() where T : struct, IQuantity<T> =>
        string.Join(" or ", T.Units.Take(2).Select(u => $"\"{Number(10, 0)} {u.Symbol}\""));

    private static string Bare(string kind) => kind.StartsWith("an ", StringComparison.Ordinal) ? kind[3..] : kind.StartsWith("a ", StringComparison.Ordinal) ? kind[2..] : kind;

    private static string Capital(string kind) => string.Concat(kind[..1].ToUpperInvariant(), kind.AsSpan(1));

    private static string Tidy(string? text) =>
        (text ?? "").Trim().Replace("¼", " 1/4", StringComparison.Ordinal).Replace("½", " 1/2", StringComparison.Ordinal).Replace("¾", " 3/4", StringComparison.Ordinal).Trim();

    /// <summary>Joins the many ways of writing a product: "N·m", "N.m", "N m", "lb-ft".</summary>
    private static string Key(string unit)
    {
        Span<char> kept = stackalloc char[24];
        var n = 0;
        foreach (var c in unit.ToLowerInvariant())
        {
            if (c is '·' or '⋅' or '•' or '∙' or '*' or '.' or '-' or '⁻' or '−' or '^' or ' ' or '\u00a0' or '\u202f' or '×')
            {
                continue;
            }

            if (n == kept.Length)
            {
                return unit;
            }

            kept[n++] = c switch { '²' => '2', '¹' => '1', 'º' or '˚' => '°', '″' or '”' => '"', 'μ' => 'µ', _ => c };
        }

        return kept[..n].ToString();
    }
}
