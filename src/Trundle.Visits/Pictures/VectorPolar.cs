using System.Globalization;
using Trundle.Measures;

namespace Trundle.Visits.Pictures;

/// <summary>How a vector is drawn, so that it differs from the others without colour.</summary>
public enum VectorLook
{
    /// <summary>As it was at first: a heavy line with a dot.</summary>
    First,

    /// <summary>One of several in between: a thin broken line with a small dot.</summary>
    Between,

    /// <summary>What is left: a square.</summary>
    Left,
}

/// <summary>One vector in a meter's own unit.</summary>
/// <param name="Label">What it is called.</param>
/// <param name="Size">How long.</param>
/// <param name="At">Its angle in the input's own sense.</param>
/// <param name="Look">How it is drawn.</param>
public sealed record NumberVector(string Label, double Size, Angle At, VectorLook Look)
{
    /// <summary>What is written at it: a number or a short word.</summary>
    public string Mark { get; init; } = "";

    /// <summary>One standard error of the size and of the angle, drawn as an ellipse; or null.</summary>
    public (double Size, Angle Angle)? Error { get; init; }
}

/// <summary>Vectors of one measuring point.</summary>
/// <param name="Title">What a screen reader calls it.</param>
/// <param name="Zero">What stands at the angle nothing, such as "index mark".</param>
/// <param name="Unit">The meter's unit, or empty.</param>
/// <param name="Vectors">The vectors.</param>
public sealed record VectorView(string Title, string Zero, string Unit, IReadOnlyList<NumberVector> Vectors)
{
    /// <summary>What an end must lie within to be right, drawn as a washed circle about the centre; or null.</summary>
    public double? Within { get; init; }

    /// <summary>How the angles count, in words.</summary>
    public string Sense { get; init; } = "angles are in the input's own sense";
}

/// <summary>Vectors in a meter's own unit on a polar grid: angle nothing on top, growing clockwise on the paper, in the input's one sense.</summary>
public static class VectorPolar
{
    private const double Centre = 134;
    private const double CentreY = 146;
    private const double Radius = 117;

    /// <summary>The drawing, 268 by 272.</summary>
    public static string Draw(string id, VectorView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var svg = new Svg(id, 268, 272, view.Title, Describe(view));

        // A circle that an end must lie within keeps some room around it.
        var full = MatchVectors.FullScale(view.Vectors.Select(v => v.Size).Append(1.2 * view.Within ?? 0).DefaultIfEmpty(0).Max());
        svg.Circle(Centre, CentreY, Radius, Svg.Card, Svg.Hairline, 1.25);
        if (view.Within is { } within)
        {
            svg.Circle(Centre, CentreY, within / full * Radius, Svg.Wash, Svg.Accent, 1.5, "4 3");
        }

        svg.Circle(Centre, CentreY, Radius / 2, "none", Svg.Hairline);
        for (var degrees = 0; degrees < 360; degrees += 30)
        {
            var (x, y) = At(Angle.FromDegrees(degrees), 1);
            svg.Line(Centre, CentreY, x, y, Svg.Hairline, 0.75);
        }

        svg.Words(Centre, 15, view.Zero, 13, "middle", Svg.Soft);
        svg.Path($"M{Svg.N(Centre - 6)} 20h12l-6 8z", Svg.Ink, "none");

        // The rings' figures stand beside the upper spoke: to its left where a vector lies to its right.
        var (side, anchor) = view.Vectors.Any(v => WheelAngle.FromDegrees(v.At.Degrees).Degrees < 30) ? (-5, "end") : (5, "start");
        svg.Words(Centre + side, CentreY - Radius + 15, Words(full, view.Unit), 12, anchor, Svg.Soft);
        svg.Words(Centre + side, CentreY - (Radius / 2) + 15, Words(full / 2, view.Unit), 12, anchor, Svg.Soft);
        var marks = new List<(double X, double Y)>();
        foreach (var vector in view.Vectors)
        {
            One(svg, vector, full, marks);
        }

        return svg.End();
    }

    /// <summary>In words.</summary>
    public static string Describe(VectorView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        return string.Join("; ", view.Vectors.Select(v => $"{v.Label} {Words(v.Size, view.Unit)} at {Degrees(v.At)}{(v.Error is { } e ? $", give or take {Words(e.Size, view.Unit)} and {Quantity.Number(e.Angle.Degrees, 1)}°" : "")}"))
            + $"{(view.Within is { } within ? $"; the circle is {Words(within, view.Unit)}" : "")}. {(char.IsLetter(view.Zero[0]) ? $"The {view.Zero}" : view.Zero)} is at the top; {view.Sense}.";
    }

    private static void One(Svg svg, NumberVector vector, double full, List<(double X, double Y)> marks)
    {
        var (x, y) = At(vector.At, vector.Size / full);
        if (vector.Look == VectorLook.Left)
        {
            svg.Box(x - 5, y - 5, 10, 10, Svg.Accent, Svg.Card, 1.25);
            return;
        }

        svg.Line(Centre, CentreY, x, y, Svg.Accent, vector.Look == VectorLook.First ? 3 : 1.5, vector.Look == VectorLook.First ? null : "5 3");
        if (vector.Error is { } error)
        {
            ErrorEllipse.Draw(svg, x, y, vector.At.Degrees, error.Size / full * Radius, vector.Size / full * Radius * error.Angle.Radians);
        }

        svg.Circle(x, y, vector.Look == VectorLook.First ? 5.5 : 4, vector.Look == VectorLook.First ? Svg.Ink : Svg.Card, vector.Look == VectorLook.First ? "none" : Svg.Ink, 1.5);
        if (vector.Mark.Length == 0)
        {
            return;
        }

        // Beside its point, across the vector; where another stands there already, further away.
        var (across, along) = (Math.Cos(vector.At.Radians), Math.Sin(vector.At.Radians));
        var (tx, ty) = (x, y);
        foreach (var away in new[] { 16, -16, 32, -32, 48, -48 })
        {
            (tx, ty) = (x + (away * across), y + (away * along));
            if (marks.All(m => Math.Abs(m.X - tx) + Math.Abs(m.Y - ty) > 16))
            {
                break;
            }
        }

        marks.Add((tx, ty));
        svg.Words(tx, ty + 4.5, vector.Mark, 13, "middle", Svg.Ink, vector.Look == VectorLook.First);
    }

    /// <summary>Three figures, with the unit where there is one.</summary>
    internal static string Words(double number, string unit) => $"{number.ToString("G3", CultureInfo.InvariantCulture)}{(unit.Length == 0 ? "" : $" {unit}")}";

    internal static string Degrees(Angle angle) => WheelAngle.FromDegrees(angle.Degrees).ToString();

    private static (double X, double Y) At(Angle angle, double share)
    {
        var reach = Math.Clamp(share, 0, 1) * Radius;
        return (Centre + (reach * Math.Sin(angle.Radians)), CentreY - (reach * Math.Cos(angle.Radians)));
    }
}
