namespace Trundle.Engine.Uniformity.Matching;

/// <summary>
/// Exact assignment of rows to columns, rows no more than columns; a cost of infinity forbids a pair. Each answer is checked against a
/// certificate of its own, so that 'proven' is found and never assumed.
/// </summary>
internal static class Assignment
{
    /// <summary>The most pairs that can be made of those allowed, by augmenting paths; the column of each row, or −1.</summary>
    public static (int Pairs, int[] ColumnOf) Greatest(double[,] costs, Func<double, bool> allowed)
    {
        var (rows, columns) = (costs.GetLength(0), costs.GetLength(1));
        var rowOf = new int[columns];
        Array.Fill(rowOf, -1);
        var pairs = 0;
        for (var row = 0; row < rows; row++)
        {
            pairs += Augment(row, new bool[columns]) ? 1 : 0;
        }

        var columnOf = new int[rows];
        Array.Fill(columnOf, -1);
        for (var column = 0; column < columns; column++)
        {
            if (rowOf[column] >= 0)
            {
                columnOf[rowOf[column]] = column;
            }
        }

        return (pairs, columnOf);

        bool Augment(int row, bool[] seen)
        {
            for (var column = 0; column < columns; column++)
            {
                if (!seen[column] && allowed(costs[row, column]))
                {
                    seen[column] = true;
                    if (rowOf[column] < 0 || Augment(rowOf[column], seen))
                    {
                        rowOf[column] = row;
                        return true;
                    }
                }
            }

            return false;
        }
    }

    /// <summary>The least worst cost of any complete assignment; infinite where there is none.</summary>
    public static double Bottleneck(double[,] costs)
    {
        double[] sorted = [.. costs.Cast<double>().Where(double.IsFinite).Distinct().Order()];
        var (low, high) = (0, sorted.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            var limit = sorted[middle];
            if (Greatest(costs, c => c <= limit).Pairs == costs.GetLength(0))
            {
                high = middle;
            }
            else
            {
                low = middle + 1;
            }
        }

        return low < sorted.Length ? sorted[low] : double.PositiveInfinity;
    }

    /// <summary>
    /// The complete assignment of least sum by shortest augmenting paths with prices (the Hungarian method); there must be one of finite cost.
    /// </summary>
    /// <returns>The column of each row, and whether the prices prove it: no pair costs less than its prices, and the prices add up to the sum.</returns>
    public static (int[] ColumnOf, bool Proven) LeastSum(double[,] costs)
    {
        var (rows, columns) = (costs.GetLength(0), costs.GetLength(1));
        double[] finite = [.. costs.Cast<double>().Where(double.IsFinite)];

        // Dearer than any complete assignment of finite costs, so that it is never taken where it need not be; in the costs' own size, so that
        // what counts as rounding in the proof is too.
        var forbidden = finite.Max() > 0 ? finite.Max() * (rows + 2) : 1;
        double Cost(int row, int column) => Math.Min(costs[row, column], forbidden);

        var rowPrice = new double[rows + 1];
        var columnPrice = new double[columns + 1];
        var rowOf = new int[columns + 1];
        for (var row = 1; row <= rows; row++)
        {
            rowOf[0] = row;
            var at = 0;
            var least = new double[columns + 1];
            Array.Fill(least, double.PositiveInfinity);
            var way = new int[columns + 1];
            var done = new bool[columns + 1];
            do
            {
                done[at] = true;
                var (from, delta, next) = (rowOf[at], double.PositiveInfinity, 0);
                for (var column = 1; column <= columns; column++)
                {
                    if (done[column])
                    {
                        continue;
                    }

                    var reduced = Cost(from - 1, column - 1) - rowPrice[from] - columnPrice[column];
                    if (reduced < least[column])
                    {
                        (least[column], way[column]) = (reduced, at);
                    }

                    if (least[column] < delta)
                    {
                        (delta, next) = (least[column], column);
                    }
                }

                for (var column = 0; column <= columns; column++)
                {
                    if (done[column])
                    {
                        rowPrice[rowOf[column]] += delta;
                        columnPrice[column] -= delta;
                    }
                    else
                    {
                        least[column] -= delta;
                    }
                }

                at = next;
            }
            while (rowOf[at] != 0);

            while (at != 0)
            {
                var before = way[at];
                rowOf[at] = rowOf[before];
                at = before;
            }
        }

        var columnOf = new int[rows];
        for (var column = 1; column <= columns; column++)
        {
            if (rowOf[column] > 0)
            {
                columnOf[rowOf[column] - 1] = column - 1;
            }
        }

        return (columnOf, PricesProve());

        bool PricesProve()
        {
            var slack = 1e-10 * forbidden;
            var taken = new HashSet<int>(columnOf);
            var sum = 0.0;
            for (var row = 0; row < rows; row++)
            {
                if (!double.IsFinite(costs[row, columnOf[row]]))
                {
                    return false;
                }

                sum += costs[row, columnOf[row]] - rowPrice[row + 1];
                for (var column = 0; column < columns; column++)
                {
                    if (Cost(row, column) - rowPrice[row + 1] - columnPrice[column + 1] < -slack)
                    {
                        return false;
                    }
                }
            }

            // A column that nobody takes may have no price, and none may be above nothing: then the prices bound every assignment from below.
            for (var column = 0; column < columns; column++)
            {
                sum -= columnPrice[column + 1];
                if (columnPrice[column + 1] > slack || (!taken.Contains(column) && columnPrice[column + 1] < -slack))
                {
                    return false;
                }
            }

            return Math.Abs(sum) <= slack * rows;
        }
    }
}
