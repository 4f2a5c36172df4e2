using Trundle.Engine.Balance;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// T. D. Feese, P. E. Grazier, Balance This! Case Histories from Difficult Balance Jobs, Proc. 33rd Turbomachinery Symposium, 2004 (read; outputs
/// recomputed). Angles there and here: one sense for phases, trial masses and answers, which is all that the method needs. Plane 1 is aft, 2 forward;
/// points are Fwd X, Fwd Y, Aft X, Aft Y in mil peak to peak.
/// </summary>
public class FeeseGrazierTests
{
    // Table 1, p. 197. The first trial mass stays on for the second trial run.
    private static readonly TrialRun[] Table1 =
    [
        new(null, [Vibration(0.68, 32), Vibration(0.56, 86), Vibration(1.94, 231), Vibration(2.07, 335)]),
        new(Mass(1, 11.1, 35), [Vibration(1.31, 1), Vibration(1.25, 75), Vibration(0.93, 251), Vibration(1.00, 342)]),
        new(Mass(2, 3.7, 135), [Vibration(0.54, 9), Vibration(0.52, 75), Vibration(0.81, 196), Vibration(0.90, 296)]),
    ];

    [Fact]
    public void Table_1_two_planes_four_points_the_first_trial_kept_on()
    {
        var solution = TrialBalance.WithPhase(Table1, trialKeptOn: true);

        // Printed: aft 15.3 g at 3°, forward 6.6 g at 113°.
        Shows(solution.Corrections[0], 15.3, 0.05, 3, 0.5);
        Shows(solution.Corrections[1], 6.6, 0.05, 113, 0.5);

        // Recomputed from the printed inputs.
        Shows(solution.Corrections[0], 15.3298, 0.00005, 2.9004, 0.00005);
        Shows(solution.Corrections[1], 6.6169, 0.00005, 112.8744, 0.00005);
    }

    [Fact]
    public void Table_1_residuals()
    {
        var solution = TrialBalance.WithPhase(Table1, trialKeptOn: true);

        // Printed: rms 0.07; residuals 0.08 at 138, 0.09 at 49, 0.05 at 231, 0.05 at 166.
        solution.MisfitRootMeanSquare.ShouldBe(0.07, 0.005);
        solution.MisfitRootMeanSquare.ShouldBe(0.069870, 0.0000005);
        double[][] residuals = [[0.0783, 137.88], [0.0907, 48.56], [0.0504, 230.56], [0.0512, 165.66]];
        for (var i = 0; i < 4; i++)
        {
            solution.ResidualVibration[i].Amplitude.ShouldBe(residuals[i][0], 0.00005);
            solution.ResidualVibration[i].Phase!.Value.Degrees.ShouldBe(residuals[i][1], 0.005);
        }
    }

    [Fact]
    public void What_to_add_to_the_last_run_gives_the_totals_back()
    {
        var solution = TrialBalance.WithPhase(Table1, trialKeptOn: true);
        Shows(solution.AddToLastRun[0], 8.3617, 0.00005, 318.0372, 0.0001);
        Shows(solution.AddToLastRun[1], 3.4805, 0.00005, 89.2719, 0.0001);

        PlaneMass[] on = [Mass(1, 11.1, 35), Mass(2, 3.7, 135)];
        for (var p = 0; p < 2; p++)
        {
            var sum = Vector(solution.AddToLastRun[p]) + Vector(on[p]);
            var total = Vector(solution.Corrections[p]);
            (sum - total).Amount.GramMillimetres.ShouldBe(0, 1e-9);
        }
    }

    [Fact]
    public void Table_1_planes_are_not_nearly_dependent() =>
        TrialBalance.WithPhase(Table1, trialKeptOn: true).NearlyDependent.ShouldBeFalse();

    /// <summary>Static and couple of Table 1's two corrections, planes of one radius (computed apart from the code; no source prints a whole example).</summary>
    [Fact]
    public void Static_and_couple_of_the_two_corrections()
    {
        var solution = TrialBalance.WithPhase(Table1, trialKeptOn: true);
        var planes = new PlanePair(new PlanePlace(Length.FromMillimetres(1), Length.FromMillimetres(0)), new PlanePlace(Length.FromMillimetres(1), Length.FromMillimetres(300)));
        var pair = new UnbalancePair(Vector(solution.Corrections[1]), Vector(solution.Corrections[0]));
        var half = pair.Static / 2;
        half.Amount.GramMillimetres.ShouldBe(7.2368, 0.00005);
        half.Place.Degrees.ShouldBe(28.347, 0.0005);
        var couple = pair.Couple(planes).InOuterPlane(planes.Apart);
        couple.Amount.GramMillimetres.ShouldBe(9.3285, 0.00005);
        couple.Place.Degrees.ShouldBe(343.430, 0.0005);
    }

