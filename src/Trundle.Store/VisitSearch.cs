using Microsoft.EntityFrameworkCore;
using Trundle.Store.Database;
using Trundle.Visits.Bay;

namespace Trundle.Store;

/// <summary>A visit that a search found, and where.</summary>
/// <param name="Visit">The visit.</param>
/// <param name="Fields">The fields in which a word of the search stands now, with their text.</param>
public sealed record FoundVisit(StoredVisit Visit, IReadOnlyList<(string Field, string Typed)> Fields);

/// <summary>Finds visits by what names them: number, vehicle, VIN, whom to call, tyres and wheels by name, marking and TIN.</summary>
public sealed class VisitSearch
{
    /// <summary>The most characters of a search.</summary>
    public const int MostCharacters = 100;

    private static readonly string[] Whole = ["vehicle.name", "vehicle.vin", EntryGate.NumberField, EntryGate.ContactField];
    private static readonly string[] Ends = [".tyre.id", ".tyre.marking", ".tyre.tin", ".wheel.id", ".wheel.rim", ".placard.size"];

    private readonly StoreFile _file;

    internal VisitSearch(StoreFile file) => _file = file;

    /// <summary>Visits in which every word of the search stands in one of those fields, newest first. Blanks, dashes and capitals do not count.</summary>
    /// <param name="words">As typed.</param>
    /// <param name="most">So many at most.</param>
    public IReadOnlyList<FoundVisit> Find(string words, int most)
    {
        ArgumentNullException.ThrowIfNull(words);
        var keys = words.Split(' ', StringSplitOptions.RemoveEmptyEntries).Select(Key).Where(k => k.Length > 0).Distinct(StringComparer.Ordinal).ToList();
        var together = Key(words);
        if (keys.Count == 0 || words.Length > MostCharacters)
        {
            return [];
        }

        using var context = _file.Context();
        // The longest word narrows most; what stands now is looked at below.
        var longest = keys.MaxBy(k => k.Length)!;
        var like = $"%{string.Concat(longest.Select(Like))}%";
        var candidates = context.Entries.AsNoTracking()
            .Where(e => Whole.Contains(e.Field) || e.Field.EndsWith(".tyre.id") || e.Field.EndsWith(".tyre.marking") || e.Field.EndsWith(".tyre.tin") || e.Field.EndsWith(".wheel.id") || e.Field.EndsWith(".wheel.rim") || e.Field.EndsWith(".placard.size"))
            .Where(e => EF.Functions.Like(e.Typed.Replace(" ", "").Replace("-", ""), like, "\\"))
            .Select(e => e.VisitId).Distinct().ToHashSet();
        var found = new List<FoundVisit>();
        foreach (var row in context.Visits.AsNoTracking().OrderByDescending(v => v.OpenedAt).ThenByDescending(v => v.Number).AsEnumerable().Where(v => candidates.Contains(v.Id)))
        {
            var visit = new StoredVisit(VisitStore.Heading(row), VisitStore.EntriesOf(context, row.Id));
            var named = visit.Fields.Newest.Where(e => e.Typed.Length > 0 && (Whole.Contains(e.Field) || Ends.Any(end => e.Field.EndsWith(end, StringComparison.Ordinal)))).Select(e => (e.Field, e.Typed, Key: Key(e.Typed))).ToList();
            // A TIN or a name may be typed in parts that stand as one, and the other way round.
            var hits = named.Where(n => n.Key.Contains(together, StringComparison.Ordinal)).ToList();
            if (hits.Count == 0 && keys.TrueForAll(k => named.Exists(n => n.Key.Contains(k, StringComparison.Ordinal))))
            {
                hits = [.. named.Where(n => keys.Exists(k => n.Key.Contains(k, StringComparison.Ordinal)))];
            }

            if (hits.Count > 0)
            {
                found.Add(new FoundVisit(visit, [.. hits.Select(h => (h.Field, h.Typed))]));
            }

            if (found.Count == most)
            {
                break;
            }
        }

        return found;
    }

    /// <summary>A character in LIKE's pattern. The database folds the case of ASCII only, so any other character is left open here.</summary>
    private static string Like(char c) => !char.IsAscii(c) ? "_" : c is '%' or '_' or '\\' ? $"\\{c}" : c.ToString();

    private static string Key(string text) => text.Replace(" ", "", StringComparison.Ordinal).Replace("-", "", StringComparison.Ordinal).ToUpperInvariant();
}
