using System.Collections.Concurrent;
using System.Text;

namespace Trundle.Words;

/// <summary>
/// The texts of one locale. The program says each sentence once, in en-GB; where somebody reads, the sentence is found again in the list of forms and said
/// in the reader's language, and so is what stands in its holes. What is in no form, such as a name, a number or a note that somebody typed, stays as it is.
/// </summary>
public sealed class Texts
{
    /// <summary>The locale in which the program is written.</summary>
    public const string Source = "en-GB";

    private const int MostKept = 20_000;
    private const int Deepest = 6;

    private readonly FormIndex _forms;
    private readonly Func<string, string> _say;
    private readonly Func<string, string?> _date;
    private readonly Func<string, bool> _mayDiffer;
    private readonly HashSet<string> _typed = [];
    private readonly ConcurrentDictionary<string, string> _kept = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, Form> _said = new(StringComparer.Ordinal);

    /// <summary>Makes the texts of a locale.</summary>
    /// <param name="locale">A language tag, such as <c>en-US</c>.</param>
    /// <param name="forms">Every form that the program says, in en-GB.</param>
    /// <param name="say">The same form in this locale; the form itself where it does not differ.</param>
    /// <param name="mayDiffer">False for a text that is surely the same in this locale; null where none is known to be.</param>
    /// <param name="date">A date that the program wrote, as this locale writes it; null where the text is no date.</param>
    public Texts(string locale, IEnumerable<string> forms, Func<string, string> say, Func<string, string?>? date = null, Func<string, bool>? mayDiffer = null)
    {
        Locale = locale;
        _forms = new FormIndex(forms);
        _say = say;
        _date = date ?? (_ => null);
        _mayDiffer = mayDiffer ?? (_ => true);
    }

    private Texts(Texts from, IEnumerable<string> typed)
    {
        (Locale, _forms, _say, _date, _mayDiffer) = (from.Locale, from._forms, from._say, from._date, from._mayDiffer);
        _typed = typed.Select(Blanks.Single).Where(t => t.Length > 0).ToHashSet(StringComparer.Ordinal);
    }

    /// <summary>The same texts, which leave alone what is known to be typed by people even where the program has a text of the same words.</summary>
    public Texts Keeping(IEnumerable<string> typed)
    {
        ArgumentNullException.ThrowIfNull(typed);
        return IsSource ? this : new Texts(this, typed);
    }

    /// <summary>The texts as the program is written.</summary>
    public static Texts British { get; } = new(Source, [], form => form);

    /// <summary>The language tag.</summary>
    public string Locale { get; }

    /// <summary>True where every text stays as the program says it, and nothing is looked up.</summary>
    public bool IsSource => ReferenceEquals(this, British);

    /// <summary>A text of the program in this locale.</summary>
    public string Say(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (IsSource || !_mayDiffer(text))
        {
            return text;
        }

        if (_kept.TryGetValue(text, out var kept))
        {
            return kept;
        }

        if (_kept.Count >= MostKept)
        {
            _kept.Clear();
        }

        var core = Blanks.Single(text);
        var said = Find(core, 0) is { } found && found.Text != core ? Blanks.Around(text, found.Text) : text;
        _kept[text] = said;
        return said;
    }

    /// <summary>The text in this locale, and how many of its letters were in forms; null where none was.</summary>
    private Found? Find(string text, int depth)
    {
        if (text.Length == 0 || depth > Deepest || !_mayDiffer(text))
        {
            return null;
        }

        if (_typed.Contains(text))
        {
            return new Found(text, text.Length, text.Length);
        }

        if (Whole(text, depth) is not { } whole)
        {
            return Parted(text, depth);
        }

        // A form of few letters, such as "{0} and then {1}", may say less of a long text than its parts do.
        var letters = text.Count(char.IsLetter);
        return (whole.Known * 2 < letters || whole.Own * 4 < letters) && Parted(text, depth) is { } parted && parted.Known > whole.Known ? parted : whole;
    }

    /// <summary>A text that is a whole form, with a capital or without, or a date.</summary>
    private Found? Whole(string text, int depth)
    {
        var turned = Turned(text);
        if (_forms.Has(text))
        {
            return new Found(Said(text).Fill([]), text.Length, text.Length);
        }

        if (turned is not null && _forms.Has(turned))
        {
            return new Found(Cased(Said(turned).Fill([]), text), text.Length, text.Length);
        }

        // A sentence that another goes on from lost its point.
        if (text[^1] != '.' && (_forms.Has(text + '.') ? text : turned is not null && _forms.Has(turned + '.') ? turned : null) is { } open)
        {
            var whole = Said(open + '.').Fill([]);
            return new Found(Cased(whole.EndsWith('.') ? whole[..^1] : whole, text), text.Length, text.Length);
        }

        // And one that stands alone got one.
        if (text[^1] == '.' && text.Length > 1 && (_forms.Has(text[..^1]) ? text[..^1] : turned is not null && _forms.Has(turned[..^1]) ? turned[..^1] : null) is { } closed)
        {
            return new Found(Cased(Said(closed).Fill([]), text) + '.', text.Length, text.Length);
        }

        if (_date(text) is { } date)
        {
            return new Found(date, text.Length, text.Length);
        }

        if (_forms.Best(text) is { } best)
        {
            return Filled(best.Form, best.Holes, depth);
        }

        return turned is not null && _forms.Best(turned) is { } other && Filled(other.Form, other.Holes, depth) is var filled ? filled with { Text = Cased(filled.Text, text) } : null;
    }

