using System.Globalization;
using System.Text.Json.Nodes;

namespace Trundle.Web.Client.Tools;

/// <summary>A file of the command taken apart into the fields of a form.</summary>
public static class FileFields
{
    /// <summary>Each value with its path.</summary>
    /// <param name="at">The path under which the file stands; empty for the form's root.</param>
    /// <param name="node">The file.</param>
    public static IEnumerable<(string Field, string Typed)> Of(string at, JsonNode? node) => node switch
    {
        JsonObject members => members.SelectMany(m => Of(at.Length == 0 ? m.Key : $"{at}.{m.Key}", m.Value)),
        JsonArray items => items.SelectMany((item, i) => Of($"{at}.{i.ToString(CultureInfo.InvariantCulture)}", item)),
        JsonValue value => [(at, value.TryGetValue<string>(out var text) ? text : value.ToJsonString())],
        _ => [],
    };
}
