using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>Arms of fixed length that must add up to a vector.</summary>
internal static class Linkage
{
    /// <summary>Directions of arms that add up to a vector, or null where they cannot. Two arms open to the two sides of it.</summary>
    public static double[]? Close(ReadOnlySpan<double> arms, Complex sum)
    {
        var size = sum.Magnitude;
        var direction = size > 0 ? sum.Phase : 0;
        if (arms.Length == 0)
        {
            return size == 0 ? [] : null;
        }

        if (arms.Length == 1)
        {
            return [direction];
        }

        // The rest takes as much of the vector as leaves the first arm along it, as far as the rest can reach.
        var rest = arms[1..];
        var most = 0.0;
        var heaviest = 0.0;
        foreach (var arm in rest)
        {
            most += arm;
            heaviest = Math.Max(heaviest, arm);
        }

        var least = Math.Max(0, (2 * heaviest) - most);
        var low = Math.Max(least, Math.Abs(size - arms[0]));
        var high = Math.Min(most, size + arms[0]);
        if (low > high + (1e-9 * (most + arms[0])))
        {
            return null;
        }

        var other = Math.Min(low, Math.Max(high, least));
        var turn = size > 0 && arms[0] > 0 ? Math.Acos(Math.Clamp(((size * size) + (arms[0] * arms[0]) - (other * other)) / (2 * size * arms[0]), -1, 1)) : 0;
        var first = direction - turn;
        var tail = Close(rest, sum - Complex.FromPolarCoordinates(arms[0], first));
        return tail is null ? null : [first, .. tail];
    }
}
