using Trundle.Engine.Balance;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// R. Kelm, W. Kelm, D. Pavelek, Rotor Balancing Tutorial, Turbomachinery Laboratory, Texas A&amp;M, 2016 (read; outputs recomputed).
/// Case study 1, pp. 15-17: the probes' angles (X +225°, Y +315°) are added to the raw phases first, so that phases and masses are measured in one
/// sense. Plane 1 is outboard, 2 inboard. The print's solution (17.5 g at 230°, 30.3 g at 0°) leaves 0.407 and so is not the least; its coefficients
/// are used as published, and its solution as recomputed.
/// </summary>
public class KelmTests
{
    private const double X = 225;
    private const double Y = 315;

    // 6.8 g at 252° outboard stays on; then 6.8 g at 72° inboard.
    private static readonly TrialRun[] CaseStudy1 =
    [
        new(null, Points(0.97, 310, 2.20, 213, 0.84, 102, 0.58, 3.5)),
        new(new PlaneMass(1, Mass.FromGrams(6.8), Angle.FromDegrees(252)), Points(0.80, 324, 2.00, 210, 1.05, 92, 0.53, 331)),
        new(new PlaneMass(2, Mass.FromGrams(6.8), Angle.FromDegrees(72)), Points(0.89, 312, 2.00, 200, 0.95, 84, 0.33, 315.1)),
    ];

    [Theory]
    [InlineData(1, 0, 0.0403, 58.03)]
    [InlineData(2, 0, 0.0291, 47.87)]
    [InlineData(1, 1, 0.0336, 123.31)]
    [InlineData(2, 1, 0.0513, 358.00)]
    [InlineData(1, 2, 0.0392, 31.78)]
    [InlineData(2, 2, 0.0252, 115.43)]
    [InlineData(1, 3, 0.0462, 311.46)]
    [InlineData(2, 3, 0.0340, 57.03)]
    public void Influence_coefficients_of_case_study_1(int plane, int point, double milPerGram, double degrees)
    {
        var c = TrialBalance.WithPhase(CaseStudy1, trialKeptOn: true).Influence![plane - 1][point];
        c.MagnitudePerGram.ShouldBe(milPerGram, 0.00005);
        c.Phase.Degrees.ShouldBe(degrees, 0.005);
    }

    [Fact]
    public void Least_squares_of_case_study_1_as_recomputed()
    {
        var solution = TrialBalance.WithPhase(CaseStudy1, trialKeptOn: true);
        solution.Corrections[0].Mass.Grams.ShouldBe(17.9594, 0.00005);
        solution.Corrections[0].Angle.Degrees.ShouldBe(229.5407, 0.00005);
        solution.Corrections[1].Mass.Grams.ShouldBe(30.6025, 0.00005);
        solution.Corrections[1].Angle.Degrees.ShouldBe(351.4719, 0.00005);
        solution.MisfitRootMeanSquare.ShouldBe(0.372873, 0.0000005);
    }

    [Fact]
    public void The_printed_solution_leaves_more()
    {
        var influence = InfluenceMatrix.Known(TrialBalance.WithPhase(CaseStudy1, trialKeptOn: true).Influence!);
        var left = influence.Expected(CaseStudy1[0].Vibration,
            [new(1, Mass.FromGrams(17.5), Angle.FromDegrees(230)), new(2, Mass.FromGrams(30.3), Angle.FromDegrees(0))]);
        Math.Sqrt(left.Average(v => v.Amplitude * v.Amplitude)).ShouldBe(0.4070, 0.00005);
    }

    [Fact]
    public void Page_3_eccentricity_of_G_1_at_5000()
    {
        // Printed: 0.0019 mm, 0.15 mil total indicator reading, which is twice the eccentricity.
        var e = PermissibleUnbalance.Eccentricity(BalanceGrade.Read("G1").Value, RotationalSpeed.FromRevolutionsPerMinute(5000));
        e.Millimetres.ShouldBe(0.0019, 0.00005);
        e.Millimetres.ShouldBe(0.0019099, 0.00000005);
        (2 * e.In("in") * 1000).ShouldBe(0.15, 0.005);
    }

    [Fact]
    public void Page_9_the_formula_in_ounces_inches_and_pounds()
    {
        // Printed: U = 6.015·G·W/N oz·in.
        var u = PermissibleUnbalance.Of(BalanceGrade.Read("1").Value, Mass.FromPounds(1), RotationalSpeed.FromRevolutionsPerMinute(1));
        u.OunceInches.ShouldBe(6.015, 0.0005);
        u.OunceInches.ShouldBe(6.0153, 0.00005);
    }

    [Fact]
    public void Page_9_four_W_over_N_is_G_0_67()
    {
        // 4·W/N oz·in: the grade that permits 4 oz·in on 1 lb at 1 r/min. Printed: G 0.67.
        var perGrade = PermissibleUnbalance.Of(BalanceGrade.Read("1").Value, Mass.FromPounds(1), RotationalSpeed.FromRevolutionsPerMinute(1)).OunceInches;
        (4 / perGrade).ShouldBe(0.67, 0.0051);
        (4 / perGrade).ShouldBe(0.665, 0.0005);
    }

    private static VibrationReading[] Points(double a, double pa, double b, double pb, double c, double pc, double d, double pd) =>
        [At(a, pa + X), At(b, pb + Y), At(c, pc + X), At(d, pd + Y)];

    private static VibrationReading At(double amplitude, double degrees) => new(amplitude, Angle.FromDegrees(degrees));
}
