using System.Globalization;

namespace Trundle.Measures;

/// <summary>A temperature. SI: kelvin.</summary>
public readonly record struct Temperature : IQuantity<Temperature>
{
    private Temperature(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "a temperature";

    /// <inheritdoc />
    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("°C", 1, 273.15, "°c", "c", "degc", "celsius"),
        new("°F", 0.55555555555555558, 255.37222222222223, "°f", "f", "degf", "fahrenheit"),
        new("K", 1, 0, "k", "kelvin"),
    ];

    /// <inheritdoc />
    public double Si { get; }

    /// <inheritdoc />
    public static Temperature FromSi(double value) => new(value);

    /// <summary>A temperature of so many Kelvins.</summary>
    public static Temperature FromKelvins(double value) => new(value);

    /// <summary>The value in Kelvins.</summary>
    public double Kelvins => Si;

    /// <summary>A temperature of so many DegreesCelsius.</summary>
    public static Temperature FromDegreesCelsius(double value) => new((value * 1) + 273.15);

    /// <summary>The value in °C.</summary>
    public double DegreesCelsius => (Si - 273.15) / 1;

    /// <summary>A temperature of so many DegreesFahrenheit.</summary>
    public static Temperature FromDegreesFahrenheit(double value) => new((value * 0.55555555555555558) + 255.37222222222223);

    /// <summary>The value in °F.</summary>
    public double DegreesFahrenheit => (Si - 255.37222222222223) / 0.55555555555555558;

    /// <inheritdoc />
    public int CompareTo(Temperature other) => Si.CompareTo(other.Si);

    public static bool operator <(Temperature left, Temperature right) => left.Si < right.Si;

    public static bool operator >(Temperature left, Temperature right) => left.Si > right.Si;

    public static bool operator <=(Temperature left, Temperature right) => left.Si <= right.Si;

    public static bool operator >=(Temperature left, Temperature right) => left.Si >= right.Si;

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
