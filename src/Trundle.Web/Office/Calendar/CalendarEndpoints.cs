using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Trundle.Store;
using Trundle.Web.Office.ReTorques;

namespace Trundle.Web.Office.Calendar;

/// <summary>Calendar files: of one visit, for its customer; of all visits that still leave something due, for the workshop.</summary>
internal static class CalendarEndpoints
{
    private const string Type = "text/calendar";

    public static void MapCalendar(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/visits/{id:guid}/calendar.ics", (Guid id, WorkshopStore store, TimeProvider clock) => store.Visits.Find(id) is { } visit
            ? Results.File(Encoding.UTF8.GetBytes(VisitCalendar.Of(store, [visit], clock.GetLocalNow())), Type, $"{visit.Heading.Number}.ics")
            : Results.NotFound());
        routes.MapGet("/calendar.ics", (WorkshopStore store, TimeProvider clock) =>
        {
            var now = clock.GetLocalNow();
            return Results.File(Encoding.UTF8.GetBytes(VisitCalendar.Of(store, store.Visits.TightenedSince(now - ReTorqueLine.LooksBack), now)), Type, "workshop.ics");
        });
    }
}
