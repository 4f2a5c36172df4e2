using System.Text.Json.Nodes;
using Trundle.Store;
using Trundle.Visits.Paper;

namespace Trundle.Web.Visits;

/// <summary>The shop's stock beside a visit: what was used is chosen from it, with no network too.</summary>
internal static class StockList
{
    /// <summary>The answer with the things on the list.</summary>
    public static JsonObject WithStock(this JsonObject answer, WorkshopStore store)
    {
        answer["stock"] = new JsonArray([.. store.Stock.All().Select(i => (JsonNode?)new JsonObject { ["kind"] = i.Kind.Word(), ["item"] = i.Name, ["massGrams"] = i.Mass?.Grams, ["unit"] = i.Unit })]);
        return answer;
    }
}
