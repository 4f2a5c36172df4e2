using System.Globalization;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.Routing;
using Trundle.Store;

namespace Trundle.Web.Office.Scrap;

/// <summary>Scrap tyres and lead weights that went out, month by month, on a page and as a table for the carrier's papers.</summary>
internal static class ScrapEndpoints
{
    public static void MapScrap(this IEndpointRouteBuilder routes)
    {
        routes.MapGet("/scrap", (HttpContext context, WorkshopStore store, TimeProvider clock) =>
            new RazorComponentResult<ScrapPage>(new { Frame = OfficeFrame.Of(context, store, clock), Months = store.Scrap.Months() }));
        routes.MapGet("/scrap.csv", (HttpContext context, WorkshopStore store) =>
        {
            var asked = context.Request.Query["month"].ToString();
            var months = store.Scrap.Months().Where(m => asked.Length == 0 || Word(m.Month) == asked).ToList();
            return Results.File(Encoding.UTF8.GetBytes(Csv(months)), "text/csv", asked.Length == 0 ? "scrap-out.csv" : $"scrap-out-{(months.Count == 1 ? asked : "none")}.csv");
        });
    }

    /// <summary>A month as 2026-03.</summary>
    public static string Word(DateOnly month) => month.ToString("yyyy-MM", CultureInfo.InvariantCulture);

    /// <summary>A row for each tyre and for each visit's lead, then the total of each month.</summary>
    internal static string Csv(IReadOnlyList<ScrapMonth> months)
    {
        var text = new StringBuilder("month,date,visit,what,tin,words,tyres,lead_g,note\r\n");
        foreach (var month in months)
        {
            foreach (var line in month.Lines)
            {
                var day = line.Day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
                foreach (var tyre in line.Scrap.Tyres)
                {
                    Row(Word(month.Month), day, line.Visit.Number, "tyre", tyre.Tin ?? "", tyre.Words ?? "", "1", "", line.Scrap.Note ?? "");
                }

                if (line.Scrap.LeadWeights is { } lead)
                {
                    Row(Word(month.Month), day, line.Visit.Number, "lead weights", "", "", "", Grams(lead.Grams), line.Scrap.Note ?? "");
                }
            }

            Row(Word(month.Month), "", "", "total", "", "", month.Tyres.ToString(CultureInfo.InvariantCulture), Grams(month.LeadWeights.Grams), "");
        }

        return text.ToString();

        void Row(params string[] cells) => text.AppendJoin(',', cells.Select(Cell)).Append("\r\n");
    }

    private static string Grams(double grams) => grams.ToString("0.#", CultureInfo.InvariantCulture);

    /// <summary>A cell in quotes where it needs them; one that a table program would take for a formula begins with an apostrophe.</summary>
    private static string Cell(string text)
    {
        var plain = text.Length > 0 && text[0] is '=' or '+' or '-' or '@' ? "'" + text : text;
        return plain.AsSpan().IndexOfAny(",\"\r\n") < 0 ? plain : $"\"{plain.Replace("\"", "\"\"", StringComparison.Ordinal)}\"";
    }
}
