using System.Globalization;
using PdfSharp.Drawing;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Sheets.Drawing;

namespace Trundle.Sheets.Pictures;

/// <summary>The stud circle as it is on the hub, seen from outside, with the order of tightening.</summary>
internal static class StudPicture
{
    /// <summary>Draws it in a square of a side.</summary>
    public static void Draw(XGraphics g, double x, double y, double side, IReadOnlyList<int> order, BoltCircle? circle, Length? bore)
    {
        var count = order.Count;
        var (cx, cy) = (x + (side / 2), y + (side / 2));
        var pitch = side * 0.31;
        var size = Math.Min(side * 0.068, Math.PI * pitch / count * 0.8);
        g.DrawEllipse(SheetInk.Line(SheetInk.Hairline, 0.6), cx - pitch, cy - pitch, 2 * pitch, 2 * pitch);
        if (circle is not null && bore is { } hole)
        {
            // Bore to scale with the bolt circle.
            var r = Math.Min(pitch - size - 3, hole / circle.Diameter * pitch);
            g.DrawEllipse(SheetInk.Line(SheetInk.Soft, 0.6), cx - r, cy - r, 2 * r, 2 * r);
        }

        var accent = SheetInk.Line(SheetInk.Accent, 0.6);
        foreach (var (from, to) in order.Zip(order.Skip(1)))
        {
            Arrow(g, accent, Place(from, pitch), Place(to, pitch), size + 1.5);
        }

        for (var turn = 0; turn < count; turn++)
        {
            var (px, py) = Place(order[turn], pitch);
            g.DrawEllipse(SheetInk.Line(SheetInk.Ink, 0.8), XBrushes.White, px - size, py - size, 2 * size, 2 * size);
            SheetText.Draw(g, order[turn].ToString(CultureInfo.InvariantCulture), px, py + (size * 0.45), size * 1.3, SheetInk.Ink, true, Align.Middle);
            var (ox, oy) = Place(order[turn], pitch + (size * 2.1));
            SheetText.Draw(g, Ordinal(turn + 1), ox, oy + 2, Math.Max(5, size * 0.85), SheetInk.Accent, align: Align.Middle);
        }

        (double X, double Y) Place(int fixing, double reach)
        {
            var (sin, cos) = Math.SinCos(2 * Math.PI * (fixing - 1) / count);
            return (cx + (reach * sin), cy - (reach * cos));
        }
    }

    /// <summary>1st, 2nd, 3rd …</summary>
    private static string Ordinal(int number) => number.ToString(CultureInfo.InvariantCulture)
        + (number % 100 is 11 or 12 or 13 ? "th" : (number % 10) switch { 1 => "st", 2 => "nd", 3 => "rd", _ => "th" });

    private static void Arrow(XGraphics g, XPen pen, (double X, double Y) from, (double X, double Y) to, double clear)
    {
        var (dx, dy) = (to.X - from.X, to.Y - from.Y);
        var length = Math.Sqrt((dx * dx) + (dy * dy));
        if (length < (2 * clear) + 4)
        {
            return;
        }

        var (ux, uy) = (dx / length, dy / length);
        var (x1, y1, x2, y2) = (from.X + (ux * clear), from.Y + (uy * clear), to.X - (ux * clear), to.Y - (uy * clear));
        g.DrawLine(pen, x1, y1, x2, y2);
        g.DrawPolygon(SheetInk.Fill(SheetInk.Accent),
            [new XPoint(x2, y2), new XPoint(x2 - (ux * 4) - (uy * 1.5), y2 - (uy * 4) + (ux * 1.5)), new XPoint(x2 - (ux * 4) + (uy * 1.5), y2 - (uy * 4) - (ux * 1.5))], XFillMode.Winding);
    }
}
