namespace Trundle.Engine.Fixings;

/// <summary>
/// Exact search over the subsets of tightened fixings for the order whose partial sets never pull harder than one fixing and whose imbalances
/// add up to least. The imbalance depends on the subset and not on the way to it, so the least cost to go from each subset is enough.
/// </summary>
internal static class LeastSumOrder
{
    /// <summary>The order for an odd count; it begins with 1, since turning an order around the circle changes nothing.</summary>
    public static IReadOnlyList<int> Of(int count)
    {
        var imbalance = Imbalances(count);
        var toGo = CostsToGo(count, imbalance);
        var best = default(int[]);
        Follow(count, imbalance, toGo, 0, new int[count], 1, ref best);
        return best!;
    }

    /// <summary>The imbalance of each subset that holds fixing 1; bit i of the index stands for fixing i + 2.</summary>
    private static double[] Imbalances(int count)
    {
        var size = 1 << (count - 1);
        var (x, y, length) = (new double[size], new double[size], new double[size]);
        (x[0], length[0]) = (1, 1);
        for (var set = 1; set < size; set++)
        {
            var lowest = int.TrailingZeroCount(set);
            var rest = set & (set - 1);
            var (sin, cos) = Math.SinCos(2 * Math.PI * (lowest + 1) / count);
            (x[set], y[set]) = (x[rest] + cos, y[rest] + sin);
            length[set] = Math.Sqrt((x[set] * x[set]) + (y[set] * y[set]));
        }

        return length;
    }

    private static double[] CostsToGo(int count, double[] imbalance)
    {
        var full = imbalance.Length - 1;
        var toGo = new double[imbalance.Length];
        for (var set = full - 1; set >= 0; set--)
        {
            toGo[set] = double.PositiveInfinity;
            for (var i = 0; i < count - 1; i++)
            {
                var next = set | (1 << i);
                if (next != set && imbalance[next] <= 1 + TighteningSequence.Tolerance)
                {
                    toGo[set] = Math.Min(toGo[set], imbalance[next] + toGo[next]);
                }
            }
        }

        return toGo;
    }

    /// <summary>Walks every least-sum order, lowest numbers first, and keeps the one with the better moves.</summary>
    private static void Follow(int count, double[] imbalance, double[] toGo, int set, int[] order, int length, ref int[]? best)
    {
        order[0] = 1;
        if (length == count)
        {
            if (best is null || Moves(order).CompareTo(Moves(best)) > 0)
            {
                best = [.. order];
            }

            return;
        }

        for (var i = 0; i < count - 1; i++)
        {
            var next = set | (1 << i);
            if (next != set && imbalance[next] <= 1 + TighteningSequence.Tolerance && imbalance[next] + toGo[next] <= toGo[set] + TighteningSequence.Tolerance)
            {
                order[length] = i + 2;
                Follow(count, imbalance, toGo, next, order, length + 1, ref best);
            }
        }
    }

    private static (int Shortest, int Together) Moves(int[] order)
    {
        var moves = order.Zip(order.Skip(1), (a, b) => TighteningSequence.Move(a, b, order.Length)).ToList();
        return (moves.Min(), moves.Sum());
    }
}
