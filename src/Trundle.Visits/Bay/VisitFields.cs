using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Trundle.Engine.Vehicles;
using Trundle.Visits.Files;

namespace Trundle.Visits.Bay;

/// <summary>
/// A visit as the newest entry of each field, and the contract's file made of them. The command, the bay and the paper all read that one file,
/// so their numbers cannot differ.
/// </summary>
public sealed class VisitFields
{
    private readonly SortedDictionary<string, Entry> _newest;

    private VisitFields(SortedDictionary<string, Entry> newest) => _newest = newest;

    /// <summary>A visit with nothing entered.</summary>
    public static VisitFields Empty { get; } = new(new SortedDictionary<string, Entry>(FieldOrder.Instance));

    /// <summary>The visit of these entries. Of two for one field the later wins; of two at one moment the greater identifier, so that every device agrees.</summary>
    public static VisitFields Of(IEnumerable<Entry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var newest = new SortedDictionary<string, Entry>(FieldOrder.Instance);
        foreach (var entry in entries)
        {
            if (!newest.TryGetValue(entry.Field, out var other) || entry.At > other.At || (entry.At == other.At && entry.Id.CompareTo(other.Id) > 0))
            {
                newest[entry.Field] = entry;
            }
        }

        return new VisitFields(newest);
    }

    /// <summary>The same visit with more entries.</summary>
    public VisitFields With(IEnumerable<Entry> more) => Of(_newest.Values.Concat(more));

    /// <summary>The newest entry of each field, emptied ones too.</summary>
    public IReadOnlyCollection<Entry> Newest => _newest.Values;

    /// <summary>True where the same stands in every field, by the same hand: the two make one file.</summary>
    public bool SameAs(VisitFields other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return _newest.Count == other._newest.Count
            && _newest.Values.Zip(other._newest.Values).All(p => p.First.Field == p.Second.Field && p.First.Typed == p.Second.Typed && p.First.By == p.Second.By && p.First.Role == p.Second.Role);
    }

    /// <summary>What was typed in a field, or null where nothing stands.</summary>
    public string? this[string field] => _newest.TryGetValue(field, out var entry) && entry.Typed.Length > 0 ? entry.Typed : null;

    /// <summary>The newest entry of a field, or null where nothing stands.</summary>
    public Entry? EntryOf(string field) => _newest.TryGetValue(field, out var entry) && entry.Typed.Length > 0 ? entry : null;

    /// <summary>The fields that stand under a path, in order.</summary>
    public IEnumerable<Entry> Under(string path) =>
        _newest.Values.Where(e => e.Typed.Length > 0 && (e.Field == path || e.Field.StartsWith(path + ".", StringComparison.Ordinal)));

    /// <summary>The contract's file of this visit, with the way back from a place in it to the field on the page.</summary>
    public AssembledFile Assemble()
    {
        var root = new Branch("");
        foreach (var entry in _newest.Values)
        {
            if (entry.Typed.Length > 0)
            {
                root.Put(entry.Field.Split('.'), 0, entry);
            }
        }

        var fields = new Dictionary<string, string>(StringComparer.Ordinal);
        var json = root.ToJson("", fields);
        return new AssembledFile((JsonObject)json, fields);
    }

    /// <summary>A node of the tree of fields. Names that are all digits make a list; the children of <c>fitted</c> make a list with positions.</summary>
    private sealed class Branch(string path)
    {
        private readonly List<(string Name, Branch Child)> _children = [];
        private Entry? _leaf;

        public void Put(string[] names, int depth, Entry entry)
        {
            if (depth == names.Length)
            {
                _leaf = entry;
                return;
            }

            var child = _children.FirstOrDefault(c => c.Name == names[depth]).Child;
            if (child is null)
            {
                child = new Branch(path.Length == 0 ? names[depth] : $"{path}.{names[depth]}");
                _children.Add((names[depth], child));
            }

            child.Put(names, depth + 1, entry);
        }

