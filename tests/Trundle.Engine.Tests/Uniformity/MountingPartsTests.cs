using Trundle.Engine.Uniformity;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Uniformity;

/// <summary>Tyre and wheel parted by turning the tyre between measurements.</summary>
public class MountingPartsTests
{
    private static HarmonicVector<Force> At(double newtons, double degrees) => HarmonicVector<Force>.At(Force.FromNewtons(newtons), WheelAngle.FromDegrees(degrees));

    private static Mounting<Force> Mounted(double turn, HarmonicVector<Force> assembly) => new(Angle.FromDegrees(turn), assembly);

    [Theory]
    [InlineData(180, 100.0, 346.8699)]
    [InlineData(120, 41.0628, 296.9357)]
    [InlineData(90, 20.0, 220.0)]
    public void The_worked_mountings_give_back_tyre_and_wheel(double turn, double newtons, double degrees)
    {
        var parted = MountingParts.Part([Mounted(0, At(100.0, 93.1301)), Mounted(turn, At(newtons, degrees))], null)
            .ShouldBeOfType<PartingOutcome<Force>.Parted>();
        Agree(parted.Tyre, 80, 130);
        Agree(parted.Wheel, 60, 40);
        parted.StandardError.ShouldBeNull();

        // The reference's error gain is of one measurement; both measurements err alike, which is √2 more.
        (parted.NoiseGain / Math.Sqrt(2)).ShouldBe(1 / (2 * Math.Sin(double.DegreesToRadians(turn / 2))), 1e-12);
    }

    [Theory]
    [InlineData(180, 0.5)]
    [InlineData(120, 0.577)]
    [InlineData(90, 0.707)]
    public void The_error_gain_of_a_turn(double turn, double gain) =>
        (MountingParts.Part([Mounted(0, At(100, 0)), Mounted(turn, At(10, 70))], null).ShouldBeOfType<PartingOutcome<Force>.Parted>().NoiseGain / Math.Sqrt(2)).ShouldBe(gain, 5e-4);

    [Fact]
    public void Any_turn_not_near_nothing_gives_the_parts_back()
    {
        var random = new Random(23);
        for (var round = 0; round < 500; round++)
        {
            var (tyre, wheel) = (At(random.NextDouble() * 100, random.NextDouble() * 360), At(random.NextDouble() * 100, random.NextDouble() * 360));
            double[] turns = [0, .. Enumerable.Range(0, random.Next(1, 5)).Select(_ => 30 + (random.NextDouble() * 300))];
            var parted = MountingParts.Part([.. turns.Select(t => Mounted(t, wheel + tyre.Turned(Angle.FromDegrees(t))))], null).ShouldBeOfType<PartingOutcome<Force>.Parted>();
            (parted.Tyre - tyre).Amount.Newtons.ShouldBeLessThan(1e-9);
            (parted.Wheel - wheel).Amount.Newtons.ShouldBeLessThan(1e-9);
            parted.Misfit.Newtons.ShouldBeLessThan(1e-9);
        }
    }

    [Fact]
    public void The_scatter_of_many_trials_is_what_the_noise_gain_and_the_standard_error_say()
    {
        var random = new Random(29);
        var (tyre, wheel) = (At(80, 130), At(60, 40));
        double[] turns = [0, 100, 200, 290];
        var (squares, told, gain) = (0.0, 0.0, 0.0);
        const int rounds = 4000;
        for (var round = 0; round < rounds; round++)
        {
            var parted = MountingParts.Part([.. turns.Select(t => Mounted(t, wheel + tyre.Turned(Angle.FromDegrees(t)) + At(2 * Normal(random), 0) + At(2 * Normal(random), 90)))], null)
                .ShouldBeOfType<PartingOutcome<Force>.Parted>();
            var off = parted.Tyre - tyre;
            squares += off.Amount.Newtons * off.Amount.Newtons / 2;
            told += parted.StandardError!.Value.Newtons * parted.StandardError.Value.Newtons;
            gain = parted.NoiseGain;
        }

        Math.Sqrt(squares / rounds).ShouldBe(2 * gain, 0.03 * 2 * gain);
        Math.Sqrt(told / rounds).ShouldBe(2 * gain, 0.03 * 2 * gain);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(360)]
    [InlineData(20)]
    [InlineData(345)]
    public void A_turn_too_small_is_refused(double turn) =>
        MountingParts.Part([Mounted(0, At(100, 0)), Mounted(turn, At(10, 70))], null).ShouldBeOfType<PartingOutcome<Force>.TurnTooSmall>().Least.Degrees.ShouldBe(30, 1e-9);

    [Fact]
    public void A_difference_below_the_gauges_repeatability_is_refused()
    {
        var outcome = MountingParts.Part([Mounted(0, At(100, 0)), Mounted(180, At(101, 0))], (Force?)Force.FromNewtons(3));
        outcome.ShouldBeOfType<PartingOutcome<Force>.WithinRepeatability>().Difference.Newtons.ShouldBe(1, 1e-9);
        outcome.Match(_ => "parted", _ => "small", _ => "within").ShouldBe("within");
    }

    [Fact]
    public void Conicity_keeps_its_direction_and_ply_steer_changes_it()
    {
        var parts = LateralForceParts.Of(Force.FromNewtons(85), Force.FromNewtons(-45));
        parts.Conicity.Newtons.ShouldBe(20, 1e-12);
        parts.PlySteer.Newtons.ShouldBe(65, 1e-12);
    }

    private static void Agree(HarmonicVector<Force> vector, double newtons, double degrees)
    {
        vector.Amount.Newtons.ShouldBe(newtons, 1e-4);
        vector.HighPoint.Degrees.ShouldBe(degrees, 1e-4);
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(2 * Math.PI * random.NextDouble());
}
