using System.Buffers;
using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using Trundle.Measures;

namespace Trundle.Visits.Files;

/// <summary>What a node of a file is.</summary>
public enum NodeKind
{
    Object,
    Array,
    Text,
    Number,
    Flag,
    Null,
}

/// <summary>One node of a JSON file, with its path and its place in the text, so that every problem can name where it stands.</summary>
public sealed class FileNode
{
    /// <summary>The most characters that a file may have.</summary>
    public const int MostCharacters = 8_000_000;

    private const int MostDepth = 48;

    private FileNode(NodeKind kind, string path, string text, IReadOnlyList<(string Key, FileNode Node)> members, IReadOnlyList<FileNode> items, int line, int column)
    {
        Kind = kind;
        Path = path;
        Text = text;
        Members = members;
        Items = items;
        Line = line;
        Column = column;
    }

    /// <summary>What it is.</summary>
    public NodeKind Kind { get; }

    /// <summary>Its path, such as <c>readings.inner.mass</c> or <c>fitted[0].tyre.marking</c>; empty for the root.</summary>
    public string Path { get; }

    /// <summary>A text's characters; a number as written; <c>true</c> or <c>false</c>.</summary>
    public string Text { get; }

    /// <summary>An object's members in order.</summary>
    public IReadOnlyList<(string Key, FileNode Node)> Members { get; }

    /// <summary>An array's items.</summary>
    public IReadOnlyList<FileNode> Items { get; }

    /// <summary>Line in the file, from 1.</summary>
    public int Line { get; }

    /// <summary>Column in the file, from 1, in characters.</summary>
    public int Column { get; }

    /// <summary>The member of a key, or null.</summary>
    public FileNode? Member(string key) => Members.FirstOrDefault(m => m.Key == key).Node;

    /// <summary>The same object with one member put in or replaced: how an option wins over a file.</summary>
    public FileNode With(string key, FileNode value)
    {
        var node = Rebased(value, Path.Length == 0 ? key : $"{Path}.{key}");
        return new FileNode(Kind, Path, Text, [.. Members.Where(m => m.Key != key), (key, node)], Items, Line, Column);
    }

    /// <summary>A text made in memory, of any length: what a command read from another file.</summary>
    public static FileNode OfText(string text) => new(NodeKind.Text, "", text, [], [], 1, 1);

    /// <summary>An object made in memory of nodes.</summary>
    public static FileNode OfObject(params (string Key, FileNode Node)[] members)
    {
        ArgumentNullException.ThrowIfNull(members);
        return new(NodeKind.Object, "", "", [.. members.Select(m => (m.Key, Rebased(m.Node, m.Key)))], [], 1, 1);
    }

    /// <summary>The same tree with nodes put in the place of others; where the function gives null, the node stays and its children are looked at.</summary>
    public FileNode Replacing(Func<FileNode, FileNode?> put)
    {
        ArgumentNullException.ThrowIfNull(put);
        return put(this) is { } other ? Rebased(other, Path) : Kind switch
        {
            NodeKind.Object => new(Kind, Path, Text, [.. Members.Select(m => (m.Key, m.Node.Replacing(put)))], Items, Line, Column),
            NodeKind.Array => new(Kind, Path, Text, Members, [.. Items.Select(i => i.Replacing(put))], Line, Column),
            _ => this,
        };
    }

    /// <summary>A node made in memory from a JSON value, for options of a command.</summary>
    public static FileNode From(JsonNode node) => From(node, "");

    private static FileNode From(JsonNode? node, string path) => node switch
    {
        JsonObject members => new(NodeKind.Object, path, "", [.. members.Select(m => (m.Key, From(m.Value, path.Length == 0 ? m.Key : $"{path}.{m.Key}")))], [], 1, 1),
        JsonArray items => new(NodeKind.Array, path, "", [], [.. items.Select((item, i) => From(item, string.Create(CultureInfo.InvariantCulture, $"{path}[{i}]")))], 1, 1),
        JsonValue value => value.GetValueKind() switch
        {
            JsonValueKind.String => new(NodeKind.Text, path, value.GetValue<string>(), [], [], 1, 1),
            JsonValueKind.True or JsonValueKind.False => new(NodeKind.Flag, path, value.GetValue<bool>() ? "true" : "false", [], [], 1, 1),
            JsonValueKind.Number => new(NodeKind.Number, path, value.ToJsonString(), [], [], 1, 1),
            _ => new(NodeKind.Null, path, "", [], [], 1, 1),
        },
        _ => new(NodeKind.Null, path, "", [], [], 1, 1),
    };

