using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Spin;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Spin;

/// <summary>
/// Whether the planes' standard errors are true: an invented machine, white noise, a known unbalance, many spins. A component lies within one standard error in
/// 68.3 of a hundred (the normal law's own figure); a few more do, since a reading's error is the greater of those along and across it.
/// </summary>
public class PlaneErrorsTests
{
    private const double PerTurn = 333.3;
    private const double Noise = 0.5;

    // What one g·mm in each plane gives at each transducer, as a leading phasor of a wheel that turns clockwise.
    private static readonly Complex[][] Machine =
    [
        [Complex.FromPolarCoordinates(3e-4, 0.4), Complex.FromPolarCoordinates(1e-4, 2.9)], [Complex.FromPolarCoordinates(1.2e-4, 0.7), Complex.FromPolarCoordinates(3.4e-4, -0.6)],
    ];

    private static readonly SpinSense Sense = new(RotationSense.Clockwise, PhaseSense.Lead);

    private static readonly PlanePair Planes = new(
        new PlanePlace(Length.FromMillimetres(200), Length.FromMillimetres(0)), new PlanePlace(Length.FromMillimetres(200), Length.FromMillimetres(150)));

    private static readonly UnbalancePair Truth = new(At(9000, 70), At(6000, 215));

    [Fact]
    public void A_machine_known_exactly_tells_errors_that_cover()
    {
        var random = new Random(11);
        var speed = Speed();
        List<UnbalanceInfluence> Column(int k) => [.. Machine[k].Select(c => new UnbalanceInfluence(c.Magnitude, Angle.FromRadians(c.Phase)) { StandardErrorPerGramMillimetre = 0 })];
        var calibration = SpinCalibration.Of([new CalibratedSpeed(speed, Column(0), Column(1))], Planes, Sense);
        Covered(300, () => calibration, random).ShouldBeInRange(0.64, 0.78);
    }

    [Theory]
    [InlineData(3)]
    [InlineData(6)]
    public void A_machine_calibrated_with_noisy_spins_tells_errors_that_cover(int spins)
    {
        // With spare spins what they leave counts beside the reading's own error, which is the same noise once more: then the errors are a little too great, never too small.
        var random = new Random(12);
        Covered(250, () => Calibrated(spins, random, true), random).ShouldBeInRange(0.64, spins == 3 ? 0.78 : 0.86);
    }

    [Fact]
    public void Errors_that_leave_out_the_calibrations_own_do_not_cover_and_say_so()
    {
        var random = new Random(13);
        Covered(250, () => Calibrated(3, random, false), random).ShouldBeLessThan(0.6);
        Calibrated(3, random, false).Find(Spin(Truth, random), Sense, null)!.HoldsCalibrationError.ShouldBeFalse();
        Calibrated(3, random, true).Find(Spin(Truth, random), Sense, null)!.HoldsCalibrationError.ShouldBeTrue();
    }

    [Fact]
    public void Typed_readings_tell_the_coefficients_errors_only_with_a_spare_spin()
    {
        var random = new Random(14);
        Calibrated(3, random, false).At(Speed()).Inner[0].StandardErrorPerGramMillimetre.ShouldBeNull();
        Calibrated(6, random, false).At(Speed()).Inner[0].StandardErrorPerGramMillimetre.ShouldNotBeNull().ShouldBeGreaterThan(0);
    }

    private static double Covered(int trials, Func<SpinCalibration> machine, Random random)
    {
        var within = 0;
        for (var i = 0; i < trials; i++)
        {
            var found = machine().Find(Spin(Truth, random), Sense, null).ShouldNotBeNull();
            var off = found.Unbalance - Truth;
            foreach (var (vector, error) in new[] { (off.Inner, found.InnerStandardError), (off.Outer, found.OuterStandardError) })
            {
                var (along, across) = (vector.Amount.GramMillimetres * Math.Cos(vector.Place.Radians), vector.Amount.GramMillimetres * Math.Sin(vector.Place.Radians));
                within += (Math.Abs(along) <= error.GramMillimetres ? 1 : 0) + (Math.Abs(across) <= error.GramMillimetres ? 1 : 0);
            }
        }

        return within / (4.0 * trials);
    }

    private static SpinCalibration Calibrated(int count, Random random, bool told)
    {
        UnbalancePair[] added = [default, new(At(10_000, 0), default), new(default, At(10_000, 90)), new(At(9000, 200), At(8000, 10)), new(At(8000, 300), default), new(default, At(9000, 160))];
        var own = new UnbalancePair(At(2000, 30), At(1500, 260));
        var spins = added.Take(count).Select(a =>
        {
            var result = Spin(a + own, random);
            return new CalibrationSpin(a, result.Speed, [.. result.Points.Select(p => new VibrationReading(p.Amplitude, p.Phase))])
            {
                StandardErrors = told ? [.. result.Points.Select(p => p.StandardError)] : [],
            };
        }).ToList();
        return SpinCalibration.Of([CalibrationFit.Of(spins, [.. Enumerable.Range(0, count)], Sense).ShouldNotBeNull().Coefficients], Planes, Sense);
    }

    private static SpinResult Spin(UnbalancePair unbalance, Random random)
    {
        Complex Of(UnbalanceVector v) => Complex.FromPolarCoordinates(v.Amount.GramMillimetres, v.Place.Radians);
        var seen = new[] { 0, 1 }.Select(p => (Machine[0][p] * Of(unbalance.Inner)) + (Machine[1][p] * Of(unbalance.Outer))).ToArray();
        return SpinAnalysis.Of(Signals.Spin(2000, PerTurn, seen[0], seen[1], Noise, random.Next(), Sense, random.NextDouble()), 2).ShouldNotBeNull();
    }

    private static RotationalSpeed Speed() => RotationalSpeed.FromRevolutionsPerMinute(60 * 2000 / PerTurn);

    private static UnbalanceVector At(double gramMillimetres, double degrees) =>
        UnbalanceVector.At(Unbalance.FromGramMillimetres(gramMillimetres), WheelAngle.FromDegrees(degrees));
}
