using Trundle.Engine.Findings;
using Trundle.Engine.Fixings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>Reads what a file tells of fixings beyond their count, torque and thread: engagement, seats, hub rings, and what was found on a wheel.</summary>
internal static class FixingsReader
{
    /// <summary>The words of a seat's state: true where it is worn.</summary>
    public static readonly (string, bool)[] SeatStates = [("sound", false), ("worn", true)];

    private static readonly (string, FixingKind)[] Kinds = [("nut", FixingKind.Nut), ("bolt", FixingKind.Bolt)];
    private static readonly (string, Side)[] Sides = [("left", Side.Left), ("right", Side.Right)];

    /// <summary>The further keys of an axle's fixings.</summary>
    public static FixingSet Further(FileObject o, FixingSet fixings)
    {
        var angle = o.Quantity<Angle>("seatAngle", "°", Angle.FromDegrees(20), Angle.FromDegrees(160));
        var ball = o.Quantity<Length>("ballRadius", "mm", Length.FromMillimetres(4), Length.FromMillimetres(60));
        if (angle is not null && fixings.Seat is not (null or SeatShape.Cone))
        {
            o.Wrong("seatAngle", "seat-angle-without-cone", "An angle belongs to a cone seat; 'seat' says another shape.");
        }

        if (ball is { } radius && fixings.Seat is not (null or SeatShape.Ball))
        {
            o.Wrong("ballRadius", "ball-radius-without-ball", "A ball radius belongs to a ball seat; 'seat' says another shape.");
        }
        else if (ball is { } small && fixings.Thread is { } thread && small <= SeatForm.LeastBall(thread))
        {
            o.Wrong("ballRadius", "out-of-range", $"A ball of {small.Text("mm", 1)} would fall through the seat of {thread.Text}: more than {SeatForm.LeastBall(thread).Text("mm", 1)} is expected.");
        }

        var (from, to) = (Distance("reTorqueFrom"), Distance("reTorqueTo"));
        if (from is null != to is null)
        {
            o.Wrong(from is null ? "reTorqueFrom" : "reTorqueTo", "missing", "A maker's distance to the re-torque has two ends: 'reTorqueFrom' and 'reTorqueTo'.");
        }
        else if (from > to)
        {
            o.Wrong("reTorqueFrom", "out-of-range", "'reTorqueFrom' lies beyond 'reTorqueTo'.");
        }

        return fixings with
        {
            ReTorque = from is { } least && to is { } most ? new ReTorque(least, most, Source.Entered("the vehicle maker's distance, as entered")) : null,
            LeftHandSide = o.Word("leftHandSide", Sides),
            Engagement = o.Reference("engagement", Engagement.Read),
            LeastEngagement = o.Reference("leastEngagement", Engagement.Read),
            SeatWorn = o.Word("seatState", SeatStates) ?? false,
            Form = angle is null && ball is null ? null : new SeatForm(angle, ball),
        };

        Length? Distance(string key) => o.Quantity<Length>(key, "km", Length.FromKilometres(0), Length.FromKilometres(2000));
    }

    /// <summary>Alike fixings that were found on a wheel.</summary>
    public static FoundFixings Found(FileObject o)
    {
        var found = new FoundFixings(o.Whole("count", 1, 20), o.Word("kind", Kinds), o.Word("seat", VisitFileReader.SeatWords), o.Reference("thread", ThreadDesignation.Read), o.Flag("leftHand"));
        o.Done();
        return found;
    }

    /// <summary>The ring in a wheel's bore.</summary>
    public static HubRing Ring(FileObject o)
    {
        var ring = new HubRing(o.Word("material", ("metal", HubRingMaterial.Metal), ("plastic", HubRingMaterial.Plastic)), Diameter("inner"), Diameter("outer"));
        if (ring is { Inner: { } inner, Outer: { } outer } && inner >= outer)
        {
            o.Wrong("inner", "ring-inside-out", $"The ring's inner diameter, {inner.Text("mm", 1)}, is not below its outer one, {outer.Text("mm", 1)}: put one of them right.");
        }

        o.Done();
        return ring;

        Length? Diameter(string key) => o.Quantity<Length>(key, "mm", Length.FromMillimetres(20), Length.FromMillimetres(400));
    }
}
