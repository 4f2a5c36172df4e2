using Microsoft.EntityFrameworkCore;
using Trundle.Engine;
using Trundle.Measures;
using Trundle.Store.Database;
using Trundle.Visits.Bay;

namespace Trundle.Store;

/// <summary>One batch of entries on its way into the store, inside one transaction.</summary>
internal sealed class Batch
{
    private readonly StoreContext _context;
    private readonly VisitRow _visit;
    private readonly DateTimeOffset _now;
    private readonly Func<Entry, Problem?>? _refusal;
    private readonly Dictionary<string, Role> _people;
    private readonly List<EntryRow> _new = [];
    private readonly List<EntryRow> _made = [];
    private readonly List<Entry> _entries;
    private readonly List<Guid> _taken = [];
    private readonly List<Guid> _already = [];
    private readonly List<RefusedEntry> _refused = [];
    private VisitFields _fields;

    public Batch(StoreContext context, VisitRow visit, EntriesAtHand atHand, DateTimeOffset now, Func<Entry, Problem?>? refusal)
    {
        _refusal = refusal;
        _context = context;
        _visit = visit;
        _now = DateTimeOffset.FromUnixTimeMilliseconds(now.ToUnixTimeMilliseconds());
        _people = context.People.AsNoTracking().Where(p => !p.Left).AsEnumerable()
            .ToDictionary(p => p.Name, p => RoleWords.Of(p.Role) ?? Role.Trainee, StringComparer.OrdinalIgnoreCase);
        (_entries, _fields) = atHand.Of(context, visit.Id);
    }

    public void Take(Entry entry)
    {
        if (_context.Entries.AsNoTracking().SingleOrDefault(e => e.Id == entry.Id) is { } there)
        {
            if (there.VisitId == _visit.Id && there.Field == entry.Field && there.Typed == entry.Typed)
            {
                _already.Add(entry.Id);
            }
            else
            {
                Refuse(entry, "entry-id-taken", "This identifier stands for another entry already; an identifier is made once, for one entry.");
            }

            return;
        }

        if (_new.FirstOrDefault(e => e.Id == entry.Id) is { } twice)
        {
            if (twice.Field != entry.Field || twice.Typed != entry.Typed)
            {
                Refuse(entry, "entry-id-taken", "This identifier stands for another entry of the same batch.");
            }

            return;
        }

        if (!_people.TryGetValue(entry.By, out var role))
        {
            Refuse(entry, "person-unknown", $"'{NumberText.Shown(entry.By)}' is nobody of this workshop; choose who enters.");
            return;
        }

        if (_refusal?.Invoke(entry) is { } elsewhere)
        {
            _refused.Add(new RefusedEntry(entry.Id, elsewhere));
            return;
        }

        var at = DateTimeOffset.FromUnixTimeMilliseconds(Math.Min(entry.At.ToUnixTimeMilliseconds(), _now.ToUnixTimeMilliseconds()));
        var kept = entry with { Role = role, At = at };
        if (kept.Field == EntryGate.HandBackField)
        {
            Register();
        }

        if (kept.Field == EntryGate.HandBackField && kept.Typed.Length > 0 && Clashes.Of(_entries) is [{ } clash, ..])
        {
            _refused.Add(new RefusedEntry(entry.Id, EntryGate.Clashing(clash)));
            return;
        }

        if (EntryGate.Refusal(kept, _fields, problems => VisitStanding.Of(_fields, _visit.Id, CondemnedRegister.StandingIn(_context), problems)) is { } problem)
        {
            _refused.Add(new RefusedEntry(entry.Id, problem));
            return;
        }

        _taken.Add(entry.Id);
        Keep(kept);
    }

    /// <summary>Writes the outcomes down and brings what is derived from the entries up to date.</summary>
    /// <returns>The answer, to be asked for once the rows are saved and have their numbers.</returns>
    public Func<TakenEntries> Finish()
    {
        Register();
        var outcomes = Outcomes.Of(_fields, [.. _new.Select(e => e.Field)]);
        foreach (var row in _new)
        {
            (row.SiValue, row.SiUnit, row.Outcome, row.Problem) = outcomes.Of(row);
        }

        CondemnedRegister.Rebuild(_context, _visit.Id, _fields);
        StockStore.Rebuild(_context, _visit.Id, _fields);
        if (_fields.EntryOf(EntryGate.HandBackField) is { } handBack)
        {
            _visit.HandedBackAt ??= handBack.At;
        }
        else
        {
            _visit.HandedBackAt = null;
        }

        return () => new TakenEntries(_taken, _already, _refused, [.. _made.Select(VisitStore.Of)]);
    }

    /// <summary>A tyre or wheel that another visit condemned is condemned here too, whatever was typed.</summary>
    private void Register()
    {
        foreach (var (field, after) in CondemnedRegister.Missing(_context, _visit.Id, _fields))
        {
            var at = after is { } newest && newest >= _now ? newest.AddMilliseconds(1) : _now;
            _made.Add(Keep(new Entry(Guid.CreateVersion7(_now), field, "true", CondemnedRegister.Name, Role.Desk, at)));
        }

        // Earlier repairs are told once a tyre is named.
        if (_new.Exists(e => e.Field.EndsWith(".tyre.id", StringComparison.Ordinal)))
        {
            foreach (var (field, told) in RepairRegister.Missing(_context, _visit.Id, _fields))
            {
                _made.Add(Keep(new Entry(Guid.CreateVersion7(_now), field, told, RepairRegister.Name, Role.Desk, _now)));
            }
        }
    }

    private EntryRow Keep(Entry entry)
    {
        var row = new EntryRow
        {
            Id = entry.Id,
            VisitId = _visit.Id,
            Field = entry.Field,
            Typed = entry.Typed,
            Outcome = "read",
            EngineVersion = EngineVersion.Engine,
            TableEdition = EngineVersion.Tables,
            By = entry.By,
            Role = entry.Role.Word(),
            At = entry.At,
            ReceivedAt = _now,
            After = entry.After is { } after ? string.Join(' ', after.Select(a => a.ToString("D"))) : null,
            Supersedes = _entries.Where(e => e.Field == entry.Field && (e.At < entry.At || (e.At == entry.At && e.Id.CompareTo(entry.Id) < 0)))
                .OrderBy(e => e.At).ThenBy(e => e.Id).LastOrDefault()?.Id,
        };
        _context.Entries.Add(row);
        _new.Add(row);
        _entries.Add(entry);
        _fields = _fields.With([entry]);
        return row;
    }

    private void Refuse(Entry entry, string code, string message) =>
        _refused.Add(new RefusedEntry(entry.Id, new Problem(entry.Field, code, message)));
}
