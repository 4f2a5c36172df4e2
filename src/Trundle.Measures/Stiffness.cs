using System.Globalization;

namespace Trundle.Measures;

/// <summary>A linear stiffness: force for each length. SI: newton per metre.</summary>
public readonly record struct Stiffness : IQuantity<Stiffness>
{
    private Stiffness(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "a stiffness";

    /// <inheritdoc />
    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("N/mm", 1000, 0, "n/mm"),
        new("N/m", 1, 0, "n/m"),
        new("kN/m", 1000, 0, "kn/m"),
        new("lbf/in", 175.12683524647636, 0, "lbf/in", "lb/in"),
    ];

    /// <inheritdoc />
    public double Si { get; }

    /// <inheritdoc />
    public static Stiffness FromSi(double value) => new(value);

    /// <summary>A stiffness of so many newtons per millimetre.</summary>
    public static Stiffness FromNewtonsPerMillimetre(double value) => new(value * 1000);

    /// <summary>The value in N/mm.</summary>
    public double NewtonsPerMillimetre => Si / 1000;

    /// <inheritdoc />
    public int CompareTo(Stiffness other) => Si.CompareTo(other.Si);

    public static bool operator <(Stiffness left, Stiffness right) => left.Si < right.Si;

    public static bool operator >(Stiffness left, Stiffness right) => left.Si > right.Si;

    public static bool operator <=(Stiffness left, Stiffness right) => left.Si <= right.Si;

    public static bool operator >=(Stiffness left, Stiffness right) => left.Si >= right.Si;

    public static Stiffness operator +(Stiffness left, Stiffness right) => new(left.Si + right.Si);

    public static Stiffness operator -(Stiffness left, Stiffness right) => new(left.Si - right.Si);

    public static Stiffness operator *(Stiffness quantity, double factor) => new(quantity.Si * factor);

    public static Stiffness operator *(double factor, Stiffness quantity) => new(quantity.Si * factor);

    public static Stiffness operator /(Stiffness quantity, double divisor) => new(quantity.Si / divisor);

    /// <summary>The force that a deflection takes.</summary>
    public static Force operator *(Stiffness stiffness, Length deflection) => Force.FromNewtons(stiffness.Si * deflection.Metres);

    /// <summary>The ratio of two, without a unit.</summary>
    public static double operator /(Stiffness left, Stiffness right) => left.Si / right.Si;

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
