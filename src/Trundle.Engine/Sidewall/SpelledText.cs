using System.Text;

namespace Trundle.Engine.Sidewall;

/// <summary>
/// What was typed, brought to one spelling for reading: upper case, single blanks, '-' for every dash, 'X' for '×', a point for a decimal comma.
/// Each character remembers where it stood, so that a problem can name the place in what the person typed.
/// </summary>
internal sealed class SpelledText
{
    /// <summary>The longest marking that is read; a sidewall line has some forty characters.</summary>
    public const int Longest = 120;

    private readonly int[] _places;
    private readonly int _end;

    private SpelledText(string text, int[] places, int end) => (Text, _places, _end) = (text, places, end);

    /// <summary>The text in one spelling.</summary>
    public string Text { get; }

    public static SpelledText Of(string typed)
    {
        var text = new StringBuilder(typed.Length);
        var places = new List<int>(typed.Length);
        var blankAt = -1;
        var end = 0;
        for (var i = 0; i < typed.Length; i++)
        {
            var c = typed[i];
            if (char.IsWhiteSpace(c))
            {
                blankAt = text.Length == 0 ? -1 : blankAt < 0 ? i : blankAt;
                continue;
            }

            if (blankAt >= 0)
            {
                text.Append(' ');
                places.Add(blankAt);
                blankAt = -1;
            }

            text.Append(c switch
            {
                '×' => 'X',
                '‐' or '‑' or '‒' or '–' or '—' or '−' => '-',
                ',' when i > 0 && i + 1 < typed.Length && char.IsAsciiDigit(typed[i - 1]) && char.IsAsciiDigit(typed[i + 1]) => '.',
                _ => char.ToUpperInvariant(c),
            });
            places.Add(i);
            end = i + 1;
        }

        return new SpelledText(text.ToString(), [.. places], end);
    }

    /// <summary>The place of a character in what was typed, counted from 1; one past the last for the end.</summary>
    public int PlaceOf(int index) => index < _places.Length ? _places[index] + 1 : _end + 1;
}
