using System.Numerics;
using Trundle.Measures;

namespace Trundle.Engine.Balance;

/// <summary>
/// An unbalance with its place around the wheel: mass times radius, towards an angle from the valve.
/// As an unbalance of the wheel it points at the heavy place; as a need it points at the place to add. The two are opposite.
/// </summary>
/// <remarks>The figure of signs is in docs/theory/signs-and-axes.md.</remarks>
public readonly record struct UnbalanceVector
{
    private readonly Complex _gramMillimetres;

    internal UnbalanceVector(Complex gramMillimetres) => _gramMillimetres = gramMillimetres;

    /// <summary>As a phasor in g·mm, the angle clockwise from the valve.</summary>
    internal Complex GramMillimetres => _gramMillimetres;

    /// <summary>Its size.</summary>
    public Unbalance Amount => Unbalance.FromGramMillimetres(_gramMillimetres.Magnitude);

    /// <summary>Where it points; the valve where the size is nothing.</summary>
    public WheelAngle Place => WheelAngle.FromRadians(_gramMillimetres.Phase);

    /// <summary>An unbalance of a size at a place.</summary>
    /// <source>ISO 21940-2 (from memory): unbalance vector</source>
    public static UnbalanceVector At(Unbalance amount, WheelAngle place) =>
        new(Phasor(amount.GramMillimetres, place));

    /// <summary>The unbalance of a mass at a radius and a place.</summary>
    /// <source>ISO 21940-2 (from memory): unbalance is mass times radius</source>
    public static UnbalanceVector OfMass(Mass mass, Length radius, WheelAngle place) =>
        new(Phasor(mass.Grams * radius.Millimetres, place));

    /// <summary>The mass that has this size at a radius.</summary>
    public Mass MassAt(Length radius) => Mass.FromGrams(_gramMillimetres.Magnitude / radius.Millimetres);

    /// <summary>The same size at the opposite place.</summary>
    public UnbalanceVector Opposite => new(-_gramMillimetres);

    /// <summary>
    /// The same vector from two places: what each has to carry. It takes more mass than one place would, the more so the further the two are apart.
    /// </summary>
    /// <param name="first">One place.</param>
    /// <param name="second">The other, less than half a turn clockwise or anticlockwise from it.</param>
    /// <returns>The two shares, or null where the vector does not point between the two, or they face each other.</returns>
    public (Unbalance First, Unbalance Second)? SplitBetween(WheelAngle first, WheelAngle second)
    {
        var between = (second - first).Radians;
        var along = (Place - first).Radians;
        var sine = Math.Sin(between);
        if (Math.Abs(sine) < 1e-12)
        {
            return null;
        }

        var (a, b) = (Amount * (Math.Sin(between - along) / sine), Amount * (Math.Sin(along) / sine));
        return a.Si >= 0 && b.Si >= 0 ? (a, b) : null;
    }

    public static UnbalanceVector operator +(UnbalanceVector left, UnbalanceVector right) => new(left._gramMillimetres + right._gramMillimetres);

    public static UnbalanceVector operator -(UnbalanceVector left, UnbalanceVector right) => new(left._gramMillimetres - right._gramMillimetres);

    public static UnbalanceVector operator *(UnbalanceVector vector, double factor) => new(vector._gramMillimetres * factor);

    public static UnbalanceVector operator /(UnbalanceVector vector, double divisor) => new(vector._gramMillimetres / divisor);

    /// <summary>For a person and for logs.</summary>
    public override string ToString() => $"{Amount} at {Place}";

    internal static Complex Phasor(double magnitude, WheelAngle place) => Complex.FromPolarCoordinates(magnitude, place.Radians);
}

/// <summary>A couple unbalance with its place: the unbalance in the outer of two planes times their distance, the inner one being opposite.</summary>
public readonly record struct CoupleVector
{
    private readonly Complex _gramSquareMillimetres;

    internal CoupleVector(Complex gramSquareMillimetres) => _gramSquareMillimetres = gramSquareMillimetres;

    internal Complex GramSquareMillimetres => _gramSquareMillimetres;

    /// <summary>Its size.</summary>
    public CoupleUnbalance Amount => CoupleUnbalance.FromGramSquareMillimetres(_gramSquareMillimetres.Magnitude);

    /// <summary>Where its outer half points; its inner half points opposite.</summary>
    public WheelAngle Place => WheelAngle.FromRadians(_gramSquareMillimetres.Phase);

    /// <summary>The unbalance in the outer of two planes so far apart that makes this couple; the inner plane holds the opposite.</summary>
    public UnbalanceVector InOuterPlane(Length apart) => new(_gramSquareMillimetres / apart.Millimetres);

    /// <summary>For a person and for logs.</summary>
    public override string ToString() => $"{Amount} at {Place}";
}
