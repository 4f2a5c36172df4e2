using Trundle.Engine.Balance;
using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>Seeded balance problems, small enough to be tried out in full.</summary>
internal static class RandomProblems
{
    private static readonly BalanceGrade[] Grades = [.. new[] { "G 6.3", "G 16", "G 40" }.Select(g => BalanceGrade.Read(g).Value)];

    private static readonly Source Given = Source.Entered("the test");

    /// <summary>A problem with places on a grid or behind spokes, and a limit on pieces and on mass.</summary>
    public static BalanceProblem Discrete(int seed)
    {
        var random = new Random(seed);
        var adhesive = random.Next(3) == 0;
        var spokes = random.Next(2) == 0;
        var inner = Plane(random, 0, random.Next(2) == 0 ? WeightKind.Clip : WeightKind.Adhesive, spokes && random.Next(2) == 0);
        var outer = Plane(random, 90 + random.Next(130), adhesive ? WeightKind.Adhesive : WeightKind.Clip, spokes);
        var planes = new PlanePair(inner.Place, outer.Place);
        var read = random.Next(4) == 0
            ? new PlanePair(new PlanePlace(Length.FromMillimetres(200), Length.FromMillimetres(-15)), new PlanePlace(Length.FromMillimetres(205), Length.FromMillimetres(150)))
            : null;
        return new BalanceProblem
        {
            Inner = inner,
            Outer = outer,
            ReadingPlanes = read,
            Readings = new UnbalancePair(Reading(random, (read ?? planes).Inner), Reading(random, (read ?? planes).Outer)),
            Spokes = new SpokePlaces(random.Next(3, 7), WheelAngle.FromDegrees(random.Next(360))),
            AngleStep = Angle.FromDegrees(random.Next(3) switch { 0 => 45, 1 => 60, _ => 50 }),
            Stock = new WeightStock(Items(random, [5, 10, 15, 20, 30], 3), Items(random, [7, 12], 2)),
            Tolerance = Tolerance(random, 0.4 + (2 * random.NextDouble())),
            MaxPieces = random.Next(6) == 0 ? 3 : random.Next(1, 3),
            MaxMass = Mass.FromGrams(random.Next(30, 70)),
            MassPenaltyPerGram = random.Next(3) switch { 0 => 0, 1 => 0.02, _ => 0.005 },
            Aims = random.Next(6) switch
            {
                0 => [BalanceAim.Tolerance, BalanceAim.Score],
                1 => [BalanceAim.Score],
                2 => [BalanceAim.Tolerance, BalanceAim.Mass, BalanceAim.Pieces],
                _ => BalanceProblem.UsualAims,
            },
            Forbidden = random.Next(3) == 0 ? [new ForbiddenArc(PlaneSide.Outer, WheelAngle.FromDegrees(random.Next(36) * 10), WheelAngle.FromDegrees(random.Next(36) * 10 + 5))] : [],
        };
    }

