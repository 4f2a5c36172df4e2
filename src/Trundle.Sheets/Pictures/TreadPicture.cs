using PdfSharp.Drawing;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Sheets.Drawing;

namespace Trundle.Sheets.Pictures;

/// <summary>How depths are written, and the least depth that the chosen rules allow.</summary>
/// <param name="Unit">The unit of depth: mm or 32nds.</param>
/// <param name="Limit">The least depth, or null where no rule was chosen.</param>
internal sealed record DepthScale(string Unit, Length? Limit)
{
    /// <summary>A depth without its unit.</summary>
    public string Number(Length depth) => Quantity.Number(depth.In(Unit), Unit == "mm" ? 1 : 0);

    /// <summary>A depth with its unit.</summary>
    public string Words(Length depth) => Unit == "mm" ? $"{Number(depth)} mm" : $"{Number(depth)}/32 in";

    /// <summary>True where a depth is under the limit.</summary>
    public bool Below(Length depth) => Limit is { } limit && depth.Millimetres < limit.Millimetres - 1e-9;
}

/// <summary>A tread in cross-section: what stands over the groove bottom at inner, centre and outer, and the limit line.</summary>
internal static class TreadPicture
{
    /// <summary>The height of the drawing for a width.</summary>
    public static double Height(double width) => width * 0.42;

    /// <summary>Draws the section with every measured place.</summary>
    public static void Draw(XGraphics g, XRect box, TreadDepths? tread, DepthScale scale)
    {
        var unit = box.Width / 100;
        var ground = box.Y + (30 * unit);
        var (left, right) = (box.X, box.X + (82 * unit));
        var carcass = new XGraphicsPath();
        carcass.AddLine(left, ground + (8 * unit), left, ground + (7 * unit));
        carcass.AddBezier(left, ground + (7 * unit), left, ground + (3 * unit), left + (3 * unit), ground, left + (8 * unit), ground);
        carcass.AddLine(left + (8 * unit), ground, right - (8 * unit), ground);
        carcass.AddBezier(right - (8 * unit), ground, right - (3 * unit), ground, right, ground + (3 * unit), right, ground + (7 * unit));
        carcass.AddLine(right, ground + (7 * unit), right, ground + (8 * unit));
        g.DrawPath(SheetInk.Fill(SheetInk.Rubber), carcass);

        var perMillimetre = Scale(tread, 22 * unit);
        (string Name, IReadOnlyList<Length> Depths)[] zones =
            [("inner", tread?.Inner ?? []), ("centre", tread?.Centre ?? []), ("outer", tread?.Outer ?? [])];
        var lineAt = scale.Limit is { } least ? ground - (least.Millimetres * perMillimetre) : (double?)null;
        var words = new List<Action>();
        for (var z = 0; z < zones.Length; z++)
        {
            var x = left + ((8 + (z * 23)) * unit);
            var width = 20 * unit;
            SheetText.Draw(g, zones[z].Name, x + (width / 2), ground + (12.5 * unit), 4.6 * unit, SheetInk.Soft, align: Align.Middle);
            if (zones[z].Depths.Count == 0)
            {
                g.DrawLine(SheetInk.Line(SheetInk.Soft, 0.5, 2, 2), x, ground - (10 * unit), x + width, ground - (10 * unit));
                SheetText.Draw(g, "not measured", x + (width / 2), ground - (4 * unit), 3.2 * unit, SheetInk.Soft, align: Align.Middle);
                continue;
            }

            Rib(g, zones[z].Depths, x, width, ground, perMillimetre, unit, scale, lineAt, words);
        }

        g.DrawPath(SheetInk.Line(SheetInk.Ink, 0.8), carcass);
        if (scale.Limit is { } limit)
        {
            var y = ground - (limit.Millimetres * perMillimetre);
            g.DrawLine(SheetInk.Line(SheetInk.Ink, 0.5, 2.5, 1.5), left + (4 * unit), y, right, y);
            SheetText.Draw(g, scale.Words(limit), right + unit, y + (1.6 * unit), 4.6 * unit, SheetInk.Soft);
        }

        // The depths stand over the limit line, never under it.
        words.ForEach(w => w());
    }

