using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Trundle.Measures;
using Trundle.Store.Database;
using Trundle.Visits.Bay;
using Trundle.Visits.Keeping;

namespace Trundle.Store;

/// <summary>A record to be kept.</summary>
/// <param name="Id">Made with the form, so that it is taken once.</param>
/// <param name="Kind">Its word.</param>
/// <param name="On">The day it is about.</param>
/// <param name="Body">As typed, as JSON.</param>
public sealed record NewKeptRecord(Guid Id, string Kind, DateOnly On, string Body);

/// <summary>Things of one kind with their records: opened with a first record, then added to.</summary>
internal sealed class KeptRecords(StoreFile file, string kind, string prefix)
{
    public IReadOnlyList<KeptThing> All()
    {
        using var context = file.Context();
        return AllIn(context, kind);
    }

    public KeptThing? Find(Guid id)
    {
        using var context = file.Context();
        return Find(context, id);
    }

    /// <summary>Opens a thing with its first record, and gives it its number of the year. The same identifier opens it once.</summary>
    public Reading<KeptThing> Open(Guid id, Guid? visit, NewKeptRecord first, DateOnly day, Recorder by)
    {
        using var context = file.Context();
        using var transaction = context.Database.BeginTransaction();
        if (Find(context, id) is { } there)
        {
            return Reading<KeptThing>.Of(there);
        }

        if (Wrong(context, first, day) is { } problem)
        {
            return Reading<KeptThing>.Failed(problem);
        }

        var start = string.Create(CultureInfo.InvariantCulture, $"{prefix}{day.Year % 100:00}-");
        var last = context.Kept.Where(k => k.Kind == kind && k.Number.StartsWith(start)).Select(k => k.Number).AsEnumerable()
            .Select(n => int.Parse(n.AsSpan(start.Length), CultureInfo.InvariantCulture)).DefaultIfEmpty(0).Max();
        context.Kept.Add(new KeptRow { Id = id, Kind = kind, Number = string.Create(CultureInfo.InvariantCulture, $"{start}{last + 1}"), VisitId = visit });
        context.KeptRecords.Add(Row(id, first, by));
        context.SaveChanges();
        transaction.Commit();
        return Reading<KeptThing>.Of(Find(context, id)!);
    }

    /// <summary>Adds a record. The same identifier is taken once.</summary>
    /// <param name="id">The thing.</param>
    /// <param name="record">The record.</param>
    /// <param name="day">The workshop's date.</param>
    /// <param name="by">Who records.</param>
    /// <param name="refused">What this thing may not have added now, or null.</param>
    /// <param name="earlier">What becomes of its earlier records in the same transaction; nothing where null.</param>
    public Reading<KeptThing> Add(Guid id, NewKeptRecord record, DateOnly day, Recorder by, Func<KeptThing, Problem?> refused, Action<KeptRecordRow>? earlier = null)
    {
        var added = Added(id, record, day, by, refused, earlier);
        if (added.IsRead && earlier is not null)
        {
            // What the log beside the file still holds of it goes too.
            file.Truncate();
        }

        return added;
    }

    private Reading<KeptThing> Added(Guid id, NewKeptRecord record, DateOnly day, Recorder by, Func<KeptThing, Problem?> refused, Action<KeptRecordRow>? earlier)
    {
        using var context = file.Context();
        using var transaction = context.Database.BeginTransaction();
        if (Find(context, id) is not { } kept)
        {
            return Reading<KeptThing>.Failed(new Problem(kind, $"{kind}-unknown", $"There is no such {kind} in this workshop."));
        }

        if (kept.Records.Any(r => r.Id == record.Id))
        {
            return Reading<KeptThing>.Of(kept);
        }

        if ((Wrong(context, record, day) ?? refused(kept)) is { } problem)
        {
            return Reading<KeptThing>.Failed(problem);
        }

        if (earlier is not null)
        {
            foreach (var row in context.KeptRecords.Where(r => r.KeptId == id).ToList())
            {
                earlier(row);
            }
        }

        context.KeptRecords.Add(Row(id, record, by));
        context.SaveChanges();
        transaction.Commit();
        return Reading<KeptThing>.Of(Find(context, id)!);
    }

    /// <summary>Every thing of a kind, in the order of their first records.</summary>
    public static IReadOnlyList<KeptThing> AllIn(StoreContext context, string kind)
    {
        var records = context.KeptRecords.AsNoTracking().OrderBy(r => r.Sequence).AsEnumerable().ToLookup(r => r.KeptId);
        return [.. context.Kept.AsNoTracking().Where(k => k.Kind == kind).AsEnumerable().OrderBy(k => records[k.Id].First().Sequence).Select(k => Of(k, records[k.Id]))];
    }

    private static Problem? Wrong(StoreContext context, NewKeptRecord record, DateOnly day) =>
        record.On > day ? new Problem("on", "out-of-range", string.Create(CultureInfo.InvariantCulture, $"{record.On:yyyy-MM-dd} is still to come; a record is of today or before."))
        : context.KeptRecords.Any(r => r.Id == record.Id) ? new Problem("id", "record-id-taken", "This identifier stands for a record of another thing.")
        : null;

    private KeptThing? Find(StoreContext context, Guid id) => context.Kept.AsNoTracking().SingleOrDefault(k => k.Id == id && k.Kind == kind) is { } row
        ? Of(row, context.KeptRecords.AsNoTracking().Where(r => r.KeptId == id).OrderBy(r => r.Sequence).AsEnumerable())
        : null;

    private static KeptRecordRow Row(Guid id, NewKeptRecord record, Recorder by) => new()
    {
        Id = record.Id,
        KeptId = id,
        Kind = record.Kind,
        On = record.On,
        Body = record.Body,
        By = by.Name,
        Role = by.Role.Word(),
        At = by.At,
    };

    private static KeptThing Of(KeptRow row, IEnumerable<KeptRecordRow> records) => new(
        row.Id, row.Number, row.VisitId,
        [.. records.Select(r => new KeptRecord(r.Id, r.Kind, r.On, r.Body, r.By, RoleWords.Of(r.Role) ?? Role.Trainee, r.At))]);
}
