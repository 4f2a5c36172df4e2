using System.Globalization;

namespace Trundle.Measures;

/// <summary>A pressure above the atmosphere, as a gauge shows it. SI: pascal. Adding it to an atmosphere gives an <see cref="AbsolutePressure"/>; the two never mix by accident.</summary>
public readonly record struct GaugePressure : IQuantity<GaugePressure>
{
    private GaugePressure(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "a pressure";

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
    public static GaugePressure FromSi(double value) => new(value);

    /// <summary>A pressure of so many Pascals.</summary>
    public static GaugePressure FromPascals(double value) => new(value);

    /// <summary>The value in Pascals.</summary>
    public double Pascals => Si;

    /// <summary>A pressure of so many Kilopascals.</summary>
    public static GaugePressure FromKilopascals(double value) => new(value * 1000);

    /// <summary>The value in kPa.</summary>
    public double Kilopascals => Si / 1000;

    /// <summary>A pressure of so many PoundsPerSquareInch.</summary>
    public static GaugePressure FromPoundsPerSquareInch(double value) => new(value * 6894.757293168361);

    /// <summary>The value in psi.</summary>
    public double PoundsPerSquareInch => Si / 6894.757293168361;

    /// <summary>A pressure of so many Bars.</summary>
    public static GaugePressure FromBars(double value) => new(value * 1e5);

    /// <summary>The value in bar.</summary>
    public double Bars => Si / 1e5;

    /// <inheritdoc />
    public int CompareTo(GaugePressure other) => Si.CompareTo(other.Si);

    public static bool operator <(GaugePressure left, GaugePressure right) => left.Si < right.Si;

    public static bool operator >(GaugePressure left, GaugePressure right) => left.Si > right.Si;

    public static bool operator <=(GaugePressure left, GaugePressure right) => left.Si <= right.Si;

    public static bool operator >=(GaugePressure left, GaugePressure right) => left.Si >= right.Si;

    public static GaugePressure operator +(GaugePressure left, GaugePressure right) => new(left.Si + right.Si);

    public static GaugePressure operator -(GaugePressure left, GaugePressure right) => new(left.Si - right.Si);

    public static GaugePressure operator *(GaugePressure quantity, double factor) => new(quantity.Si * factor);

    public static GaugePressure operator *(double factor, GaugePressure quantity) => new(quantity.Si * factor);

    public static GaugePressure operator /(GaugePressure quantity, double divisor) => new(quantity.Si / divisor);

    /// <summary>The ratio of two, without a unit.</summary>
    public static double operator /(GaugePressure left, GaugePressure right) => left.Si / right.Si;

    /// <summary>The absolute pressure of this gauge pressure in an atmosphere.</summary>
    public AbsolutePressure In(AbsolutePressure atmosphere) => AbsolutePressure.FromPascals(Si + atmosphere.Si);

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
