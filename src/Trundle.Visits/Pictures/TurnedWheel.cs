using System.Globalization;
using Trundle.Measures;

namespace Trundle.Visits.Pictures;

/// <summary>A weight on a wheel that can be turned.</summary>
/// <param name="Words">What is written at it.</param>
/// <param name="At">Where it sits, from the valve.</param>
/// <param name="Inner">On the inner side, out of sight.</param>
public sealed record TurnedWeight(string Words, WheelAngle At, bool Inner);

/// <summary>A wheel on the shaft, turned by hand until a place stands at twelve.</summary>
/// <param name="Title">What a screen reader calls it.</param>
/// <param name="AtTwelve">The place that stands at twelve.</param>
/// <param name="Spokes">Where the spokes stand, or none.</param>
/// <param name="Weights">What is fitted.</param>
public sealed record TurnedWheelView(string Title, WheelAngle AtTwelve, IReadOnlyList<WheelAngle> Spokes, IReadOnlyList<TurnedWeight> Weights);

/// <summary>The wheel from outside with a ring of degrees that turns with it, and a fixed mark at twelve.</summary>
public static class TurnedWheel
{
    private const double Centre = 200;
    private const double Rim = 128;

    /// <summary>The drawing, 400 by 400.</summary>
    public static string Draw(string id, TurnedWheelView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var svg = new Svg(id, 400, 400, view.Title, Describe(view));
        svg.Circle(Centre, Centre, Rim + 22, Svg.Rubber, Svg.Ink, 1.5);
        svg.Circle(Centre, Centre, Rim, Svg.Card, Svg.Ink, 2);
        for (var degree = 0; degree < 360; degree += 5)
        {
            var (x1, y1) = At(view, degree, Rim);
            var (x2, y2) = At(view, degree, Rim + (degree % 30 == 0 ? 11 : degree % 10 == 0 ? 8 : 5));
            svg.Line(x1, y1, x2, y2, Svg.Ink, degree % 30 == 0 ? 1.5 : 0.75);
            if (degree % 30 == 0)
            {
                var (x, y) = At(view, degree, Rim + 40);
                svg.Words(x, y + 5, degree.ToString(CultureInfo.InvariantCulture), 13, "middle", Svg.Soft);
            }
        }

        foreach (var spoke in view.Spokes)
        {
            var (x1, y1) = At(view, spoke.Degrees, 34);
            var (x2, y2) = At(view, spoke.Degrees, Rim - 5);
            svg.Line(x1, y1, x2, y2, Svg.Ink, 17).Line(x1, y1, x2, y2, Svg.Rubber, 14);
        }

        svg.Circle(Centre, Centre, 34, Svg.Rubber, Svg.Ink, 1.25).Circle(Centre, Centre, 17, Svg.Card, Svg.Ink, 1.25);
        var (vx, vy) = At(view, 0, Rim - 12);
        svg.Circle(vx, vy, 6, Svg.Ink, Svg.Ink);
        var (wx, wy) = At(view, 0, Rim - 28);
        svg.Words(wx, wy + 4, "valve", 12, "middle", Svg.Soft);
        foreach (var weight in view.Weights)
        {
            Weight(svg, view, weight);
        }

        // The mark at twelve belongs to the bench and does not turn.
        svg.Path($"M{Svg.N(Centre - 8)} 2h16l-8 16z", Svg.Accent, "none");
        return svg.Line(Centre, 18, Centre, Centre - Rim + 14, Svg.Accent, 1.25).End();
    }

    /// <summary>In words.</summary>
    public static string Describe(TurnedWheelView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var spokes = view.Spokes.Count == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $" {view.Spokes.Count} spokes at {string.Join(", ", view.Spokes.Select(s => s.ToString()))}.");
        var weights = view.Weights.Count == 0 ? " No weights." : $" {string.Join("; ", view.Weights.Select(w => $"{w.Words} at {w.At}, {(w.Inner ? "inner" : "outer")} side"))}.";
        return $"Seen from outside, {view.AtTwelve} from the valve at twelve.{spokes}{weights}";
    }

    private static void Weight(Svg svg, TurnedWheelView view, TurnedWeight weight)
    {
        var radius = weight.Inner ? Rim - 14 : Rim - 2;
        var (x1, y1) = At(view, weight.At.Degrees - 6, radius);
        var (x2, y2) = At(view, weight.At.Degrees + 6, radius);
        var arc = $"M{Svg.N(x1)} {Svg.N(y1)}A{Svg.N(radius)} {Svg.N(radius)} 0 0 1 {Svg.N(x2)} {Svg.N(y2)}";
        svg.Path(arc, "none", Svg.Accent, 10);
        if (weight.Inner)
        {
            // Out of sight: hollow, so that it differs from one in view without colour.
            svg.Path(arc, "none", Svg.Card, 6);
        }

        var (x, y) = At(view, weight.At.Degrees, radius - 20);
        svg.Words(x, y + 5, weight.Words, 14, "middle", Svg.Accent, true);
    }

    private static (double X, double Y) At(TurnedWheelView view, double degrees, double radius)
    {
        var radians = double.DegreesToRadians(degrees - view.AtTwelve.Degrees);
        return (Centre + (radius * Math.Sin(radians)), Centre - (radius * Math.Cos(radians)));
    }
}
