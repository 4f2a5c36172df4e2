using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Sheets;
using Trundle.Store;
using Trundle.Web.Api;

namespace Trundle.Web.Office.Scan;

/// <summary>A label's code, scanned or typed, opens its visit in the bay or its set; and the label of a visit.</summary>
internal static partial class ScanEndpoints
{
    private const int MostCharacters = 300;

    public static void MapScan(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/scan", Scan);
        routes.MapGet("/visits/{id:guid}/label.pdf", Label);
    }

    private static IResult Scan(HttpContext context, WorkshopStore store, TimeProvider clock)
    {
        var code = context.Request.Query["code"].ToString().Trim();
        code = code[..Math.Min(code.Length, MostCharacters)];
        return code.Length > 0 && To(code, store) is { } there
            ? Results.LocalRedirect($"~{there}")
            : new RazorComponentResult<ScanPage>(new { Frame = OfficeFrame.Of(context, store, clock), Code = code });
    }

    /// <summary>
    /// The page of this workshop that a code means, or null. Of an address only the path is taken, so that a label printed at another address of this
    /// workshop opens here, and a code from elsewhere leads nowhere else.
    /// </summary>
    private static string? To(string code, WorkshopStore store)
    {
        if (Address().Match(code) is { Success: true } address && Guid.TryParse(address.Groups["id"].Value, out var id))
        {
            return address.Groups["what"].Value == "sets"
                ? store.Sets.Find(id) is null ? null : $"/sets/{id:D}"
                : store.Visits.Find(id) is { } visit ? OfVisit(visit.Heading) : null;
        }

        var key = Key(code);
        return key.Length == 0 ? null
            : store.Search.Find(code, 20).Select(f => f.Visit.Heading).FirstOrDefault(h => Key(h.Number) == key) is { } found ? OfVisit(found)
            : store.Sets.All().FirstOrDefault(s => Key(s.Kept.Number) == key) is { } set ? $"/sets/{set.Kept.Id:D}"
            : null;
    }

    private static string OfVisit(VisitHeading visit) => visit.HandedBackAt is null ? $"/bay/{visit.Id:D}" : $"/visits/{visit.Id:D}";

    private static string Key(string text) => new([.. text.Where(char.IsLetterOrDigit).Select(char.ToUpperInvariant)]);

    /// <summary>One label for the vehicle's sheet or key: <c>?paper=a4|letter|label</c>. The code holds the address under which it was asked for.</summary>
    private static IResult Label(Guid id, HttpContext context, WorkshopStore store, TimeProvider clock)
    {
        if (store.Visits.Find(id) is not { } visit)
        {
            return Results.NotFound();
        }

        var word = context.Request.Query.ContainsKey("paper") ? context.Request.Query["paper"].ToString() : "label";
        if (SetLabel.PaperOf(word) is not { } paper)
        {
            return ApiAnswer.Wrong(new Problem("paper", "word-unknown", $"'{NumberText.Shown(word)}' is not a word here; write {SetLabel.Papers}."));
        }

        var address = string.Create(CultureInfo.InvariantCulture, $"{context.Request.Scheme}://{context.Request.Host}/visits/{id:D}");
        var day = DateOnly.FromDateTime(TimeZoneInfo.ConvertTime(visit.Heading.OpenedAt, clock.LocalTimeZone).DateTime);
        var label = new LabelContent($"Visit {visit.Heading.Number}", visit.Fields["vehicle.name"] ?? "vehicle not entered", "", visit.Fields["work.bay"] is { } bay ? $"Bay {bay}" : "no bay yet",
            [.. visit.Fields["work.promised"] is { } promised ? [$"promised {promised}"] : Array.Empty<string>()], day, address);
        return Results.File(SetLabel.Write([label], paper), "application/pdf", $"visit-{visit.Heading.Number}-label.pdf");
    }

    [GeneratedRegex("/(?<what>sets|visits|bay)/(?<id>[0-9a-fA-F-]{36})(?:[/?#]|$)")]
    private static partial Regex Address();
}
