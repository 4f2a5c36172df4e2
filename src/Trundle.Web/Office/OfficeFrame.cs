using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Trundle.Store;
using Trundle.Web.Office.Board;
using Trundle.Web.People;

namespace Trundle.Web.Office;

/// <summary>What stands around every office page: who enters, what is in the workshop, what day it is.</summary>
/// <param name="Person">Who enters on this device, or null where nobody was chosen yet.</param>
/// <param name="Lines">The board's lines.</param>
/// <param name="Now">The workshop's time.</param>
public sealed record OfficeFrame(Person? Person, IReadOnlyList<BoardLine> Lines, DateTimeOffset Now)
{
    /// <summary>Reads it for one request.</summary>
    internal static OfficeFrame Of(HttpContext context, WorkshopStore store, TimeProvider clock)
    {
        var now = clock.GetLocalNow();
        return new OfficeFrame(WhoEnters.On(context, store), context.RequestServices.GetRequiredService<BoardLines>().All(now), now);
    }
}
