using Microsoft.EntityFrameworkCore;
using Trundle.Store.Database;
using Trundle.Visits.Bay;

namespace Trundle.Store;

/// <summary>
/// The entries of the visits that are worked on, kept in memory so that each new one need not read all before it. Rows are only added, so what is missing are the
/// rows with higher numbers; where a row was changed, as when a contact is erased, the visit is forgotten here.
/// </summary>
internal sealed class EntriesAtHand
{
    /// <summary>As many visits as a large workshop has open at once: some tens of megabytes at most.</summary>
    private const int Most = 200;

    private readonly Lock _lock = new();
    private readonly Dictionary<Guid, Held> _visits = [];
    private long _uses;

    private sealed class Held
    {
        public long Last { get; set; }

        public List<Entry> Entries { get; } = [];

        public VisitFields Fields { get; set; } = VisitFields.Empty;

        public long Used { get; set; }
    }

    /// <summary>All entries of a visit in the store's order, and its fields. It is asked inside a transaction that began with the write lock: what it reads is committed.</summary>
    public (List<Entry> Entries, VisitFields Fields) Of(StoreContext context, Guid visit)
    {
        lock (_lock)
        {
            if (!_visits.TryGetValue(visit, out var held))
            {
                if (_visits.Count >= Most)
                {
                    _visits.Remove(_visits.MinBy(v => v.Value.Used).Key);
                }

                _visits[visit] = held = new Held();
            }

            held.Used = ++_uses;
            var last = held.Last;
            var more = context.Entries.AsNoTracking().Where(e => e.VisitId == visit && e.Sequence > last).OrderBy(e => e.Sequence).ToList();
            if (more.Count > 0)
            {
                List<Entry> added = [.. more.Select(row => VisitStore.Of(row).Entry)];
                held.Fields = held.Entries.Count == 0 ? VisitFields.Of(added) : held.Fields.With(added);
                held.Entries.AddRange(added);
                held.Last = more[^1].Sequence;
            }

            return ([.. held.Entries], held.Fields);
        }
    }

    /// <summary>Forgets a visit whose rows were changed.</summary>
    public void Forget(Guid visit)
    {
        lock (_lock)
        {
            _visits.Remove(visit);
        }
    }
}
