using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// Least-squares corrections from coefficients that a paper gives. T. P. Goodman, A Least-Squares Method for Computing Balance Corrections, ASME J. Eng.
/// for Industry, Aug 1964, p. 276 (read; all numbers real, so no sense of angles; the prose's 0.456 for the largest residual is a slip, its table's 0.476
/// is right). M. S. Darlow, ASME 1982, on planes that are not independent (second-hand, through a test file that quotes him; the inputs are whole
/// numbers on the two axes, his angles run −180° to 180°). Huang et al., Shock and Vibration 16 (2009) 1-12, case 1 (read).
/// </summary>
public class LeastSquaresBalanceTests
{
    private static readonly Complex I = Complex.ImaginaryOne;

    [Fact]
    public void Goodman_in_exact_fractions()
    {
        var correction = Goodman().Correct([Of(1), Of(-1), Of(0)]);
        Real(correction.Masses[0]).ShouldBe(17 / 21.0, 1e-14);
        Real(correction.Masses[1]).ShouldBe(31 / 21.0, 1e-14);
        double[] left = [10 / 21.0, 2 / 21.0, -8 / 21.0];
        for (var i = 0; i < 3; i++)
        {
            (Phasor(correction.Residual[i]) - left[i]).Magnitude.ShouldBe(0, 1e-14);
        }

        correction.RootMeanSquare.ShouldBe(Math.Sqrt(8 / 21.0 / 3), 1e-14);
        correction.RootMeanSquare.ShouldBe(0.356348, 0.0000005);
    }

    [Fact]
    public void Goodman_weighted_once_by_what_was_left_evens_out_and_stays()
    {
        var plain = Goodman().Correct([Of(1), Of(-1), Of(0)]);
        var weighted = Goodman().Correct([Of(1), Of(-1), Of(0)], [.. plain.Residual.Select(r => r.Amplitude)]);
        Real(weighted.Masses[0]).ShouldBe(1.0, 1e-13);
        Real(weighted.Masses[1]).ShouldBe(1.8, 1e-13);
        weighted.Residual.ShouldAllBe(r => Math.Abs(r.Amplitude - 0.4) < 1e-13);
        weighted.RootMeanSquare.ShouldBe(0.4, 1e-13);

        // Each weight is the one before times what was left: all alike now, so that nothing moves.
        var again = Goodman().Correct([Of(1), Of(-1), Of(0)], [.. plain.Residual.Zip(weighted.Residual, (p, w) => p.Amplitude * w.Amplitude)]);
        Real(again.Masses[0]).ShouldBe(1.0, 1e-12);
        Real(again.Masses[1]).ShouldBe(1.8, 1e-12);
    }

    [Fact]
    public void Darlow_case_1_three_planes()
    {
        var correction = Darlow([1 + I, 1 + (3 * I), 2 + (2 * I), 3 + I], [2 + I, 4 + (2 * I), 2 + I, 3 + (2 * I)], [3 + (2 * I), 2 + I, 4 + (3 * I), 4 + (2 * I)]);
        Shows(correction.Masses[0], 1.39, 0.005, -4, 0.5);
        Shows(correction.Masses[1], 1.25, 0.005, -144, 0.5);
        Shows(correction.Masses[2], 0.98, 0.005, 168, 0.5);
        Shows(correction.Masses[0], 1.3934, 0.00005, 356.3974, 0.00005);
        Shows(correction.Masses[1], 1.2490, 0.00005, 216.2582, 0.00005);
        Shows(correction.Masses[2], 0.9800, 0.00005, 167.6403, 0.00005);
        correction.RootMeanSquare.ShouldBe(1.418136, 0.0000005);
        correction.IsNearlyDependent.ShouldBeFalse();
    }

    [Fact]
    public void Darlow_case_2_nearly_dependent_planes_are_solved_and_flagged()
    {
        var correction = Darlow([1 + I, 1 + (3 * I), 2 + (2 * I), 3 + I], [3 + (2 * I), 2 + I, 4 + (3 * I), 3 + (2 * I)], [3 + (2 * I), 2 + I, 4 + (3 * I), 4 + (2 * I)]);
        Shows(correction.Masses[0], 0.87, 0.005, 101, 0.5);
        Shows(correction.Masses[1], 4.74, 0.005, 100, 0.5);
        Shows(correction.Masses[2], 5.08, 0.005, -87, 0.5);
        Shows(correction.Masses[0], 0.8701, 0.00005, 100.8403, 0.00005);
        Shows(correction.Masses[1], 4.7407, 0.00005, 99.7152, 0.00005);
        Shows(correction.Masses[2], 5.0782, 0.00005, 272.6678, 0.00005);
        correction.RootMeanSquare.ShouldBe(1.066004, 0.0000005);
        correction.IsNearlyDependent.ShouldBeTrue();
    }

    [Fact]
    public void Darlow_case_3_the_middle_plane_dropped()
    {
        var correction = Darlow([1 + I, 1 + (3 * I), 2 + (2 * I), 3 + I], [3 + (2 * I), 2 + I, 4 + (3 * I), 4 + (2 * I)]);
        Shows(correction.Masses[0], 0.51, 0.005, 46, 0.5);
        Shows(correction.Masses[1], 1.13, 0.005, -155, 0.5);
        Shows(correction.Masses[0], 0.5106, 0.00005, 46.1612, 0.00005);
        Shows(correction.Masses[1], 1.1260, 0.00005, 205.1219, 0.00005);
        correction.RootMeanSquare.ShouldBe(2.037454, 0.0000005);
        correction.IsNearlyDependent.ShouldBeFalse();
    }

