using Trundle.Measures;

namespace Trundle.Engine.Balance;

/// <summary>One piece to fit: a clip, or one unbroken strip.</summary>
/// <param name="Plane">Which plane.</param>
/// <param name="Kind">Clip or adhesive.</param>
/// <param name="Mass">Its whole mass.</param>
/// <param name="Place">Where its middle goes.</param>
/// <param name="Segments">The stock items that it is made of, heaviest first.</param>
/// <param name="Size">Its length along the rim, or null where nobody gave it.</param>
public sealed record FittedWeight(PlaneSide Plane, WeightKind Kind, Mass Mass, WheelAngle Place, IReadOnlyList<Mass> Segments, Length? Size)
{
    /// <summary>
    /// The mass that acts at the middle of a strip bent round a radius; the strip's own mass where it has no length.
    /// A strip over an angle 2h acts with sin h / h of its mass.
    /// </summary>
    public Mass ActsAs(Length radius)
    {
        var half = (Size?.Millimetres ?? 0) / (2 * radius.Millimetres);
        return half > 0 ? Mass * (Math.Sin(half) / half) : Mass;
    }
}

/// <summary>One part of what is left, with its tolerance.</summary>
/// <param name="Name">static, couple, inner or outer.</param>
/// <param name="Left">What is left, in <paramref name="Unit"/>.</param>
/// <param name="Tolerance">What may be left, in the same unit.</param>
/// <param name="Unit">g·mm or g·mm².</param>
/// <param name="Ratio">Left over tolerance.</param>
public sealed record TolerancePart(string Name, double Left, double Tolerance, string Unit, double Ratio);

/// <summary>What it costs in mass to part a plane's weight between places.</summary>
/// <param name="Extra">The pieces' mass less that of one weight that would add the same.</param>
/// <param name="Ratio">The pieces' mass over that of the one weight.</param>
public sealed record SplitPrice(Mass Extra, double Ratio);

/// <summary>What a choice lacks to be proven.</summary>
public enum ProofGap
{
    /// <summary>Nothing: it is proven.</summary>
    None,

    /// <summary>The work that a choice may take was used up before everything was looked at.</summary>
    WorkUsedUp,

    /// <summary>Heavier strips than those listed: pulling against each other they may come nearer, and nothing limits them.</summary>
    HeavierStrips,

    /// <summary>More pieces than are looked at, and nothing limits them.</summary>
    MorePieces,

    /// <summary>More orders of pieces around the rim than are tried, or a row of them that reaches half round it.</summary>
    Orders,
}

/// <summary>The weights to fit, and what they leave.</summary>
public sealed record BalanceOutcome
{
    /// <summary>The problem that was solved.</summary>
    public required BalanceProblem Problem { get; init; }

    /// <summary>What has to be added in the planes that carry the weights, before the drawer is opened.</summary>
    public required UnbalancePair Needed { get; init; }

    /// <summary>The pieces to fit, the inner plane's first, each plane's by angle.</summary>
    public required IReadOnlyList<FittedWeight> Weights { get; init; }

    /// <summary>The unbalance before any weight: its heavy places, in the planes that carry the weights.</summary>
    public UnbalancePair Before => Needed.Opposite;

    /// <summary>What the weights add.</summary>
    public required UnbalancePair Added { get; init; }

    /// <summary>The unbalance left: its heavy places, in the planes that carry the weights.</summary>
    public UnbalancePair Residual => Before + Added;

    /// <summary>The same in the planes that the tolerance of a plane is judged in.</summary>
    public UnbalancePair ResidualJudged => Problem.ReadingPlanes is { } read ? Residual.MovedTo(Problem.Planes, read) : Residual;

    /// <summary>The toleranced parts.</summary>
    public required IReadOnlyList<TolerancePart> Parts { get; init; }

    /// <summary>The greatest of the parts over their tolerances.</summary>
    public required double Score { get; init; }

    /// <summary>The score before any weight.</summary>
    public required double ScoreBefore { get; init; }

    /// <summary>The tolerance is met.</summary>
    public required bool WithinTolerance { get; init; }

    /// <summary>
    /// What is left where every strip acts as its length lets it, not as a mass at one point. The choice is made with point masses: this holds it
    /// against the wheel.
    /// </summary>
    public UnbalancePair ResidualWithLengths => Before + new UnbalancePair(AddedWithLengths(PlaneSide.Inner), AddedWithLengths(PlaneSide.Outer));

    /// <summary>The toleranced parts of <see cref="ResidualWithLengths"/>.</summary>
    public required IReadOnlyList<TolerancePart> PartsWithLengths { get; init; }

    /// <summary>The tolerance is met by point masses, and not by the strips as they act.</summary>
    public bool LengthsBreakTolerance => WithinTolerance && PartsWithLengths.Any(p => p.Ratio > 1 + 1e-9);

    private UnbalanceVector AddedWithLengths(PlaneSide side)
    {
        var radius = Problem.Planes.At(side).Radius;
        return Weights.Where(w => w.Plane == side).Aggregate(default(UnbalanceVector), (sum, w) => sum + UnbalanceVector.OfMass(w.ActsAs(radius), radius, w.Place));
    }

    /// <summary>All pieces together.</summary>
    public required Mass TotalMass { get; init; }

    /// <summary>
    /// What a split costs: of a side, the mass of its pieces against the one weight that would add the same vector. Two places 2a apart cost
    /// 1/cos a where they share it evenly.
    /// </summary>
    /// <param name="side">Which side.</param>
    /// <returns>Null where the side has fewer than two pieces, or they add nothing.</returns>
    /// <source>vector addition; docs/theory/balance.md (choosing real weights)</source>
    public SplitPrice? SplitPriceOf(PlaneSide side)
    {
        var mass = Weights.Where(w => w.Plane == side).Sum(w => w.Mass.Grams);
        var one = Added.At(side).MassAt(Problem.Planes.At(side).Radius).Grams;
        return Weights.Count(w => w.Plane == side) > 1 && one > 1e-9 ? new SplitPrice(Mass.FromGrams(Math.Max(0, mass - one)), Math.Max(1, mass / one)) : null;
    }

    /// <summary>The same of both sides together: all split sides' mass against one weight in each.</summary>
    /// <source>vector addition; docs/theory/balance.md (choosing real weights)</source>
    public SplitPrice? SplitPrice
    {
        get
        {
            SplitPrice[] prices = [.. new[] { PlaneSide.Inner, PlaneSide.Outer }.Select(SplitPriceOf).OfType<SplitPrice>()];
            if (prices.Length < 2)
            {
                return prices.SingleOrDefault();
            }

            var mass = Weights.Sum(w => w.Mass.Grams);
            var extra = prices.Sum(p => p.Extra.Grams);
            return new SplitPrice(Mass.FromGrams(extra), mass / (mass - extra));
        }
    }

    /// <summary>How many pieces.</summary>
    public int Pieces => Weights.Count;

    /// <summary>Proven to be the best by the order of aims, to a hundred-thousandth of the score.</summary>
    public bool ProvenOptimal => Gap == ProofGap.None;

    /// <summary>Why it is not proven.</summary>
    public required ProofGap Gap { get; init; }

    /// <summary>Strips up to this mass were looked at, all of them; null where every strip that may be fitted was.</summary>
    public required Mass? StripsTo { get; init; }

    /// <summary>The work that the choice took, in counted steps: see <see cref="BalanceSolve.MostWork"/>.</summary>
    public required long Work { get; init; }

    /// <summary>The work that it might have taken.</summary>
    public required long MostWork { get; init; }
}
