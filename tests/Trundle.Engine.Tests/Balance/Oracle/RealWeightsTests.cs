using Trundle.Engine.Balance;
using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>
/// Choices with real weights that were worked out by exhaustion apart from this code: one plane that needs 35 g at 100° behind five spokes (72° apart,
/// one at the valve), in 5 g steps up to 60 g a spoke; and two weights of the drawer spread about a wanted place.
/// </summary>
public class RealWeightsTests
{
    private static readonly int[] FiveGramSteps = [.. Enumerable.Range(1, 12).Select(i => 5 * i)];

    [Fact]
    public void Two_spokes_with_mass_at_no_price_take_an_absurd_pair()
    {
        var outcome = BalanceSolve.Run(Spokes(FiveGramSteps, "g") with { MassPenaltyPerGram = 0, MaxPieces = 2, Aims = [BalanceAim.Score] });
        Fitted(outcome).ShouldBe([(72, 55), (216, 30)]);
        Left(outcome).ShouldBe(1.2145, 0.00005);
        outcome.ProvenOptimal.ShouldBeTrue();
    }

    [Fact]
    public void Two_spokes_with_mass_at_its_usual_price_take_the_neighbours()
    {
        var outcome = BalanceSolve.Run(Spokes(FiveGramSteps, "g"));
        Fitted(outcome).ShouldBe([(72, 25), (144, 15)]);
        Left(outcome).ShouldBe(2.5095, 0.00005);
        outcome.Pieces.ShouldBe(2);
        outcome.ProvenOptimal.ShouldBeTrue();

        // The next best pair of neighbours has 20 g behind the second spoke.
        var radius = Length.FromMillimetres(180);
        var next = At(25, 72) + At(20, 144) + At(35, 280);
        next.MassAt(radius).Grams.ShouldBe(2.6044, 0.00005);
        next.MassAt(radius).Grams.ShouldBeGreaterThan(Left(outcome));

        UnbalanceVector At(double grams, double degrees) => UnbalanceVector.OfMass(Mass.FromGrams(grams), radius, WheelAngle.FromDegrees(degrees));
    }

    [Fact]
    public void Three_spokes_with_mass_at_no_price()
    {
        var outcome = BalanceSolve.Run(Spokes(FiveGramSteps, "g") with { MassPenaltyPerGram = 0, MaxPieces = 3, Aims = [BalanceAim.Score] });
        Fitted(outcome).ShouldBe([(72, 45), (144, 5), (216, 20)]);
        Left(outcome).ShouldBe(0.5443, 0.00005);
    }

    [Fact]
    public void Three_spokes_under_fifty_grams()
    {
        var outcome = BalanceSolve.Run(Spokes(FiveGramSteps, "g") with { MassPenaltyPerGram = 0, MaxPieces = 3, MaxMass = Mass.FromGrams(50), Aims = [BalanceAim.Score] });
        Fitted(outcome).ShouldBe([(72, 30), (144, 15), (216, 5)]);
        Left(outcome).ShouldBe(0.8342, 0.00005);
    }

    [Fact]
    public void Quarter_ounces_between_the_neighbours()
    {
        var outcome = BalanceSolve.Run(Spokes([.. Enumerable.Range(1, 8)], "quarter ounces"));
        Left(outcome).ShouldBe(3.4702, 0.00005);
        outcome.Weights.Select(w => (w.Place.Degrees, Math.Round(w.Mass.Ounces * 4, 9))).ShouldBe([(72, 4), (144, 2)]);
    }

    [Fact]
    public void An_exact_split_behind_two_spokes_shows_its_price()
    {
        var split = UnbalanceVector.OfMass(Mass.FromGrams(35), Length.FromMillimetres(1), WheelAngle.FromDegrees(100))
            .SplitBetween(WheelAngle.FromDegrees(72), WheelAngle.FromDegrees(144)).ShouldNotBeNull();
        split.First.GramMillimetres.ShouldBe(25.5642, 0.00005);
        split.Second.GramMillimetres.ShouldBe(17.2771, 0.00005);
    }

    [Theory]
    [InlineData(5, 1.2361)]
    [InlineData(6, 1.1547)]
    [InlineData(7, 1.1099)]
    [InlineData(10, 1.0515)]
    public void The_price_of_a_split_half_way_between_spokes(int spokes, double times)
    {
        var gap = 360.0 / spokes;
        var split = UnbalanceVector.At(Unbalance.FromGramMillimetres(1), WheelAngle.FromDegrees(gap / 2)).SplitBetween(default, WheelAngle.FromDegrees(gap)).ShouldNotBeNull();
        (split.First + split.Second).GramMillimetres.ShouldBe(times, 0.00005);
    }

    [Fact]
    public void No_split_outside_the_gap_or_between_facing_places()
    {
        var vector = UnbalanceVector.At(Unbalance.FromGramMillimetres(1), WheelAngle.FromDegrees(100));
        vector.SplitBetween(WheelAngle.FromDegrees(0), WheelAngle.FromDegrees(72)).ShouldBeNull();
        vector.SplitBetween(WheelAngle.FromDegrees(10), WheelAngle.FromDegrees(190)).ShouldBeNull();
    }

