using System.Globalization;

namespace Trundle.Measures;

/// <summary>Unbalance times the distance of its two planes. SI: kilogram square metre.</summary>
public readonly record struct CoupleUnbalance : IQuantity<CoupleUnbalance>
{
    private CoupleUnbalance(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "a couple unbalance";

    /// <inheritdoc />
    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("g·mm²", 1e-9, 0, "gmm2"),
        new("kg·mm²", 1e-6, 0, "kgmm2"),
        new("oz·in²", 0.000720077887375 * 0.0254, 0, "ozin2"),
    ];

    /// <inheritdoc />
    public double Si { get; }

    /// <inheritdoc />
    public static CoupleUnbalance FromSi(double value) => new(value);

    /// <summary>A couple unbalance of so many KilogramSquareMetres.</summary>
    public static CoupleUnbalance FromKilogramSquareMetres(double value) => new(value);

    /// <summary>The value in KilogramSquareMetres.</summary>
    public double KilogramSquareMetres => Si;

    /// <summary>A couple unbalance of so many GramSquareMillimetres.</summary>
    public static CoupleUnbalance FromGramSquareMillimetres(double value) => new(value * 1e-9);

    /// <summary>The value in g·mm².</summary>
    public double GramSquareMillimetres => Si / 1e-9;

    /// <inheritdoc />
    public int CompareTo(CoupleUnbalance other) => Si.CompareTo(other.Si);

    public static bool operator <(CoupleUnbalance left, CoupleUnbalance right) => left.Si < right.Si;

    public static bool operator >(CoupleUnbalance left, CoupleUnbalance right) => left.Si > right.Si;

    public static bool operator <=(CoupleUnbalance left, CoupleUnbalance right) => left.Si <= right.Si;

    public static bool operator >=(CoupleUnbalance left, CoupleUnbalance right) => left.Si >= right.Si;

    public static CoupleUnbalance operator +(CoupleUnbalance left, CoupleUnbalance right) => new(left.Si + right.Si);

    public static CoupleUnbalance operator -(CoupleUnbalance left, CoupleUnbalance right) => new(left.Si - right.Si);

    public static CoupleUnbalance operator *(CoupleUnbalance quantity, double factor) => new(quantity.Si * factor);

    public static CoupleUnbalance operator *(double factor, CoupleUnbalance quantity) => new(quantity.Si * factor);

    public static CoupleUnbalance operator /(CoupleUnbalance quantity, double divisor) => new(quantity.Si / divisor);

    /// <summary>The ratio of two, without a unit.</summary>
    public static double operator /(CoupleUnbalance left, CoupleUnbalance right) => left.Si / right.Si;

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
