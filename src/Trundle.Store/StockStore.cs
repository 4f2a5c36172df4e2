using Microsoft.EntityFrameworkCore;
using Trundle.Measures;
using Trundle.Store.Database;
using Trundle.Visits.Bay;
using Trundle.Visits.Paper;

namespace Trundle.Store;

/// <summary>A thing of the shop's stock with how many there are.</summary>
/// <param name="Id">Its identifier.</param>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Its name, or null for a weight, which its kind and mass name.</param>
/// <param name="Mass">The mass of one weight, or null.</param>
/// <param name="Unit">What one of it is: piece, box.</param>
/// <param name="OnHand">How many there are by the last count and what came and went since; null where nobody counted.</param>
/// <param name="ReorderLevel">At how many it is ordered, or null.</param>
public sealed record StockItem(Guid Id, StockKind Kind, string? Name, Mass? Mass, string Unit, int? OnHand, int? ReorderLevel)
{
    /// <summary>As a person reads it.</summary>
    public string Shown => StockName.Of(Kind, Name, Mass);

    /// <summary>True where as many as its reorder level are left, or fewer.</summary>
    public bool Low => ReorderLevel is { } level && OnHand is { } left && left <= level;
}

/// <summary>What is entered of a thing of the stock.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Name">Its name, or null.</param>
/// <param name="Mass">The mass of one weight, or null.</param>
/// <param name="Unit">What one of it is.</param>
/// <param name="OnHand">How many there are now.</param>
/// <param name="ReorderLevel">At how many it is ordered, or null.</param>
public sealed record NewStockItem(StockKind Kind, string? Name, Mass? Mass, string Unit, int OnHand, int? ReorderLevel);

/// <summary>The shop's stock: counted and received in the office, used on visits.</summary>
public sealed class StockStore
{
    /// <summary>The most of one thing.</summary>
    public const int Most = 100_000;

    private const string Counted = "counted";
    private const string Received = "received";
    private const string Used = "used";

    private readonly StoreFile _file;

    internal StockStore(StoreFile file) => _file = file;

    /// <summary>Everything in use, by kind and name.</summary>
    public IReadOnlyList<StockItem> All()
    {
        using var context = _file.Context();
        var moves = context.StockMoves.AsNoTracking().OrderBy(m => m.Sequence).AsEnumerable().ToLookup(m => m.ItemId);
        return
        [
            .. context.StockItems.AsNoTracking().Where(i => !i.OutOfUse).AsEnumerable().Select(i => Of(i, moves[i.Id]))
                .OrderBy(i => i.Kind).ThenBy(i => i.Mass?.Grams ?? 0).ThenBy(i => i.Name, StringComparer.OrdinalIgnoreCase),
        ];
    }

    /// <summary>Adds a thing with how many there are. The same identifier adds it once.</summary>
    public Reading<Guid> Add(Guid id, NewStockItem item, string by, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(item);
        if (item.Kind.IsWeight() ? item.Mass is null : string.IsNullOrWhiteSpace(item.Name))
        {
            return item.Kind.IsWeight() ? Failed("mass", "missing", "Say how heavy one weight is, for example 10 g.") : Failed("name", "missing", "Give it the name by which it is taken from the shelf.");
        }

        if (item.OnHand is < 0 or > Most || item.ReorderLevel is < 0 or > Most)
        {
            return Failed("onHand", "out-of-range", FormattableString.Invariant($"How many is a whole number from 0 to {Most}."));
        }

        var key = StockName.Key(item.Kind, item.Name, item.Mass);
        using var context = _file.Context();
        using var transaction = context.Database.BeginTransaction();
        if (context.StockItems.Any(i => i.Id == id))
        {
            return Reading<Guid>.Of(id);
        }

        if (context.StockItems.Any(i => i.Key == key && !i.OutOfUse))
        {
            return Failed("name", "name-taken", $"'{StockName.Of(item.Kind, item.Name, item.Mass)}' stands on the list already.");
        }

        context.StockItems.Add(new StockItemRow { Id = id, Kind = item.Kind.Word(), Key = key, Name = item.Name?.Trim(), MassGrams = item.Mass?.Grams, Unit = item.Unit, ReorderLevel = item.ReorderLevel });
        context.StockMoves.Add(new StockMoveRow { Id = Guid.CreateVersion7(now), ItemId = id, Kind = Counted, Count = item.OnHand, By = by, At = now });
        context.SaveChanges();
        transaction.Commit();
        return Reading<Guid>.Of(id);
    }

    /// <summary>Writes down how many there are, counted on the shelf: what came and went before is in it.</summary>
    public Reading<Guid> Count(Guid move, Guid item, int count, string by, DateTimeOffset now) => Move(move, item, Counted, count, 0, by, now);

    /// <summary>Writes down that some came.</summary>
    public Reading<Guid> Receive(Guid move, Guid item, int count, string by, DateTimeOffset now) => Move(move, item, Received, count, 1, by, now);

