using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;

namespace Trundle.Rules.Tests.Texts;

/// <summary>The files of texts, one line a form, so that a change is seen line by line.</summary>
internal static class TextFile
{
    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    public static string PathOf(string locale) => Path.Combine(House.Root, "src", "Trundle.Words", "texts", $"{locale}.json");

    public static SortedDictionary<string, string> Read(string locale)
    {
        using var json = JsonDocument.Parse(File.ReadAllText(PathOf(locale)));
        return new(json.RootElement.EnumerateObject().ToDictionary(p => p.Name, p => p.Value.GetString()!), StringComparer.Ordinal);
    }

    public static string Written(IEnumerable<KeyValuePair<string, string>> texts)
    {
        var file = new StringBuilder("{\n");
        file.AppendJoin(",\n", texts.Select(t => $"{JsonSerializer.Serialize(t.Key, Plain)}: {JsonSerializer.Serialize(t.Value, Plain)}"));
        return file.Append("\n}\n").ToString();
    }
}
