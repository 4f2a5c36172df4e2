using PdfSharp.Drawing;
using Trundle.Measures;
using Trundle.Sheets.Drawing;

namespace Trundle.Sheets.Pictures;

/// <summary>A mass at a place around the wheel.</summary>
internal sealed record PolarMark(Mass Mass, WheelAngle At);

/// <summary>One correction plane on a polar grid: the heavy place before, what the weights leave, what may be left.</summary>
internal sealed record PolarPlane(string Title, PolarMark? Heavy, PolarMark? Left, Mass? Tolerance);

/// <summary>A polar grid, the valve on top, angles clockwise as seen from the outer face.</summary>
internal static class PolarPicture
{
    /// <summary>Draws a plane in a square of a side; <paramref name="full"/> is the mass at the outer ring.</summary>
    public static void Draw(XGraphics g, double x, double y, double side, PolarPlane plane, Mass full, string unit)
    {
        var radius = (side / 2) - 7;
        var (cx, cy) = (x + (side / 2), y + (side / 2) + 5);
        var hair = SheetInk.Line(SheetInk.Hairline, 0.5);
        for (var degrees = 0; degrees < 360; degrees += 30)
        {
            var (px, py) = At(WheelAngle.FromDegrees(degrees), radius);
            g.DrawLine(hair, cx, cy, px, py);
        }

        Circle(SheetInk.Line(SheetInk.Hairline, 0.7), null, cx, cy, radius);
        Circle(hair, null, cx, cy, radius / 2);
        g.DrawPolygon(SheetInk.Fill(SheetInk.Ink), [new XPoint(cx - 2.6, cy - radius - 5), new XPoint(cx + 2.6, cy - radius - 5), new XPoint(cx, cy - radius - 1)], XFillMode.Winding);
        SheetText.Draw(g, "valve", cx + 5, cy - radius - 1.5, 6, SheetInk.Soft);
        SheetText.Draw(g, Words(full, unit), cx + 2, cy - radius + 6.5, 5.5, SheetInk.Soft);
        SheetText.Draw(g, Words(full / 2, unit), cx + 2, cy - (radius / 2) + 6.5, 5.5, SheetInk.Soft);
        if (plane.Tolerance is { } tolerance)
        {
            Circle(SheetInk.Line(SheetInk.Accent, 0.7, 2, 1.5), SheetInk.Fill(SheetInk.Wash), cx, cy, Math.Max(1.5, Math.Min(1, tolerance / full) * radius));
        }

        if (plane.Heavy is { } heavy)
        {
            var (px, py) = At(heavy.At, radius * Math.Min(1, heavy.Mass / full));
            g.DrawLine(SheetInk.Line(SheetInk.Accent, 1.5), cx, cy, px, py);
            Circle(null, SheetInk.Fill(SheetInk.Ink), px, py, 2.6);
        }

        if (plane.Left is { } left)
        {
            var (px, py) = At(left.At, radius * Math.Min(1, left.Mass / full));
            g.DrawRectangle(SheetInk.Line(XColors.White, 0.6), SheetInk.Fill(SheetInk.Accent), px - 2.4, py - 2.4, 4.8, 4.8);
        }

        (double X, double Y) At(WheelAngle angle, double reach) => (cx + (reach * Math.Sin(angle.Radians)), cy - (reach * Math.Cos(angle.Radians)));

        void Circle(XPen? pen, XBrush? brush, double px, double py, double r)
        {
            if (brush is not null)
            {
                g.DrawEllipse(brush, px - r, py - r, 2 * r, 2 * r);
            }

            if (pen is not null)
            {
                g.DrawEllipse(pen, px - r, py - r, 2 * r, 2 * r);
            }
        }
    }

    /// <summary>The next round mass above all of these, for the outer ring.</summary>
    public static Mass FullScale(IEnumerable<Mass> masses, string unit)
    {
        var greatest = masses.Select(m => m.In(unit)).DefaultIfEmpty(0).Max();
        double[] steps = unit == "oz" ? [0.5, 1, 2, 3, 4, 6, 8, 12, 16, 32, 80] : [10, 20, 40, 60, 80, 100, 150, 200, 300, 500, 1000, 2000];
        return Quantity.Of<Mass>(steps.FirstOrDefault(s => s >= greatest, steps[^1]), unit);
    }

    /// <summary>A mass as written beside a plot.</summary>
    public static string Words(Mass mass, string unit) =>
        mass.Text(unit, unit == "oz" ? 2 : Math.Abs(mass.Grams - Math.Round(mass.Grams)) < 0.05 ? 0 : 1);
}
