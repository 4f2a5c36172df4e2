using System.Globalization;

namespace Trundle.Measures;

/// <summary>A torque. SI: newton metre.</summary>
public readonly record struct Torque : IQuantity<Torque>
{
    private Torque(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "a torque";

    /// <inheritdoc />
    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("N·m", 1, 0, "nm", "newtonmetre", "newtonmetres"),
        new("lbf·ft", 1.3558179483314004, 0, "lbfft", "lbft", "ftlb", "ftlbf", "ftlbs", "lbsft", "lbfeet", "poundfeet", "footpounds", "footpound"),
        new("lbf·in", 0.1129848290276167, 0, "lbfin", "lbin", "inlb", "inlbf", "inlbs"),
        new("kgf·m", 9.80665, 0, "kgfm", "mkgf", "kgm", "mkg"),
    ];

    /// <inheritdoc />
    public double Si { get; }

    /// <inheritdoc />
    public static Torque FromSi(double value) => new(value);

    /// <summary>A torque of so many NewtonMetres.</summary>
    public static Torque FromNewtonMetres(double value) => new(value);

    /// <summary>The value in N·m.</summary>
    public double NewtonMetres => Si;

    /// <summary>A torque of so many PoundForceFeet.</summary>
    public static Torque FromPoundForceFeet(double value) => new(value * 1.3558179483314004);

    /// <summary>The value in lbf·ft.</summary>
    public double PoundForceFeet => Si / 1.3558179483314004;

    /// <summary>A torque of so many PoundForceInches.</summary>
    public static Torque FromPoundForceInches(double value) => new(value * 0.1129848290276167);

    /// <summary>The value in lbf·in.</summary>
    public double PoundForceInches => Si / 0.1129848290276167;

    /// <inheritdoc />
    public int CompareTo(Torque other) => Si.CompareTo(other.Si);

    public static bool operator <(Torque left, Torque right) => left.Si < right.Si;

    public static bool operator >(Torque left, Torque right) => left.Si > right.Si;

    public static bool operator <=(Torque left, Torque right) => left.Si <= right.Si;

    public static bool operator >=(Torque left, Torque right) => left.Si >= right.Si;

    public static Torque operator +(Torque left, Torque right) => new(left.Si + right.Si);

    public static Torque operator -(Torque left, Torque right) => new(left.Si - right.Si);

    public static Torque operator *(Torque quantity, double factor) => new(quantity.Si * factor);

    public static Torque operator *(double factor, Torque quantity) => new(quantity.Si * factor);

    public static Torque operator /(Torque quantity, double divisor) => new(quantity.Si / divisor);

    /// <summary>The ratio of two, without a unit.</summary>
    public static double operator /(Torque left, Torque right) => left.Si / right.Si;

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
