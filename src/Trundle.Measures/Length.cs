using System.Globalization;

namespace Trundle.Measures;

/// <summary>A length or distance. SI: metre.</summary>
public readonly record struct Length : IQuantity<Length>
{
    private Length(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "a length";

    /// <inheritdoc />
    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("mm", 1e-3, 0, "mm", "millimetre", "millimetres", "millimeter", "millimeters"),
        new("in", 0.0254, 0, "in", "inch", "inches", "\"", "''"),
        new("cm", 1e-2, 0, "cm"),
        new("m", 1, 0, "m", "metre", "metres", "meter", "meters"),
        new("km", 1000, 0, "km", "kilometre", "kilometres", "kilometer", "kilometers"),
        new("mi", 1609.344, 0, "mi", "mile", "miles"),
        new("ft", 0.3048, 0, "ft", "foot", "feet"),
        new("µm", 1e-6, 0, "µm", "um"),
        new("32nds", 0.00079375, 0, "32nds", "32nd", "/32nds", "/32nd", "/32in", "/32", "1/32in", "1/32"),
    ];

    /// <inheritdoc />
    public double Si { get; }

    /// <inheritdoc />
    public static Length FromSi(double value) => new(value);

    /// <summary>A length of so many Metres.</summary>
    public static Length FromMetres(double value) => new(value);

    /// <summary>The value in m.</summary>
    public double Metres => Si;

    /// <summary>A length of so many Millimetres.</summary>
    public static Length FromMillimetres(double value) => new(value * 1e-3);

    /// <summary>The value in mm.</summary>
    public double Millimetres => Si / 1e-3;

    /// <summary>A length of so many Inches.</summary>
    public static Length FromInches(double value) => new(value * 0.0254);

    /// <summary>The value in in.</summary>
    public double Inches => Si / 0.0254;

    /// <summary>A length of so many Kilometres.</summary>
    public static Length FromKilometres(double value) => new(value * 1000);

    /// <summary>The value in km.</summary>
    public double Kilometres => Si / 1000;

    /// <summary>A length of so many Miles.</summary>
    public static Length FromMiles(double value) => new(value * 1609.344);

    /// <summary>The value in mi.</summary>
    public double Miles => Si / 1609.344;

    /// <inheritdoc />
    public int CompareTo(Length other) => Si.CompareTo(other.Si);

    public static bool operator <(Length left, Length right) => left.Si < right.Si;

    public static bool operator >(Length left, Length right) => left.Si > right.Si;

    public static bool operator <=(Length left, Length right) => left.Si <= right.Si;

    public static bool operator >=(Length left, Length right) => left.Si >= right.Si;

    public static Length operator +(Length left, Length right) => new(left.Si + right.Si);

    public static Length operator -(Length left, Length right) => new(left.Si - right.Si);

    public static Length operator *(Length quantity, double factor) => new(quantity.Si * factor);

    public static Length operator *(double factor, Length quantity) => new(quantity.Si * factor);

    public static Length operator /(Length quantity, double divisor) => new(quantity.Si / divisor);

    /// <summary>The ratio of two, without a unit.</summary>
    public static double operator /(Length left, Length right) => left.Si / right.Si;

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
