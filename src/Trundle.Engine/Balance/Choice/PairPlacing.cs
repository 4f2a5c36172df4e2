namespace Trundle.Engine.Balance.Choice;

/// <summary>
/// Puts the pieces of two reaches, one a side, where they do best. A reach that is only bounded from outside is worked out in truth where the best within
/// its bound cannot be made.
/// </summary>
internal sealed class PairPlacing(PairMinimum minimum, ChoicePlane inner, ChoicePlane outer, bool separate)
{
    /// <summary>True where what was last placed comes to the best of the reaches as they were given, bounds from outside as well.</summary>
    public bool IsAtBound { get; private set; }

    /// <summary>The pieces at their best places; null where nothing comes to the score to beat, or no places were found.</summary>
    /// <param name="a">The inner reach.</param>
    /// <param name="b">The outer reach.</param>
    /// <param name="beat">Only a score up to this is of use.</param>
    /// <param name="missed">A score that the two might still come to, and nothing lower; infinite where nothing was left out.</param>
    public (PlacedPiece[] Inner, PlacedPiece[] Outer)? Best(Reach a, Reach b, double beat, out double missed)
    {
        missed = double.PositiveInfinity;
        IsAtBound = true;
        while (minimum.Best(a, b, beat) is { } least)
        {
            if (!separate)
            {
                least = minimum.Settled(a, b, least);
            }

            if (!a.IsPartial && !b.IsPartial)
            {
                missed = least.Score;
            }

            var (atInner, atOuter) = (inner.Placed(a, least.Inner), outer.Placed(b, least.Outer));
            if (atInner is not null && atOuter is not null)
            {
                missed = a.IsPartial || b.IsPartial ? missed : double.PositiveInfinity;
                return (atInner, atOuter);
            }

            var (grownA, grownB) = (atInner is null ? a.Grown() : a, atOuter is null ? b.Grown() : b);
            if (grownA is null || grownB is null)
            {
                missed = double.PositiveInfinity;
                return null;
            }

            if (ReferenceEquals(a, grownA) && ReferenceEquals(b, grownB))
            {
                return null;
            }

            (a, b, IsAtBound) = (grownA, grownB, false);
        }

        // A region that is known in part only may still hold what its bound promised.
        missed = a.IsPartial || b.IsPartial ? missed : double.PositiveInfinity;
        return null;
    }
}
