using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Paper;

/// <summary>One use of stock on a visit, as its entries say it now.</summary>
/// <param name="Place">Where it stands on the visit, such as <c>work.stock.0</c>.</param>
/// <param name="Used">What was used.</param>
/// <param name="By">Who entered it first.</param>
/// <param name="At">When.</param>
public sealed record StockUse(string Place, StockUsed Used, string By, DateTimeOffset At);

/// <summary>Tells what a visit's entries say was used. It is told anew from the entries, so an entry that is sent twice counts once, and one that is corrected counts as corrected.</summary>
public static class StockUses
{
    private const string Path = "work.stock";

    /// <summary>Every use that can be read whole, in the order of its places.</summary>
    public static IReadOnlyList<StockUse> Of(VisitFields fields)
    {
        ArgumentNullException.ThrowIfNull(fields);
        var uses = new List<StockUse>();
        foreach (var item in fields.Under(Path).GroupBy(e => string.Join('.', e.Field.Split('.').Take(3))))
        {
            var json = new JsonObject();
            foreach (var entry in item)
            {
                json[entry.Field[Math.Min(entry.Field.Length, item.Key.Length + 1)..]] = entry.Typed;
            }

            var problems = new List<Problem>();
            if (VisitPaperReader.ReadStock(new FileObject(FileNode.From(json), problems)) is { } used && problems.Count == 0)
            {
                var first = item.MinBy(e => e.At)!;
                uses.Add(new StockUse(item.Key, used, first.By, first.At));
            }
        }

        return uses;
    }
}
