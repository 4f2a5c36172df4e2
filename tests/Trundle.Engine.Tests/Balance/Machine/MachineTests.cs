using MathNet.Numerics.Distributions;
using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Machine;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Machine;

/// <summary>
/// Numbers computed apart from this code (complex arithmetic, no source needed): mounting errors, index balancing, a simulated traverse test, the effect of
/// speed and of a measuring error; and properties.
/// </summary>
public class MachineTests
{
    [Fact]
    public void A_wheel_clamped_off_centre()
    {
        MountingError.OfEccentricity(Mass.FromKilograms(1), Length.FromMillimetres(0.001)).GramMillimetres.ShouldBe(1, 1e-12);
        var tenth = MountingError.OfEccentricity(Mass.FromKilograms(15), Length.FromMillimetres(0.1));
        tenth.GramMillimetres.ShouldBe(1500, 1e-9);
        (tenth.GramMillimetres / 202.8).ShouldBe(7.396, 0.0005);
        (tenth.GramMillimetres / 178).ShouldBe(8.427, 0.0005);
        var half = MountingError.OfEccentricity(Mass.FromKilograms(15), Length.FromMillimetres(0.05));
        half.GramMillimetres.ShouldBe(750, 1e-9);
        (half.GramMillimetres / 202.8).ShouldBe(3.698, 0.0005);
        (MountingError.OfEccentricity(Mass.FromKilograms(25), Length.FromMillimetres(0.1)).GramMillimetres / 202.8).ShouldBe(12.327, 0.0005);
        MountingError.EccentricityOf(Mass.FromKilograms(15), tenth).Millimetres.ShouldBe(0.1, 1e-12);
    }

    [Fact]
    public void A_wheel_clamped_askew()
    {
        var couple = MountingError.OfCock(MomentOfInertia.FromKilogramSquareMetres(0.4), Angle.FromDegrees(0.1));
        couple.GramSquareMillimetres.ShouldBe(698_132, 0.5);
        var perPlane = couple.GramSquareMillimetres / 180;
        perPlane.ShouldBe(3878.5, 0.05);
        (perPlane / 202.8).ShouldBe(19.12, 0.005);
        MountingError.OfCock(MomentOfInertia.FromKilogramSquareMetres(-0.4), Angle.FromDegrees(0.1)).ShouldBe(couple);
    }

    private static readonly UnbalanceVector Fixture = At(1500, 75);
    private static readonly UnbalanceVector Wheel = At(2200, 200);

    [Theory]
    [InlineData(0, 1817.7996, 157.4726)]
    [InlineData(180, 3297.8181, 41.8753)]
    [InlineData(90, 1297.5348, 331.5349)]
    [InlineData(270, 3535.0252, 95.9137)]
    [InlineData(120, 2073.8176, 0.9603)]
    public void The_wheel_turned_on_the_shaft(double turn, double amount, double degrees)
    {
        var seen = Fixture + Turned(Wheel, turn);
        seen.Amount.GramMillimetres.ShouldBe(amount, 0.00005);
        seen.Place.Degrees.ShouldBe(degrees, 0.00005);

        // And back: this spin and the plain one part the two.
        if (turn > 0)
        {
            Shows(Part((0, At(1817.7996, 157.4726)), (turn, At(amount, degrees))), 1500, 75, 2200, 200, 0.001);
        }
    }

    [Fact]
    public void Four_places_and_rounded_inputs()
    {
        var four = Part((0, At(1817.7996, 157.4726)), (90, At(1297.5348, 331.5349)), (180, At(3297.8181, 41.8753)), (270, At(3535.0252, 95.9137)));
        Shows(four, 1500, 75, 2200, 200, 0.001);
        four.Scatter!.Value.GramMillimetres.ShouldBeLessThan(0.01);
        Shows(Part((0, At(1818, 157)), (180, At(3298, 42))), 1509.48, 75.08, 2193.73, 199.94, 0.005);
        MountingError.EccentricityOf(Mass.FromKilograms(15), Fixture.Amount).Millimetres.ShouldBe(0.10, 1e-9);
    }

