using System.Globalization;

namespace Trundle.Measures;

/// <summary>A pressure above vacuum. SI: pascal.</summary>
public readonly record struct AbsolutePressure : IQuantity<AbsolutePressure>
{
    private AbsolutePressure(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "an absolute pressure";

    /// <inheritdoc />
    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("kPa", 1000, 0, "kpa"),
        new("psi", 6894.757293168361, 0, "psi", "psig", "lb/in2", "lbf/in2"),
        new("bar", 1e5, 0, "bar", "bars"),
        new("MPa", 1e6, 0, "mpa"),
        new("kgf/cm²", 98066.5, 0, "kgf/cm2", "kg/cm2"),
    ];

    /// <inheritdoc />
    public double Si { get; }

    /// <inheritdoc />
    public static AbsolutePressure FromSi(double value) => new(value);

    /// <summary>An absolute pressure of so many Pascals.</summary>
    public static AbsolutePressure FromPascals(double value) => new(value);

    /// <summary>The value in Pascals.</summary>
    public double Pascals => Si;

    /// <summary>An absolute pressure of so many Kilopascals.</summary>
    public static AbsolutePressure FromKilopascals(double value) => new(value * 1000);

    /// <summary>The value in kPa.</summary>
    public double Kilopascals => Si / 1000;

    /// <summary>An absolute pressure of so many PoundsPerSquareInch.</summary>
    public static AbsolutePressure FromPoundsPerSquareInch(double value) => new(value * 6894.757293168361);

    /// <summary>The value in psi.</summary>
    public double PoundsPerSquareInch => Si / 6894.757293168361;

    /// <summary>An absolute pressure of so many Bars.</summary>
    public static AbsolutePressure FromBars(double value) => new(value * 1e5);

    /// <summary>The value in bar.</summary>
    public double Bars => Si / 1e5;

    /// <inheritdoc />
    public int CompareTo(AbsolutePressure other) => Si.CompareTo(other.Si);

    public static bool operator <(AbsolutePressure left, AbsolutePressure right) => left.Si < right.Si;

    public static bool operator >(AbsolutePressure left, AbsolutePressure right) => left.Si > right.Si;

    public static bool operator <=(AbsolutePressure left, AbsolutePressure right) => left.Si <= right.Si;

    public static bool operator >=(AbsolutePressure left, AbsolutePressure right) => left.Si >= right.Si;

    public static AbsolutePressure operator +(AbsolutePressure left, AbsolutePressure right) => new(left.Si + right.Si);

    public static AbsolutePressure operator -(AbsolutePressure left, AbsolutePressure right) => new(left.Si - right.Si);

    public static AbsolutePressure operator *(AbsolutePressure quantity, double factor) => new(quantity.Si * factor);

    public static AbsolutePressure operator *(double factor, AbsolutePressure quantity) => new(quantity.Si * factor);

    public static AbsolutePressure operator /(AbsolutePressure quantity, double divisor) => new(quantity.Si / divisor);

    /// <summary>The ratio of two, without a unit.</summary>
    public static double operator /(AbsolutePressure left, AbsolutePressure right) => left.Si / right.Si;

    /// <summary>What a gauge shows of this pressure in an atmosphere.</summary>
    public GaugePressure Above(AbsolutePressure atmosphere) => GaugePressure.FromPascals(Si - atmosphere.Si);

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
