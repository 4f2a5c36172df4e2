using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance;

/// <summary>A strip bent round the rim against the sum of its own small pieces, each a point mass where it lies.</summary>
public class StripActsAsTests
{
    [Theory]
    [InlineData(30, 60, 200)]
    [InlineData(60, 180, 180)]
    [InlineData(120, 400, 150)]
    public void A_strip_acts_as_its_pieces_do_together(double grams, double length, double radius)
    {
        const int Pieces = 20_000;
        var sum = Enumerable.Range(0, Pieces).Aggregate(Complex.Zero, (s, i) => s + Complex.FromPolarCoordinates(grams / Pieces, (((i + 0.5) / Pieces) - 0.5) * length / radius));
        var strip = new FittedWeight(default, default, Mass.FromGrams(grams), default, [], Length.FromMillimetres(length));
        strip.ActsAs(Length.FromMillimetres(radius)).Grams.ShouldBe(sum.Magnitude, 1e-6 * grams);
        strip.ActsAs(Length.FromMillimetres(radius)).Grams.ShouldBeLessThan(grams);
        (strip with { Size = null }).ActsAs(Length.FromMillimetres(radius)).Grams.ShouldBe(grams);
    }
}
