using PdfSharp.Drawing;
using Trundle.Engine.Findings;
using Trundle.Sheets.Drawing;

namespace Trundle.Sheets.Pictures;

/// <summary>The square of a category, hatched as on a drawing. Its word always stands beside it.</summary>
internal static class SquarePicture
{
    private static readonly (double X1, double Y1, double X2, double Y2)[] Rising =
        [(1.5, 8.5, 8.5, 1.5), (1.5, 14.5, 14.5, 1.5), (3, 19, 19, 3), (8.5, 18.5, 18.5, 8.5), (14.5, 18.5, 18.5, 14.5)];

    /// <summary>Draws it with its upper left corner at a place; <paramref name="size"/> is its side.</summary>
    public static void Draw(XGraphics g, double x, double y, double size, Category category)
    {
        var unit = size / 20;
        switch (category)
        {
            case Category.None:
                Frame(SheetInk.Ink);
                break;
            case Category.Minor:
                Hatch(SheetInk.Minor, false);
                Frame(SheetInk.Minor);
                break;
            case Category.Refer:
                g.DrawRectangle(SheetInk.Fill(XColor.FromArgb(0xf4, 0xe3, 0xed)), x + unit, y + unit, 18 * unit, 18 * unit);
                Frame(SheetInk.ReferLine);
                SheetText.Draw(g, "?", x + (size / 2), y + (15.2 * unit), 14.5 * unit, SheetInk.ReferLine, true, Align.Middle);
                break;
            case Category.Major:
                Hatch(SheetInk.Major, true);
                Frame(SheetInk.Major);
                break;
            case Category.Dangerous:
                g.DrawRectangle(SheetInk.Fill(SheetInk.Major), x + unit, y + unit, 18 * unit, 18 * unit);
                Frame(SheetInk.Ink);
                g.DrawRectangle(SheetInk.Fill(SheetInk.Ink), x + (3.5 * unit), y + (8 * unit), 13 * unit, 4 * unit);
                break;
        }

        void Frame(XColor color) => g.DrawRectangle(SheetInk.Line(color, 1.6 * unit), x + unit, y + unit, 18 * unit, 18 * unit);

        void Hatch(XColor color, bool crossed)
        {
            var pen = SheetInk.Line(color, 1.3 * unit);
            foreach (var (x1, y1, x2, y2) in Rising)
            {
                g.DrawLine(pen, x + (x1 * unit), y + (y1 * unit), x + (x2 * unit), y + (y2 * unit));
                if (crossed)
                {
                    g.DrawLine(pen, x + ((20 - x1) * unit), y + (y1 * unit), x + ((20 - x2) * unit), y + (y2 * unit));
                }
            }
        }
    }

    /// <summary>The words of a category for people.</summary>
    public static string Words(Category category) => category == Category.None ? "no deficiency" : category.Word();

    /// <summary>The colour of a category's word.</summary>
    public static XColor Color(Category category) => category switch
    {
        Category.None => SheetInk.Ink,
        Category.Minor => SheetInk.Minor,
        Category.Refer => SheetInk.ReferLine,
        Category.Major => SheetInk.MajorWord,
        Category.Dangerous => SheetInk.MajorWord,
    };
}
