using System.Globalization;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>
/// Reads one object of a file, key by key, and gathers every problem with its place. A key that no reader asked for is a problem too,
/// and the nearest known key is suggested: so reading ends with <see cref="Done"/>.
/// </summary>
public sealed class FileObject
{
    private readonly FileNode _node;
    private readonly List<Problem> _problems;
    private readonly HashSet<string> _known = new(StringComparer.Ordinal);

    /// <summary>Begins to read an object; a node that is none is a problem, and then reads as empty.</summary>
    public FileObject(FileNode node, List<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(node);
        _node = node;
        _problems = problems;
        if (node.Kind != NodeKind.Object)
        {
            problems.Add(new Problem(node.Path, "not-an-object", $"Here should stand an object in braces, not {Shown(node)}."));
        }
    }

    /// <summary>The object's own path.</summary>
    public string Path => _node.Path;

    /// <summary>The problems gathered so far, by this reader and all that share its list.</summary>
    public List<Problem> Problems => _problems;

    /// <summary>The path of a key here.</summary>
    public string PathOf(string key) => Path.Length == 0 ? key : $"{Path}.{key}";

    /// <summary>Adds a problem at a key.</summary>
    public void Wrong(string key, string code, string message) => _problems.Add(new Problem(PathOf(key), code, message));

    /// <summary>True where the key stands and is neither null nor a blank text, which counts as absent.</summary>
    public bool Has(string key) => Node(key) is { } node && !(node.Kind == NodeKind.Text && string.IsNullOrWhiteSpace(node.Text));

    /// <summary>The node of a key, or null where it is absent or null.</summary>
    public FileNode? Node(string key)
    {
        _known.Add(key);
        var node = _node.Member(key);
        return node is null || node.Kind == NodeKind.Null ? null : node;
    }

    /// <summary>A problem where a required key is absent, null or a blank text.</summary>
    public bool Require(string key, string what)
    {
        if (Has(key))
        {
            return true;
        }

        Wrong(key, "missing", $"'{key}' is missing: {what}.");
        return false;
    }

    /// <summary>A text, or null. Blank texts count as absent.</summary>
    public string? Text(string key)
    {
        var node = Node(key);
        if (node is null)
        {
            return null;
        }

        if (node.Kind is NodeKind.Text or NodeKind.Number)
        {
            return string.IsNullOrWhiteSpace(node.Text) ? null : node.Text.Trim();
        }

        Wrong(key, "not-a-text", $"Here should stand a text in quotes, not {Shown(node)}.");
        return null;
    }

    /// <summary>A value by a strict reader, or null.</summary>
    public T? Value<T>(string key, Func<string, Reading<T>> reader) where T : struct
    {
        ArgumentNullException.ThrowIfNull(reader);
        return Text(key) is { } text && Placed(key, reader(text)) is { IsRead: true } read ? read.Value : null;
    }

    /// <summary>An object by a strict reader, or null.</summary>
    public T? Reference<T>(string key, Func<string, Reading<T>> reader) where T : class
    {
        ArgumentNullException.ThrowIfNull(reader);
        return Text(key) is { } text && Placed(key, reader(text)) is { IsRead: true } read ? read.Value : null;
    }

    /// <summary>A quantity, or null. A bare number is taken in the field's documented unit.</summary>
    /// <param name="key">The key.</param>
    /// <param name="bareUnit">The unit of a bare number, or null where a unit must be given.</param>
    /// <param name="least">Problem below this.</param>
    /// <param name="most">Problem above this.</param>
    public T? Quantity<T>(string key, string? bareUnit = null, T? least = null, T? most = null) where T : struct, IQuantity<T>
    {
        var value = Value(key, text => Measures.Quantity.Read<T>(NumberWithExponent(text), bareUnit));
        if (value is { } v && Outside(v, Text(key)!, bareUnit, least, most) is { } message)
        {
            Wrong(key, "out-of-range", message);
            return null;
        }

        return value;
    }

