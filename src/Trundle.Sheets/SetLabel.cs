using System.Globalization;
using PdfSharp.Drawing;
using PdfSharp.Pdf;
using Trundle.Sheets.Drawing;
using Trundle.Sheets.Pictures;
using Trundle.Words;

namespace Trundle.Sheets;

/// <summary>On what labels are printed.</summary>
public enum LabelPaper
{
    /// <summary>Several on A4, to be cut.</summary>
    A4,

    /// <summary>Several on Letter, to be cut.</summary>
    Letter,

    /// <summary>One on each page of a label printer.</summary>
    Single,
}

/// <summary>One label: it hangs on one wheel of a set in storage.</summary>
/// <param name="Number">The set's number.</param>
/// <param name="Position">Where the wheel came from, in words.</param>
/// <param name="Vehicle">What the workshop calls the vehicle.</param>
/// <param name="Place">Where the set stands.</param>
/// <param name="Facts">Marking, TIN, depths: a line each.</param>
/// <param name="InOn">Since when it is in storage.</param>
/// <param name="Address">What the QR code holds: the address of the set's page.</param>
public sealed record LabelContent(string Number, string Position, string Vehicle, string Place, IReadOnlyList<string> Facts, DateOnly InOn, string Address);

/// <summary>Labels for the wheels of a set, each with a QR code that opens the set's page.</summary>
public static class SetLabel
{
    /// <summary>The papers' words, as a message lists them.</summary>
    public static string Papers { get; } = Measures.ChoiceText.Of(["a4", "letter", "label"]);

    // Own choice: 100 mm by 60 mm holds the code at a size that a telephone reads from an arm's length away.
    private const double Width = 100 / 25.4 * 72;
    private const double Height = 60 / 25.4 * 72;
    private const double Gap = 8;

    /// <summary>The paper of a word, or null.</summary>
    public static LabelPaper? PaperOf(string? word) => word?.Trim().ToUpperInvariant() switch
    {
        "A4" => LabelPaper.A4,
        "LETTER" => LabelPaper.Letter,
        "LABEL" => LabelPaper.Single,
        _ => null,
    };

    /// <summary>Draws the labels.</summary>
    /// <returns>The PDF's bytes.</returns>
    public static byte[] Write(IReadOnlyList<LabelContent> labels, LabelPaper paper, Texts? texts = null)
    {
        ArgumentNullException.ThrowIfNull(labels);
        using var document = new PdfDocument();
        document.Info.Title = labels.Count == 0 ? "Labels" : $"{labels[0].Number}, labels";
        document.Info.Creator = "Trundle";
        document.Language = (texts ?? Texts.British).Locale;
        var (width, height) = paper switch
        {
            LabelPaper.A4 => PaperSize.A4.Points(),
            LabelPaper.Letter => PaperSize.Letter.Points(),
            LabelPaper.Single => (Width, Height),
        };
        var columns = Math.Max(1, (int)((width - Gap) / (Width + Gap)));
        var rows = Math.Max(1, (int)((height - Gap) / (Height + Gap)));
        var (left, top) = paper == LabelPaper.Single
            ? (0.0, 0.0)
            : ((width - (columns * (Width + Gap)) + Gap) / 2, (height - (rows * (Height + Gap)) + Gap) / 2);
        foreach (var sheet in labels.Chunk(columns * rows))
        {
            var page = document.AddPage();
            page.Width = XUnit.FromPoint(width);
            page.Height = XUnit.FromPoint(height);
            using var g = XGraphics.FromPdfPage(page).In(texts ?? Texts.British);
            for (var i = 0; i < sheet.Length; i++)
            {
                Draw(g, left + (i % columns * (Width + Gap)), top + (i / columns * (Height + Gap)), sheet[i], paper != LabelPaper.Single);
            }
        }

        using var stream = new MemoryStream();
        document.Save(stream, false);
        return stream.ToArray();
    }

    private static void Draw(XGraphics g, double x, double y, LabelContent label, bool frame)
    {
        const double inside = 9;
        const double small = 10;
        if (frame)
        {
            g.DrawRectangle(SheetInk.Line(SheetInk.Hairline, 0.6), x, y, Width, Height);
        }

        const double code = 96;
        var right = x + Width - inside;
        QrPicture.Draw(g, right - code, y + inside, code, label.Address);
        SheetText.Draw(g, $"in {label.InOn.ToString("d MMM yyyy", CultureInfo.InvariantCulture)}", right - (code / 2), y + inside + code + 11, 8, SheetInk.Soft, align: Align.Middle);

        var room = Width - (2 * inside) - code - 8;
        var at = y + inside;
        at += Fitted(label.Number, 20, true) + 2;
        at += Fitted(label.Position, 13, true) + 2;
        at += Fitted(label.Place, 12, false) + 5;
        g.DrawLine(SheetInk.Line(SheetInk.Ink, 0.6), x + inside, at, x + inside + room, at);
        at += 3;
        foreach (var line in label.Facts.Prepend(label.Vehicle))
        {
            foreach (var part in SheetText.Wrap(g, line, small, room).Take(2))
            {
                if (at + small > y + Height - 4)
                {
                    return;
                }

                SheetText.DrawLine(g, part, x + inside, at + small, small, SheetInk.Ink);
                at += SheetText.Line(small);
            }
        }

        // One line, in the greatest type in which it fits; what does not fit in the smallest is cut.
        double Fitted(string words, double size, bool bold)
        {
            while (size > 8 && SheetText.Width(g, words, size, bold) > room)
            {
                size -= 0.5;
            }

            SheetText.DrawLine(g, SheetText.Wrap(g, words, size, room, bold)[0], x + inside, at + size, size, SheetInk.Ink, bold);
            return SheetText.Line(size);
        }
    }
}