    [Theory]
    [InlineData(37.4, new[] { 20 }, -20.7719, 20.7719)]
    [InlineData(22.1893, new[] { 15 }, -42.2990, 42.2990)]
    [InlineData(29.5858, new[] { 15 }, -9.5320, 9.5320)]
    [InlineData(37.4, new[] { 15, 25 }, -15.8660, 27.1066)]
    public void Two_weights_spread_about_the_wanted_place_are_exact(double wanted, int[] stock, double before, double after)
    {
        var problem = Plane(wanted, 100, WheelAngle.FromDegrees(100)) with
        {
            Stock = new WeightStock([.. stock.Select(g => new StockItem(Mass.FromGrams(g), null, stock.Length > 1 ? 1 : null))], []),
            Tolerance = Tight(0.01),
        };
        var outcome = BalanceSolve.Run(problem);
        Left(outcome).ShouldBe(0, 1e-6);
        outcome.Pieces.ShouldBe(2);
        outcome.ProvenOptimal.ShouldBeTrue();

        // Of two mirrored answers either is right; seen from the heavier one they are the same.
        double[] turns = [.. outcome.Weights.OrderByDescending(w => w.Mass).ThenBy(w => w.Place.Degrees).Select(w => (w.Place - WheelAngle.FromDegrees(100)).Degrees)];
        var mirrored = turns[0] > 0 ? -1 : 1;
        (mirrored * turns[0]).ShouldBe(before, 0.00005);
        (mirrored * turns[1]).ShouldBe(after, 0.00005);
    }

    [Theory]
    [InlineData(5, 2.5)]
    [InlineData(7.0874, 3.544)]
    public void One_weight_in_steps_leaves_at_most_half_a_step(double step, double floor)
    {
        var worst = 0.0;
        for (var need = step / 2; need < 60; need += 0.37)
        {
            var problem = Plane(need, 100, WheelAngle.FromDegrees(100)) with
            {
                Stock = new WeightStock([.. Enumerable.Range(1, 14).Select(i => new StockItem(Mass.FromGrams(i * step), null, null))], []),
                MassPenaltyPerGram = 0,
                MaxPieces = 1,
                Aims = [BalanceAim.Score],
            };
            worst = Math.Max(worst, Left(BalanceSolve.Run(problem)));
        }

        worst.ShouldBeInRange(floor - 0.2, floor + 0.0005);
    }

    [Fact]
    public void The_nearest_weight_in_each_plane_is_not_the_least_static()
    {
        var planes = new PlanePair(new PlanePlace(Length.FromMillimetres(202.8), Length.FromMillimetres(170)), new PlanePlace(Length.FromMillimetres(202.8), Length.FromMillimetres(350)));
        double[][] rows = [[30, 20, 0.414, 2.189, 2.556, 0.921], [30, 25, 0.414, 2.811, 2.461, 1.588]];
        foreach (var row in rows)
        {
            var left = new UnbalancePair(At(row[0] - 29.5858, 220), At(row[1] - 22.1893, 70));
            Math.Abs(row[0] - 29.5858).ShouldBe(row[2], 0.0005);
            Math.Abs(row[1] - 22.1893).ShouldBe(row[3], 0.0005);
            left.Static.MassAt(planes.Inner.Radius).Grams.ShouldBe(row[4], 0.0005);
            left.Couple(planes).InOuterPlane(planes.Apart).MassAt(planes.Inner.Radius).Grams.ShouldBe(row[5], 0.0005);
        }

        new UnbalancePair(At(25 - 29.5858, 220), At(20 - 22.1893, 70)).Static.MassAt(planes.Inner.Radius).Grams.ShouldBe(2.904, 0.0005);
        new UnbalancePair(At(25 - 29.5858, 220), At(25 - 22.1893, 70)).Static.MassAt(planes.Inner.Radius).Grams.ShouldBe(7.159, 0.0005);

        static UnbalanceVector At(double grams, double degrees) =>
            UnbalanceVector.OfMass(Mass.FromGrams(Math.Abs(grams)), Length.FromMillimetres(202.8), WheelAngle.FromDegrees(grams < 0 ? degrees + 180 : degrees));
    }

