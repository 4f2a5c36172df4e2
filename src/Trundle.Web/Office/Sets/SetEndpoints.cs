using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Sheets;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Visits.Keeping;
using Trundle.Web.Api;
using Trundle.Web.Office.Forms;
using Trundle.Web.Languages;
using Trundle.Web.People;
using Trundle.Web.Visits;

namespace Trundle.Web.Office.Sets;

/// <summary>Sets of wheels in storage: taken in, found, labelled, judged again, given out.</summary>
internal static class SetEndpoints
{
    public static void MapSets(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/sets", List);
        routes.MapGet("/sets/new", (Guid? visit, HttpContext context, WorkshopStore store, TimeProvider clock) =>
            visit is { } id && store.Visits.Find(id) is null ? Results.NotFound() : New(context, store, clock, visit, null));
        routes.MapPost("/sets/new", TakeIn);
        routes.MapGet("/sets/{id:guid}", (Guid id, HttpContext context, WorkshopStore store, TimeProvider clock) =>
            store.Sets.Find(id) is { } set ? One(context, store, clock, set, null) : Results.NotFound());
        routes.MapPost("/sets/{id:guid}", Record);
        routes.MapPost("/sets/{id:guid}/visit", OpenVisit);
        routes.MapPost("/sets/{id:guid}/erase", EraseOwner);
        routes.MapGet("/sets/{id:guid}/label.pdf", Label);
        routes.MapGet("/sets/{id:guid}/file.json", (Guid id, WorkshopStore store, TimeProvider clock) => store.Sets.Find(id) is { } set
            ? Results.Text(set.FileOn(Today(clock)).Text, "application/json", System.Text.Encoding.UTF8)
            : Results.NotFound());
    }

    private static RazorComponentResult List(HttpContext context, WorkshopStore store, TimeProvider clock)
    {
        var (find, withOut) = (context.Request.Query["find"].ToString().Trim(), context.Request.Query["out"] == "yes");
        return new RazorComponentResult<SetsPage>(new Dictionary<string, object?>
        {
            [nameof(SetsPage.Frame)] = OfficeFrame.Of(context, store, clock),
            [nameof(SetsPage.Find)] = find,
            [nameof(SetsPage.WithOut)] = withOut,
            [nameof(SetsPage.Sets)] = (IReadOnlyList<WheelSet>)
            [
                .. store.Sets.All().Where(s => (withOut || s.OutOn is null) && (find.Length == 0 || s.IsNamed(find)))
                    .OrderBy(s => s.OutOn is not null).ThenBy(s => s.Place, StringComparer.OrdinalIgnoreCase).ThenBy(s => s.InOn),
            ],
        });
    }

    private static IResult TakeIn(HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        Guid? visit = Guid.TryParseExact(sent["visit"], "D", out var from) ? from : null;
        if (visit is { } id && store.Visits.Find(id) is null)
        {
            return Results.NotFound();
        }

        var before = Before(store, visit);
        var form = Blank(context, store, clock, visit).Sent(sent);
        if (By(context, store, clock) is not { } by)
        {
            return New(context, store, clock, visit, form with { Problem = NobodyChosen });
        }

        return DayOf(form).Then(on => store.Sets.TakeIn(sent.Identifier(), visit, SetForms.Body(form, before), on, Today(clock), by)).Match(
            set => Results.LocalRedirect($"~/sets/{set.Kept.Id:D}"),
            problem => New(context, store, clock, visit, form with { Problem = problem }));
    }

