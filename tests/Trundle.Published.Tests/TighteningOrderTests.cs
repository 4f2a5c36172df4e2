using Trundle.Engine.Fixings;

namespace Trundle.Published.Tests;

/// <summary>
/// Orders of tightening in print: TM 10-4320-344-24 para 2.23.1, the five-stud every-other-one order (read); ASME PCC-1 legacy cross pattern
/// for 4, 8, 12 and 16 (from memory).
/// </summary>
public class TighteningOrderTests
{
    [Theory]
    [InlineData("1 3 5 2 4")]
    [InlineData("1 3 2 4")]
    [InlineData("1 5 3 7 2 6 4 8")]
    [InlineData("1 7 4 10 2 8 5 11 3 9 6 12")]
    [InlineData("1 9 5 13 3 11 7 15 2 10 6 14 4 12 8 16")]
    public void Ours_is_the_printed_one(string printed)
    {
        var order = printed.Split(' ').Select(n => int.Parse(n, System.Globalization.CultureInfo.InvariantCulture)).ToList();
        TighteningSequence.For(order.Count).ShouldBe(order);
    }

    // ASME PCC-1 legacy, 20 and 24 (from memory): the same opposite pairs in another order of the pairs; as balanced as ours.
    [Theory]
    [InlineData("1 11 6 16 3 13 8 18 5 15 10 20 2 12 7 17 4 14 9 19")]
    [InlineData("1 13 7 19 4 16 10 22 2 14 8 20 5 17 11 23 3 15 9 21 6 18 12 24")]
    public void Other_orders_of_the_pairs_are_judged_as_good(string printed)
    {
        var judged = TighteningSequence.Judge([.. printed.Split(' ').Select(n => int.Parse(n, System.Globalization.CultureInfo.InvariantCulture))]);
        judged.OppositesAlternate.ShouldBeTrue();
        judged.Balanced.ShouldBeTrue();
        judged.SumOfImbalances.ShouldBe(printed.Split(' ').Length / 2.0, 1e-9);
    }
}
