using System.Globalization;
using Microsoft.AspNetCore.Http;
using Trundle.Store;

namespace Trundle.Web.People;

/// <summary>Who enters on this device: chosen on the people page and remembered by a cookie. It names a person and proves nothing.</summary>
internal static class WhoEnters
{
    private const string Cookie = "trundle-person";

    /// <summary>The person chosen on this device, or null.</summary>
    public static Person? On(HttpContext context, WorkshopStore store) =>
        context.Request.Cookies.TryGetValue(Cookie, out var text) && long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var id)
            ? store.People.Find(id)
            : null;

    /// <summary>Remembers a person on this device.</summary>
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