    /// <summary>
    /// Parses a file.
    /// </summary>
    /// <param name="json">The text.</param>
    /// <param name="fileName">Its name, for the place of a syntax problem (file:line:column).</param>
    /// <returns>The root, or one problem with its place.</returns>
    public static Reading<FileNode> Parse(string json, string fileName)
    {
        ArgumentNullException.ThrowIfNull(json);
        if (json.Length > MostCharacters)
        {
            return Reading<FileNode>.Failed(new Problem(fileName, "file-too-large", $"The file has more than {MostCharacters.ToString(CultureInfo.InvariantCulture)} characters; a visit has a few thousand."));
        }

        if (string.IsNullOrWhiteSpace(json))
        {
            return Reading<FileNode>.Failed(new Problem(Place(fileName, 1, 1), "file-empty", "There is nothing here; one JSON object was expected."));
        }

        byte[] bytes;
        try
        {
            bytes = new UTF8Encoding(false, true).GetBytes(json);
        }
        catch (EncoderFallbackException e)
        {
            var (line, column) = PlaceOfCharacter(json, e.Index);
            return Reading<FileNode>.Failed(new Problem(Place(fileName, line, column), "not-unicode", "There is half of a character here; save the file as UTF-8."));
        }

        var place = new PlaceFinder(bytes);
        var reader = new Utf8JsonReader(bytes, new JsonReaderOptions { MaxDepth = MostDepth, CommentHandling = JsonCommentHandling.Disallow });
        try
        {
            reader.Read();
            var problem = default(Problem);
            var root = ReadNode(ref reader, "", place, fileName, ref problem);
            if (problem is not null)
            {
                return Reading<FileNode>.Failed(problem);
            }

            // Anything behind the root is a syntax error that only a further read finds.
            reader.Read();
            return root.Kind == NodeKind.Object
                ? Reading<FileNode>.Of(root)
                : Reading<FileNode>.Failed(new Problem(Place(fileName, root.Line, root.Column), "not-an-object", "The file should hold one JSON object in braces."));
        }
        catch (JsonException e)
        {
            // The parser tells its place by line and byte; its words are for programmers, so the words are ours.
            var at = (int)Math.Min(bytes.Length, StartOfLine(bytes, e.LineNumber ?? 0) + (e.BytePositionInLine ?? 0));
            var (line, column) = new PlaceFinder(bytes).Of(at);
            return Reading<FileNode>.Failed(new Problem(Place(fileName, line, column), "json-syntax", $"The file is not JSON here. {JsonFault.Words(bytes, at, MostDepth)}"));
        }
        catch (InvalidOperationException)
        {
            // A text holds an escaped half of a surrogate pair, which JSON's grammar allows and Unicode does not.
            var (line, column) = place.Of(reader.TokenStartIndex);
            return Reading<FileNode>.Failed(new Problem(Place(fileName, line, column), "not-unicode", "There is half of a character in this text; write it whole."));
        }
    }

