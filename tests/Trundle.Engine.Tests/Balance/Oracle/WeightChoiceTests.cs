using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>The choice of weights against trying everything, and against a fine net of angles where the angle is free.</summary>
public class WeightChoiceTests
{
    [Fact]
    public void At_discrete_places_nothing_beats_the_choice_and_it_says_so()
    {
        for (var seed = 0; seed < 300; seed++)
        {
            ExhaustiveCheck.Fault(RandomProblems.Discrete(seed)).ShouldBeNull($"seed {seed}");
        }
    }

    [Theory]
    [InlineData(BalanceAim.Tolerance, BalanceAim.Mass, BalanceAim.Pieces)]
    [InlineData(BalanceAim.Tolerance, BalanceAim.Pieces)]
    [InlineData(BalanceAim.Mass)]
    [InlineData(BalanceAim.Tolerance)]
    public void Choices_that_are_equal_by_aims_without_a_score_are_parted_by_it(params BalanceAim[] aims)
    {
        for (var seed = 0; seed < 100; seed++)
        {
            ExhaustiveCheck.Fault(RandomProblems.Discrete(seed) with { Aims = aims }).ShouldBeNull($"seed {seed}");
        }
    }

    [Fact]
    public void With_one_piece_in_each_plane_at_any_angle_a_fine_net_finds_nothing_better()
    {
        var tried = 0;
        for (var seed = 0; seed < 200; seed++)
        {
            var problem = RandomProblems.Continuous(seed) with { MaxPieces = 2, Aims = [BalanceAim.Score], MassPenaltyPerGram = 0.01 };
            var outcome = BalanceSolve.Run(problem);
            var oracle = new BruteForce(problem);
            var found = outcome.Score + (0.01 * outcome.TotalMass.Grams);
            var (least, slack) = Net(problem, oracle, 120);
            found.ShouldBeLessThan(least + 1e-9, $"seed {seed}");
            if (outcome.Weights.Select(w => w.Plane).Distinct().Count() == 2)
            {
                // No angle lies further than half a step from the net, so the net cannot be worse by more than that.
                found.ShouldBeGreaterThan(least - slack, $"seed {seed}");
                tried++;
            }

            outcome.ProvenOptimal.ShouldBeTrue($"seed {seed}");
        }

        tried.ShouldBeGreaterThan(60);
    }

    [Fact]
    public void With_more_pieces_at_any_angle_no_random_set_is_better()
    {
        for (var seed = 0; seed < 150; seed++)
        {
            var problem = RandomProblems.Continuous(seed);
            var outcome = BalanceSolve.Run(problem);
            var oracle = new BruteForce(problem);
            var random = new Random(seed + 5000);
            var masses = problem.Stock.Clip.Select(s => s.Mass.Grams).ToArray();
            for (var i = 0; i < 5_000; i++)
            {
                var pieces = random.Next(Math.Max(1, outcome.Pieces) + 1);
                var (inner, outer, grams) = (Complex.Zero, Complex.Zero, 0.0);
                for (var p = 0; p < pieces; p++)
                {
                    var mass = masses[random.Next(masses.Length)];
                    var isInner = random.Next(2) == 0;
                    var radius = (isInner ? problem.Inner : problem.Outer).Place.Radius.Millimetres;
                    var vector = Complex.FromPolarCoordinates(mass * radius, random.NextDouble() * Math.Tau);
                    (inner, outer, grams) = isInner ? (inner + vector, outer, grams + mass) : (inner, outer + vector, grams + mass);
                }

                var score = oracle.Score(inner, outer);
                var better = outcome.WithinTolerance
                    ? score <= 1 && (pieces < outcome.Pieces || (pieces == outcome.Pieces && score + (0.02 * grams) < outcome.Score + (0.02 * outcome.TotalMass.Grams) - 1e-5))
                    : score < outcome.Score - 1e-5;
                better.ShouldBeFalse($"seed {seed}: {pieces} pieces, {grams} g, score {score} against {outcome.Pieces}, {outcome.TotalMass.Grams} g, {outcome.Score}");
            }
        }
    }

