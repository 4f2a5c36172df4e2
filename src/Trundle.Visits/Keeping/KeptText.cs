using System.Text.Json.Nodes;

namespace Trundle.Visits.Keeping;

/// <summary>Single texts of a record's body.</summary>
public static class KeptText
{
    /// <summary>The text under a key of a body that was taken, or null.</summary>
    public static string? Of(string body, string key) =>
        JsonNode.Parse(body) is JsonObject json && json[key] is JsonValue value && value.TryGetValue<string>(out var text) ? text : null;

    /// <summary>A body of one text.</summary>
    public static string Body(string key, string text) => new JsonObject { [key] = text }.ToJsonString();
}
