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

    [Fact]
    public void A_message_never_repeats_more_than_a_line_of_what_was_typed() =>
        Quantity.Read<GaugePressure>(new string('x', 100_000)).Problem!.Message.Length.ShouldBeLessThan(300);

    [Fact]
    public void A_unit_asked_for_by_the_code_that_is_none_throws() =>
        Should.Throw<ArgumentException>(() => Quantity.Of<Mass>(1, "stone"));
}
