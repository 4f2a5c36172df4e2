using Trundle.Engine.Fixings;

namespace Trundle.Engine.Tests.Fixings;

public class TighteningSequenceTests
{
    public static TheoryData<int> Counts => [.. Enumerable.Range(1, TighteningSequence.MostFixings)];

    [Theory]
    [MemberData(nameof(Counts))]
    public void It_is_a_permutation_that_begins_with_one_and_never_pulls_harder_than_one_fixing(int count)
    {
        var order = TighteningSequence.For(count);
        order.Order().ShouldBe(Enumerable.Range(1, count));
        order[0].ShouldBe(1);
        var judged = TighteningSequence.Judge(order);
        judged.GreatestImbalance.ShouldBe(1.0, 1e-9);
        judged.Balanced.ShouldBeTrue();
        judged.OppositesAlternate.ShouldBe(int.IsEvenInteger(count));
        TighteningSequence.For(count).ShouldBe(order);
    }

    [Theory]
    [InlineData(3, 1)]
    [InlineData(5, 2)]
    [InlineData(7, 2)]
    [InlineData(9, 3)]
    [InlineData(11, 3)]
    public void With_an_odd_count_moves_are_as_long_as_the_least_sum_allows(int count, int leastMove) =>
        TighteningSequence.Judge(TighteningSequence.For(count)).LeastMove.ShouldBe(leastMove);

    [Theory]
    [InlineData(new[] { 1, 2, 3, 4 }, 1.414)]
    [InlineData(new[] { 1, 2, 3, 4, 5 }, 1.618)]
    [InlineData(new[] { 1, 2, 3, 4, 5, 6 }, 2.000)]
    [InlineData(new[] { 1, 2, 3, 4, 5, 6, 7, 8 }, 2.613)]
    [InlineData(new[] { 1, 2, 3, 4, 5, 6, 7, 8, 9, 10 }, 3.236)]
    public void Going_round_in_order_pulls_the_wheel_to_one_side(int[] order, double greatest)
    {
        var judged = TighteningSequence.Judge(order);
        judged.GreatestImbalance.ShouldBe(greatest, 0.0005);
        judged.Balanced.ShouldBeFalse();
        judged.OppositesAlternate.ShouldBeFalse();
        judged.LeastMove.ShouldBe(1);
    }

    [Fact]
    public void An_order_that_is_no_permutation_is_a_broken_contract() =>
        Should.Throw<ArgumentException>(() => TighteningSequence.Judge([1, 2, 2]));
}
