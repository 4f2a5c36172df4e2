using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Trundle.Visits.Operations;
using Trundle.Web.Accounts;

namespace Trundle.Web.Api;

/// <summary>Every operation of the command at its own address, with the same body and the same answer.</summary>
internal static class OperationEndpoints
{
    public static void MapOperations(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/api/v1/openapi.json", () => Results.Text(OpenApiDocument.Text, "application/json", System.Text.Encoding.UTF8)).WithMetadata(HoldsNothing.Mark);
        foreach (var operation in OperationList.All)
        {
            routes.MapPost($"/api/v1/{operation.Name.Replace(' ', '/')}", (HttpRequest request) => RunAsync(operation, request))
                .DisableAntiforgery().WithMetadata(HoldsNothing.Mark);
        }
    }

    private static async Task<IResult> RunAsync(Operation operation, HttpRequest request)
    {
        var body = await ApiAnswer.BodyAsync(request).ConfigureAwait(false);
        if (!body.IsRead)
        {
            return ApiAnswer.Wrong(body.Problem!, ApiAnswer.StatusOf(body.Problem!));
        }

        return operation.Run(body.Value).Match(answer => ApiAnswer.Json(answer.Body), problem => ApiAnswer.Wrong(problem));
    }
}
