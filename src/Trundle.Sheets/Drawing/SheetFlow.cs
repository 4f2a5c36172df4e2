using System.Globalization;
using PdfSharp.Drawing;

namespace Trundle.Sheets.Drawing;

/// <summary>A column of a table.</summary>
/// <param name="Title">Its heading.</param>
/// <param name="Share">Its part of the width.</param>
internal sealed record Column(string Title, double Share);

/// <summary>A cell: its words, and a picture drawn before them where there is one.</summary>
/// <param name="Words">Words.</param>
/// <param name="Bold">Bold.</param>
/// <param name="Color">Ink where null.</param>
/// <param name="Before">Draws a square of the given side at a place, or null.</param>
internal sealed record Cell(string Words, bool Bold = false, XColor? Color = null, Action<XGraphics, double, double, double>? Before = null)
{
    public static implicit operator Cell(string words) => new(words);
}

/// <summary>Writes down a document page after page: headings, paragraphs, tables, pictures. Each page carries a head and 'page x of y'.</summary>
internal sealed class SheetFlow : IDisposable
{
    private const double HeadHeight = 26;
    private const double FootHeight = 16;
    private const double Size = 8.2;

    private readonly SheetDocument _document;
    private readonly string _head;
    private readonly string _foot;
    private XRect _inner;

    public SheetFlow(SheetDocument document, string head, string foot)
    {
        (_document, _head, _foot) = (document, head, foot);
        NewPage();
    }

    public XGraphics Graphics { get; private set; } = null!;

    public double Left => _inner.X;

    public double Width => _inner.Width;

    /// <summary>How far down the page the writing has come.</summary>
    public double At { get; private set; }

    private double Bottom => _inner.Bottom - FootHeight;

    /// <summary>Moves down.</summary>
    public void Skip(double height) => At += height;

    /// <summary>Goes to a new page where less than a height is left.</summary>
    public void Need(double height)
    {
        if (At + height > Bottom && At > _inner.Y + HeadHeight + 1)
        {
            NewPage();
        }
    }

    public void Heading(string words, double keepWith = 60)
    {
        Need(keepWith + 24);
        if (At > _inner.Y + HeadHeight + 1)
        {
            At += 8;
            Graphics.DrawLine(SheetInk.Line(SheetInk.Hairline, 0.6), Left, At, Left + Width, At);
        }

        SheetText.Draw(Graphics, words, Left, At + 15, 11.5, SheetInk.Ink, true);
        At += 21;
    }

    public void SubHeading(string words, double keepWith = 40)
    {
        Need(keepWith + 16);
        SheetText.Draw(Graphics, words, Left, At + 11, 9.5, SheetInk.Ink, true);
        At += 16;
    }

    public void Paragraph(string words, XColor? color = null, double size = Size, bool bold = false)
    {
        foreach (var line in SheetText.Wrap(Graphics, words, size, Width, bold))
        {
            Need(SheetText.Line(size));
            SheetText.Draw(Graphics, line, Left, At + size, size, color ?? SheetInk.Ink, bold);
            At += SheetText.Line(size);
        }

        At += 2;
    }

    /// <summary>A table whose head is repeated on every page that it reaches. A row is never split.</summary>
    public void Table(IReadOnlyList<Column> columns, IEnumerable<IReadOnlyList<Cell>> rows, double size = 7.4)
    {
        var whole = columns.Sum(c => c.Share);
        var widths = columns.Select(c => Width * c.Share / whole).ToList();
        Need(SheetText.Line(size) * 3);
        TableHead(columns, widths, size);
        foreach (var row in rows)
        {
            var wrapped = row.Select((cell, i) => SheetText.Wrap(Graphics, cell.Words, size, widths[i] - 6 - (cell.Before is null ? 0 : size + 4), cell.Bold)).ToList();
            var height = (wrapped.Max(w => w.Count) * SheetText.Line(size)) + 4;
            if (At + height > Bottom)
            {
                NewPage();
                TableHead(columns, widths, size);
            }

            var x = Left;
            for (var i = 0; i < row.Count; i++)
            {
                var shift = 0.0;
                if (row[i].Before is { } before)
                {
                    before(Graphics, x, At + 2 + (size * 0.1), size + 1);
                    shift = size + 4;
                }

                for (var l = 0; l < wrapped[i].Count; l++)
                {
                    SheetText.Draw(Graphics, wrapped[i][l], x + shift, At + 2 + size + (l * SheetText.Line(size)), size, row[i].Color ?? SheetInk.Ink, row[i].Bold);
                }

                x += widths[i];
            }

            At += height;
            Graphics.DrawLine(SheetInk.Line(SheetInk.Hairline, 0.4), Left, At, Left + Width, At);
        }

        At += 4;
    }

    /// <summary>Writes heads and 'page x of y' on every page, now that their number is known.</summary>
    public void Finish()
    {
        Graphics.Dispose();
        for (var i = 0; i < _document.Pages; i++)
        {
            using var g = _document.Again(i);
            var number = string.Create(CultureInfo.InvariantCulture, $"page {i + 1} of {_document.Pages}");
            SheetText.Draw(g, number, _inner.Right, _inner.Y + 9, 8.5, SheetInk.Ink, align: Align.Right);
            var room = _inner.Width - SheetText.Width(g, number, 8.5) - 12;
            SheetText.Draw(g, SheetText.Wrap(g, _head, 8.5, room, true)[0], _inner.X, _inner.Y + 9, 8.5, SheetInk.Ink, true);
            g.DrawLine(SheetInk.Line(SheetInk.Ink, 0.6), _inner.X, _inner.Y + 15, _inner.Right, _inner.Y + 15);
            SheetText.Draw(g, SheetText.Wrap(g, _foot, 6.8, _inner.Width)[0], _inner.X, _inner.Bottom - 1, 6.8, SheetInk.Soft);
        }
    }

    public void Dispose() => Graphics.Dispose();

    private void NewPage()
    {
        Graphics?.Dispose();
        (Graphics, _inner) = _document.Add();
        At = _inner.Y + HeadHeight;
    }

    private void TableHead(IReadOnlyList<Column> columns, List<double> widths, double size)
    {
        var x = Left;
        for (var i = 0; i < columns.Count; i++)
        {
            SheetText.Draw(Graphics, columns[i].Title, x, At + size + 1, size - 0.6, SheetInk.Soft);
            x += widths[i];
        }

        At += SheetText.Line(size) + 3;
        Graphics.DrawLine(SheetInk.Line(SheetInk.Ink, 0.6), Left, At, Left + Width, At);
    }
}
