using System.Globalization;

namespace Trundle.Measures;

/// <summary>A road speed. SI: metre per second.</summary>
public readonly record struct Speed : IQuantity<Speed>
{
    private Speed(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "a speed";

    /// <inheritdoc />
    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("km/h", 0.27777777777777779, 0, "km/h", "kmh", "kph"),
        new("mph", 0.44704, 0, "mph", "mi/h"),
        new("m/s", 1, 0, "m/s"),
    ];

    /// <inheritdoc />
    public double Si { get; }

    /// <inheritdoc />
    public static Speed FromSi(double value) => new(value);

    /// <summary>A speed of so many MetresPerSecond.</summary>
    public static Speed FromMetresPerSecond(double value) => new(value);

    /// <summary>The value in m/s.</summary>
    public double MetresPerSecond => Si;

    /// <summary>A speed of so many KilometresPerHour.</summary>
    public static Speed FromKilometresPerHour(double value) => new(value * 0.27777777777777779);

    /// <summary>The value in km/h.</summary>
    public double KilometresPerHour => Si / 0.27777777777777779;

    /// <summary>A speed of so many MilesPerHour.</summary>
    public static Speed FromMilesPerHour(double value) => new(value * 0.44704);

    /// <summary>The value in mph.</summary>
    public double MilesPerHour => Si / 0.44704;

    /// <inheritdoc />
    public int CompareTo(Speed other) => Si.CompareTo(other.Si);

    public static bool operator <(Speed left, Speed right) => left.Si < right.Si;

    public static bool operator >(Speed left, Speed right) => left.Si > right.Si;

    public static bool operator <=(Speed left, Speed right) => left.Si <= right.Si;

    public static bool operator >=(Speed left, Speed right) => left.Si >= right.Si;

    public static Speed operator +(Speed left, Speed right) => new(left.Si + right.Si);

    public static Speed operator -(Speed left, Speed right) => new(left.Si - right.Si);

    public static Speed operator *(Speed quantity, double factor) => new(quantity.Si * factor);

    public static Speed operator *(double factor, Speed quantity) => new(quantity.Si * factor);

    public static Speed operator /(Speed quantity, double divisor) => new(quantity.Si / divisor);

    /// <summary>The ratio of two, without a unit.</summary>
    public static double operator /(Speed left, Speed right) => left.Si / right.Si;

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