    private static FileNode ReadNode(ref Utf8JsonReader reader, string path, PlaceFinder place, string fileName, ref Problem? problem)
    {
        var (line, column) = place.Of(reader.TokenStartIndex);
        switch (reader.TokenType)
        {
            case JsonTokenType.StartObject:
            {
                var members = new List<(string, FileNode)>();
                var seen = new HashSet<string>(StringComparer.Ordinal);
                while (reader.Read() && reader.TokenType != JsonTokenType.EndObject)
                {
                    var keyPlace = place.Of(reader.TokenStartIndex);
                    var key = reader.GetString()!;
                    var memberPath = path.Length == 0 ? key : $"{path}.{key}";
                    if (!seen.Add(key))
                    {
                        problem ??= new Problem(memberPath, "key-twice", $"'{NumberText.Shown(key)}' stands twice in one object (line {keyPlace.Line.ToString(CultureInfo.InvariantCulture)}); keep one.");
                    }

                    reader.Read();
                    members.Add((key, ReadNode(ref reader, memberPath, place, fileName, ref problem)));
                }

                return new FileNode(NodeKind.Object, path, "", members, [], line, column);
            }

            case JsonTokenType.StartArray:
            {
                var items = new List<FileNode>();
                while (reader.Read() && reader.TokenType != JsonTokenType.EndArray)
                {
                    items.Add(ReadNode(ref reader, string.Create(CultureInfo.InvariantCulture, $"{path}[{items.Count}]"), place, fileName, ref problem));
                }

                return new FileNode(NodeKind.Array, path, "", [], items, line, column);
            }

            case JsonTokenType.String:
                return new FileNode(NodeKind.Text, path, reader.GetString()!, [], [], line, column);
            case JsonTokenType.Number:
                return new FileNode(NodeKind.Number, path, Encoding.UTF8.GetString(reader.HasValueSequence ? reader.ValueSequence.ToArray() : reader.ValueSpan), [], [], line, column);
            case JsonTokenType.True:
                return new FileNode(NodeKind.Flag, path, "true", [], [], line, column);
            case JsonTokenType.False:
                return new FileNode(NodeKind.Flag, path, "false", [], [], line, column);
            default:
                return new FileNode(NodeKind.Null, path, "", [], [], line, column);
        }
    }

    private static FileNode Rebased(FileNode node, string path) => new(
        node.Kind, path, node.Text,
        [.. node.Members.Select(m => (m.Key, Rebased(m.Node, path.Length == 0 ? m.Key : $"{path}.{m.Key}")))],
        [.. node.Items.Select((item, i) => Rebased(item, string.Create(CultureInfo.InvariantCulture, $"{path}[{i}]")))],
        node.Line, node.Column);

    /// <summary>The same node as the root of a file of its own: its paths start anew.</summary>
    public FileNode AsRoot() => new(
        Kind, "", Text,
        [.. Members.Select(m => (m.Key, Rebased(m.Node, m.Key)))],
        [.. Items.Select((item, i) => Rebased(item, string.Create(CultureInfo.InvariantCulture, $"[{i}]")))],
        Line, Column);

    private static string Place(string fileName, int line, int column) =>
        string.Create(CultureInfo.InvariantCulture, $"{(fileName.Length == 0 ? "input" : fileName)}:{line}:{column}");

    private static long StartOfLine(byte[] bytes, long line)
    {
        var start = 0;
        for (; line > 0 && Array.IndexOf(bytes, (byte)'\n', start) is >= 0 and var end; line--)
        {
            start = end + 1;
        }

        return start;
    }

    private static (int Line, int Column) PlaceOfCharacter(string text, int index)
    {
        var line = 1;
        var start = 0;
        for (var i = 0; i < index && i < text.Length; i++)
        {
            if (text[i] == '\n')
            {
                line++;
                start = i + 1;
            }
        }

        return (line, index - start + 1);
    }

    /// <summary>Tells line and column of a byte that never moves back.</summary>
    private sealed class PlaceFinder(byte[] bytes)
    {
        private int _line = 1;
        private long _lineStart;
        private long _at;

        public (int Line, int Column) Of(long index)
        {
            for (; _at < index && _at < bytes.Length; _at++)
            {
                if (bytes[_at] == (byte)'\n')
                {
                    _line++;
                    _lineStart = _at + 1;
                }
            }

            return (_line, Encoding.UTF8.GetCharCount(bytes, (int)_lineStart, (int)Math.Max(0, Math.Min(index, bytes.Length) - _lineStart)) + 1);
        }
    }
}