    [Fact]
    public void The_wheel_in_one_position_tells_nothing_of_the_fixture()
    {
        IndexTest.Part([default, default], [Fixture, Wheel]).ShouldBeNull();
        IndexTest.Part([default, Angle.FromDegrees(360), Angle.FromDegrees(0.5)], [Fixture, Wheel, Wheel]).ShouldBeNull();
        IndexTest.Part([default], [Fixture]).ShouldBeNull();
    }

    [Fact]
    public void Any_fixture_and_wheel_are_parted_and_the_scatter_is_found()
    {
        var random = new Random(41);
        var ratios = new List<double>();
        for (var i = 0; i < 400; i++)
        {
            var (fixture, wheel) = (At(3000 * random.NextDouble(), 360 * random.NextDouble()), At(3000 * random.NextDouble(), 360 * random.NextDouble()));
            var turns = Enumerable.Range(0, random.Next(2, 9)).Select(k => (k * 47.0) + random.Next(40)).ToList();
            Shows(Part([.. turns.Select(t => (t, fixture + Turned(wheel, t)))]), fixture, wheel, 1e-6);

            const double sigma = 40;
            var eight = Enumerable.Range(0, 8).Select(k => (k * 45.0, fixture + Turned(wheel, k * 45.0) + Scatter(random, sigma))).ToArray();
            var found = Part(eight);
            ratios.Add(Math.Pow(found.Scatter!.Value.GramMillimetres / sigma, 2));
            (found.Fixture - fixture).Amount.GramMillimetres.ShouldBeLessThan(6 * found.FixtureStandardError!.Value.GramMillimetres + sigma);
            found.FixtureStandardError.Value.GramMillimetres.ShouldBe(found.Scatter.Value.GramMillimetres / Math.Sqrt(8), 1e-6);
        }

        ratios.Average().ShouldBe(1, 0.05);
    }

    [Fact]
    public void Traverse_with_a_known_residual()
    {
        // In units of the minimum achievable residual unbalance: ten at twelve places over a residual of 0.7 at 35°.
        double[] expected = [10.581, 10.698, 10.639, 10.417, 10.085, 9.725, 9.435, 9.303, 9.370, 9.616, 9.963, 10.315];
        var shown = Enumerable.Range(0, 12).Select(k => (At(0.7, 35) + At(10, 30 * k)).Amount).ToList();
        for (var k = 0; k < 12; k++)
        {
            shown[k].GramMillimetres.ShouldBe(expected[k], 0.0005);
        }

        var result = TraverseTest.Judge(shown, Unbalance.FromGramMillimetres(1));
        result.Mean.GramMillimetres.ShouldBe(10.0123, 0.00005);
        result.GreatestRatio.ShouldBe(1.0684, 0.00005);
        result.LeastRatio.ShouldBe(0.9291, 0.00005);
        result.Passed.ShouldBeTrue();
        result.Residual.GramMillimetres.ShouldBe(0.7, 0.001);
        result.Scatter.GramMillimetres.ShouldBeLessThan(0.03);

        // The least value that would pass: its limit of 12 % is then the greatest ratio found.
        result.WouldPass.GramMillimetres.ShouldBe((1 - result.LeastRatio) / 0.12, 1e-9);
    }

    [Theory]
    [InlineData(11.19, true)]
    [InlineData(11.37, false)]
    public void One_reading_beyond_twelve_per_cent_of_the_mean_fails(double one, bool passed)
    {
        var shown = Enumerable.Range(0, 12).Select(k => Unbalance.FromGramMillimetres(k == 5 ? one : 10)).ToList();
        TraverseTest.Judge(shown, Unbalance.FromGramMillimetres(1)).Passed.ShouldBe(passed);
    }

    [Fact]
    public void Nothing_shown_passes_nothing() =>
        TraverseTest.Judge([.. Enumerable.Repeat(default(Unbalance), 12)], Unbalance.FromGramMillimetres(1)).Passed.ShouldBeFalse();

    [Fact]
    public void Reduction_by_a_shown_vector()
    {
        var left = ReductionRatio.Left(At(100, 0), At(97, 2)).Amount;
        left.GramMillimetres.ShouldBe(4.5627, 0.00005);
        ReductionRatio.Percent(Unbalance.FromGramMillimetres(100), left).ShouldBe(95.437, 0.0005);
        ReductionRatio.AngleAllowed(95).Degrees.ShouldBe(2.865, 0.0005);
    }

