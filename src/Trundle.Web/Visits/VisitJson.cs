using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Store;
using Trundle.Visits.Bay;

namespace Trundle.Web.Visits;

/// <summary>Visits and entries as the HTTP interface writes them. Times are UTC with milliseconds.</summary>
internal static class VisitJson
{
    /// <summary>A time.</summary>
    public static string Time(DateTimeOffset time) => time.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture);

    /// <summary>A visit without its entries.</summary>
    public static JsonObject Heading(VisitHeading heading) => new()
    {
        ["id"] = heading.Id.ToString("D"),
        ["number"] = heading.Number,
        ["openedAt"] = Time(heading.OpenedAt),
        ["openedBy"] = heading.OpenedBy,
        ["handedBackAt"] = heading.HandedBackAt is { } at ? Time(at) : null,
    };

    /// <summary>An entry with what became of it.</summary>
    public static JsonObject Of(StoredEntry stored) => new()
    {
        ["id"] = stored.Entry.Id.ToString("D"),
        ["sequence"] = stored.Sequence,
        ["field"] = stored.Entry.Field,
        ["typed"] = stored.Entry.Typed,
        ["by"] = stored.Entry.By,
        ["role"] = stored.Entry.Role.Word(),
        ["at"] = Time(stored.Entry.At),
        ["receivedAt"] = Time(stored.ReceivedAt),
        ["si"] = stored.Si is { } si ? new JsonObject { ["value"] = si.Value, ["unit"] = si.Unit } : null,
        ["outcome"] = stored.Outcome,
        ["problem"] = stored.Problem,
        ["engineVersion"] = stored.EngineVersion,
        ["tableEdition"] = stored.TableEdition,
        ["supersedes"] = stored.Supersedes?.ToString("D"),
    };

    /// <summary>A visit with the newest text of each field, its entries after a sequence number, and what the condemned register says of it.</summary>
    public static JsonObject Of(StoredVisit visit, IReadOnlyList<CondemnedMatch> matches, long since)
    {
        var json = Heading(visit.Heading);
        var fields = new JsonObject();
        foreach (var entry in visit.Fields.Newest.Where(e => e.Typed.Length > 0))
        {
            fields[entry.Field] = entry.Typed;
        }

        json["fields"] = fields;
        json["entries"] = new JsonArray([.. visit.Entries.Where(e => e.Sequence > since).Select(e => (JsonNode?)Of(e))]);
        json["last"] = visit.Entries.Count == 0 ? 0 : visit.Entries[^1].Sequence;
        json["condemned"] = new JsonArray([.. matches.Select(m => (JsonNode?)Of(m))]);
        return json;
    }

    private static JsonObject Of(CondemnedMatch match) => new()
    {
        ["field"] = match.Field,
        ["kind"] = match.Condemned.Kind switch { CondemnedKind.Tyre => "tyre", CondemnedKind.Tin => "tin", CondemnedKind.Wheel => "wheel" },
        ["name"] = match.Condemned.Name,
        ["visit"] = match.Condemned.VisitNumber,
        ["by"] = match.Condemned.By,
        ["at"] = Time(match.Condemned.At),
    };
}
