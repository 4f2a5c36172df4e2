using System.Globalization;
using System.Text;
using Trundle.Engine.Uniformity;
using Trundle.Measures;

namespace Trundle.Visits.Pictures;

/// <summary>What a drawing of a runout shows.</summary>
/// <param name="Title">What a screen reader calls it.</param>
/// <param name="Found">The readings and what they tell.</param>
/// <param name="Limit">The greatest peak-to-peak that is allowed, or null.</param>
/// <param name="Unit">The reader's unit of runout.</param>
public sealed record RunoutView(string Title, RunoutOutcome.Found Found, Length? Limit, string Unit);

/// <summary>
/// A runout around the part, far larger than it is: the lowest reading lies on the inner circle, the limit is a circle outside it, and the fitted first
/// harmonic runs between. The valve is on top, angles clockwise as seen from the outer face.
/// </summary>
public static class RunoutCircle
{
    private const double Centre = 150;
    private const double CentreY = 158;
    private const double Low = 62;
    private const double Band = 50;

    /// <summary>The drawing, 300 by 316.</summary>
    public static string Draw(string id, RunoutView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var found = view.Found;
        var svg = new Svg(id, 300, 316, view.Title, Describe(view));
        var lowest = found.Readings.Min(r => r.Value);
        var full = Math.Max(Math.Max(found.PeakToPeak.Metres, view.Limit?.Metres ?? 0), 1e-6);
        double Radius(Length value) => Low + ((value - lowest).Metres / full * Band);
        svg.Path($"M{Svg.N(Centre - 6)} 26h12l-6 8z", Svg.Ink, "none");
        svg.Words(Centre, 20, "valve", 13, "middle", Svg.Soft);
        svg.Circle(Centre, CentreY, Low, Svg.Card, Svg.Hairline, 1.25);
        for (var degrees = 0; degrees < 360; degrees += 90)
        {
            var (x1, y1) = At(degrees, 10);
            var (x2, y2) = At(degrees, Low);
            svg.Line(x1, y1, x2, y2, Svg.Hairline, 0.75);
        }

        svg.Circle(Centre, CentreY, 8, "none", Svg.Hairline);
        if (view.Limit is { } limit)
        {
            svg.Circle(Centre, CentreY, Radius(lowest + limit), "none", Svg.Ink, 1, "5 3");
        }

        svg.Path(Curve(found, Radius), "none", Svg.Accent, 2.5);
        svg.Path(Joined(found, Radius), "none", Svg.Soft, 1);
        for (var i = 0; i < found.Readings.Count; i++)
        {
            var (x, y) = At(found.Readings[i].Place.Degrees, Radius(found.Readings[i].Value));
            if (found.Suspect?.Index == i)
            {
                // A reading that does not belong is hollow and crossed, so that it differs without colour.
                svg.Circle(x, y, 6, Svg.Card, Svg.Ink, 1.5).Line(x - 4, y - 4, x + 4, y + 4, Svg.Ink, 1.5).Line(x - 4, y + 4, x + 4, y - 4, Svg.Ink, 1.5);
            }
            else
            {
                svg.Circle(x, y, found.Readings.Count > 40 ? 1.5 : 3, Svg.Ink, "none");
            }
        }

        HighPoint(svg, found.First.HighPoint);
        svg.Words(Centre, 306, Caption(view), 13, "middle", Svg.Soft);
        return svg.End();
    }

    /// <summary>In words.</summary>
    public static string Describe(RunoutView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var found = view.Found;
        var text = new StringBuilder();
        text.Append(CultureInfo.InvariantCulture, $"{found.Readings.Count} readings, {Words(found.PeakToPeak, view)} peak-to-peak");
        text.Append(view.Limit is { } limit
            ? $"{Reach(view)}, {Standing(found, limit)} the limit of {Words(limit, view)}. "
            : "; no limit is known. ");
        text.Append(CultureInfo.InvariantCulture, $"First harmonic {Words(found.First.Amount, view)}, high point at {found.First.HighPoint}. ");
        if (found.Suspect is { } s)
        {
            text.Append(CultureInfo.InvariantCulture, $"The reading {Words(s.Reading.Value, view)} at {s.Reading.Place} does not belong to the others. ");
        }

        return text.Append("The valve is at zero, angles grow clockwise as seen from outside; the runout is drawn far larger than it is.").ToString();
    }

    private static string Caption(RunoutView view) =>
        $"{Words(view.Found.PeakToPeak, view)} in all{Reach(view)}{(view.Limit is { } limit ? $"; limit {Words(limit, view)}, dashed" : "")}";

    /// <summary>What the fitted harmonics reach between the places, where that is more than the dial showed.</summary>
    private static string Reach(RunoutView view) =>
        Words(view.Found.Judged, view) == Words(view.Found.PeakToPeak, view) ? "" : $", {Words(view.Found.Judged, view)} between the places";

    private static string Standing(RunoutOutcome.Found found, Length limit) =>
        !Within(found.PeakToPeak, limit) ? "above" : !found.TellsBetween ? "at places too few or crowded to tell whether within" : Within(found.Judged, limit) ? "within" : "above";

    private static void HighPoint(Svg svg, WheelAngle at)
    {
        var (x1, y1) = At(at.Degrees, 12);
        var (x2, y2) = At(at.Degrees, Low + Band + 5);
        svg.Line(x1, y1, x2, y2, Svg.Accent, 1.25, "2 3");
        var (tx, ty) = At(at.Degrees, Low + Band + 14);
        var sideways = Math.Sin(at.Radians);
        svg.Words(tx, ty + 5, at.ToString(), 14, sideways > 0.3 ? "start" : sideways < -0.3 ? "end" : "middle", Svg.Accent, true);
    }

    /// <summary>The fitted first harmonic, every five degrees, closed.</summary>
    private static string Curve(RunoutOutcome.Found found, Func<Length, double> radius)
    {
        var d = new StringBuilder();
        for (var degrees = 0; degrees < 360; degrees += 5)
        {
            var value = found.Mean + (found.First.Amount * Math.Cos(double.DegreesToRadians(degrees) - found.First.HighPoint.Radians));
            var (x, y) = At(degrees, Math.Max(2, radius(value)));
            d.Append(degrees == 0 ? 'M' : 'L').Append(Svg.N(x)).Append(' ').Append(Svg.N(y));
        }

        return d.Append('z').ToString();
    }

    private static string Joined(RunoutOutcome.Found found, Func<Length, double> radius)
    {
        var d = new StringBuilder();
        foreach (var r in found.Readings.OrderBy(r => r.Place.Degrees))
        {
            var (x, y) = At(r.Place.Degrees, radius(r.Value));
            d.Append(d.Length == 0 ? 'M' : 'L').Append(Svg.N(x)).Append(' ').Append(Svg.N(y));
        }

        return d.Append('z').ToString();
    }

    // A difference of typed decimals carries rounding in its last bits.
    private static bool Within(Length peakToPeak, Length limit) => Math.Round((peakToPeak - limit).Millimetres, 9) <= 0;

    private static string Words(Length length, RunoutView view) => length.Text(view.Unit, view.Unit == "in" ? 3 : 2);

    private static (double X, double Y) At(double degrees, double radius)
    {
        var radians = double.DegreesToRadians(degrees);
        return (Centre + (radius * Math.Sin(radians)), CentreY - (radius * Math.Cos(radians)));
    }
}
