using Microsoft.EntityFrameworkCore;
using Trundle.Measures;
using Trundle.Store.Database;
using Trundle.Visits.Bay;

namespace Trundle.Store;

/// <summary>What a name in the register names.</summary>
public enum CondemnedKind
{
    /// <summary>The workshop's own name of one tyre.</summary>
    Tyre,

    /// <summary>A TIN. Every tyre of one mould and week bears it, so a match is for a person to decide.</summary>
    Tin,

    /// <summary>The workshop's own name of one wheel.</summary>
    Wheel,
}

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

/// <summary>A name on a visit that stands in the register because of another visit.</summary>
/// <param name="Field">The field with the name, such as <c>fitted.1L.tyre.tin</c>.</param>
/// <param name="Condemned">The register's line.</param>
public sealed record CondemnedMatch(string Field, CondemnedName Condemned)
{
    /// <summary>The field of a person's decision about a TIN: is it that tyre, or another of its batch.</summary>
    public string DecisionField => DecisionFieldOf(Field);

    internal static string DecisionFieldOf(string field)
    {
        var names = field.Split('.');
        return $"work.decisions.condemned-tin@{names[^3]}{(names[0] == "work" ? "-renewed" : "")}.decision";
    }
}

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

    /// <summary>The names of a visit that stand in the register because of another visit or another place.</summary>
    public IReadOnlyList<CondemnedMatch> Matches(StoredVisit visit)
    {
        ArgumentNullException.ThrowIfNull(visit);
        using var context = _file.Context();
        return [.. MatchesOf(context, visit.Heading.Id, visit.Fields).Select(m => new CondemnedMatch(m.Mention.NameField, Of(m.Row, context.Visits.Where(v => v.Id == m.Row.VisitId).Select(v => v.Number).Single())))];
    }

    /// <summary>Takes a name back, on every visit.</summary>
    /// <returns>How many lines were taken back, or the problem.</returns>
    public Reading<int> Withdraw(CondemnedKind kind, string name, string by, Role role, string? why, DateTimeOffset now)
    {
        if (!role.MayOverrule())
        {
            return Reading<int>.Failed(new Problem("by", "may-not-release", "Only an instructor or the owner may take 'condemned' back."));
        }

        if (string.IsNullOrWhiteSpace(why))
        {
            return Reading<int>.Failed(new Problem("why", "missing", "Say why it may be fitted again: what was mistaken."));
        }

        var (word, key) = (Word(kind), Key(name));
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
        var wanted = Mentions(fields).Where(m => m.Condemning is { } entry && entry.By != Name).ToList();
        var there = context.Condemned.Where(c => c.VisitId == visit).ToList();
        foreach (var row in there.Where(r => !wanted.Any(m => Same(r, m))))
        {
            context.Condemned.Remove(row);
        }

        foreach (var mention in wanted.Where(m => !there.Any(r => Same(r, m))))
        {
            context.Condemned.Add(new CondemnedRow
            {
                Kind = Word(mention.Kind),
                Key = mention.Key,
                Shown = mention.Shown,
                VisitId = visit,
                Place = mention.Place,
                EntryId = mention.Condemning!.Id,
                By = mention.Condemning.By,
                At = mention.Condemning.At,
            });
        }

        static bool Same(CondemnedRow row, Mention mention) =>
            row.EntryId == mention.Condemning!.Id && row.Kind == Word(mention.Kind) && row.Key == mention.Key;
    }

    /// <summary>The fields that must say 'condemned' and do not, each with the time of its newest entry.</summary>
    internal static IReadOnlyList<(string Field, DateTimeOffset? After)> Missing(StoreContext context, Guid visit, VisitFields fields) =>
    [
        .. MatchesOf(context, visit, fields)
            .Where(m => m.Mention.Kind is CondemnedKind.Tyre or CondemnedKind.Wheel)
            .Select(m => m.Mention.CondemnedField).Distinct()
            .Where(field => fields[field] != "true")
            .Select(field => (field, fields.Newest.FirstOrDefault(e => e.Field == field)?.At)),
    ];

    /// <summary>A TIN of a condemned tyre about which nobody who may has decided yet, or null.</summary>
    internal static Problem? Undecided(StoreContext context, Guid visit, VisitFields fields)
    {
        foreach (var (mention, row) in MatchesOf(context, visit, fields).Where(m => m.Mention.Kind == CondemnedKind.Tin && fields[m.Mention.CondemnedField] != "true"))
        {
            if (fields.EntryOf(CondemnedMatch.DecisionFieldOf(mention.NameField)) is not { } decision || !decision.Role.MayDecide())
            {
                return new Problem(mention.NameField, "condemned-tin",
                    $"The TIN {NumberText.Shown(mention.Shown)} is that of a tyre condemned by {row.By}. Every tyre of one mould and week bears it: look whether it is the same tyre, and record the decision.");
            }
        }

        return null;
    }

    private static IEnumerable<(Mention Mention, CondemnedRow Row)> MatchesOf(StoreContext context, Guid visit, VisitFields fields)
    {
        foreach (var mention in Mentions(fields))
        {
            var (word, key) = (Word(mention.Kind), mention.Key);
            var row = context.Condemned.AsNoTracking()
                .Where(c => c.Kind == word && c.Key == key && c.WithdrawnAt == null && !(c.VisitId == visit && c.Place == mention.Place))
                .OrderBy(c => c.Id).FirstOrDefault();
            if (row is not null)
            {
                yield return (mention, row);
            }
        }
    }

    private sealed record Mention(CondemnedKind Kind, string Place, string NameField, string Shown, string Key, string CondemnedField, Entry? Condemning);

    /// <summary>Every named tyre and wheel of a visit: as it came, and as it was renewed.</summary>
    private static IEnumerable<Mention> Mentions(VisitFields fields)
    {
        foreach (var entry in fields.Under("fitted").Concat(fields.Under("work.renewed")))
        {
            var names = entry.Field.Split('.');
            if (names is not [.., var part and ("tyre" or "wheel"), var leaf and ("id" or "tin")] || (part == "wheel" && leaf == "tin"))
            {
                continue;
            }

            var key = Key(entry.Typed);
            if (key.Length == 0)
            {
                continue;
            }

            var place = string.Join('.', names[..^2]);
            var condemnedField = $"{place}.{part}.condemned";
            var kind = part == "wheel" ? CondemnedKind.Wheel : leaf == "tin" ? CondemnedKind.Tin : CondemnedKind.Tyre;
            yield return new Mention(kind, place, entry.Field, entry.Typed, key, condemnedField,
                fields[condemnedField] == "true" ? fields.EntryOf(condemnedField) : null);
        }
    }

    /// <summary>A name as it is compared: no blanks or dashes, in capitals.</summary>
    private static string Key(string name) => string.Concat(name.Where(char.IsLetterOrDigit)).ToUpperInvariant();

    private static string Word(CondemnedKind kind) => kind switch
    {
        CondemnedKind.Tyre => "tyre",
        CondemnedKind.Tin => "tin",
        CondemnedKind.Wheel => "wheel",
    };

    private static CondemnedName Of(CondemnedRow row, string number) => new(
        row.Kind switch { "tyre" => CondemnedKind.Tyre, "tin" => CondemnedKind.Tin, _ => CondemnedKind.Wheel },
        row.Shown, row.VisitId, number, row.Place, row.By, row.At, row.WithdrawnBy, row.WithdrawnWhy);
}
