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

    /// <summary>Directions that add up to a vector and keep every piece on its arcs and clear of the others; null where none was found.</summary>
    public static double[]? CloseAmong(ChoicePlane plane, IReadOnlyList<PieceType> pieces, Complex sum)
    {
        var angles = new double[pieces.Count];
        var arcs = pieces.Select(plane.Allowed).ToArray();
        var step = pieces.Count switch { 2 => 1, 3 => 72, 4 => 36, 5 => 18, _ => 0 };
        return step > 0 && Place(plane, pieces, arcs, angles, 0, sum, step) ? angles : null;
    }

    private static bool Place(ChoicePlane plane, IReadOnlyList<PieceType> pieces, AllowedArcs[] arcs, double[] angles, int at, Complex left, int steps)
    {
        if (pieces.Count - at > 2)
        {
            for (var i = 0; i < steps; i++)
            {
                // From the wanted direction outwards, to both sides.
                angles[at] = left.Phase + ((i % 2 == 0 ? 1 : -1) * ((i + 1) / 2) * Math.Tau / steps);
                if (Fits(plane, pieces, arcs, angles, at)
                    && Place(plane, pieces, arcs, angles, at + 1, left - Complex.FromPolarCoordinates(pieces[at].MassGrams * plane.RadiusMillimetres, angles[at]), steps))
                {
                    return true;
                }
            }

            return false;
        }

        double[] arms = [pieces[at].MassGrams * plane.RadiusMillimetres, pieces[at + 1].MassGrams * plane.RadiusMillimetres];
        var closed = Close(arms, left);
        if (closed is null || (left - Complex.FromPolarCoordinates(arms[0], closed[0]) - Complex.FromPolarCoordinates(arms[1], closed[1])).Magnitude > 1e-7 * (arms[0] + arms[1]))
        {
            return false;
        }

        foreach (var mirrored in (ReadOnlySpan<bool>)[false, true])
        {
            for (var k = 0; k < 2; k++)
            {
                angles[at + k] = mirrored ? (2 * left.Phase) - closed[k] : closed[k];
            }

            if (Fits(plane, pieces, arcs, angles, at) && Fits(plane, pieces, arcs, angles, at + 1))
            {
                return true;
            }
        }

        return false;
    }

    private static bool Fits(ChoicePlane plane, IReadOnlyList<PieceType> pieces, AllowedArcs[] arcs, double[] angles, int at)
    {
        if (!arcs[at].Contains(angles[at]))
        {
            return false;
        }

        for (var i = 0; i < at; i++)
        {
            if (!plane.Clear(pieces[i], angles[i], pieces[at], angles[at]))
            {
                return false;
            }
        }

        return true;
    }
}
