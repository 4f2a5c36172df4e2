using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using Trundle.Engine;
using Trundle.Engine.Instruments;
using Trundle.Measures;
using Trundle.Store.Database;
using Trundle.Visits.Bay;
using Trundle.Visits.Instruments;

namespace Trundle.Store;

/// <summary>The workshop's instruments and their records. Records are added; none is ever changed or removed.</summary>
public sealed class InstrumentStore
{
    /// <summary>The most characters of a name or an identification.</summary>
    public const int MostCharacters = 60;

    private static readonly JsonSerializerOptions Plain = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };

    private readonly StoreFile _file;

    internal InstrumentStore(StoreFile file) => _file = file;

    /// <summary>Every instrument by name, those out of use too.</summary>
    public IReadOnlyList<StoredInstrument> All()
    {
        using var context = _file.Context();
        var records = context.InstrumentRecords.AsNoTracking().OrderBy(r => r.Sequence).AsEnumerable().ToLookup(r => r.InstrumentId);
        return [.. context.Instruments.AsNoTracking().OrderBy(i => i.Name).AsEnumerable().Select(i => Of(i, records[i.Id]))];
    }

    /// <summary>An instrument, or null.</summary>
    public StoredInstrument? Find(Guid id)
    {
        using var context = _file.Context();
        return Find(context, id);
    }

    /// <summary>Adds an instrument. The same identifier adds it once.</summary>
    /// <returns>The instrument, or the problem with its place.</returns>
    public Reading<StoredInstrument> Add(Guid id, InstrumentKind kind, InstrumentDetails details, Recorder by)
    {
        ArgumentNullException.ThrowIfNull(details);
        ArgumentNullException.ThrowIfNull(by);
        using var context = _file.Context();
        using var transaction = context.Database.BeginTransaction();
        if (Find(context, id) is { } there)
        {
            return Reading<StoredInstrument>.Of(there);
        }

        if (Wrong(context, id, details) is { } problem)
        {
            return Reading<StoredInstrument>.Failed(problem);
        }

        context.Instruments.Add(Told(new InstrumentRow { Id = id, Kind = kind.Word(), Name = details.Name }, details));
        return Keep(context, transaction, id, new NewInstrumentRecord(Guid.CreateVersion7(by.At), InstrumentRecordKind.Details, details.InUseFrom, null, Body(details), null), by);
    }

    /// <summary>Changes what an instrument is called and since when it is in use; what it was before stays in its records.</summary>
    public Reading<StoredInstrument> Change(Guid id, Guid record, InstrumentDetails details, DateOnly day, Recorder by)
    {
        ArgumentNullException.ThrowIfNull(details);
        ArgumentNullException.ThrowIfNull(by);
        using var context = _file.Context();
        using var transaction = context.Database.BeginTransaction();
        if (context.Instruments.SingleOrDefault(i => i.Id == id) is not { } row)
        {
            return Unknown();
        }

        if (context.InstrumentRecords.Any(r => r.Id == record))
        {
            return Reading<StoredInstrument>.Of(Find(context, id)!);
        }

        if (Wrong(context, id, details) is { } problem)
        {
            return Reading<StoredInstrument>.Failed(problem);
        }

        Told(row, details);
        return Keep(context, transaction, id, new NewInstrumentRecord(record, InstrumentRecordKind.Details, day, null, Body(details), null), by);
    }

    /// <summary>Adds a record, reckoned as it is taken. The same identifier is taken once. A profile becomes the balancer's profile.</summary>
    /// <param name="id">The instrument.</param>
    /// <param name="record">What was typed.</param>
    /// <param name="day">The workshop's date: nothing is recorded of a day to come.</param>
    /// <param name="by">Who records, and when.</param>
    /// <returns>The instrument with the record, or the problem with its place.</returns>
    public Reading<StoredInstrument> Record(Guid id, NewInstrumentRecord record, DateOnly day, Recorder by)
    {
        ArgumentNullException.ThrowIfNull(record);
        ArgumentNullException.ThrowIfNull(by);
        using var context = _file.Context();
        using var transaction = context.Database.BeginTransaction();
        if (context.Instruments.SingleOrDefault(i => i.Id == id) is not { } row)
        {
            return Unknown();
        }

        if (context.InstrumentRecords.AsNoTracking().SingleOrDefault(r => r.Id == record.Id) is { } there)
        {
            return there.InstrumentId == id
                ? Reading<StoredInstrument>.Of(Find(context, id)!)
                : Reading<StoredInstrument>.Failed(new Problem("id", "record-id-taken", "This identifier stands for a record of another instrument."));
        }

        var kind = InstrumentWords.KindOf(row.Kind) ?? InstrumentKind.Other;
        if (Wrong(context, id, kind, record, day) is { } problem)
        {
            return Reading<StoredInstrument>.Failed(problem);
        }

        if (record.Kind == InstrumentRecordKind.Profile)
        {
            row.Profile = record.Body;
        }

        return Keep(context, transaction, id, record, by, kind);
    }

    private static Problem? Wrong(StoreContext context, Guid id, InstrumentKind kind, NewInstrumentRecord record, DateOnly day)
    {
        var fits = record.Kind == InstrumentRecordKind.Profile ? kind is InstrumentKind.Balancer or InstrumentKind.TorqueWrench : InstrumentRecords.Offered(kind).Contains(record.Kind);
        if (!fits)
        {
            return new Problem("kind", "not-offered", $"A {record.Kind.Word()} is not recorded of a {kind.Word()} here.");
        }

        if (record.On > day)
        {
            return new Problem("on", "out-of-range", $"{Instrument.Day(record.On)} is still to come; a record is of today or before.");
        }

        if (record.Due is { } due && due <= record.On)
        {
            return new Problem("due", "out-of-range", "The next check is due after this one.");
        }

        if (record.Supersedes is { } old)
        {
            var there = context.InstrumentRecords.AsNoTracking().SingleOrDefault(r => r.Id == old && r.InstrumentId == id);
            if (there is null || there.Kind is "details" or "profile" || context.InstrumentRecords.Any(r => r.Supersedes == old))
            {
                return new Problem("supersedes", "record-unknown", "Choose a check or note of this instrument in whose place none stands yet.");
            }
        }

        return null;
    }

    private static Problem? Wrong(StoreContext context, Guid id, InstrumentDetails details)
    {
        foreach (var (where, text, least) in new[] { ("name", details.Name, 1), ("identification", details.Identification ?? "", 0) })
        {
            if (text.Length < least || text.Length > MostCharacters || text.Any(char.IsControl) || text != text.Trim())
            {
                return new Problem(where, "name-unreadable", $"Here stand {least} to {MostCharacters} characters on one line.");
            }
        }

        if (details.OutOfUseFrom < details.InUseFrom)
        {
            return new Problem("outOfUseFrom", "out-of-range", "It cannot go out of use before it came into use.");
        }

        // Names are compared here and not in SQL: SQLite folds the case of ASCII only.
        var taken = details.OutOfUseFrom is null && context.Instruments.AsNoTracking().Where(i => i.Id != id && i.OutOfUseFrom == null).Select(i => i.Name).AsEnumerable()
            .Any(n => string.Equals(n, details.Name, StringComparison.OrdinalIgnoreCase));
        return taken ? new Problem("name", "name-taken", $"Another instrument in use is called {details.Name}; the bay chooses by name, so each has its own.") : null;
    }

    private static Reading<StoredInstrument> Keep(StoreContext context, Microsoft.EntityFrameworkCore.Storage.IDbContextTransaction transaction, Guid id, NewInstrumentRecord record, Recorder by, InstrumentKind kind = InstrumentKind.Other)
    {
        var reckoned = InstrumentRecords.Reckon(record.Kind, record.Body, kind);
        if (!reckoned.IsRead)
        {
            return Reading<StoredInstrument>.Failed(reckoned.Problem!);
        }

        context.InstrumentRecords.Add(new InstrumentRecordRow
        {
            Id = record.Id,
            InstrumentId = id,
            Kind = record.Kind.Word(),
            On = record.On,
            Due = record.Kind.IsCheck() ? record.Due : null,
            Body = record.Body,
            Operation = reckoned.Value.Operation,
            Answer = reckoned.Value.Answer?.ToJsonString(Plain),
            Figures = string.Join('\n', reckoned.Value.Figures),
            Verdict = reckoned.Value.Verdict?.Word(),
            EngineVersion = EngineVersion.Engine,
            TableEdition = EngineVersion.Tables,
            By = by.Name,
            Role = by.Role.Word(),
            At = by.At,
            Supersedes = record.Supersedes,
        });
        context.SaveChanges();
        transaction.Commit();
        return Reading<StoredInstrument>.Of(Find(context, id)!);
    }

    private static InstrumentRow Told(InstrumentRow row, InstrumentDetails details)
    {
        (row.Name, row.Identification, row.InUseFrom, row.OutOfUseFrom) = (details.Name, details.Identification, details.InUseFrom, details.OutOfUseFrom);
        return row;
    }

    private static string Body(InstrumentDetails details) => new JsonObject
    {
        ["name"] = details.Name,
        ["identification"] = details.Identification,
        ["inUseFrom"] = InstrumentJson.Day(details.InUseFrom),
        ["outOfUseFrom"] = InstrumentJson.Day(details.OutOfUseFrom),
    }.ToJsonString(Plain);

    private static StoredInstrument? Find(StoreContext context, Guid id) =>
        context.Instruments.AsNoTracking().SingleOrDefault(i => i.Id == id) is { } row
            ? Of(row, context.InstrumentRecords.AsNoTracking().Where(r => r.InstrumentId == id).OrderBy(r => r.Sequence).AsEnumerable())
            : null;

    private static StoredInstrument Of(InstrumentRow row, IEnumerable<InstrumentRecordRow> rows)
    {
        List<InstrumentRecord> records = [.. rows.Select(Of)];
        var superseded = records.Select(r => r.Supersedes).OfType<Guid>().ToHashSet();
        List<InstrumentRecord> counting = [.. records.Where(r => r.Verdict is not null && !superseded.Contains(r.Id)).OrderBy(r => r.On).ThenBy(r => r.Sequence)];
        var instrument = new Instrument(
            row.Id, InstrumentWords.KindOf(row.Kind) ?? InstrumentKind.Other, row.Name, row.Identification, row.InUseFrom, row.OutOfUseFrom,
            row.Profile is null ? null : JsonNode.Parse(row.Profile) as JsonObject)
        {
            Checks = [.. counting.Select(r => new InstrumentCheck(r.On, r.Verdict!.Value, r.Due) { Deviations = Deviations(r) })],
            Repeatability = counting.Where(r => r.Answer is not null)
                .Select(r => InstrumentRepeatability.Of(r.On, JsonNode.Parse(r.Answer!) as JsonObject)).LastOrDefault(r => r is not null),
        };
        return new StoredInstrument(instrument, records);
    }

    /// <summary>What a check found at its points, as its answer holds it.</summary>
    private static IReadOnlyList<double> Deviations(InstrumentRecord record) =>
        record.Answer is { } answer && (JsonNode.Parse(answer) as JsonObject)?["points"] is JsonArray { Count: > 0 } points
            ? [.. points.OfType<JsonObject>().Select(p => p["deviationPercent"]).OfType<JsonValue>().Select(v => v.GetValue<double>())]
            : [];

    private static InstrumentRecord Of(InstrumentRecordRow row) => new(
        row.Id, row.Sequence, InstrumentWords.RecordKindOf(row.Kind) ?? InstrumentRecordKind.Note, row.On, row.Due, row.Body, row.Operation, row.Answer,
        row.Figures.Length == 0 ? [] : row.Figures.Split('\n'), InstrumentVerdictWords.Of(row.Verdict), row.EngineVersion, row.TableEdition, row.By,
        RoleWords.Of(row.Role) ?? Role.Trainee, row.At, row.Supersedes);

    private static Reading<StoredInstrument> Unknown() =>
        Reading<StoredInstrument>.Failed(new Problem("instrument", "instrument-unknown", "There is no such instrument in this workshop."));
}
