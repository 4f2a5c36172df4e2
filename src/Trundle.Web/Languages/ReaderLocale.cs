using System.Collections.Concurrent;
using System.IO.Compression;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using Trundle.Sheets;
using Trundle.Store;
using Trundle.Web.Accounts;
using Trundle.Web.Client.Glass;
using Trundle.Web.People;
using Trundle.Words;

namespace Trundle.Web.Languages;

/// <summary>
/// In which locale somebody reads on this device: as the person chose on the people page, else as the browser asks, else as the workshop does. The choice is
/// kept on the device beside the person's number; the papers that a person prints are in it too.
/// </summary>
internal static class ReaderLocale
{
    private const string Cookie = "trundle-texts";

    /// <summary>The locale for a request.</summary>
    public static string Of(HttpContext context)
    {
        var person = WhoEnters.On(context, context.RequestServices.GetRequiredService<WorkshopStore>())?.Id.ToString(System.Globalization.CultureInfo.InvariantCulture) ?? "";
        return Chosen(context).GetValueOrDefault(person)
            ?? Locales.Asked(context.Request.Headers.AcceptLanguage.ToString())
            ?? Options(context).Locale;
    }

    /// <summary>The texts for a request.</summary>
    public static Texts Texts(HttpContext context) => Options(context).TextsOf(Of(context));

    /// <summary>The texts of the workshop's papers.</summary>
    public static Texts Shop(HttpContext context) => Options(context).TextsOf(Options(context).Locale);

    /// <summary>The paper in the workshop's printers.</summary>
    public static string ShopPaper(HttpContext context) => SheetLocale.Paper(Options(context).Locale) == PaperSize.Letter ? "letter" : "a4";

    private static BayOptions Options(HttpContext context) => context.RequestServices.GetRequiredService<BayOptions>();

    /// <summary>Keeps what a person chose.</summary>
    public static void Choose(HttpContext context, long person, string locale)
    {
        var all = Chosen(context);
        all[person.ToString(System.Globalization.CultureInfo.InvariantCulture)] = locale;
        context.Response.Cookies.Append(Cookie, string.Join('.', all.Select(c => $"{c.Key}:{c.Value}")), new CookieOptions
        {
            HttpOnly = true,
            SameSite = SameSiteMode.Strict,
            Secure = context.Request.IsHttps,
            MaxAge = TimeSpan.FromDays(365),
            IsEssential = true,
        });
    }

    /// <summary>Has every page of a request said to its reader.</summary>
    public static void UseReader(this IApplicationBuilder app) => app.Use((context, next) =>
    {
        Reader.Asks(() => Texts(context));
        return next(context);
    });

    /// <summary>The texts of a locale, for the bay in the browser.</summary>
    public static void MapTexts(this IEndpointRouteBuilder routes) => routes.MapGet("/texts/{locale}.json", (string locale, HttpContext context) =>
    {
        if (Locales.Of(locale) is not { } spoken)
        {
            return Results.NotFound();
        }

        context.Response.Headers.CacheControl = "no-cache";
        context.Response.Headers.Vary = "Accept-Encoding";
        if (!context.Request.Headers.AcceptEncoding.ToString().Contains("gzip", StringComparison.Ordinal))
        {
            return Results.Bytes(SheetLocale.Json(spoken), "application/json");
        }

        context.Response.Headers.ContentEncoding = "gzip";
        return Results.Bytes(Packed.GetOrAdd(spoken, Pack), "application/json");
    }).WithMetadata(HoldsNothing.Mark);

    private static readonly ConcurrentDictionary<string, byte[]> Packed = new(StringComparer.Ordinal);

    private static byte[] Pack(string locale)
    {
        using var packed = new MemoryStream();
        // Over plain http a browser asks for no better one.
        using (var gzip = new GZipStream(packed, CompressionLevel.SmallestSize))
        {
            gzip.Write(SheetLocale.Json(locale));
        }

        return packed.ToArray();
    }

    private static Dictionary<string, string> Chosen(HttpContext context)
    {
        var kept = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var part in (context.Request.Cookies[Cookie] ?? "").Split('.'))
        {
            if (part.Split(':') is [var person, var tag] && Locales.Of(tag) is { } locale)
            {
                kept[person] = locale;
            }
        }

        return kept;
    }
}
