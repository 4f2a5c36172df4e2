using PdfSharp.Drawing;
using PdfSharp.Fonts;
using PdfSharp.Pdf;

namespace Trundle.Sheets.Drawing;

/// <summary>The one typeface of the paper, from the program itself: no machine's own fonts are asked for.</summary>
internal sealed class SheetFonts : IFontResolver
{
    private const string Family = "Sheet";
    private static readonly Lock Gate = new();
    private static readonly XPdfFontOptions Options = new(PdfFontEncoding.Unicode, PdfFontEmbedding.TryComputeSubset);

    private SheetFonts()
    {
    }

    /// <summary>A font of a size in points.</summary>
    public static XFont Of(double size, bool bold = false)
    {
        Install();
        return new XFont(Family, size, bold ? XFontStyleEx.Bold : XFontStyleEx.Regular, Options);
    }

    public FontResolverInfo? ResolveTypeface(string familyName, bool bold, bool italic) =>
        new(bold ? "IBMPlexSans-Bold.ttf" : "IBMPlexSans-Regular.ttf");

    public byte[]? GetFont(string faceName)
    {
        using var stream = typeof(SheetFonts).Assembly.GetManifestResourceStream(faceName)
            ?? throw new InvalidOperationException($"The typeface '{faceName}' is not carried.");
        var bytes = new byte[stream.Length];
        stream.ReadExactly(bytes);
        return bytes;
    }

    private static void Install()
    {
        lock (Gate)
        {
            GlobalFontSettings.FontResolver ??= new SheetFonts();
        }
    }
}
