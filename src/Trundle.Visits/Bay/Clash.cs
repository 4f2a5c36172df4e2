namespace Trundle.Visits.Bay;

/// <summary>Two devices entered different texts into one field, neither knowing of the other. The newest stands until somebody chooses.</summary>
/// <param name="Field">The field.</param>
/// <param name="Entries">The entries that nobody who entered later had seen, newest first; two or more, with different texts.</param>
public sealed record Clash(string Field, IReadOnlyList<Entry> Entries);

/// <summary>
/// Finds what devices entered against each other. An entry tells by <see cref="Entry.After"/> what stood in its field on its device; one that does not
/// tell counts as made by somebody who had seen all that is older.
/// </summary>
public static class Clashes
{
    /// <summary>Every clash among these entries, superseded ones included, in the order of their newest.</summary>
    public static IReadOnlyList<Clash> Of(IEnumerable<Entry> entries)
    {
        ArgumentNullException.ThrowIfNull(entries);
        var clashes = new List<Clash>();
        foreach (var field in entries.GroupBy(e => e.Field, StringComparer.Ordinal))
        {
            var ofField = field.ToList();
            if (ofField.Count > 1 && ofField.Exists(e => e.After is not null) && Unseen(ofField) is { Count: > 1 } unseen && unseen.Select(e => e.Typed).Distinct(StringComparer.Ordinal).Skip(1).Any())
            {
                clashes.Add(new Clash(field.Key, unseen));
            }
        }

        return [.. clashes.OrderBy(c => c.Entries[0].At).ThenBy(c => c.Entries[0].Id)];
    }

    /// <summary>The entries of one field that no other entry was made in the sight of, newest first: what a new entry is made after.</summary>
    public static IReadOnlyList<Entry> Unseen(IEnumerable<Entry> ofOneField)
    {
        ArgumentNullException.ThrowIfNull(ofOneField);
        Entry[] newest = [.. ofOneField.OrderByDescending(e => e.At).ThenByDescending(e => e.Id)];
        var seen = new HashSet<Guid>();
        for (var i = 0; i < newest.Length; i++)
        {
            seen.UnionWith(newest[i].After ?? newest.Skip(i + 1).Select(e => e.Id));
        }

        return [.. newest.Where(e => !seen.Contains(e.Id))];
    }
}