    [Fact]
    public void Forbidden_arcs_and_lengths_at_any_angle_are_kept_and_cost_no_more_than_on_a_net()
    {
        var proven = 0;
        for (var seed = 0; seed < 24; seed++)
        {
            var plain = RandomProblems.Continuous(seed);
            var problem = plain with
            {
                MaxPieces = 3,
                Stock = new WeightStock([.. plain.Stock.Clip.Select(s => s with { Size = Length.FromMillimetres(30) })], []),
                Forbidden = [new ForbiddenArc(PlaneSide.Inner, WheelAngle.FromDegrees(seed * 7), WheelAngle.FromDegrees((seed * 7) + 150)), new ForbiddenArc(PlaneSide.Outer, WheelAngle.FromDegrees(330), WheelAngle.FromDegrees(20))],
            };
            var outcome = BalanceSolve.Run(problem);
            foreach (var w in outcome.Weights)
            {
                var radius = problem.Planes.At(w.Plane).Radius;
                var half = 15 / radius.Millimetres * 180 / Math.PI;
                foreach (var arc in problem.Forbidden.Where(f => f.Plane == w.Plane))
                {
                    var open = WheelAngle.FromDegrees(arc.From.Degrees - arc.To.Degrees).Degrees;
                    var along = WheelAngle.FromDegrees(w.Place.Degrees - arc.To.Degrees).Degrees;
                    along.ShouldBeInRange(half - 1e-6, open - half + 1e-5, $"seed {seed}");
                }

                foreach (var other in outcome.Weights.Where(o => o.Plane == w.Plane && !ReferenceEquals(o, w)))
                {
                    (Math.Abs((w.Place - other.Place).Radians) * radius.Millimetres).ShouldBeGreaterThanOrEqualTo(30 - 1e-6, $"seed {seed}");
                }
            }

            var grid = problem with { AngleStep = Angle.FromDegrees(10) };
            var onGrid = BalanceSolve.Run(grid);
            if (outcome.ProvenOptimal)
            {
                proven++;
                if (onGrid.WithinTolerance)
                {
                    outcome.WithinTolerance.ShouldBeTrue($"seed {seed}");
                    outcome.Pieces.ShouldBeLessThanOrEqualTo(onGrid.Pieces, $"seed {seed}");
                }

                if (outcome.WithinTolerance == onGrid.WithinTolerance && outcome.Pieces == onGrid.Pieces)
                {
                    var price = outcome.WithinTolerance ? 0.02 : 0;
                    (outcome.Score + (price * outcome.TotalMass.Grams)).ShouldBeLessThanOrEqualTo(onGrid.Score + (price * onGrid.TotalMass.Grams) + 1e-5, $"seed {seed}");
                }
            }
        }

        proven.ShouldBeGreaterThan(12);
    }

    /// <summary>The least of score and price over a net of angles for every one or none piece a plane, and how much less it may be between the net's knots.</summary>
    private static (double Least, double Slack) Net(BalanceProblem problem, BruteForce oracle, int steps)
    {
        var (least, slack) = (double.PositiveInfinity, 0.0);
        double[] masses = [0, .. problem.Stock.Clip.Select(s => s.Mass.Grams)];
        foreach (var a in masses)
        {
            foreach (var b in masses)
            {
                var (radiusA, radiusB) = (a * problem.Inner.Place.Radius.Millimetres, b * problem.Outer.Place.Radius.Millimetres);
                for (var i = 0; i < (a > 0 ? steps : 1); i++)
                {
                    for (var j = 0; j < (b > 0 ? steps : 1); j++)
                    {
                        var score = oracle.Score(Complex.FromPolarCoordinates(radiusA, Math.Tau * i / steps), Complex.FromPolarCoordinates(radiusB, Math.Tau * j / steps));
                        least = Math.Min(least, score + (0.01 * (a + b)));
                    }
                }

                // What the score makes of half a step in each plane: no more than both steps' scores alone together.
                var half = Math.PI / steps;
                var (needInner, needOuter) = (BruteForce.Vector(problem.Needed.Inner), BruteForce.Vector(problem.Needed.Outer));
                slack = Math.Max(slack, oracle.Score(needInner + (half * radiusA), needOuter) + oracle.Score(needInner, needOuter + (half * radiusB)));
            }
        }

        return (least, slack);
    }
}
