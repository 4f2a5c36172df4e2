using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Engine.Sidewall;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Files;
using Trundle.Visits.Keeping;
using Trundle.Web.Api;

namespace Trundle.Web.Office.Recall;

/// <summary>Which tyres that were ever recorded a recall's range holds: as a page, as CSV, and for programs.</summary>
internal static class RecallEndpoints
{
    public static void MapRecall(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/recall", (HttpContext context, WorkshopStore store, TimeProvider clock) => Page(context, store, clock));
        routes.MapGet("/recall.csv", (HttpContext context, WorkshopStore store) => Range(context).Match(
            range => Results.File(Encoding.UTF8.GetBytes(RecallAnswer.Of(range, store.Tyres.All()).Csv()), "text/csv", "recall.csv"),
            problem => ApiAnswer.Wrong(problem)));
        routes.MapPost("/api/v1/recall", AnswerAsync).DisableAntiforgery();
    }

    private static RazorComponentResult Page(HttpContext context, WorkshopStore store, TimeProvider clock)
    {
        var query = context.Request.Query;
        var asked = new[] { "plant", "code", "from", "to" }.ToDictionary(key => key, key => query[key].ToString().Trim(), StringComparer.Ordinal);
        var range = query.Count == 0 ? (Reading<TinRange>?)null : Range(context);
        return new RazorComponentResult<RecallPage>(new Dictionary<string, object?>
        {
            [nameof(RecallPage.Frame)] = OfficeFrame.Of(context, store, clock),
            [nameof(RecallPage.Asked)] = asked,
            [nameof(RecallPage.Problem)] = range?.Problem,
            [nameof(RecallPage.Answer)] = range is { IsRead: true } read ? RecallAnswer.Of(read.Value, store.Tyres.All()) : null,
        })
        { StatusCode = range is { IsRead: false } ? StatusCodes.Status400BadRequest : StatusCodes.Status200OK };
    }

    private static async Task<IResult> AnswerAsync(HttpRequest request, WorkshopStore store)
    {
        var body = await ApiAnswer.BodyAsync(request).ConfigureAwait(false);
        if (!body.IsRead)
        {
            return ApiAnswer.Wrong(body.Problem!, ApiAnswer.StatusOf(body.Problem!));
        }

        var problems = new List<Problem>();
        var o = new FileObject(body.Value, problems);
        var range = TinRange.Read(o.Text("plant"), o.Text("code"), o.Text("from"), o.Text("to"));
        o.Done();
        return (problems.FirstOrDefault() ?? range.Problem) is { } problem
            ? ApiAnswer.Wrong(problem)
            : ApiAnswer.Json(RecallAnswer.Of(range.Value, store.Tyres.All()).Answer().Body);
    }

    private static Reading<TinRange> Range(HttpContext context)
    {
        var query = context.Request.Query;
        return TinRange.Read(query["plant"], query["code"], query["from"], query["to"]);
    }
}
