using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace Trundle.Web.Host;

/// <summary>What the host says to whoever runs it.</summary>
internal static partial class Log
{
    public static void Fault(HttpContext context, Exception exception) =>
        Failed(context.RequestServices.GetRequiredService<ILoggerFactory>().CreateLogger("Trundle"), context.Request.Method, context.Request.Path, exception);

    [LoggerMessage(Level = LogLevel.Error, Message = "{Method} {Path} failed")]
    private static partial void Failed(ILogger logger, string method, string path, Exception exception);
}
