using System.Globalization;

namespace Trundle.Measures;

/// <summary>A speed of turning. SI: radian per second.</summary>
public readonly record struct RotationalSpeed : IQuantity<RotationalSpeed>
{
    private RotationalSpeed(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "a rotational speed";

    /// <inheritdoc />
    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("r/min", 0.10471975511965978, 0, "r/min", "rpm", "rev/min", "min1", "1/min"),
        new("Hz", 6.2831853071795862, 0, "hz", "r/s", "rev/s"),
        new("rad/s", 1, 0, "rad/s"),
    ];

    /// <inheritdoc />
    public double Si { get; }

    /// <inheritdoc />
    public static RotationalSpeed FromSi(double value) => new(value);

    /// <summary>A rotational speed of so many RadiansPerSecond.</summary>
    public static RotationalSpeed FromRadiansPerSecond(double value) => new(value);

    /// <summary>The value in rad/s.</summary>
    public double RadiansPerSecond => Si;

    /// <summary>A rotational speed of so many RevolutionsPerMinute.</summary>
    public static RotationalSpeed FromRevolutionsPerMinute(double value) => new(value * 0.10471975511965978);

    /// <summary>The value in r/min.</summary>
    public double RevolutionsPerMinute => Si / 0.10471975511965978;

    /// <summary>A rotational speed of so many Hertz.</summary>
    public static RotationalSpeed FromHertz(double value) => new(value * 6.2831853071795862);

    /// <summary>The value in Hz.</summary>
    public double Hertz => Si / 6.2831853071795862;

    /// <inheritdoc />
    public int CompareTo(RotationalSpeed other) => Si.CompareTo(other.Si);

    public static bool operator <(RotationalSpeed left, RotationalSpeed right) => left.Si < right.Si;

    public static bool operator >(RotationalSpeed left, RotationalSpeed right) => left.Si > right.Si;

    public static bool operator <=(RotationalSpeed left, RotationalSpeed right) => left.Si <= right.Si;

    public static bool operator >=(RotationalSpeed left, RotationalSpeed right) => left.Si >= right.Si;

    public static RotationalSpeed operator +(RotationalSpeed left, RotationalSpeed right) => new(left.Si + right.Si);

    public static RotationalSpeed operator -(RotationalSpeed left, RotationalSpeed right) => new(left.Si - right.Si);

    public static RotationalSpeed operator *(RotationalSpeed quantity, double factor) => new(quantity.Si * factor);

    public static RotationalSpeed operator *(double factor, RotationalSpeed quantity) => new(quantity.Si * factor);

    public static RotationalSpeed operator /(RotationalSpeed quantity, double divisor) => new(quantity.Si / divisor);

    /// <summary>The ratio of two, without a unit.</summary>
    public static double operator /(RotationalSpeed left, RotationalSpeed right) => left.Si / right.Si;

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
