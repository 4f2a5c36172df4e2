using System.Globalization;

namespace Trundle.Measures;

/// <summary>Mass times radius: the size of an unbalance, without its place. SI: kilogram metre.</summary>
public readonly record struct Unbalance : IQuantity<Unbalance>
{
    private Unbalance(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "an unbalance";

    /// <inheritdoc />
    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("g·mm", 1e-6, 0, "gmm"),
        new("g·cm", 1e-5, 0, "gcm"),
        new("kg·mm", 1e-3, 0, "kgmm"),
        new("oz·in", 0.000720077887375, 0, "ozin"),
    ];

    /// <inheritdoc />
    public double Si { get; }

    /// <inheritdoc />
    public static Unbalance FromSi(double value) => new(value);

    /// <summary>An unbalance of so many KilogramMetres.</summary>
    public static Unbalance FromKilogramMetres(double value) => new(value);

    /// <summary>The value in KilogramMetres.</summary>
    public double KilogramMetres => Si;

    /// <summary>An unbalance of so many GramMillimetres.</summary>
    public static Unbalance FromGramMillimetres(double value) => new(value * 1e-6);

    /// <summary>The value in g·mm.</summary>
    public double GramMillimetres => Si / 1e-6;

    /// <summary>An unbalance of so many OunceInches.</summary>
    public static Unbalance FromOunceInches(double value) => new(value * 0.000720077887375);

    /// <summary>The value in oz·in.</summary>
    public double OunceInches => Si / 0.000720077887375;

    /// <inheritdoc />
    public int CompareTo(Unbalance other) => Si.CompareTo(other.Si);

    public static bool operator <(Unbalance left, Unbalance right) => left.Si < right.Si;

    public static bool operator >(Unbalance left, Unbalance right) => left.Si > right.Si;

    public static bool operator <=(Unbalance left, Unbalance right) => left.Si <= right.Si;

    public static bool operator >=(Unbalance left, Unbalance right) => left.Si >= right.Si;

    public static Unbalance operator +(Unbalance left, Unbalance right) => new(left.Si + right.Si);

    public static Unbalance operator -(Unbalance left, Unbalance right) => new(left.Si - right.Si);

    public static Unbalance operator *(Unbalance quantity, double factor) => new(quantity.Si * factor);

    public static Unbalance operator *(double factor, Unbalance quantity) => new(quantity.Si * factor);

    public static Unbalance operator /(Unbalance quantity, double divisor) => new(quantity.Si / divisor);

    /// <summary>The ratio of two, without a unit.</summary>
    public static double operator /(Unbalance left, Unbalance right) => left.Si / right.Si;

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
