using System.Globalization;
using System.Text;

namespace Trundle.Visits.Pictures;

/// <summary>
/// Writes the text of one drawing. Colours are the page's own tokens with the light theme's values behind them, so that a drawing follows
/// the theme on a page and still has its colours where it stands alone.
/// </summary>
internal sealed class Svg
{
    public const string Ink = "var(--ink,#1c2430)";
    public const string Soft = "var(--ink-soft,#565d69)";
    public const string Hairline = "var(--hairline,#c9c4b8)";
    public const string Card = "var(--card,#fffdf8)";
    public const string Paper = "var(--paper,#f7f5f0)";
    public const string Accent = "var(--accent,#0b5563)";
    public const string Wash = "var(--accent-wash,#dfe8e8)";
    public const string Rubber = "var(--rubber,#e6e0d6)";

    private readonly StringBuilder _text = new();
    private readonly string _id;

    /// <summary>Begins a drawing of a size in its own units.</summary>
    /// <param name="id">Unique on its page; names the title and the description.</param>
    /// <param name="width">Width.</param>
    /// <param name="height">Height.</param>
    /// <param name="title">What a screen reader calls it.</param>
    /// <param name="description">What it shows, in words.</param>
    /// <param name="holdsLinks">True where parts of it are links: then it is a group, else one image.</param>
    public Svg(string id, double width, double height, string title, string description, bool holdsLinks = false)
    {
        _id = id;
        Raw($"""<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 {N(width)} {N(height)}" role="{(holdsLinks ? "group" : "img")}" aria-labelledby="{id}-title {id}-desc" font-family="Atkinson Hyperlegible, system-ui, sans-serif" class="drawing"><title id="{id}-title">{Escape(title)}</title><desc id="{id}-desc">{Escape(description)}</desc>""");
    }

    /// <summary>A number as drawn: at most two decimals, a point, never "-0".</summary>
    public static string N(double value)
    {
        var rounded = Math.Round(value, 2, MidpointRounding.AwayFromZero);
        return (rounded == 0 ? 0 : rounded).ToString("0.##", CultureInfo.InvariantCulture);
    }

    /// <summary>Text made safe for a place between tags or in an attribute.</summary>
    public static string Escape(string text)
    {
        var safe = new StringBuilder(text.Length);
        foreach (var c in text)
        {
            _ = c switch
            {
                '<' => safe.Append("&lt;"),
                '>' => safe.Append("&gt;"),
                '&' => safe.Append("&amp;"),
                '"' => safe.Append("&quot;"),
                '\'' => safe.Append("&#39;"),
                < ' ' and not ('\t' or '\n') => safe.Append(' '),
                _ => safe.Append(c),
            };
        }

        return safe.ToString();
    }

    public string Id => _id;

    public Svg Raw(string svg)
    {
        _text.Append(svg);
        return this;
    }

    public Svg Line(double x1, double y1, double x2, double y2, string stroke = Ink, double width = 1, string? dash = null) =>
        Raw($"""<line x1="{N(x1)}" y1="{N(y1)}" x2="{N(x2)}" y2="{N(y2)}" stroke="{stroke}" stroke-width="{N(width)}"{Dash(dash)}/>""");

    public Svg Circle(double x, double y, double radius, string fill = "none", string stroke = Ink, double width = 1, string? dash = null) =>
        Raw($"""<circle cx="{N(x)}" cy="{N(y)}" r="{N(radius)}" fill="{fill}" stroke="{stroke}" stroke-width="{N(width)}"{Dash(dash)}/>""");

    public Svg Box(double x, double y, double width, double height, string fill = "none", string stroke = Ink, double line = 1, double corner = 0, string? dash = null) =>
        Raw($"""<rect x="{N(x)}" y="{N(y)}" width="{N(width)}" height="{N(height)}"{(corner > 0 ? $" rx=\"{N(corner)}\"" : "")} fill="{fill}" stroke="{stroke}" stroke-width="{N(line)}"{Dash(dash)}/>""");

    public Svg Path(string d, string fill = "none", string stroke = Ink, double width = 1, string? dash = null) =>
        Raw($"""<path d="{d}" fill="{fill}" stroke="{stroke}" stroke-width="{N(width)}" stroke-linejoin="round"{Dash(dash)}/>""");

    /// <summary>Words. The anchor is <c>start</c>, <c>middle</c> or <c>end</c>.</summary>
    public Svg Words(double x, double y, string words, double size = 14, string anchor = "start", string fill = Ink, bool bold = false) =>
        Raw($"""<text x="{N(x)}" y="{N(y)}" font-size="{N(size)}"{(anchor == "start" ? "" : $" text-anchor=\"{anchor}\"")} fill="{fill}"{(bold ? " font-weight=\"700\"" : "")}>{Escape(words)}</text>""");

    /// <summary>A dimension line from left to right with its words in a gap above it.</summary>
    public Svg Dimension(double x1, double x2, double y, string words)
    {
        Line(x1, y, x2, y, Soft, 0.75);
        Path($"M{N(x1)} {N(y)}l7 -2.5v5z", Soft, "none");
        Path($"M{N(x2)} {N(y)}l-7 -2.5v5z", Soft, "none");
        return Words((x1 + x2) / 2, y - 5, words, 13, "middle", Soft);
    }

    /// <summary>The whole drawing.</summary>
    public string End() => _text.Append("</svg>").ToString();

    private static string Dash(string? dash) => dash is null ? "" : $" stroke-dasharray=\"{dash}\"";
}
