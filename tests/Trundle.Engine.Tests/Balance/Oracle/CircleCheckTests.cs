using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>Runs made from a known rotor and spoilt in a known way: the judgement must name what was spoilt.</summary>
public sealed class CircleCheckTests
{
    private static readonly double[] FivePlaces = [0, 72, 144, 216, 288];

    [Fact]
    public void Runs_of_a_true_rotor_meet_and_leave_no_doubt()
    {
        var random = new Random(31);
        for (var i = 0; i < 100; i++)
        {
            var circles = Check(Amplitudes(random, FivePlaces, 0, out _), FivePlaces);
            circles.Fault.ShouldBe(CircleFault.None);
            circles.Other.ShouldBeNull();
            circles.LeftAtMost[0].ShouldNotBeNull().ShouldBeLessThan(1e-6);
            circles.Misses.Count.ShouldBe(5);
        }
    }

    [Fact]
    public void One_spoilt_run_is_named()
    {
        var random = new Random(32);
        var named = 0;
        for (var i = 0; i < 60; i++)
        {
            var amplitudes = Amplitudes(random, FivePlaces, 0.002, out _);
            var spoilt = random.Next(1, 6);
            amplitudes[spoilt] += 0.9 * amplitudes[0];
            var circles = Check(amplitudes, FivePlaces);
            if (circles.Fault == CircleFault.OneRun)
            {
                circles.Run.ShouldBe(spoilt + 1, $"case {i}");
                named++;
            }
        }

        named.ShouldBeGreaterThan(40, "of sixty, and never a wrong one");
    }

