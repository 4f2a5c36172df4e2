using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Fitment;

/// <summary>Places of an axle at which no wheel stands although others of that axle do, and what the one beside an empty place carries.</summary>
internal static class MissingWheels
{
    /// <summary>The rule that no place of an axle is empty.</summary>
    public const string Rule = "axle.wheel-missing";

    /// <summary>
    /// The empty places of an axle. None where one wheel alone was entered of the whole vehicle, which is a wheel looked at and no vehicle; nor where
    /// nothing of the axle was entered: then all of it is asked for.
    /// </summary>
    public static IReadOnlyList<Position> On(FittedVehicle subject, int axle)
    {
        var on = subject.OnAxle(axle);
        var places = Places(subject.Vehicle, axle).ToList();
        return on.Count == 0 || subject.Fitted.Count(a => !a.Position.IsSpare) < 2 || !on.All(a => places.Contains(a.Position))
            ? []
            : [.. places.Where(p => on.All(a => a.Position != p))];
    }

    /// <summary>True for one of a dual pair whose other place is empty: it carries what the pair carries.</summary>
    public static bool StandsAlone(FittedVehicle subject, Position position) =>
        position.Dual != DualPlace.Single && !position.IsSpare
        && On(subject, position.Axle).Contains(Position.On(position.Axle, position.Side, position.Dual == DualPlace.Inner ? DualPlace.Outer : DualPlace.Inner));

    public static void Check(CheckBook book, int axle)
    {
        var missing = On(book.Subject, axle);
        foreach (var place in missing)
        {
            book.Judge(Rule, place.ToString(), true, Amount.Word("no wheel entered"), null);
        }

        foreach (var place in Places(book.Vehicle, axle).Where(p => book.Subject.At(p) is null && !missing.Contains(p)))
        {
            book.Need(place.ToString(), "the assembly at this position", "every wheel of the vehicle is judged");
        }
    }

    /// <summary>Every place on an axle; a motorcycle's is written on the left or the right, whichever was entered.</summary>
    private static IEnumerable<Position> Places(Vehicle vehicle, int axle) => vehicle.SingleTrack || axle > vehicle.Axles.Count
        ? []
        : vehicle.Axles[axle - 1].Dual
            ? [Position.On(axle, Side.Left, DualPlace.Inner), Position.On(axle, Side.Left, DualPlace.Outer), Position.On(axle, Side.Right, DualPlace.Inner), Position.On(axle, Side.Right, DualPlace.Outer)]
            : [Position.On(axle, Side.Left), Position.On(axle, Side.Right)];
}
