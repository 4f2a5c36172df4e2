using System.Net;
using System.Text;

namespace Trundle.Words;

/// <summary>The texts within a piece of markup: what stands between the tags, and in the attributes that are read out or shown.</summary>
public static class Markup
{
    /// <summary>The attributes that hold a text for people.</summary>
    public static IReadOnlySet<string> Spoken { get; } = new HashSet<string>(["aria-label", "aria-description", "aria-valuetext", "aria-roledescription", "alt", "title", "placeholder", "label", "data-label", "data-live", "data-away"], StringComparer.Ordinal);

    /// <summary>The elements whose content is typed by people or read by machines.</summary>
    public static IReadOnlySet<string> Silent { get; } = new HashSet<string>(["script", "style", "textarea"], StringComparer.Ordinal);

    /// <summary>The markup with each of its texts changed; the language that it names is changed as well.</summary>
    public static string Change(string markup, Func<string, string> text, string locale)
    {
        ArgumentNullException.ThrowIfNull(markup);
        ArgumentNullException.ThrowIfNull(text);
        var changed = new StringBuilder(markup.Length + 32);
        string? silent = null;
        for (var at = 0; at < markup.Length;)
        {
            if (markup[at] != '<')
            {
                var end = markup.IndexOf('<', at) is >= 0 and var tag ? tag : markup.Length;
                changed.Append(silent is null ? Encoded(markup[at..end], text, false) : markup[at..end]);
                at = end;
                continue;
            }

            var close = TagEnd(markup, at);
            var whole = markup[at..close];
            at = close;
            var name = NameOf(whole);
            if (silent is not null)
            {
                silent = whole.StartsWith("</", StringComparison.Ordinal) && name == silent ? null : silent;
                changed.Append(whole);
                continue;
            }

            if (whole[^2] != '/' && name.Length > 0 && whole[1] != '/' && (Silent.Contains(name) || whole.Contains("translate=\"no\"", StringComparison.Ordinal)))
            {
                silent = name;
            }

            changed.Append(whole.Contains('=', StringComparison.Ordinal) ? Attributes(whole, text, locale) : whole);
        }

        return changed.ToString();
    }

    private static string Attributes(string tag, Func<string, string> text, string locale)
    {
        var changed = new StringBuilder(tag.Length + 16);
        var at = 0;
        while (tag.IndexOf("=\"", at, StringComparison.Ordinal) is >= 0 and var equals && tag.IndexOf('"', equals + 2) is >= 0 and var end)
        {
            var from = equals;
            while (from > 0 && (char.IsLetterOrDigit(tag[from - 1]) || tag[from - 1] is '-' or ':'))
            {
                from--;
            }

            var name = tag[from..equals];
            var value = tag[(equals + 2)..end];
            changed.Append(tag, at, equals + 2 - at)
                .Append(Spoken.Contains(name) ? Encoded(value, text, true) : name == "lang" && value == Texts.Source ? locale : value)
                .Append('"');
            at = end + 1;
        }

        return changed.Append(tag, at, tag.Length - at).ToString();
    }

    private static string Encoded(string raw, Func<string, string> text, bool attribute)
    {
        var plain = raw.Contains('&', StringComparison.Ordinal) ? WebUtility.HtmlDecode(raw) : raw;
        var said = text(plain);
        return ReferenceEquals(said, plain) || said == plain ? raw
            : (attribute ? said.Replace("&", "&amp;", StringComparison.Ordinal).Replace("\"", "&quot;", StringComparison.Ordinal) : said.Replace("&", "&amp;", StringComparison.Ordinal))
                .Replace("<", "&lt;", StringComparison.Ordinal);
    }

    /// <summary>Behind the tag: a mark of its end within quotes does not count.</summary>
    private static int TagEnd(string markup, int at)
    {
        var quoted = false;
        for (var i = at; i < markup.Length; i++)
        {
            quoted ^= markup[i] == '"';
            if (markup[i] == '>' && !quoted)
            {
                return i + 1;
            }
        }

        return markup.Length;
    }

    private static string NameOf(string tag)
    {
        var from = tag.StartsWith("</", StringComparison.Ordinal) ? 2 : 1;
        var end = from;
        while (end < tag.Length && (char.IsLetterOrDigit(tag[end]) || tag[end] == '-'))
        {
            end++;
        }

        return tag[from..end];
    }
}
