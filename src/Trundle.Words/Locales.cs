using System.Globalization;
using System.Text.Json;

namespace Trundle.Words;

/// <summary>The locales that Trundle speaks, and how their files are read.</summary>
public static class Locales
{
    /// <summary>The tags, first the one that the program is written in.</summary>
    public static IReadOnlyList<string> All { get; } = [Texts.Source, "en-US"];

    /// <summary>
    /// The locale that a browser asks for: the first of <c>Accept-Language</c> that is spoken here, with its weight; null where none is. A bare
    /// language, such as <c>en</c>, decides nothing between its locales.
    /// </summary>
    public static string? Asked(string? header) => (header ?? "").Split(',')
        .Select(part => part.Split(';'))
        .Select(part => (Tag: part[0].Trim(), Weight: part.Length > 1 && part[1].Trim() is ['q', '=', .. var q] && double.TryParse(q, NumberStyles.Float, CultureInfo.InvariantCulture, out var w) ? w : 1))
        .Where(part => part.Weight > 0)
        .OrderByDescending(part => part.Weight)
        .Select(part => Of(part.Tag))
        .FirstOrDefault(tag => tag is not null);

    /// <summary>The locale of a tag, or null.</summary>
    public static string? Of(string? tag) => All.FirstOrDefault(l => string.Equals(l, tag?.Trim(), StringComparison.OrdinalIgnoreCase));

    /// <summary>Reads a locale's file: an object of forms in en-GB, each with the same in the locale, or with nothing where it does not differ.</summary>
    public static Texts Read(string locale, ReadOnlyMemory<byte> json)
    {
        using var document = JsonDocument.Parse(json);
        var said = document.RootElement.EnumerateObject().ToDictionary(p => p.Name, p => p.Value.GetString() ?? "", StringComparer.Ordinal);
        var triggers = new Triggers(said.Where(s => s.Value.Length > 0 && s.Value != s.Key));
        return new Texts(locale, said.Keys, form => said.GetValueOrDefault(form) is { Length: > 0 } text ? text : form, DateOf(locale), triggers.In);
    }

    /// <summary>Every form in a file.</summary>
    public static IReadOnlyList<string> Forms(ReadOnlyMemory<byte> json)
    {
        using var document = JsonDocument.Parse(json);
        return [.. document.RootElement.EnumerateObject().Select(p => p.Name)];
    }

    /// <summary>
    /// A locale's file for a reader: what differs, and of the program's own list the forms with holes, by which a sentence is taken apart. A text that
    /// does not differ and has no hole stays as it is, known or not.
    /// </summary>
    public static byte[] Merged(ReadOnlyMemory<byte> source, ReadOnlyMemory<byte> locale)
    {
        using var own = JsonDocument.Parse(locale);
        var said = own.RootElement.EnumerateObject().ToDictionary(p => p.Name, p => p.Value.GetString() ?? "", StringComparer.Ordinal);
        using var file = new MemoryStream();
        using (var json = new Utf8JsonWriter(file, new JsonWriterOptions { Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            json.WriteStartObject();
            foreach (var form in Forms(source).Where(f => said.ContainsKey(f) || Form.Read(f).Holes > 0))
            {
                json.WriteString(form, said.GetValueOrDefault(form, ""));
            }

            json.WriteEndObject();
        }

        return file.ToArray();
    }

    /// <summary>How a locale writes a date; null where as the program does.</summary>
    public static Func<string, string?>? DateOf(string locale) => locale == "en-US" ? AmericanDates.Said : null;
}
