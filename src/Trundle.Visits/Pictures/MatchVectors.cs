using Trundle.Engine.Uniformity;
using Trundle.Measures;

namespace Trundle.Visits.Pictures;

/// <summary>A tyre on a wheel before and after it is turned.</summary>
/// <param name="Title">What a screen reader calls it.</param>
/// <param name="Tyre">The tyre's first harmonic with its mark at the valve.</param>
/// <param name="Wheel">The wheel's.</param>
/// <param name="Turn">The turn of the tyre, clockwise as seen from outside.</param>
/// <param name="Unit">The reader's unit.</param>
/// <param name="Decimals">Decimals of amounts.</param>
/// <typeparam name="T">The quantity.</typeparam>
public sealed record MatchView<T>(string Title, HarmonicVector<T> Tyre, HarmonicVector<T> Wheel, Angle Turn, string Unit, int Decimals) where T : struct, IQuantity<T>;

/// <summary>Match mounting as vectors: left as it stands, right with the tyre turned; the ring is the chalk mark on the tyre.</summary>
public static class MatchVectors
{
    private const double CentreY = 146;
    private const double Radius = 108;
    private const double Mark = 96;

    /// <summary>The drawing, 560 by 306.</summary>
    public static string Draw<T>(string id, MatchView<T> view) where T : struct, IQuantity<T>
    {
        ArgumentNullException.ThrowIfNull(view);
        var svg = new Svg(id, 560, 306, view.Title, Describe(view));
        var full = FullScale(new[] { view.Tyre.Amount, view.Wheel.Amount, (view.Tyre + view.Wheel).Amount }.Max(a => a.In(view.Unit)));
        Face(svg, view, 140, default, full, "before");
        Face(svg, view, 420, view.Turn, full, "after");
        return svg.End();
    }

    /// <summary>The amount at the outer ring: the next of 1, 2 and 5 and their tens.</summary>
    public static double FullScale(double greatest)
    {
        if (!(greatest > 0))
        {
            return 1;
        }

        var ten = Math.Pow(10, Math.Floor(Math.Log10(greatest)));
        return new[] { 1.0, 2, 5, 10, 20 }.Select(s => s * ten).First(s => s >= greatest * (1 - 1e-12));
    }

    /// <summary>In words.</summary>
    public static string Describe<T>(MatchView<T> view) where T : struct, IQuantity<T>
    {
        ArgumentNullException.ThrowIfNull(view);
        var (before, after) = (view.Tyre + view.Wheel, view.Tyre.Turned(view.Turn) + view.Wheel);
        return $"Before: tyre {Words(view, view.Tyre)}, wheel {Words(view, view.Wheel)}, together {Words(view, before)}. "
            + $"After turning the tyre {Quantity.Number(view.Turn.Degrees, 0)}° clockwise: tyre at {view.Tyre.Turned(view.Turn).HighPoint}, together {Words(view, after)}. "
            + "The valve is at zero, angles grow clockwise as seen from outside.";
    }

    private static void Face<T>(Svg svg, MatchView<T> view, double centre, Angle turn, double full, string caption) where T : struct, IQuantity<T>
    {
        svg.Words(centre, 15, "valve", 13, "middle", Svg.Soft);
        svg.Path($"M{Svg.N(centre - 6)} 22h12l-6 8z", Svg.Ink, "none");
        svg.Circle(centre, CentreY, Radius, Svg.Card, Svg.Hairline, 1.25).Circle(centre, CentreY, Radius / 2, "none", Svg.Hairline);
        for (var degrees = 0; degrees < 360; degrees += 30)
        {
            var (x, y) = At(centre, degrees, Radius);
            svg.Line(centre, CentreY, x, y, Svg.Hairline, 0.75);
        }

        var (tyre, sum) = (view.Tyre.Turned(turn), view.Tyre.Turned(turn) + view.Wheel);
        Turned(svg, centre, turn.Degrees);
        Vector(svg, view, centre, view.Wheel, full, Svg.Ink, "wheel");
        Vector(svg, view, centre, tyre, full, Svg.Accent, "tyre");
        var (sx, sy) = At(centre, sum.HighPoint.Degrees, sum.Amount.In(view.Unit) / full * Radius);
        svg.Line(centre, CentreY, sx, sy, Svg.Ink, 1.5, "5 3").Circle(sx, sy, 5, Svg.Card, Svg.Ink, 1.5);
        svg.Words(centre, 276, $"{caption}: {Words(view, sum)}", 15, "middle", Svg.Ink, true);
        svg.Words(centre, 296, $"outer ring {Ring(full)} {view.Unit}", 12, "middle", Svg.Soft);
    }

    /// <summary>The mark on the tyre, and the way that it came.</summary>
    private static void Turned(Svg svg, double centre, double degrees)
    {
        var (x, y) = At(centre, degrees, Mark);
        if (degrees is > 12 and < 348)
        {
            // The shorter way round, as a hand would turn it.
            var clockwise = degrees <= 180;
            var (x1, y1) = At(centre, clockwise ? 5 : -5, Mark);
            var (x2, y2) = At(centre, clockwise ? degrees - 6 : degrees + 6, Mark);
            svg.Path($"M{Svg.N(x1)} {Svg.N(y1)}A{Svg.N(Mark)} {Svg.N(Mark)} 0 0 {(clockwise ? 1 : 0)} {Svg.N(x2)} {Svg.N(y2)}", "none", Svg.Accent, 1.5, "3 3");
        }

        svg.Circle(x, y, 5, Svg.Card, Svg.Accent, 2);
    }

    private static void Vector<T>(Svg svg, MatchView<T> view, double centre, HarmonicVector<T> vector, double full, string stroke, string name) where T : struct, IQuantity<T>
    {
        var reach = vector.Amount.In(view.Unit) / full * Radius;
        var (x, y) = At(centre, vector.HighPoint.Degrees, reach);
        svg.Line(centre, CentreY, x, y, stroke, 3);
        if (reach > 12)
        {
            var turned = Svg.N(vector.HighPoint.Degrees);
            svg.Raw($"""<g transform="rotate({turned} {Svg.N(centre)} {Svg.N(CentreY)})">""").Path($"M{Svg.N(centre)} {Svg.N(CentreY - reach - 2)}l-5 11h10z", stroke, "none").Raw("</g>");
        }

        var (tx, ty) = At(centre, vector.HighPoint.Degrees, Math.Min(reach + 14, Radius - 20));
        var sideways = Math.Sin(vector.HighPoint.Radians);
        svg.Words(tx + (sideways < 0 ? -4 : 4), ty + 5, name, 13, sideways > 0.3 ? "start" : sideways < -0.3 ? "end" : "middle", stroke, true);
    }

    private static string Words<T>(MatchView<T> view, HarmonicVector<T> vector) where T : struct, IQuantity<T> =>
        $"{vector.Amount.Text(view.Unit, view.Decimals)} at {vector.HighPoint}";

    private static string Ring(double full) => full.ToString("0.######", System.Globalization.CultureInfo.InvariantCulture);

    private static (double X, double Y) At(double centre, double degrees, double radius)
    {
        var radians = double.DegreesToRadians(degrees);
        return (centre + (radius * Math.Sin(radians)), CentreY - (radius * Math.Cos(radians)));
    }
}