    /// <summary>A text put together from several: of parts that stand side by side as many as make one form are taken together, and a part that is in no form stays.</summary>
    private Found? Parted(string text, int depth)
    {
        var cuts = Cuts.Sentences(text);
        var fine = cuts.Count == 0;
        if (fine)
        {
            cuts = Cuts.Of(text);
        }

        if (cuts.Count == 0)
        {
            return Pair(text, depth);
        }

        var said = new StringBuilder();
        var known = 0;
        for (var from = 0; from <= cuts.Count; from++)
        {
            var begin = from == 0 ? 0 : cuts[from - 1].End;
            var (found, last) = Longest(text, cuts, from, begin, depth);
            if (found is null && !fine)
            {
                found = Parted(text[begin..(from < cuts.Count ? cuts[from].At : text.Length)], depth + 1);
            }

            known += found?.Known ?? 0;
            said.Append(found?.Text ?? text[begin..(from < cuts.Count ? cuts[from].At : text.Length)]);
            from = last;
            if (from < cuts.Count)
            {
                said.Append(Between(text[cuts[from].At..cuts[from].End]));
            }
        }

        return known > 0 ? new Found(said.ToString(), known, 0) : null;
    }

    /// <summary>What stands between two parts: a word such as "and" is said in this locale too.</summary>
    private string Between(string mark) => mark.Length > 2 && _forms.Has(mark.Trim()) ? Blanks.Around(mark, Said(mark.Trim()).Fill([])) : mark;

    /// <summary>The most parts from one on that are a form together, and the last of them.</summary>
    private (Found? Said, int Last) Longest(string text, IReadOnlyList<(int At, int End)> cuts, int from, int begin, int depth)
    {
        for (var to = Math.Min(cuts.Count, from + MostTogether); to >= from; to--)
        {
            var end = to < cuts.Count ? cuts[to].At : text.Length;
            if (end <= begin || (begin == 0 && end == text.Length))
            {
                continue;
            }

            var part = text[begin..end];
            if (Whole(part, depth + 1) is { } found && (found.Known * 2 >= part.Count(char.IsLetter) || (to == from && Cuts.Of(part).Count == 0)))
            {
                return (found, to);
            }

            if (to == from && Pair(part, depth) is { } pair)
            {
                return (pair, to);
            }
        }

        return (null, from);
    }

    /// <summary>Two texts of several words one after the other: a name and what was found of it. Single words are not put together: people type those.</summary>
    private Found? Pair(string text, int depth)
    {
        for (var at = text.IndexOf(' ', StringComparison.Ordinal); at > 0; at = text.IndexOf(' ', at + 1))
        {
            var (first, last) = (text[..at], text[(at + 1)..]);
            if (first.Contains(' ', StringComparison.Ordinal) && last.Contains(' ', StringComparison.Ordinal) && depth < Deepest
                && Whole(first, Deepest) is { } one && Whole(last, Deepest) is { } two && one.Known >= first.Length && two.Known >= last.Length)
            {
                return new Found($"{one.Text} {two.Text}", one.Known + two.Known, 0);
            }
        }

        return null;
    }

    private const int MostTogether = 12;

    private Found Filled(Form form, string[] holes, int depth)
    {
        var known = form.Weight;
        var said = new string[holes.Length];
        for (var i = 0; i < holes.Length; i++)
        {
            said[i] = holes[i];
            if (holes[i].Length > 0 && Find(Blanks.Single(holes[i]), depth + 1) is { } found)
            {
                said[i] = Blanks.Around(holes[i], found.Text);
                known += found.Known;
            }
        }

        return new Found(Said(form.Text).Fill(said), known, form.Weight);
    }

    /// <summary>A text that was found.</summary>
    /// <param name="Text">In this locale.</param>
    /// <param name="Known">How many of its letters stood in forms.</param>
    /// <param name="Own">How many of them in the outermost.</param>
    private readonly record struct Found(string Text, int Known, int Own);

    private Form Said(string form) => _said.GetOrAdd(form, f => Form.Read(_say(f)));

    private static string? Turned(string text) => char.IsLetter(text[0]) ? string.Concat((char.IsUpper(text[0]) ? char.ToLowerInvariant(text[0]) : char.ToUpperInvariant(text[0])).ToString(), text.AsSpan(1)) : null;

    /// <summary>The text with a capital or a small letter in front, as another text has it.</summary>
    private static string Cased(string text, string as_)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsLetter(text[i]))
            {
                var c = char.IsUpper(as_[0]) ? char.ToUpperInvariant(text[i]) : char.ToLowerInvariant(text[i]);
                return string.Concat(text.AsSpan(0, i), c.ToString(), text.AsSpan(i + 1));
            }
        }

        return text;
    }
}
