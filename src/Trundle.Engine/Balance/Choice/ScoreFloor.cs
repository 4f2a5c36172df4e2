namespace Trundle.Engine.Balance.Choice;

/// <summary>A score that nothing can go below, because the drawer or the limit on mass holds too little.</summary>
internal sealed class ScoreFloor
{
    public ScoreFloor(ScoreParts score, ChoicePlane inner, ChoicePlane outer, bool sharedDrawer, double mostGrams)
    {
        var (needInner, needOuter) = (inner.Need.Magnitude / inner.RadiusMillimetres, outer.Need.Magnitude / outer.RadiusMillimetres);
        var (boundInner, boundOuter) = (score.Bound(PlaneSide.Inner) / inner.RadiusMillimetres, score.Bound(PlaneSide.Outer) / outer.RadiusMillimetres);
        var (mostInner, mostOuter) = (Math.Min(inner.DrawerGrams, mostGrams), Math.Min(outer.DrawerGrams, mostGrams));
        var most = Math.Min(sharedDrawer ? mostInner : mostInner + mostOuter, mostGrams);

        // At a score s a side keeps at most s times its bound: the mass that it needs at least, added up, is no more than there is.
        Least = Math.Max(
            Math.Max((needInner - mostInner) / boundInner, (needOuter - mostOuter) / boundOuter),
            (needInner + needOuter - most) / (boundInner + boundOuter));
        Least = double.IsFinite(Least) ? Math.Max(0, Least - 1e-12) : 0;

        foreach (var part in score.Parts)
        {
            var needed = ((part.OnInner * inner.Need) + (part.OnOuter * outer.Need)).Magnitude;
            var (perInner, perOuter) = (Math.Abs(part.OnInner) * inner.RadiusMillimetres, Math.Abs(part.OnOuter) * outer.RadiusMillimetres);
            var reached = Math.Min(most * Math.Max(perInner, perOuter), (mostInner * perInner) + (mostOuter * perOuter));
            if (double.IsFinite(reached))
            {
                Least = Math.Max(Least, ((needed - reached) * part.PerUnit) - 1e-12);
            }
        }
    }

    /// <summary>Nothing for most wheels.</summary>
    public double Least { get; }
}
