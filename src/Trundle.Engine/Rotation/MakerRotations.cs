using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Rotation;

/// <summary>The rotations that makers gave for this vehicle.</summary>
/// <param name="Patterns">The vehicle maker's own first, then the wheel maker's.</param>
/// <param name="VehicleMakerSaysNone">The vehicle's maker says that its wheels are not rotated.</param>
/// <param name="Cautions">What stands beside them.</param>
internal sealed record MakerRotations(IReadOnlyList<RotationPattern> Patterns, bool VehicleMakerSaysNone, IReadOnlyList<string> Cautions)
{
    /// <summary>The word for no rotation.</summary>
    public const string None = "none";

    /// <summary>Reads both; the problem of one that cannot be read is placed.</summary>
    public static Reading<MakerRotations> Of(FittedVehicle vehicle)
    {
        var patterns = new List<RotationPattern>();
        var cautions = new List<string>();
        if (vehicle.Vehicle.MakerRotation is { } text)
        {
            if (IsNone(text))
            {
                return Reading<MakerRotations>.Of(new MakerRotations([], true, cautions));
            }

            var read = RotationPattern.Read(text, "vehicle maker's own", Source.Entered("vehicle maker's own rotation, as entered"));
            if (!read.IsRead)
            {
                return Reading<MakerRotations>.Failed(read.Problem!.At("vehicle.makerRotation"));
            }

            patterns.Add(read.Value);
        }

        var given = vehicle.Fitted.Select(a => (a.Position, Text: a.Wheel?.MakerRotation)).Where(w => w.Text is not null).ToList();
        var first = default(RotationPattern);
        foreach (var (position, wheelText) in given)
        {
            if (IsNone(wheelText!))
            {
                cautions.Add($"The maker of the wheel at {position} says not to rotate it: ask before moving it.");
                continue;
            }

            var read = RotationPattern.Read(wheelText!, "wheel maker's own", Source.Entered("wheel maker's own rotation, as entered"));
            if (!read.IsRead)
            {
                var index = vehicle.Fitted.Select((a, i) => (a, i)).First(x => x.a.Position == position).i;
                return Reading<MakerRotations>.Failed(read.Problem!.At($"fitted[{index.ToString(System.Globalization.CultureInfo.InvariantCulture)}].wheel.makerRotation"));
            }

            if (first is null)
            {
                first = read.Value;
                patterns.Add(first);
            }
            else if (!first.Moves.Order(Compare).SequenceEqual(read.Value.Moves.Order(Compare)))
            {
                cautions.Add($"The wheels' makers give more than one rotation: the one at {given[0].Position} is considered, that at {position} says another. Ask.");
            }
        }

        return Reading<MakerRotations>.Of(new MakerRotations(patterns, false, cautions));
    }

    private static bool IsNone(string text) => string.Equals(text.Trim(), None, StringComparison.OrdinalIgnoreCase);

    private static readonly Comparer<PatternMove> Compare = Comparer<PatternMove>.Create((a, b) => string.CompareOrdinal(a.From.ToString(), b.From.ToString()));
}
