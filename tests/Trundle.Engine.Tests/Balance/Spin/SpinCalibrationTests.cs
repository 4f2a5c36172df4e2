using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Spin;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Spin;

/// <summary>
/// From signals to the unbalance of both planes: by the supports' places (the worked case of supports at 0 and −130 mm, planes at 170 and 350 mm,
/// 180 r/min, computed apart from this code), and by spins with known masses on an invented machine.
/// </summary>
public class SpinCalibrationTests
{
    private static readonly PlanePair Flanges = Planes(170, 350);

    public static TheoryData<RotationSense, PhaseSense> Senses => new()
    {
        { RotationSense.Clockwise, PhaseSense.Lead }, { RotationSense.Clockwise, PhaseSense.Lag }, { RotationSense.Anticlockwise, PhaseSense.Lead }, { RotationSense.Anticlockwise, PhaseSense.Lag },
    };

    [Theory, MemberData(nameof(Senses))]
    public void Pick_up_forces_give_both_planes(RotationSense rotation, PhaseSense phases)
    {
        // Told counter-clockwise positive, which mirrors to the wheel's clockwise as it stands: the lead of a wheel that turns clockwise.
        var forces = new[] { Complex.FromPolarCoordinates(2.958074, Radians(306.2591)), Complex.FromPolarCoordinates(2.348712, Radians(106.4037)) };
        var seen = rotation == RotationSense.Clockwise ? forces : [.. forces.Select(Complex.Conjugate)];
        var sense = new SpinSense(rotation, phases);
        var calibration = Supports(sense);
        var result = SpinAnalysis.Of(Signals.Spin(8000, 2000 / 3.0, seen[0], seen[1], 0, 1, sense), 3).ShouldNotBeNull();
        result.Speed.RevolutionsPerMinute.ShouldBe(180, 0.01);
        var found = calibration.Find(result, sense, null).ShouldNotBeNull();

        // Marks of noughts and ones are half a sample (0.27°) uncertain each.
        found.Unbalance.Inner.Amount.GramMillimetres.ShouldBe(6000, 1);
        found.Unbalance.Inner.Place.Degrees.ShouldBe(40, 0.2);
        found.Unbalance.Outer.Amount.GramMillimetres.ShouldBe(4500, 1);
        found.Unbalance.Outer.Place.Degrees.ShouldBe(250, 0.2);
    }

    [Fact]
    public void The_floor_in_grams()
    {
        // Noise 0.05 N a sample, 2000 samples, 180 r/min: 14.687 and 8.525 g·mm a component; 0.0724 and 0.0420 g at 202.8 mm.
        var point = new SpinPoint(0, default, 0.05 * Math.Sqrt(2.0 / 2000), default, 0, 0.05, [], null, null) { OwnPhaseStandardError = default };
        point.AmplitudeStandardError.ShouldBe(0.0015811, 0.00000005);
        var found = Supports(default).Find(At(180, [point, point]), default, null).ShouldNotBeNull();
        found.InnerStandardError.GramMillimetres.ShouldBe(14.687, 0.0005);
        found.OuterStandardError.GramMillimetres.ShouldBe(8.525, 0.0005);
        (found.InnerStandardError.GramMillimetres / 202.8).ShouldBe(0.0724, 0.00005);
        (found.OuterStandardError.GramMillimetres / 202.8).ShouldBe(0.0420, 0.00005);

        var slow = Supports(default).Find(At(90, [point, point]), default, null).ShouldNotBeNull();
        (slow.InnerStandardError / found.InnerStandardError).ShouldBe(4, 1e-9);
    }

