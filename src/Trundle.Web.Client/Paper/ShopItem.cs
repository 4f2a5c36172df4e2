using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Paper;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Paper;

/// <summary>A thing of the shop's stock as this device knows it: it comes with the visit, so that it is there when the host is not reached.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Item">Its name, or null.</param>
/// <param name="Mass">The mass of one weight, or null.</param>
public sealed record ShopItem(StockKind Kind, string? Item, Mass? Mass)
{
    /// <summary>As a person reads it.</summary>
    public string Shown => StockName.Of(Kind, Item, Mass);

    /// <summary>What two writings of one thing share.</summary>
    public string Key => StockName.Key(Kind, Item, Mass);

    /// <summary>The things in the host's answer, or null where it tells none.</summary>
    public static IReadOnlyList<ShopItem>? Read(JsonObject body)
    {
        ArgumentNullException.ThrowIfNull(body);
        return body["stock"] is JsonArray list
            ?
            [
                .. list.OfType<JsonObject>()
                    .Where(i => StockName.KindOf(EntryJson.Text(i, "kind")) is not null)
                    .Select(i => new ShopItem(
                        StockName.KindOf(EntryJson.Text(i, "kind"))!.Value,
                        EntryJson.Text(i, "item"),
                        i["massGrams"] is JsonValue grams && grams.TryGetValue<double>(out var g) ? Trundle.Measures.Mass.FromGrams(g) : null)),
            ]
            : null;
    }
}
