using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Trundle.Measures;
using Trundle.Web.Api;
using Trundle.Words;

namespace Trundle.Web.Host;

/// <summary>What stands before every page and address: headers that keep a page to this host, and faults told without their insides.</summary>
internal static class Guard
{
    // The bay's WebAssembly is compiled by the browser, which 'wasm-unsafe-eval' allows; no script text is ever evaluated.
    private const string ContentPolicy =
        "default-src 'self'; script-src 'self' 'wasm-unsafe-eval'; style-src 'self'; img-src 'self' data:; font-src 'self'; connect-src 'self'; "
        + "object-src 'none'; base-uri 'self'; form-action 'self'; frame-ancestors 'none'";

    public static void UseGuard(this IApplicationBuilder app) => app.Use(async (context, next) =>
    {
        var headers = context.Response.Headers;
        headers.ContentSecurityPolicy = ContentPolicy;
        headers.XContentTypeOptions = "nosniff";
        headers["Referrer-Policy"] = "same-origin";
        headers["Cross-Origin-Opener-Policy"] = "same-origin";
        headers["Cross-Origin-Resource-Policy"] = "same-origin";
        try
        {
            await next(context).ConfigureAwait(false);
            if (context.Response is { HasStarted: false, StatusCode: >= 400, ContentType: null, ContentLength: null })
            {
                await SayAsync(context, context.Response.StatusCode, StatusProblem(context)).ConfigureAwait(false);
            }
        }
        catch (BadHttpRequestException e) when (!context.Response.HasStarted)
        {
            await SayAsync(context, e.StatusCode, new Problem("request", "request-refused", e.StatusCode == StatusCodes.Status413PayloadTooLarge
                ? "The body is too large; a visit's file has a few thousand characters."
                : "The request could not be read.")).ConfigureAwait(false);
        }
        catch (OperationCanceledException) when (context.RequestAborted.IsCancellationRequested)
        {
            // The other side went away.
        }
#pragma warning disable CA1031 // The last line of defence: a fault is logged here, and its insides never reach a page.
        catch (Exception e) when (!context.Response.HasStarted)
        {
            Log.Fault(context, e);
            await SayAsync(context, StatusCodes.Status500InternalServerError, new Problem("trundle", "internal-fault", "Trundle failed inside. Nothing of this request was kept.")).ConfigureAwait(false);
        }
#pragma warning restore CA1031
    });

    private static Problem StatusProblem(HttpContext context) => context.Response.StatusCode switch
    {
        StatusCodes.Status403Forbidden => new Problem(context.Request.Path, "may-not", "Whoever enters on this device may not do this; the people page says who may."),
        StatusCodes.Status404NotFound => new Problem(context.Request.Path, "not-found", "There is nothing at this address."),
        StatusCodes.Status405MethodNotAllowed => new Problem(context.Request.Path, "method-not-allowed", "This address is not asked in this way."),
        StatusCodes.Status415UnsupportedMediaType => new Problem("content-type", "not-json", "Send the body as application/json."),
        StatusCodes.Status429TooManyRequests => new Problem("request", "too-often", "Too many tries from this address. Wait a minute."),
        StatusCodes.Status400BadRequest => new Problem("request", "request-refused", "The form was too old or came from another place. Open the page again and send it anew."),
        _ => new Problem("request", "request-refused", "The request was refused."),
    };

    private static async Task SayAsync(HttpContext context, int status, Problem problem)
    {
        context.Response.StatusCode = status;
        if (context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal))
        {
            await ApiAnswer.Wrong(problem, status).ExecuteAsync(context).ConfigureAwait(false);
            return;
        }

        context.Response.ContentType = "text/html; charset=utf-8";
        var message = System.Text.Encodings.Web.HtmlEncoder.Default.Encode(problem.Message);
        var options = context.RequestServices.GetRequiredService<BayOptions>();
        var texts = options.TextsOf(Locales.Asked(context.Request.Headers.AcceptLanguage.ToString()) ?? options.Locale);
        await context.Response.WriteAsync(Markup.Change(
            $"<!DOCTYPE html><html lang=\"en-GB\"><head><meta charset=\"utf-8\"><meta name=\"viewport\" content=\"width=device-width\"><title>Trundle</title><link rel=\"stylesheet\" href=\"/css/trundle.css\"></head><body><main class=\"middle\"><h1>{message}</h1><p><a href=\"/\">The board</a></p></main></body></html>", texts.Say, texts.Locale)).ConfigureAwait(false);
    }
}
