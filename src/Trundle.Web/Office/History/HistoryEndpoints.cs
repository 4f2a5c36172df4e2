using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Web.People;

namespace Trundle.Web.Office.History;

/// <summary>Vehicles that were handed back, newest first.</summary>
internal static class HistoryEndpoints
{
    public const int OnOnePage = 25;

    public static void MapHistory(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/export.zip", ExportAsync);
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

    /// <summary>The whole workshop: written into a file of its own first, since a ZIP is closed by writes that a connection does not take.</summary>
    private static async Task<IResult> ExportAsync(HttpContext context, WorkshopStore store, TimeProvider clock)
    {
        if (WhoEnters.On(context, store)?.Role.May(Right.TakeOut) != true)
        {
            return Results.StatusCode(StatusCodes.Status403Forbidden);
        }

        var file = new FileStream(Path.GetTempFileName(), FileMode.Create, FileAccess.ReadWrite, FileShare.None, 81920, FileOptions.Asynchronous | FileOptions.DeleteOnClose);
        await store.Export.WriteAsync(file, context.RequestAborted).ConfigureAwait(false);
        file.Position = 0;
        // The file goes with the answer.
        return Results.Stream(file, "application/zip", $"workshop-{clock.GetLocalNow().ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}.zip");
    }
}
