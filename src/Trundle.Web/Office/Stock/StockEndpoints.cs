using System.Globalization;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Paper;
using Trundle.Web.People;

namespace Trundle.Web.Office.Stock;

/// <summary>The shop's stock: the list, what came, what was counted, and at how many it is ordered.</summary>
internal static class StockEndpoints
{
    public static void MapStock(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/stock", (HttpContext context, WorkshopStore store, TimeProvider clock) => Page(context, store, clock, new StockForm()));
        routes.MapPost("/stock", Add);
        routes.MapPost("/stock/{item:guid}", Change);
    }

    private static IResult Add(HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        var form = StockForm.Sent(sent);
        return Person(context, store)
            .Then(person => form.Item().Then(item => store.Stock.Add(Identifier(sent), item, person.Name, clock.GetUtcNow())))
            .Match(_ => Results.LocalRedirect("~/stock"), problem => Page(context, store, clock, form with { Problem = problem }));
    }

    /// <summary>One of the forms of a line: which one, its field <c>form</c> says.</summary>
    private static IResult Change(Guid item, HttpContext context, IFormCollection sent, WorkshopStore store, TimeProvider clock)
    {
        var now = clock.GetUtcNow();
        var typed = sent["count"].ToString().Trim();
        return Person(context, store).Then(person => sent["form"].ToString() switch
        {
            "count" => Whole("count", typed).Then(n => store.Stock.Count(Identifier(sent), item, n, person.Name, now)),
            "receive" => Whole("count", typed).Then(n => store.Stock.Receive(Identifier(sent), item, n, person.Name, now)),
            "level" => typed.Length == 0 ? store.Stock.SetLevel(item, null) : Whole("level", typed).Then(n => store.Stock.SetLevel(item, n)),
            "remove" => store.Stock.Remove(item),
            _ => Reading<Guid>.Failed(new Problem("form", "word-unknown", "Open the page again and use one of its forms.")),
        }).Match(_ => Results.LocalRedirect("~/stock"), problem => Page(context, store, clock, new StockForm { Line = item, Problem = problem }));
    }

    /// <summary>A whole number as typed.</summary>
    internal static Reading<int> Whole(string where, string typed) => int.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out var n)
        ? Reading<int>.Of(n)
        : Reading<int>.Failed(new Problem(where, "not-a-whole-number", $"'{NumberText.Shown(typed)}' is not a whole number; write for example 40."));

    private static Reading<Trundle.Store.Person> Person(HttpContext context, WorkshopStore store) => WhoEnters.On(context, store) is { } person
        ? Reading<Trundle.Store.Person>.Of(person)
        : Reading<Trundle.Store.Person>.Failed(new Problem("by", "person-unknown", "First choose who enters, on the people page."));

    private static Guid Identifier(IFormCollection sent) => Guid.TryParseExact(sent["id"], "D", out var id) && id != Guid.Empty ? id : Guid.CreateVersion7();

    private static RazorComponentResult Page(HttpContext context, WorkshopStore store, TimeProvider clock, StockForm form)
    {
        var items = store.Stock.All();
        var listed = items.Select(i => StockName.Key(i.Kind, i.Name, i.Mass)).ToHashSet(StringComparer.Ordinal);
        return new RazorComponentResult<StockPage>(new Dictionary<string, object?>
        {
            [nameof(StockPage.Frame)] = OfficeFrame.Of(context, store, clock),
            [nameof(StockPage.Items)] = items,
            [nameof(StockPage.NotListed)] = store.Visits.InTheWorkshop()
                .SelectMany(v => StockUses.Of(v.Fields).Where(u => !listed.Contains(StockName.Key(u.Used.Kind, u.Used.Item, u.Used.Mass))).Select(u => (v.Heading, u.Used))).ToList(),
            [nameof(StockPage.Form)] = form,
        })
        { StatusCode = form.Problem is null ? StatusCodes.Status200OK : StatusCodes.Status400BadRequest };
    }
}
