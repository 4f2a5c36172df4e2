using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>A score that nothing can go below, because the drawer or the limit on mass holds too little.</summary>
internal static class ScoreFloor
{
    private const int MostSums = 4000;
    private const long Steps = 200_000;

    /// <summary>The floor by mass alone: in each plane a mass brings the need nearer by no more than itself.</summary>
    public static double Of(ScoreParts score, ChoicePlane inner, ChoicePlane outer, bool sharedDrawer, double mostGrams)
    {
        var (mostInner, mostOuter) = (Math.Min(inner.DrawerGrams, mostGrams), Math.Min(outer.DrawerGrams, mostGrams));
        var most = Math.Min(sharedDrawer ? mostInner : mostInner + mostOuter, mostGrams);
        if (double.IsPositiveInfinity(most))
        {
            return Math.Max(Alone(mostInner, double.PositiveInfinity), Alone(double.PositiveInfinity, mostOuter));
        }

        // The drawer gives one plane a mass that its items can make, and the other no more than the rest.
        var least = double.PositiveInfinity;
        foreach (var grams in Sums(inner, mostInner) is { } sums ? sums : [])
        {
            var rest = Math.Min(most - grams, mostOuter);
            least = Math.Min(least, Alone(grams, Sums(outer, mostOuter)?.Where(s => s <= rest + 1e-6).Max() ?? rest));
        }

        return double.IsFinite(least) ? least : ByMass();

        // Without the items' steps: what both planes need at a score, added up, is no more than there is.
        double ByMass()
        {
            var (boundInner, boundOuter) = (score.Bound(PlaneSide.Inner) / inner.RadiusMillimetres, score.Bound(PlaneSide.Outer) / outer.RadiusMillimetres);
            var together = ((inner.Need.Magnitude / inner.RadiusMillimetres) + (outer.Need.Magnitude / outer.RadiusMillimetres) - most) / (boundInner + boundOuter);
            return Math.Max(double.IsFinite(together) ? together - 1e-12 : 0, Alone(mostInner, mostOuter));
        }

        double Alone(double gramsInner, double gramsOuter)
        {
            var floor = Math.Max(
                (inner.Need.Magnitude - (gramsInner * inner.RadiusMillimetres)) / score.Bound(PlaneSide.Inner),
                (outer.Need.Magnitude - (gramsOuter * outer.RadiusMillimetres)) / score.Bound(PlaneSide.Outer));
            foreach (var part in score.Parts)
            {
                var (perInner, perOuter) = (Math.Abs(part.OnInner) * inner.RadiusMillimetres, Math.Abs(part.OnOuter) * outer.RadiusMillimetres);
                var reached = (perInner == 0 ? 0 : perInner * gramsInner) + (perOuter == 0 ? 0 : perOuter * gramsOuter);
                floor = Math.Max(floor, (((part.OnInner * inner.Need) + (part.OnOuter * outer.Need)).Magnitude - reached) * part.PerUnit);
            }

            return double.IsFinite(floor) ? Math.Max(0, floor - 1e-12) : 0;
        }
    }

    /// <summary>The floor of one plane whose places are few and whose drawer is small: every set of any number of pieces is looked at.</summary>
    public static double OfPlaces(ScoreParts score, ChoicePlane plane, double mostGrams, SearchBudget budget)
    {
        var grams = Math.Min(plane.DrawerGrams, mostGrams);
        if (plane.Places is null || !double.IsFinite(grams) || !double.IsFinite(score.Bound(plane.Side)))
        {
            return 0;
        }

        var part = budget.Part(Steps);
        var least = new DiscretePlane(plane, part).LeastLeft(grams);
        budget.Settle(part);
        return least is { } left ? Math.Max(0, (left / score.Bound(plane.Side)) - 1e-12) : 0;
    }

    /// <summary>Every mass that the counted items of a plane can make; null where there are too many or no count.</summary>
    private static SortedSet<double>? Sums(ChoicePlane plane, double mostGrams)
    {
        if (plane.Counts is null || double.IsPositiveInfinity(plane.DrawerGrams))
        {
            return null;
        }

        var sums = new SortedSet<double> { 0 };
        for (var item = 0; item < plane.Counts.Length; item++)
        {
            if (plane.Types.All.FirstOrDefault(t => t.Use[item] == 1 && t.Use.Sum() == 1) is not { } one)
            {
                continue;
            }

            foreach (var start in sums.ToArray())
            {
                for (var n = 1; n <= plane.Counts[item] && start + (n * one.MassGrams) <= mostGrams + 1e-6; n++)
                {
                    sums.Add(Math.Round(start + (n * one.MassGrams), 6));
                    if (sums.Count > MostSums)
                    {
                        return null;
                    }
                }
            }
        }

        return sums;
    }
}
