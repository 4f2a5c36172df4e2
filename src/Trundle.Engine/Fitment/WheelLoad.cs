using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Fitment;

/// <summary>What one wheel carries, and how that is known.</summary>
/// <param name="Load">The load.</param>
/// <param name="Source">Weighed at the wheel, or a part of its axle's load.</param>
internal sealed record WheelLoad(Mass Load, Source Source)
{
    /// <summary>
    /// The load at a position: its own where it was weighed there; else an equal part of its axle's, and not less than what the weighed wheels of that axle leave
    /// for each of the others. Null where neither is known.
    /// </summary>
    public static WheelLoad? On(FittedVehicle subject, Position position)
    {
        if (subject.At(position)?.Load is { } own)
        {
            return new WheelLoad(own, Source.Entered("the load on this wheel, as weighed"));
        }

        if (subject.Vehicle.AxleAt(position)?.Load is not { } onAxle)
        {
            return null;
        }

        var wheels = Drivetrain.WheelsOn(subject.Vehicle, position.Axle);
        var alone = MissingWheels.StandsAlone(subject, position);
        var equal = Share(subject, position, onAxle);
        var standing = wheels - MissingWheels.On(subject, position.Axle).Count;
        var weighed = subject.OnAxle(position.Axle).Select(a => a.Load).OfType<Mass>().ToList();
        var left = weighed.Count > 0 && weighed.Count < standing ? (onAxle - weighed.Aggregate((a, b) => a + b)) / (standing - weighed.Count) : equal;
        return left > equal
            ? new WheelLoad(left, Source.Entered("the axle load, as entered, less what was weighed at its other wheels"))
            : new WheelLoad(equal, Source.Entered(alone ? string.Create(CultureInfo.InvariantCulture, $"the axle load, as entered, shared by {wheels}; the other wheel of this pair is missing, and this one carries for both")
                : wheels == 1 ? "the axle load, as entered" : string.Create(CultureInfo.InvariantCulture, $"the axle load, as entered, shared by {wheels}")));
    }

    /// <summary>An equal part of an axle's load; of both wheels of a dual pair where the other one is missing.</summary>
    public static Mass Share(FittedVehicle subject, Position position, Mass onAxle) =>
        onAxle / Drivetrain.WheelsOn(subject.Vehicle, position.Axle) * (MissingWheels.StandsAlone(subject, position) ? 2 : 1);

    /// <summary>The load at every place of the vehicle's axles where one is known.</summary>
    public static IReadOnlyList<Mass> Everywhere(FittedVehicle subject) =>
    [
        .. subject.Fitted.Where(a => !a.Position.IsSpare).Select(a => a.Load).OfType<Mass>(),
        .. subject.Vehicle.Axles.Select((axle, i) => axle.Load is { } load && subject.OnAxle(i + 1).Count(a => a.Load is not null) < Drivetrain.WheelsOn(subject.Vehicle, i + 1)
            ? subject.OnAxle(i + 1).Select(a => Share(subject, a.Position, load)).Append(load / Drivetrain.WheelsOn(subject.Vehicle, i + 1)).Max()
            : (Mass?)null).OfType<Mass>(),
    ];
}
