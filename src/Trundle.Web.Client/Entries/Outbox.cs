using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Entries;

/// <summary>One entry that this device holds until the host has it.</summary>
/// <param name="Visit">Of which visit.</param>
/// <param name="Entry">The entry.</param>
/// <param name="Refused">Why the host will not take it, or null.</param>
public sealed record WaitingEntry(Guid Visit, Entry Entry, string? Refused);

/// <summary>
/// Entries on their way: kept by the browser the moment they are made, sent in order until the host has them. The identifier is made here, so an
/// entry that was sent twice because the answer was lost is taken once.
/// </summary>
public sealed class Outbox(Browser browser)
{
    private const int MostAtOnce = 100;

    private readonly List<WaitingEntry> _waiting = [];

    /// <summary>The entries not yet sent, in order, of every visit.</summary>
    public IReadOnlyList<WaitingEntry> Waiting => _waiting;

    /// <summary>False where the browser keeps nothing: then an entry that is not sent lives only as long as the page.</summary>
    public bool Keeps { get; private set; } = true;

    /// <summary>Takes up what an earlier page on this device left unsent.</summary>
    public async Task OpenAsync()
    {
        var (kept, entries) = await browser.WaitingAsync();
        Keeps = kept;
        foreach (var json in entries.OfType<JsonObject>())
        {
            if (Read(json) is { } entry && _waiting.All(w => w.Entry.Id != entry.Entry.Id))
            {
                _waiting.Add(entry);
            }
        }
    }

    /// <summary>Keeps new entries, before anything else is done with them.</summary>
    public async Task AddAsync(Guid visit, IReadOnlyList<Entry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        _waiting.AddRange(entries.Select(e => new WaitingEntry(visit, e, null)));
        Keeps = await browser.KeepAsync(new JsonArray([.. entries.Select(e => (JsonNode?)Json(visit, e))]));

        // An entry that the host refused is done with once its field is entered anew.
        var stale = _waiting.Where(w => w.Refused is not null && w.Visit == visit && entries.Any(e => e.Field == w.Entry.Field)).ToList();
        if (stale.Count > 0)
        {
            _waiting.RemoveAll(stale.Contains);
            await browser.ForgetAsync(stale.Select(s => s.Entry.Id));
        }
    }

    /// <summary>Sends what waits, oldest first, until the host has all or does not answer.</summary>
    /// <param name="taken">Told of each batch that the host has, with the host's answer.</param>
    /// <returns>True where the host was reached or nothing waited.</returns>
    public async Task<bool> SendAsync(Action<Guid, IReadOnlyList<Entry>, JsonObject> taken)
    {
        ArgumentNullException.ThrowIfNull(taken);
        var unknown = new HashSet<Guid>();
        while (_waiting.FirstOrDefault(w => w.Refused is null && !unknown.Contains(w.Visit)) is { } first)
        {
            var batch = _waiting.Where(w => w.Visit == first.Visit && w.Refused is null).Take(MostAtOnce).ToList();
            var body = new JsonObject { ["entries"] = new JsonArray([.. batch.Select(w => (JsonNode?)Json(null, w.Entry))]) };
            var answer = await browser.AskAsync("POST", $"/api/v1/visits/{first.Visit:D}/entries", body);
            if (answer.Good && answer.Body is { } told)
            {
                // An answer that names none of what was sent would be asked for ever.
                if (!await SettleAsync(batch, told, taken))
                {
                    return false;
                }
            }
            else if (answer.Status is >= 400 and < 500)
            {
                // The host is there and knows nothing of the visit, or cannot read the batch: nothing is thrown away, and other visits go on.
                unknown.Add(first.Visit);
            }
            else
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Takes note of the host's answer; false where it names no entry of the batch.</summary>
    private async Task<bool> SettleAsync(List<WaitingEntry> batch, JsonObject told, Action<Guid, IReadOnlyList<Entry>, JsonObject> taken)
    {
        var refused = new Dictionary<Guid, string>();
        foreach (var json in (told["refused"] as JsonArray ?? []).OfType<JsonObject>())
        {
            if (Guid.TryParse(json["id"]?.GetValue<string>(), out var id))
            {
                refused[id] = json["error"]?["message"]?.GetValue<string>() ?? "The workshop's computer did not take this.";
            }
        }

        var has = Ids(told["taken"]).Concat(Ids(told["already"])).ToHashSet();
        var done = batch.Where(w => has.Contains(w.Entry.Id)).ToList();
        if (done.Count + refused.Count == 0)
        {
            return false;
        }

        _waiting.RemoveAll(w => has.Contains(w.Entry.Id));
        for (var i = 0; i < _waiting.Count; i++)
        {
            if (refused.TryGetValue(_waiting[i].Entry.Id, out var why))
            {
                _waiting[i] = _waiting[i] with { Refused = why };
            }
        }

        taken(batch[0].Visit, [.. done.Select(w => w.Entry)], told);
        await browser.ForgetAsync(done.Select(w => w.Entry.Id));
        if (refused.Count > 0)
        {
            await browser.RefuseAsync(new JsonArray([.. refused.Select(r => (JsonNode?)new JsonObject { ["id"] = r.Key.ToString("D"), ["message"] = r.Value })]));
        }

        return true;
    }

    private static IEnumerable<Guid> Ids(JsonNode? list) =>
        (list as JsonArray ?? []).Select(n => Guid.TryParse(n?.GetValue<string>(), out var id) ? id : Guid.Empty);

    private static JsonObject Json(Guid? visit, Entry entry)
    {
        var json = new JsonObject
        {
            ["id"] = entry.Id.ToString("D"),
            ["field"] = entry.Field,
            ["typed"] = entry.Typed,
            ["by"] = entry.By,
            ["at"] = entry.At.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss.fff'Z'", CultureInfo.InvariantCulture),
        };
        if (entry.After is { } after)
        {
            json["after"] = new JsonArray([.. after.Select(a => (JsonNode?)a.ToString("D"))]);
        }

        if (visit is { } id)
        {
            json["visit"] = id.ToString("D");
            json["role"] = entry.Role.Word();
        }

        return json;
    }

    private static WaitingEntry? Read(JsonObject json) =>
        EntryJson.Read(json) is { } entry && Guid.TryParse(json["visit"]?.GetValue<string>(), out var visit)
            ? new WaitingEntry(visit, entry, json["refused"]?.GetValue<string>())
            : null;
}
