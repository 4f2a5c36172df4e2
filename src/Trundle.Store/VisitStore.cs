using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Trundle.Engine;
using Trundle.Engine.Findings;
using Trundle.Measures;
using Trundle.Store.Database;
using Trundle.Visits.Bay;

namespace Trundle.Store;

/// <summary>Visits and their entries. Entries are added; none is ever changed or removed, but that a contact may be erased.</summary>
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

    /// <summary>Every visit whose vehicle is in the workshop, each with the number of its newest entry, oldest first.</summary>
    public IReadOnlyList<(Guid Visit, long Last)> Tips()
    {
        using var context = _file.Context();
        return [.. context.Visits.AsNoTracking().Where(v => v.HandedBackAt == null).OrderBy(v => v.OpenedAt).ThenBy(v => v.Number)
            .Select(v => new { v.Id, Last = context.Entries.Where(e => e.VisitId == v.Id).Max(e => (long?)e.Sequence) ?? 0 }).AsEnumerable().Select(t => (t.Id, t.Last))];
    }

    /// <summary>Visits that were handed back, newest first, with their entries.</summary>
    public IReadOnlyList<StoredVisit> HandedBack(int skip, int take)
    {
        using var context = _file.Context();
        var rows = context.Visits.AsNoTracking().Where(v => v.HandedBackAt != null)
            .OrderByDescending(v => v.HandedBackAt).ThenByDescending(v => v.Number).Skip(skip).Take(take).ToList();
        return [.. rows.Select(row => new StoredVisit(Heading(row), EntriesOf(context, row.Id)))];
    }

    /// <summary>Visits that were handed back since a time with fixings finally tightened, newest first: those that leave a re-torque due.</summary>
    public IReadOnlyList<StoredVisit> TightenedSince(DateTimeOffset since)
    {
        using var context = _file.Context();
        var rows = context.Visits.AsNoTracking().Where(v => v.HandedBackAt != null && v.HandedBackAt >= since
                && context.Entries.Any(e => e.VisitId == v.Id && e.Field.StartsWith("work.steps.") && e.Field.Contains(".final-torque")))
            .OrderByDescending(v => v.HandedBackAt).ThenByDescending(v => v.Number).ToList();
        return [.. rows.Select(row => new StoredVisit(Heading(row), EntriesOf(context, row.Id)))];
    }

    /// <summary>Visits of the same vehicle that were handed back before a visit was opened, newest first; a vehicle is known by its VIN as typed.</summary>
    /// <param name="visit">The visit.</param>
    /// <param name="most">So many at most.</param>
    public IReadOnlyList<StoredVisit> Before(StoredVisit visit, int most)
    {
        ArgumentNullException.ThrowIfNull(visit);
        var (id, opened, vin) = (visit.Heading.Id, visit.Heading.OpenedAt, visit.Fields["vehicle.vin"]);
        if (vin is null)
        {
            return [];
        }

        using var context = _file.Context();
        var rows = context.Visits.AsNoTracking().Where(v => v.Id != id && v.HandedBackAt != null && v.OpenedAt < opened && context.Entries.Any(e => e.VisitId == v.Id && e.Field == "vehicle.vin" && e.Typed == vin))
            .OrderByDescending(v => v.OpenedAt).ToList();
        return [.. rows.Select(row => new StoredVisit(Heading(row), EntriesOf(context, row.Id))).Where(v => v.Fields["vehicle.vin"] == vin).Take(most)];
    }

    /// <summary>How many fixings were recorded as set, at a stage or finally, on visits that used a torque wrench, since a time.</summary>
    public int ClicksOf(string wrench, DateTimeOffset since)
    {
        using var context = _file.Context();
        var visits = context.Entries.AsNoTracking().Where(e => e.Field == "work.instruments.torqueWrench" && e.Typed == wrench).Select(e => e.VisitId).Distinct();
        return context.Entries.AsNoTracking()
            .Where(e => visits.Contains(e.VisitId) && e.Typed != "" && e.At >= since
                && ((e.Field.StartsWith("work.steps.") && e.Field.Contains(".final-torque."))
                    || (e.Field.StartsWith("work.tightening.") && e.Field.Contains(".torques.") && !e.Field.EndsWith(".wrench"))))
            .Select(e => new { e.VisitId, e.Field }).Distinct().Count();
    }

    /// <summary>
    /// The last visit of the same vehicle before this one that left fixings finally tightened, or null. A vehicle is known by its VIN as typed, and
    /// by its name where one of the two visits has no VIN.
    /// </summary>
    public StoredVisit? TightenedBefore(StoredVisit visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        var (id, opened, vin, name) = (visit.Heading.Id, visit.Heading.OpenedAt, visit.Fields["vehicle.vin"], visit.Fields["vehicle.name"]);
        if (vin is null && name is null)
        {
            return null;
        }

        using var context = _file.Context();
        var rows = context.Visits.AsNoTracking().Where(v => v.Id != id && v.HandedBackAt != null && v.HandedBackAt <= opened
                && context.Entries.Any(e => e.VisitId == v.Id && ((e.Field == "vehicle.vin" && e.Typed == vin) || (e.Field == "vehicle.name" && e.Typed == name)))
                && context.Entries.Any(e => e.VisitId == v.Id && e.Field.StartsWith("work.steps.") && e.Field.Contains(".final-torque")))
            .OrderByDescending(v => v.HandedBackAt).Take(10).ToList();
        return rows.Select(row => new StoredVisit(Heading(row), EntriesOf(context, row.Id)))
            .FirstOrDefault(v => v.Fields["vehicle.vin"] is { } other && vin is not null ? other == vin : v.Fields["vehicle.name"] == name);
    }

    /// <summary>
    /// Takes a batch of entries in one transaction that is on the disk when this returns. An identifier that was taken before is not taken again.
    /// An entry that may not stand is refused by itself, and the others are taken.
    /// </summary>
    /// <param name="visit">The visit.</param>
    /// <param name="entries">In the order in which they were entered. The role that counts is the one the store knows of the person.</param>
    /// <param name="now">The time. An entry from a clock that runs ahead is taken at this time.</param>
    /// <param name="refused">Says of an entry why it may not come from where it came from; null where any may.</param>
    /// <returns>What became of each, or the problem with the whole batch.</returns>
    public Reading<TakenEntries> Append(Guid visit, IReadOnlyList<Entry> entries, DateTimeOffset now, Func<Entry, Problem?>? refused = null)
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

        var batch = new Batch(context, row, _file.AtHand, now, refused);
        foreach (var entry in entries)
        {
            batch.Take(entry);
        }

        var taken = batch.Finish();
        context.SaveChanges();
        transaction.Commit();
        return Reading<TakenEntries>.Of(taken());
    }

    /// <summary>
    /// Erases whom to call, in every entry of the visit that ever held it, so that it stands nowhere in the store any more. That it was erased, when
    /// and by whom is kept as an entry. Copies and backups made before are not reached.
    /// </summary>
    /// <returns>How many entries held it, or the problem.</returns>
    public Reading<int> EraseContact(Guid visit, string by, Role role, DateTimeOffset now)
    {
        if (!role.May(Right.EraseContact))
        {
            return Reading<int>.Failed(new Problem("by", "may-not-erase", "A trainee may not erase it; somebody else of the workshop does."));
        }

        int erased;
        using (var context = _file.Context())
        {
            using var transaction = context.Database.BeginTransaction();
            var rows = context.Entries.Where(e => e.VisitId == visit && e.Field == EntryGate.ContactField && e.Typed != "").ToList();
            erased = rows.Count;
            if (erased == 0)
            {
                return Reading<int>.Failed(new Problem(EntryGate.ContactField, "nothing-to-erase", "Nobody to call is entered on this visit."));
            }

            foreach (var row in rows)
            {
                (row.Typed, row.Outcome, row.Problem) = ("", "erased", null);
            }

            var last = context.Entries.AsNoTracking().Where(e => e.VisitId == visit && e.Field == EntryGate.ContactField).AsEnumerable().MaxBy(e => (e.At, e.Id))!;
            context.Entries.Add(new EntryRow
            {
                Id = Guid.CreateVersion7(now), VisitId = visit, Field = EntryGate.ContactField, Typed = "", Outcome = "erased", EngineVersion = EngineVersion.Engine, TableEdition = EngineVersion.Tables,
                By = by, Role = role.Word(), At = now > last.At ? now : last.At.AddMilliseconds(1), ReceivedAt = now, Supersedes = last.Id,
            });
            context.SaveChanges();
            transaction.Commit();
        }

        _file.AtHand.Forget(visit);
        // What the log beside the file still holds of it goes too.
        _file.Truncate();
        return Reading<int>.Of(erased);
    }

    internal static VisitHeading Heading(VisitRow row) => new(row.Id, row.Number, row.OpenedAt, row.OpenedBy, row.HandedBackAt);

    internal static IReadOnlyList<StoredEntry> EntriesOf(StoreContext context, Guid visit) =>
        [.. context.Entries.AsNoTracking().Where(e => e.VisitId == visit).OrderBy(e => e.Sequence).AsEnumerable().Select(Of)];

    internal static StoredEntry Of(EntryRow row) => new(
        new Entry(row.Id, row.Field, row.Typed, row.By, RoleWords.Of(row.Role) ?? Role.Trainee, row.At)
        {
            After = row.After is { } after ? [.. after.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Guid.Parse)] : null,
        },
        row.Sequence,
        row.SiValue is { } si ? new Amount(si, row.SiUnit ?? "", row.Typed) : null,
        row.Outcome, row.Problem, row.EngineVersion, row.TableEdition, row.ReceivedAt, row.Supersedes);
}
