using System.Numerics;
using Trundle.Measures;

namespace Trundle.Visits.Pictures;

/// <summary>Repeated spins of one plane, in grams as heavy places.</summary>
/// <param name="Title">What a screen reader calls it.</param>
/// <param name="Spins">At least three.</param>
/// <param name="Limit">The standard deviation that the maker states, or null.</param>
/// <param name="Unit">The reader's unit of mass.</param>
public sealed record ScatterView(string Title, IReadOnlyList<Complex> Spins, double? Limit, string Unit);

/// <summary>How spins scatter: each as it lies about their mean, much enlarged, with the ellipse of one standard deviation along and across.</summary>
public static class SpinScatter
{
    private const double Centre = 134;
    private const double CentreY = 146;
    private const double Radius = 117;

    /// <summary>The drawing, 268 by 272.</summary>
    public static string Draw(string id, ScatterView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var mean = Mean(view);
        var off = view.Spins.Select(s => s - mean).ToList();
        var inUnit = Mass.FromGrams(1).In(view.Unit);
        var full = MatchVectors.FullScale(Math.Max(off.Max(o => o.Magnitude), 1.2 * view.Limit ?? 0) * inUnit) / inUnit;
        double Out(double grams) => grams / full * Radius;

        var svg = new Svg(id, 268, 272, view.Title, Describe(view));
        svg.Circle(Centre, CentreY, Radius, Svg.Card, Svg.Hairline, 1.25);
        if (view.Limit is { } limit)
        {
            svg.Circle(Centre, CentreY, Math.Max(2, Out(limit)), Svg.Wash, Svg.Accent, 1.5, "4 3");
        }

        svg.Circle(Centre, CentreY, Radius / 2, "none", Svg.Hairline);
        svg.Line(Centre - Radius, CentreY, Centre + Radius, CentreY, Svg.Hairline, 0.75).Line(Centre, CentreY - Radius, Centre, CentreY + Radius, Svg.Hairline, 0.75);
        svg.Words(Centre, 15, "valve", 13, "middle", Svg.Soft);
        svg.Path($"M{Svg.N(Centre - 6)} 20h12l-6 8z", Svg.Ink, "none");
        svg.Words(Centre + 5, CentreY - Radius + 15, Fine(full, view.Unit), 12, "start", Svg.Soft);
        svg.Words(Centre + 5, CentreY - (Radius / 2) + 15, Fine(full / 2, view.Unit), 12, "start", Svg.Soft);

        // Where the shaft lies: along this line the amount scatters, across it the angle.
        var (dx, dy) = (Math.Sin(mean.Phase), -Math.Cos(mean.Phase));
        svg.Line(Centre - (Radius * dx), CentreY - (Radius * dy), Centre + (Radius * dx), CentreY + (Radius * dy), Svg.Soft, 1, "8 3 2 3");
        svg.Words(Centre + (0.8 * Radius * dx) - (14 * dy), CentreY + (0.8 * Radius * dy) + (14 * dx) + 4, "more", 12, "middle", Svg.Soft);

        var (degrees, along, across) = Ellipse(off);
        ErrorEllipse.Draw(svg, Centre, CentreY, degrees, Out(along), Out(across));
        svg.Line(Centre - 6, CentreY, Centre + 6, CentreY, Svg.Accent, 2.5).Line(Centre, CentreY - 6, Centre, CentreY + 6, Svg.Accent, 2.5);
        foreach (var o in off)
        {
            svg.Circle(Centre + Out(o.Magnitude * Math.Sin(o.Phase)), CentreY - Out(o.Magnitude * Math.Cos(o.Phase)), 4.5, Svg.Ink, Svg.Card, 1);
        }

        return svg.End();
    }

    /// <summary>In words.</summary>
    public static string Describe(ScatterView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var mean = Mean(view);
        var (_, along, across) = Ellipse([.. view.Spins.Select(s => s - mean)]);
        return $"{view.Spins.Count} spins about their mean, a heavy place of {Mass.FromGrams(mean.Magnitude).Text(view.Unit, view.Unit == "oz" ? 2 : 1)} at {WheelAngle.FromDegrees(double.RadiansToDegrees(mean.Phase))}. "
            + $"The furthest lies {Fine(view.Spins.Max(s => (s - mean).Magnitude), view.Unit)} off; one standard deviation is {Fine(along, view.Unit)} the one way and {Fine(across, view.Unit)} across it"
            + $"{(view.Limit is { } limit ? $"; the maker states {Fine(limit, view.Unit)}" : "")}. The valve is at the top, angles grow clockwise as seen from outside.";
    }

    /// <summary>The axes of the scatter: the angle of the longer from the top, clockwise, and one standard deviation along it and across.</summary>
    private static (double Degrees, double Along, double Across) Ellipse(IReadOnlyList<Complex> off)
    {
        var n = off.Count - 1;
        var (up, side, both) = (off.Sum(o => o.Real * o.Real) / n, off.Sum(o => o.Imaginary * o.Imaginary) / n, off.Sum(o => o.Real * o.Imaginary) / n);
        var (middle, half) = ((up + side) / 2, Math.Sqrt(Math.Pow((up - side) / 2, 2) + (both * both)));
        return (double.RadiansToDegrees(Math.Atan2(2 * both, up - side) / 2), Math.Sqrt(middle + half), Math.Sqrt(Math.Max(0, middle - half)));
    }

    private static Complex Mean(ScatterView view) => view.Spins.Aggregate(Complex.Zero, (a, b) => a + b) / view.Spins.Count;

    private static string Fine(double grams, string unit) => Mass.FromGrams(grams).Text(unit, unit == "oz" ? 3 : 2);
}
