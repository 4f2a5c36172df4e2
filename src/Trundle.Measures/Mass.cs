using System.Globalization;

namespace Trundle.Measures;

/// <summary>A mass. SI: kilogram.</summary>
public readonly record struct Mass : IQuantity<Mass>
{
    private Mass(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "a mass";

    /// <inheritdoc />
    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("g", 1e-3, 0, "g", "gram", "grams"),
        new("kg", 1, 0, "kg", "kilogram", "kilograms", "kgs"),
        new("oz", 0.028349523125, 0, "oz", "ounce", "ounces"),
        new("lb", 0.45359237, 0, "lb", "lbs", "pound", "pounds"),
        new("t", 1000, 0, "t", "tonne", "tonnes"),
    ];

    /// <inheritdoc />
    public double Si { get; }

    /// <inheritdoc />
    public static Mass FromSi(double value) => new(value);

    /// <summary>A mass of so many Kilograms.</summary>
    public static Mass FromKilograms(double value) => new(value);

    /// <summary>The value in kg.</summary>
    public double Kilograms => Si;

    /// <summary>A mass of so many Grams.</summary>
    public static Mass FromGrams(double value) => new(value * 1e-3);

    /// <summary>The value in g.</summary>
    public double Grams => Si / 1e-3;

    /// <summary>A mass of so many Ounces.</summary>
    public static Mass FromOunces(double value) => new(value * 0.028349523125);

    /// <summary>The value in oz.</summary>
    public double Ounces => Si / 0.028349523125;

    /// <summary>A mass of so many Pounds.</summary>
    public static Mass FromPounds(double value) => new(value * 0.45359237);

    /// <summary>The value in lb.</summary>
    public double Pounds => Si / 0.45359237;

    /// <inheritdoc />
    public int CompareTo(Mass other) => Si.CompareTo(other.Si);

    public static bool operator <(Mass left, Mass right) => left.Si < right.Si;

    public static bool operator >(Mass left, Mass right) => left.Si > right.Si;

    public static bool operator <=(Mass left, Mass right) => left.Si <= right.Si;

    public static bool operator >=(Mass left, Mass right) => left.Si >= right.Si;

    public static Mass operator +(Mass left, Mass right) => new(left.Si + right.Si);

    public static Mass operator -(Mass left, Mass right) => new(left.Si - right.Si);

    public static Mass operator *(Mass quantity, double factor) => new(quantity.Si * factor);

    public static Mass operator *(double factor, Mass quantity) => new(quantity.Si * factor);

    public static Mass operator /(Mass quantity, double divisor) => new(quantity.Si / divisor);

    /// <summary>The ratio of two, without a unit.</summary>
    public static double operator /(Mass left, Mass right) => left.Si / right.Si;

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
