namespace Trundle.Visits.Pictures;

/// <summary>How sure the end of a vector is: one standard error along the vector and across it.</summary>
internal static class ErrorEllipse
{
    // A smaller ellipse could not be seen under its point.
    private const double Least = 7;
    private const double Most = 110;

    /// <summary>Draws it around a point; the vector leaves the centre at an angle from the top, clockwise. Smaller than its own point it is left out.</summary>
    public static void Draw(Svg svg, double x, double y, double degrees, double along, double across)
    {
        if (Math.Max(along, across) < Least)
        {
            return;
        }

        svg.Raw($"""<ellipse cx="{Svg.N(x)}" cy="{Svg.N(y)}" rx="{Svg.N(Math.Clamp(across, 2, Most))}" ry="{Svg.N(Math.Clamp(along, 2, Most))}" transform="rotate({Svg.N(degrees)} {Svg.N(x)} {Svg.N(y)})" fill="none" stroke="{Svg.Ink}" stroke-width="1.25" stroke-dasharray="2 2"/>""");
    }
}
