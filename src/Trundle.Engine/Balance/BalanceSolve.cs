using Trundle.Engine.Balance.Choice;
using Trundle.Measures;

namespace Trundle.Engine.Balance;

/// <summary>From what a balancer shows to the weights that the drawer holds.</summary>
public static class BalanceSolve
{
    /// <summary>
    /// The most work that a choice takes, in steps of some 50 ns on a desk machine, but for the last look before it stops. Counted, so that a result never
    /// depends on the machine.
    /// </summary>
    public const long MostWork = WeightChoice.MostWork;

    /// <summary>
    /// The most work for a browser, whose interpreted code does a step in some microseconds: nearly every wheel of the trade is proven in far less
    /// (docs/theory/balance.md), and a page must not stand still for the one that is not.
    /// </summary>
    public const long MostWorkInBrowser = MostWork / 20;

    /// <summary>
    /// Chooses the weights by the order of aims: meet the tolerance; then fewest pieces; then the least of score and price of mass.
    /// Where nothing meets the tolerance, the least score.
    /// </summary>
    /// <param name="problem">Planes, readings, drawer, tolerance and aims. A plane behind spokes needs the spokes.</param>
    /// <param name="mostWork">The most work, in steps: <see cref="MostWork"/> or less.</param>
    /// <returns>The choice, always; with no weight where none helps. <see cref="BalanceOutcome.ProvenOptimal"/> says whether it is proven.</returns>
    /// <source>vector addition in two planes; the choice: docs/theory/balance.md; Huang et al., Shock and Vibration 16 (2009), for real weights as a whole-number problem</source>
    public static BalanceOutcome Run(BalanceProblem problem, long mostWork = MostWork)
    {
        ArgumentNullException.ThrowIfNull(problem);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(mostWork);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(mostWork, MostWork);
        if ((problem.Inner.BehindSpokes || problem.Outer.BehindSpokes) && problem.Spokes is null)
        {
            throw new ArgumentException("Places behind spokes need the spokes.", nameof(problem));
        }

        var score = ScoreParts.Of(problem.Tolerance, problem.Planes, problem.ReadingPlanes);
        var choice = new WeightChoice(problem, score, mostWork);
        var chosen = choice.Best(out var gap);
        List<FittedWeight> weights =
        [
            .. Fitted(problem, PlaneSide.Inner, problem.Inner, chosen.Inner),
            .. Fitted(problem, PlaneSide.Outer, problem.Outer, chosen.Outer),
        ];
        var needed = problem.Needed;
        var added = new UnbalancePair(Sum(weights, PlaneSide.Inner, problem.Planes), Sum(weights, PlaneSide.Outer, problem.Planes));
        var residual = added - needed;
        var value = score.Of(residual.Inner.GramMillimetres, residual.Outer.GramMillimetres, out _);
        var outcome = new BalanceOutcome
        {
            Problem = problem,
            Needed = needed,
            Weights = weights,
            Added = added,
            Parts = Parts(residual),
            PartsWithLengths = [],
            Score = value,
            ScoreBefore = score.Of(needed.Inner.GramMillimetres, needed.Outer.GramMillimetres, out _),
            WithinTolerance = value <= 1 + 1e-9,
            TotalMass = Mass.FromGrams(weights.Sum(w => w.Mass.Grams)),
            Gap = gap,
            StripsTo = double.IsFinite(choice.StripsToGrams) ? Mass.FromGrams(choice.StripsToGrams) : null,
            Work = choice.Work,
            MostWork = mostWork,
        };
        return outcome with { PartsWithLengths = Parts(outcome.ResidualWithLengths) };

        IReadOnlyList<TolerancePart> Parts(UnbalancePair left) => [.. score.Parts.Select(p => Part(p, p.Of(left.Inner.GramMillimetres, left.Outer.GramMillimetres)))];
    }

    private static IEnumerable<FittedWeight> Fitted(BalanceProblem problem, PlaneSide side, WeightPlane plane, PlacedPiece[] pieces)
    {
        var stock = problem.Stock.Of(plane.Kind);
        return pieces.OrderBy(p => p.Degrees).ThenBy(p => p.Type.MassGrams).Select(p => new FittedWeight(
            side,
            plane.Kind,
            Mass.FromGrams(p.Type.MassGrams),
            WheelAngle.FromDegrees(p.Degrees),
            [.. p.Type.Use.SelectMany((n, i) => Enumerable.Repeat(stock[i].Mass, n)).OrderByDescending(m => m)],
            p.Type.SizeMillimetres > 0 ? Length.FromMillimetres(p.Type.SizeMillimetres) : null));
    }

    private static UnbalanceVector Sum(List<FittedWeight> weights, PlaneSide side, PlanePair planes) =>
        weights.Where(w => w.Plane == side).Aggregate(default(UnbalanceVector), (sum, w) => sum + UnbalanceVector.OfMass(w.Mass, planes.At(side).Radius, w.Place));

    /// <summary>A part by its ratio to its tolerance.</summary>
    internal static TolerancePart Part(ScorePart part, double ratio) =>
        new(part.Name, ratio / part.PerUnit, 1 / part.PerUnit, part.Name == "couple" ? "g·mm²" : "g·mm", ratio);
}
