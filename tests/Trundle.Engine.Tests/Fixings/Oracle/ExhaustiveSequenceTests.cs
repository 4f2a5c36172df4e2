using Trundle.Engine.Fixings;

namespace Trundle.Engine.Tests.Fixings.Oracle;

/// <summary>Every permutation of 3 to 9 fixings is tried; a plain search over subsets goes on from there to 12.</summary>
public class ExhaustiveSequenceTests
{
    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    [InlineData(9)]
    public void No_order_has_a_smaller_greatest_imbalance_or_with_that_a_smaller_sum(int count)
    {
        var (tried, greatest, sum) = (0, double.MaxValue, double.MaxValue);
        foreach (var order in Permutations([.. Enumerable.Range(1, count)], 0))
        {
            tried++;
            var (g, s) = Imbalances(order);
            if (g < greatest - 1e-9 || (g < greatest + 1e-9 && s < sum))
            {
                (greatest, sum) = (g, s);
            }
        }

        tried.ShouldBe(Enumerable.Range(1, count).Aggregate(1, (a, b) => a * b));
        greatest.ShouldBe(1.0, 1e-9);
        var ours = Imbalances([.. TighteningSequence.For(count)]);
        ours.Greatest.ShouldBe(greatest, 1e-9);
        ours.Sum.ShouldBe(sum, 1e-9);
    }

    [Theory]
    [InlineData(4)]
    [InlineData(6)]
    [InlineData(8)]
    public void With_an_even_count_the_least_sum_orders_are_exactly_those_that_alternate_between_opposites(int count)
    {
        foreach (var order in Permutations([.. Enumerable.Range(1, count)], 0))
        {
            var (greatest, sum) = Imbalances(order);
            var least = greatest <= 1 + 1e-9 && sum <= (count / 2.0) + 1e-9;
            TighteningSequence.Judge(order).OppositesAlternate.ShouldBe(least, string.Join(' ', order));
        }
    }

    [Theory]
    [InlineData(10)]
    [InlineData(11)]
    [InlineData(12)]
    [InlineData(13)]
    public void Above_nine_a_search_over_the_subsets_finds_no_smaller_sum(int count)
    {
        // Forward over all subsets, by complex sums: nothing of the engine's backward search is used.
        var cost = new double[1 << count];
        Array.Fill(cost, double.MaxValue);
        cost[0] = 0;
        for (var set = 0; set < cost.Length; set++)
        {
            for (var i = 0; i < count && cost[set] < double.MaxValue; i++)
            {
                var next = set | (1 << i);
                if (next != set && Length(next, count) is var length and <= 1 + 1e-9)
                {
                    cost[next] = Math.Min(cost[next], cost[set] + length);
                }
            }
        }

        Imbalances([.. TighteningSequence.For(count)]).Sum.ShouldBe(cost[^1], 1e-9);
    }

    private static double Length(int set, int count) =>
        Enumerable.Range(0, count).Where(i => (set & (1 << i)) != 0).Aggregate(System.Numerics.Complex.Zero, (sum, i) => sum + System.Numerics.Complex.FromPolarCoordinates(1, 2 * Math.PI * i / count)).Magnitude;

    private static (double Greatest, double Sum) Imbalances(int[] order)
    {
        var (x, y, greatest, total) = (0.0, 0.0, 0.0, 0.0);
        foreach (var fixing in order)
        {
            var angle = 2 * Math.PI * fixing / order.Length;
            x += Math.Sin(angle);
            y += Math.Cos(angle);
            var length = Math.Sqrt((x * x) + (y * y));
            greatest = Math.Max(greatest, length);
            total += length;
        }

        return (greatest, total);
    }

    private static IEnumerable<int[]> Permutations(int[] items, int at)
    {
        if (at == items.Length)
        {
            yield return items;
            yield break;
        }

        for (var i = at; i < items.Length; i++)
        {
            (items[at], items[i]) = (items[i], items[at]);
            foreach (var p in Permutations(items, at + 1))
            {
                yield return p;
            }

            (items[at], items[i]) = (items[i], items[at]);
        }
    }
}
