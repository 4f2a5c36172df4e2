using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>What is known of a seat's form beyond its shape. What is null is taken by estimate.</summary>
/// <param name="ConeAngle">Included angle of a cone.</param>
/// <param name="BallRadius">Radius of a ball.</param>
public sealed record SeatForm(Angle? ConeAngle, Length? BallRadius)
{
    /// <summary>The least ball radius that a thread's estimated seat can touch: a smaller ball would fall through.</summary>
    /// <source>the estimate of <see cref="SeatContact.Estimated"/></source>
    public static Length LeastBall(ThreadDesignation thread) => SeatContact.Estimated(thread, SeatShape.Flat).MeanRadius;
}

/// <summary>Where a fixing rubs on its seat while it is turned.</summary>
/// <param name="MeanRadius">The radius at which the whole friction may be thought to act.</param>
/// <param name="Wedge">How much the seat's shape multiplies its friction: 1 flat, 2 for a 60° cone.</param>
public sealed record SeatContact(Length MeanRadius, double Wedge)
{
    /// <summary>
    /// A seat as a ring under uniform pressure: r = ⅔·(R³ − r³)/(R² − r²). A cone presses its faces apart, so that the force normal to them is
    /// the clamp divided by the sine of the half angle; a ball does the same at the angle of its contact circle.
    /// </summary>
    /// <param name="shape">Cone, ball or flat.</param>
    /// <param name="inner">Inner radius of the ring.</param>
    /// <param name="outer">Outer radius of the ring, greater than the inner one.</param>
    /// <param name="ballRadius">Radius of the ball, greater than the ring's mean radius; only for a ball.</param>
    /// <param name="coneAngle">Included angle of the cone, above 0 and below 180°; 60° where null; only for a cone.</param>
    /// <source>uniform-pressure radius: Gong, Liu and Ding 2016, Advances in Mech. Eng. 8(9); wedge of cone and ball: derived as for a cone clutch (Shigley, from memory)</source>
    public static SeatContact Ring(SeatShape shape, Length inner, Length outer, Length ballRadius = default, Angle? coneAngle = null)
    {
        var (a, b) = (inner.Metres, outer.Metres);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(a, b, nameof(inner));
        var mean = 2.0 / 3.0 * ((b * b * b) - (a * a * a)) / ((b * b) - (a * a));
        var radius = Length.FromMetres(mean);
        return new SeatContact(radius, shape switch
        {
            SeatShape.Flat => 1,
            SeatShape.Cone => 1 / Math.Sin((coneAngle ?? Figures.Of("fixings.seat.cone-angle").As<Angle>()).Radians / 2),
            SeatShape.Ball => BallWedge(radius, ballRadius),
        });
    }

    /// <summary>A flat ring with the friction at its arithmetic mean radius (d_w + d_h)/4, as strength tables take it.</summary>
    /// <param name="outerDiameter">d_w, of the bearing face.</param>
    /// <param name="holeDiameter">d_h, of the hole.</param>
    /// <source>VDI 2230 (D_Km/2, from memory); MIL-HDBK-60 writes the same</source>
    public static SeatContact FlatAtMeanRadius(Length outerDiameter, Length holeDiameter) =>
        new((outerDiameter + holeDiameter) / 4, 1);

    /// <summary>The seat of a thread by estimate: its radii grow with the thread's diameter. Measured radii give a better answer by <see cref="Ring"/>.</summary>
    /// <param name="thread">The thread.</param>
    /// <param name="shape">Cone, ball or flat.</param>
    /// <param name="form">The cone's angle and the ball's radius where they are known.</param>
    /// <source>common practice: a line through the radii of M12 and M14 wheel seats</source>
    public static SeatContact Estimated(ThreadDesignation thread, SeatShape shape, SeatForm? form = null)
    {
        ArgumentNullException.ThrowIfNull(thread);
        var inner = (thread.Diameter / 2) + Figures.Of("fixings.seat.inner-clearance").As<Length>();
        var outer = (thread.Diameter * Figures.Of("fixings.seat.outer-factor").Value) + Figures.Of("fixings.seat.outer-addition").As<Length>();
        return Ring(shape, inner, outer, form?.BallRadius ?? (thread.Diameter * Figures.Of("fixings.seat.ball-factor").Value), form?.ConeAngle);
    }

    private static double BallWedge(Length contact, Length ball)
    {
        var ratio = contact / ball;
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(ratio, 1, nameof(ball));
        return 1 / Math.Sqrt(1 - (ratio * ratio));
    }
}
