using System.Globalization;
using System.Text.Json.Nodes;

namespace Trundle.Web.Client.Tests;

/// <summary>The sample visit taken apart into fields, as a tablet would have entered them.</summary>
internal static class Sample
{
    public static readonly DateTimeOffset Noon = new(2026, 3, 14, 12, 0, 0, TimeSpan.Zero);

    /// <summary>Its fields, without those under the given paths.</summary>
    public static IReadOnlyList<(string Field, string Typed)> Fields(params string[] without)
    {
        var fields = new List<(string, string)>();
        Walk("", JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "visit-blue-hatchback.json")))!, fields);
        return [.. fields.Where(f => !without.Any(w => f.Item1 == w || f.Item1.StartsWith(w + ".", StringComparison.Ordinal)))];
    }

    private static void Walk(string path, JsonNode? node, List<(string, string)> fields)
    {
        switch (node)
        {
            case JsonObject members:
                foreach (var (key, value) in members.Where(m => m.Key is not ("position" or "by" or "role") || path.Length == 0))
                {
                    Walk(path.Length == 0 ? key : $"{path}.{key}", value, fields);
                }

                break;
            case JsonArray items:
                for (var i = 0; i < items.Count; i++)
                {
                    // The bay names an assembly by its position, and a fixing by its number from 1.
                    var name = path == "fitted" ? items[i]!["position"]!.GetValue<string>()
                        : (path.StartsWith("work.steps.", StringComparison.Ordinal) ? i + 1 : i).ToString(CultureInfo.InvariantCulture);
                    Walk($"{path}.{name}", items[i], fields);
                }

                break;
            case JsonValue value:
                fields.Add((path, value.TryGetValue<string>(out var text) ? text : value.ToJsonString()));
                break;
            default:
                break;
        }
    }
}
