using PdfSharp.Drawing;

namespace Trundle.Sheets.Drawing;

/// <summary>The few colours of the paper: the light theme of the pages, on white.</summary>
internal static class SheetInk
{
    public static readonly XColor Ink = XColor.FromArgb(0x1c, 0x24, 0x30);
    public static readonly XColor Soft = XColor.FromArgb(0x56, 0x5d, 0x69);
    public static readonly XColor Hairline = XColor.FromArgb(0xc9, 0xc4, 0xb8);
    public static readonly XColor Accent = XColor.FromArgb(0x0b, 0x55, 0x63);
    public static readonly XColor Wash = XColor.FromArgb(0xdf, 0xe8, 0xe8);
    public static readonly XColor Rubber = XColor.FromArgb(0xe6, 0xe0, 0xd6);
    public static readonly XColor Minor = XColor.FromArgb(0x00, 0x72, 0xb2);
    public static readonly XColor Refer = XColor.FromArgb(0xcc, 0x79, 0xa7);
    public static readonly XColor ReferLine = XColor.FromArgb(0x9c, 0x4a, 0x78);
    public static readonly XColor Major = XColor.FromArgb(0xd5, 0x5e, 0x00);
    public static readonly XColor MajorWord = XColor.FromArgb(0xad, 0x4c, 0x00);

    /// <summary>A line of a width in points, dashed where lengths are given.</summary>
    public static XPen Line(XColor color, double width = 0.6, params double[] dashes)
    {
        var pen = new XPen(color, width) { LineJoin = XLineJoin.Round };
        if (dashes.Length > 0)
        {
            // Dash lengths count in line widths.
            pen.DashPattern = [.. dashes.Select(d => d / width)];
        }

        return pen;
    }

    public static XSolidBrush Fill(XColor color) => new(color);
}