        public JsonNode ToJson(string at, Dictionary<string, string> fields)
        {
            fields[at] = path;
            if (_children.Count == 0)
            {
                return _leaf?.Typed switch
                {
                    null => new JsonObject(), // The root of a visit in which nothing stands yet.
                    "true" => JsonValue.Create(true),
                    "false" => JsonValue.Create(false),
                    var typed => JsonValue.Create(typed),
                };
            }

            if (path == "fitted")
            {
                return new JsonArray([.. _children.Select((c, i) =>
                {
                    var place = string.Create(CultureInfo.InvariantCulture, $"{at}[{i}]");
                    var item = c.Child.ToJson(place, fields);
                    if (item is JsonObject assembly)
                    {
                        assembly.Insert(0, "position", c.Name);
                        fields[$"{place}.position"] = c.Child.PathText;
                    }

                    return (JsonNode?)item;
                })]);
            }

            if (_children.All(c => c.Name.All(char.IsAsciiDigit)) && !path.StartsWith("work.steps.", StringComparison.Ordinal))
            {
                return new JsonArray([.. _children.Select((c, i) => (JsonNode?)c.Child.ToJson(string.Create(CultureInfo.InvariantCulture, $"{at}[{i}]"), fields))]);
            }

            var json = new JsonObject();
            foreach (var (name, child) in _children)
            {
                json[name] = child.ToJson(at.Length == 0 ? name : $"{at}.{name}", fields);
            }

            if (path.StartsWith("work.decisions.", StringComparison.Ordinal) && _children.FirstOrDefault(c => c.Name == "decision").Child?._leaf is { } decision)
            {
                // Who decided is who entered the decision; nobody types that.
                json["by"] = decision.By;
                json["role"] = decision.Role.Word();
            }
            else if (path == "work.handBack" && _children.FirstOrDefault(c => c.Name == "by").Child?._leaf is { } signature)
            {
                json["by"] = signature.By;
                json["role"] = signature.Role.Word();
            }

            return json;
        }

        private string PathText => path;
    }

    /// <summary>Fields in the order of a reader: names by letter, list places by number.</summary>
    private sealed class FieldOrder : IComparer<string>
    {
        public static FieldOrder Instance { get; } = new();

        public int Compare(string? x, string? y)
        {
            var a = x!.Split('.');
            var b = y!.Split('.');
            for (var i = 0; i < Math.Min(a.Length, b.Length); i++)
            {
                var order = int.TryParse(a[i], NumberStyles.None, CultureInfo.InvariantCulture, out var m) && int.TryParse(b[i], NumberStyles.None, CultureInfo.InvariantCulture, out var n)
                    ? m.CompareTo(n)
                    : string.CompareOrdinal(a[i], b[i]);
                if (order != 0)
                {
                    return order;
                }
            }

            return a.Length.CompareTo(b.Length);
        }
    }
}

/// <summary>A visit's file made of its fields.</summary>
/// <param name="Json">The contract's file.</param>
/// <param name="Fields">From a path in the file, such as <c>fitted[0].tyre.marking</c>, to the field <c>fitted.1L.tyre.marking</c>.</param>
public sealed record AssembledFile(JsonObject Json, IReadOnlyDictionary<string, string> Fields)
{
    private static readonly JsonSerializerOptions Indented = new() { WriteIndented = true, Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    /// <summary>The file as text.</summary>
    public string Text => Json.ToJsonString(Indented);

    /// <summary>The file as a strict reader takes it.</summary>
    public FileNode Root => FileNode.From(Json);

    /// <summary>The field of a place, or of the nearest place around it.</summary>
    public string FieldOf(string where)
    {
        for (var at = where; ;)
        {
            if (Fields.TryGetValue(at, out var field))
            {
                return at == where ? field : $"{field}.{where[at.Length..].TrimStart('.')}".Trim('.');
            }

            var cut = Math.Max(at.LastIndexOf('.'), at.LastIndexOf('['));
            if (cut < 0)
            {
                return where;
            }

            at = at[..cut];
        }
    }
}