    [Theory, MemberData(nameof(Senses))]
    public void Known_masses_calibrate_and_a_further_spin_is_found(RotationSense rotation, PhaseSense phases)
    {
        var sense = new SpinSense(rotation, phases);
        var machine = new InventedMachine(sense);
        var fits = new List<CalibratedSpeed>();
        foreach (var speed in new[] { 120.0, 180, 240 })
        {
            var own = new UnbalancePair(At(900, 77), At(400, 200));
            CalibrationSpin[] spins =
            [
                machine.Spin(default, own, speed),
                machine.Spin(new UnbalancePair(At(17_000, 0), default), own, speed),
                machine.Spin(new UnbalancePair(default, At(17_000, 120)), own, speed * 1.01),
                machine.Spin(new UnbalancePair(At(8_000, 200), At(9_000, 300)), own, speed * 0.99),
            ];
            var fit = CalibrationFit.Of(spins, [0, 1, 2, 3], sense).ShouldNotBeNull();
            fit.Spare.ShouldBe(1);
            fit.Residuals.Max(r => r.AsUnbalance.Inner.Amount.GramMillimetres).ShouldBeLessThan(30);
            fits.Add(fit.Coefficients);
        }

        var calibration = SpinCalibration.Of(fits, Flanges, sense);
        var random = new Random(31);
        for (var i = 0; i < 30; i++)
        {
            var truth = new UnbalancePair(At(10_000 * random.NextDouble(), 360 * random.NextDouble()), At(10_000 * random.NextDouble(), 360 * random.NextDouble()));
            var speed = 118 + (random.NextDouble() * 130);
            calibration.Serves(RotationalSpeed.FromRevolutionsPerMinute(speed)).ShouldBeTrue();
            var found = calibration.Find(machine.Result(truth, speed), sense, null).ShouldNotBeNull();
            (found.Unbalance - truth).Inner.Amount.GramMillimetres.ShouldBeLessThan(60);
            (found.Unbalance - truth).Outer.Amount.GramMillimetres.ShouldBeLessThan(60);

            var elsewhere = Planes(185, 300);
            var moved = calibration.Find(machine.Result(truth, speed), sense, elsewhere).ShouldNotBeNull();
            (moved.Unbalance - found.Unbalance.MovedTo(Flanges, elsewhere)).Inner.Amount.GramMillimetres.ShouldBe(0, 1e-6);
        }

        calibration.Serves(RotationalSpeed.FromRevolutionsPerMinute(100)).ShouldBeFalse();
        calibration.Serves(RotationalSpeed.FromRevolutionsPerMinute(270)).ShouldBeFalse();
    }

    [Fact]
    public void The_coefficients_are_told_again_as_given()
    {
        var sense = new SpinSense(RotationSense.Clockwise, PhaseSense.Lag);
        var given = new CalibratedSpeed(RotationalSpeed.FromRevolutionsPerMinute(180),
            [new(1e-3, Angle.FromDegrees(30)), new(2e-4, Angle.FromDegrees(210))], [new(3e-4, Angle.FromDegrees(40)), new(9e-4, Angle.FromDegrees(300))]);
        var told = SpinCalibration.Of([given], Flanges, sense).At(given.Speed);
        for (var p = 0; p < 2; p++)
        {
            told.Inner[p].MagnitudePerGramMillimetre.ShouldBe(given.Inner[p].MagnitudePerGramMillimetre, 1e-15);
            told.Inner[p].Phase.Degrees.ShouldBe(given.Inner[p].Phase.Degrees, 1e-9);
            told.Outer[p].Phase.Degrees.ShouldBe(given.Outer[p].Phase.Degrees, 1e-9);
        }
    }

    [Fact]
    public void Spins_that_do_not_tell_the_planes_apart_calibrate_nothing()
    {
        var machine = new InventedMachine(default);
        var plain = machine.Spin(default, default, 180);
        CalibrationFit.Of([plain, plain, plain], [0, 1, 2], default).ShouldBeNull();
        var inner = machine.Spin(new UnbalancePair(At(5000, 0), default), default, 180);
        CalibrationFit.Of([plain, inner, inner, inner], [0, 1, 2, 3], default).ShouldBeNull("no mass was ever in the outer plane");
        CalibrationFit.Of([plain, inner], [0, 1], default).ShouldBeNull();
    }

