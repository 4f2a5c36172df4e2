using Trundle.Engine.Practice;

namespace Trundle.Published.Tests;

/// <summary>
/// SciPy documentation, scipy.stats.pointbiserialr (read at docs.scipy.org, editions 0.13 to 1.18): a = [0, 0, 0, 1, 1, 1, 1] and b = 0 … 6 print 0.8660254037844386.
/// </summary>
public class PointBiserialTests
{
    [Fact]
    public void The_printed_example_comes_out_to_its_last_digit() =>
        ItemStatistics.PointBiserial([false, false, false, true, true, true, true], [0, 1, 2, 3, 4, 5, 6])!.Value.ShouldBe(0.8660254037844386, 2e-16);

    [Fact]
    public void It_is_minus_one_or_one_where_the_score_is_the_item_itself_and_nothing_where_it_cannot_be_told()
    {
        ItemStatistics.PointBiserial([true, false, true], [1, 0, 1])!.Value.ShouldBe(1, 1e-12);
        ItemStatistics.PointBiserial([true, false, true], [0, 1, 0])!.Value.ShouldBe(-1, 1e-12);
        ItemStatistics.PointBiserial([true, true], [0, 1]).ShouldBeNull();
        ItemStatistics.PointBiserial([true, false], [2, 2]).ShouldBeNull();
    }

    [Fact]
    public void A_class_of_ten_comes_out_as_reckoned_by_hand()
    {
        // Three items; a: met by the best seven; b: met by the first five; c: met by the last two. Totals 2 2 2 2 2 1 1 0 1 1.
        var attempts = Enumerable.Range(0, 10).Select(i => (IReadOnlyDictionary<string, bool>)new Dictionary<string, bool> { ["a"] = i < 7, ["b"] = i < 5, ["c"] = i > 7 }).ToList();
        var items = ItemStatistics.Of(attempts).ToDictionary(i => i.Key);
        items["a"].Difficulty.ShouldBe(0.7, 1e-12);
        items["c"].Difficulty.ShouldBe(0.2, 1e-12);

        // a against b + c: 1 1 1 1 1 0 0 | 0 1 1. Means 5/7 and 2/3; s = √(0.7·0.3); r = (5/7 − 2/3)/s·√(0.21) = 1/21.
        items["a"].PointBiserial!.Value.ShouldBe(1.0 / 21, 1e-12);

        // Upper three of the five that have 2: all met a, three of three. Lower three: the one with 0 (not a), two of the four with 1, of whom half met a: 1. (3 − 1)/3.
        items["a"].Discrimination!.Value.ShouldBe(2.0 / 3, 1e-12);
        ItemStatistics.Of([]).ShouldBeEmpty();
    }
}
