using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Sheets;
using Trundle.Store;
using Trundle.Visits.Keeping;
using Trundle.Web.Api;
using Trundle.Web.Office.Forms;
using Trundle.Web.Languages;
using Trundle.Web.People;

namespace Trundle.Web.Office.Registrations;

/// <summary>Tyres that were sold and are registered with their makers, where the workshop says that it does.</summary>
internal static class RegistrationEndpoints
{
    public static void MapRegistrations(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/registrations", (Guid? visit, HttpContext context, WorkshopStore store, TimeProvider clock) =>
            visit is { } id && store.Visits.Find(id) is null ? Results.NotFound() : List(context, store, clock, visit, null));
        routes.MapPost("/registrations", Record);
        routes.MapPost("/registrations/seller", Declare);
        routes.MapGet("/registrations.csv", (WorkshopStore store) => Results.File(Encoding.UTF8.GetBytes(Registration.Csv(store.Registrations.All())), "text/csv", "registrations.csv"));
        routes.MapGet("/registrations/{id:guid}", (Guid id, HttpContext context, WorkshopStore store, TimeProvider clock) =>
            store.Registrations.Find(id) is { } registration ? One(context, store, clock, registration, null) : Results.NotFound());
        routes.MapPost("/registrations/{id:guid}", Add);
        routes.MapPost("/registrations/{id:guid}/purchaser", RemovePurchaser);
        routes.MapGet("/registrations/{id:guid}/form.pdf", Form);
    }

    /// <summary>The workshop says that it registers tyres, or that it does not.</summary>
    private static IResult Declare(HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        var form = RegistrationForms.OfSeller(store.Registrations.Seller()).Sent(sent);
        if (By(context, store, clock) is not { } by)
        {
            return List(context, store, clock, null, form with { Problem = NobodyChosen });
        }

        var body = sent["form"] == "not" ? null : RegistrationForms.SellerBody(form);
        return store.Registrations.Declare(body, Today(clock), by) is { } problem
            ? List(context, store, clock, null, form with { Problem = problem })
            : Results.LocalRedirect("~/registrations");
    }

    private static IResult Record(HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        Guid? visit = Guid.TryParseExact(sent["visit"], "D", out var from) && store.Visits.Find(from) is not null ? from : null;
        var form = Blank(store, clock, visit).Sent(sent);
        if (By(context, store, clock) is not { } by)
        {
            return List(context, store, clock, visit, form with { Problem = NobodyChosen });
        }

        if (store.Registrations.Seller() is not { } seller)
        {
            return List(context, store, clock, visit, null);
        }

        return DayOf(form).Then(on => store.Registrations.Record(sent.Identifier(), visit, RegistrationForms.SaleBody(form, seller.Party), on, Today(clock), by)).Match(
            registration => Results.LocalRedirect($"~/registrations/{registration.Kept.Id:D}"),
            problem => List(context, store, clock, visit, RegistrationForms.With(form, problem)));
    }

    /// <summary>Puts a sale right, or records in which way it was registered: which form, its field <c>form</c> says.</summary>
    private static IResult Add(Guid id, HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        if (store.Registrations.Find(id) is not { } registration)
        {
            return Results.NotFound();
        }

        var forms = Forms(registration, Today(clock));
        if (forms.FirstOrDefault(f => f.Key == sent["form"]) is not { } blank)
        {
            return One(context, store, clock, registration, RegistrationForms.Way(Today(clock)) with { Problem = new Problem("form", "word-unknown", "Open the page again and use one of its forms.") });
        }

        var form = blank.Sent(sent);
        if (By(context, store, clock) is not { } by)
        {
            return One(context, store, clock, registration, form with { Problem = NobodyChosen });
        }

        var (kind, body) = form.Key == RegistrationForms.Done ? (form["way"], "{}") : (RegistrationRecords.Corrected, RegistrationForms.SaleBody(form, registration.Sale.Seller));
        return DayOf(form).Then(on => store.Registrations.Add(id, new NewKeptRecord(sent.Identifier(), kind, on, body), Today(clock), by)).Match(
            _ => Results.LocalRedirect($"~/registrations/{id:D}"),
            problem => One(context, store, clock, registration, RegistrationForms.With(form, problem)));
    }

    private static IResult RemovePurchaser(Guid id, HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        if (store.Registrations.Find(id) is not { } registration)
        {
            return Results.NotFound();
        }

        var way = RegistrationForms.Way(Today(clock));
        return By(context, store, clock) is not { } by
            ? One(context, store, clock, registration, way with { Problem = NobodyChosen })
            : store.Registrations.RemovePurchaser(id, Today(clock), by).Match(
                _ => Results.LocalRedirect($"~/registrations/{id:D}"),
                problem => One(context, store, clock, registration, way with { Problem = problem }));
    }

    /// <summary>The form for the purchaser or the maker: <c>?paper=letter|a4</c>.</summary>
    private static IResult Form(Guid id, HttpContext context, WorkshopStore store)
    {
        if (store.Registrations.Find(id) is not { } registration)
        {
            return Results.NotFound();
        }

        var word = context.Request.Query.ContainsKey("paper") ? context.Request.Query["paper"].ToString() : "letter";
        return SheetWords.PaperOf(word) is not { } paper
            ? ApiAnswer.Wrong(new Problem("paper", "word-unknown", $"'{NumberText.Shown(word)}' is not a word here; write {SheetWords.Papers}."))
            : Results.File(RegistrationSheet.Write(registration, paper, ReaderLocale.Shop(context)), "application/pdf", $"registration-{registration.Kept.Number}.pdf");
    }

    private static IResult List(HttpContext context, WorkshopStore store, TimeProvider clock, Guid? visit, OfficeForm? wrong)
    {
        var seller = store.Registrations.Seller();
        var (blankSeller, blankSale) = (RegistrationForms.OfSeller(seller), Blank(store, clock, visit));
        return new RazorComponentResult<RegistrationsPage>(new Dictionary<string, object?>
        {
            [nameof(RegistrationsPage.Frame)] = OfficeFrame.Of(context, store, clock),
            [nameof(RegistrationsPage.Seller)] = seller,
            [nameof(RegistrationsPage.Registrations)] = store.Registrations.All(),
            [nameof(RegistrationsPage.SellerForm)] = wrong?.Key == blankSeller.Key ? wrong : blankSeller,
            [nameof(RegistrationsPage.SaleForm)] = wrong?.Key == blankSale.Key ? wrong : blankSale,
            [nameof(RegistrationsPage.From)] = visit is { } id ? store.Visits.Find(id)?.Heading : null,
        })
        { StatusCode = wrong is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };
    }

    private static OfficeForm Blank(WorkshopStore store, TimeProvider clock, Guid? visit) =>
        RegistrationForms.OfSale(RegistrationRecords.Sold, null, visit is { } id && store.Visits.Find(id) is { } stored ? RegistrationForms.Of(stored.Fields) : [], Today(clock));

    private static IReadOnlyList<OfficeForm> Forms(Registration registration, DateOnly today) => registration.Sale.Purchaser is null
        ? []
        : [RegistrationForms.Way(today), RegistrationForms.OfSale(RegistrationRecords.Corrected, registration.Sale, registration.Sale.Tyres, registration.SoldOn)];

    private static RazorComponentResult One(HttpContext context, WorkshopStore store, TimeProvider clock, Registration registration, OfficeForm? wrong) =>
        new RazorComponentResult<RegistrationPage>(new Dictionary<string, object?>
        {
            [nameof(RegistrationPage.Frame)] = OfficeFrame.Of(context, store, clock),
            [nameof(RegistrationPage.Registration)] = registration,
            [nameof(RegistrationPage.Seller)] = store.Registrations.Seller(),
            [nameof(RegistrationPage.Visit)] = registration.Kept.Visit is { } visit ? store.Visits.Find(visit)?.Heading : null,
            [nameof(RegistrationPage.Forms)] = Forms(registration, Today(clock)).Select(f => f.Key == wrong?.Key ? wrong : f).ToList(),
        })
        { StatusCode = wrong is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };

    private static Reading<DateOnly> DayOf(OfficeForm form) => DateOnly.TryParseExact(form["on"], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var day)
        ? Reading<DateOnly>.Of(day)
        : Reading<DateOnly>.Failed(new Problem("on", "date-unreadable", "Give a day: year-month-day, for example 2026-03-14."));

    private static DateOnly Today(TimeProvider clock) => DateOnly.FromDateTime(clock.GetLocalNow().DateTime);

    private static Recorder? By(HttpContext context, WorkshopStore store, TimeProvider clock) =>
        WhoEnters.On(context, store) is { } person ? new Recorder(person.Name, person.Role, clock.GetUtcNow()) : null;

    private static Problem NobodyChosen => new("by-whom", "person-unknown", "First choose who enters, on the people page.");
}
