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
    private readonly List<(string Words, bool Sub, double KeepWith)> _pending = [];
    private XRect _inner;
    private double _at;
    private XGraphics? _graphics;

    public SheetFlow(SheetDocument document, string head, string foot)
    {
        (_document, _head, _foot) = (document, head, foot);
        NewPage();
    }

    public XGraphics Graphics => _graphics!;

    public double Left => _inner.X;

    public double Width => _inner.Width;

    /// <summary>How far down the page the writing has come.</summary>
    public double At
    {
        get
        {
            Need(0);
            return _at;
        }
    }

    private double Bottom => _inner.Bottom - FootHeight;

    private bool AtTop => _at <= _inner.Y + HeadHeight + 1;

    /// <summary>Moves down.</summary>
    public void Skip(double height)
    {
        Need(0);
        _at += height;
    }

    /// <summary>Goes to a new page where less than a height is left, and writes the headings that waited for what they stand over.</summary>
    public void Need(double height)
    {
        var above = _pending.Sum(h => h.Sub ? 16 : 29);
        var kept = Math.Max(height, _pending.Select(h => h.KeepWith).DefaultIfEmpty().Last());
        if (_at + above + kept > Bottom && !AtTop)
        {
            NewPage();
        }

        foreach (var (words, sub, _) in _pending)
        {
            Write(words, sub);
        }

        _pending.Clear();
    }

    /// <summary>A heading. It is written with what comes next, so that none stands alone at the foot of a page.</summary>
    public void Heading(string words, double keepWith = 60) => _pending.Add((words, false, keepWith));

    /// <summary>A heading of a smaller part.</summary>
    public void SubHeading(string words, double keepWith = 40) => _pending.Add((words, true, keepWith));

    private void Write(string words, bool sub)
    {
        if (sub)
        {
            SheetText.Draw(Graphics, words, Left, _at + 11, 9.5, SheetInk.Ink, true);
            _at += 16;
            return;
        }

        if (!AtTop)
        {
            _at += 8;
            Graphics.DrawLine(SheetInk.Line(SheetInk.Hairline, 0.6), Left, _at, Left + Width, _at);
        }

        SheetText.Draw(Graphics, words, Left, _at + 15, 11.5, SheetInk.Ink, true);
        _at += 21;
    }

    public void Paragraph(string words, XColor? color = null, double size = Size, bool bold = false)
    {
        var lines = SheetText.Wrap(Graphics, words, size, Width, bold);

        // A short one stays whole: no line of it stands alone on the next page.
        Need(SheetText.Line(size) * Math.Min(lines.Count, 4));
        foreach (var line in lines)
        {
            Need(SheetText.Line(size));
            SheetText.DrawLine(Graphics, line, Left, _at + size, size, color ?? SheetInk.Ink, bold);
            _at += SheetText.Line(size);
        }

        _at += 2;
    }

    /// <summary>A table whose head is repeated on every page that it reaches. A row is never split.</summary>
    public void Table(IReadOnlyList<Column> columns, IEnumerable<IReadOnlyList<Cell>> rows, double size = 7.4)
    {
        var whole = columns.Sum(c => c.Share);
        var widths = columns.Select(c => Width * c.Share / whole).ToList();
        var first = true;
        foreach (var row in rows)
        {
            var wrapped = row.Select((cell, i) => SheetText.Wrap(Graphics, cell.Words, size, widths[i] - 6 - (cell.Before is null ? 0 : size + 4), cell.Bold)).ToList();
            var height = (wrapped.Max(w => w.Count) * SheetText.Line(size)) + 4;
            if (first)
            {
                // A table's head stands over its first row, on the same page.
                Need(SheetText.Line(size) + 3 + height);
                TableHead(columns, widths, size);
                first = false;
            }
            else if (_at + height > Bottom)
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
                    before(Graphics, x, _at + 2 + (size * 0.1), size + 1);
                    shift = size + 4;
                }

                for (var l = 0; l < wrapped[i].Count; l++)
                {
                    SheetText.DrawLine(Graphics, wrapped[i][l], x + shift, _at + 2 + size + (l * SheetText.Line(size)), size, row[i].Color ?? SheetInk.Ink, row[i].Bold);
                }

                x += widths[i];
            }

            _at += height;
            Graphics.DrawLine(SheetInk.Line(SheetInk.Hairline, 0.4), Left, _at, Left + Width, _at);
        }

        _at += 4;
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
            SheetText.DrawLine(g, SheetText.Wrap(g, _head, 8.5, room, true)[0], _inner.X, _inner.Y + 9, 8.5, SheetInk.Ink, true);
            g.DrawLine(SheetInk.Line(SheetInk.Ink, 0.6), _inner.X, _inner.Y + 15, _inner.Right, _inner.Y + 15);
            SheetText.DrawLine(g, SheetText.Wrap(g, _foot, 6.8, _inner.Width)[0], _inner.X, _inner.Bottom - 1, 6.8, SheetInk.Soft);
        }
    }

    public void Dispose() => Graphics.Dispose();

    private void NewPage()
    {
        _graphics?.Dispose();
        (_graphics, _inner) = _document.Add();
        _at = _inner.Y + HeadHeight;
    }

    private void TableHead(IReadOnlyList<Column> columns, List<double> widths, double size)
    {
        var x = Left;
        if (columns.All(c => c.Title.Length == 0))
        {
            Graphics.DrawLine(SheetInk.Line(SheetInk.Ink, 0.6), Left, _at, Left + Width, _at);
            return;
        }

        for (var i = 0; i < columns.Count; i++)
        {
            SheetText.Draw(Graphics, columns[i].Title, x, _at + size + 1, size - 0.6, SheetInk.Soft);
            x += widths[i];
        }

        _at += SheetText.Line(size) + 3;
        Graphics.DrawLine(SheetInk.Line(SheetInk.Ink, 0.6), Left, _at, Left + Width, _at);
    }
}