    /// <summary>A list of quantities; empty where absent. A problem in one item names its index.</summary>
    public IReadOnlyList<T> Quantities<T>(string key, string? bareUnit = null, T? least = null, T? most = null) where T : struct, IQuantity<T>
    {
        var list = new List<T>();
        foreach (var item in Items(key))
        {
            if (item.Kind is not (NodeKind.Text or NodeKind.Number))
            {
                _problems.Add(new Problem(item.Path, "not-a-text", $"Here should stand a quantity in quotes, not {Shown(item)}."));
                continue;
            }

            var read = Measures.Quantity.Read<T>(NumberWithExponent(item.Text), bareUnit);
            if (!read.IsRead)
            {
                _problems.Add(read.Problem!.At(item.Path));
            }
            else if (Outside(read.Value, item.Text, bareUnit, least, most) is { } message)
            {
                _problems.Add(new Problem(item.Path, "out-of-range", message));
            }
            else
            {
                list.Add(read.Value);
            }
        }

        return list;
    }

    /// <summary>A plain number without a unit, or null.</summary>
    public double? Number(string key, double? least = null, double? most = null) => Number(key, "", least, most);

    /// <summary>A percentage with its sign or without, or null.</summary>
    public double? Percent(string key, double? least = null, double? most = null) => Number(key, "%", least, most);

    private double? Number(string key, string sign, double? least, double? most)
    {
        var number = Value(key, text => NumberText.Read(NumberWithExponent(sign.Length > 0 && text.TrimEnd().EndsWith(sign, StringComparison.Ordinal) ? text.TrimEnd()[..^sign.Length].TrimEnd() : text)));
        if (number is { } n && ((least is { } l && n < l) || (most is { } m && n > m)))
        {
            Wrong(key, "out-of-range", string.Create(CultureInfo.InvariantCulture, $"{n} is outside what can stand here: write a number {(least, most) switch
            {
                ({ } from, { } to) => string.Create(CultureInfo.InvariantCulture, $"from {from} to {to}"),
                ({ } from, null) => string.Create(CultureInfo.InvariantCulture, $"of {from} or more"),
                (null, { } to) => string.Create(CultureInfo.InvariantCulture, $"of {to} or less"),
                (null, null) => "",
            }}."));
            return null;
        }

        return number;
    }

    /// <summary>A whole number, or null.</summary>
    public int? Whole(string key, int least, int most)
    {
        var number = Number(key);
        if (number is not { } n)
        {
            return null;
        }

        if (n != Math.Floor(n) || n < least || n > most)
        {
            Wrong(key, "not-a-whole-number", string.Create(CultureInfo.InvariantCulture, $"{n} should be a whole number from {least} to {most}."));
            return null;
        }

        return (int)n;
    }

    /// <summary>True, false, or null where absent.</summary>
    public bool? Flag(string key)
    {
        var node = Node(key);
        if (node is null)
        {
            return null;
        }

        if (node.Kind == NodeKind.Flag)
        {
            return node.Text == "true";
        }

        Wrong(key, "not-a-flag", $"Here should stand true or false, not {Shown(node)}.");
        return null;
    }

    /// <summary>One of a fixed set of words, or null.</summary>
    public T? Word<T>(string key, params (string Word, T Value)[] words) where T : struct
    {
        ArgumentNullException.ThrowIfNull(words);
        if (Text(key) is not { } text)
        {
            return null;
        }

        foreach (var (word, value) in words)
        {
            if (string.Equals(word, text, StringComparison.OrdinalIgnoreCase))
            {
                return value;
            }
        }

        Wrong(key, "word-unknown", $"'{NumberText.Shown(text)}' is not a word here; write {ChoiceText.Of(words.Select(w => w.Word))}.");
        return null;
    }

    /// <summary>A date as 2026-03-14, or null.</summary>
    public DateOnly? Date(string key) =>
        Value(key, text => DateOnly.TryParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date)
            ? Reading<DateOnly>.Of(date)
            : Reading<DateOnly>.Failed("date-unreadable", $"'{NumberText.Shown(text)}' is not a date; write year-month-day, for example 2026-03-14."));

    /// <summary>An object under a key, or null.</summary>
    public FileObject? Object(string key) => Node(key) is { } node ? new FileObject(node, _problems) : null;

    /// <summary>The objects of a list under a key; empty where absent.</summary>
    public IReadOnlyList<FileObject> Objects(string key) => [.. Items(key).Select(item => new FileObject(item, _problems))];

    /// <summary>The texts of a list under a key; empty where absent.</summary>
    public IReadOnlyList<string> Texts(string key)
    {
        var texts = new List<string>();
        foreach (var item in Items(key))
        {
            if (item.Kind is NodeKind.Text or NodeKind.Number)
            {
                texts.Add(item.Text.Trim());
            }
            else
            {
                _problems.Add(new Problem(item.Path, "not-a-text", $"Here should stand a text in quotes, not {Shown(item)}."));
            }
        }

        return texts;
    }