    [Fact]
    public void A_speed_wrong_by_one_per_cent() => ReductionRatio.AmountErrorPercent(1).ShouldBe(2.01, 1e-9);

    [Theory]
    [InlineData(4.4, Acceptance.Accept)]
    [InlineData(4.5, Acceptance.Accept)]
    [InlineData(4.6, Acceptance.Undecided)]
    [InlineData(5.5, Acceptance.Undecided)]
    [InlineData(5.6, Acceptance.Reject)]
    public void Acceptance_with_a_measuring_error(double measured, Acceptance expected) =>
        JudgedWithError.Of(Unbalance.FromGramMillimetres(1000 * measured), Unbalance.FromGramMillimetres(5000), Unbalance.FromGramMillimetres(500)).ShouldBe(expected);

    [Fact]
    public void The_interval_of_a_standard_deviation_is_that_of_the_chi_squared_distribution()
    {
        var random = new Random(42);
        foreach (var spins in new[] { 3, 4, 5, 8, 10, 20, 60 })
        {
            foreach (var confidence in new[] { 80.0, 95, 99 })
            {
                var result = RepeatStudy.Of([.. Enumerable.Range(0, spins).Select(_ => At(500, 30) + Scatter(random, 30))], confidence);
                var freedom = 2 * (spins - 1);
                var tail = (1 - (confidence / 100)) / 2;
                result.Freedom.ShouldBe(freedom);
                var s = result.StandardDeviation.GramMillimetres;
                result.Low.GramMillimetres.ShouldBe(s * Math.Sqrt(freedom / ChiSquared.InvCDF(freedom, 1 - tail)), 1e-6 * s);
                result.High.GramMillimetres.ShouldBe(s * Math.Sqrt(freedom / ChiSquared.InvCDF(freedom, tail)), 1e-6 * s);
            }
        }
    }

    [Fact]
    public void The_interval_holds_the_truth_as_often_as_it_says()
    {
        var random = new Random(43);
        const int studies = 4000;
        var held = 0;
        for (var i = 0; i < studies; i++)
        {
            var result = RepeatStudy.Of([.. Enumerable.Range(0, 5).Select(_ => At(500, 30) + Scatter(random, 30))], 95);
            held += result.Low.GramMillimetres <= 30 && result.High.GramMillimetres >= 30 ? 1 : 0;
        }

        // Three standard errors of a share of 95 %.
        ((double)held / studies).ShouldBe(0.95, 3 * Math.Sqrt(0.95 * 0.05 / studies));
    }

    private static IndexResult Part(params (double Turn, UnbalanceVector Seen)[] spins) =>
        IndexTest.Part([.. spins.Select(s => Angle.FromDegrees(s.Turn))], [.. spins.Select(s => s.Seen)]).ShouldNotBeNull();

    private static void Shows(IndexResult result, double fixture, double fixtureDegrees, double wheel, double wheelDegrees, double within)
    {
        result.Fixture.Amount.GramMillimetres.ShouldBe(fixture, within);
        result.Fixture.Place.Degrees.ShouldBe(fixtureDegrees, within);
        result.Wheel.Amount.GramMillimetres.ShouldBe(wheel, within);
        result.Wheel.Place.Degrees.ShouldBe(wheelDegrees, within);
    }

    private static void Shows(IndexResult result, UnbalanceVector fixture, UnbalanceVector wheel, double within)
    {
        (result.Fixture - fixture).Amount.GramMillimetres.ShouldBe(0, within);
        (result.Wheel - wheel).Amount.GramMillimetres.ShouldBe(0, within);
    }

    private static UnbalanceVector Scatter(Random random, double sigma)
    {
        var (size, turn) = (sigma * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())), 360 * random.NextDouble());
        return At(size, turn);
    }

    private static UnbalanceVector Turned(UnbalanceVector of, double degrees) => UnbalanceVector.At(of.Amount, of.Place + Angle.FromDegrees(degrees));

    private static UnbalanceVector At(double gramMillimetres, double degrees) =>
        UnbalanceVector.At(Unbalance.FromGramMillimetres(gramMillimetres), WheelAngle.FromDegrees(degrees));
}