    [Fact]
    public void What_a_calibration_left_unexplained_counts_as_an_error_of_the_reading()
    {
        var plain = Supports(default).At(RotationalSpeed.FromRevolutionsPerMinute(180));
        var calibration = SpinCalibration.Of([plain with { Misfit = [0.003, 0.004] }], Flanges, default);
        var exact = new SpinPoint(0, default, 0, default, 0, 0, [], null, null) { OwnPhaseStandardError = default };
        var carried = calibration.Find(At(180, [exact, exact]), default, null).ShouldNotBeNull();
        var read = SpinCalibration.Of([plain], Flanges, default).Find(At(180, [exact with { AmplitudeStandardError = 0.003 }, exact with { AmplitudeStandardError = 0.004 }]), default, null).ShouldNotBeNull();
        carried.InnerStandardError.GramMillimetres.ShouldBe(read.InnerStandardError.GramMillimetres, 1e-9);
        carried.OuterStandardError.GramMillimetres.ShouldBe(read.OuterStandardError.GramMillimetres, 1e-9);
        carried.InnerStandardError.GramMillimetres.ShouldBeGreaterThan(20);

        // It goes with the square of the speed, as the coefficients do; and both errors add as squares.
        var slow = plain with { Speed = RotationalSpeed.FromRevolutionsPerMinute(90) };
        SpinCalibration.Of([slow with { Misfit = [0.001, 0] }, plain with { Misfit = [0.004, 0] }], Flanges, default).At(RotationalSpeed.FromRevolutionsPerMinute(135)).Misfit.ShouldBe([0.00225, 0], 1e-12);
        var both = calibration.Find(At(180, [exact with { AmplitudeStandardError = 0.004 }, exact with { AmplitudeStandardError = 0.003 }]), default, null).ShouldNotBeNull();
        var one = SpinCalibration.Of([plain], Flanges, default).Find(At(180, [exact with { AmplitudeStandardError = 0.005 }, exact with { AmplitudeStandardError = 0.005 }]), default, null).ShouldNotBeNull();
        both.InnerStandardError.GramMillimetres.ShouldBe(one.InnerStandardError.GramMillimetres, 1e-9);
    }

    [Fact]
    public void Spins_whose_only_errors_are_those_told_fit_each_other_and_a_wrong_mass_does_not()
    {
        var random = new Random(20260314);
        var machine = new InventedMachine(default);
        UnbalancePair[] added = [default, new(At(9000, 0), default), new(default, At(9000, 90)), new(At(6000, 200), At(5000, 10)), new(At(4000, 300), At(8000, 140))];
        var own = new UnbalancePair(At(2000, 70), At(1500, 260));
        var clean = added.Select(a => machine.Spin(a, own, 180)).ToArray();
        double[] error = [.. new[] { 0, 1 }.Select(p => 0.2 * clean.Max(s => s.Points[p].Amplitude))];
        var misfits = Enumerable.Range(0, 2000).Select(_ => Fit([.. clean.Select(Noisy)])).ToList();

        // Beside an error of 20 % the 2 % that is granted is nothing: chi-squared has the mean of its degrees of freedom, and one in a thousand is flagged.
        misfits[0].DegreesOfFreedom.ShouldBe(8);
        misfits.Average(m => m.ChiSquared).ShouldBe(8, 0.35);
        misfits.Count(m => m.IsBeyondErrors).ShouldBeInRange(0, 8);

        Fit(clean).ChiSquared.ShouldBe(0, 1e-9);
        Fit([.. clean.Take(3), clean[3] with { Added = added[3] with { Inner = At(9000, 200) } }, clean[4]]).IsBeyondErrors.ShouldBeTrue();
        CalibrationFit.Of(clean[..3], [0, 1, 2], default)!.Misfit.ShouldBeNull();

        CalibrationMisfit Fit(CalibrationSpin[] spins) => CalibrationFit.Of(spins, [0, 1, 2, 3, 4], default).ShouldNotBeNull().Misfit.ShouldNotBeNull();

        CalibrationSpin Noisy(CalibrationSpin spin) => spin with
        {
            StandardErrors = error,
            Points = [.. spin.Points.Select((v, p) =>
            {
                var size = error[p] * Math.Sqrt(-2 * Math.Log(1 - random.NextDouble()));
                var noisy = Complex.FromPolarCoordinates(v.Amplitude, v.Phase!.Value.Radians) + Complex.FromPolarCoordinates(size, 2 * Math.PI * random.NextDouble());
                return new VibrationReading(noisy.Magnitude, Angle.FromRadians(noisy.Phase));
            })],
        };
    }

    [Fact]
    public void Speeds_close_together_are_one()
    {
        var groups = CalibrationFit.BySpeed([.. new[] { 180.0, 121, 182, 120, 240 }.Select(RotationalSpeed.FromRevolutionsPerMinute)]);
        groups.Select(g => g.Order().ToArray()).ShouldBe([[1, 3], [0, 2], [4]]);
    }

