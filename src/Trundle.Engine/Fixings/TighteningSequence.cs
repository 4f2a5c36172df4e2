namespace Trundle.Engine.Fixings;

/// <summary>What an order of tightening does to the wheel on its hub.</summary>
/// <param name="GreatestImbalance">The greatest imbalance on the way: length of the sum of unit vectors to the fixings tightened so far. 1.0 is the least possible, after the first.</param>
/// <param name="SumOfImbalances">The imbalances after every fixing, added.</param>
/// <param name="LeastMove">The shortest move from one fixing to the next, in places around the circle.</param>
/// <param name="OppositesAlternate">Every second move goes to the opposite fixing; false where the count is odd and there is no opposite.</param>
public sealed record SequenceJudgement(double GreatestImbalance, double SumOfImbalances, int LeastMove, bool OppositesAlternate)
{
    /// <summary>True where no partial set pulls harder to one side than a single fixing does.</summary>
    public bool Balanced => GreatestImbalance <= 1 + TighteningSequence.Tolerance;
}

/// <summary>The order in which the fixings of a wheel are tightened, so that it is drawn onto the hub evenly.</summary>
/// <remarks>Fixings are numbered from 1, clockwise as seen from outside. docs/theory/fixings.md shows the circle.</remarks>
public static class TighteningSequence
{
    /// <summary>The greatest count that is answered.</summary>
    public const int MostFixings = 20;

    internal const double Tolerance = 1e-9;

    /// <summary>
    /// The order with the least greatest imbalance (1.0, the first fixing's own), and among those the least sum of imbalances.
    /// </summary>
    /// <param name="count">How many fixings, 1 to 20.</param>
    /// <returns>
    /// A permutation of 1 to <paramref name="count"/> that begins with 1. Even count: the least-sum orders are exactly those that go to the opposite
    /// fixing at every second move; of these, each new pair is the one farthest from all pairs done, then farthest from the last, then lowest in
    /// number. Odd count: of the least-sum orders the one with the longest shortest move, then the longest moves together, then clockwise first.
    /// </returns>
    /// <source>rule of opposite nuts in turn: DVSA and industry, Careless Torque Costs Lives (2014); the exact order is computed</source>
    public static IReadOnlyList<int> For(int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 1);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(count, MostFixings);
        return count < 3 ? [.. Enumerable.Range(1, count)] : int.IsEvenInteger(count) ? ByPairs(count) : LeastSumOrder.Of(count);
    }

    /// <summary>Judges any order: the maker's or a learner's.</summary>
    /// <param name="order">A permutation of 1 to its own length; an order that is none throws, since the reader has refused it.</param>
    /// <source>common practice: the imbalance of a partial set is the sum of unit vectors to its fixings</source>
    public static SequenceJudgement Judge(IReadOnlyList<int> order)
    {
        ArgumentNullException.ThrowIfNull(order);
        var count = order.Count;
        if (count == 0 || !order.Order().SequenceEqual(Enumerable.Range(1, count)))
        {
            throw new ArgumentException("An order names every fixing once.", nameof(order));
        }

        var (x, y, greatest, sum) = (0.0, 0.0, 0.0, 0.0);
        var leastMove = count;
        var alternate = int.IsEvenInteger(count);
        for (var i = 0; i < count; i++)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * (order[i] - 1) / count);
            (x, y) = (x + cos, y + sin);
            var imbalance = Math.Sqrt((x * x) + (y * y));
            greatest = Math.Max(greatest, imbalance);
            sum += imbalance;
            if (i > 0)
            {
                var move = Move(order[i - 1], order[i], count);
                leastMove = Math.Min(leastMove, move);
                alternate &= int.IsEvenInteger(i) || 2 * move == count;
            }
        }

        return new SequenceJudgement(greatest, sum, count == 1 ? 0 : leastMove, alternate);
    }

    /// <summary>How many places lie between two fixings, the short way round.</summary>
    internal static int Move(int from, int to, int count)
    {
        var d = Math.Abs(to - from);
        return Math.Min(d, count - d);
    }

    private static List<int> ByPairs(int count)
    {
        var half = count / 2;
        var done = new List<int> { 0 };
        while (done.Count < half)
        {
            done.Add(Enumerable.Range(0, half).Except(done)
                .OrderByDescending(p => done.Min(q => Move(p, q, half)))
                .ThenByDescending(p => Move(p, done[^1], half))
                .ThenBy(p => p)
                .First());
        }

        return [.. done.SelectMany(p => new[] { p + 1, p + 1 + half })];
    }
}
