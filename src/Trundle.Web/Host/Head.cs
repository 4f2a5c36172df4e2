using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;

namespace Trundle.Web.Host;

/// <summary>HEAD is answered like GET on every page, without the body: a monitor or a link checker asks so whether the bay is there.</summary>
internal static class Head
{
    public static void UseHead(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        if (HttpMethods.IsHead(context.Request.Method))
        {
            // The server itself remembers what was asked and sends no body.
            context.Request.Method = HttpMethods.Get;
        }

        return next(context);
    });
}
