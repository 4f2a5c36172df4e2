using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Store;

namespace Trundle.Web.Office.History;

/// <summary>Vehicles that were handed back, newest first.</summary>
internal static class HistoryEndpoints
{
    public const int OnOnePage = 25;

    public static void MapHistory(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/history", (HttpContext context, WorkshopStore store, TimeProvider clock) =>
        {
            var page = int.TryParse(context.Request.Query["page"], NumberStyles.None, CultureInfo.InvariantCulture, out var asked) && asked is > 0 and < 100_000 ? asked : 1;
            var visits = store.Visits.HandedBack((page - 1) * OnOnePage, OnOnePage + 1);
            return new RazorComponentResult<HistoryPage>(new
            {
                Frame = OfficeFrame.Of(context, store, clock),
                Visits = (IReadOnlyList<StoredVisit>)[.. visits.Take(OnOnePage)],
                Number = page,
                More = visits.Count > OnOnePage,
            });
        });
}
