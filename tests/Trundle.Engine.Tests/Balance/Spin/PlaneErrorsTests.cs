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

    // Two planes that do nearly the same: an overhung shaft, its condition number that of the guide's ordinary one or a little more.
    private static readonly Complex[][] Alike =
    [
        [Complex.FromPolarCoordinates(2.31e-4, 0.4), Complex.FromPolarCoordinates(1.31e-4, 3.1)], [Complex.FromPolarCoordinates(3.69e-4, 0.4), Complex.FromPolarCoordinates(2.69e-4, 3.1)],
    ];

    // Standard deviation of each mark, in turns; with it there is a thousandth of the usual noise.
    private const double MarksOff = 0.004;

    private static readonly SpinSense Sense = new(RotationSense.Clockwise, PhaseSense.Lead);

    private static readonly PlanePair Planes = new(
        new PlanePlace(Length.FromMillimetres(200), Length.FromMillimetres(0)), new PlanePlace(Length.FromMillimetres(200), Length.FromMillimetres(150)));

    private static readonly UnbalancePair Truth = new(At(9000, 70), At(6000, 215));

    [Fact]
    public void A_machine_known_exactly_tells_errors_that_cover()
    {
        var random = new Random(11);
        var calibration = Exactly(Machine);
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

    /// <summary>
    /// A mark that stands off turns both readings alike, and so the planes' vectors by as much: it does not go through the inverse. The transducers here hardly tell the
    /// planes apart, so that the same error taken as independent comes out far too great, and there is next to no noise beside the marks'.
    /// </summary>
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void The_marks_error_turns_the_planes_and_does_not_go_through_the_inverse(bool calibratedBySpins)
    {
        var random = new Random(15);
        var (along, across, leftOut, independent, inAll) = (0, 0, 0, 0, 0.0);
        for (var i = 0; i < 300; i++)
        {
            var spin = Spin(Truth, random, Alike, MarksOff);
            var found = (calibratedBySpins ? Calibrated(3, random, true, Alike, MarksOff) : Exactly(Alike)).Find(spin, Sense, null).ShouldNotBeNull();
            found.ConditionNumber.ShouldBeInRange(15, 60);
            for (var k = 0; k < 2; k++)
            {
                var (vector, truth, error) = k == 0 ? (found.Unbalance.Inner, Truth.Inner, found.InnerStandardError) : (found.Unbalance.Outer, Truth.Outer, found.OuterStandardError);
                var (amount, turn) = (vector.Amount.GramMillimetres, vector.Place.Radians - truth.Place.Radians);
                var (offAlong, offAcross) = (Math.Abs((amount * Math.Cos(turn)) - truth.Amount.GramMillimetres), Math.Abs(amount * Math.Sin(turn)));
                along += offAlong <= error.GramMillimetres ? 1 : 0;
                across += offAcross <= found.Across(vector, error).GramMillimetres ? 1 : 0;
                leftOut += offAcross <= error.GramMillimetres ? 1 : 0;
                independent += offAcross <= ThroughTheInverse(spin, k) ? 1 : 0;
                inAll++;
            }
        }

        // Along a vector the marks do next to nothing. The coefficients' errors by the same marks count alike along and across, so that some are covered even without the turn.
        (across / inAll).ShouldBeInRange(0.6, calibratedBySpins ? 0.82 : 0.76);
        (along / inAll).ShouldBeGreaterThan(0.6);
        (independent / inAll).ShouldBeGreaterThan(0.95);
        if (!calibratedBySpins)
        {
            (leftOut / inAll).ShouldBeLessThan(0.4);
        }
    }

    /// <summary>What a plane's error would be were the mark's error of each reading its own.</summary>
    private static double ThroughTheInverse(SpinResult spin, int plane)
    {
        var determinant = (Alike[0][0] * Alike[1][1]) - (Alike[0][1] * Alike[1][0]);
        var other = Alike[1 - plane];
        return Math.Sqrt(new[] { 0, 1 }.Sum(p => Math.Pow((other[1 - p] / determinant).Magnitude * spin.Points[p].Amplitude * spin.Points[p].PhaseStandardError.Radians, 2)));
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

    private static SpinCalibration Exactly(Complex[][] machine)
    {
        List<UnbalanceInfluence> Column(int k) => [.. machine[k].Select(c => new UnbalanceInfluence(c.Magnitude, Angle.FromRadians(c.Phase)) { StandardErrorPerGramMillimetre = 0 })];
        return SpinCalibration.Of([new CalibratedSpeed(Speed(), Column(0), Column(1))], Planes, Sense);
    }

    private static SpinCalibration Calibrated(int count, Random random, bool told, Complex[][]? machine = null, double marksOff = 0)
    {
        UnbalancePair[] added = [default, new(At(10_000, 0), default), new(default, At(10_000, 90)), new(At(9000, 200), At(8000, 10)), new(At(8000, 300), default), new(default, At(9000, 160))];
        var own = new UnbalancePair(At(2000, 30), At(1500, 260));
        var spins = added.Take(count).Select(a =>
        {
            var result = Spin(a + own, random, machine, marksOff);
            return new CalibrationSpin(a, result.Speed, [.. result.Points.Select(p => new VibrationReading(p.Amplitude, p.Phase))])
            {
                StandardErrors = told ? [.. result.Points.Select(p => p.OwnStandardError)] : [],
                MarkStandardError = told ? result.MarkStandardError : default,
            };
        }).ToList();
        return SpinCalibration.Of([CalibrationFit.Of(spins, [.. Enumerable.Range(0, count)], Sense).ShouldNotBeNull().Coefficients], Planes, Sense);
    }

    private static SpinResult Spin(UnbalancePair unbalance, Random random, Complex[][]? of = null, double marksOff = 0)
    {
        var machine = of ?? Machine;
        Complex Of(UnbalanceVector v) => Complex.FromPolarCoordinates(v.Amount.GramMillimetres, v.Place.Radians);
        var seen = new[] { 0, 1 }.Select(p => (machine[0][p] * Of(unbalance.Inner)) + (machine[1][p] * Of(unbalance.Outer))).ToArray();
        var start = random.NextDouble();
        var spin = Signals.Spin(marksOff > 0 ? 4000 : 2000, PerTurn, seen[0], seen[1], marksOff > 0 ? Noise / 1000 : Noise, random.Next(), Sense, start);
        if (marksOff > 0)
        {
            // Each mark a little off its place, with an edge that rises over six samples, so that it is told between two.
            double[] off = [.. Enumerable.Range(0, 20).Select(_ => marksOff * Signals.Gauss(random))];
            double[] index = [.. Enumerable.Range(0, spin.Index.Length).Select(k =>
            {
                var turns = start + (k / PerTurn) + 0.5;
                var past = turns - Math.Floor(turns) - 0.5 - off[(int)turns];
                return past > 0.1 ? 0 : Math.Clamp(0.5 + (past * PerTurn / 6), 0, 1);
            })];
            spin = new SpinRecording(spin.Transducers, index, spin.SampleRate, spin.Sense);
        }

        return SpinAnalysis.Of(spin, 2).ShouldNotBeNull();
    }

    private static RotationalSpeed Speed() => RotationalSpeed.FromRevolutionsPerMinute(60 * 2000 / PerTurn);

    private static UnbalanceVector At(double gramMillimetres, double degrees) =>
        UnbalanceVector.At(Unbalance.FromGramMillimetres(gramMillimetres), WheelAngle.FromDegrees(degrees));
}
