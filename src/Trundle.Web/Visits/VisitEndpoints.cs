using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Web.Accounts;
using Trundle.Web.Api;
using Trundle.Web.People;

namespace Trundle.Web.Visits;

/// <summary>Visits: listed, opened, read, and added to.</summary>
internal static class VisitEndpoints
{
    public static void MapVisits(this IEndpointRouteBuilder routes)
    {
        var visits = routes.MapGroup("/api/v1/visits").DisableAntiforgery();
        visits.MapGet("", (WorkshopStore store) => ApiAnswer.Json(new JsonObject
        {
            ["visits"] = new JsonArray([.. store.Visits.InTheWorkshop().Select(v => (JsonNode?)VisitJson.Heading(v.Heading))]),
        }));
        visits.MapPost("", OpenAsync);
        routes.MapGet("/api/v1/condemned", (WorkshopStore store) => ApiAnswer.Json(VisitJson.Of(store.Condemned.Standing())));
        visits.MapGet("/{id:guid}", One);
        visits.MapPost("/{id:guid}/entries", AppendAsync);
        visits.MapGet("/{id:guid}/sheet.pdf", SheetEndpoint.Sheet);
        visits.MapPhotos();
        visits.MapGet("/{id:guid}/file.json", (Guid id, WorkshopStore store) => store.Visits.Find(id) is { } visit
            ? Results.Text(visit.Fields.Assemble().Text, "application/json", System.Text.Encoding.UTF8)
            : Unknown());
    }

    private static IResult One(Guid id, WorkshopStore store, HttpRequest request)
    {
        var since = 0L;
        if (request.Query.TryGetValue("since", out var text) && !long.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out since))
        {
            return ApiAnswer.Wrong(new Problem("since", "not-a-whole-number", "'since' is the 'last' of an earlier answer."));
        }

        return store.Visits.Find(id) is { } visit ? ApiAnswer.Json(VisitJson.Of(visit, store.Condemned.Standing(), since).WithInstruments(store).WithStock(store).WithReTorqueBefore(visit, store)) : Unknown();
    }

    /// <summary>Opens a visit; the body may bring its identifier and its first entries.</summary>
    private static async Task<IResult> OpenAsync(HttpContext context, WorkshopStore store, WorkshopRules rules, TimeProvider clock)
    {
        var body = await ApiAnswer.BodyAsync(context.Request).ConfigureAwait(false);
        if (!body.IsRead)
        {
            return ApiAnswer.Wrong(body.Problem!, ApiAnswer.StatusOf(body.Problem!));
        }

        var problems = new List<Problem>();
        var o = new FileObject(body.Value, problems);
        var id = EntriesReader.Id(o, "id") ?? Guid.CreateVersion7();
        var by = o.Text("by") ?? WhoEnters.On(context, store)?.Name;
        var entries = o.Has("entries") ? EntriesReader.Read(o) : [];
        o.Done();
        if (problems.Count > 0)
        {
            return ApiAnswer.Wrong(problems[0]);
        }

        if (MadeElsewhere(context, store, by, entries) is { } elsewhere)
        {
            return ApiAnswer.Wrong(elsewhere);
        }

        return Opening.Open(store, rules, clock, id, by, entries).Match(
            opened => ApiAnswer.Json(VisitJson.Of(opened, store.Condemned.Standing(), 0), StatusCodes.Status201Created),
            problem => ApiAnswer.Wrong(problem));
    }

    private static async Task<IResult> AppendAsync(Guid id, HttpContext context, WorkshopStore store, TimeProvider clock)
    {
        var body = await ApiAnswer.BodyAsync(context.Request).ConfigureAwait(false);
        if (!body.IsRead)
        {
            return ApiAnswer.Wrong(body.Problem!, ApiAnswer.StatusOf(body.Problem!));
        }

        var problems = new List<Problem>();
        var o = new FileObject(body.Value, problems);
        var entries = EntriesReader.Read(o);
        o.Done();
        if (problems.Count > 0)
        {
            return ApiAnswer.Wrong(problems[0]);
        }

        return store.Visits.Append(id, entries, clock.GetUtcNow(), Device.MayMake(context, store)).Match(
            taken => ApiAnswer.Json(Taken(taken)),
            problem => problem.Code == "visit-unknown" ? Unknown() : ApiAnswer.Wrong(problem));
    }

    /// <summary>Who opens a visit, and whoever made its first entries, are signed in on this device.</summary>
    private static Problem? MadeElsewhere(HttpContext context, WorkshopStore store, string? by, IReadOnlyList<Entry> entries)
    {
        if (Device.MayMake(context, store) is not { } may)
        {
            return null;
        }

        var wrong = entries.Select(may).FirstOrDefault(p => p is not null);
        return wrong ?? (by is not null && entries.All(e => e.By != by) ? may(new Entry(Guid.Empty, "by", "", by, Role.Trainee, DateTimeOffset.MaxValue)) : null);
    }

    private static JsonObject Taken(TakenEntries taken) => new()
    {
        ["taken"] = Ids(taken.Taken),
        ["already"] = Ids(taken.Already),
        ["refused"] = new JsonArray([.. taken.Refused.Select(r =>
        {
            var json = ApiAnswer.ErrorBody(r.Problem);
            json.Insert(0, "id", r.Id.ToString("D"));
            return (JsonNode?)json;
        })]),
        ["added"] = new JsonArray([.. taken.Added.Select(e => (JsonNode?)VisitJson.Of(e))]),
    };

    private static JsonArray Ids(IEnumerable<Guid> ids) => new([.. ids.Select(id => (JsonNode?)id.ToString("D"))]);

    private static IResult Unknown() =>
        ApiAnswer.Wrong(new Problem("visit", "visit-unknown", "There is no such visit in this workshop."), StatusCodes.Status404NotFound);
}
