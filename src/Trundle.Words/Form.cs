using System.Globalization;
using System.Text;

namespace Trundle.Words;

/// <summary>
/// A text as it is written once, in en-GB, with numbered holes for what differs each time: <c>Set to {0} before driving.</c> A brace that is meant as
/// such is doubled. The same form in another language may have its holes in another order.
/// </summary>
internal sealed class Form
{
    private readonly string[] _pieces;
    private readonly int[] _holes;

    private Form(string text, string[] pieces, int[] holes)
    {
        Text = text;
        _pieces = pieces;
        _holes = holes;
        Weight = pieces.Sum(p => p.Count(char.IsLetter));
    }

    /// <summary>As in the list.</summary>
    public string Text { get; }

    /// <summary>How many letters stand outside the holes: of two forms that fit, the one with more says more of the sentence.</summary>
    public int Weight { get; }

    /// <summary>How many holes it has.</summary>
    public int Holes => _holes.Length;

    /// <summary>What stands before the first hole.</summary>
    public string Head => _pieces[0];

    /// <summary>What stands behind the last hole.</summary>
    public string Tail => _pieces[^1];

    /// <summary>Reads a form; what stands between braces and is no number is part of the text.</summary>
    public static Form Read(string text)
    {
        var pieces = new List<string>();
        var holes = new List<int>();
        var piece = new StringBuilder();
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (c is '{' or '}' && i + 1 < text.Length && text[i + 1] == c)
            {
                piece.Append(c);
                i++;
            }
            else if (c == '{' && text.IndexOf('}', i) is > 0 and var end && int.TryParse(text.AsSpan(i + 1, end - i - 1), NumberStyles.None, CultureInfo.InvariantCulture, out var hole))
            {
                pieces.Add(piece.ToString());
                piece.Clear();
                holes.Add(hole);
                i = end;
            }
            else
            {
                piece.Append(c);
            }
        }

        pieces.Add(piece.ToString());
        return new Form(text, [.. pieces], [.. holes]);
    }

    /// <summary>What stands in the holes of a sentence of this form, by the holes' numbers; null where it is not of this form.</summary>
    public string[]? Match(string sentence)
    {
        if (_holes.Length == 0)
        {
            return sentence == _pieces[0] ? [] : null;
        }

        if (!sentence.StartsWith(_pieces[0], StringComparison.Ordinal) || !sentence.EndsWith(_pieces[^1], StringComparison.Ordinal) || sentence.Length < _pieces[0].Length + _pieces[^1].Length)
        {
            return null;
        }

        var found = new string[_holes.Max() + 1];
        Array.Fill(found, "");
        var at = _pieces[0].Length;
        var last = sentence.Length - _pieces[^1].Length;
        for (var i = 0; i < _holes.Length; i++)
        {
            var end = i == _holes.Length - 1 ? last : sentence.IndexOf(_pieces[i + 1], at, last - at, StringComparison.Ordinal);
            if (end < 0)
            {
                return null;
            }

            found[_holes[i]] = sentence[at..end];
            at = end + (i == _holes.Length - 1 ? 0 : _pieces[i + 1].Length);
            if (at > last)
            {
                return null;
            }
        }

        return found;
    }

    /// <summary>The sentence with its holes filled.</summary>
    public string Fill(IReadOnlyList<string> holes)
    {
        if (_holes.Length == 0)
        {
            return _pieces[0];
        }

        var text = new StringBuilder(_pieces[0]);
        for (var i = 0; i < _holes.Length; i++)
        {
            text.Append(_holes[i] < holes.Count ? holes[_holes[i]] : "").Append(_pieces[i + 1]);
        }

        return text.ToString();
    }
}
