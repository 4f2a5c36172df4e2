using System.Globalization;

namespace Trundle.Measures;

/// <summary>How often something happens in a second: samples of a recording. SI: hertz. A speed of turning is a <see cref="RotationalSpeed"/>.</summary>
public readonly record struct Frequency : IQuantity<Frequency>
{
    private Frequency(double si) => Si = si;

    /// <inheritdoc />
    public static string Kind => "a frequency";

    /// <inheritdoc />
    public static IReadOnlyList<Unit> Units { get; } =
    [
        new("Hz", 1, 0, "hz", "1/s"),
        new("kHz", 1000, 0, "khz"),
    ];

    /// <inheritdoc />
    public double Si { get; }

    /// <inheritdoc />
    public static Frequency FromSi(double value) => new(value);

    /// <summary>A frequency of so many hertz.</summary>
    public static Frequency FromHertz(double value) => new(value);

    /// <summary>The value in Hz.</summary>
    public double Hertz => Si;

    /// <inheritdoc />
    public int CompareTo(Frequency other) => Si.CompareTo(other.Si);

    public static bool operator <(Frequency left, Frequency right) => left.Si < right.Si;

    public static bool operator >(Frequency left, Frequency right) => left.Si > right.Si;

    public static bool operator <=(Frequency left, Frequency right) => left.Si <= right.Si;

    public static bool operator >=(Frequency left, Frequency right) => left.Si >= right.Si;

    public static Frequency operator +(Frequency left, Frequency right) => new(left.Si + right.Si);

    public static Frequency operator -(Frequency left, Frequency right) => new(left.Si - right.Si);

    public static Frequency operator *(Frequency quantity, double factor) => new(quantity.Si * factor);

    public static Frequency operator *(double factor, Frequency quantity) => new(quantity.Si * factor);

    public static Frequency operator /(Frequency quantity, double divisor) => new(quantity.Si / divisor);

    /// <summary>The ratio of two, without a unit.</summary>
    public static double operator /(Frequency left, Frequency right) => left.Si / right.Si;

    /// <summary>For a person and for logs, in the first unit of the table.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{this.In(Units[0].Symbol):G6} {Units[0].Symbol}");
}
