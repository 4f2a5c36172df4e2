using System.Numerics;
using MathNet.Numerics.LinearAlgebra.Complex;
using Trundle.Engine.Balance;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>Trial masses against MathNet's least squares and singular values, and the properties that any right method has.</summary>
public class TrialBalanceTests
{
    [Fact]
    public void Least_squares_and_condition_number_agree_with_another_library()
    {
        var random = new Random(11);
        for (var i = 0; i < 300; i++)
        {
            var planes = random.Next(1, 5);
            var points = random.Next(planes, planes + 5);
            var alpha = DenseMatrix.Create(points, planes, (_, _) => Any(random));
            if (i % 5 == 0 && planes > 1)
            {
                // Nearly dependent: the last column close to the first.
                alpha.SetColumn(planes - 1, alpha.Column(0) + (Complex)1e-4 * alpha.Column(planes - 1));
            }

            var v = DenseVector.Create(points, _ => Any(random));
            var expected = alpha.QR().Solve(-v);
            var correction = Matrix(alpha).Correct([.. v.Select(Reading)]);
            for (var p = 0; p < planes; p++)
            {
                (Phasor(correction.Masses[p]) - expected[p]).Magnitude.ShouldBeLessThan(1e-9 * (1 + expected.AbsoluteMaximum().Magnitude) * Math.Max(1, correction.ConditionNumber / 100));
            }

            correction.ConditionNumber.ShouldBe(alpha.Svd().ConditionNumber.Real, 1e-7 * correction.ConditionNumber);
            correction.RootMeanSquare.ShouldBe((v + (alpha * expected)).L2Norm() / Math.Sqrt(points), 1e-9 * (1 + v.L2Norm()));
        }
    }

    [Fact]
    public void What_is_left_is_at_right_angles_to_every_plane_and_nothing_for_as_many_points_as_planes()
    {
        var random = new Random(12);
        for (var i = 0; i < 200; i++)
        {
            var planes = random.Next(1, 4);
            var points = random.Next(planes, planes + 4);
            var rotor = new Rotor(random, planes, points);
            var solution = TrialBalance.WithPhase(rotor.Runs(random, keptOn: false), trialKeptOn: false);
            var left = solution.ResidualVibration.Select(r => Complex.FromPolarCoordinates(r.Amplitude, r.Phase!.Value.Radians)).ToArray();
            for (var p = 0; p < planes; p++)
            {
                var sum = Complex.Zero;
                for (var k = 0; k < points; k++)
                {
                    sum += Complex.Conjugate(rotor.Alpha[p][k]) * left[k];
                }

                sum.Magnitude.ShouldBeLessThan(1e-9);
            }

            if (points == planes)
            {
                solution.MisfitRootMeanSquare.ShouldBeLessThan(1e-9);
            }
        }
    }

    [Fact]
    public void Kept_on_and_taken_off_agree_on_one_rotor()
    {
        var random = new Random(13);
        for (var i = 0; i < 200; i++)
        {
            var rotor = new Rotor(random, 2, 4);
            var off = TrialBalance.WithPhase(rotor.Runs(random, keptOn: false), trialKeptOn: false);
            var kept = rotor.Runs(random, keptOn: true);
            var on = TrialBalance.WithPhase(kept, trialKeptOn: true);
            for (var p = 0; p < 2; p++)
            {
                (Phasor(off.Corrections[p]) - Phasor(on.Corrections[p])).Magnitude.ShouldBeLessThan(1e-7);

                // The last run's rotor carries both trials; what is added makes up the rest.
                (Phasor(on.AddToLastRun[p]) + Phasor(kept[p + 1].Trial!) - Phasor(on.Corrections[p])).Magnitude.ShouldBeLessThan(1e-9);
            }
        }
    }

