using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;

namespace Trundle.Web.Api;

/// <summary>
/// An address of the interface that is asked in another way than it is answered: 405, with the ways that there are (RFC 9110, 15.5.6).
/// Stated for each address, since a fallback that takes every GET (static files, addresses that are not there) keeps the router from saying it.
/// </summary>
internal static class OtherMethods
{
    /// <summary>To be called after every address of the interface is mapped.</summary>
    public static void MapOtherMethods(this IEndpointRouteBuilder routes)
    {
        var addresses = routes.DataSources.SelectMany(d => d.Endpoints).OfType<RouteEndpoint>()
            .Where(e => e.RoutePattern.RawText?.StartsWith("/api/", StringComparison.Ordinal) == true)
            .GroupBy(e => e.RoutePattern.RawText!, e => e.Metadata.GetMetadata<HttpMethodMetadata>()?.HttpMethods ?? [], StringComparer.Ordinal)
            .Select(a => (Pattern: a.Key, Methods: a.SelectMany(m => m).ToList()))
            .ToList();
        foreach (var (pattern, methods) in addresses)
        {
            // HEAD is answered wherever GET is.
            string[] allowed = [.. methods.Concat(methods.Contains(HttpMethods.Get) ? [HttpMethods.Head] : []).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)];
            routes.Map(pattern, (HttpContext context) =>
            {
                context.Response.Headers.Allow = string.Join(", ", allowed);
                return ApiAnswer.Wrong(
                    new Problem(context.Request.Path, "method-not-allowed", $"This address is asked by {string.Join(" or ", allowed)}, not by {NumberText.Shown(context.Request.Method)}."),
                    StatusCodes.Status405MethodNotAllowed);
            });
        }
    }
}
