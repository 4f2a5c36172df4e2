using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Trundle.Engine.Findings;
using Trundle.Measures;
using Trundle.Store.Database;
using Trundle.Visits.Bay;

namespace Trundle.Store;

/// <summary>Visits and their entries. Entries are added; none is ever changed or removed.</summary>
public sealed class VisitStore
{
    /// <summary>The most entries in one batch.</summary>
    public const int MostInBatch = 500;

    private readonly StoreFile _file;

    internal VisitStore(StoreFile file) => _file = file;

    /// <summary>Opens a visit. The same identifier opens it once: asked again, the answer is the visit that is there.</summary>
    /// <param name="id">Made where it is opened.</param>
    /// <param name="by">The name of who opens it.</param>
    /// <param name="now">The time.</param>
    /// <param name="day">The workshop's date, which its number begins with.</param>
    public VisitHeading Open(Guid id, string by, DateTimeOffset now, DateOnly day)
    {
        using var context = _file.Context();
        using var transaction = context.Database.BeginTransaction();
        if (context.Visits.AsNoTracking().SingleOrDefault(v => v.Id == id) is { } there)
        {
            return Heading(there);
        }

        var prefix = day.ToString("yy-MMdd-", CultureInfo.InvariantCulture);
        var taken = context.Visits.Where(v => v.Number.StartsWith(prefix)).Select(v => v.Number).AsEnumerable()
            .Select(n => int.Parse(n.AsSpan(prefix.Length), CultureInfo.InvariantCulture)).DefaultIfEmpty(0).Max();
        var row = new VisitRow
        {
            Id = id,
            Number = string.Create(CultureInfo.InvariantCulture, $"{prefix}{taken + 1}"),
            OpenedAt = now,
            OpenedBy = by,
        };
        context.Visits.Add(row);
        context.SaveChanges();
        transaction.Commit();
        return Heading(row);
    }

    /// <summary>A visit with its entries, or null.</summary>
    public StoredVisit? Find(Guid id)
    {
        using var context = _file.Context();
        return context.Visits.AsNoTracking().SingleOrDefault(v => v.Id == id) is { } row ? new StoredVisit(Heading(row), EntriesOf(context, id)) : null;
    }

    /// <summary>Every visit whose vehicle is in the workshop, with its entries, oldest first.</summary>
    public IReadOnlyList<StoredVisit> InTheWorkshop()
    {
        using var context = _file.Context();
        var rows = context.Visits.AsNoTracking().Where(v => v.HandedBackAt == null).OrderBy(v => v.OpenedAt).ThenBy(v => v.Number).ToList();
        return [.. rows.Select(row => new StoredVisit(Heading(row), EntriesOf(context, row.Id)))];
    }

    /// <summary>Visits that were handed back, newest first, with their entries.</summary>
    public IReadOnlyList<StoredVisit> HandedBack(int skip, int take)
    {
        using var context = _file.Context();
        var rows = context.Visits.AsNoTracking().Where(v => v.HandedBackAt != null)
            .OrderByDescending(v => v.HandedBackAt).ThenByDescending(v => v.Number).Skip(skip).Take(take).ToList();
        return [.. rows.Select(row => new StoredVisit(Heading(row), EntriesOf(context, row.Id)))];
    }

    /// <summary>
    /// Takes a batch of entries in one transaction that is on the disk when this returns. An identifier that was taken before is not taken again.
    /// An entry that may not stand is refused by itself, and the others are taken.
    /// </summary>
    /// <param name="visit">The visit.</param>
    /// <param name="entries">In the order in which they were entered. The role that counts is the one the store knows of the person.</param>
    /// <param name="now">The time. An entry from a clock that runs ahead is taken at this time.</param>
    /// <returns>What became of each, or the problem with the whole batch.</returns>
    public Reading<TakenEntries> Append(Guid visit, IReadOnlyList<Entry> entries, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(entries);
        if (entries.Count > MostInBatch)
        {
            return Reading<TakenEntries>.Failed(new Problem("entries", "too-many", string.Create(CultureInfo.InvariantCulture, $"There are {entries.Count} entries; send at most {MostInBatch} at a time.")));
        }

        using var context = _file.Context();
        // SQLite begins this with the write lock, so what is read below cannot change before the commit.
        using var transaction = context.Database.BeginTransaction();
        var row = context.Visits.SingleOrDefault(v => v.Id == visit);
        if (row is null)
        {
            return Reading<TakenEntries>.Failed(new Problem("visit", "visit-unknown", "There is no such visit in this workshop."));
        }

        var batch = new Batch(context, row, now);
        foreach (var entry in entries)
        {
            batch.Take(entry);
        }

        var taken = batch.Finish();
        context.SaveChanges();
        transaction.Commit();
        return Reading<TakenEntries>.Of(taken());
    }

    internal static VisitHeading Heading(VisitRow row) => new(row.Id, row.Number, row.OpenedAt, row.OpenedBy, row.HandedBackAt);

    internal static IReadOnlyList<StoredEntry> EntriesOf(StoreContext context, Guid visit) =>
        [.. context.Entries.AsNoTracking().Where(e => e.VisitId == visit).OrderBy(e => e.Sequence).AsEnumerable().Select(Of)];

    internal static StoredEntry Of(EntryRow row) => new(
        new Entry(row.Id, row.Field, row.Typed, row.By, RoleWords.Of(row.Role) ?? Role.Trainee, row.At),
        row.Sequence,
        row.SiValue is { } si ? new Amount(si, row.SiUnit ?? "", row.Typed) : null,
        row.Outcome, row.Problem, row.EngineVersion, row.TableEdition, row.ReceivedAt, row.Supersedes);
}
