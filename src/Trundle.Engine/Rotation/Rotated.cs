using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Rotation;

/// <summary>A vehicle after its assemblies have moved.</summary>
internal static class Rotated
{
    /// <summary>Moves the assemblies. What was measured stays with the tyre; inner and outer change places where a tyre comes to stand the other way round.</summary>
    public static FittedVehicle After(FittedVehicle vehicle, IReadOnlyList<RotationMove> moves)
    {
        var byFrom = moves.ToDictionary(m => m.From);
        return vehicle with
        {
            Fitted =
            [
                .. vehicle.Fitted
                    .Select(a => byFrom.TryGetValue(a.Position, out var move) ? Moved(a, move) : a)
                    .OrderBy(a => a.Position.IsSpare ? int.MaxValue : a.Position.Axle).ThenBy(a => a.Position.Side).ThenBy(a => a.Position.Dual),
            ],
        };
    }

    private static Assembly Moved(Assembly assembly, RotationMove move)
    {
        // A dual inner wheel stands with its outer face inwards; a remounted tyre stands the other way round on its wheel.
        var turned = ((move.From.Dual == DualPlace.Inner) != (move.To.Dual == DualPlace.Inner)) != move.Remount;
        var tyre = assembly.Tyre is null ? null : assembly.Tyre with
        {
            // What a tyre is mounted for counts with its wheel's outer face out, so only turning it on the wheel changes it.
            MountedFor = move.Remount && assembly.Tyre.MountedFor is { } side
                ? side == MountedFor.Left ? MountedFor.Right : MountedFor.Left
                : assembly.Tyre.MountedFor,
            OuterFaceOut = turned && assembly.Tyre.OuterFaceOut is { } face ? !face : assembly.Tyre.OuterFaceOut,
        };
        return assembly with
        {
            Position = move.To,
            Tyre = tyre,
            Tread = turned ? assembly.Tread?.Turned() : assembly.Tread,
        };
    }
}
