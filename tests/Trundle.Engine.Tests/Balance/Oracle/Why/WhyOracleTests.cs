using Trundle.Engine.Balance.Why;

namespace Trundle.Engine.Tests.Balance.Oracle.Why;

/// <summary>The engine's probabilities against the dense covariance and the fine grids.</summary>
public sealed class WhyOracleTests
{
    [Fact]
    public void The_probabilities_are_the_best_that_the_model_allows()
    {
        var causes = new HashSet<string>(StringComparer.Ordinal);
        for (var seed = 700_001; seed <= 700_040; seed++)
        {
            var drawn = WhyCase.Draw(seed, seed % 3 == 0 ? Departure.EvenCauses : Departure.None);
            causes.Add(drawn.Cause);
            var engine = BalanceWhy.Run(drawn.Problem).Explanations.ToDictionary(e => e.Cause.Word(), e => e.Probability, StringComparer.Ordinal);
            foreach (var (cause, probability) in WhyOracle.Of(drawn))
            {
                engine[cause].ShouldBe(probability, 1e-3, $"seed {seed}, {cause}; truly {drawn.Cause}");
            }
        }

        causes.Count.ShouldBeGreaterThan(9);
    }

    [Fact]
    public void The_rim_distance_wrong_by_dz_moves_each_plane_by_static_unbalance_times_dz_over_length_and_radius()
    {
        // The reference case: planes 170 and 350 mm, transducers 0 and −130 mm, 6000 g·mm at 40° and 4500 at 250°, radius 202.8 mm.
        var wheel = new SimulatedWheel
        {
            Distance = 170,
            Width = 180,
            Diameter = 405.6,
            FirstTransducer = 0,
            SecondTransducer = -130,
            InnerStart = System.Numerics.Complex.FromPolarCoordinates(6000, 40 * Math.PI / 180),
            OuterStart = System.Numerics.Complex.FromPolarCoordinates(4500, 250 * Math.PI / 180),
        };
        var right = wheel.Display(SimulatedWheel.Fault.None, [], 0);
        right.Inner.Magnitude.ShouldBe(29.5858, 5e-5);
        right.Outer.Magnitude.ShouldBe(22.1893, 5e-5);
        foreach (var (dz, grams) in new[] { (1.0, 0.0844), (5.0, 0.4218) })
        {
            var wrong = wheel.Display(new SimulatedWheel.Fault { Distance = dz }, [], 0);
            (wrong.Inner - right.Inner).Magnitude.ShouldBe(grams, 5.1e-5);
            ((wrong.Inner - right.Inner) + (wrong.Outer - right.Outer)).Magnitude.ShouldBe(0, 1e-9);
        }
    }
}
