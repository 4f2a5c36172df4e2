using PdfSharp.Drawing;

namespace Trundle.Sheets.Drawing;

/// <summary>The title block at the foot of a sheet: small labels over what was entered, in rows of cells between hairlines.</summary>
internal static class TitleBlock
{
    public const double RowHeight = 27;

    /// <summary>Draws rows of cells from a top edge down; a cell's share is its part of the width.</summary>
    public static void Draw(XGraphics g, double left, double top, double width, IReadOnlyList<IReadOnlyList<(string Label, string Words, double Share)>> rows)
    {
        var pen = SheetInk.Line(SheetInk.Hairline, 0.6);
        g.DrawLine(SheetInk.Line(SheetInk.Ink, 0.8), left, top, left + width, top);
        for (var r = 0; r < rows.Count; r++)
        {
            var y = top + (r * RowHeight);
            if (r > 0)
            {
                g.DrawLine(pen, left, y, left + width, y);
            }

            var x = left;
            var whole = rows[r].Sum(c => c.Share);
            foreach (var (label, words, share) in rows[r])
            {
                var cell = width * share / whole;
                if (x > left)
                {
                    g.DrawLine(SheetInk.Line(SheetInk.Ink, 0.6), x, y, x, y + RowHeight);
                }

                SheetText.Draw(g, label, x + 6, y + 9, 6.5, SheetInk.Soft);
                var size = 9.0;
                while (size > 6 && SheetText.Width(g, words, size) > cell - 11)
                {
                    size -= 0.5;
                }

                var fitted = words;
                while (fitted.Length > 4 && SheetText.Width(g, fitted, size) > cell - 11)
                {
                    fitted = fitted[..^2].TrimEnd() + "…";
                }

                SheetText.Draw(g, fitted, x + 6, y + 21, size, SheetInk.Ink);
                x += cell;
            }
        }
    }
}
