using Trundle.Engine.Sidewall;

namespace Trundle.Published.Tests;

/// <summary>
/// Invented numbers in the forms of each era of 49 CFR 574.5 (FR 1998-10-19, FR 1999-07-08, 80 FR 19553: openings read; alphabet, effective dates and the
/// 1 before an older plant's code from memory), held against ranges as a recall names them.
/// </summary>
public sealed class TinRangeTests
{
    private static readonly DateOnly Today = new(2026, 3, 14);

    private static TinVerdict? Verdict(string tin, string plant, string code, string from, string to) => TinRange.Read(plant, code, from, to).Value.Verdict(tin, Today);

    [Theory]
    [InlineData("DOT 1AB CDEFHJ 2218", "1AB", "CD", "2018", "3018", TinMatch.Yes)]
    [InlineData("DOT1ABCDEFHJ2218", "1AB", "", "2218", "2218", TinMatch.Yes)]
    [InlineData("1AB CDEFHJ 2118", "1AB", "", "2218", "", TinMatch.No)]
    [InlineData("1AB CDEFHJ 2318", "1AB", "", "", "2218", TinMatch.No)]
    [InlineData("1AB CDEFHJ 5217", "1AB", "", "0118", "5218", TinMatch.No)]
    [InlineData("1AB CDEFHJ 0118", "1AB", "", "5217", "0218", TinMatch.Yes)]
    [InlineData("1AC CDEFHJ 2218", "1AB", "", "", "", TinMatch.No)]
    [InlineData("1AC CDEFHJ 2218", "1AB, 1AC", "", "", "", TinMatch.Yes)]
    [InlineData("1AB CDEFHJ 2218", "1AB", "C?EF", "", "", TinMatch.Yes)]
    [InlineData("1AB CDEFHJ 2218", "1AB", "C?FF", "", "", TinMatch.No)]
    [InlineData("DOT A1 B2 CDEF 0305", "A1", "B2", "0105", "1005", TinMatch.Yes)]
    [InlineData("DOT A1 B2 CDEF 0305", "A1", "B3", "0105", "1005", TinMatch.No)]
    [InlineData("DOT A1 CDEF 0305", "A1", "CDEFHJ", "", "", TinMatch.No)]
    [InlineData("R 1AB 4019", "1AB", "", "4019", "4019", TinMatch.Yes)]
    [InlineData("R 1AB 4019", "1AB", "CD", "", "", TinMatch.No)]
    public void A_whole_number_lies_in_a_range_or_not(string tin, string plant, string code, string from, string to, TinMatch match)
    {
        var verdict = Verdict(tin, plant, code, from, to).ShouldNotBeNull();
        verdict.Match.ShouldBe(match, string.Join("; ", verdict.Why));
        verdict.Why.ShouldBeEmpty();
    }

    [Theory]
    [InlineData("DOT A1 B2 CDEF 238", "A1", "01/1988", "53/1988", TinMatch.May, "1978, 1988, 1998")]
    [InlineData("DOT A1 B2 CDEF 238", "A1", "01/1989", "53/1989", TinMatch.No, "")]
    [InlineData("DOT A1 B2 CDEF 238", "A1", "", "53/1999", TinMatch.Yes, "")]
    [InlineData("DOT A1 B2 CDEF 238", "A1", "2225", "", TinMatch.No, "")]
    [InlineData("DOT A1 B2 100", "A1", "01/2000", "26/2000", TinMatch.May, "1980, 1990, 2000")]
    [InlineData("238", "A1", "20/1998", "30/1998", TinMatch.May, "only its date")]
    public void Three_digits_leave_the_decade_open(string tin, string plant, string from, string to, TinMatch match, string why)
    {
        var verdict = Verdict(tin, plant, "", from, to).ShouldNotBeNull();
        verdict.Match.ShouldBe(match);
        string.Join("; ", verdict.Why).ShouldContain(why);
    }

