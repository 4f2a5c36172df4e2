using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Tests.Vehicles;

/// <summary>Stamps of wheels with millimetre rims.</summary>
public sealed class StampReaderTests
{
    [Theory]
    [InlineData("165 TR 390", 165, "TR", 390)]
    [InlineData("165TR390", 165, "TR", 390)]
    [InlineData("165 TD 390", 165, "TD", 390)]
    [InlineData("135 td 315", 135, "TD", 315)]
    [InlineData("160 x 390", 160, "", 390)]
    [InlineData("165 TRX 390", 165, "TR", 390)]
    public void Millimetre_rims_are_read_in_millimetres(string text, double width, string flange, double diameter)
    {
        var rim = StampReader.Rim(text).Value;
        rim.Width.Millimetres.ShouldBe(width, 1e-9);
        rim.Flange.ShouldBe(flange);
        rim.DiameterMillimetres.ShouldBe(diameter);
        rim.DiameterInches.ShouldBeNull();
    }

    [Theory]
    [InlineData("165 TR 390", "165 mm TR × 390 mm", "165 mm", "390 mm")]
    [InlineData("160 x 390", "160 mm × 390 mm", "160 mm", "390 mm")]
    [InlineData("6 1/2 J x 16", "6.5J × 16", "6.5 in", "16 in")]
    [InlineData("8.25x22.5", "8.25 × 22.5", "8.25 in", "22.5 in")]
    public void A_stamp_is_written_in_its_own_unit(string text, string written, string width, string diameter)
    {
        var rim = StampReader.Rim(text).Value;
        rim.Text.ShouldBe(written);
        rim.WidthText.ShouldBe(width);
        rim.DiameterText.ShouldBe(diameter);
    }

    [Theory]
    [InlineData("TR 390", "rim-width-missing")]
    [InlineData("TD 315", "rim-width-missing")]
    [InlineData("165 TR 391", "rim-unknown")]
    [InlineData("60 TR 390", "rim-unknown")]
    [InlineData("165 TR 39", "rim-unknown")]
    [InlineData("165 TX 390", "rim-flange-unknown")]
    [InlineData("165TX390", "rim-flange-unknown")]
    [InlineData("165 J x 390", "rim-flange-unknown")]
    public void What_is_no_whole_millimetre_stamp_says_what_is_missing(string text, string code) =>
        StampReader.Rim(text).Problem!.Code.ShouldBe(code);
}
