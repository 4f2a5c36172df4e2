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
    public void Millimetre_rims_are_read_in_millimetres(string text, double width, string flange, double diameter)
    {
        var rim = StampReader.Rim(text).Value;
        rim.Width.Millimetres.ShouldBe(width, 1e-9);
        rim.Flange.ShouldBe(flange);
        rim.DiameterMillimetres.ShouldBe(diameter);
        rim.DiameterInches.ShouldBeNull();
    }

    [Theory]
    [InlineData("TR 390", "rim-width-missing")]
    [InlineData("TD 315", "rim-width-missing")]
    [InlineData("165 TR 391", "rim-unknown")]
    [InlineData("60 TR 390", "rim-unknown")]
    [InlineData("165 TR 39", "rim-unknown")]
    public void What_is_no_whole_millimetre_stamp_says_what_is_missing(string text, string code) =>
        StampReader.Rim(text).Problem!.Code.ShouldBe(code);
}
