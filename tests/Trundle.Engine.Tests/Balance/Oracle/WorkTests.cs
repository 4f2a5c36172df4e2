using System.Collections.Concurrent;
using Trundle.Engine.Balance;
using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>How much work a choice takes: counted, so that this holds on any machine.</summary>
public class WorkTests
{
    // One look may pass the mark before it stops.
    private const long OneLook = 200_000;

    [Fact]
    public void No_drawer_lengths_and_arcs_take_more_than_the_most()
    {
        var faults = new ConcurrentBag<string>();
        var stopped = 0;
        Parallel.For(0, 60, seed =>
        {
            var outcome = BalanceSolve.Run(Hard(seed));
            if (outcome.Work > BalanceSolve.MostWork + OneLook)
            {
                faults.Add($"seed {seed}: {outcome.Work}");
            }

            if (outcome.Gap == ProofGap.WorkUsedUp)
            {
                Interlocked.Increment(ref stopped);
                if (new BruteForce(outcome.Problem).Fault(outcome.Weights) is { } misplaced)
                {
                    faults.Add($"seed {seed}: may not be fitted: {misplaced}");
                }

                // What was found in the time is no worse than what chance finds.
                var search = new AngleSearch(outcome.Problem, seed);
                var least = Enumerable.Range(2, 7).Min(pieces => search.Least(pieces, double.PositiveInfinity, 0, 8, 400));
                if (!outcome.WithinTolerance && least < outcome.Score)
                {
                    faults.Add($"seed {seed}: {outcome.Score}, by chance {least}");
                }
            }
        });
        faults.Take(5).ShouldBeEmpty();

        // Some of these are too much for it, or the test would show nothing.
        stopped.ShouldBeGreaterThan(5);
    }

    [Fact]
    public void Usual_wheels_with_lengths_past_a_valve_are_proven_with_a_twentieth_of_the_most()
    {
        var work = new ConcurrentBag<long>();
        Parallel.For(0, 200, seed =>
        {
            var outcome = BalanceSolve.Run(Usual(seed));
            outcome.ProvenOptimal.ShouldBeTrue($"seed {seed}");
            outcome.WithinTolerance.ShouldBeTrue($"seed {seed}");
            work.Add(outcome.Work);
        });
        work.Max().ShouldBeLessThan(BalanceSolve.MostWork / 5);
        work.Order().ElementAt(work.Count * 95 / 100).ShouldBeLessThan(BalanceSolve.MostWork / 20);
    }

    [Fact]
    public void A_browsers_share_of_the_work_holds_and_is_enough_for_usual_wheels()
    {
        var faults = new ConcurrentBag<string>();
        var same = 0;
        Parallel.For(0, 100, seed =>
        {
            var hard = BalanceSolve.Run(Hard(seed), BalanceSolve.MostWorkInBrowser);
            if (hard.Work > BalanceSolve.MostWorkInBrowser + OneLook || new BruteForce(hard.Problem).Fault(hard.Weights) is not null)
            {
                faults.Add($"hard {seed}: {hard.Work}");
            }

            var usual = BalanceSolve.Run(Usual(seed), BalanceSolve.MostWorkInBrowser);
            var whole = BalanceSolve.Run(Usual(seed));
            if (!usual.WithinTolerance || (usual.ProvenOptimal && Math.Abs(usual.Score - whole.Score) > 1e-4))
            {
                faults.Add($"usual {seed}: {usual.Score}, with all the work {whole.Score}");
            }

            if (usual.ProvenOptimal)
            {
                Interlocked.Increment(ref same);
            }
        });
        faults.Take(5).ShouldBeEmpty();
        same.ShouldBeGreaterThan(90);
    }

    /// <summary>Up to twelve kinds of clip or four of segment, counted or not, with lengths, up to nine arcs a plane, up to 150 g a plane.</summary>
    private static BalanceProblem Hard(int seed)
    {
        var random = new Random(seed);
        var inner = Plane(WeightKind.Clip, 202.8, 0);
        var outer = random.Next(2) == 0 ? Plane(WeightKind.Clip, 202.8, 180) : Plane(WeightKind.Adhesive, 178, 135);
        return new BalanceProblem
        {
            Inner = inner,
            Outer = outer,
            Readings = new UnbalancePair(Reading(random, inner, 150), Reading(random, outer, 150)),
            Stock = new WeightStock(
                [.. Enumerable.Range(1, random.Next(2, 13)).Select(i => Item(5 * i, 12 + (random.Next(2, 6) * i)))],
                [.. new[] { 5, 10, 3, 7 }.Take(random.Next(1, 5)).Select(g => Item(g, 12 + g))]),
            Tolerance = Tolerance(random, seed % 3),
            Forbidden = [.. Arcs(PlaneSide.Inner), .. Arcs(PlaneSide.Outer)],
        };

        StockItem Item(double grams, double length) =>
            new(Mass.FromGrams(grams), Length.FromMillimetres(length), random.Next(3) == 0 ? random.Next(1, 12) : null);

        IEnumerable<ForbiddenArc> Arcs(PlaneSide side) => Enumerable.Range(0, random.Next(0, 10)).Select(_ =>
        {
            var from = random.Next(360);
            return new ForbiddenArc(side, WheelAngle.FromDegrees(from), WheelAngle.FromDegrees(from + random.Next(2, 30)));
        });
    }

    /// <summary>Clips with lengths on both flanges or strips from a counted drawer outside, past the valve, up to 60 g a plane.</summary>
    private static BalanceProblem Usual(int seed)
    {
        var random = new Random(seed);
        var inner = Plane(WeightKind.Clip, 202.8, 0);
        var outer = seed % 2 == 0 ? Plane(WeightKind.Clip, 202.8, 180) : Plane(WeightKind.Adhesive, 178, 135);
        return new BalanceProblem
        {
            Inner = inner,
            Outer = outer,
            Readings = new UnbalancePair(Reading(random, inner, 60), Reading(random, outer, 60)),
            Stock = new WeightStock(
                [.. Enumerable.Range(1, 12).Select(i => new StockItem(Mass.FromGrams(5 * i), Length.FromMillimetres(12 + (3 * i)), null))],
                [new StockItem(Mass.FromGrams(5), Length.FromMillimetres(19), 12), new StockItem(Mass.FromGrams(10), Length.FromMillimetres(24), 8)]),
            Tolerance = Tolerance(random, seed % 4),
            Forbidden = [new ForbiddenArc(PlaneSide.Outer, WheelAngle.FromDegrees(350), WheelAngle.FromDegrees(10))],
        };
    }

    private static WeightPlane Plane(WeightKind kind, double radius, double axial) =>
        new(kind, new PlanePlace(Length.FromMillimetres(radius), Length.FromMillimetres(axial)), false);

    private static UnbalanceVector Reading(Random random, WeightPlane plane, double most) =>
        UnbalanceVector.OfMass(Mass.FromGrams(random.NextDouble() * most), plane.Place.Radius, WheelAngle.FromDegrees(random.NextDouble() * 360));

    private static BalanceTolerance Tolerance(Random random, int which)
    {
        var s = Unbalance.FromGramMillimetres(600 + random.Next(800));
        return which switch
        {
            0 => BalanceTolerance.WhereNoneGiven,
            1 => new BalanceTolerance { Static = s, Couple = CoupleUnbalance.FromGramSquareMillimetres(150_000), Source = Source.Entered("the test") },
            2 => BalanceTolerance.WhereNoneGiven with { Static = s },
            _ => new BalanceTolerance { Static = s, Source = Source.Entered("the test") },
        };
    }
}
