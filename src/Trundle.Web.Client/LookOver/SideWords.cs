using Trundle.Engine.Vehicles;

namespace Trundle.Web.Client.LookOver;

/// <summary>
/// What the two sides of a tyre are called at a position. A motorcycle's wheel has no side towards the vehicle, and its arrow is right or wrong, not
/// right for a side.
/// </summary>
internal static class SideWords
{
    /// <summary>Which side of the tread is the inner one.</summary>
    public static string Inner(Vehicle vehicle, Position position) => !vehicle.SingleTrack
        ? "inner is the side towards the vehicle"
        : position.Side == Side.Left ? "inner is the right side, outer the left, as the rider sits" : "inner is the left side, outer the right, as the rider sits";

    /// <summary>What is asked of the arrow of a tyre with a direction.</summary>
    public static string ArrowLabel(Vehicle vehicle, string label) => vehicle.SingleTrack ? "The arrow points" : label;

    /// <summary>The answers, by the side for which the tyre is mounted.</summary>
    public static IReadOnlyList<(string Word, string Text)> ArrowChoices(Vehicle vehicle, Position position) => !vehicle.SingleTrack
        ? [("left", "the left side"), ("right", "the right side")]
        : position.Side == Side.Left ? [("left", "the way it turns"), ("right", "against it")] : [("right", "the way it turns"), ("left", "against it")];
}
