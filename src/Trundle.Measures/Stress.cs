using System.Globalization;

namespace Trundle.Measures;

/// <summary>A mechanical stress. SI: pascal. It is not a pressure of air, which is gauge or absolute.</summary>
public readonly record struct Stress : IQuantity<Stress>
{
    private Stress(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "a stress";

    /// <inheritdoc />
    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("MPa", 1e6, 0, "mpa", "n/mm2"),
        new("ksi", 6894757.293168361, 0, "ksi", "kpsi"),
    ];

    /// <inheritdoc />
    public double Si { get; }

    /// <inheritdoc />
    public static Stress FromSi(double value) => new(value);

    /// <summary>A stress of so many megapascals (newtons per square millimetre).</summary>
    public static Stress FromMegapascals(double value) => new(value * 1e6);

    /// <summary>The value in MPa.</summary>
    public double Megapascals => Si / 1e6;

    /// <summary>A stress of so many thousand pounds-force per square inch.</summary>
    public static Stress FromKipsPerSquareInch(double value) => new(value * 6894757.293168361);

    /// <summary>The value in ksi.</summary>
    public double KipsPerSquareInch => Si / 6894757.293168361;

    /// <inheritdoc />
    public int CompareTo(Stress other) => Si.CompareTo(other.Si);

    public static bool operator <(Stress left, Stress right) => left.Si < right.Si;

    public static bool operator >(Stress left, Stress right) => left.Si > right.Si;

    public static bool operator <=(Stress left, Stress right) => left.Si <= right.Si;

    public static bool operator >=(Stress left, Stress right) => left.Si >= right.Si;

    public static Stress operator *(Stress quantity, double factor) => new(quantity.Si * factor);

    public static Stress operator /(Stress quantity, double divisor) => new(quantity.Si / divisor);

    /// <summary>The ratio of two, without a unit.</summary>
    public static double operator /(Stress left, Stress right) => left.Si / right.Si;

    /// <summary>The force that this stress makes on an area.</summary>
    public static Force operator *(Stress stress, Area area) => Force.FromNewtons(stress.Si * area.Si);

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