    /// <summary>A problem of a few dozen sets a plane, of every shape that places, drawers, limits, tolerances and aims can have.</summary>
    public static BalanceProblem Tiny(int seed)
    {
        var random = new Random(seed);
        var spokes = random.Next(2, 6);
        var inner = Plane(random, 0, random.Next(2) == 0 ? WeightKind.Clip : WeightKind.Adhesive, random.Next(2) == 0);
        var outer = Plane(random, 90 + random.Next(130), random.Next(2) == 0 ? WeightKind.Clip : WeightKind.Adhesive, random.Next(2) == 0);
        var planes = new PlanePair(inner.Place, outer.Place);
        var read = random.Next(4) == 0
            ? new PlanePair(new PlanePlace(Length.FromMillimetres(200), Length.FromMillimetres(-15)), new PlanePlace(Length.FromMillimetres(205), Length.FromMillimetres(150)))
            : null;
        var most = random.Next(4) == 0 ? 3 : random.Next(1, 3);
        return new BalanceProblem
        {
            Inner = inner,
            Outer = outer,
            ReadingPlanes = read,
            Readings = new UnbalancePair(Reading(random, (read ?? planes).Inner, 22), Reading(random, (read ?? planes).Outer, 22)),
            Spokes = new SpokePlaces(spokes, WheelAngle.FromDegrees(random.Next(360))),
            AngleStep = Angle.FromDegrees((double[])[90, 120, 100, 72] is var steps ? steps[random.Next(4)] : 0),
            Stock = new WeightStock(Items(random, [5, 10, 15, 20, 30], most == 3 ? 1 : 2), Items(random, [7, 12, 14], most == 3 ? 1 : 2)),
            Tolerance = random.Next(8) == 0
                ? BalanceTolerance.OfGrade(Grades[random.Next(Grades.Length)], Mass.FromGrams(18_000), RotationalSpeed.FromRevolutionsPerMinute(900 + random.Next(400)))
                : Tolerance(random, 0.4 + (3 * random.NextDouble())),
            MaxPieces = most,
            MaxMass = Mass.FromGrams(random.Next(10, most == 3 ? 25 : 36)),
            MassPenaltyPerGram = random.Next(4) switch { 0 => 0, 1 => 0.005, 2 => 0.1, _ => 0.02 },
            Aims = random.Next(2) == 0 ? BalanceProblem.UsualAims : Aims(random),
            Forbidden = [.. Enumerable.Range(0, Math.Max(0, random.Next(4) - 1)).Select(_ => new ForbiddenArc((PlaneSide)random.Next(2), WheelAngle.FromDegrees(random.Next(36) * 10), WheelAngle.FromDegrees((random.Next(36) * 10) + 5)))],
        };
    }

    private static List<BalanceAim> Aims(Random random)
    {
        List<BalanceAim> aims = [.. new[] { BalanceAim.Pieces, BalanceAim.Score, BalanceAim.Mass }.OrderBy(_ => random.Next()).Take(random.Next(1, 4))];
        return random.Next(3) == 0 ? aims : [BalanceAim.Tolerance, .. aims];
    }

    /// <summary>One reading in the outer plane, clips at any angle there and nothing for the inner plane; 200 mm, 5 g a plane.</summary>
    public static BalanceProblem OnePlane(double grams, double degrees, StockItem[] clips)
    {
        var outer = new WeightPlane(WeightKind.Clip, new PlanePlace(Length.FromMillimetres(200), Length.FromMillimetres(150)), false);
        return new BalanceProblem
        {
            Inner = new WeightPlane(WeightKind.Adhesive, new PlanePlace(Length.FromMillimetres(180), Length.FromMillimetres(0)), false),
            Outer = outer,
            Readings = new UnbalancePair(default, UnbalanceVector.OfMass(Mass.FromGrams(grams), outer.Place.Radius, WheelAngle.FromDegrees(degrees))),
            Stock = new WeightStock(clips, []),
            Tolerance = BalanceTolerance.WhereNoneGiven,
        };
    }

