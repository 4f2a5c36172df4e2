using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Store;

namespace Trundle.Web.Office.Search;

/// <summary>One search over visits, vehicles, tyres, wheels, stored sets and tyres sold.</summary>
internal static class SearchEndpoints
{
    private const int Most = 40;

    public static void MapSearch(this IEndpointRouteBuilder routes) => routes.MapGet("/search", (HttpContext context, WorkshopStore store, TimeProvider clock) =>
    {
        var asked = context.Request.Query["q"].ToString();
        var words = asked.Trim()[..Math.Min(asked.Trim().Length, VisitSearch.MostCharacters)];
        var key = Key(words);
        return new RazorComponentResult<SearchPage>(new
        {
            Frame = OfficeFrame.Of(context, store, clock),
            Words = words,
            Visits = store.Search.Find(words, Most),
            Sets = key.Length == 0 ? [] : store.Sets.All().Where(s => Key($"{s.Kept.Number} {s.Vehicle} {s.Description.Owner}").Contains(key, StringComparison.Ordinal)).Take(Most).ToList(),
            Sales = key.Length == 0 ? [] : store.Registrations.All().Where(r => Key(r.Kept.Number).Contains(key, StringComparison.Ordinal) || r.Sale.Tyres.Any(t => Key(t.Tin).Contains(key, StringComparison.Ordinal))).Take(Most).ToList(),
            More = Most,
        });
    });

    private static string Key(string? text) => (text ?? "").Replace(" ", "", StringComparison.Ordinal).Replace("-", "", StringComparison.Ordinal).ToUpperInvariant();
}
