using System.Globalization;

namespace Trundle.Measures;

/// <summary>A force. SI: newton.</summary>
public readonly record struct Force : IQuantity<Force>
{
    private Force(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "a force";

    /// <inheritdoc />
    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("N", 1, 0, "n", "newton", "newtons"),
        new("kN", 1000, 0, "kn"),
        new("lbf", 4.4482216152605, 0, "lbf", "lb"),
    ];

    /// <inheritdoc />
    public double Si { get; }

    /// <inheritdoc />
    public static Force FromSi(double value) => new(value);

    /// <summary>A force of so many Newtons.</summary>
    public static Force FromNewtons(double value) => new(value);

    /// <summary>The value in N.</summary>
    public double Newtons => Si;

    /// <summary>A force of so many Kilonewtons.</summary>
    public static Force FromKilonewtons(double value) => new(value * 1000);

    /// <summary>The value in kN.</summary>
    public double Kilonewtons => Si / 1000;

    /// <summary>A force of so many PoundsForce.</summary>
    public static Force FromPoundsForce(double value) => new(value * 4.4482216152605);

    /// <summary>The value in lbf.</summary>
    public double PoundsForce => Si / 4.4482216152605;

    /// <inheritdoc />
    public int CompareTo(Force other) => Si.CompareTo(other.Si);

    public static bool operator <(Force left, Force right) => left.Si < right.Si;

    public static bool operator >(Force left, Force right) => left.Si > right.Si;

    public static bool operator <=(Force left, Force right) => left.Si <= right.Si;

    public static bool operator >=(Force left, Force right) => left.Si >= right.Si;

    public static Force operator +(Force left, Force right) => new(left.Si + right.Si);

    public static Force operator -(Force left, Force right) => new(left.Si - right.Si);

    public static Force operator *(Force quantity, double factor) => new(quantity.Si * factor);

    public static Force operator *(double factor, Force quantity) => new(quantity.Si * factor);

    public static Force operator /(Force quantity, double divisor) => new(quantity.Si / divisor);

    /// <summary>The ratio of two, without a unit.</summary>
    public static double operator /(Force left, Force right) => left.Si / right.Si;

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