    /// <summary>A problem at any angle with lengths, counts and forbidden arcs, of few pieces: at most four on one plane, or three on both.</summary>
    public static BalanceProblem Lengths(int seed, bool bothPlanes)
    {
        var random = new Random(seed);
        var kinds = random.Next(1, bothPlanes || seed % 8 > 0 ? 3 : 4);
        StockItem[] clips = [.. new[] { 5, 10, 15, 20, 25, 30 }.OrderBy(_ => random.Next()).Take(kinds).Select(m => new StockItem(
            Mass.FromGrams(m), random.Next(6) == 0 ? null : Length.FromMillimetres(10 + m + random.Next(40)), random.Next(5) == 0 ? random.Next(1, 4) : null))];
        var heaviest = clips.Max(c => c.Mass.Grams);
        var most = !bothPlanes && kinds == 1 ? 4 : 3;
        var problem = OnePlane(random.NextDouble() * heaviest * (most + 0.3), random.NextDouble() * 360, clips);
        if (bothPlanes)
        {
            var inner = problem.Inner with { Kind = WeightKind.Clip };
            problem = problem with
            {
                Inner = inner,
                Readings = new UnbalancePair(
                    UnbalanceVector.OfMass(Mass.FromGrams(random.NextDouble() * heaviest * 1.5), inner.Place.Radius, WheelAngle.FromDegrees(random.NextDouble() * 360)),
                    UnbalanceVector.OfMass(Mass.FromGrams(random.NextDouble() * heaviest * 2.5), problem.Outer.Place.Radius, WheelAngle.FromDegrees(random.NextDouble() * 360))),
            };
        }

        return problem with
        {
            Tolerance = bothPlanes ? Tolerance(random, 0.5 + (2 * random.NextDouble())) : PerPlane(1 + (6 * random.NextDouble())),
            MaxPieces = most,
            MassPenaltyPerGram = random.Next(3) switch { 0 => 0, 1 => 0.005, _ => 0.02 },
            Forbidden = [.. Enumerable.Range(0, random.Next(4)).Select(_ =>
            {
                var from = random.Next(360);
                return new ForbiddenArc(bothPlanes ? (PlaneSide)random.Next(2) : PlaneSide.Outer, WheelAngle.FromDegrees(from), WheelAngle.FromDegrees(from + random.Next(2, 50)));
            })],
        };
    }

    private static BalanceTolerance PerPlane(double grams) =>
        new() { Inner = PlaneTolerance.Of(Mass.FromGrams(grams)), Outer = PlaneTolerance.Of(Mass.FromGrams(grams)), Source = Given };

    /// <summary>A problem with any angle in both planes, and parts that join them.</summary>
    public static BalanceProblem Continuous(int seed, BalanceTolerance? tolerance = null)
    {
        var random = new Random(seed);
        var inner = Plane(random, 0, WeightKind.Clip, false);
        var outer = Plane(random, 90 + random.Next(130), WeightKind.Clip, false);
        return new BalanceProblem
        {
            Inner = inner,
            Outer = outer,
            Readings = new UnbalancePair(Reading(random, inner.Place), Reading(random, outer.Place)),
            Stock = new WeightStock(Items(random, [10, 20, 30, 40], 2, plain: true), []),
            Tolerance = tolerance ?? Tolerance(random, 0.5 + (2 * random.NextDouble())),
        };
    }

    private static WeightPlane Plane(Random random, double axial, WeightKind kind, bool spokes) =>
        new(kind, new PlanePlace(Length.FromMillimetres(150 + random.Next(70)), Length.FromMillimetres(axial)), spokes);

    private static UnbalanceVector Reading(Random random, PlanePlace plane, int below = 40) =>
        UnbalanceVector.OfMass(Mass.FromGrams(random.Next(below)), plane.Radius, WheelAngle.FromDegrees(random.NextDouble() * 360));

    private static List<StockItem> Items(Random random, int[] masses, int most, bool plain = false) =>
        [.. masses.OrderBy(_ => random.Next()).Take(random.Next(1, most + 1)).Select(m => new StockItem(
            Mass.FromGrams(m),
            !plain && random.Next(4) == 0 ? Length.FromMillimetres(20 + m) : null,
            !plain && random.Next(4) == 0 ? random.Next(3) : null))];

    private static BalanceTolerance Tolerance(Random random, double scale)
    {
        var s = Unbalance.FromGramMillimetres(900 * scale);
        var c = CoupleUnbalance.FromGramSquareMillimetres(110_000 * scale);
        var p = PlaneTolerance.Of(Mass.FromGrams(6 * scale));
        return random.Next(7) switch
        {
            0 => new BalanceTolerance { Static = s, Source = Given },
            1 => new BalanceTolerance { Couple = c, Source = Given },
            2 or 3 => new BalanceTolerance { Static = s, Couple = c, Source = Given },
            4 => new BalanceTolerance { Inner = p, Outer = p, Static = s, Source = Given },
            5 => new BalanceTolerance { Inner = p, Outer = p, Static = s, Couple = c, Source = Given },
            _ => new BalanceTolerance { Inner = p, Outer = p, Source = Given },
        };
    }
}
