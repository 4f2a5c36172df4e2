using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.Hosting;
using Trundle.Store;

namespace Trundle.Web.Office.Board;

/// <summary>
/// Tells open boards that something changed, as server-sent events (HTML standard, 9.2): over plain http, and taken up again by the browser itself when the
/// server was away. Only that something changed is told; the page fetches itself anew.
/// </summary>
internal static class BoardEvents
{
    private static readonly TimeSpan Look = TimeSpan.FromSeconds(1);

    // A browser and what lies between hear nothing for a while and give up; a line that says nothing keeps it open.
    private const int LooksBetweenSigns = 15;

    public static void MapBoardEvents(this IEndpointRouteBuilder routes) => routes.MapGet("/board/events", TellAsync);

    private static async Task TellAsync(HttpContext context, WorkshopStore store, TimeProvider clock, IHostApplicationLifetime host)
    {
        using var end = CancellationTokenSource.CreateLinkedTokenSource(context.RequestAborted, host.ApplicationStopping);
        context.Response.ContentType = "text/event-stream";
        context.Response.Headers.CacheControl = "no-store";
        try
        {
            string? told = null;
            for (var looks = 0; ; looks++)
            {
                var tip = Tip(store, clock);
                if (tip != told)
                {
                    await SendAsync(context, $"data: {tip}\n\n", end.Token).ConfigureAwait(false);
                    told = tip;
                }
                else if (looks % LooksBetweenSigns == 0)
                {
                    await SendAsync(context, ": still here\n\n", end.Token).ConfigureAwait(false);
                }

                await Task.Delay(Look, clock, end.Token).ConfigureAwait(false);
            }
        }
        catch (OperationCanceledException)
        {
            // The page was left, or the server stops.
        }
    }

    /// <summary>What changes whenever the board would show something else; the minute, since a promised time passes by itself.</summary>
    private static string Tip(WorkshopStore store, TimeProvider clock) => FormattableString.Invariant($"{store.Tip()}-{clock.GetLocalNow():yyyyMMddHHmm}");

    private static async Task SendAsync(HttpContext context, string text, CancellationToken stop)
    {
        await context.Response.Body.WriteAsync(Encoding.UTF8.GetBytes(text), stop).ConfigureAwait(false);
        await context.Response.Body.FlushAsync(stop).ConfigureAwait(false);
    }
}
