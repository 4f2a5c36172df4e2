using System.Numerics;
using Trundle.Measures;

namespace Trundle.Engine.Uniformity;

/// <summary>
/// A first harmonic with its place: runout, force variation or unbalance, once a turn, towards its high point (an unbalance: its heavy place).
/// The amplitude is zero-to-peak unless its owner says peak-to-peak; the algebra is the same in either.
/// </summary>
/// <remarks>The figure of signs is in docs/theory/runout-and-matching.md.</remarks>
/// <typeparam name="T">The quantity that varies.</typeparam>
public readonly record struct HarmonicVector<T> where T : struct, IQuantity<T>
{
    private readonly Complex _si;

    internal HarmonicVector(Complex si) => _si = si;

    /// <summary>As a phasor in the quantity's SI unit, the angle clockwise from the valve.</summary>
    internal Complex Si => _si;

    /// <summary>Its size.</summary>
    public T Amount => T.FromSi(_si.Magnitude);

    /// <summary>Where it is high; the valve where the size is nothing.</summary>
    public WheelAngle HighPoint => WheelAngle.FromRadians(_si.Phase);

    /// <summary>A vector of a size at a place.</summary>
    /// <source>common practice: a sine around the wheel is a vector</source>
    public static HarmonicVector<T> At(T amount, WheelAngle highPoint) => new(Complex.FromPolarCoordinates(amount.Si, highPoint.Radians));

    /// <summary>The same vector on a part that was turned clockwise, seen from outside.</summary>
    public HarmonicVector<T> Turned(Angle turn) => new(_si * Complex.FromPolarCoordinates(1, turn.Radians));

    public static HarmonicVector<T> operator +(HarmonicVector<T> left, HarmonicVector<T> right) => new(left._si + right._si);

    public static HarmonicVector<T> operator -(HarmonicVector<T> left, HarmonicVector<T> right) => new(left._si - right._si);

    public static HarmonicVector<T> operator *(HarmonicVector<T> vector, double factor) => new(vector._si * factor);

    /// <summary>For a person and for logs.</summary>
    public override string ToString() => $"{Amount} at {HighPoint}";
}
