using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Store;
using Trundle.Web.Office.Arrival;
using Trundle.Web.Office.Board;
using Trundle.Web.Office.Calendar;
using Trundle.Web.Office.Condemned;
using Trundle.Web.Office.Fleet;
using Trundle.Web.Office.History;
using Trundle.Web.Office.Incidents;
using Trundle.Web.Office.Instruments;
using Trundle.Web.Office.Lessons;
using Trundle.Web.Office.People;
using Trundle.Web.Office.Procedures;
using Trundle.Web.Office.ReTorques;
using Trundle.Web.Office.Scan;
using Trundle.Web.Office.Scrap;
using Trundle.Web.Office.Recall;
using Trundle.Web.Office.Registrations;
using Trundle.Web.Office.Roll;
using Trundle.Web.Office.Search;
using Trundle.Web.Office.Sets;
using Trundle.Web.Office.Sources;
using Trundle.Web.Office.Stock;
using Trundle.Web.Office.Visit;

namespace Trundle.Web.Office;

/// <summary>The office: pages with real forms that work without script.</summary>
internal static class OfficeEndpoints
{
    public static void MapOffice(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/", (HttpContext context, WorkshopStore store, TimeProvider clock) =>
            new RazorComponentResult<BoardPage>(new
            {
                Frame = OfficeFrame.Of(context, store, clock),
                People = store.People.All(),
                Low = store.Stock.All().Where(i => i.Low).ToList(),
                ReTorques = ReTorqueLine.All(store, clock.GetLocalNow()).Count(l => l.Due.IsOpen && l.Due.AskOn <= DateOnly.FromDateTime(clock.GetLocalNow().DateTime)),
            }));
        routes.MapBoardEvents();
        routes.MapArrival();
        routes.MapVisitPage();
        routes.MapHistory();
        routes.MapSearch();
        routes.MapScan();
        routes.MapPeoplePage();
        routes.MapCondemned();
        routes.MapReTorque();
        routes.MapCalendar();
        routes.MapInstruments();
        routes.MapProcedures();
        routes.MapStock();
        routes.MapScrap();
        routes.MapIncidents();
        routes.MapRoll();
        routes.MapLessons();
        routes.MapFleet();
        routes.MapSets();
        routes.MapRegistrations();
        routes.MapRecall();
        routes.MapSources();
    }
}
