using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Why;
using Trundle.Measures;
using Fault = Trundle.Engine.Tests.Balance.Oracle.Why.SimulatedWheel.Fault;
using Weight = Trundle.Engine.Tests.Balance.Oracle.Why.SimulatedWheel.Weight;

namespace Trundle.Engine.Tests.Balance.Oracle.Why;

/// <summary>Each cause, put into exact displays made from forces, is named first and its size given back.</summary>
public sealed class WhyRecoveryTests
{
    private static readonly double Degree = Math.PI / 180;

    private static SimulatedWheel Wheel(int spins = 2, double deviation = 0.5) => new() { Spins = spins, Deviation = deviation };

    /// <summary>Spins the wheel with a fault; after every spin but the last what is shown is fitted, to 5 g and whole degrees.</summary>
    internal static WhyProblem Spun(SimulatedWheel wheel, Fault fault)
    {
        var weights = new List<Weight>();
        var displays = new List<(Complex Inner, Complex Outer)>();
        for (var j = 0; j < wheel.Spins; j++)
        {
            displays.Add(wheel.Display(fault, weights, j));
            if (j < wheel.Spins - 1)
            {
                weights.Add(Rounded(j, false, displays[j].Inner));
                weights.Add(Rounded(j, true, displays[j].Outer));
            }
        }

        return wheel.Problem(displays, [.. weights.Where(w => w.Grams > 0)]);

        static Weight Rounded(int spin, bool outer, Complex grams) =>
            new(spin, outer, 5 * Math.Round(grams.Magnitude / 5), Math.Round(grams.Phase / Degree) * Degree);
    }

    private static WhyExplanation ShouldBeFirst(WhyProblem problem, WhyCause expected)
    {
        var outcome = BalanceWhy.Run(problem);
        outcome.Explanations.Sum(e => e.Probability).ShouldBe(1, 1e-9);
        outcome.Explanations.Select(e => e.Cause).Distinct().Count().ShouldBe(12);
        outcome.Explanations[0].Cause.ShouldBe(expected, string.Join(", ", outcome.Explanations.Take(4).Select(e => $"{e.Cause} {e.Probability:0.000}")));
        return outcome.Explanations[0];
    }

    private static void ShouldHaveSize(WhyExplanation e, double value, double tolerance)
    {
        var size = e.Estimate.ShouldNotBeNull();
        size.Value.Value!.Value.ShouldBe(value, tolerance);
        size.Low.Value!.Value.ShouldBeLessThan(value);
        size.High.Value!.Value.ShouldBeGreaterThan(value);
    }

    [Theory]
    [InlineData(12)]
    [InlineData(-18)]
    [InlineData(35)]
    public void The_rim_distance(double error) => ShouldHaveSize(ShouldBeFirst(Spun(new SimulatedWheel { Deviation = 0.5, OuterStart = Complex.FromPolarCoordinates(9000, 1.5) }, new Fault { Distance = error }), WhyCause.RimDistance), 60 + error, 1e-6);

    [Theory]
    [InlineData(25.4)]
    [InlineData(-25.4)]
    [InlineData(-50.8)]
    public void The_rim_diameter(double error) => ShouldHaveSize(ShouldBeFirst(Spun(Wheel(), new Fault { Diameter = error }), WhyCause.RimDiameter), 406.4 + error, 1e-6);

    [Theory]
    [InlineData(12.7)]
    [InlineData(-25.4)]
    [InlineData(20)]
    public void The_rim_width(double error) => ShouldHaveSize(ShouldBeFirst(Spun(Wheel(), new Fault { Width = error }), WhyCause.RimWidth), 177.8 + error, 1e-6);

    [Theory]
    [InlineData(0, 10)]
    [InlineData(1, -25)]
    [InlineData(1, 180)]
    public void The_angle_of_one_weight(int weight, double degrees)
    {
        var e = ShouldBeFirst(Spun(Wheel(), new Fault { True = (i, w) => i == weight ? w with { Angle = w.Angle + (degrees * Degree) } : w }), WhyCause.WeightAngle);
        var size = e.Estimate.ShouldNotBeNull();
        Math.IEEERemainder(size.Value.Value!.Value - degrees, 360).ShouldBe(0, 1e-6);
        e.Subject.Weights.ShouldHaveSingleItem().Weight.Plane.ShouldBe(weight == 0 ? PlaneSide.Inner : PlaneSide.Outer);
    }

