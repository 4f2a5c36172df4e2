namespace Trundle.Published.Tests;

/// <summary>
/// A circle through points, for the tests only: an oracle held against two published fits, by which the first harmonic of a dial's readings is
/// then held against the true circle.
/// </summary>
internal static class CircleFit
{
    /// <summary>The algebraic fit that makes Σ(x² + y² + Dx + Ey + F)² least (Kåsa).</summary>
    public static (double X, double Y, double R) Algebraic(IReadOnlyList<(double X, double Y)> points)
    {
        var (mx, my) = (points.Average(p => p.X), points.Average(p => p.Y));
        var (suu, suv, svv, su, sv) = (0.0, 0.0, 0.0, 0.0, 0.0);
        foreach (var (x, y) in points)
        {
            var (u, v) = (x - mx, y - my);
            var square = (u * u) + (v * v);
            (suu, suv, svv, su, sv) = (suu + (u * u), suv + (u * v), svv + (v * v), su + (u * square / 2), sv + (v * square / 2));
        }

        var det = (suu * svv) - (suv * suv);
        var (a, b) = (((su * svv) - (sv * suv)) / det, ((sv * suu) - (su * suv)) / det);
        return (mx + a, my + b, Math.Sqrt((a * a) + (b * b) + ((suu + svv) / points.Count)));
    }

    /// <summary>The fit that makes the sum of squared distances least, by Gauss and Newton from the algebraic one, with halved steps.</summary>
    public static (double X, double Y, double R, double Squares) Geometric(IReadOnlyList<(double X, double Y)> points)
    {
        var (x, y, _) = Algebraic(points);
        for (var step = 0; step < 500; step++)
        {
            // With the radius at its best for the centre, the gradient of the squares towards the centre.
            var r = Radius(points, x, y);
            var (gx, gy, haa, hab, hbb) = (0.0, 0.0, 0.0, 0.0, 0.0);
            var (mx, my) = (points.Average(p => (x - p.X) / Distance(p, x, y)), points.Average(p => (y - p.Y) / Distance(p, x, y)));
            foreach (var p in points)
            {
                var d = Distance(p, x, y);
                var (jx, jy) = (((x - p.X) / d) - mx, ((y - p.Y) / d) - my);
                (gx, gy) = (gx + ((d - r) * jx), gy + ((d - r) * jy));
                (haa, hab, hbb) = (haa + (jx * jx), hab + (jx * jy), hbb + (jy * jy));
            }

            var det = (haa * hbb) - (hab * hab);
            var (dx, dy) = (-((gx * hbb) - (gy * hab)) / det, -((gy * haa) - (gx * hab)) / det);
            var part = 1.0;
            while (part > 1e-9 && Squares(points, x + (part * dx), y + (part * dy)) > Squares(points, x, y))
            {
                part /= 2;
            }

            (x, y) = (x + (part * dx), y + (part * dy));
        }

        return (x, y, Radius(points, x, y), Squares(points, x, y));
    }

    private static double Distance((double X, double Y) p, double x, double y) => Math.Sqrt(((p.X - x) * (p.X - x)) + ((p.Y - y) * (p.Y - y)));

    private static double Radius(IReadOnlyList<(double X, double Y)> points, double x, double y) => points.Average(p => Distance(p, x, y));

    private static double Squares(IReadOnlyList<(double X, double Y)> points, double x, double y)
    {
        var r = Radius(points, x, y);
        return points.Sum(p => (Distance(p, x, y) - r) * (Distance(p, x, y) - r));
    }
}
