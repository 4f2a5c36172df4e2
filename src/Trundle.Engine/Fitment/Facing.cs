using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Fitment;

/// <summary>Which way a wheel turns, seen from its own outer face, and which side of a tyre is out.</summary>
public static class Facing
{
    /// <summary>
    /// The side whose turning sense holds at a position, seen from the wheel's own outer face: the position's own side, but the other side for
    /// an inner dual, which stands with its outer face turned in. So an assembly that moves from outer to inner on one side changes its sense.
    /// </summary>
    /// <source>calculated: front left, rear left, rear left outer and rear right inner turn one way about, the others the other way</source>
    public static Side TurningSide(Position position) =>
        position.Dual == DualPlace.Inner ? (position.Side == Side.Left ? Side.Right : Side.Left) : position.Side;

    /// <summary>True where a directional tyre, mounted for a side with its wheel's outer face out, turns its own way at a position.</summary>
    /// <source>calculated from the turning sense of the position; a directional tyre turns the way of its arrow (common practice)</source>
    public static bool TurnsItsWay(Position position, MountedFor mountedFor) =>
        position.IsSpare || TurningSide(position) == (mountedFor == MountedFor.Left ? Side.Left : Side.Right);

    /// <summary>True where the tyre has a direction, said so or by a word of its sidewall.</summary>
    /// <source>common practice: an arrow or ROTATION</source>
    public static bool IsDirectional(FittedTyre tyre)
    {
        ArgumentNullException.ThrowIfNull(tyre);
        return tyre.Directional || SidewallMarks.Has(tyre, "ROTATION");
    }

    /// <summary>True where the tyre has an outside, said so or by a word of its sidewall.</summary>
    /// <source>common practice: OUTSIDE or INSIDE (OUTER, INNER)</source>
    public static bool IsAsymmetric(FittedTyre tyre)
    {
        ArgumentNullException.ThrowIfNull(tyre);
        return tyre.Asymmetric || SidewallMarks.Has(tyre, "OUTSIDE") || SidewallMarks.Has(tyre, "INSIDE");
    }

    internal static void Check(CheckBook book, Assembly assembly)
    {
        if (assembly.Tyre is not { } tyre || assembly.Position.IsSpare)
        {
            return;
        }

        var at = assembly.Position.ToString();
        if (IsDirectional(tyre))
        {
            if (tyre.MountedFor is { } side)
            {
                Direction(book, assembly.Position, at, side);
            }
            else
            {
                book.Need(at, book.Vehicle.SingleTrack ? "whether the tyre's arrow points the way it turns: mounted for the side that it is entered on" : "the side that this directional tyre is mounted for", "its direction of turning is held against its place");
            }
        }

        if (IsAsymmetric(tyre))
        {
            if (tyre.OuterFaceOut is { } outside)
            {
                book.Judge("direction.outer-face", at, !outside, Amount.Word(outside ? "outside out" : "outside in"), new Limit(Amount.Word("outside out"), Source.Entered("the sidewall's word")));
            }
            else
            {
                book.Need(at, "whether the tyre's outside faces out", "an asymmetric tyre is fitted with its outside out");
            }
        }
    }

    private static void Direction(CheckBook book, Position position, string at, MountedFor mounted)
    {
        var measured = Amount.Word(mounted == MountedFor.Left ? "mounted for the left" : "mounted for the right");
        var asked = TurningSide(position) == Side.Left ? "mounted for the left" : "mounted for the right";
        if (book.Vehicle.SingleTrack)
        {
            // A motorcycle's wheel has no side of the vehicle to be mounted for: it turns the way of the arrow, or against it.
            (measured, asked) = (Amount.Word(TurnsItsWay(position, mounted) ? "turns the way of its arrow" : "turns against its arrow"), "turns the way of its arrow");
        }

        var limit = new Limit(Amount.Word(asked), Source.Entered("the sidewall's arrow"));
        if (position.Dual == DualPlace.Inner)
        {
            book.Judge("direction.inner-dual", at, !TurnsItsWay(position, mounted), measured, limit, null,
                "What a tyre is mounted for counts with its wheel's outer face out; an inner wheel stands with that face in.");
        }
        else
        {
            book.Judge("direction.rotation", at, !TurnsItsWay(position, mounted), measured, limit);
        }
    }
}
