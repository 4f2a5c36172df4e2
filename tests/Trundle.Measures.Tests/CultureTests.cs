using System.Globalization;

namespace Trundle.Measures.Tests;

/// <summary>The machine's culture changes nothing, in reading or in writing.</summary>
public sealed class CultureTests
{
    [Theory]
    [InlineData("de-DE")]
    [InlineData("fr-FR")]
    [InlineData("tr-TR")]
    [InlineData("ar-SA")]
    [InlineData("sv-SE")]
    public void Reading_and_writing_are_the_same(string culture)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            Quantity.Read<GaugePressure>("2.2 bar").Value.Kilopascals.ShouldBe(220, 1e-9);
            Quantity.Read<GaugePressure>("2,2 bar").Value.Kilopascals.ShouldBe(220, 1e-9);
            Quantity.Read<GaugePressure>("1.234,5 kPa").Problem!.Code.ShouldBe("thousands-mark");
            Quantity.Read<Length>("15 INCHES").Value.Inches.ShouldBe(15, 1e-9);
            Quantity.Read<Speed>("40 MI/H").Value.MilesPerHour.ShouldBe(40, 1e-9);
            Quantity.Read<Temperature>("−5 °C").Value.DegreesCelsius.ShouldBe(-5, 1e-9);
            GaugePressure.FromKilopascals(227.53).Text("kPa", 1).ShouldBe("227.5 kPa");
            Length.FromMillimetres(-1.25).Text("mm", 1).ShouldBe("-1.3 mm");
            GaugePressure.FromKilopascals(227.5).ToString().ShouldBe("227.5 kPa");
            WheelAngle.FromDegrees(12.5).ToString().ShouldBe("13°");
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void A_number_is_never_written_as_minus_nothing() => Quantity.Number(-0.04, 1).ShouldBe("0.0");

    [Theory]
    [InlineData(0.5, 0, "1")]
    [InlineData(2.5, 0, "3")]
    [InlineData(-2.5, 0, "-3")]
    [InlineData(192.5, 0, "193")]
    public void Halves_are_written_away_from_zero(double value, int decimals, string text) => Quantity.Number(value, decimals).ShouldBe(text);
}
