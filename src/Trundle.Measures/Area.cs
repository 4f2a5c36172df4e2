using System.Globalization;

namespace Trundle.Measures;

/// <summary>An area. SI: square metre.</summary>
public readonly record struct Area : IQuantity<Area>
{
    private Area(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "an area";

    /// <inheritdoc />
    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("mm²", 1e-6, 0, "mm2"),
        new("in²", 0.00064516, 0, "in2", "sqin"),
    ];

    /// <inheritdoc />
    public double Si { get; }

    /// <inheritdoc />
    public static Area FromSi(double value) => new(value);

    /// <summary>An area of so many square millimetres.</summary>
    public static Area FromSquareMillimetres(double value) => new(value * 1e-6);

    /// <summary>The value in mm².</summary>
    public double SquareMillimetres => Si / 1e-6;

    /// <summary>An area of so many square inches.</summary>
    public static Area FromSquareInches(double value) => new(value * 0.00064516);

    /// <summary>The value in in².</summary>
    public double SquareInches => Si / 0.00064516;

    /// <inheritdoc />
    public int CompareTo(Area other) => Si.CompareTo(other.Si);

    public static bool operator <(Area left, Area right) => left.Si < right.Si;

    public static bool operator >(Area left, Area right) => left.Si > right.Si;

    public static bool operator <=(Area left, Area right) => left.Si <= right.Si;

    public static bool operator >=(Area left, Area right) => left.Si >= right.Si;

    public static Area operator *(Area quantity, double factor) => new(quantity.Si * factor);

    public static Area operator /(Area quantity, double divisor) => new(quantity.Si / divisor);

    /// <summary>The ratio of two, without a unit.</summary>
    public static double operator /(Area left, Area right) => left.Si / right.Si;

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
