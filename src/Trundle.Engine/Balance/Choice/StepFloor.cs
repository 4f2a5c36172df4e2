using System.Numerics;

namespace Trundle.Engine.Balance.Choice;

/// <summary>
/// The floor of planes whose places turn every set into whole steps of one grid of vectors: three, four or six spokes, and masses that are whole multiples of
/// one. However much is fitted, nothing comes nearer to the need than the grid does. Behind other numbers of spokes there is no such grid.
/// </summary>
internal static class StepFloor
{
    // More pairs of grid points than this are not looked at: each plane's own floor then stands alone.
    private const int MostPairs = 40_000;

    /// <summary>The least score that any set can have, and the least sum of squares of a set that has it; nothing where no plane has a grid.</summary>
    public static (double Score, double Squares) Of(ScoreParts score, ChoicePlane inner, ChoicePlane outer)
    {
        var (gridInner, gridOuter) = (Grid(score, inner), Grid(score, outer));
        var (alone, other) = (Alone(score, inner, gridInner), Alone(score, outer, gridOuter));
        var floor = Math.Max(alone, other);
        if (gridInner is not { } a || gridOuter is not { } b)
        {
            return (floor, score.Separate ? (alone * alone) + (other * other) : 0);
        }

        // The best of all pairs of grid points has each plane within its own bound: widened until one is found.
        for (var within = Math.Max(floor, 0.25) * 1.01; within < 1e6; within *= 2)
        {
            var (left1, left2) = (Near(a, inner.Need, score.Bound(PlaneSide.Inner) * within), Near(b, outer.Need, score.Bound(PlaneSide.Outer) * within));
            if (left1.Count * left2.Count > MostPairs)
            {
                break;
            }

            var (least, squares) = (double.PositiveInfinity, double.PositiveInfinity);
            foreach (var r1 in left1)
            {
                foreach (var r2 in left2)
                {
                    var value = score.Of(r1, r2, out var sum);
                    if (value < least - 1e-12 || (value <= least + 1e-12 && sum < squares))
                    {
                        (least, squares) = (Math.Min(least, value), sum);
                    }
                }
            }

            if (least <= within)
            {
                return (Math.Max(0, least - 1e-12), Math.Max(0, squares - 1e-10));
            }
        }

        return (floor, score.Separate ? (alone * alone) + (other * other) : 0);
    }

    private static double Alone(ScoreParts score, ChoicePlane plane, (Complex First, Complex Second)? grid) =>
        grid is { } g ? Math.Max(0, (Near(g, plane.Need, null).Min(v => v.Magnitude) / score.Bound(plane.Side)) - 1e-12) : 0;

    /// <summary>Two vectors whose whole steps hold every set; null where there are none, or the parts do not bound the plane.</summary>
    private static (Complex First, Complex Second)? Grid(ScoreParts score, ChoicePlane plane)
    {
        if (plane.Places is not { } places || !double.IsFinite(score.Bound(plane.Side)) || WholeStep.Of(plane.Types.All.Select(t => t.MassGrams)) is not { } step)
        {
            return null;
        }

        Complex[] directions = [.. places.Select(p => Complex.FromPolarCoordinates(1, double.DegreesToRadians(p)))];
        var (first, second) = (directions[0], directions.FirstOrDefault(d => Math.Abs(Cross(directions[0], d)) > 0.5));
        var arm = step * plane.RadiusMillimetres;
        return second != Complex.Zero && directions.All(d => IsWhole(Cross(d, second) / Cross(first, second)) && IsWhole(Cross(first, d) / Cross(first, second)))
            ? (arm * first, arm * second)
            : null;

        static bool IsWhole(double x) => Math.Abs(x - Math.Round(x)) < 1e-9;
    }

    /// <summary>The grid's points less the need: those within a distance; where none is told, those about the need of which one is the nearest.</summary>
    private static List<Complex> Near((Complex First, Complex Second) grid, Complex need, double? within)
    {
        // Two sides of a cell stand 30° to 150° apart: a point at a distance is at most twice that distance, in steps, from the rounded one.
        var cross = Cross(grid.First, grid.Second);
        var (i0, j0) = (Math.Round(Cross(need, grid.Second) / cross), Math.Round(Cross(grid.First, need) / cross));
        var reach = 2 + (int)Math.Min(1000, Math.Ceiling(2 * (within ?? 0) / grid.First.Magnitude));
        var points = new List<Complex>();
        for (var i = -reach; i <= reach; i++)
        {
            for (var j = -reach; j <= reach; j++)
            {
                var left = ((i0 + i) * grid.First) + ((j0 + j) * grid.Second) - need;
                if (within is null || left.Magnitude <= within)
                {
                    points.Add(left);
                }
            }
        }

        return points;
    }

    private static double Cross(Complex a, Complex b) => (a.Real * b.Imaginary) - (a.Imaginary * b.Real);
}
