using System.Globalization;
using System.Security.Cryptography;
using System.Text;
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
        ["after"] = stored.Entry.After is { } after ? new JsonArray([.. after.Select(a => (JsonNode?)a.ToString("D"))]) : null,
    };

    /// <summary>A visit with the newest text of each field, its entries after a sequence number, and what the condemned register says of it.</summary>
    public static JsonObject Of(StoredVisit visit, IReadOnlyList<CondemnedLine> register, long since)
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
        json["condemned"] = new JsonArray([.. CondemnedNames.Hits(visit.Fields, visit.Heading.Id, register).Select(h => (JsonNode?)Of(h))]);
        json["register"] = Edition(register);
        return json;
    }

    /// <summary>The lines of the condemned register that stand, as a tablet holds them, with the edition that a visit's answer names.</summary>
    public static JsonObject Of(IReadOnlyList<CondemnedLine> register) => new()
    {
        ["register"] = Edition(register),
        ["condemned"] = new JsonArray([.. register.Select(line => (JsonNode?)Of(line))]),
    };

    /// <summary>Another text whenever a line came or went: a tablet asks for the lines again only then.</summary>
    private static string Edition(IReadOnlyList<CondemnedLine> register)
    {
        var text = string.Join('\n', register.Select(l => $"{l.Kind.Word()}|{l.Shown}|{l.Visit:D}|{l.Place}|{Time(l.At)}"));
        return Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)).AsSpan(0, 8));
    }

    private static JsonObject Of(CondemnedLine line) => new()
    {
        ["kind"] = line.Kind.Word(),
        ["name"] = line.Shown,
        ["visitId"] = line.Visit.ToString("D"),
        ["visit"] = line.VisitNumber,
        ["place"] = line.Place,
        ["by"] = line.By,
        ["at"] = Time(line.At),
    };

    private static JsonObject Of(CondemnedHit hit) => new()
    {
        ["field"] = hit.Named.Field,
        ["kind"] = hit.Line.Kind.Word(),
        ["name"] = hit.Line.Shown,
        ["visit"] = hit.Line.VisitNumber,
        ["by"] = hit.Line.By,
        ["at"] = Time(hit.Line.At),
    };
}
