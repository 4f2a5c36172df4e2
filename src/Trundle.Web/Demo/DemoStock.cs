using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Paper;

namespace Trundle.Web.Demo;

/// <summary>The invented workshop's shelf: valves, cores, weights, patches and two tyres, of which some are to be ordered.</summary>
internal static class DemoStock
{
    /// <summary>The tyre that the coupé got.</summary>
    public const string Tyre = "195/65 R15 91H";

    /// <summary>The valve that it got.</summary>
    public const string Valve = "snap-in, short";

    public static void Add(WorkshopStore store, DateTimeOffset now)
    {
        foreach (var item in new NewStockItem[]
        {
            new(StockKind.Valve, Valve, null, "piece", 64, 20), new(StockKind.Valve, "metal, clamp-in", null, "piece", 9, 10), new(StockKind.Core, "short core", null, "piece", 120, 40),
            new(StockKind.Clip, null, Mass.FromGrams(5), "piece", 180, 50), new(StockKind.Clip, null, Mass.FromGrams(10), "piece", 140, 50), new(StockKind.Clip, null, Mass.FromGrams(15), "piece", 48, 50),
            new(StockKind.Adhesive, null, Mass.FromGrams(5), "piece", 900, 200), new(StockKind.Tyre, Tyre, null, "piece", 6, 2), new(StockKind.Patch, "round, 40 mm", null, "piece", 25, 10),
        })
        {
            store.Stock.Add(Guid.CreateVersion7(now), item, "T1", now);
        }
    }
}
