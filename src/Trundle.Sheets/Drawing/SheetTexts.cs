using System.Runtime.CompilerServices;
using PdfSharp.Drawing;
using Trundle.Words;

namespace Trundle.Sheets.Drawing;

/// <summary>In which texts a page is written: told once, where the page begins, so that every word on it is said in them.</summary>
internal static class SheetTexts
{
    private static readonly ConditionalWeakTable<XGraphics, Texts> Pages = [];

    /// <summary>The page with its texts.</summary>
    public static XGraphics In(this XGraphics page, Texts texts)
    {
        Pages.Add(page, texts);
        return page;
    }

    /// <summary>Words of the program as this page says them.</summary>
    public static string Say(XGraphics page, string words)
    {
        if (!Pages.TryGetValue(page, out var texts) || texts.IsSource)
        {
            return words;
        }

        // On paper a line that was broken by hand is a text of its own.
        return words.Contains('\n', StringComparison.Ordinal) ? string.Join('\n', words.Split('\n').Select(texts.Say)) : texts.Say(words);
    }
}
