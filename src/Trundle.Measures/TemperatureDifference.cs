using System.Globalization;

namespace Trundle.Measures;

/// <summary>How far two temperatures lie apart, or how well one is known. SI: kelvin. 2 °C as a difference is 2 K, as a <see cref="Temperature"/> it is 275.15 K; so they are two types.</summary>
public readonly record struct TemperatureDifference : IQuantity<TemperatureDifference>
{
    private TemperatureDifference(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "a difference of temperatures";

    /// <inheritdoc />
    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("K", 1, 0, "k", "kelvin"),
        new("°C", 1, 0, "°c", "c", "degc", "celsius"),
        new("°F", 0.55555555555555558, 0, "°f", "f", "degf", "fahrenheit"),
    ];

    /// <inheritdoc />
    public double Si { get; }

    /// <inheritdoc />
    public static TemperatureDifference FromSi(double value) => new(value);

    /// <summary>A difference of so many kelvins.</summary>
    public static TemperatureDifference FromKelvins(double value) => new(value);

    /// <summary>The value in K.</summary>
    public double Kelvins => Si;

    /// <inheritdoc />
    public int CompareTo(TemperatureDifference other) => Si.CompareTo(other.Si);

    public static bool operator <(TemperatureDifference left, TemperatureDifference right) => left.Si < right.Si;

    public static bool operator >(TemperatureDifference left, TemperatureDifference right) => left.Si > right.Si;

    public static bool operator <=(TemperatureDifference left, TemperatureDifference right) => left.Si <= right.Si;

    public static bool operator >=(TemperatureDifference left, TemperatureDifference right) => left.Si >= right.Si;

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
