using Trundle.Engine.Sidewall;

namespace Trundle.Published.Tests;

/// <summary>
/// Invented numbers in the forms of 49 CFR 574.5 (FR 1998-10-19, FR 1999-07-08, 80 FR 19553: openings read; alphabet, effective dates and the
/// week rule from memory), and dates computed from the week rule.
/// </summary>
public sealed class TinTests
{
    private static readonly DateOnly Today = new(2026, 3, 14);

    [Theory]
    [InlineData("DOT 1AB CDEFHJ 2218", TinForm.ThirteenSymbols, "1AB", "CDEFHJ", 22, 2018)]
    [InlineData("DOT1ABCDEFHJ2218", TinForm.ThirteenSymbols, "1AB", "CDEFHJ", 22, 2018)]
    [InlineData("dot 1ab-cdefhj-2218", TinForm.ThirteenSymbols, "1AB", "CDEFHJ", 22, 2018)]
    [InlineData("DOT A1 B2 CDEF 0305", TinForm.FourDigitDate, "A1", "B2CDEF", 3, 2005)]
    [InlineData("DOT A1B2CDEF0305", TinForm.FourDigitDate, "A1", "B2CDEF", 3, 2005)]
    [InlineData("DOT A1 B2 0305", TinForm.FourDigitDate, "A1", "B2", 3, 2005)]
    [InlineData("A10305", TinForm.FourDigitDate, "A1", null, 3, 2005)]
    [InlineData("R 1AB 4019", TinForm.Retread, "1AB", null, 40, 2019)]
    [InlineData("DOT-R 1AB 4019", TinForm.Retread, "1AB", null, 40, 2019)]
    [InlineData("DOT R 1AB4019", TinForm.Retread, "1AB", null, 40, 2019)]
    [InlineData("1AB 4019", TinForm.Retread, "1AB", null, 40, 2019)]
    [InlineData("2218", TinForm.DateOnly, null, null, 22, 2018)]
    public void Dated_forms(string text, TinForm form, string? plant, string? behind, int week, int year)
    {
        var tin = TinReader.Read(text, Today).Value;
        tin.Form.ShouldBe(form);
        tin.Plant.ShouldBe(plant);
        tin.MakerCode.ShouldBe(behind);
        tin.Week.ShouldBe(week);
        tin.Year.ShouldBe(year);
        tin.AmbiguousDecade.ShouldBeFalse();
        tin.CandidateYears.ShouldBe([year]);
    }

