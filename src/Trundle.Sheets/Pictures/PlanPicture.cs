using PdfSharp.Drawing;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Sheets.Drawing;

namespace Trundle.Sheets.Pictures;

/// <summary>One wheel on the plan.</summary>
/// <param name="Position">Where it sits.</param>
/// <param name="Name">In words.</param>
/// <param name="Lines">What is written at it, the first in full ink.</param>
/// <param name="Tread">Its depths, or null.</param>
/// <param name="Category">The gravest finding there, or null where nothing was looked at.</param>
internal sealed record PlanWheel(Position Position, string Name, IReadOnlyList<string> Lines, TreadDepths? Tread, Category? Category);

/// <summary>The vehicle as its axle lines seen from above, the front at the left and the left side on top.</summary>
internal static class PlanPicture
{
    private const double Long = 52;
    private const double Across = 19;

    /// <summary>The height that the drawing needs; a tight one draws the sides of single wheels closer together.</summary>
    public static double Height(IReadOnlyList<PlanWheel> wheels, bool singleTrack, bool tight = false) =>
        singleTrack ? 84 : wheels.Any(w => w.Position.Dual != DualPlace.Single) ? 268 : tight ? 124 : 164;

    /// <summary>Draws it in a box.</summary>
    /// <param name="g">Where to.</param>
    /// <param name="box">The room.</param>
    /// <param name="wheels">The wheels.</param>
    /// <param name="axles">How many axles.</param>
    /// <param name="scale">How depths are drawn.</param>
    /// <param name="singleTrack">A motorcycle: its wheels stand one behind the other on the middle line.</param>
    public static void Draw(XGraphics g, XRect box, IReadOnlyList<PlanWheel> wheels, int axles, DepthScale scale, bool singleTrack)
    {
        var duals = wheels.Any(w => w.Position.Dual != DualPlace.Single);
        var spare = wheels.FirstOrDefault(w => w.Position.IsSpare);
        var right = box.Right - (spare is null ? 0 : 108);
        var middle = singleTrack ? box.Bottom - 14 : box.Y + (box.Height / 2);
        var reach = (box.Height / 2) - 44 - (duals ? Across + 3 : 0);
        var column = (right - box.X - 24) / Math.Max(1, axles);
        g.DrawLine(SheetInk.Line(SheetInk.Hairline, 0.7, 6, 2, 1, 2), box.X + 24, middle, right, middle);
        SheetText.Draw(g, "front", box.X, middle + 2.5, 7, SheetInk.Soft);
        for (var axle = 1; axle <= axles && !singleTrack; axle++)
        {
            g.DrawLine(SheetInk.Line(SheetInk.Ink, 1.1), X(axle), middle - reach, X(axle), middle + reach);
        }

        foreach (var wheel in wheels.Where(w => !w.Position.IsSpare))
        {
            var left = wheel.Position.Side == Side.Left;
            var outward = wheel.Position.Dual == DualPlace.Outer ? Across + 3 : 0;
            var y = singleTrack ? middle : left ? middle - reach - outward : middle + reach + outward;
            var x = X(wheel.Position.Axle);
            Body(g, wheel, x, y);
            if (wheel.Position.Dual == DualPlace.Inner)
            {
                // An inner wheel's words stand inside the vehicle, beside the axle line.
                Words(g, wheel, x + 8, left ? y + 20 : y - 35, scale, column - (Long / 2) - 8);
            }
            else
            {
                Words(g, wheel, x - (Long / 2), left || singleTrack ? y - 35 : y + 19, scale, column);
            }
        }

        if (spare is not null)
        {
            Body(g, spare, box.Right - 60, middle);
            Words(g, spare, box.Right - 60 - (Long / 2), middle + 19, scale, 60 + (Long / 2));
        }

        double X(int axle) => box.X + 30 + (Long / 2) + ((axle - 1) * column);
    }

    private static void Body(XGraphics g, PlanWheel wheel, double x, double y)
    {
        g.DrawRoundedRectangle(SheetInk.Line(SheetInk.Ink, 1), XBrushes.White, x - (Long / 2), y - (Across / 2), Long, Across, 8, 8);
        SheetText.Draw(g, wheel.Position.ToString(), x, y + 3, 8.5, SheetInk.Ink, true, Align.Middle);
        if (wheel.Category is not { } category)
        {
            // An empty square would say that it is in order.
            SheetText.Draw(g, "not looked at", x + (Long / 2) + 4, y + 2.7, 7.5, SheetInk.Soft);
            return;
        }

        SquarePicture.Draw(g, x + (Long / 2) + 4, y - 5, 10, category);
        if (category != Category.None)
        {
            SheetText.Draw(g, SquarePicture.Words(category), x + (Long / 2) + 17, y + 2.7, 7.5, SquarePicture.Color(category));
        }
    }

    private static void Words(XGraphics g, PlanWheel wheel, double x, double top, DepthScale scale, double width)
    {
        // Many axles stand close: their words shrink with the room.
        var size = Math.Min(8, 8 * width / 92);
        if (wheel.Lines.Count > 0 && SheetText.Width(g, wheel.Lines[0], size) is var needed && needed > width)
        {
            size *= width / needed;
        }

        SheetText.Draw(g, wheel.Name, x, top, size + 0.5, SheetInk.Ink, true);
        for (var i = 0; i < wheel.Lines.Count; i++)
        {
            SheetText.Draw(g, wheel.Lines[i], x, top + 10 + (i * 9.2), i == 0 ? size : size - 1, i == 0 ? SheetInk.Ink : SheetInk.Soft);
        }

        if (wheel.Tread is null)
        {
            return;
        }

        var words = wheel.Lines.Select(l => SheetText.Width(g, l, size)).Append(SheetText.Width(g, wheel.Name, size + 0.5, true)).Max();
        foreach (var bars in (double[])[7, 6, 5])
        {
            var left = x + Math.Max(12 * bars, words + bars);
            if (left + TreadPicture.BarsWidth(g, scale, bars) <= x + width)
            {
                TreadPicture.Bars(g, left, top + 21, wheel.Tread, scale, bars);
                return;
            }
        }
    }
}
