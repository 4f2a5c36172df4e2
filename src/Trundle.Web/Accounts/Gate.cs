using System.Threading.RateLimiting;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.Extensions.DependencyInjection;
using Trundle.Measures;
using Trundle.Web.Api;

namespace Trundle.Web.Accounts;

/// <summary>Marks an address that holds nothing of the workshop: the sign-in itself, files of the program, computations.</summary>
internal sealed class HoldsNothing
{
    public static HoldsNothing Mark { get; } = new();
}

/// <summary>Where people sign in, nothing of the workshop is told or taken before somebody has.</summary>
internal static class Gate
{
    public const string Policy = "tries";

    /// <summary>So many passwords, PINs and codes may be tried from one address in a minute.</summary>
    public const int TriesAMinute = 20;

    /// <summary>Limits how often an address may try. Behind another server every address is that server's, so it must not be opened to the world so.</summary>
    public static void AddTries(this IServiceCollection services) => services.AddRateLimiter(limiter =>
    {
        limiter.RejectionStatusCode = StatusCodes.Status429TooManyRequests;
        limiter.AddPolicy(Policy, context => RateLimitPartition.GetFixedWindowLimiter(
            context.Connection.RemoteIpAddress?.ToString() ?? "",
            _ => new FixedWindowRateLimiterOptions { PermitLimit = TriesAMinute, Window = TimeSpan.FromMinutes(1), QueueLimit = 0 }));
    });

    public static void UseGate(this IApplicationBuilder app) => app.Use(async (context, next) =>
    {
        var door = context.RequestServices.GetRequiredService<Door>();
        var endpoint = context.GetEndpoint();
        if (!door.Needed || endpoint is null || endpoint.Metadata.GetMetadata<HoldsNothing>() is not null || Device.Of(context)?.Now is not null)
        {
            await next(context).ConfigureAwait(false);
            return;
        }

        if (context.Request.Path.StartsWithSegments("/api", StringComparison.Ordinal))
        {
            await ApiAnswer.Wrong(new Problem("sign-in", "sign-in-needed", "Nobody is signed in on this device."), StatusCodes.Status401Unauthorized).ExecuteAsync(context).ConfigureAwait(false);
            return;
        }

        var to = HttpMethods.IsGet(context.Request.Method) ? context.Request.Path + context.Request.QueryString : "/";
        context.Response.Redirect(door.First ? "/code" : to == "/" ? "/sign-in" : $"/sign-in?to={Uri.EscapeDataString(to)}");
    });
}
