using System.Globalization;
using Trundle.Measures;

namespace Trundle.Visits.Pictures;

/// <summary>One trial run on the drawing.</summary>
/// <param name="Run">Its number, the initial run being 1.</param>
/// <param name="Centre">Where its circle has its centre: the initial amplitude at the trial's angle.</param>
/// <param name="Size">How far out the centre lies, in the meter's unit.</param>
/// <param name="Radius">The amplitude that was measured, in the same scale.</param>
/// <param name="StandsOut">True where it is the run to repeat.</param>
public sealed record TrialCircle(int Run, Angle Centre, double Size, double Radius, bool StandsOut);

/// <summary>Trial runs without phase: each is a circle, and where all meet lies the correction.</summary>
/// <param name="Title">What a screen reader calls it.</param>
/// <param name="Initial">The initial amplitude.</param>
/// <param name="Circles">The trial runs.</param>
/// <param name="Meet">Where they meet best: its distance in the meter's unit, and the correction's angle.</param>
/// <param name="Correction">The correction in words, such as "20.1 g at 103°".</param>
/// <param name="Unit">The meter's unit, or empty.</param>
public sealed record TrialView(string Title, double Initial, IReadOnlyList<TrialCircle> Circles, (double Size, Angle At) Meet, string Correction, string Unit)
{
    /// <summary>One standard error of the meeting point, along and across; or null.</summary>
    public (double Along, double Across)? Error { get; init; }
}

/// <summary>The construction with circles: the initial amplitude around the middle, each trial run around its place on it, the correction where they meet.</summary>
public static class TrialCircles
{
    private const double Middle = 170;
    private const double Room = 300;
    private const double Top = 20;

    /// <summary>The drawing, 340 by 366.</summary>
    public static string Draw(string id, TrialView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var svg = new Svg(id, 340, 366, view.Title, Describe(view));
        var scale = Scale(view, out var origin);
        (double X, double Y) At(Angle angle, double size) => (origin.X + (size * scale * Math.Sin(angle.Radians)), origin.Y - (size * scale * Math.Cos(angle.Radians)));
        svg.Words(origin.X, 13, "0°", 13, "middle", Svg.Soft);
        svg.Line(origin.X, 18, origin.X, origin.Y, Svg.Hairline, 0.75, "2 3");
        svg.Circle(origin.X, origin.Y, view.Initial * scale, "none", Svg.Ink, 2);
        foreach (var circle in view.Circles)
        {
            var (x, y) = At(circle.Centre, circle.Size);
            svg.Circle(x, y, circle.Radius * scale, "none", circle.StandsOut ? Svg.Ink : Svg.Soft, circle.StandsOut ? 2.5 : 1.25, circle.StandsOut ? "7 4" : null);
            svg.Circle(x, y, 3, Svg.Ink, "none");
            svg.Words(x + (Math.Sin(circle.Centre.Radians) < -0.2 ? -7 : 7), y + (Math.Cos(circle.Centre.Radians) < -0.2 ? 15 : -5), string.Create(CultureInfo.InvariantCulture, $"run {circle.Run}"), 13, Math.Sin(circle.Centre.Radians) < -0.2 ? "end" : "start", Svg.Ink, circle.StandsOut);
        }

        var (mx, my) = At(view.Meet.At, view.Meet.Size);
        svg.Line(origin.X, origin.Y, mx, my, Svg.Accent, 3);
        if (view.Error is { } error)
        {
            ErrorEllipse.Draw(svg, mx, my, view.Meet.At.Degrees, error.Along * scale, error.Across * scale, (318, 304));
        }

        svg.Circle(mx, my, 6, Svg.Accent, Svg.Card, 1.5);
        svg.Words(Middle, 342, $"correction {view.Correction}", 15, "middle", Svg.Accent, true);
        svg.Words(Middle, 360, $"heavy circle: initial run, {VectorPolar.Words(view.Initial, view.Unit)}", 12, "middle", Svg.Soft);
        return svg.End();
    }

    /// <summary>How many units of the drawing one of the meter takes, so that every circle is on it; and where the middle of the initial run lies.</summary>
    private static double Scale(TrialView view, out (double X, double Y) origin)
    {
        var circles = view.Circles.Select(c => (X: c.Size * Math.Sin(c.Centre.Radians), Y: c.Size * Math.Cos(c.Centre.Radians), c.Radius)).Append((0, 0, view.Initial)).Append((view.Meet.Size * Math.Sin(view.Meet.At.Radians), view.Meet.Size * Math.Cos(view.Meet.At.Radians), 0)).ToList();
        var (left, right) = (circles.Min(c => c.X - c.Radius), circles.Max(c => c.X + c.Radius));
        var (low, high) = (circles.Min(c => c.Y - c.Radius), circles.Max(c => c.Y + c.Radius));
        var scale = Room / Math.Max(Math.Max(right - left, high - low), 1e-12);
        origin = (Middle - ((left + right) / 2 * scale), Top + (Room / 2) + ((low + high) / 2 * scale));
        return scale;
    }

    /// <summary>In words.</summary>
    public static string Describe(TrialView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var runs = string.Join("; ", view.Circles.Select(c => $"run {c.Run.ToString(CultureInfo.InvariantCulture)} around the initial amplitude at {VectorPolar.Degrees(c.Centre)}, radius {VectorPolar.Words(c.Radius, view.Unit)}{(c.StandsOut ? ", passes by the others" : "")}"));
        return $"Initial run {VectorPolar.Words(view.Initial, view.Unit)}. Circles: {runs}. They meet best at {VectorPolar.Degrees(view.Meet.At)}: correction {view.Correction}. Angles are in the sense of the trial runs.";
    }
}
