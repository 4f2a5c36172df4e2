using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Instruments;
using Trundle.Web.Office.Forms;
using Trundle.Web.People;

namespace Trundle.Web.Office.Instruments;

/// <summary>The workshop's instruments, each with its record and its history.</summary>
internal static class InstrumentEndpoints
{
    public static void MapInstruments(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/instruments", (HttpContext context, WorkshopStore store, TimeProvider clock) =>
            List(context, store, clock, InstrumentForm.Details(null, Today(clock))));
        routes.MapPost("/instruments", Add);
        routes.MapGet("/instruments/{id:guid}", (Guid id, HttpContext context, WorkshopStore store, TimeProvider clock) =>
            store.Instruments.Find(id) is { } stored ? One(context, store, clock, stored, null) : Results.NotFound());
        routes.MapPost("/instruments/{id:guid}", Record);
    }

    private static IResult Add(HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        var form = InstrumentForm.Details(null, Today(clock)).Sent(sent);
        if (By(context, store, clock) is not { } by)
        {
            return List(context, store, clock, form with { Problem = NobodyChosen });
        }

        if (InstrumentWords.KindOf(form["kind"]) is not { } kind)
        {
            return List(context, store, clock, form with { Problem = new Problem("kind", "word-unknown", "Choose what it is.") });
        }

        return DetailsOf(form).Then(details => store.Instruments.Add(sent.Identifier(), kind, details, by)).Match(
            added => Results.LocalRedirect($"~/instruments/{added.Instrument.Id:D}"),
            problem => List(context, store, clock, form with { Problem = problem }));
    }

    /// <summary>One of the forms of an instrument's page: which one, its field <c>form</c> says.</summary>
    private static IResult Record(Guid id, HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        if (store.Instruments.Find(id) is not { } stored)
        {
            return Results.NotFound();
        }

        var key = sent["form"].ToString();
        var (kind, today) = (InstrumentWords.RecordKindOf(key), Today(clock));
        var blank = kind switch
        {
            null => null,
            InstrumentRecordKind.Details => InstrumentForm.Details(stored.Instrument, today),
            InstrumentRecordKind.Profile => InstrumentForm.Profile(stored.Instrument),
            { } of => InstrumentForm.Record(stored, of, WhoEnters.On(context, store), today),
        };
        if (kind is not { } record || blank?.Sent(sent) is not { } form)
        {
            return One(context, store, clock, stored, InstrumentForm.Details(stored.Instrument, today) with { Problem = new Problem("form", "word-unknown", "Open the page again and use one of its forms.") });
        }

        if (By(context, store, clock) is not { } by)
        {
            return One(context, store, clock, stored, form with { Problem = NobodyChosen });
        }

        var kept = record == InstrumentRecordKind.Details
            ? DetailsOf(form).Then(details => store.Instruments.Change(id, sent.Identifier(), details, today, by))
            : NewRecord(form, stored.Instrument.Kind, record, sent.Identifier(), today).Then(made => store.Instruments.Record(id, made, today, by));
        return kept.Match(
            _ => Results.LocalRedirect($"~/instruments/{id:D}"),
            problem => One(context, store, clock, stored, form.With(problem)));
    }

    private static Reading<NewInstrumentRecord> NewRecord(InstrumentForm form, InstrumentKind kind, InstrumentRecordKind record, Guid id, DateOnly today)
    {
        if (record == InstrumentRecordKind.Profile)
        {
            return Reading<NewInstrumentRecord>.Of(new NewInstrumentRecord(id, record, today, null, form.Body(kind, record), null));
        }

        return Day(form, "on").Then(on => form["due"].Length == 0
            ? Made(on, null)
            : Day(form, "due").Then(due => Made(on, due)));

        Reading<NewInstrumentRecord> Made(DateOnly on, DateOnly? due) =>
            Reading<NewInstrumentRecord>.Of(new NewInstrumentRecord(id, record, on, due, form.Body(kind, record), Guid.TryParseExact(form["supersedes"], "D", out var old) ? old : null));
    }

    private static Reading<InstrumentDetails> DetailsOf(InstrumentForm form) =>
        Day(form, "inUseFrom").Then(from => form["outOfUseFrom"].Length == 0 ? Made(form, from, null) : Day(form, "outOfUseFrom").Then(until => Made(form, from, until)));

    private static Reading<DateOnly> Day(InstrumentForm form, string name) => InstrumentJson.DayOf(form[name]) is { } day
        ? Reading<DateOnly>.Of(day)
        : Reading<DateOnly>.Failed(new Problem(name, "date-unreadable", "Give a day: year-month-day, for example 2026-03-14."));

    private static DateOnly Today(TimeProvider clock) => DateOnly.FromDateTime(clock.GetLocalNow().DateTime);

    private static Recorder? By(HttpContext context, WorkshopStore store, TimeProvider clock) =>
        WhoEnters.On(context, store) is { } person ? new Recorder(person.Name, person.Role, clock.GetUtcNow()) : null;

    private static Problem NobodyChosen => new("by-whom", "person-unknown", "First choose who enters, on the people page.");

    private static RazorComponentResult List(HttpContext context, WorkshopStore store, TimeProvider clock, InstrumentForm form) =>
        new RazorComponentResult<InstrumentsPage>(new Dictionary<string, object?>
        {
            [nameof(InstrumentsPage.Frame)] = OfficeFrame.Of(context, store, clock),
            [nameof(InstrumentsPage.Instruments)] = store.Instruments.All(),
            [nameof(InstrumentsPage.Form)] = form,
        })
        { StatusCode = form.Problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };

    private static RazorComponentResult One(HttpContext context, WorkshopStore store, TimeProvider clock, StoredInstrument stored, InstrumentForm? wrong)
    {
        var today = Today(clock);
        var person = WhoEnters.On(context, store);
        InstrumentForm[] forms =
        [
            .. InstrumentRecords.Offered(stored.Instrument.Kind).Select(kind => InstrumentForm.Record(stored, kind, person, today)),
            .. stored.Instrument.Kind is InstrumentKind.Balancer or InstrumentKind.TorqueWrench ? new[] { InstrumentForm.Profile(stored.Instrument) } : [],
            InstrumentForm.Details(stored.Instrument, today),
        ];
        return new RazorComponentResult<InstrumentPage>(new Dictionary<string, object?>
        {
            [nameof(InstrumentPage.Frame)] = OfficeFrame.Of(context, store, clock),
            [nameof(InstrumentPage.Stored)] = stored,
            [nameof(InstrumentPage.Clicks)] = stored.Instrument.Kind == InstrumentKind.TorqueWrench
                ? store.Visits.ClicksOf(stored.Instrument.Name, new DateTimeOffset((stored.Instrument.LastJudged?.On ?? stored.Instrument.InUseFrom).ToDateTime(TimeOnly.MinValue), TimeSpan.Zero))
                : null,
            [nameof(InstrumentPage.Forms)] = forms.Select(f => f.Key == wrong?.Key ? wrong : f).ToList(),
        })
        { StatusCode = wrong is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };
    }

    private static Reading<InstrumentDetails> Made(InstrumentForm form, DateOnly from, DateOnly? until) =>
        Reading<InstrumentDetails>.Of(new InstrumentDetails(form["name"], form["identification"].Length == 0 ? null : form["identification"], from, until));
}
