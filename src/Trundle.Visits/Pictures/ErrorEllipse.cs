using System.Globalization;

namespace Trundle.Visits.Pictures;

/// <summary>How sure the end of a vector is: one standard error along the vector and across it.</summary>
internal static class ErrorEllipse
{
    // A smaller ellipse could not be seen under its point.
    private const double Least = 8;
    private const double Most = 110;
    private const double InCorner = 17;

    /// <summary>
    /// Draws it around a point; the vector leaves the centre at an angle from the top, clockwise. Where it would vanish under its point, it is drawn in the
    /// corner (the lower right one of a grid of 268 by 272 where none is given), so many times larger as is written there.
    /// </summary>
    public static void Draw(Svg svg, double x, double y, double degrees, double along, double across, (double X, double Y)? corner = null)
    {
        var greatest = Math.Max(along, across);
        if (!(greatest > 0) || !double.IsFinite(greatest))
        {
            return;
        }

        if (greatest >= Least)
        {
            One(svg, x, y, degrees, Math.Min(along, Most), Math.Min(across, Most));
            return;
        }

        var times = MatchVectors.FullScale(InCorner / greatest / 2);
        if (times <= 1_000_000)
        {
            var at = corner ?? (246, 238);
            One(svg, at.X, at.Y, degrees, along * times, across * times);
            svg.Words(at.X + 20, at.Y + 30, string.Create(CultureInfo.InvariantCulture, $"error ×{times:0.##}"), 12, "end", Svg.Soft);
        }
    }

    private static void One(Svg svg, double x, double y, double degrees, double along, double across) =>
        svg.Raw($"""<ellipse cx="{Svg.N(x)}" cy="{Svg.N(y)}" rx="{Svg.N(Math.Max(across, 1.5))}" ry="{Svg.N(Math.Max(along, 1.5))}" transform="rotate({Svg.N(degrees)} {Svg.N(x)} {Svg.N(y)})" fill="none" stroke="{Svg.Ink}" stroke-width="1.25" stroke-dasharray="3 2"/>""");
}