    [Theory]
    [InlineData("DOT 1AB CDEFHJ", "1AB", "CD", "1025", "2225", TinMatch.May, "without its date")]
    [InlineData("DOT 1AB CDEFHJ", "1AB", "CE", "1025", "2225", TinMatch.No, "")]
    [InlineData("DOT 1AB CDEFHJ", "1AC", "", "1025", "2225", TinMatch.No, "")]
    [InlineData("2225", "1AB", "CD", "1025", "2225", TinMatch.May, "only its date")]
    [InlineData("2325", "1AB", "CD", "1025", "2225", TinMatch.No, "")]
    [InlineData("AB CDEF 2225", "1AB", "", "1025", "2225", TinMatch.May, "from memory")]
    [InlineData("1AB CDEFHJ 2225", "AB", "", "1025", "2225", TinMatch.May, "from memory")]
    [InlineData("1AB CDEFHJ 222S", "1AB", "", "1025", "2225", TinMatch.May, "symbol that no TIN")]
    [InlineData("IAB CDEFHJ 2225", "1AB", "", "1025", "2225", TinMatch.May, "symbol that no TIN")]
    public void What_a_number_does_not_tell_leaves_it_open(string tin, string plant, string code, string from, string to, TinMatch match, string why)
    {
        var verdict = Verdict(tin, plant, code, from, to).ShouldNotBeNull();
        verdict.Match.ShouldBe(match);
        string.Join("; ", verdict.Why).ShouldContain(why);
    }

    /// <summary>Eleven glued symbols may end in three or in four digits of a date: the number is found by either.</summary>
    [Theory]
    [InlineData("A1B2CDE0308", "0408", "5209", TinMatch.No)]
    [InlineData("A1B2CDE0308", "0208", "0408", TinMatch.May)]
    [InlineData("A1B2CDE0308", "30/1988", "31/1988", TinMatch.May)]
    [InlineData("A1 B2CDE 0308", "30/1988", "31/1988", TinMatch.No)]
    [InlineData("A1 B2CDE 0308", "0308", "0308", TinMatch.Yes)]
    public void Glued_digits_are_read_in_every_way(string tin, string from, string to, TinMatch match) =>
        Verdict(tin, "A1", "", from, to).ShouldNotBeNull().Match.ShouldBe(match);

    /// <summary>Eight symbols may be a whole number of the older form or one without its date (summary of the proposal of 2014, read).</summary>
    [Fact]
    public void Eight_symbols_may_be_a_number_without_its_date()
    {
        var verdict = Verdict("A1 B2 0305", "A1", "", "0105", "1005").ShouldNotBeNull();
        verdict.Match.ShouldBe(TinMatch.May);
        verdict.Why.ShouldContain(w => w.Contains("one side bears", StringComparison.Ordinal));
        Verdict("A1 B2 0305", "A1", "", "0125", "1025").ShouldNotBeNull().Match.ShouldBe(TinMatch.May);
        Verdict("A1 B2 0305", "B1", "", "0105", "1005").ShouldNotBeNull().Match.ShouldBe(TinMatch.No);
    }

    [Theory]
    [InlineData("")]
    [InlineData("not on it")]
    [InlineData("1AB")]
    public void What_is_no_number_in_any_way_is_left_to_a_person(string tin) => Verdict(tin, "1AB", "", "", "").ShouldBeNull();

    [Theory]
    [InlineData("1ABC", "", "", "", "plant")]
    [InlineData("1O", "", "", "", "plant")]
    [InlineData("1AB", "CDEFHJK", "", "", "code")]
    [InlineData("1AB", "C-G", "", "", "code")]
    [InlineData("1AB", "", "238", "", "from")]
    [InlineData("1AB", "", "5425", "", "from")]
    [InlineData("1AB", "", "1025", "0925", "to")]
    [InlineData("1AB", "", "1025", "10/25", "to")]
    [InlineData("", "", "", "", "plant")]
    public void A_range_that_names_nothing_is_refused_at_its_place(string plant, string code, string from, string to, string where) =>
        TinRange.Read(plant, code, from, to).Problem.ShouldNotBeNull().Where.ShouldBe(where);

    /// <summary>The date code against the calendar: a range of whole weeks holds exactly the numbers whose week lies in it, over every year of four digits.</summary>
    [Fact]
    public void A_range_over_a_turn_of_the_year_goes_by_year_and_week()
    {
        var range = TinRange.Read("1AB", "", "5024", "0325").Value;
        var inside = Enumerable.Range(0, 27).SelectMany(y => Enumerable.Range(1, 53).Select(w => (w, y)))
            .Where(d => range.Verdict($"1AB CDEFHJ {d.w:D2}{d.y:D2}")!.Match == TinMatch.Yes).ToList();
        inside.ShouldBe([(50, 24), (51, 24), (52, 24), (53, 24), (1, 25), (2, 25), (3, 25)]);
    }
}
