namespace Trundle.Measures;

/// <summary>
/// A place around a wheel: 0 at the valve, growing clockwise as seen from the outer face, 0 ≤ angle &lt; 360°.
/// A place is not a turn: two places differ by an <see cref="Angle"/>.
/// </summary>
/// <remarks>The figure is in docs/theory/signs-and-axes.md.</remarks>
public readonly record struct WheelAngle
{
    private WheelAngle(double degrees) => Degrees = degrees;

    /// <summary>Degrees from the valve, 0 ≤ value &lt; 360.</summary>
    public double Degrees { get; }

    /// <summary>Radians from the valve.</summary>
    public double Radians => double.DegreesToRadians(Degrees);

    /// <summary>The place so many degrees from the valve; any finite number is brought into one turn.</summary>
    public static WheelAngle FromDegrees(double degrees)
    {
        var turned = degrees % 360;
        if (turned < 0)
        {
            turned += 360;
        }

        // A tiny negative number plus 360 rounds to 360 itself, which is the valve.
        return new WheelAngle(turned >= 360 ? 0 : turned);
    }

    /// <summary>The place so many radians from the valve.</summary>
    public static WheelAngle FromRadians(double radians) => FromDegrees(double.RadiansToDegrees(radians));

    /// <summary>The place reached by a turn from here, clockwise seen from outside.</summary>
    public static WheelAngle operator +(WheelAngle place, Angle turn) => FromDegrees(place.Degrees + turn.Degrees);

    /// <summary>The turn from one place to another, in −180° &lt; turn ≤ 180°.</summary>
    public static Angle operator -(WheelAngle to, WheelAngle from)
    {
        var d = FromDegrees(to.Degrees - from.Degrees).Degrees;
        return Angle.FromDegrees(d > 180 ? d - 360 : d);
    }

    /// <summary>The place opposite.</summary>
    public WheelAngle Opposite => FromDegrees(Degrees + 180);

    /// <summary>For a person: whole degrees.</summary>
    public override string ToString() => Quantity.Number(Degrees < 359.5 ? Degrees : 0, 0) + "°";
}