    [Fact]
    public void A_mass_turned_turns_what_is_found()
    {
        var sense = new SpinSense(RotationSense.Anticlockwise, PhaseSense.Lead);
        var machine = new InventedMachine(sense);
        var own = default(UnbalancePair);
        CalibrationSpin[] spins = [machine.Spin(default, own, 180), machine.Spin(new UnbalancePair(At(9000, 0), default), own, 180), machine.Spin(new UnbalancePair(default, At(9000, 0)), own, 180)];
        var calibration = SpinCalibration.Of([CalibrationFit.Of(spins, [0, 1, 2], sense)!.Coefficients], Flanges, sense);
        for (var degrees = 0; degrees < 360; degrees += 45)
        {
            var found = calibration.Find(machine.Result(new UnbalancePair(At(1000, degrees), default), 180), sense, null)!.Unbalance;
            (found.Inner - At(1000, degrees)).Amount.GramMillimetres.ShouldBe(0, 1e-6);
            found.Outer.Amount.GramMillimetres.ShouldBe(0, 1e-6);
        }
    }

    /// <summary>Two transducers on springs, a little soft, so that the coefficients do not go with the square of the speed exactly and lag behind the mass.</summary>
    private sealed class InventedMachine(SpinSense sense)
    {
        public CalibrationSpin Spin(UnbalancePair added, UnbalancePair own, double speed)
        {
            var result = Result(added + own, speed);
            return new CalibrationSpin(added, result.Speed, [.. result.Points.Select(p => new VibrationReading(p.Amplitude, p.Phase))]);
        }

        public SpinResult Result(UnbalancePair unbalance, double speed)
        {
            var turning = RotationalSpeed.FromRevolutionsPerMinute(speed);
            var omega = turning.RadiansPerSecond;
            var answer = omega * omega * 1e-6 / new Complex(1 - (omega * omega / 1e5), 0.002 * omega);
            var wheel = new[] { Sum(1.9, -0.9), Sum(-0.8, 1.7) };
            return At(speed, [.. wheel.Select(w =>
            {
                // A turning phasor leads by the mass's place where the wheel turns clockwise; the spring's lag is behind in time either way.
                var place = sense.Rotation == RotationSense.Clockwise ? w : Complex.Conjugate(w);
                var lead = place * answer;
                return new SpinPoint(lead.Magnitude, Angle.FromRadians(sense.Phases == PhaseSense.Lead ? lead.Phase : -lead.Phase), 0, default, 0, 0, [], null, null) { OwnPhaseStandardError = default };
            })]);

            Complex Sum(double inner, double outer) =>
                (inner * Complex.FromPolarCoordinates(unbalance.Inner.Amount.GramMillimetres, unbalance.Inner.Place.Radians))
                + (outer * Complex.FromPolarCoordinates(unbalance.Outer.Amount.GramMillimetres, unbalance.Outer.Place.Radians));
        }
    }

    private static SpinCalibration Supports(SpinSense sense) => SpinCalibration.OfSupports(
        (Length.FromMillimetres(0), Force.FromNewtons(1)), (Length.FromMillimetres(-130), Force.FromNewtons(1)), default, Flanges, sense).ShouldNotBeNull();

    private static SpinResult At(double speed, IReadOnlyList<SpinPoint> points) => new()
    {
        Speed = RotationalSpeed.FromRevolutionsPerMinute(speed), SpeedStandardError = default, DriftPercent = 0, SpeedBySignal = null,
        Turns = 20, Marks = 20, Points = points, Harmonics = 1, Warnings = [], MarkStandardError = default,
    };

    private static PlanePair Planes(double z1, double z2) => new(
        new PlanePlace(Length.FromMillimetres(202.8), Length.FromMillimetres(z1)), new PlanePlace(Length.FromMillimetres(202.8), Length.FromMillimetres(z2)));

    private static UnbalanceVector At(double gramMillimetres, double degrees) =>
        UnbalanceVector.At(Unbalance.FromGramMillimetres(gramMillimetres), WheelAngle.FromDegrees(degrees));

    private static double Radians(double degrees) => degrees * Math.PI / 180;
}