    /// <summary>One of the forms of a set's page: which one, its field <c>form</c> says.</summary>
    private static IResult Record(Guid id, HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        if (store.Sets.Find(id) is not { } set)
        {
            return Results.NotFound();
        }

        if (Forms(context, store, clock, set).FirstOrDefault(f => f.Key == sent["form"]) is not { } blank)
        {
            return One(context, store, clock, set, Forms(context, store, clock, set)[^1] with { Problem = new Problem("form", "word-unknown", "Open the page again and use one of its forms.") });
        }

        var form = blank.Sent(sent);
        if (By(context, store, clock) is not { } by)
        {
            return One(context, store, clock, set, form with { Problem = NobodyChosen });
        }

        var body = form.Key == SetRecords.Corrected ? SetForms.Body(form, set.Description.Fields) : KeptText.Body(form.Fields[^1].Name, form[form.Fields[^1].Name]);
        return DayOf(form).Then(on => store.Sets.Add(id, new NewKeptRecord(sent.Identifier(), form.Key, on, body), Today(clock), by)).Match(
            _ => Results.LocalRedirect($"~/sets/{id:D}"),
            problem => One(context, store, clock, set, form with { Problem = problem }));
    }

    /// <summary>Opens a visit on which the set goes on: its vehicle and wheels are entered as they were, and measured anew.</summary>
    private static IResult OpenVisit(Guid id, HttpContext context, IFormCollection sent, WorkshopStore store, WorkshopRules rules, TimeProvider clock)
    {
        if (store.Sets.Find(id) is not { } set)
        {
            return Results.NotFound();
        }

        if (By(context, store, clock) is not { } by)
        {
            return One(context, store, clock, set, SetForms.Note(Today(clock)) with { Problem = NobodyChosen });
        }

        var visit = sent.Identifier();
        if (store.Visits.Find(visit) is null)
        {
            var entries = set.Description.Fields.Newest.Where(e => e.Typed.Length > 0 && !e.Field.Contains(".pressure.", StringComparison.Ordinal))
                .Select(e => new Entry(Guid.CreateVersion7(by.At), e.Field, e.Typed, by.Name, by.Role, by.At)).ToList();
            var opened = Opening.Open(store, rules, clock, visit, by.Name, entries);
            if (!opened.IsRead)
            {
                return One(context, store, clock, set, SetForms.Note(Today(clock)) with { Problem = opened.Problem });
            }

            store.Sets.Add(id, new NewKeptRecord(Guid.CreateVersion7(by.At), SetRecords.Note, Today(clock), KeptText.Body("text", $"Visit {opened.Value.Heading.Number} was opened with it.")), Today(clock), by);
        }

        return Results.LocalRedirect($"~/bay/{visit:D}");
    }

    private static IResult EraseOwner(Guid id, HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        if (store.Sets.Find(id) is not { } set)
        {
            return Results.NotFound();
        }

        return By(context, store, clock) is not { } by
            ? One(context, store, clock, set, SetForms.Note(Today(clock)) with { Problem = NobodyChosen })
            : store.Sets.EraseOwner(id, Today(clock), by).Match(
                _ => Results.LocalRedirect($"~/sets/{id:D}"),
                problem => One(context, store, clock, set, SetForms.Note(Today(clock)) with { Problem = problem }));
    }

    /// <summary>The labels, one for each wheel: <c>?paper=a4|letter|label</c>. The code holds the address under which this page was asked for.</summary>
    private static IResult Label(Guid id, HttpContext context, WorkshopStore store)
    {
        if (store.Sets.Find(id) is not { } set)
        {
            return Results.NotFound();
        }

        var word = context.Request.Query.ContainsKey("paper") ? context.Request.Query["paper"].ToString() : ReaderLocale.ShopPaper(context);
        if (SetLabel.PaperOf(word) is not { } paper)
        {
            return ApiAnswer.Wrong(new Problem("paper", "word-unknown", $"'{NumberText.Shown(word)}' is not a word here; write {SetLabel.Papers}."));
        }

        var address = string.Create(CultureInfo.InvariantCulture, $"{context.Request.Scheme}://{context.Request.Host}/sets/{id:D}");
        var labels = set.Positions.Select(p => new LabelContent(
            $"Set {set.Kept.Number}", $"{SetForms.Word(p)}, {p}", set.Vehicle, set.Place,
            [.. new[] { Text(p, "tyre.marking"), Text(p, "tyre.tin") is { } tin ? $"TIN {tin}" : null, Depths(set, p) is { } depths ? $"tread inner / centre / outer: {depths}" : null }.OfType<string>()],
            set.InOn, address)).ToList();
        return Results.File(SetLabel.Write(labels, paper, ReaderLocale.Shop(context)), "application/pdf", $"set-{set.Kept.Number}-labels.pdf");

        string? Text(string position, string leaf) => set.Description.Fields[$"fitted.{position}.{leaf}"];
    }

