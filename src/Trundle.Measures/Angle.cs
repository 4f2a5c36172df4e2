using System.Globalization;

namespace Trundle.Measures;

/// <summary>A turn: the difference of two places. SI: radian. It may be negative and may pass a whole turn.</summary>
public readonly record struct Angle : IQuantity<Angle>
{
    private Angle(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "an angle";

    /// <inheritdoc />
    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("°", 0.017453292519943295, 0, "°", "deg", "degree", "degrees"),
        new("rad", 1, 0, "rad", "radian", "radians"),
    ];

    /// <inheritdoc />
    public double Si { get; }

    /// <inheritdoc />
    public static Angle FromSi(double value) => new(value);

    /// <summary>An angle of so many Radians.</summary>
    public static Angle FromRadians(double value) => new(value);

    /// <summary>The value in rad.</summary>
    public double Radians => Si;

    /// <summary>An angle of so many Degrees.</summary>
    public static Angle FromDegrees(double value) => new(value * 0.017453292519943295);

    /// <summary>The value in °.</summary>
    public double Degrees => Si / 0.017453292519943295;

    /// <inheritdoc />
    public int CompareTo(Angle other) => Si.CompareTo(other.Si);

    public static bool operator <(Angle left, Angle right) => left.Si < right.Si;

    public static bool operator >(Angle left, Angle right) => left.Si > right.Si;

    public static bool operator <=(Angle left, Angle right) => left.Si <= right.Si;

    public static bool operator >=(Angle left, Angle right) => left.Si >= right.Si;

    public static Angle operator +(Angle left, Angle right) => new(left.Si + right.Si);

    public static Angle operator -(Angle left, Angle right) => new(left.Si - right.Si);

    public static Angle operator *(Angle quantity, double factor) => new(quantity.Si * factor);

    public static Angle operator *(double factor, Angle quantity) => new(quantity.Si * factor);

    public static Angle operator /(Angle quantity, double divisor) => new(quantity.Si / divisor);

    /// <summary>The ratio of two, without a unit.</summary>
    public static double operator /(Angle left, Angle right) => left.Si / right.Si;

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
