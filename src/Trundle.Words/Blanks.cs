namespace Trundle.Words;

/// <summary>Blanks in and around a text: a page's lines are broken where its writer broke them, and no form depends on that.</summary>
public static class Blanks
{
    /// <summary>Without blanks around, and with one blank where there were several.</summary>
    public static string Single(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var core = text.Trim(Blank);
        return core.AsSpan().ContainsAny("\r\n\t") || core.Contains("  ", StringComparison.Ordinal) ? string.Join(' ', core.Split(Blank, StringSplitOptions.RemoveEmptyEntries)) : core;
    }

    /// <summary>A text in the blanks that stand around another.</summary>
    internal static string Around(string from, string core)
    {
        var before = from.Length - from.TrimStart(Blank).Length;
        var behind = from.Length - from.TrimEnd(Blank).Length;
        return string.Concat(from.AsSpan(0, before), core, from.AsSpan(from.Length - behind));
    }

    // A narrow or unbreakable blank is part of a text.
    private static readonly char[] Blank = [' ', '\t', '\r', '\n'];
}
