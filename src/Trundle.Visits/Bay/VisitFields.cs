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
    private readonly Dictionary<string, Entry> _newest;
    private readonly Entry[] _inOrder;

    private VisitFields(Dictionary<string, Entry> newest, Entry[] inOrder) => (_newest, _inOrder) = (newest, inOrder);

    /// <summary>A visit with nothing entered.</summary>
    public static VisitFields Empty { get; } = new(new Dictionary<string, Entry>(StringComparer.Ordinal), []);

    /// <summary>The visit of these entries. Of two for one field the later wins; of two at one moment the greater identifier, so that every device agrees.</summary>
    public static VisitFields Of(IEnumerable<Entry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var newest = new Dictionary<string, Entry>(StringComparer.Ordinal);
        foreach (var entry in entries)
        {
            Put(newest, entry);
        }

        var inOrder = newest.Values.ToArray();
        Array.Sort(inOrder, FieldOrder.Instance);
        return new VisitFields(newest, inOrder);
    }

    /// <summary>The same visit with more entries.</summary>
    public VisitFields With(IEnumerable<Entry> more)
    {
        ArgumentNullException.ThrowIfNull(more);
        var newest = new Dictionary<string, Entry>(_newest, StringComparer.Ordinal);
        var inOrder = new List<Entry>(_inOrder);
        foreach (var entry in more)
        {
            if (Put(newest, entry))
            {
                var at = inOrder.BinarySearch(entry, FieldOrder.Instance);
                if (at >= 0)
                {
                    inOrder[at] = entry;
                }
                else
                {
                    inOrder.Insert(~at, entry);
                }
            }
        }

        return new VisitFields(newest, [.. inOrder]);
    }

    /// <summary>The newest entry of each field, emptied ones too.</summary>
    public IReadOnlyCollection<Entry> Newest => _inOrder;

    /// <summary>The fields in which something else stands than in an earlier visit, or by another hand; also those in which nothing stands any more.</summary>
    public IReadOnlyList<string> ChangedSince(VisitFields before)
    {
        ArgumentNullException.ThrowIfNull(before);
        var changed = new List<string>();
        foreach (var entry in _inOrder)
        {
            if (!before._newest.TryGetValue(entry.Field, out var was) ? entry.Typed.Length > 0 : !ReferenceEquals(was, entry) && (was.Typed != entry.Typed || was.By != entry.By || was.Role != entry.Role))
            {
                changed.Add(entry.Field);
            }
        }

        changed.AddRange(before._inOrder.Where(e => e.Typed.Length > 0 && !_newest.ContainsKey(e.Field)).Select(e => e.Field));
        return changed;
    }

    /// <summary>What was typed in a field, or null where nothing stands.</summary>
    public string? this[string field] => EntryOf(field)?.Typed;

    /// <summary>The newest entry of a field, or null where nothing stands.</summary>
    public Entry? EntryOf(string field) => _newest.TryGetValue(field, out var entry) && entry.Typed.Length > 0 ? entry : null;

    /// <summary>The fields that stand under a path, in order.</summary>
    public IEnumerable<Entry> Under(string path)
    {
        ArgumentNullException.ThrowIfNull(path);

        // They stand together: a path comes before all that is under it, and after it comes the next name.
        var (low, high) = (0, _inOrder.Length);
        while (low < high)
        {
            var middle = (low + high) / 2;
            (low, high) = FieldOrder.Compare(_inOrder[middle].Field, path) < 0 ? (middle + 1, high) : (low, middle);
        }

        for (var i = low; i < _inOrder.Length; i++)
        {
            var field = _inOrder[i].Field;
            if (!field.StartsWith(path, StringComparison.Ordinal) || (field.Length > path.Length && field[path.Length] != '.'))
            {
                yield break;
            }

            if (_inOrder[i].Typed.Length > 0)
            {
                yield return _inOrder[i];
            }
        }
    }

    private static bool Put(Dictionary<string, Entry> newest, Entry entry)
    {
        if (newest.TryGetValue(entry.Field, out var other) && entry.At <= other.At && (entry.At != other.At || entry.Id.CompareTo(other.Id) <= 0))
        {
            return false;
        }

        newest[entry.Field] = entry;
        return true;
    }

    /// <summary>The contract's file of this visit, with the way back from a place in it to the field on the page.</summary>
    public AssembledFile Assemble()
    {
        var root = new Branch("");
        foreach (var entry in _inOrder)
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

            // Fields come in order, so what belongs together follows each other.
            var child = _children.Count > 0 && _children[^1].Name == names[depth] ? _children[^1].Child : null;
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

            if (_children.All(c => c.Name.All(char.IsAsciiDigit)) && !path.StartsWith("work.steps.", StringComparison.Ordinal) && !StageTorques.IsPath(path) && !path.StartsWith(ReTorqueRecord.Field + ".", StringComparison.Ordinal))
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
            else if (StageTorques.IsPath(path))
            {
                // Who tightened is who entered; nobody types that.
                json["by"] = string.Join(", ", _children.Where(c => c.Name.All(char.IsAsciiDigit)).Select(c => c.Child._leaf?.By).OfType<string>().Distinct(StringComparer.Ordinal));
            }
            else if (path == ReTorqueRecord.Field && _children.FirstOrDefault(c => c.Name == "result").Child?._leaf is { } found)
            {
                json["by"] = found.By;
            }
            else if (path == "work.handBack" && _children.FirstOrDefault(c => c.Name == "by").Child?._leaf is { } signature)
            {
                json["by"] = signature.By;
                json["role"] = signature.Role.Word();
            }

            if (path == "work" && ByTrainees() is { Count: > 0 } trainees)
            {
                // Who recorded a step is who entered it; nobody types that.
                json["trainees"] = trainees;
            }

            Witnessed(json);
            return json;
        }

        /// <summary>When the customer signed is when the name was entered, and who saw a part is who entered it, unless something else is written.</summary>
        private void Witnessed(JsonObject json)
        {
            if ((path == "work.agreement" || path.StartsWith("work.declined.", StringComparison.Ordinal)) && !json.ContainsKey("at") && LeafOf("signed") is { } signed)
            {
                json["at"] = signed.At.UtcDateTime.ToString("yyyy-MM-dd HH:mm 'UTC'", CultureInfo.InvariantCulture);
            }
            else if ((path.StartsWith(SignedOff.Root + ".", StringComparison.Ordinal) ? LeafOf("result")
                : path.StartsWith(Permission.List + ".", StringComparison.Ordinal) ? LeafOf("act")
                : path.StartsWith(Incident.List + ".", StringComparison.Ordinal) ? LeafOf("kind") : null) is { } said)
            {
                json["by"] = said.By;
                json["role"] = said.Role.Word();
                json["at"] = Moments.Text(said.At);
            }
            else if (path.StartsWith("work.seen.", StringComparison.Ordinal) && !json.ContainsKey("by") && LeafOf("part") is { } seen)
            {
                json["by"] = seen.By;
                json["role"] = seen.Role.Word();
            }
        }

        /// <summary>The steps whose newest entry a trainee made.</summary>
        private JsonObject ByTrainees()
        {
            var json = new JsonObject();
            foreach (var (at, place) in _children.FirstOrDefault(c => c.Name == "steps").Child?._children ?? [])
            {
                var steps = new JsonObject();
                foreach (var (step, child) in place._children)
                {
                    if (child.NewestLeaf() is { Role: Role.Trainee } entry)
                    {
                        steps[step] = new JsonObject { ["by"] = entry.By, ["at"] = Moments.Text(entry.At) };
                    }
                }

                if (steps.Count > 0)
                {
                    json[at] = steps;
                }
            }

            return json;
        }

        private Entry? NewestLeaf()
        {
            var newest = _leaf;
            foreach (var (_, child) in _children)
            {
                newest = child.NewestLeaf() is { } other && (newest is null || other.At > newest.At) ? other : newest;
            }

            return newest;
        }

        private Entry? LeafOf(string name) => _children.FirstOrDefault(c => c.Name == name).Child?._leaf;

        private string PathText => path;
    }

    /// <summary>Fields in the order of a reader: names by letter, list places by number. It is asked thousands of times for one visit, so it makes no texts.</summary>
    private sealed class FieldOrder : IComparer<Entry>
    {
        public static FieldOrder Instance { get; } = new();

        public int Compare(Entry? x, Entry? y) => Compare(x!.Field, y!.Field);

        public static int Compare(string x, string y)
        {
            var least = Math.Min(x.Length, y.Length);
            var (at, name) = (0, 0);
            for (; at < least && x[at] == y[at]; at++)
            {
                if (x[at] == '.')
                {
                    name = at + 1;
                }
            }

            // The first names that differ; where one field ends here, it comes before all that is under it.
            var a = Name(x, name);
            var b = Name(y, name);
            return a.SequenceEqual(b) ? x.Length.CompareTo(y.Length)
                : int.TryParse(a, NumberStyles.None, CultureInfo.InvariantCulture, out var m) && int.TryParse(b, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && m != n ? m.CompareTo(n)
                : a.SequenceCompareTo(b);
        }

        private static ReadOnlySpan<char> Name(string field, int from)
        {
            var rest = field.AsSpan(from);
            var end = rest.IndexOf('.');
            return end < 0 ? rest : rest[..end];
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
    public FileNode Root { get; } = FileNode.From(Json);

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
