using System.Text.RegularExpressions;
using PdfSharp.Drawing;

namespace Trundle.Sheets.Drawing;

/// <summary>How words stand to their place.</summary>
internal enum Align
{
    Left,
    Middle,
    Right,
}

/// <summary>Words on paper: measured, broken into lines, drawn from their base line.</summary>
internal static partial class SheetText
{
    private const double LineHeight = 1.32;

    /// <summary>The height of one line.</summary>
    public static double Line(double size) => size * LineHeight;

    public static double Width(XGraphics g, string words, double size, bool bold = false) =>
        words.Length == 0 ? 0 : g.MeasureString(Clean(SheetTexts.Say(g, words)), SheetFonts.Of(size, bold)).Width;

    /// <summary>Draws one line with its base line at <paramref name="y"/>.</summary>
    public static void Draw(XGraphics g, string words, double x, double y, double size, XColor color, bool bold = false, Align align = Align.Left) =>
        DrawLine(g, SheetTexts.Say(g, words), x, y, size, color, bold, align);

    /// <summary>Draws a line that <see cref="Wrap"/> broke: it is in the page's texts already.</summary>
    public static void DrawLine(XGraphics g, string words, double x, double y, double size, XColor color, bool bold = false, Align align = Align.Left)
    {
        if (words.Length == 0)
        {
            return;
        }

        var clean = Clean(words);
        var font = SheetFonts.Of(size, bold);
        var shift = align == Align.Left ? 0 : g.MeasureString(clean, font).Width * (align == Align.Middle ? 0.5 : 1);
        g.DrawString(clean, font, SheetInk.Fill(color), x - shift, y);
    }

    /// <summary>Breaks words into lines that fit a width; a word that is longer than a line is broken behind a point or a hyphen, else within.</summary>
    public static IReadOnlyList<string> Wrap(XGraphics g, string words, double size, double width, bool bold = false)
    {
        var font = SheetFonts.Of(size, bold);
        var lines = new List<string>();
        foreach (var paragraph in NumberAndUnit().Replace(Clean(SheetTexts.Say(g, words)), "\u00a0").Split('\n'))
        {
            var line = "";
            foreach (var word in paragraph.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            {
                var longer = line.Length == 0 ? word : $"{line} {word}";
                if (Fits(longer))
                {
                    line = longer;
                    continue;
                }

                if (line.Length > 0)
                {
                    lines.Add(line);
                }

                line = word;
                while (!Fits(line) && line.Length > 1)
                {
                    var cut = line.Length - 1;
                    while (cut > 1 && !Fits(line[..cut]))
                    {
                        cut--;
                    }

                    // "damage.puncture.crown" is read in its parts.
                    var joint = line.LastIndexOfAny(['.', '-'], cut - 1) + 1;
                    cut = joint > 3 && joint < line.Length ? joint : cut;
                    lines.Add(line[..cut]);
                    line = line[cut..];
                }
            }

            lines.Add(line);
        }

        return lines;

        bool Fits(string text) => g.MeasureString(text, font).Width <= width;
    }

    /// <summary>Draws wrapped words from a top edge down and returns the height they took.</summary>
    public static double Paragraph(XGraphics g, string words, double x, double top, double width, double size, XColor color, bool bold = false)
    {
        var lines = Wrap(g, words, size, width, bold);
        for (var i = 0; i < lines.Count; i++)
        {
            DrawLine(g, lines[i], x, top + size + (i * Line(size)), size, color, bold);
        }

        return lines.Count * Line(size);
    }

    public static double ParagraphHeight(XGraphics g, string words, double width, double size, bool bold = false) =>
        Wrap(g, words, size, width, bold).Count * Line(size);

    /// <summary>The blank between a number and its unit: a line never ends there.</summary>
    [GeneratedRegex(@"(?<=\d) (?=(?:g|oz|mm|in|kPa|psi|bar|km|mi|N·m|lbf·ft|kN|kg|km/h|mph|%|°C|g·mm|kg·mm²)(?:[\s.,;:)]|$))", RegexOptions.CultureInvariant)]
    private static partial Regex NumberAndUnit();

    /// <summary>Characters that the typeface lacks or that would break a line of drawing.</summary>
    private static string Clean(string words)
    {
        var text = words.Replace('\u202f', '\u00a0').Replace("\r", "", StringComparison.Ordinal).Replace('\t', ' ');
        return text.Any(c => char.IsControl(c) && c != '\n') ? new string([.. text.Select(c => char.IsControl(c) && c != '\n' ? ' ' : c)]) : text;
    }
}
