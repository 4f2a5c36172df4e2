namespace Trundle.Measures.Tests;

/// <summary>What is refused, with which code, and that the message says what was read.</summary>
public sealed class RefusalTests
{
    [Theory]
    [InlineData("", "empty")]
    [InlineData("   ", "empty")]
    [InlineData("bar", "number-missing")]
    [InlineData("about 2 bar", "number-missing")]
    [InlineData("- bar", "number-missing")]
    [InlineData("NaN bar", "number-missing")]
    [InlineData("∞ bar", "number-missing")]
    [InlineData("2. bar", "number-unfinished")]
    [InlineData("2, bar", "number-unfinished")]
    [InlineData("1,234 kPa", "comma-ambiguous")]
    [InlineData("0,250 bar", "comma-ambiguous")]
    [InlineData("-1,234 kPa", "comma-ambiguous")]
    [InlineData("1,234.5 kPa", "thousands-mark")]
    [InlineData("1.234,5 kPa", "thousands-mark")]
    [InlineData("1,234,567 kPa", "thousands-mark")]
    [InlineData("1.234.567 kPa", "thousands-mark")]
    [InlineData("1 234 kPa", "thousands-mark")]
    [InlineData("1\u00a0234 kPa", "thousands-mark")]
    [InlineData("1\u202f234 kPa", "thousands-mark")]
    [InlineData("1'234 kPa", "thousands-mark")]
    [InlineData("1’234 kPa", "thousands-mark")]
    [InlineData("1_234 kPa", "thousands-mark")]
    [InlineData("2.3", "unit-missing")]
    [InlineData("2.3 bär", "unit-unknown")]
    [InlineData("2.3 mm", "unit-unknown")]
    [InlineData("2.3 bar bar", "unit-unknown")]
    [InlineData("2e2 kPa", "unit-unknown")]
    [InlineData("2..3 bar", "number-unfinished")]
    [InlineData("3/0 bar", "fraction-unreadable")]
    [InlineData("3/ bar", "fraction-unreadable")]
    [InlineData("99999999999999999999 kPa", "number-too-large")]
    public void Pressure_is_refused(string text, string code)
    {
        var read = Quantity.Read<GaugePressure>(text);
        read.IsRead.ShouldBeFalse(text);
        read.Problem!.Code.ShouldBe(code);
        read.Problem.Message.ShouldEndWith(".");
        if (text.Trim().Length > 0)
        {
            read.Problem.Message.ShouldContain("'");
        }
    }

    [Theory]
    [InlineData("-300 °C")]
    [InlineData("-1 K")]
    [InlineData("-460 °F")]
    public void No_temperature_is_below_absolute_zero(string text) => Quantity.Read<Temperature>(text).Problem!.Code.ShouldBe("below-absolute-zero");

    [Fact]
    public void A_message_suggests_both_readings_of_an_ambiguous_comma() =>
        Quantity.Read<GaugePressure>("1,234 kPa").Problem!.Message.ShouldContain("1.234 or 1234");

    [Theory]
    [InlineData("-1,234 kPa", "write -1.234 or -1234.")]
    [InlineData("0,125 bar", "write 0.125.")]
    [InlineData("-0,125 bar", "write -0.125.")]
    [InlineData(",125 bar", "write 0.125.")]
    [InlineData("00,125 bar", "write 0.125.")]
    public void What_a_message_says_to_write_is_what_was_meant(string text, string write)
    {
        var problem = Quantity.Read<GaugePressure>(text).Problem.ShouldNotBeNull();
        problem.Code.ShouldBe("comma-ambiguous");
        problem.Message.ShouldContain(write);
    }

    [Fact]
    public void A_message_quotes_each_unit_that_could_stand_there() =>
        Quantity.Read<Length>("3 furlongs").Problem!.Message.ShouldContain("use 'mm', 'in', 'cm', 'm', 'km', 'mi', 'ft', 'µm' or '32nds'.");

    [Theory]
    [InlineData("'a'", "a")]
    [InlineData("'a' or 'b'", "a", "b")]
    [InlineData("'round, both sides', 'kicked out' or 'not seated'", "round, both sides", "kicked out", "not seated")]
    public void Words_to_choose_from_stand_in_quotes(string told, params string[] words) => ChoiceText.Of(words).ShouldBe(told);

    [Fact]
    public void A_message_never_repeats_more_than_a_line_of_what_was_typed() =>
        Quantity.Read<GaugePressure>(new string('x', 100_000)).Problem!.Message.Length.ShouldBeLessThan(300);

    [Fact]
    public void A_unit_asked_for_by_the_code_that_is_none_throws() =>
        Should.Throw<ArgumentException>(() => Quantity.Of<Mass>(1, "stone"));

    [Theory]
    [InlineData("1e308 g")]
    [InlineData("1E+308 g")]
    [InlineData("-2.5e-3 kg")]
    public void A_power_of_ten_is_told_from_a_unit(string text)
    {
        var message = Quantity.Read<Mass>(text).Problem.ShouldNotBeNull().Message;
        message.ShouldStartWith($"'{text}' is written with a power of ten; write the number out");
        message.ShouldNotContain("not a unit");
    }
}
