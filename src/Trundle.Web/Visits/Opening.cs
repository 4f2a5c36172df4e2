using System.Globalization;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;

namespace Trundle.Web.Visits;

/// <summary>Opens a visit: its heading, the workshop's own rules, its number and date as entries, and whatever was entered with them.</summary>
internal static class Opening
{
    public static Reading<StoredVisit> Open(WorkshopStore store, WorkshopRules rules, TimeProvider clock, Guid id, string? by, IReadOnlyList<Entry> entries)
    {
        var person = store.People.All().FirstOrDefault(p => string.Equals(p.Name, by, StringComparison.OrdinalIgnoreCase));
        if (person is null)
        {
            return Reading<StoredVisit>.Failed(new Problem("by", "person-unknown", "Choose who enters: one of the people of this workshop."));
        }

        var now = clock.GetUtcNow();
        var day = DateOnly.FromDateTime(clock.GetLocalNow().DateTime);
        var heading = store.Visits.Open(id, person.Name, now, day);
        var there = store.Visits.Find(id)!;
        var first = new List<Entry>();
        if (there.Fields[EntryGate.NumberField] is null)
        {
            // Before the number: once a visit has it, the rules by which it is judged and the procedure by which it is worked are no longer entered.
            foreach (var (field, typed) in rules.Fields.Concat(store.Procedures.ForAVisit()))
            {
                Add(field, typed);
            }
        }

        Add(EntryGate.NumberField, heading.Number);
        Add("date", day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        return store.Visits.Append(id, [.. first, .. entries], now).Then(taken => taken.Refused.Count == 0
            ? Reading<StoredVisit>.Of(store.Visits.Find(id)!)
            : Reading<StoredVisit>.Failed(taken.Refused[0].Problem));

        void Add(string field, string typed)
        {
            if (there.Fields[field] is null)
            {
                first.Add(new Entry(Guid.CreateVersion7(now), field, typed, person.Name, person.Role, now));
            }
        }
    }
}
