using System.Globalization;
using System.Numerics;
using Trundle.Measures;

namespace Trundle.Visits.Pictures;

/// <summary>Index balancing in one plane, all in grams as heavy places from the shaft's zero.</summary>
/// <param name="Title">What a screen reader calls it.</param>
/// <param name="Fixture">What stays with the shaft.</param>
/// <param name="Wheel">What turns with the wheel, at its first position.</param>
/// <param name="Spins">What was found in each spin, in order.</param>
/// <param name="Error">One standard error of a component of either, or null where two positions cannot show it.</param>
/// <param name="Limit">What the fixture may show, or null.</param>
/// <param name="Unit">The reader's unit of mass.</param>
public sealed record IndexView(string Title, Complex Fixture, Complex Wheel, IReadOnlyList<Complex> Spins, double? Error, double? Limit, string Unit);

/// <summary>
/// Index balancing drawn: the fixture's vector leaves the shaft, and the spins go round its end on a circle as wide as the wheel's own. The shaft's zero is
/// on top, angles clockwise as seen from outside.
/// </summary>
public static class IndexCircle
{
    private const double Centre = 134;
    private const double CentreY = 146;
    private const double Radius = 117;

    /// <summary>The drawing, 268 by 272.</summary>
    public static string Draw(string id, IndexView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var full = PolarGrid.FullScale([Mass.FromGrams(Math.Max(view.Fixture.Magnitude + view.Wheel.Magnitude, Math.Max(view.Spins.Max(s => s.Magnitude), view.Limit ?? 0)))], view.Unit);
        double Out(double grams) => grams / full.Grams * Radius;
        (double X, double Y) At(Complex v) => (Centre + Out(v.Magnitude * Math.Sin(v.Phase)), CentreY - Out(v.Magnitude * Math.Cos(v.Phase)));

        var svg = new Svg(id, 268, 272, view.Title, Describe(view));
        svg.Circle(Centre, CentreY, Radius, Svg.Card, Svg.Hairline, 1.25);
        if (view.Limit is { } limit)
        {
            svg.Circle(Centre, CentreY, Math.Max(2, Out(limit)), Svg.Wash, Svg.Accent, 1.5, "4 3");
        }

        svg.Circle(Centre, CentreY, Radius / 2, "none", Svg.Hairline);
        for (var degrees = 0; degrees < 360; degrees += 30)
        {
            var (ex, ey) = At(Complex.FromPolarCoordinates(full.Grams, double.DegreesToRadians(degrees)));
            svg.Line(Centre, CentreY, ex, ey, Svg.Hairline, 0.75);
        }

        svg.Words(Centre, 15, "shaft’s zero", 13, "middle", Svg.Soft);
        svg.Path($"M{Svg.N(Centre - 6)} 20h12l-6 8z", Svg.Ink, "none");
        svg.Words(Centre + 5, CentreY - Radius + 15, PolarGrid.Words(full, view.Unit), 12, "start", Svg.Soft);
        svg.Words(Centre + 5, CentreY - (Radius / 2) + 15, PolarGrid.Words(full / 2, view.Unit), 12, "start", Svg.Soft);

        var (fx, fy) = At(view.Fixture);
        var (wx, wy) = At(view.Fixture + view.Wheel);
        svg.Circle(fx, fy, Out(view.Wheel.Magnitude), "none", Svg.Soft, 1, "1 4");
        svg.Line(fx, fy, wx, wy, Svg.Accent, 1.5, "5 3");
        svg.Line(Centre, CentreY, fx, fy, Svg.Accent, 3.5);
        if (view.Error is { } error)
        {
            ErrorEllipse.Draw(svg, fx, fy, 0, Out(error), Out(error));
        }

        svg.Circle(fx, fy, 5.5, Svg.Ink, "none");
        foreach (var (spin, i) in view.Spins.Select((s, i) => (s, i)))
        {
            var (x, y) = At(spin);
            svg.Circle(x, y, 4.5, Svg.Card, Svg.Ink, 1.5);

            // Its number further out on the circle that the spins go round.
            var away = spin - view.Fixture;
            var (nx, ny) = (x + (14 * Math.Sin(away.Phase)), y - (14 * Math.Cos(away.Phase)));
            svg.Words(Math.Clamp(nx, 8, 260), Math.Clamp(ny, 12, 264) + 4.5, (i + 1).ToString(CultureInfo.InvariantCulture), 13, "middle");
        }

        return svg.End();
    }

    /// <summary>In words.</summary>
    public static string Describe(IndexView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var give = view.Error is { } error ? $", each give or take {Mass.FromGrams(error).Text(view.Unit, view.Unit == "oz" ? 3 : 2)}" : "";
        var limit = view.Limit is { } l ? $" The fixture may show {Words(l, view.Unit)}." : "";
        return $"Heavy places: the fixture's {Vector(view.Fixture, view.Unit)}, the wheel's own {Vector(view.Wheel, view.Unit)}{give}. Spins found {string.Join(", ", view.Spins.Select(s => Vector(s, view.Unit)))}.{limit} The shaft's zero is at the top, angles grow clockwise as seen from outside.";
    }

    private static string Vector(Complex v, string unit) => $"{Words(v.Magnitude, unit)} at {WheelAngle.FromDegrees(double.RadiansToDegrees(v.Phase))}";

    private static string Words(double grams, string unit) => Mass.FromGrams(grams).Text(unit, unit == "oz" ? 2 : 1);
}
