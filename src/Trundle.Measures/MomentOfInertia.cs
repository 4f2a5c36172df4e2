using System.Globalization;

namespace Trundle.Measures;

/// <summary>How a body withstands being turned faster, or the difference of two such. SI: kilogram square metre.</summary>
public readonly record struct MomentOfInertia : IQuantity<MomentOfInertia>
{
    private MomentOfInertia(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "a moment of inertia";

    /// <inheritdoc />
    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("kg·m²", 1, 0, "kgm2", "kg·m2"),
        new("g·m²", 1e-3, 0, "gm2", "g·m2"),
    ];

    /// <inheritdoc />
    public double Si { get; }

    /// <inheritdoc />
    public static MomentOfInertia FromSi(double value) => new(value);

    /// <summary>A moment of inertia of so many kg·m².</summary>
    public static MomentOfInertia FromKilogramSquareMetres(double value) => new(value);

    /// <summary>The value in kg·m².</summary>
    public double KilogramSquareMetres => Si;

    /// <inheritdoc />
    public int CompareTo(MomentOfInertia other) => Si.CompareTo(other.Si);

    public static bool operator <(MomentOfInertia left, MomentOfInertia right) => left.Si < right.Si;

    public static bool operator >(MomentOfInertia left, MomentOfInertia right) => left.Si > right.Si;

    public static bool operator <=(MomentOfInertia left, MomentOfInertia right) => left.Si <= right.Si;

    public static bool operator >=(MomentOfInertia left, MomentOfInertia right) => left.Si >= right.Si;

    public static MomentOfInertia operator +(MomentOfInertia left, MomentOfInertia right) => new(left.Si + right.Si);

    public static MomentOfInertia operator -(MomentOfInertia left, MomentOfInertia right) => new(left.Si - right.Si);

    public static MomentOfInertia operator *(MomentOfInertia quantity, double factor) => new(quantity.Si * factor);

    public static MomentOfInertia operator *(double factor, MomentOfInertia quantity) => new(quantity.Si * factor);

    public static MomentOfInertia operator /(MomentOfInertia quantity, double divisor) => new(quantity.Si / divisor);

    /// <summary>The ratio of two, without a unit.</summary>
    public static double operator /(MomentOfInertia left, MomentOfInertia right) => left.Si / right.Si;

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