    [Fact]
    public void Figure_9_four_runs_without_phase()
    {
        // p. 196: 7 g at 0, 120 and 240°; 0.088 at first, then 0.14, 0.03, 0.168 in/s. Printed: 6.7 g at 101°.
        TrialRun[] runs =
        [
            new(null, [new(0.088, null)]),
            new(Mass(1, 7, 0), [new(0.14, null)]),
            new(Mass(1, 7, 120), [new(0.03, null)]),
            new(Mass(1, 7, 240), [new(0.168, null)]),
        ];
        var solution = TrialBalance.WithoutPhase(runs, trialKeptOn: false);
        Shows(solution.Corrections[0], 6.7, 0.05, 101, 0.5);

        // Recomputed: least squares on the amplitudes.
        Shows(solution.Corrections[0], 6.6788, 0.00005, 101.387, 0.0005);
        solution.MisfitRootMeanSquare.ShouldBe(0.00056, 0.000005);
        solution.Influence.ShouldBeNull();
    }

    [Fact]
    public void Figure_9_by_the_closed_form_of_three_places_a_third_of_a_turn_apart()
    {
        // t² = mean(V²) - V0²; y = ⅔ΣV²cos θ, z = ⅔ΣV²sin θ; the heavy place at atan2(z, y), and 2·V0·t = hypot(y, z) where the circles meet.
        double[] measured = [0.14, 0.03, 0.168];
        var effect = Math.Sqrt(measured.Average(v => v * v) - (0.088 * 0.088));
        var (y, z) = (Sum(Math.Cos), Sum(Math.Sin));
        effect.ShouldBe(0.092181, 0.0000005);
        (7 * 0.088 / effect).ShouldBe(6.6825, 0.00005);
        WheelAngle.FromRadians(Math.Atan2(z, y) + Math.PI).Degrees.ShouldBe(102.019, 0.0005);
        var byBoth = Math.Sqrt((y * y) + (z * z)) / (2 * 0.088);
        byBoth.ShouldBe(0.091643, 0.0000005);
        (7 * 0.088 / byBoth).ShouldBe(6.7218, 0.00005);

        // The circles of the print miss by 0.00056 in/s: the least squares on the amplitudes differs from both by no more than that does.
        var found = TrialBalance.WithoutPhase(
            [new(null, [new(0.088, null)]), .. measured.Select((v, i) => new TrialRun(Mass(1, 7, 120 * i), [new(v, null)]))], trialKeptOn: false).Corrections[0];
        found.Mass.Grams.ShouldBe(7 * 0.088 / effect, 0.05);
        found.Angle.Degrees.ShouldBe(102.019, 0.7);

        double Sum(Func<double, double> of) => 2.0 / 3 * measured.Select((v, i) => v * v * of(2 * Math.PI * i / 3)).Sum();
    }

    [Fact]
    public void Table_5_permissible_unbalance_of_a_heavy_slow_rotor()
    {
        // pp. 206-207: G 6.3, 300 r/min, 3300 lb, 30 in. Printed, as read off a chart: 0.128 oz·in/lb, 26.4 lb·in, 0.88 lb; 1.3 % above the formula.
        var grade = BalanceGrade.Read("G 6.3").Value;
        var speed = RotationalSpeed.FromRevolutionsPerMinute(300);
        var perPound = PermissibleUnbalance.Of(grade, Measures.Mass.FromPounds(1), speed).OunceInches;
        perPound.ShouldBe(0.128, 0.128 * 0.014);
        perPound.ShouldBe(0.12632, 0.000005);
        var whole = PermissibleUnbalance.Of(grade, Measures.Mass.FromPounds(3300), speed).OunceInches / 16;
        whole.ShouldBe(26.4, 26.4 * 0.014);
        whole.ShouldBe(26.054, 0.0005);
        (whole / 30).ShouldBe(0.86846, 0.000005);
    }

    [Fact]
    public void Table_2_lists_passenger_car_wheels_under_G_40()
    {
        Engine.Reference.Figures.Of("balance.carWheelGrade").Value.ShouldBe(40);
        foreach (var listed in new[] { 0.4, 1, 2.5, 6.3, 16, 40, 100, 250, 630, 1600, 4000 })
        {
            BalanceGrade.Read($"G {listed}").Value.IsListed.ShouldBeTrue();
        }

        BalanceGrade.Read("G 20").Value.IsListed.ShouldBeFalse();
    }

    private static VibrationReading Vibration(double amplitude, double degrees) => new(amplitude, Angle.FromDegrees(degrees));

    private static PlaneMass Mass(int plane, double grams, double degrees) => new(plane, Measures.Mass.FromGrams(grams), Angle.FromDegrees(degrees));

    private static UnbalanceVector Vector(PlaneMass mass) =>
        UnbalanceVector.OfMass(mass.Mass, Length.FromMillimetres(1), WheelAngle.FromDegrees(mass.Angle.Degrees));

    private static void Shows(PlaneMass mass, double grams, double gramsWithin, double degrees, double degreesWithin)
    {
        mass.Mass.Grams.ShouldBe(grams, gramsWithin);
        mass.Angle.Degrees.ShouldBe(degrees, degreesWithin);
    }
}
