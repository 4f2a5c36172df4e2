using Trundle.Engine.Sidewall;

namespace Trundle.Engine.Tests.Sidewall;

/// <summary>What cannot be read says which part, at which character of what was typed.</summary>
public sealed class MarkingProblemTests
{
    [Theory]
    [InlineData("", "empty", "for example")]
    [InlineData("   ", "empty", "for example")]
    [InlineData("205/55R", "marking-unknown", "At character 8 of the marking, the rim diameter is missing")]
    [InlineData("  205/55R", "marking-unknown", "At character 10")]
    [InlineData("205/55", "marking-unknown", "At character 7")]
    [InlineData("205/", "marking-unknown", "the aspect ratio is missing")]
    [InlineData("205-55-16", "slash-expected", "At character 4 of the marking, '-' stands where '/' is expected between width and aspect ratio; write 205/55-16.")]
    [InlineData(" 205 - 55 R16 91V", "slash-expected", "At character 6 of the marking, '-' stands where '/' is expected between width and aspect ratio; write 205/55 R16.")]
    [InlineData("P205–55R16", "slash-expected", "At character 5")]
    [InlineData("205-55", "rim-diameter-out-of-range", "At character 5")]
    [InlineData("205", "marking-unknown", "after the width 205 comes nothing")]
    [InlineData("205/55X16", "marking-unknown", "comes 'X16' where the construction")]
    [InlineData("205/55R1 91V", "marking-unknown", "'1' is not a rim diameter")]
    [InlineData("205/55R161", "marking-unknown", "'161' is not a rim diameter")]
    [InlineData("tyre", "marking-unknown", "is not a section width")]
    [InlineData("DOT 1AB CDEFHJ 2218", "marking-is-tin", "tyre identification number")]
    [InlineData("999/55R16", "width-out-of-range", "At character 1 of the marking, the section width 999")]
    [InlineData("75/55R16", "width-out-of-range", "80 to 455")]
    [InlineData("205/15R16", "aspect-ratio-out-of-range", "At character 5")]
    [InlineData("205/56R16", "aspect-ratio-unknown", "At character 5 of the marking, the aspect ratio 56")]
    [InlineData("205/55R31", "rim-diameter-out-of-range", "At character 8")]
    [InlineData("3.50-7", "rim-diameter-out-of-range", "8 to 30")]
    [InlineData("15x10.50R15LT", "diameter-out-of-range", "18 to 60")]
    [InlineData("20x10.50R22LT", "diameter-not-above-rim", "not above the rim")]
    [InlineData("205/55R16 91", "speed-symbol-missing", "At character 13")]
    [InlineData("205/55R16 91X", "speed-symbol-missing", "'X' behind the load index 91")]
    [InlineData("205/55R16 280V", "load-index-out-of-range", "At character 11 of the marking, the load index 280")]
    [InlineData("205/55R16 V", "marking-word-unknown", "needs its load index")]
    [InlineData("205/55R16 91V SPECIAL", "marking-word-unknown", "At character 15 of the marking, 'SPECIAL'")]
    [InlineData("205/55R16 91VV", "marking-word-unknown", "At character 14")]
    [InlineData("205/55R16 (91V", "bracket-unpaired", "not closed")]
    [InlineData("205/55R16 91V)", "bracket-unpaired", "not opened")]
    [InlineData("LT235/85R16 LRI", "load-range-unknown", "'I' is not a load range")]
    [InlineData("LT235/85R16 LRE LRD", "load-range-twice", "contradicts")]
    [InlineData("7.50-16LT 99PR", "ply-rating-out-of-range", "2 to 40")]
    [InlineData("225/75R16C 121R 118S 116T", "service-description-thrice", "third")]
    [InlineData("1,055/55R16", "marking-unknown", "At character")]
    public void Problem_names_its_place(string marking, string code, string says)
    {
        var read = MarkingReader.Read(marking);
        read.IsRead.ShouldBeFalse(marking);
        read.Problem!.Code.ShouldBe(code, read.Problem.Message);
        read.Problem.Message.ShouldContain(says);
        read.Problem.Message.ShouldEndWith(".");
    }

    [Fact]
    public void A_marking_longer_than_any_is_refused_at_once() =>
        MarkingReader.Read("205/55R16 " + new string('9', 1_000_000)).Problem!.Code.ShouldBe("marking-too-long");
}