    /// <summary>Least depths as typed at inner, centre and outer, or null.</summary>
    public static string? Depths(WheelSet set, string position)
    {
        var texts = ((string[])["inner", "centre", "outer"]).Select(zone => string.Join(", ", set.Description.Fields.Under($"fitted.{position}.tread.{zone}").Select(e => e.Typed))).ToList();
        return texts.TrueForAll(t => t.Length == 0) ? null : string.Join(" / ", texts.Select(t => t.Length == 0 ? "–" : t));
    }

    private static IResult New(HttpContext context, WorkshopStore store, TimeProvider clock, Guid? visit, OfficeForm? wrong) => new RazorComponentResult<NewSetPage>(new Dictionary<string, object?>
    {
        [nameof(NewSetPage.Frame)] = OfficeFrame.Of(context, store, clock),
        [nameof(NewSetPage.Form)] = wrong ?? Blank(context, store, clock, visit),
        [nameof(NewSetPage.From)] = visit is { } id ? store.Visits.Find(id)!.Heading : null,
    })
    { StatusCode = wrong is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };

    private static OfficeForm Blank(HttpContext context, WorkshopStore store, TimeProvider clock, Guid? visit) =>
        SetForms.Description(SetRecords.TakenIn, Before(store, visit), (null, null, null), Today(clock), Units(context, store));

    private static VisitFields Before(WorkshopStore store, Guid? visit) => visit is { } id ? store.Visits.Find(id)!.Fields : VisitFields.Empty;

    private static RazorComponentResult One(HttpContext context, WorkshopStore store, TimeProvider clock, WheelSet set, OfficeForm? wrong) =>
        new RazorComponentResult<SetPage>(new Dictionary<string, object?>
        {
            [nameof(SetPage.Frame)] = OfficeFrame.Of(context, store, clock),
            [nameof(SetPage.Set)] = set,
            [nameof(SetPage.Visit)] = set.Kept.Visit is { } visit ? store.Visits.Find(visit)?.Heading : null,
            [nameof(SetPage.Forms)] = Forms(context, store, clock, set).Select(f => f.Key == wrong?.Key ? wrong : f).ToList(),
        })
        { StatusCode = wrong is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };

    private static IReadOnlyList<OfficeForm> Forms(HttpContext context, WorkshopStore store, TimeProvider clock, WheelSet set)
    {
        var today = Today(clock);
        return
        [
            .. set.OutOn is null ? new[] { SetForms.GivenOut(set, today), SetForms.Moved(set, today) } : [],
            SetForms.Description(SetRecords.Corrected, set.Description.Fields, (set.Description.Owner, set.Description.Season, set.Place), today, Units(context, store)),
            SetForms.Note(today),
        ];
    }

    private static Reading<DateOnly> DayOf(OfficeForm form) => DateOnly.TryParseExact(form["on"], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
        ? Reading<DateOnly>.Of(day)
        : Reading<DateOnly>.Failed(new Problem("on", "date-unreadable", "Give a day: year-month-day, for example 2026-03-14."));

    private static UnitHabits Units(HttpContext context, WorkshopStore store) => WhoEnters.On(context, store)?.Habits ?? UnitHabits.Metric;

    private static DateOnly Today(TimeProvider clock) => DateOnly.FromDateTime(clock.GetLocalNow().DateTime);

    private static Recorder? By(HttpContext context, WorkshopStore store, TimeProvider clock) =>
        WhoEnters.On(context, store) is { } person ? new Recorder(person.Name, person.Role, clock.GetUtcNow()) : null;

    private static Problem NobodyChosen => new("by-whom", "person-unknown", "First choose who enters, on the people page.");
}
