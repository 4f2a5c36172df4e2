using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Store;

namespace Trundle.Web.Office.Sources;

/// <summary>Where every limit and figure comes from.</summary>
internal static class SourcesEndpoints
{
    public static void MapSources(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/sources", (HttpContext context, WorkshopStore store, TimeProvider clock) =>
            new RazorComponentResult<SourcesPage>(new { Frame = OfficeFrame.Of(context, store, clock) }));
}
