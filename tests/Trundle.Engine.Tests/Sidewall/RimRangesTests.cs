using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;

namespace Trundle.Engine.Tests.Sidewall;

/// <summary>Rim width ranges are table data only.</summary>
public sealed class RimRangesTests
{
    [Theory]
    [InlineData("205/55 R16 91V", 5.5, 7.5, SourceStatus.FromMemory)]
    [InlineData("P205/55R16", 5.5, 7.5, SourceStatus.FromMemory)]
    [InlineData("205/55ZR16 91W", 5.5, 7.5, SourceStatus.FromMemory)]
    [InlineData("LT245/75R16E 120/116S", 6.5, 8.0, SourceStatus.Read)]
    public void A_listed_size_has_its_range_with_its_status(string marking, double least, double most, SourceStatus status)
    {
        var range = RimRanges.For(MarkingReader.Read(marking).Value.Size).ShouldNotBeNull();
        range.Least.Inches.ShouldBe(least, 1e-9);
        range.Most.Inches.ShouldBe(most, 1e-9);
        range.Source.Status.ShouldBe(status);
        range.Measuring.ShouldBeInRange(range.Least, range.Most);
    }

    [Theory]
    [InlineData("235/60R18 107V")]
    [InlineData("245/75R16")]
    [InlineData("7.00-15")]
    public void A_size_that_no_table_lists_has_none(string marking) => RimRanges.For(MarkingReader.Read(marking).Value.Size).ShouldBeNull();
}