    [Fact]
    public void Huang_case_1_exact()
    {
        var correction = Huang().Correct(HuangVibration);
        Shows(correction.Masses[0], 639.888, 0.0005, 73.80, 0.005);
        Shows(correction.Masses[1], 1122.814, 0.0005, 165.19, 0.005);
        correction.RootMeanSquare.ShouldBe(0, 1e-10);
    }

    [Fact]
    public void Huang_case_1_with_real_pieces()
    {
        // 142 g pieces, five and eight of them. Printed: 663 g at 74° and 1104 g at 166°.
        var first = Sum([45, 52.5, 82.5, 90, 97.5]);
        var second = Sum([145, 150, 155, 165, 170, 175, 180, 185]);
        Shows(first, 663, 0.5, 74, 0.5);
        Shows(second, 1104, 0.5, 166, 0.5);
        Shows(first, 663.490, 0.0005, 73.64, 0.005);
        Shows(second, 1104.410, 0.0005, 165.64, 0.005);

        // Printed 3 at 85° and 1 at 346°, from masses that were rounded first; recomputed from the pieces: 2.7 at 79° and 0.70 at 35°.
        var left = Huang().Expected(HuangVibration, [first with { Plane = 1 }, second with { Plane = 2 }]);
        left[0].Amplitude.ShouldBe(2.7, 0.05);
        left[0].Phase!.Value.Degrees.ShouldBe(79, 0.5);
        left[1].Amplitude.ShouldBe(0.70, 0.005);
        left[1].Phase!.Value.Degrees.ShouldBe(35, 0.5);

        // What the pieces do by themselves: printed 32 at 172° and 104 at 166°.
        var done = Huang().Expected([new(0, default(Angle)), new(0, default(Angle))], [first with { Plane = 1 }, second with { Plane = 2 }]);
        done[0].Amplitude.ShouldBe(31.72, 0.005);
        done[0].Phase!.Value.Degrees.ShouldBe(172.1, 0.05);
        done[1].Amplitude.ShouldBe(104.55, 0.005);
        done[1].Phase!.Value.Degrees.ShouldBe(165.7, 0.05);
        var rounded = Huang().Expected(HuangVibration, [Mass(1, 663, 74), Mass(2, 1104, 166)]);
        rounded[0].Amplitude.ShouldBe(2.52, 0.005);
        rounded[1].Amplitude.ShouldBe(0.52, 0.005);
    }

    private static readonly VibrationReading[] HuangVibration = [new(32, Angle.FromDegrees(357)), new(105, Angle.FromDegrees(346))];

    private static InfluenceMatrix Huang() => InfluenceMatrix.Known(
    [
        [new(0.085, Angle.FromDegrees(27)), new(0.053, Angle.FromDegrees(57))],
        [new(0.05, Angle.FromDegrees(82)), new(0.071, Angle.FromDegrees(15))],
    ]);

    private static PlaneMass Sum(double[] places)
    {
        var sum = places.Aggregate(default(UnbalanceVector), (s, a) => s + UnbalanceVector.OfMass(Measures.Mass.FromGrams(142), Length.FromMillimetres(1), WheelAngle.FromDegrees(a)));
        return Mass(1, sum.Amount.GramMillimetres, sum.Place.Degrees);
    }

    private static InfluenceMatrix Goodman() => Matrix([3, 5, 5], [-2, -2, -3]);

    private static LeastSquaresCorrection Darlow(params Complex[][] planes) =>
        Matrix(planes).Correct([Of(1 + (3 * I)), Of(3 + I), Of(4 + I), Of(2 + (5 * I))]);

    private static InfluenceMatrix Matrix(params Complex[][] planes) =>
        InfluenceMatrix.Known([.. planes.Select(p => (IReadOnlyList<InfluenceCoefficient>)[.. p.Select(c => new InfluenceCoefficient(c.Magnitude, Angle.FromRadians(c.Phase)))])]);

    private static VibrationReading Of(Complex phasor) => new(phasor.Magnitude, Angle.FromRadians(phasor.Phase));

    private static Complex Phasor(VibrationReading v) => Complex.FromPolarCoordinates(v.Amplitude, v.Phase!.Value.Radians);

    private static double Real(PlaneMass mass) => mass.Mass.Grams * Math.Cos(mass.Angle.Radians);

    private static PlaneMass Mass(int plane, double grams, double degrees) => new(plane, Measures.Mass.FromGrams(grams), Angle.FromDegrees(degrees));

    private static void Shows(PlaneMass mass, double grams, double gramsWithin, double degrees, double degreesWithin)
    {
        mass.Mass.Grams.ShouldBe(grams, gramsWithin);
        (WheelAngle.FromDegrees(mass.Angle.Degrees) - WheelAngle.FromDegrees(degrees)).Degrees.ShouldBe(0, degreesWithin);
    }
}
