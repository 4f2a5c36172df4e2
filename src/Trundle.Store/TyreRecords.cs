using Microsoft.EntityFrameworkCore;
using Trundle.Store.Database;
using Trundle.Visits.Bay;
using Trundle.Visits.Keeping;

namespace Trundle.Store;

/// <summary>Every TIN that was ever recorded: on visits, also where something else was entered since, in sets, and in registrations.</summary>
public sealed class TyreRecords
{
    private const string TinEnd = ".tyre.tin";

    private readonly StoreFile _file;

    internal TyreRecords(StoreFile file) => _file = file;

    /// <summary>All of them, oldest first.</summary>
    public RecordedTyres All()
    {
        using var context = _file.Context();
        var sets = KeptRecords.AllIn(context, WheelSetStore.Kind);
        var visits = context.Visits.AsNoTracking().OrderBy(v => v.OpenedAt).ThenBy(v => v.Number).ToList();
        var entries = context.Entries.AsNoTracking()
            .Where(e => e.Field.EndsWith(TinEnd) || e.Field.EndsWith(".tyre.condemned") || e.Field.EndsWith(".tyre.marking") || e.Field.StartsWith("work.renewed.") || e.Field == "vehicle.name")
            .OrderBy(e => e.Sequence).AsEnumerable().ToLookup(e => e.VisitId);
        var tyres = new List<RecordedTyre>();
        var without = 0;
        foreach (var visit in visits)
        {
            var typed = entries[visit.Id].Select(e => VisitStore.Of(e).Entry).ToList();
            var fields = VisitFields.Of(typed);
            without += fields.Newest.Count(e => e.Typed.Length > 0 && e.Field.EndsWith(".tyre.marking", StringComparison.Ordinal) && fields[e.Field[..^"marking".Length] + "tin"] is null);
            tyres.AddRange(typed.Where(e => e.Field.EndsWith(TinEnd, StringComparison.Ordinal) && CondemnedNames.Key(e.Typed).Length > 0)
                .GroupBy(e => (e.Field, Key: CondemnedNames.Key(e.Typed)))
                .Select(group => OfVisit(visit, group.Last(), fields, sets)));
        }

        tyres.AddRange(sets.SelectMany(OfSet));
        tyres.AddRange(KeptRecords.AllIn(context, RegistrationStore.Kind).SelectMany(OfRegistration));
        return new RecordedTyres([.. tyres.OrderBy(t => t.On)], without);
    }

    private static RecordedTyre OfVisit(VisitRow visit, Entry entry, VisitFields fields, IReadOnlyList<KeptThing> sets)
    {
        var names = entry.Field.Split('.');
        var (place, position) = (string.Join('.', names[..^2]), names[^3]);
        var renewed = names[0] == "work";
        var now = fields[entry.Field];
        var superseded = now is null || CondemnedNames.Key(now) != CondemnedNames.Key(entry.Typed);
        var set = renewed ? null : sets.FirstOrDefault(s => s.Visit == visit.Id && WheelSet.Of(s) is { } stored && stored.Positions.Contains(position));
        var (left, fate) = superseded ? (false, now is null ? "the entry was emptied since" : $"'{now}' was entered in its place since")
            : fields[$"{place}.tyre.condemned"] == "true" ? (true, "condemned on this visit")
            : set is not null ? (true, $"went into storage as set {set.Number}")
            : renewed ? (false, "put on this visit; not known to have left the vehicle")
            : fields.Under($"work.renewed.{position}.tyre").Any() ? (true, "taken off on this visit; another tyre was put on its wheel")
            : (false, "came in on this visit; not known to have left the vehicle");
        return new RecordedTyre(entry.Typed, "visit", visit.Id, visit.Number, fields["vehicle.name"], renewed ? $"{position}, new" : position, DateOnly.FromDateTime(entry.At.UtcDateTime), superseded, left, fate);
    }

    private static IEnumerable<RecordedTyre> OfSet(KeptThing kept)
    {
        if (WheelSet.Of(kept) is not { } set)
        {
            yield break;
        }

        var stands = set.OutOn is { } day ? $"given out on {Day(day)}: {set.OutTo}" : $"in storage at {set.Place}";
        var seen = new HashSet<(string, string)>();
        foreach (var record in kept.Records.Reverse().Where(r => r.Kind is SetRecords.TakenIn or SetRecords.Corrected))
        {
            foreach (var entry in SetDescription.Read(record.Body).Match(d => d.Fields.Newest, _ => []).Where(e => e.Field.EndsWith(TinEnd, StringComparison.Ordinal) && CondemnedNames.Key(e.Typed).Length > 0))
            {
                if (seen.Add((entry.Field, CondemnedNames.Key(entry.Typed))))
                {
                    var now = set.Description.Fields[entry.Field];
                    var superseded = now is null || CondemnedNames.Key(now) != CondemnedNames.Key(entry.Typed);
                    yield return new RecordedTyre(entry.Typed, WheelSetStore.Kind, kept.Id, kept.Number, set.Vehicle, entry.Field.Split('.')[1], record.On, superseded, !superseded && set.OutOn is null,
                        superseded ? "something else was entered in its place since" : stands);
                }
            }
        }
    }

    private static IEnumerable<RecordedTyre> OfRegistration(KeptThing kept)
    {
        var registration = Registration.Of(kept);
        var seen = new HashSet<string>();
        foreach (var record in kept.Records.Reverse().Where(r => r.Kind is RegistrationRecords.Sold or RegistrationRecords.Corrected))
        {
            foreach (var tyre in Sale.Read(record.Body, null).Match(s => s.Tyres, _ => []).Where(t => seen.Add(CondemnedNames.Key(t.Tin))))
            {
                var superseded = registration?.Sale.Tyres.Any(t => CondemnedNames.Key(t.Tin) == CondemnedNames.Key(tyre.Tin)) != true;
                yield return new RecordedTyre(tyre.Tin, RegistrationStore.Kind, kept.Id, kept.Number, null, null, record.On, superseded, false,
                    superseded ? "something else was entered in its place since" : $"sold; {registration!.State}");
            }
        }
    }

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture);
}
