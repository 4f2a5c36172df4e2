using System.Globalization;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Balance;

/// <summary>One kind of weight in the drawer as entered: its mass, and where they were given, how long a strip of it is and how many there are.</summary>
public sealed record StockItem(string Mass, string? Length, string? Count)
{
    /// <summary>True where the mass alone is known: then it stands in the file as a mass and nothing else.</summary>
    public bool Plain => Length is null && Count is null;
}

/// <summary>The drawer of one kind, item by item: read from the visit's fields, and the entries that make it another.</summary>
public static class StockItems
{
    /// <summary>The items that stand under a field, such as <c>fitted.1L.balance.stock.clip</c>.</summary>
    public static IReadOnlyList<StockItem> Of(OpenVisit visit, string field)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(field);
        return
        [
            .. visit.Fields.Under(field)
                .Where(e => e.Field.Length > field.Length)
                .Select(e => e.Field[(field.Length + 1)..].Split('.')[0])
                .Distinct(StringComparer.Ordinal)
                .Select(i => $"{field}.{i}")
                .Select(at => new StockItem(visit[$"{at}.mass"] ?? visit[at] ?? "", visit[$"{at}.length"], visit[$"{at}.count"])),
        ];
    }

    /// <summary>The entries that put these items into the drawer, in order; what stood there and is gone is emptied.</summary>
    public static (string Field, string Typed)[] Entries(OpenVisit visit, string field, IReadOnlyList<StockItem> items)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(items);
        var wanted = new Dictionary<string, string>(StringComparer.Ordinal);
        for (var i = 0; i < items.Count; i++)
        {
            var at = string.Create(CultureInfo.InvariantCulture, $"{field}.{i}");
            var item = items[i];
            if (item.Plain)
            {
                wanted[at] = item.Mass;
                continue;
            }

            wanted[$"{at}.mass"] = item.Mass;
            foreach (var (key, text) in new[] { ("length", item.Length), ("count", item.Count) })
            {
                if (text is not null)
                {
                    wanted[$"{at}.{key}"] = text;
                }
            }
        }

        return
        [
            .. visit.Fields.Under(field).Select(e => e.Field).Where(f => !wanted.ContainsKey(f)).Select(f => (f, "")),
            .. wanted.Select(w => (w.Key, w.Value)),
        ];
    }

    /// <summary>The masses in a drawer, for the line in which they are typed.</summary>
    public static IReadOnlyList<string> Masses(OpenVisit visit, string field) => [.. Of(visit, field).Select(i => i.Mass)];

    /// <summary>The entries of a line of masses.</summary>
    public static (string Field, string Typed)[] EnterMasses(OpenVisit visit, string field, IReadOnlyList<string> masses) =>
        Entries(visit, field, WithMasses(Of(visit, field), masses));

    /// <summary>The same drawer with other masses: an item whose mass stays keeps its length and its count.</summary>
    public static IReadOnlyList<StockItem> WithMasses(IReadOnlyList<StockItem> before, IReadOnlyList<string> masses)
    {
        ArgumentNullException.ThrowIfNull(masses);
        var left = before.ToList();
        return
        [
            .. masses.Select(mass =>
            {
                var known = left.Find(i => i.Mass == mass);
                _ = known is not null && left.Remove(known);
                return known ?? new StockItem(mass, null, null);
            }),
        ];
    }
}
