using System.Security.Cryptography;
using System.Text;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;

namespace Trundle.Web.Accounts;

/// <summary>The browser that asks: known by a random token in a cookie, of which the store holds the hash only.</summary>
/// <param name="Id">The hash of its token.</param>
/// <param name="Now">Who enters there, or null where nobody is signed in.</param>
/// <param name="SignIns">Everybody who is or was signed in there.</param>
internal sealed record Device(string Id, Person? Now, IReadOnlyList<SignIn> SignIns)
{
    private const string Cookie = "trundle-device";
    private static readonly object Kept = new();

    /// <summary>The people whose sign-in lasts.</summary>
    public IEnumerable<long> Here => SignIns.Where(s => s.Until is null).Select(s => s.PersonId).Distinct();

    /// <summary>Whether a person may be named as who made an entry: signed in here, or signed in here still when it was made.</summary>
    public bool Made(long person, DateTimeOffset at) => SignIns.Any(s => s.PersonId == person && (s.Until is null || at <= s.Until));

    /// <summary>The browser that asks, or null where it holds no token that is known.</summary>
    public static Device? Of(HttpContext context)
    {
        if (context.Items.TryGetValue(Kept, out var kept))
        {
            return (Device?)kept;
        }

        Device? device = null;
        if (context.Request.Cookies.TryGetValue(Cookie, out var token) && token.Length is > 20 and < 100)
        {
            var store = context.RequestServices.GetRequiredService<WorkshopStore>();
            var clock = context.RequestServices.GetRequiredService<TimeProvider>();
            var id = Hash(token);
            var now = clock.GetUtcNow();
            if (store.Accounts.Seen(id, now, now - Door.Unused))
            {
                var (person, signIns) = store.Accounts.At(id);
                device = new Device(id, person is { } p ? store.People.Find(p) : null, signIns);
            }
        }

        context.Items[Kept] = device;
        return device;
    }

    /// <summary>Says of an entry why it cannot have been made at the browser that asks; null altogether where nobody signs in.</summary>
    public static Func<Entry, Problem?>? MayMake(HttpContext context, WorkshopStore store)
    {
        if (!context.RequestServices.GetRequiredService<Door>().Needed)
        {
            return null;
        }

        var device = Of(context);
        var people = store.People.All().ToDictionary(p => p.Name, p => p.Id, StringComparer.OrdinalIgnoreCase);
        return entry => people.TryGetValue(entry.By, out var person) && device?.Made(person, entry.At) == true
            ? null
            : new Problem(entry.Field, "not-signed-in", $"{NumberText.Shown(entry.By)} was not signed in on this device. Sign in with the password, and enter it again.");
    }

    /// <summary>Signs a person in at the browser that asks. Where nobody is signed in there it gets a new token.</summary>
    public static void SignIn(HttpContext context, Person person)
    {
        var store = context.RequestServices.GetRequiredService<WorkshopStore>();
        var now = context.RequestServices.GetRequiredService<TimeProvider>().GetUtcNow();
        var device = Of(context);
        var id = device?.Id;
        if (device is null || !device.Here.Any())
        {
            var token = Convert.ToHexString(RandomNumberGenerator.GetBytes(24));
            id = Hash(token);
            context.Response.Cookies.Append(Cookie, token, new CookieOptions
            {
                HttpOnly = true,
                SameSite = SameSiteMode.Strict,
                Secure = context.Request.IsHttps,
                MaxAge = TimeSpan.FromDays(365),
                IsEssential = true,
            });
        }

        store.Accounts.SignIn(id!, person.Id, now);
        context.Items.Remove(Kept);
    }

    private static string Hash(string token) => Convert.ToHexString(SHA256.HashData(Encoding.UTF8.GetBytes(token)));
}
