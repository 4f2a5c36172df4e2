using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Machine;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// H. P. Bloch, F. K. Geitner, Machinery Component Maintenance and Repair (authors from memory; pages read): p. 291 and table 6-3, unbalance reduction
/// ratio; pp. 296-298, the traverse test of ISO 2953 (now ISO 21940-21).
/// </summary>
public class BlochGeitnerTests
{
    [Theory]
    [InlineData(1, 1.7)]
    [InlineData(2, 3.5)]
    [InlineData(3, 5.2)]
    [InlineData(4, 7.0)]
    [InlineData(5, 8.7)]
    [InlineData(6, 10.5)]
    [InlineData(8, 14.0)]
    [InlineData(10, 17.4)]
    [InlineData(12, 20.9)]
    [InlineData(15, 26.1)]
    public void Table_6_3_what_an_error_of_angle_leaves(double degrees, double printed)
    {
        ReductionRatio.LeftByAnglePercent(Angle.FromDegrees(degrees)).ShouldBe(printed, 0.05);

        // By vectors: a correction of the right amount at the wrong place.
        var left = ReductionRatio.Left(At(100, 40), At(100, 40 + degrees)).Amount;
        left.GramMillimetres.ShouldBe(printed, 0.05);
        ReductionRatio.AngleAllowed(100 - left.GramMillimetres).Degrees.ShouldBe(degrees, 1e-9);
    }

    [Fact]
    public void Page_291_ninety_five_per_cent_leaves_five_of_a_hundred() =>
        ReductionRatio.Percent(Unbalance.FromOunceInches(100), Unbalance.FromOunceInches(5)).ShouldBe(95, 1e-9);

    [Fact]
    public void Pages_296_to_298_the_test_mass()
    {
        // 110 lb (50 000 g), 20 µin: 0.5 g·in a plane, test mass 5 g·in, at 4 in 1.25 g.
        var rotor = Mass.FromGrams(50_000);
        var e = Length.FromInches(20e-6);
        (MountingError.OfEccentricity(rotor, e).GramMillimetres / 25.4 / 2).ShouldBe(0.5, 1e-9);
        TraverseTest.TestMass(rotor, e, Length.FromInches(4)).Grams.ShouldBe(1.25, 1e-9);
        TraverseTest.TestMass(Mass.FromPounds(110), e, Length.FromInches(4)).Grams.ShouldBe(1.25, 0.005);
    }

    [Theory]
    [InlineData(8.81, 11.19, true)]
    [InlineData(8.79, 11.21, false)]
    public void Pages_296_to_298_within_8_8_and_11_2(double low, double high, bool passed)
    {
        // Readings in pairs about 10, so that the mean is 10.
        var shown = Enumerable.Range(0, 12).Select(k => Unbalance.FromGramMillimetres(k == 0 ? low : k == 1 ? high : 10)).ToList();
        TraverseTest.Judge(shown, Unbalance.FromGramMillimetres(1)).Passed.ShouldBe(passed);
    }

    private static UnbalanceVector At(double gramMillimetres, double degrees) =>
        UnbalanceVector.At(Unbalance.FromGramMillimetres(gramMillimetres), WheelAngle.FromDegrees(degrees));
}
