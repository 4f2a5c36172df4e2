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
            circles.LeftAtMost[0].ShouldBeLessThan(1e-6);
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

    /// <summary>The standard error is what many repeats scatter by. The larger axis is told, so it may say more than the whole's mean, never less by much.</summary>
    [Fact]
    public void The_standard_error_is_the_scatter_of_many_repeats()
    {
        var (told, actual, n) = (0.0, 0.0, 0);
        for (var i = 0; i < 400; i++)
        {
            var amplitudes = Amplitudes(new Random(35), FivePlaces, 0, out var correction);
            var noise = new Random(1000 + i);
            for (var r = 1; r < amplitudes.Length; r++)
            {
                amplitudes[r] += 0.02 * amplitudes[0] * Normal(noise);
            }

            var circles = Check(amplitudes, FivePlaces, out var found);
            told += Math.Pow(circles.StandardError!.Value.Grams, 2);
            actual += Math.Pow((Phasor(found) - correction).Magnitude, 2) / 2;
            n++;
        }

        Math.Sqrt(told / n).ShouldBeInRange(0.9 * Math.Sqrt(actual / n), 2.5 * Math.Sqrt(actual / n));
    }

    private static CircleCheck Check(double[] amplitudes, double[] places) => Check(amplitudes, places, out _);

    private static CircleCheck Check(double[] amplitudes, double[] places, out PlaneMass correction)
    {
        TrialRun[] runs =
        [
            new(null, [new(amplitudes[0], null)]),
            .. places.Select((p, i) => new TrialRun(new PlaneMass(1, Mass.FromGrams(10), Angle.FromDegrees(p)), [new(amplitudes[i + 1], null)])),
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
