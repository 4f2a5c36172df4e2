using PdfSharp.Drawing;
using PdfSharp.Pdf;
using Trundle.Words;

namespace Trundle.Sheets.Drawing;

/// <summary>A document of one paper size with its thin frame on every page.</summary>
internal sealed class SheetDocument : IDisposable
{
    /// <summary>From the edge of the paper to the frame.</summary>
    public const double Edge = 28;

    /// <summary>From the frame to the words.</summary>
    public const double Inside = 14;

    private readonly PdfDocument _document = new();
    private readonly PaperSize _paper;
    private readonly Texts _texts;

    public SheetDocument(PaperSize paper, string title, DateOnly? date, Texts? texts = null)
    {
        _texts = texts ?? Texts.British;
        _paper = paper;
        _document.Info.Title = _texts.Say(title);
        _document.Info.Creator = "Trundle";
        if (date is { } day)
        {
            // The paper speaks of the visit's day and not of the moment of printing.
            _document.Info.CreationDate = day.ToDateTime(TimeOnly.MinValue, DateTimeKind.Utc);
            _document.Info.ModificationDate = _document.Info.CreationDate;
        }

        _document.Language = _texts.Locale;
        _document.ViewerPreferences.DisplayDocTitle = true;
    }

    public int Pages => _document.PageCount;

    /// <summary>A new page with its frame; the rectangle is where words may stand.</summary>
    public (XGraphics Graphics, XRect Inner) Add()
    {
        var (width, height) = _paper.Points();
        var page = _document.AddPage();
        page.Width = XUnit.FromPoint(width);
        page.Height = XUnit.FromPoint(height);
        var g = XGraphics.FromPdfPage(page).In(_texts);
        g.DrawRectangle(SheetInk.Line(SheetInk.Ink, 0.8), Edge, Edge, width - (2 * Edge), height - (2 * Edge));
        return (g, new XRect(Edge + Inside, Edge + Inside, width - (2 * (Edge + Inside)), height - (2 * (Edge + Inside))));
    }

    /// <summary>Opens a finished page again, to write what is known only at the end.</summary>
    public XGraphics Again(int index) => XGraphics.FromPdfPage(_document.Pages[index], XGraphicsPdfPageOptions.Append).In(_texts);

    /// <summary>The finished document; nothing can be written after.</summary>
    public (byte[] Pdf, int Pages) Finish()
    {
        var pages = Pages;
        using var stream = new MemoryStream();
        _document.Save(stream, false);
        return (stream.ToArray(), pages);
    }

    public void Dispose() => _document.Dispose();
}
