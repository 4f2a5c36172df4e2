namespace Trundle.Words;

/// <summary>The forms of the program, laid so that a sentence finds its own among thousands by its first or its last letters.</summary>
internal sealed class FormIndex
{
    private const int Letters = 3;

    /// <summary>A form with fewer letters fits nearly anything and says nothing.</summary>
    private const int LeastWeight = 4;

    private readonly HashSet<string> _whole = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<Form>> _byHead = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<Form>> _byTail = new(StringComparer.Ordinal);
    private readonly List<Form> _others = [];

    public FormIndex(IEnumerable<string> forms)
    {
        foreach (var form in forms.Select(Form.Read))
        {
            if (form.Holes == 0)
            {
                _whole.Add(form.Head);
            }
            else if (form.Weight < LeastWeight)
            {
                continue;
            }
            else if (form.Head.Length >= Letters)
            {
                Under(_byHead, form.Head[..Letters]).Add(form);
            }
            else if (form.Tail.Length >= Letters)
            {
                Under(_byTail, form.Tail[^Letters..]).Add(form);
            }
            else
            {
                _others.Add(form);
            }
        }
    }

    /// <summary>True where a text is a form without holes.</summary>
    public bool Has(string text) => _whole.Contains(text);

    /// <summary>The form that says most of a sentence, and what stands in its holes; null where none fits.</summary>
    public (Form Form, string[] Holes)? Best(string sentence)
    {
        (Form Form, string[] Holes)? best = null;
        if (sentence.Length >= Letters)
        {
            Try(_byHead.GetValueOrDefault(sentence[..Letters]));
            Try(_byTail.GetValueOrDefault(sentence[^Letters..]));
        }

        Try(_others);
        return best;

        void Try(List<Form>? forms)
        {
            foreach (var form in forms ?? [])
            {
                if ((best is null || form.Weight > best.Value.Form.Weight) && form.Match(sentence) is { } holes)
                {
                    best = (form, holes);
                }
            }
        }
    }

    private static List<Form> Under(Dictionary<string, List<Form>> index, string key)
    {
        if (!index.TryGetValue(key, out var list))
        {
            index[key] = list = [];
        }

        return list;
    }
}
