using PdfSharp.Drawing;
using QRCoder;
using Trundle.Sheets.Drawing;

namespace Trundle.Sheets.Pictures;

/// <summary>A QR code (ISO/IEC 18004) as filled squares, so that it stays sharp at every size.</summary>
internal static class QrPicture
{
    /// <summary>Draws it with its quiet zone into a square that belongs to it, with error correction of level M.</summary>
    public static void Draw(XGraphics g, double x, double y, double side, string text)
    {
        using var data = QRCodeGenerator.GenerateQrCode(text, QRCodeGenerator.ECCLevel.M, forceUtf8: false);
        var modules = data.ModuleMatrix.Count;
        var module = side / modules;
        var ink = SheetInk.Fill(XColors.Black);
        for (var row = 0; row < modules; row++)
        {
            // Dark modules that stand side by side are one rectangle: no hairline of paper is left between them.
            for (var from = 0; from < modules;)
            {
                var to = from;
                while (to < modules && data.ModuleMatrix[row][to])
                {
                    to++;
                }

                if (to > from)
                {
                    g.DrawRectangle(ink, x + (from * module), y + (row * module), (to - from) * module, module);
                }

                from = to + 1;
            }
        }
    }
}