    /// <summary>Three small bars with the least depth of each zone, standing on <paramref name="ground"/>.</summary>
    public static void Bars(XGraphics g, double left, double ground, TreadDepths tread, DepthScale scale, double size)
    {
        var perMillimetre = Scale(tread, 3.4 * size);
        IReadOnlyList<Length>[] zones = [tread.Inner, tread.Centre, tread.Outer];
        for (var z = 0; z < zones.Length; z++)
        {
            var x = left + (z * 2.15 * size);
            var width = 1.8 * size;
            if (zones[z].Count == 0)
            {
                g.DrawLine(SheetInk.Line(SheetInk.Soft, 0.6, 2, 2), x, ground - 1, x + width, ground - 1);
                continue;
            }

            var least = zones[z].Min();
            var below = scale.Below(least);
            var height = Math.Max(least.Millimetres * perMillimetre, 0.8);
            g.DrawRectangle(SheetInk.Line(below ? SheetInk.Major : SheetInk.Ink, below ? 1.2 : 0.5), below ? XBrushes.White : SheetInk.Fill(SheetInk.Rubber), x, ground - height, width, height);
            SheetText.Draw(g, scale.Number(least), x + (width / 2), ground - height - (0.28 * size), size, below ? SheetInk.MajorWord : SheetInk.Ink, below, Align.Middle);
        }

        g.DrawLine(SheetInk.Line(SheetInk.Ink, 0.8), left - (0.4 * size), ground, left + (6.5 * size), ground);
        if (scale.Limit is { } limit)
        {
            var y = ground - (limit.Millimetres * perMillimetre);
            g.DrawLine(SheetInk.Line(SheetInk.Soft, 0.5, 2, 1.4), left - (0.6 * size), y, left + (6.8 * size), y);
            SheetText.Draw(g, scale.Words(limit), left + (7.1 * size), y + (0.3 * size), 0.82 * size, SheetInk.Soft);
        }
    }

    /// <summary>The width that the small bars take, with the words at their limit line.</summary>
    public static double BarsWidth(XGraphics g, DepthScale scale, double size) =>
        (7.1 * size) + (scale.Limit is { } limit ? SheetText.Width(g, scale.Words(limit), 0.82 * size) + 2 : 0);

    private static void Rib(XGraphics g, IReadOnlyList<Length> depths, double x, double width, double ground, double perMillimetre, double unit, DepthScale scale, double? lineAt, List<Action> words)
    {
        var step = width / depths.Count;
        var size = Math.Min(4.8, 10.6 / depths.Count) * unit;
        for (var i = 0; i < depths.Count; i++)
        {
            var below = scale.Below(depths[i]);
            var height = Math.Max(depths[i].Millimetres * perMillimetre, 0.8);
            var line = SheetInk.Line(below ? SheetInk.Major : SheetInk.Ink, below ? 1.2 : 0.6);
            g.DrawRectangle(line, SheetInk.Fill(SheetInk.Rubber), x + (i * step), ground - height, step, height);
            var (text, at, foot) = (scale.Number(depths[i]), x + ((i + 0.5) * step), ground - height - (1.2 * unit));
            words.Add(() =>
            {
                if (lineAt is { } y && y > foot - size && y < foot + 1)
                {
                    var room = SheetText.Width(g, text, size, below);
                    g.DrawRectangle(XBrushes.White, at - (room / 2) - 0.5, foot - (size * 0.85), room + 1, size);
                }

                SheetText.Draw(g, text, at, foot, size, below ? SheetInk.MajorWord : SheetInk.Ink, below, Align.Middle);
            });
        }
    }

    private static double Scale(TreadDepths? tread, double height)
    {
        var greatest = tread?.All.Select(d => d.Depth.Millimetres).DefaultIfEmpty(8).Max() ?? 8;
        return height / Math.Max(greatest, 4);
    }
}
