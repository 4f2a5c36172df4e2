namespace Trundle.Engine.Balance.Choice;

/// <summary>Makes the two planes of a choice from a problem.</summary>
internal static class PlaneSetup
{
    private const double ListedUpTo = 100;

    /// <param name="problem">Planes, readings, drawer and limits.</param>
    /// <param name="score">The parts of the score.</param>
    /// <param name="listedGrams">Strips are listed at least up to this mass.</param>
    public static (ChoicePlane Inner, ChoicePlane Outer) Of(BalanceProblem problem, ScoreParts score, double listedGrams = ListedUpTo)
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
            var places = Places(problem, plane);
            var segment = stock.Select(s => s.Mass.Grams).DefaultIfEmpty(0).Max();

            // Beyond this a strip costs more in the score than any choice that meets the tolerance can.
            var priced = problem.MassPenaltyPerGram > 0 ? Math.Min(1 / problem.MassPenaltyPerGram, 200) + (1.5 * total) : 0;
            var useful = Math.Max((2 * near) + (2 * segment), priced);

            // Behind spokes two strips that nearly face each other may both be heavy; and a limit on mass is a limit on each.
            if (plane.BehindSpokes)
            {
                useful = Math.Max(useful, Math.Max((near / ChoicePlane.LeastSine(places!)) + 1e-3, problem.MaxMass?.Grams ?? 0));
            }

            return new ChoicePlane
            {
                Side = side,
                Kind = plane.Kind,
                RadiusMillimetres = radius,
                Need = need,
                Types = PieceTypes.Of(plane.Kind, stock, Math.Max(useful, listedGrams), problem.MaxMass?.Grams ?? double.PositiveInfinity),
                Places = places,
                Forbidden = [.. problem.Forbidden.Where(f => f.Plane == side).Select(f => f.Radians)],
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
