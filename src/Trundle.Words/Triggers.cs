namespace Trundle.Words;

/// <summary>
/// The words that a locale says otherwise. A locale that differs in a few words, as en-US does, leaves a text without any of them alone, and that is known
/// after one look at each word.
/// </summary>
internal sealed class Triggers
{
    private readonly HashSet<string> _words = new(StringComparer.OrdinalIgnoreCase);
    private readonly HashSet<string>.AlternateLookup<ReadOnlySpan<char>> _lookup;

    public Triggers(IEnumerable<KeyValuePair<string, string>> said)
    {
        foreach (var (form, text) in said)
        {
            var own = Words(form);
            var gone = own.Except(Words(text), StringComparer.OrdinalIgnoreCase).ToList();
            // Where only the order differs, every word of the form tells it.
            _words.UnionWith(gone.Count > 0 ? gone : own);
        }

        _lookup = _words.GetAlternateLookup<ReadOnlySpan<char>>();
    }

    /// <summary>True where a text may be said otherwise; one with a figure may hold a date.</summary>
    public bool In(string text)
    {
        var begin = -1;
        for (var i = 0; i <= text.Length; i++)
        {
            var c = i < text.Length ? text[i] : ' ';
            if (char.IsLetter(c))
            {
                begin = begin < 0 ? i : begin;
            }
            else if (begin >= 0)
            {
                if (_lookup.Contains(text.AsSpan(begin, i - begin)) || AmericanDates.IsMonth(text.AsSpan(begin, i - begin)))
                {
                    return true;
                }

                begin = -1;
            }
        }

        return false;
    }

    private static List<string> Words(string text)
    {
        var words = new List<string>();
        for (var i = 0; i < text.Length; i++)
        {
            var from = i;
            while (i < text.Length && char.IsLetter(text[i]))
            {
                i++;
            }

            if (i > from)
            {
                words.Add(text[from..i]);
            }
        }

        return words;
    }
}