    [Fact]
    public void The_angle_of_all_weights()
    {
        var e = ShouldBeFirst(Spun(Wheel(), new Fault { True = (_, w) => w with { Angle = w.Angle + (30 * Degree) } }), WhyCause.WeightAngle);
        ShouldHaveSize(e, 30, 1e-6);
        e.Subject.Weights.Count.ShouldBe(2);
    }

    [Theory]
    [InlineData(0, -10)]
    [InlineData(1, 10)]
    [InlineData(1, -5)]
    public void The_mass(int weight, double grams)
    {
        var problem = Spun(Wheel(), new Fault { True = (i, w) => i == weight ? w with { Grams = w.Grams + grams } : w });
        ShouldHaveSize(ShouldBeFirst(problem, WhyCause.WeightMass), problem.Spins[0].FittedAfter[weight].Mass.Grams + grams, 1e-6);
    }

    [Fact]
    public void Planes_swapped()
    {
        var e = ShouldBeFirst(Spun(Wheel(), new Fault { True = (_, w) => w with { Outer = !w.Outer } }), WhyCause.WeightsSwapped);
        e.Estimate.ShouldBeNull();
    }

    [Fact]
    public void A_strip_where_a_clip_was_entered() =>
        ShouldBeFirst(Spun(Wheel(), new Fault { Place = (_, w) => w.Outer ? (0.86, -52) : (1, 0) }), WhyCause.WeightPlace)
            .Subject.Weights.ShouldHaveSingleItem().Weight.Plane.ShouldBe(PlaneSide.Outer);

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void A_weight_lost(int weight) =>
        ShouldBeFirst(Spun(Wheel(), new Fault { On = (i, _) => i != weight }), WhyCause.WeightLost)
            .Subject.Weights.ShouldHaveSingleItem().Weight.Plane.ShouldBe(weight == 0 ? PlaneSide.Inner : PlaneSide.Outer);

    [Fact]
    public void A_weight_lost_after_it_was_seen()
    {
        var e = ShouldBeFirst(Spun(Wheel(spins: 4), new Fault { On = (i, spin) => i != 1 || spin < 2 }), WhyCause.WeightLost);
        e.Subject.AfterSpin.ShouldBe(2);
    }

    [Theory]
    [InlineData(2, 1, 0.2)]
    [InlineData(4, 2, 0.15)]
    public void Seated_off_centre(int spins, int from, double millimetres)
    {
        var wheel = Wheel(spins);
        var half = Complex.FromPolarCoordinates(millimetres * wheel.WheelGrams / 2, 70 * Degree);
        var problem = Spun(wheel, new Fault { Extra = j => j >= from ? (half, half) : (0, 0) }) with { WheelMass = Mass.FromGrams(wheel.WheelGrams) };
        var e = ShouldBeFirst(problem, WhyCause.ReSeated);
        ShouldHaveSize(e, millimetres, 1e-6);
        e.Direction.ShouldNotBeNull().Degrees.ShouldBe(70, 1e-6);
        e.Subject.AfterSpin.ShouldBe(from);
    }

    [Fact]
    public void Something_loose()
    {
        double[] angles = [10, 250, 130, 300, 60];
        ShouldBeFirst(Spun(Wheel(5), new Fault { Extra = j => (Complex.FromPolarCoordinates(1500 + (300 * j), angles[j] * Degree), Complex.FromPolarCoordinates(1500 + (300 * j), angles[j] * Degree)) }), WhyCause.LooseObject)
            .Estimate.ShouldBeNull();
    }

    [Fact]
    public void Off_calibration()
    {
        var gain = Complex.FromPolarCoordinates(1.2, 9 * Degree);
        var e = ShouldBeFirst(Spun(Wheel(3), new Fault { FirstGain = gain, SecondGain = gain }), WhyCause.Calibration);
        ShouldHaveSize(e, 120, 1e-6);
        e.Direction.ShouldNotBeNull().Degrees.ShouldBe(9, 1e-6);
        e.Subject.Transducer.ShouldBeNull();
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void One_transducer_off_calibration(int transducer)
    {
        var gain = Complex.FromPolarCoordinates(0.85, -5 * Degree);
        var e = ShouldBeFirst(Spun(Wheel(3, 0.3), transducer == 1 ? new Fault { FirstGain = gain } : new Fault { SecondGain = gain }), WhyCause.Calibration);
        ShouldHaveSize(e, 85, 1e-6);
        e.Subject.Transducer.ShouldBe(transducer);
    }

    [Fact]
    public void A_wheel_that_came_to_zero() => ShouldBeFirst(Spun(Wheel(2, 1.5), Fault.None), WhyCause.Noise).Probability.ShouldBeGreaterThan(0.3);
}