    [Theory]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(8)]
    public void Honest_runs_are_seldom_told_as_not_fitting(int places)
    {
        double[] at = [.. Enumerable.Range(0, places).Select(i => 360.0 * i / places)];
        var random = new Random(34);
        var (told, wrong, found) = (0, 0, 0);
        for (var i = 0; i < 200; i++)
        {
            told += Check(Amplitudes(random, at, 0.03, out _), at).Outlier is null ? 0 : 1;
            var spoilt = Amplitudes(random, at, 0.01, out _);
            var run = random.Next(1, places + 1);
            spoilt[run] += 0.4 * spoilt[0];
            var outlier = Check(spoilt, at).Outlier;
            found += outlier?.Run == run + 1 ? 1 : 0;
            wrong += outlier is not null && outlier.Run != run + 1 ? 1 : 0;
        }

        // One in a hundred is allowed; seven of two hundred is beyond four standard errors.
        told.ShouldBeLessThan(8);
        wrong.ShouldBeLessThan(8);
        found.ShouldBeGreaterThan(places == 5 ? 20 : 80);
    }

    [Fact]
    public void A_spoilt_initial_run_is_named()
    {
        var random = new Random(33);
        var (named, doubted) = (0, 0);
        for (var i = 0; i < 40; i++)
        {
            var amplitudes = Amplitudes(random, FivePlaces, 0.001, out _);
            amplitudes[0] *= 1.8;
            var circles = Check(amplitudes, FivePlaces);
            circles.Fault.ShouldNotBe(CircleFault.OneRun, $"case {i}");
            doubted += circles.Fault != CircleFault.None ? 1 : 0;
            named += circles.Fault == CircleFault.InitialRun ? 1 : 0;
        }

        // Where the trial mass is small beside the initial unbalance, a wrong initial run looks like another influence, and the circles still meet.
        named.ShouldBeGreaterThan(doubted * 3 / 4, $"of {doubted} that were doubted");
        doubted.ShouldBeGreaterThan(5);
    }

    [Fact]
    public void A_trial_mass_that_is_lost_in_the_scatter_is_called_too_small()
    {
        var circles = Check([10, 11.9, 8.2, 11.8, 8.1, 12], FivePlaces);
        circles.Fault.ShouldBe(CircleFault.TrialTooSmall);
    }

    [Fact]
    public void Three_trial_runs_that_do_not_meet_cannot_tell_which_is_wrong()
    {
        var circles = Check([0.088, 0.14, 0.03, 0.30], [0, 120, 240]);
        circles.Fault.ShouldBe(CircleFault.Unknown);
        circles.Run.ShouldBeNull();
    }

    [Fact]
    public void Places_nearly_in_line_leave_a_second_answer_and_one_of_the_two_is_true()
    {
        double[] places = [0, 180, 178];
        var amplitudes = Amplitudes(new Random(34), places, 0.0005, out var correction);
        var circles = Check(amplitudes, places, out var found);
        var other = circles.Other.ShouldNotBeNull();
        Math.Min((Phasor(found) - correction).Magnitude, (Phasor(other) - correction).Magnitude).ShouldBeLessThan(0.2 * correction.Magnitude);
    }

    /// <summary>
    /// Rotors, influences and runs by chance: the interval told holds the true mass, the true angle and what is truly left in nine cases of ten, whether
    /// the meter scatters, rounds or both, and with one number left over to judge by or four.
    /// </summary>
    [Theory]
    [InlineData(new double[] { 0, 120, 240 })]
    [InlineData(new double[] { 0, 90, 180, 270 })]
    [InlineData(new double[] { 0, 60, 120, 180, 240, 300 })]
    [InlineData(new double[] { 0, 60, 120 })]
    [InlineData(new double[] { 0, 30, 60 })]
    [InlineData(new double[] { 0, 40, 180 })]
    public void The_interval_told_holds_the_truth_as_often_as_it_claims(double[] places)
    {
        foreach (var (scatter, step) in new[] { (0.0, 0.1), (0.0, 0.01), (0.005, 0), (0.01, 0.1), (0.02, 0.01) })
        {
            const int Runs = 300;
            var (mass, angle, left, bare) = (0, 0, 0, 0);
            var random = new Random(35);
            for (var i = 0; i < Runs; i++)
            {
                var amplitudes = Amplitudes(random, places, scatter, out var correction);
                var atInitial = amplitudes[0];
                amplitudes[0] += scatter * atInitial * Normal(random);
                amplitudes = [.. amplitudes.Select(a => step > 0 ? Math.Round(a / step) * step : Math.Abs(a))];
                var circles = Check(amplitudes, places, out var found, step / Math.Sqrt(12));
                circles.IsCrowded.ShouldBeFalse();
                var error = circles.Error.ShouldNotBeNull();
                mass += Math.Abs(found.Mass.Grams - correction.Magnitude) <= error.MassWithin.Grams ? 1 : 0;
                angle += error.TurnWithin is not { } turn || Math.Abs((Phasor(found) / correction).Phase) <= turn.Radians ? 1 : 0;
                left += atInitial * (1 - (Phasor(found) / correction)).Magnitude <= circles.LeftAtMost[0].ShouldNotBeNull() ? 1 : 0;
                bare += Math.Abs(found.Mass.Grams - correction.Magnitude) <= error.Along.Grams ? 1 : 0;
            }

            var what = $"scatter {scatter}, step {step}";
            (mass / (double)Runs).ShouldBeGreaterThan(0.87, what);
            (angle / (double)Runs).ShouldBeGreaterThan(0.87, what);
            (left / (double)Runs).ShouldBeGreaterThan(0.87, what);
            (bare / (double)Runs).ShouldBeLessThan(0.9, what);
        }
    }

    [Fact]
    public void Amplitudes_that_agree_by_rounding_alone_still_have_the_error_of_their_digits()
    {
        // Read to 0.1, all three trial runs are met exactly by 1 of influence a trial mass.
        double[] places = [0, 90, 180];
        double[] amplitudes = [4, 5, Math.Sqrt(17), 3];
        Check(amplitudes, places).Error.ShouldNotBeNull().MassWithin.Grams.ShouldBeLessThan(1e-6);
        var error = Check(amplitudes, places, out var found, 0.1 / Math.Sqrt(12)).Error.ShouldNotBeNull();
        error.Basis.ShouldBe(CircleErrorBasis.Reading);
        error.LeftOver.ShouldBe(1);
        found.Mass.Grams.ShouldBe(40, 1e-6);

        // A share of 0.3 of a step on amplitudes of three to five, of which the effect is one: some percent of the forty grams.
        error.MassWithin.Grams.ShouldBeGreaterThan(1.2);
    }

    [Theory]
    [InlineData(new double[] { 0, 5, 10 }, true, false)]
    [InlineData(new double[] { 350, 5, 20 }, true, false)]
    [InlineData(new double[] { 0, 30, 59 }, true, false)]
    [InlineData(new double[] { 0, 30, 60 }, false, false)]
    [InlineData(new double[] { 0, 178, 180 }, false, true)]
    [InlineData(new double[] { 0, 120, 240 }, false, false)]
    [InlineData(new double[] { 0, 90, 180 }, false, false)]
    public void Places_too_close_together_or_in_line_are_told(double[] places, bool crowded, bool inLine)
    {
        var circles = Check(Amplitudes(new Random(36), places, 0.0005, out _), places);
        circles.IsCrowded.ShouldBe(crowded);
        circles.IsInLine.ShouldBe(inLine);
    }

    private static CircleCheck Check(double[] amplitudes, double[] places) => Check(amplitudes, places, out _);

    private static CircleCheck Check(double[] amplitudes, double[] places, out PlaneMass correction, double readTo = 0)
    {
        TrialRun[] runs =
        [
            new(null, [new(amplitudes[0], null) { ReadTo = readTo }]),
            .. places.Select((p, i) => new TrialRun(new PlaneMass(1, Mass.FromGrams(10), Angle.FromDegrees(p)), [new(amplitudes[i + 1], null) { ReadTo = readTo }])),
        ];
        var solution = TrialBalance.WithoutPhase(runs, false);
        correction = solution.Corrections[0];
        return solution.Circles.ShouldNotBeNull();
    }

    /// <summary>Initial amplitude and that of a run for each place, with 10 g; scatter in shares of the initial run.</summary>
    private static double[] Amplitudes(Random random, double[] places, double scatter, out Complex correction)
    {
        var initial = Complex.FromPolarCoordinates(2 + (4 * random.NextDouble()), Math.Tau * random.NextDouble());
        var influence = Complex.FromPolarCoordinates(initial.Magnitude * (0.05 + (0.1 * random.NextDouble())), Math.Tau * random.NextDouble());
        correction = -initial / influence;
        return
        [
            initial.Magnitude,
            .. places.Select(p => (initial + (influence * Complex.FromPolarCoordinates(10, p * Math.PI / 180))).Magnitude + (scatter * initial.Magnitude * Normal(random))),
        ];
    }

    private static double Normal(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(Math.Tau * random.NextDouble());

    private static Complex Phasor(PlaneMass mass) => Complex.FromPolarCoordinates(mass.Mass.Grams, mass.Angle.Degrees * Math.PI / 180);
}
