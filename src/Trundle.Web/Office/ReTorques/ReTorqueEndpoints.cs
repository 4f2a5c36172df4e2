using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Web.People;

namespace Trundle.Web.Office.ReTorques;

/// <summary>Re-torques that visits left due: followed up, and recorded where they were done.</summary>
internal static class ReTorqueEndpoints
{
    private static readonly string[] Told = ["on", "odometer", "result", "wrench", "note"];

    public static void MapReTorque(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/re-torque", (HttpContext context, WorkshopStore store, TimeProvider clock) => Page(context, store, clock, null, null));
        routes.MapPost("/re-torque/{id:guid}", Record);
    }

    /// <summary>Records that it was done, as entries of the visit that left it due.</summary>
    private static IResult Record(Guid id, HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        if (store.Visits.Find(id) is not { } visit)
        {
            return Results.NotFound();
        }

        if (WhoEnters.On(context, store) is not { } person)
        {
            return Page(context, store, clock, id, new Problem("by", "person-unknown", "First choose who enters, on the people page."));
        }

        if (visit.Heading.HandedBackAt is null)
        {
            return Page(context, store, clock, id, new Problem("visit", "not-handed-back", "This vehicle is still in the workshop: its fixings are tightened there."));
        }

        var now = clock.GetUtcNow();
        var entries = Texts(sent, person).Select(t => new Entry(Guid.CreateVersion7(now), t.Field, t.Typed, person.Name, person.Role, now)).ToList();
        var problems = new List<Problem>();
        VisitStanding.Of(visit.Fields.With(entries), id, store.Condemned.Standing(), problems);
        if (problems.FirstOrDefault(p => p.Where.StartsWith(ReTorqueRecord.Field, StringComparison.Ordinal)) is { } wrong)
        {
            return Page(context, store, clock, id, wrong);
        }

        return store.Visits.Append(id, entries, now).Match(
            taken => taken.Refused.Count == 0 ? Results.LocalRedirect("~/re-torque") : Page(context, store, clock, id, taken.Refused[0].Problem),
            problem => Page(context, store, clock, id, problem));
    }

    private static IEnumerable<(string Field, string Typed)> Texts(IFormCollection sent, Person person)
    {
        foreach (var name in Told)
        {
            yield return ($"{ReTorqueRecord.Field}.{name}", WithUnit(sent[name].ToString().Trim(), name == "odometer" ? "km" : null));
        }

        foreach (var (name, value) in sent.Where(s => s.Key.StartsWith("torques.", StringComparison.Ordinal)))
        {
            var torques = value.ToString().Split([' ', ';'], StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
            for (var i = 0; i < torques.Length; i++)
            {
                yield return (ReTorqueRecord.TorqueAt(name["torques.".Length..], i + 1), WithUnit(torques[i].TrimEnd(','), person.Habits.Torque));
            }
        }
    }

    private static string WithUnit(string typed, string? unit) =>
        unit is not null && NumberText.Read(typed).IsRead ? string.Create(CultureInfo.InvariantCulture, $"{typed} {unit}") : typed;

    private static RazorComponentResult Page(HttpContext context, WorkshopStore store, TimeProvider clock, Guid? visit, Problem? problem)
    {
        var frame = OfficeFrame.Of(context, store, clock);
        return new RazorComponentResult<ReTorquePage>(new Dictionary<string, object?>
        {
            [nameof(ReTorquePage.Frame)] = frame,
            [nameof(ReTorquePage.Lines)] = ReTorqueLine.All(store, frame.Now),
            [nameof(ReTorquePage.Wrenches)] = store.Instruments.All().Where(i => i.Instrument.Kind == Trundle.Visits.Instruments.InstrumentKind.TorqueWrench && i.Instrument.OutOfUseFrom is null).Select(i => i.Instrument.Name).ToList(),
            [nameof(ReTorquePage.Visit)] = visit,
            [nameof(ReTorquePage.Problem)] = problem,
        })
        { StatusCode = problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };
    }
}
