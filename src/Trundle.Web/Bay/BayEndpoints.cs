using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Web.Accounts;

namespace Trundle.Web.Bay;

/// <summary>The address at which the bay's pages run in the browser. Which visit and which leg is read from the address by the page itself.</summary>
internal static class BayEndpoints
{
    public static void MapBay(this IEndpointRouteBuilder routes) => 
        routes.MapGet("/bay/{**rest}", () => new RazorComponentResult<BayShell>()).WithMetadata(HoldsNothing.Mark);
}
