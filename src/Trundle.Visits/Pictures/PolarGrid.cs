using Trundle.Measures;

namespace Trundle.Visits.Pictures;

/// <summary>One vector on a polar grid.</summary>
/// <param name="Mass">How much.</param>
/// <param name="At">Where on the wheel.</param>
public sealed record PolarMark(Mass Mass, WheelAngle At)
{
    /// <summary>How far it may be off along the vector and in its angle, drawn as an ellipse: one standard error, or what a display leaves open; or null.</summary>
    public (Mass Mass, Angle Angle)? Error { get; init; }
}

/// <summary>One correction plane: what it had, what it will have, what may be left.</summary>
/// <param name="Title">What a screen reader calls it, such as "Inner plane".</param>
/// <param name="Heavy">The heavy place before: opposite the place where the balancer wants weight. Null where not measured.</param>
/// <param name="Left">The heavy place that the weights leave, or null where not yet known.</param>
/// <param name="Tolerance">What may be left in this plane, or null.</param>
/// <param name="Unit">The reader's unit of mass.</param>
public sealed record PolarView(string Title, PolarMark? Heavy, PolarMark? Left, Mass? Tolerance, string Unit);

/// <summary>A polar grid of one plane, the valve at its zero on top, angles clockwise as seen from the outer face.</summary>
public static class PolarGrid
{
    private const double Centre = 134;
    private const double CentreY = 146;
    private const double Radius = 117;

    /// <summary>The drawing, 268 by 272.</summary>
    /// <param name="id">Unique on its page.</param>
    /// <param name="view">The plane.</param>
    /// <param name="full">The mass at the outer ring; both planes of a wheel share one.</param>
    public static string Draw(string id, PolarView view, Mass full)
    {
        ArgumentNullException.ThrowIfNull(view);
        var svg = new Svg(id, 268, 272, view.Title, Describe(view));
        svg.Circle(Centre, CentreY, Radius, Svg.Card, Svg.Hairline, 1.25);
        svg.Circle(Centre, CentreY, Radius / 2, "none", Svg.Hairline);
        for (var degrees = 0; degrees < 360; degrees += 30)
        {
            var (x, y) = At(WheelAngle.FromDegrees(degrees), 1);
            svg.Line(Centre, CentreY, x, y, Svg.Hairline, 0.75);
        }

        svg.Words(Centre, 15, "valve", 13, "middle", Svg.Soft);
        svg.Path($"M{Svg.N(Centre - 6)} 20h12l-6 8z", Svg.Ink, "none");
        svg.Words(Centre + 5, CentreY - Radius + 15, Words(full, view.Unit), 12, "start", Svg.Soft);
        svg.Words(Centre + 5, CentreY - (Radius / 2) + 15, Words(full / 2, view.Unit), 12, "start", Svg.Soft);
        if (view.Tolerance is { } tolerance)
        {
            var may = Math.Max(2, Math.Min(1, tolerance / full) * Radius);
            svg.Circle(Centre, CentreY, may, Svg.Wash, "none").Circle(Centre, CentreY, may, "none", Svg.Accent, 1.5, "4 3");
        }

        if (view.Heavy is { } heavy)
        {
            var (x, y) = At(heavy.At, heavy.Mass / full);
            svg.Line(Centre, CentreY, x, y, Svg.Accent, 3);
            if (heavy.Error is { } error)
            {
                ErrorEllipse.Draw(svg, x, y, heavy.At.Degrees, error.Mass / full * Radius, heavy.Mass / full * Radius * error.Angle.Radians);
            }

            svg.Circle(x, y, 5.5, Svg.Ink, "none");
        }

        if (view.Left is { } left)
        {
            var (x, y) = At(left.At, left.Mass / full);
            svg.Box(x - 5, y - 5, 10, 10, Svg.Accent, Svg.Card, 1.25);
        }

        return svg.End();
    }

    /// <summary>The outer ring for these masses: the next round mass above the greatest.</summary>
    public static Mass FullScale(IEnumerable<Mass> masses, string unit)
    {
        ArgumentNullException.ThrowIfNull(masses);
        var greatest = masses.Select(m => m.In(unit)).DefaultIfEmpty(0).Max();
        double[] steps = unit == "oz" ? [0.5, 1, 2, 3, 4, 6, 8, 12, 16, 32, 64] : [10, 20, 40, 60, 80, 100, 150, 200, 300, 500, 1000, 2000];
        return Quantity.Of<Mass>(steps.FirstOrDefault(s => s >= greatest, steps[^1]), unit);
    }

    /// <summary>In words.</summary>
    public static string Describe(PolarView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var parts = new List<string>
        {
            view.Heavy is { } heavy ? $"Heavy place {Words(heavy.Mass, view.Unit)} at {heavy.At}{(heavy.Error is { } error ? $", give or take {error.Mass.Text(view.Unit, 2)} and {Quantity.Number(error.Angle.Degrees, 1)}°" : "")}" : "Not measured",
        };
        if (view.Left is { } left)
        {
            parts.Add($"after the weights {Words(left.Mass, view.Unit)} at {left.At}");
        }

        if (view.Tolerance is { } tolerance)
        {
            parts.Add($"{Words(tolerance, view.Unit)} may be left");
        }

        return string.Join("; ", parts) + ". The valve is at zero, angles grow clockwise as seen from outside.";
    }

    internal static string Words(Mass mass, string unit) => mass.Text(unit, unit == "oz" ? 2 : mass.Grams == Math.Round(mass.Grams) ? 0 : 1);

    private static (double X, double Y) At(WheelAngle angle, double share)
    {
        var reach = Math.Clamp(share, 0, 1) * Radius;
        return (Centre + (reach * Math.Sin(angle.Radians)), CentreY - (reach * Math.Cos(angle.Radians)));
    }
}