    [Fact]
    public void Units_and_a_turn_of_the_phases_change_nothing_and_a_turn_of_the_trials_turns_the_answer()
    {
        var random = new Random(14);
        for (var i = 0; i < 100; i++)
        {
            var rotor = new Rotor(random, 2, 3);
            var runs = rotor.Runs(random, keptOn: false);
            var plain = TrialBalance.WithPhase(runs, false);
            var scaled = TrialBalance.WithPhase([.. runs.Select(r => r with { Vibration = [.. r.Vibration.Select(v => v with { Amplitude = v.Amplitude * 25.4 })] })], false);
            var turned = TrialBalance.WithPhase([.. runs.Select(r => r with { Vibration = [.. r.Vibration.Select(v => v with { Phase = v.Phase + Angle.FromDegrees(37) })] })], false);
            var moved = TrialBalance.WithPhase([.. runs.Select(r => r with { Trial = r.Trial is { } t ? t with { Angle = t.Angle + Angle.FromDegrees(50) } : null })], false);
            var mirrored = TrialBalance.WithPhase([.. runs.Select(r => new TrialRun(
                r.Trial is { } t ? t with { Angle = t.Angle * -1 } : null, [.. r.Vibration.Select(v => v with { Phase = v.Phase * -1 })]))], false);
            for (var p = 0; p < 2; p++)
            {
                var w = Phasor(plain.Corrections[p]);
                (Phasor(scaled.Corrections[p]) - w).Magnitude.ShouldBeLessThan(1e-8);
                (Phasor(turned.Corrections[p]) - w).Magnitude.ShouldBeLessThan(1e-8);
                (Phasor(moved.Corrections[p]) - (w * Complex.FromPolarCoordinates(1, 50 * Math.PI / 180))).Magnitude.ShouldBeLessThan(1e-8);
                (Phasor(mirrored.Corrections[p]) - Complex.Conjugate(w)).Magnitude.ShouldBeLessThan(1e-8);
            }
        }
    }

    [Fact]
    public void Planes_that_do_the_same_are_solved_by_the_smallest_masses_and_flagged()
    {
        var one = new[] { new Complex(1, 2), new Complex(-1, 0.5) };
        var matrix = InfluenceMatrix.Known([[.. one.Select(Coefficient)], [.. one.Select(Coefficient)]]);
        var correction = matrix.Correct([Reading(3), Reading(new Complex(0, 1))]);
        double.IsPositiveInfinity(correction.ConditionNumber).ShouldBeTrue();
        correction.IsNearlyDependent.ShouldBeTrue();
        (Phasor(correction.Masses[0]) - Phasor(correction.Masses[1])).Magnitude.ShouldBeLessThan(1e-12);
    }

    [Fact]
    public void A_trial_that_changes_nothing_is_named()
    {
        TrialRun[] runs =
        [
            new(null, [Reading(3)]),
            new(new PlaneMass(1, Mass.FromGrams(10), Angle.FromDegrees(0)), [Reading(3)]),
        ];
        var solution = TrialBalance.WithPhase(runs, false);
        solution.WithoutEffect.ShouldBe([1]);
        double.IsPositiveInfinity(solution.ConditionNumber).ShouldBeTrue();
    }

    [Fact]
    public void Calculated_single_plane_case()
    {
        // 8 at 40°; 20 g at 0° makes it 5 at 85°.
        TrialRun[] runs =
        [
            new(null, [new(8, Angle.FromDegrees(40))]),
            new(new PlaneMass(1, Mass.FromGrams(20), Angle.FromDegrees(0)), [new(5, Angle.FromDegrees(85))]),
        ];
        var solution = TrialBalance.WithPhase(runs, false);
        solution.Influence![0][0].MagnitudePerGram.ShouldBe(0.284743, 0.0000005);
        solution.Influence[0][0].Phase.Degrees.ShouldBe(181.6233, 0.00005);
        solution.Corrections[0].Mass.Grams.ShouldBe(28.0955, 0.00005);
        solution.Corrections[0].Angle.Degrees.ShouldBe(38.3767, 0.00005);
        solution.ConditionNumber.ShouldBe(1);
    }

    [Fact]
    public void Amplitudes_alone_find_the_correction_of_a_rotor_and_the_order_of_the_runs_does_not_matter()
    {
        var random = new Random(15);
        for (var i = 0; i < 200; i++)
        {
            var rotor = new Rotor(random, 1, random.Next(1, 3));
            double[] places = i % 2 == 0 ? [0, 120, 240] : [10, 95, 200, 310];
            var runs = rotor.Amplitudes(places, 7 + random.Next(10));
            var solution = TrialBalance.WithoutPhase(runs, false);
            var expected = rotor.Best();
            (Phasor(solution.Corrections[0]) - expected).Magnitude.ShouldBeLessThan(1e-5 * (1 + expected.Magnitude), $"case {i}");
            solution.MisfitRootMeanSquare.ShouldBeLessThan(1e-7);

            var shuffled = TrialBalance.WithoutPhase([runs[0], .. runs.Skip(1).Reverse()], false);
            (Phasor(shuffled.Corrections[0]) - Phasor(solution.Corrections[0])).Magnitude.ShouldBeLessThan(1e-5 * (1 + expected.Magnitude));
        }
    }

