using System.Globalization;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Trundle.Store;
using Trundle.Web.Accounts;

namespace Trundle.Web.People;

/// <summary>
/// Who enters on this device. Where people sign in it is the one whose password or PIN was given there last; in an invented workshop it is chosen on
/// the people page and remembered by a cookie, which names a person and proves nothing.
/// </summary>
internal static class WhoEnters
{
    private const string Cookie = "trundle-person";

    /// <summary>The person who enters on this device, or null.</summary>
    public static Person? On(HttpContext context, WorkshopStore store)
    {
        if (Needed(context))
        {
            return Device.Of(context)?.Now;
        }

        return context.Request.Cookies.TryGetValue(Cookie, out var text) && long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var id)
            ? store.People.Find(id)
            : null;
    }

    /// <summary>Everybody who may enter on this device.</summary>
    public static IReadOnlyList<Person> Offered(HttpContext context, WorkshopStore store)
    {
        var all = store.People.All();
        return !Needed(context) ? all : [.. all.Where(p => Device.Of(context)?.Here.Contains(p.Id) == true)];
    }

    /// <summary>True where people sign in.</summary>
    public static bool Needed(HttpContext context) => context.RequestServices.GetRequiredService<Door>().Needed;

    /// <summary>Remembers on this device whom somebody chose.</summary>
    public static void Remember(HttpContext context, Person person) =>
        context.Response.Cookies.Append(Cookie, person.Id.ToString(CultureInfo.InvariantCulture), new CookieOptions
        {
            HttpOnly = true,
            SameSite = SameSiteMode.Strict,
            Secure = context.Request.IsHttps,
            MaxAge = TimeSpan.FromDays(365),
            IsEssential = true,
        });
}