    [Theory]
    [InlineData("DOT A1 B2 CDEF 238", 23, new[] { 1978, 1988, 1998 })]
    [InlineData("DOT A1B2CDEF238", 23, new[] { 1978, 1988, 1998 })]
    [InlineData("DOT A1 B2 011", 1, new[] { 1971, 1981, 1991 })]
    [InlineData("DOT A1 B2 100", 10, new[] { 1980, 1990, 2000 })]
    [InlineData("DOT A1 B2 400", 40, new[] { 1980, 1990 })]
    [InlineData("DOT A1 B2 CDEF 238 ◄", 23, new[] { 1978, 1988, 1998 })]
    [InlineData("238", 23, new[] { 1978, 1988, 1998 })]
    public void Three_digits_leave_the_decade_open(string text, int week, int[] years)
    {
        var tin = TinReader.Read(text, Today).Value;
        tin.Week.ShouldBe(week);
        tin.Year.ShouldBeNull();
        tin.AmbiguousDecade.ShouldBeTrue();
        tin.CandidateYears.ShouldBe(years);
        var age = tin.AgeOn(Today).ShouldNotBeNull();
        age.Years.ShouldBeNull();
        age.LeastYears.ShouldBeGreaterThan(25);
        age.MostYears.ShouldBeGreaterThan(age.LeastYears);
        tin.Cautions.ShouldContain(c => c.StartsWith("Over 25 years old by any reading", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("DOT 1AB CDEFHJ", "1AB", "CDEFHJ")]
    [InlineData("DOT 1ABCDEFHJ", "1AB", "CDEFHJ")]
    [InlineData("DOT A1 B2 CDEF", "A1", "B2CDEF")]
    [InlineData("DOT A1B2CDEF", "A1", "B2CDEF")]
    public void A_partial_number_has_no_date_and_asks_for_the_other_side(string text, string plant, string behind)
    {
        var tin = TinReader.Read(text, Today).Value;
        tin.Form.ShouldBe(TinForm.Partial);
        tin.Plant.ShouldBe(plant);
        tin.MakerCode.ShouldBe(behind);
        tin.Week.ShouldBeNull();
        tin.Year.ShouldBeNull();
        tin.AgeOn(Today).ShouldBeNull();
        tin.Cautions.ShouldContain(c => c.Contains("other side", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("DOT 1AB CDEFHJ 5418", "tin-week", "week 54")]
    [InlineData("DOT 1AB CDEFHJ 0018", "tin-week", "week 00")]
    [InlineData("DOT A1 B2 0352", "tin-date-future", "partial")]
    [InlineData("DOT A1B20352", "tin-date-future", "partial")]
    [InlineData("DOT 1AB CDEFHJ 1326", "tin-date-future", "after today")]
    [InlineData("DOT A1 B2 548", "tin-week", "week 54")]
    [InlineData("DOT 1AB CDEFHJ 22A8", "tin-date-missing", "22A8")]
    [InlineData("DOT 1AB CDEFHJK 22189", "tin-length", "15 symbols")]
    [InlineData("DOT 1A", "tin-length", "too short")]
    [InlineData("DOT O1 B2 CDEF 2218", "tin-symbol-unknown", "did you mean '0', as in DOT 01 B2 CDEF 2218")]
    [InlineData("DOT 1AB CDEFHJ 22I8", "tin-symbol-unknown", "did you mean '1'")]
    [InlineData("DOT 1AS CDEFHJ 2218", "tin-symbol-unknown", "did you mean '5'")]
    [InlineData("DOT 1AZ CDEFHJ 2218", "tin-symbol-unknown", "did you mean '2'")]
    [InlineData("DOT 1AQ CDEFHJ 2218", "tin-symbol-unknown", "did you mean '0'")]
    [InlineData("DOT 1AG CDEFHJ 2218", "tin-symbol-unknown", "did you mean '6'")]
    [InlineData("DOT 1A/ CDEFHJ 2218", "tin-symbol-unknown", "At character 7")]
    [InlineData("", "empty", "TIN")]
    public void What_cannot_be_read_says_why(string text, string code, string says)
    {
        var read = TinReader.Read(text, Today);
        read.IsRead.ShouldBeFalse();
        read.Problem!.Code.ShouldBe(code);
        read.Problem.Message.ShouldContain(says);
    }

    /// <summary>Week 12 of 2026 begins on 22 March, within a week's slack from the 15th on, and refused on the 14th.</summary>
    [Fact]
    public void A_date_in_the_future_has_a_week_of_slack()
    {
        Tin.StartOf(12, 2026).ShouldBe(new DateOnly(2026, 3, 22));
        TinReader.Read("1AB CDEFHJ 1226", new DateOnly(2026, 3, 15)).IsRead.ShouldBeTrue();
        TinReader.Read("1AB CDEFHJ 1226", new DateOnly(2026, 3, 14)).IsRead.ShouldBeFalse();
        TinReader.Read("1AB CDEFHJ 1226", new DateOnly(2026, 3, 15)).Value.AgeOn(new DateOnly(2026, 3, 15))!.Years.ShouldBe(0);
    }

    [Theory]
    [InlineData(1, 2018, 2018, 1, 7)]
    [InlineData(22, 2018, 2018, 6, 3)]
    [InlineData(35, 2024, 2024, 9, 1)]
    [InlineData(1, 2023, 2023, 1, 1)]
    public void Weeks_begin_on_sundays(int week, int year, int startYear, int month, int day)
    {
        Tin.StartOf(week, year).ShouldBe(new DateOnly(startYear, month, day));
        Tin.StartOf(week, year).DayOfWeek.ShouldBe(DayOfWeek.Sunday);
    }

    [Fact]
    public void Age_is_told_give_or_take_a_week()
    {
        var age = TinReader.Read("DOT 1AB CDEFHJ 2218", Today).Value.AgeOn(Today).ShouldNotBeNull();

        // 3 June 2018 to 14 March 2026 are 2841 days.
        age.Years.ShouldNotBeNull().ShouldBe(2841 / 365.25, 1e-9);
        age.LeastYears.ShouldBe(2834 / 365.25, 1e-9);
        age.MostYears.ShouldBe(2848 / 365.25, 1e-9);
    }

    /// <summary>The authority's count of three-symbol plant codes, 27 000 (second-hand), agrees with an alphabet of 30.</summary>
    [Fact]
    public void The_alphabet_has_thirty_symbols()
    {
        TinReader.Alphabet.Distinct().Count().ShouldBe(30);
        Math.Pow(TinReader.Alphabet.Length, 3).ShouldBe(27_000);
    }
}
