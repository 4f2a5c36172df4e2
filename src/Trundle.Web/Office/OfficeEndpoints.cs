using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;

namespace Trundle.Web.Office;

internal static class OfficeEndpoints
{
    public static void MapOffice(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/", () => Results.Text("board"));
    }
}