    /// <summary>Changes at how many it is ordered; null for never.</summary>
    public Reading<Guid> SetLevel(Guid item, int? level)
    {
        if (level is < 0 or > Most)
        {
            return Failed("level", "out-of-range", FormattableString.Invariant($"The reorder level is a whole number from 0 to {Most}, or nothing."));
        }

        using var context = _file.Context();
        if (context.StockItems.SingleOrDefault(i => i.Id == item && !i.OutOfUse) is not { } row)
        {
            return Unknown();
        }

        row.ReorderLevel = level;
        context.SaveChanges();
        return Reading<Guid>.Of(item);
    }

    /// <summary>Takes a thing off the list; what was used of it stays recorded.</summary>
    public Reading<Guid> Remove(Guid item)
    {
        using var context = _file.Context();
        if (context.StockItems.SingleOrDefault(i => i.Id == item && !i.OutOfUse) is not { } row)
        {
            return Unknown();
        }

        row.OutOfUse = true;
        context.SaveChanges();
        return Reading<Guid>.Of(item);
    }

    /// <summary>Brings what a visit used up to date with its entries: told anew from them, so nothing is counted twice.</summary>
    internal static void Rebuild(StoreContext context, Guid visit, VisitFields fields)
    {
        var there = context.StockMoves.Where(m => m.VisitId == visit).ToList();
        var uses = StockUses.Of(fields);
        if (there.Count == 0 && uses.Count == 0)
        {
            return;
        }

        var items = context.StockItems.AsNoTracking().Where(i => !i.OutOfUse).ToDictionary(i => i.Key, i => i.Id);

        // What was used of a thing that has left the list since stays as it was.
        var settled = there.Where(m => !items.ContainsValue(m.ItemId) && uses.Any(u => u.Place == m.Place)).ToList();
        var wanted = uses
            .Where(u => !settled.Exists(m => m.Place == u.Place))
            .Select(u => (Use: u, Item: items.TryGetValue(StockName.Key(u.Used.Kind, u.Used.Item, u.Used.Mass), out var id) ? id : (Guid?)null))
            .Where(w => w.Item is not null)
            .Select(w => (w.Use, Item: w.Item!.Value))
            .ToList();
        context.StockMoves.RemoveRange(there.Except(settled).Where(m => !wanted.Any(w => Same(m, w.Use, w.Item))));
        foreach (var (use, item) in wanted.Where(w => !there.Any(m => Same(m, w.Use, w.Item))))
        {
            context.StockMoves.Add(new StockMoveRow { Id = Guid.CreateVersion7(use.At), ItemId = item, Kind = Used, Count = use.Used.Count, VisitId = visit, Place = use.Place, By = use.By, At = use.At });
        }

        static bool Same(StockMoveRow row, StockUse use, Guid item) => row.Place == use.Place && row.ItemId == item && row.Count == use.Used.Count && row.At == use.At;
    }

    private Reading<Guid> Move(Guid move, Guid item, string kind, int count, int least, string by, DateTimeOffset now)
    {
        if (count < least || count > Most)
        {
            return Failed("count", "out-of-range", FormattableString.Invariant($"How many is a whole number from {least} to {Most}."));
        }

        using var context = _file.Context();
        using var transaction = context.Database.BeginTransaction();
        if (!context.StockItems.Any(i => i.Id == item && !i.OutOfUse))
        {
            return Unknown();
        }

        if (!context.StockMoves.Any(m => m.Id == move))
        {
            context.StockMoves.Add(new StockMoveRow { Id = move, ItemId = item, Kind = kind, Count = count, By = by, At = now });
            context.SaveChanges();
            transaction.Commit();
        }

        return Reading<Guid>.Of(item);
    }

    private static StockItem Of(StockItemRow row, IEnumerable<StockMoveRow> moves)
    {
        var all = moves.ToList();
        var counted = all.Where(m => m.Kind == Counted).OrderBy(m => m.At).ThenBy(m => m.Sequence).LastOrDefault();
        var since = counted is null ? [] : all.Where(m => m.Kind != Counted && (m.At > counted.At || (m.At == counted.At && m.Sequence > counted.Sequence)));
        return new StockItem(
            row.Id, StockName.KindOf(row.Kind) ?? StockKind.Other, row.Name, row.MassGrams is { } grams ? Mass.FromGrams(grams) : null, row.Unit,
            counted is null ? null : counted.Count + since.Sum(m => m.Kind == Received ? m.Count : -m.Count),
            row.ReorderLevel);
    }

    private static Reading<Guid> Failed(string where, string code, string message) => Reading<Guid>.Failed(new Problem(where, code, message));

    private static Reading<Guid> Unknown() => Failed("item", "item-unknown", "This stands on the list no more; open the page again.");
}
