namespace Trundle.Engine.Balance.Choice;

/// <summary>Makes the two planes of a choice from a problem.</summary>
internal static class PlaneSetup
{
    private const double ListedUpTo = 100;

    public static (ChoicePlane Inner, ChoicePlane Outer) Of(BalanceProblem problem, ScoreParts score)
    {
        var needed = problem.Needed;
        var total = (needed.Inner.GramMillimetres.Magnitude / problem.Inner.Place.Radius.Millimetres)
            + (needed.Outer.GramMillimetres.Magnitude / problem.Outer.Place.Radius.Millimetres);
        return (Plane(PlaneSide.Inner, problem.Inner), Plane(PlaneSide.Outer, problem.Outer));

        ChoicePlane Plane(PlaneSide side, WeightPlane plane)
        {
            var stock = problem.Stock.Of(plane.Kind);
            var radius = plane.Place.Radius.Millimetres;
            var need = needed.At(side).GramMillimetres;
            var bound = score.Bound(side);
            var near = (double.IsFinite(bound) ? need.Magnitude + bound : Loose(side)) / radius;
            var segment = stock.Select(s => s.Mass.Grams).DefaultIfEmpty(0).Max();

            // Beyond this a strip costs more in the score than any choice that meets the tolerance can.
            var priced = problem.MassPenaltyPerGram > 0 ? Math.Min(1 / problem.MassPenaltyPerGram, 200) + (1.5 * total) : 0;
            return new ChoicePlane
            {
                Side = side,
                Kind = plane.Kind,
                RadiusMillimetres = radius,
                Need = need,
                Types = PieceTypes.Of(plane.Kind, stock, Math.Max(Math.Max((2 * near) + (2 * segment), priced), ListedUpTo), problem.MaxMass?.Grams ?? double.PositiveInfinity),
                Places = Places(problem, plane),
                Forbidden = [.. problem.Forbidden.Where(f => f.Plane == side).Select(f => (f.From.Radians, AllowedArcs.Turn(f.To.Radians - f.From.Radians)))],
                DrawerGrams = stock.All(s => s.Count is not null) ? stock.Sum(s => s.Count!.Value * s.Mass.Grams) : double.PositiveInfinity,
                Counts = stock.Any(s => s.Count is not null) ? [.. stock.Select(s => s.Count ?? -1)] : null,
            };
        }

        double Loose(PlaneSide side) => score.Parts
            .Where(p => p.Factor(side) != 0)
            .Select(p => (((p.OnInner * needed.Inner.GramMillimetres) + (p.OnOuter * needed.Outer.GramMillimetres)).Magnitude + (1 / p.PerUnit)) / Math.Abs(p.Factor(side)))
            .DefaultIfEmpty(0).Max();
    }

    private static double[]? Places(BalanceProblem problem, WeightPlane plane)
    {
        if (plane.BehindSpokes)
        {
            return [.. problem.Spokes!.Places.Select(a => a.Degrees)];
        }

        if (problem.AngleStep is not { } step)
        {
            return null;
        }

        var count = (int)Math.Ceiling((360 / step.Degrees) - 1e-9);
        return [.. Enumerable.Range(0, count).Select(i => i * step.Degrees)];
    }
}
