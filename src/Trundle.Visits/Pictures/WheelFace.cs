using System.Globalization;
using Trundle.Measures;

namespace Trundle.Visits.Pictures;

/// <summary>One weight on a wheel's face.</summary>
/// <param name="Words">What is written at it: 15 g.</param>
/// <param name="At">Where on the wheel.</param>
/// <param name="Radius">How far from the axis.</param>
/// <param name="Arc">How much of the turn it covers, or null where its length is not known.</param>
/// <param name="Hidden">True where it sits on the far side or behind a spoke: drawn dashed.</param>
/// <param name="Clip">A clip on the flange; else an adhesive strip.</param>
public sealed record FaceWeight(string Words, WheelAngle At, Length Radius, Angle? Arc, bool Hidden, bool Clip);

/// <summary>A wheel seen from outside.</summary>
/// <param name="Title">What a screen reader calls it.</param>
/// <param name="RimDiameter">The rim's diameter: the face is drawn to its scale.</param>
/// <param name="Spokes">The place of each spoke by its number; empty where it has none or nobody said.</param>
/// <param name="Bore">The centre bore, or null.</param>
/// <param name="Circle">Number and diameter of the bolt holes, or null.</param>
/// <param name="Weights">The weights to fit.</param>
public sealed record FaceView(string Title, Length RimDiameter, IReadOnlyList<WheelAngle> Spokes, Length? Bore, Engine.Vehicles.BoltCircle? Circle, IReadOnlyList<FaceWeight> Weights);

/// <summary>The face of a wheel to scale, the valve at its zero on top. Only the width of a spoke is not to scale: nobody measures it.</summary>
public static class WheelFace
{
    private const double Centre = 150;
    private const double Rim = 104;

    /// <summary>The drawing, 300 by 300.</summary>
    public static string Draw(string id, FaceView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var svg = new Svg(id, 300, 300, view.Title, Describe(view));
        var perMillimetre = Rim / (view.RimDiameter.Millimetres / 2);
        svg.Circle(Centre, Centre, Rim + 6, Svg.Card, Svg.Ink, 2.25);
        svg.Circle(Centre, Centre, Rim - 4, "none", Svg.Hairline, 1.25);
        svg.Path($"M{Svg.N(Centre - 6)} {Svg.N(Centre - Rim - 20)}h12l-6 8z", Svg.Ink, "none");
        svg.Words(Centre, Centre - Rim - 25, "valve", 13, "middle", Svg.Soft);
        var hub = Math.Clamp((view.Bore?.Millimetres ?? 60) / 2 * perMillimetre, 8, 40);
        var hubFace = Math.Max(hub + 5, ((view.Circle?.Diameter.Millimetres ?? 0) / 2 * perMillimetre) + 8);
        for (var spoke = 0; spoke < view.Spokes.Count; spoke++)
        {
            Spoke(svg, view.Spokes[spoke], spoke + 1, view.Spokes.Count, hubFace);
        }

        svg.Circle(Centre, Centre, hubFace, Svg.Rubber, Svg.Ink, 1.25);
        svg.Circle(Centre, Centre, hub, Svg.Card, Svg.Ink, 1.25);
        if (view.Circle is { } circle)
        {
            for (var n = 0; n < circle.Count; n++)
            {
                var (x, y) = At(360.0 * n / circle.Count, circle.Diameter.Millimetres / 2 * perMillimetre);
                svg.Circle(x, y, 3, Svg.Card, Svg.Ink, 1);
            }
        }

        foreach (var weight in view.Weights)
        {
            Weight(svg, weight, Math.Clamp(weight.Radius.Millimetres * perMillimetre, 20, Rim + 6));
        }

        return svg.End();
    }

    /// <summary>In words.</summary>
    public static string Describe(FaceView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var spokes = view.Spokes.Count > 0 ? string.Create(CultureInfo.InvariantCulture, $"{view.Spokes.Count} spokes, the first at {view.Spokes[0]}. ") : "";
        var weights = view.Weights.Count == 0 ? "No weights." : string.Join("; ", view.Weights.Select(w => $"{w.Words} at {w.At}{(w.Hidden ? ", out of sight" : "")}")) + ".";
        return $"Seen from outside, valve on top. {spokes}{weights}";
    }

    private static void Spoke(Svg svg, WheelAngle at, int number, int count, double hubFace)
    {
        var half = Math.Min(7.5, 250.0 / count / 6);
        var tip = Rim - 6;
        svg.Raw($"""<g transform="rotate({Svg.N(at.Degrees)} {Svg.N(Centre)} {Svg.N(Centre)})">""");
        svg.Path($"M{Svg.N(Centre - (half * 0.8))} {Svg.N(Centre - hubFace + 4)}L{Svg.N(Centre - half - 3)} {Svg.N(Centre - tip)}H{Svg.N(Centre + half + 3)}L{Svg.N(Centre + (half * 0.8))} {Svg.N(Centre - hubFace + 4)}z", Svg.Rubber, Svg.Ink, 1.25);
        svg.Raw("</g>");
        if (count <= 12)
        {
            var (x, y) = At(at.Degrees, (tip + hubFace) / 2);
            svg.Words(x, y + 4.5, number.ToString(CultureInfo.InvariantCulture), 13, "middle");
        }
    }

    private static void Weight(Svg svg, FaceWeight weight, double radius)
    {
        var half = Math.Clamp((weight.Arc?.Degrees ?? 12) / 2, 4, 170);
        var (x1, y1) = At(weight.At.Degrees - half, radius);
        var (x2, y2) = At(weight.At.Degrees + half, radius);
        var arc = $"M{Svg.N(x1)} {Svg.N(y1)}A{Svg.N(radius)} {Svg.N(radius)} 0 {(half > 90 ? 1 : 0)} 1 {Svg.N(x2)} {Svg.N(y2)}";
        svg.Path(arc, "none", Svg.Accent, weight.Clip ? 8 : 11);
        if (weight.Hidden)
        {
            // Out of sight: hollow, so that it differs from one in view without colour.
            svg.Path(arc, "none", Svg.Card, weight.Clip ? 4 : 7);
        }

        var (tx, ty) = At(weight.At.Degrees, Rim + 22);
        var sideways = Math.Sin(weight.At.Radians);
        var lines = weight.Words.Split(", ");
        for (var i = 0; i < lines.Length; i++)
        {
            svg.Words(tx, ty + 5 + (15 * i), lines[i], 14, sideways > 0.3 ? "start" : sideways < -0.3 ? "end" : "middle", Svg.Accent, i == 0);
        }

        var (lx, ly) = At(weight.At.Degrees, radius + 6);
        var (ox, oy) = At(weight.At.Degrees, Rim + 17);
        svg.Line(lx, ly, ox, oy, Svg.Accent, 0.75);
    }

    private static (double X, double Y) At(double degrees, double radius)
    {
        var radians = double.DegreesToRadians(degrees);
        return (Centre + (radius * Math.Sin(radians)), Centre - (radius * Math.Cos(radians)));
    }
}