    [Fact]
    public void A_joint_choice_is_not_each_plane_for_itself()
    {
        // The same wheel behind twelve spokes, one of them at each wanted place.
        var place = new PlanePlace(Length.FromMillimetres(202.8), Length.FromMillimetres(170));
        var problem = new BalanceProblem
        {
            Inner = new WeightPlane(WeightKind.Adhesive, place, true),
            Outer = new WeightPlane(WeightKind.Adhesive, place with { Axial = Length.FromMillimetres(350) }, true),
            Readings = new UnbalancePair(
                UnbalanceVector.OfMass(Mass.FromGrams(29.5858), place.Radius, WheelAngle.FromDegrees(220)), UnbalanceVector.OfMass(Mass.FromGrams(22.1893), place.Radius, WheelAngle.FromDegrees(70))),
            Spokes = new SpokePlaces(12, WheelAngle.FromDegrees(10)),
            Stock = new WeightStock([], [new StockItem(Mass.FromGrams(5), null, null)]),
            Tolerance = Tight(5),
            MaxPieces = 2,
            MaxMass = Mass.FromGrams(80),
            MassPenaltyPerGram = 0,
            Aims = [BalanceAim.Score],
        };
        var alone = BalanceSolve.Run(problem);
        Fitted(alone).ShouldBe([(220, 30), (70, 20)]);
        alone.Residual.Static.MassAt(place.Radius).Grams.ShouldBe(2.556, 0.0005);

        var joint = problem with { Tolerance = new BalanceTolerance { Static = Unbalance.FromGramMillimetres(1000), Source = Source.Entered("the test") } };
        ExhaustiveCheck.Fault(problem).ShouldBeNull();
        ExhaustiveCheck.Fault(joint).ShouldBeNull();
        BalanceSolve.Run(joint).Residual.Static.MassAt(place.Radius).Grams.ShouldBeLessThan(2.461);
    }

    [Fact]
    public void Equal_couples_are_parted_by_what_is_left_in_both_planes()
    {
        // A pure couple of 25 g in each plane: 50 g on one plane would make the same couple, and leave 50 g static.
        var problem = Plane(25, 180, WheelAngle.FromDegrees(90));
        problem = problem with
        {
            Inner = problem.Inner with { Kind = WeightKind.Clip },
            Readings = new UnbalancePair(problem.Readings.Outer.Opposite, problem.Readings.Outer),
            Stock = new WeightStock([new StockItem(Mass.FromGrams(25), null, null)], []),
            Tolerance = new BalanceTolerance { Couple = CoupleUnbalance.FromGramSquareMillimetres(50_000), Source = Source.Entered("the test") },
        };
        foreach (var step in new Angle?[] { null, Angle.FromDegrees(30) })
        {
            var outcome = BalanceSolve.Run(problem with { AngleStep = step });
            Fitted(outcome).Select(f => (Math.Round(f.Item1, 4), f.Item2)).ShouldBe([(270, 25), (90, 25)]);
            outcome.Residual.Static.Amount.GramMillimetres.ShouldBe(0, 0.01);
            outcome.ProvenOptimal.ShouldBeTrue();
        }
    }

    [Fact]
    public void A_split_behind_two_spokes_tells_its_price()
    {
        var outcome = BalanceSolve.Run(Spokes(FiveGramSteps, "g"));

        // 25 g and 15 g, 72° apart, add what one weight of √(25² + 15² + 2·25·15·cos 72°) g would.
        var one = Math.Sqrt(625 + 225 + (750 * Math.Cos(72 * Math.PI / 180)));
        var price = outcome.SplitPrice.ShouldNotBeNull();
        price.Extra.Grams.ShouldBe(40 - one, 1e-9);
        price.Ratio.ShouldBe(40 / one, 1e-12);
        outcome.SplitPriceOf(PlaneSide.Inner).ShouldBeNull();
        BalanceSolve.Run(Plane(35, 180, WheelAngle.FromDegrees(100)) with { Stock = new WeightStock([new StockItem(Mass.FromGrams(35), null, null)], []) }).SplitPrice.ShouldBeNull();
    }

    private static BalanceProblem Plane(double grams, double radius, WheelAngle place) => new()
    {
        Inner = new WeightPlane(WeightKind.Adhesive, new PlanePlace(Length.FromMillimetres(radius), Length.FromMillimetres(0)), false),
        Outer = new WeightPlane(WeightKind.Clip, new PlanePlace(Length.FromMillimetres(radius), Length.FromMillimetres(150)), false),
        Readings = new UnbalancePair(default, UnbalanceVector.OfMass(Mass.FromGrams(grams), Length.FromMillimetres(radius), place)),
        Stock = new WeightStock([], []),
        Tolerance = BalanceTolerance.WhereNoneGiven,
    };

    private static BalanceProblem Spokes(int[] steps, string unit)
    {
        var problem = Plane(35, 180, WheelAngle.FromDegrees(100));
        return problem with
        {
            Outer = problem.Outer with { BehindSpokes = true },
            Spokes = new SpokePlaces(5, default),
            Stock = new WeightStock([.. steps.Select(s => new StockItem(unit == "g" ? Mass.FromGrams(s) : Mass.FromOunces(s / 4.0), null, null))], []),
        };
    }

    private static BalanceTolerance Tight(double grams) => new()
    {
        Inner = PlaneTolerance.Of(Mass.FromGrams(grams)),
        Outer = PlaneTolerance.Of(Mass.FromGrams(grams)),
        Source = Source.Entered("the test"),
    };

    private static (double, double)[] Fitted(BalanceOutcome outcome) => [.. outcome.Weights.Select(w => (w.Place.Degrees, Math.Round(w.Mass.Grams, 6)))];

    private static double Left(BalanceOutcome outcome) => outcome.Residual.Outer.MassAt(outcome.Problem.Outer.Place.Radius).Grams;
}
