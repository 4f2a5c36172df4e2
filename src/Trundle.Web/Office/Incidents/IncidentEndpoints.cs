using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Store;

namespace Trundle.Web.Office.Incidents;

/// <summary>Incidents and near misses, to learn from.</summary>
internal static class IncidentEndpoints
{
    public static void MapIncidents(this IEndpointRouteBuilder routes) =>
        routes.MapGet("/incidents", (HttpContext context, WorkshopStore store, TimeProvider clock) =>
            new RazorComponentResult<IncidentsPage>(new { Frame = OfficeFrame.Of(context, store, clock), Lines = store.Incidents.All() }));
}
