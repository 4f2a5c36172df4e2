using Trundle.Engine.Balance;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// Single values of unbalance. J. Mancuso, The Manufacturer's World of Coupling Potential Unbalance (read; the scan's "8" for 0.8 is a slip).
/// ISO 1940-1, annex on allocation (from memory, not read). Balancing Weights: Radius Changes and Splitting, reliabilityweb.com (read; its own split
/// not seen, so that one is recomputed). S. S. Rao, Mechanical Vibrations, ch. 9 (from memory, and its sign in doubt: good for sizes only).
/// Angles: one sense throughout, so they carry over to ours as they stand.
/// </summary>
public class UnbalanceSourcesTests
{
    [Fact]
    public void Mancuso_fifty_pounds_a_thousandth_off()
    {
        UnbalanceVector.OfMass(Mass.FromPounds(50), Length.FromInches(0.001), default).Amount.OunceInches.ShouldBe(0.8, 1e-9);
        UnbalanceVector.OfMass(Mass.FromOunces(4), Length.FromInches(2), default).Amount.OunceInches.ShouldBe(8, 1e-9);
    }

    [Fact]
    public void Iso_1940_annex_from_memory()
    {
        var whole = PermissibleUnbalance.Of(BalanceGrade.Read("G 2.5").Value, Mass.FromKilograms(3600), RotationalSpeed.FromRevolutionsPerMinute(3000));
        whole.GramMillimetres.ShouldBe(28_700, 100);
        whole.GramMillimetres.ShouldBe(28_647.9, 0.05);
        var (a, b) = PermissibleUnbalance.Shares(whole, Length.FromMillimetres(1500), Length.FromMillimetres(900));
        a.GramMillimetres.ShouldBe(10_743.0, 0.05);
        b.GramMillimetres.ShouldBe(17_904.9, 0.05);
    }

    [Fact]
    public void A_share_is_never_under_thirty_per_cent()
    {
        var whole = Unbalance.FromGramMillimetres(1000);
        var (a, b) = PermissibleUnbalance.Shares(whole, Length.FromMillimetres(900), Length.FromMillimetres(100));
        a.GramMillimetres.ShouldBe(300, 1e-9);
        b.GramMillimetres.ShouldBe(700, 1e-9);
    }

    [Fact]
    public void Another_radius()
    {
        // 2.2 oz at 14 in; printed at 16 in: 1.925 oz.
        var vector = UnbalanceVector.OfMass(Mass.FromOunces(2.2), Length.FromInches(14), WheelAngle.FromDegrees(250));
        vector.MassAt(Length.FromInches(16)).Ounces.ShouldBe(1.925, 1e-9);
    }

    [Fact]
    public void Split_between_two_bolts()
    {
        // The same at 16 in, between bolts at 240° and 280°: recomputed 1.4974 oz and 0.5200 oz.
        var vector = UnbalanceVector.OfMass(Mass.FromOunces(2.2), Length.FromInches(14), WheelAngle.FromDegrees(250));
        var split = vector.SplitBetween(WheelAngle.FromDegrees(240), WheelAngle.FromDegrees(280)).ShouldNotBeNull();
        (split.First.OunceInches / 16).ShouldBe(1.4974, 0.00005);
        (split.Second.OunceInches / 16).ShouldBe(0.5200, 0.00005);
    }

    [Fact]
    public void Rao_two_planes_from_memory()
    {
        TrialRun[] runs =
        [
            new(null, [At(8.5, 60), At(6.5, 205)]),
            new(new PlaneMass(1, Mass.FromGrams(10), Angle.FromDegrees(270)), [At(6.0, 125), At(4.5, 230)]),
            new(new PlaneMass(2, Mass.FromGrams(12), Angle.FromDegrees(180)), [At(6.0, 35), At(10.5, 160)]),
        ];
        var solution = TrialBalance.WithPhase(runs, trialKeptOn: false);
        solution.Influence![0][0].MagnitudePerGram.ShouldBe(0.807112, 0.0000005);
        solution.Influence[0][0].Phase.Degrees.ShouldBe(287.6435, 0.00005);
        solution.Influence[1][0].MagnitudePerGram.ShouldBe(0.331313, 0.0000005);
        solution.Influence[0][1].MagnitudePerGram.ShouldBe(0.307912, 0.0000005);
        solution.Influence[1][1].MagnitudePerGram.ShouldBe(0.623498, 0.0000005);
        solution.Corrections[0].Mass.Grams.ShouldBe(10.0561, 0.00005);
        solution.Corrections[0].Angle.Degrees.ShouldBe(325.5548, 0.00005);
        solution.Corrections[1].Mass.Grams.ShouldBe(5.8774, 0.00005);
        solution.Corrections[1].Angle.Degrees.ShouldBe(68.2559, 0.00005);
    }

    private static VibrationReading At(double amplitude, double degrees) => new(amplitude, Angle.FromDegrees(degrees));
}
