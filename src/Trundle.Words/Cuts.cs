namespace Trundle.Words;

/// <summary>Where a text that was put together may be parted.</summary>
internal static class Cuts
{
    private static readonly string[] Joining = [" and ", " or "];

    /// <summary>The places between sentences.</summary>
    public static IReadOnlyList<(int At, int End)> Sentences(string text)
    {
        var cuts = new List<(int At, int End)>();
        for (var i = 1; i + 2 < text.Length; i++)
        {
            if (text[i] is '.' or '?' or '!' && text[i + 1] == ' ' && !char.IsAsciiDigit(text[i + 2]) && !char.IsLower(text[i + 2]))
            {
                cuts.Add((i + 1, i + 2));
            }
        }

        return cuts;
    }

    /// <summary>The places, each from where the part before it ends to where the next begins. A point belongs to the sentence that it ends, and a number is parted from its word.</summary>
    public static IReadOnlyList<(int At, int End)> Of(string text)
    {
        var cuts = new List<(int At, int End)>();
        for (var i = 0; i < text.Length; i++)
        {
            var next = i + 1 < text.Length ? text[i + 1] : ' ';
            var cut = text[i] switch
            {
                '.' or '?' or '!' when next == ' ' => i + 1 < text.Length ? (At: i + 1, End: i + 2) : (At: i, End: i + 1),
                ';' or ':' or ',' when next == ' ' => (At: i, End: Math.Min(i + 2, text.Length)),
                '·' or '–' or '→' or '|' or '/' or '…' => (At: i > 0 && text[i - 1] == ' ' ? i - 1 : i, End: next == ' ' ? Math.Min(i + 2, text.Length) : i + 1),
                '(' or '[' or '“' or '"' => (At: i > 0 && text[i - 1] == ' ' ? i - 1 : i, End: i + 1),
                ')' or ']' or '”' => (At: i, End: i + 1),
                ' ' when i > 0 && i + 1 < text.Length && char.IsAsciiDigit(next) != char.IsAsciiDigit(text[i - 1]) => (At: i, End: i + 1),
                ' ' when Joining.FirstOrDefault(j => string.CompareOrdinal(text, i, j, 0, j.Length) == 0) is { } word => (At: i, End: i + word.Length),
                _ => (At: -1, End: -1),
            };
            if (cut.At >= 0 && (cuts.Count == 0 || cut.At >= cuts[^1].End))
            {
                cuts.Add(cut);
            }
        }

        return cuts;
    }
}