    [Fact]
    public void Swapping_two_places_mirrors_the_angle()
    {
        var rotor = new Rotor(new Random(16), 1, 1);
        var runs = rotor.Amplitudes([0, 120, 240], 8);
        var swapped = new[] { runs[0], runs[1], runs[2] with { Vibration = runs[3].Vibration }, runs[3] with { Vibration = runs[2].Vibration } };
        var (a, b) = (TrialBalance.WithoutPhase(runs, false).Corrections[0], TrialBalance.WithoutPhase(swapped, false).Corrections[0]);
        (Phasor(a) - Complex.Conjugate(Phasor(b))).Magnitude.ShouldBeLessThan(1e-6);
    }

    [Fact]
    public void The_least_squares_on_noisy_amplitudes_is_no_worse_than_any_point_of_a_fine_net()
    {
        var random = new Random(17);
        for (var i = 0; i < 20; i++)
        {
            var rotor = new Rotor(random, 1, 1);
            var runs = rotor.Amplitudes([0, 120, 240], 8).Select((r, k) => k == 0 ? r : r with { Vibration = [new(Math.Abs(r.Vibration[0].Amplitude * (1 + (0.3 * (random.NextDouble() - 0.5)))), null)] }).ToArray();
            var solution = TrialBalance.WithoutPhase(runs, false);
            var initial = runs[0].Vibration[0].Amplitude;
            var least = double.PositiveInfinity;
            for (var x = -60; x <= 60; x++)
            {
                for (var y = -60; y <= 60; y++)
                {
                    var a = new Complex(x, y) * initial / 8 / 20;
                    least = Math.Min(least, Math.Sqrt(runs.Skip(1).Average(r => Math.Pow((initial + (a * Phasor(r.Trial!))).Magnitude - r.Vibration[0].Amplitude, 2))));
                }
            }

            solution.MisfitRootMeanSquare.ShouldBeLessThan(least + 1e-12);
        }
    }

    /// <summary>A rotor that answers to masses in a straight line.</summary>
    private sealed class Rotor
    {
        private readonly Complex[] _initial;

        public Rotor(Random random, int planes, int points)
        {
            Alpha = [.. Enumerable.Range(0, planes).Select(_ => Enumerable.Range(0, points).Select(_ => Any(random)).ToArray())];
            _initial = [.. Enumerable.Range(0, points).Select(_ => 5 * Any(random))];
        }

        public Complex[][] Alpha { get; }

        public TrialRun[] Runs(Random random, bool keptOn)
        {
            var runs = new List<TrialRun> { new(null, [.. _initial.Select(Reading)]) };
            var state = new Complex[Alpha.Length];
            for (var p = 0; p < Alpha.Length; p++)
            {
                if (!keptOn)
                {
                    Array.Clear(state);
                }

                var trial = new PlaneMass(p + 1, Mass.FromGrams(5 + random.Next(20)), Angle.FromDegrees(random.Next(360)));
                state[p] += Phasor(trial);
                runs.Add(new(trial, [.. _initial.Select((v, k) => Reading(v + Sum(state, k)))]));
            }

            return [.. runs];
        }

        public TrialRun[] Amplitudes(double[] places, double grams) =>
        [
            new(null, [.. _initial.Select(v => new VibrationReading(v.Magnitude, null))]),
            .. places.Select(place => new PlaneMass(1, Mass.FromGrams(grams), Angle.FromDegrees(place)))
                .Select(t => new TrialRun(t, [.. _initial.Select((v, k) => new VibrationReading((v + (Alpha[0][k] * Phasor(t))).Magnitude, null))])),
        ];

        /// <summary>The one plane's least-squares mass.</summary>
        public Complex Best()
        {
            var (above, below) = (Complex.Zero, 0.0);
            for (var k = 0; k < _initial.Length; k++)
            {
                above -= Complex.Conjugate(Alpha[0][k]) * _initial[k];
                below += Math.Pow(Alpha[0][k].Magnitude, 2);
            }

            return above / below;
        }

        private Complex Sum(Complex[] state, int point) => state.Select((s, p) => s * Alpha[p][point]).Aggregate(Complex.Zero, (a, b) => a + b);
    }

    private static Complex Any(Random random) => new((2 * random.NextDouble()) - 1, (2 * random.NextDouble()) - 1);

    private static VibrationReading Reading(Complex v) => new(v.Magnitude, Angle.FromRadians(v.Phase));

    private static InfluenceCoefficient Coefficient(Complex c) => new(c.Magnitude, Angle.FromRadians(c.Phase));

    private static Complex Phasor(PlaneMass m) => Complex.FromPolarCoordinates(m.Mass.Grams, m.Angle.Radians);

    private static InfluenceMatrix Matrix(DenseMatrix alpha) =>
        InfluenceMatrix.Known([.. alpha.EnumerateColumns().Select(c => (IReadOnlyList<InfluenceCoefficient>)[.. c.Select(Coefficient)])]);
}
