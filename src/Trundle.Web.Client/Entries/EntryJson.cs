using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Entries;

/// <summary>An entry as the host and the browser's store write it.</summary>
internal static class EntryJson
{
    /// <summary>The entry, or null where the object is none.</summary>
    public static Entry? Read(JsonObject json) =>
        Text(json, "id") is { } id && Guid.TryParse(id, out var guid)
        && Text(json, "field") is { } field
        && Text(json, "typed") is { } typed
        && Text(json, "by") is { } by
        && Text(json, "at") is { } at
        && DateTimeOffset.TryParse(at, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var time)
            ? new Entry(guid, field, typed, by, RoleWords.Of(Text(json, "role")) ?? Role.Trainee, time) { After = After(json) }
            : null;

    private static Guid[]? After(JsonObject json) =>
        json["after"] is JsonArray after ? [.. after.Select(a => a is JsonValue v && v.TryGetValue<string>(out var text) && Guid.TryParse(text, out var id) ? id : Guid.Empty)] : null;

    /// <summary>A line of the condemned register, or null where the object is none.</summary>
    public static CondemnedLine? ReadCondemned(JsonObject json) =>
        CondemnedNames.KindOf(Text(json, "kind")) is { } kind
        && Text(json, "name") is { } name
        && Guid.TryParse(Text(json, "visitId"), out var visit)
        && DateTimeOffset.TryParse(Text(json, "at"), CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal | DateTimeStyles.AdjustToUniversal, out var time)
            ? new CondemnedLine(kind, name, visit, Text(json, "visit") ?? "", Text(json, "place") ?? "", Text(json, "by") ?? "", time)
            : null;

    /// <summary>A text under a key, or null.</summary>
    public static string? Text(JsonNode json, string key) => json[key] is JsonValue value && value.TryGetValue<string>(out var text) ? text : null;
}