    /// <summary>The nodes of a list under a key; empty where absent; a problem where it is no list.</summary>
    public IReadOnlyList<FileNode> Items(string key)
    {
        var node = Node(key);
        if (node is null)
        {
            return [];
        }

        if (node.Kind == NodeKind.Array)
        {
            return node.Items;
        }

        Wrong(key, "not-a-list", $"Here should stand a list in square brackets, not {Shown(node)}.");
        return [];
    }

    /// <summary>Names keys that belong here but are read elsewhere.</summary>
    public void Knows(params string[] keys) => _known.UnionWith(keys);

    /// <summary>Ends the reading: every key that nobody asked for is a problem.</summary>
    public void Done()
    {
        foreach (var (key, node) in _node.Members)
        {
            if (!_known.Contains(key))
            {
                var nearest = Nearest(key, _known);
                _problems.Add(new Problem(node.Path, "key-unknown",
                    $"'{NumberText.Shown(key)}' is not a key here{(nearest is null ? "" : $"; did you mean '{nearest}'?")}{(nearest is null && _known.Count > 0 ? $"; known here: {ChoiceText.Of(_known.Order(StringComparer.Ordinal).Take(30), "and")}." : "")}"));
            }
        }
    }

    private Reading<T> Placed<T>(string key, Reading<T> read)
    {
        if (!read.IsRead)
        {
            _problems.Add(read.Problem!.At(PathOf(key)));
        }

        return read;
    }

    /// <summary>What is wrong with a value beside its limits, in the unit that was typed.</summary>
    private static string? Outside<T>(T value, string typed, string? bareUnit, T? least, T? most) where T : struct, IQuantity<T>
    {
        var below = least is { } l && value.Si < l.Si;
        if (!below && !(most is { } m && value.Si > m.Si))
        {
            return null;
        }

        var unit = Measures.Quantity.UnitIn<T>(typed, bareUnit);
        var limit = (below ? least : most)!.Value.In(unit).ToString("0.####", CultureInfo.InvariantCulture);
        return $"'{NumberText.Shown(typed)}' is {(below ? "less" : "more")} than can be: at {(below ? "least" : "most")} {limit} {unit} is expected.";
    }

    /// <summary>A JSON number may carry an exponent, which a person never types.</summary>
    private static string NumberWithExponent(string text) =>
        text.Length < 40 && text.IndexOfAny(['e', 'E']) > 0 && double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out var number) && Math.Abs(number) <= NumberText.Greatest
            ? ((decimal)number).ToString(CultureInfo.InvariantCulture)
            : text;

    private static string Shown(FileNode node) => node.Kind switch
    {
        NodeKind.Object => "an object",
        NodeKind.Array => "a list",
        NodeKind.Text => $"the text '{NumberText.Shown(node.Text)}'",
        NodeKind.Number => $"the number {NumberText.Shown(node.Text)}",
        NodeKind.Flag => node.Text,
        NodeKind.Null => "null",
    };

    /// <summary>The known word that is most like one that is not known, or null where none is.</summary>
    internal static string? Nearest(string key, IEnumerable<string> known)
    {
        var best = known.Select(k => (k, d: Distance(k, key))).OrderBy(c => c.d).ThenBy(c => c.k, StringComparer.Ordinal).FirstOrDefault();
        return best.k is not null && best.d <= Math.Max(2, key.Length / 3) ? best.k : null;
    }

    /// <summary>Edit distance, case aside, of texts cut to 40 characters.</summary>
    private static int Distance(string a, string b)
    {
        a = a.Length > 40 ? a[..40] : a;
        b = b.Length > 40 ? b[..40] : b;
        var row = Enumerable.Range(0, b.Length + 1).ToArray();
        for (var i = 1; i <= a.Length; i++)
        {
            var diagonal = row[0];
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var same = char.ToUpperInvariant(a[i - 1]) == char.ToUpperInvariant(b[j - 1]);
                (diagonal, row[j]) = (row[j], Math.Min(Math.Min(row[j], row[j - 1]) + 1, diagonal + (same ? 0 : 1)));
            }
        }

        return row[b.Length];
    }
}
