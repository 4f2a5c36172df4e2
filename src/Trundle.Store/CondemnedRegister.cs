using Microsoft.EntityFrameworkCore;
using Trundle.Measures;
using Trundle.Store.Database;
using Trundle.Visits.Bay;

namespace Trundle.Store;

/// <summary>One name in the register.</summary>
/// <param name="Kind">What it names.</param>
/// <param name="Name">As typed.</param>
/// <param name="VisitId">On which visit it was condemned.</param>
/// <param name="VisitNumber">That visit's number.</param>
/// <param name="Place">Where on that visit.</param>
/// <param name="By">By whom.</param>
/// <param name="At">When.</param>
/// <param name="WithdrawnBy">Who took it back, or null while it stands.</param>
/// <param name="WithdrawnWhy">Why, or null.</param>
public sealed record CondemnedName(
    CondemnedKind Kind, string Name, Guid VisitId, string VisitNumber, string Place, string By, DateTimeOffset At, string? WithdrawnBy, string? WithdrawnWhy);

/// <summary>
/// Tyres and wheels that may not be fitted again on any visit. The register is made of the entries: what a visit's entries call condemned stands
/// in it, by the tyre's own name, its TIN and the wheel's own name.
/// </summary>
public sealed class CondemnedRegister
{
    /// <summary>The name beside the entries that the register itself makes.</summary>
    public const string Name = "condemned register";

    private readonly StoreFile _file;

    internal CondemnedRegister(StoreFile file) => _file = file;

    /// <summary>Every name, newest first, those that were taken back too.</summary>
    public IReadOnlyList<CondemnedName> All()
    {
        using var context = _file.Context();
        return
        [
            .. context.Condemned.AsNoTracking()
                .Join(context.Visits, c => c.VisitId, v => v.Id, (c, v) => new { Row = c, v.Number })
                .AsEnumerable()
                .Select(line => Of(line.Row, line.Number))
                .OrderByDescending(c => c.At).ThenBy(c => c.Name, StringComparer.Ordinal),
        ];
    }

    /// <summary>The lines that stand, oldest first: what a tablet holds, so that it knows them without a connection.</summary>
    public IReadOnlyList<CondemnedLine> Standing()
    {
        using var context = _file.Context();
        return StandingIn(context);
    }

    /// <summary>The names of a visit that stand in the register because of another visit or another place.</summary>
    public IReadOnlyList<CondemnedHit> Matches(StoredVisit visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        using var context = _file.Context();
        return [.. CondemnedNames.Hits(visit.Fields, visit.Heading.Id, StandingIn(context))];
    }

    /// <summary>Takes a name back, on every visit.</summary>
    /// <returns>How many lines were taken back, or the problem.</returns>
    public Reading<int> Withdraw(CondemnedKind kind, string name, string by, Role role, string? why, DateTimeOffset now)
    {
        if (!role.May(Right.TakeBackStop))
        {
            return Reading<int>.Failed(new Problem("by", "may-not-release", "Only an instructor or the owner may take 'condemned' back."));
        }

        if (string.IsNullOrWhiteSpace(why))
        {
            return Reading<int>.Failed(new Problem("why", "missing", "Say why it may be fitted again: what was mistaken."));
        }

        var (word, key) = (kind.Word(), CondemnedNames.Key(name));
        using var context = _file.Context();
        var rows = context.Condemned.Where(c => c.Kind == word && c.Key == key && c.WithdrawnAt == null).ToList();
        if (rows.Count == 0)
        {
            return Reading<int>.Failed(new Problem("name", "not-condemned", $"'{NumberText.Shown(name)}' does not stand in the register."));
        }

        foreach (var row in rows)
        {
            (row.WithdrawnAt, row.WithdrawnBy, row.WithdrawnWhy) = (now, by, why.Trim());
        }

        context.SaveChanges();
        return Reading<int>.Of(rows.Count);
    }

    /// <summary>Brings a visit's lines up to date with its entries.</summary>
    internal static void Rebuild(StoreContext context, Guid visit, VisitFields fields)
    {
        var wanted = CondemnedNames.Of(fields)
            .Select(n => (Named: n, Entry: fields[n.CondemnedField] == "true" ? fields.EntryOf(n.CondemnedField) : null))
            .Where(w => w.Entry is { } entry && entry.By != Name)
            .Select(w => (w.Named, Entry: w.Entry!))
            .ToList();
        var there = context.Condemned.Where(c => c.VisitId == visit).ToList();
        foreach (var row in there.Where(r => !wanted.Any(w => Same(r, w.Named, w.Entry))))
        {
            context.Condemned.Remove(row);
        }

        foreach (var (named, entry) in wanted.Where(w => !there.Any(r => Same(r, w.Named, w.Entry))))
        {
            context.Condemned.Add(new CondemnedRow
            {
                Kind = named.Kind.Word(),
                Key = named.Key,
                Shown = named.Shown,
                VisitId = visit,
                Place = named.Place,
                EntryId = entry.Id,
                By = entry.By,
                At = entry.At,
            });
        }

        static bool Same(CondemnedRow row, NamedPart named, Entry entry) =>
            row.EntryId == entry.Id && row.Kind == named.Kind.Word() && row.Key == named.Key;
    }

    /// <summary>The fields that must say 'condemned' and do not, each with the time of its newest entry.</summary>
    internal static IReadOnlyList<(string Field, DateTimeOffset? After)> Missing(StoreContext context, Guid visit, VisitFields fields) =>
    [
        .. CondemnedNames.Hits(fields, visit, StandingIn(context))
            .Where(h => h.Named.Kind is CondemnedKind.Tyre or CondemnedKind.Wheel)
            .Select(h => h.Named.CondemnedField).Distinct()
            .Where(field => fields[field] != "true")
            .Select(field => (field, fields.Newest.FirstOrDefault(e => e.Field == field)?.At)),
    ];

    internal static IReadOnlyList<CondemnedLine> StandingIn(StoreContext context) =>
    [
        .. context.Condemned.AsNoTracking().Where(c => c.WithdrawnAt == null)
            .Join(context.Visits, c => c.VisitId, v => v.Id, (c, v) => new { Row = c, v.Number })
            .OrderBy(line => line.Row.Id)
            .AsEnumerable()
            .Select(line => new CondemnedLine(KindOf(line.Row), line.Row.Shown, line.Row.VisitId, line.Number, line.Row.Place, line.Row.By, line.Row.At)),
    ];

    private static CondemnedKind KindOf(CondemnedRow row) => CondemnedNames.KindOf(row.Kind)!.Value;

    private static CondemnedName Of(CondemnedRow row, string number) => new(
        KindOf(row), row.Shown, row.VisitId, number, row.Place, row.By, row.At, row.WithdrawnBy, row.WithdrawnWhy);
}
