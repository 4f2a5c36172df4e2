using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Trundle.Measures;
using Trundle.Sheets;
using Trundle.Store;
using Trundle.Visits.Bay;
using Trundle.Web.Api;
using Trundle.Web.Languages;
using Trundle.Web.People;
using Trundle.Words;

namespace Trundle.Web.Visits;

/// <summary>A visit on paper, made of the same file that the command reads.</summary>
internal static class SheetEndpoint
{
    /// <summary>The sheet as PDF: <c>?for=customer|file&amp;paper=a4|letter</c>; without them the customer's on the paper of the workshop's locale; <c>locale=en-GB|en-US</c> for a customer who reads another.</summary>
    public static IResult Sheet(Guid id, HttpContext context, WorkshopStore store)
    {
        if (store.Visits.Find(id) is not { } visit)
        {
            return ApiAnswer.Wrong(new Problem("visit", "visit-unknown", "There is no such visit in this workshop."), StatusCodes.Status404NotFound);
        }

        var query = context.Request.Query;
        if (SheetWords.ReaderOf(query.ContainsKey("for") ? query["for"].ToString() : "customer") is not { } reader)
        {
            return ApiAnswer.Wrong(new Problem("for", "word-unknown", $"'{NumberText.Shown(query["for"].ToString())}' is not a word here; write {SheetWords.Readers}."));
        }

        if ((query.ContainsKey("locale") ? Locales.Of(query["locale"].ToString()) : context.RequestServices.GetRequiredService<BayOptions>().Locale) is not { } locale)
        {
            return ApiAnswer.Wrong(new Problem("locale", "word-unknown", $"'{NumberText.Shown(query["locale"].ToString())}' is not spoken here; write {ChoiceText.Of(Locales.All)}."));
        }

        if (SheetWords.PaperOf(query.ContainsKey("paper") ? query["paper"].ToString() : ReaderLocale.ShopPaper(context)) is not { } paper)
        {
            return ApiAnswer.Wrong(new Problem("paper", "word-unknown", $"'{NumberText.Shown(query["paper"].ToString())}' is not a word here; write {SheetWords.Papers}."));
        }

        var order = new SheetOrder(reader, paper)
        {
            Texts = SheetLocale.Of(locale),
            Units = WhoEnters.On(context, store)?.Habits,
            Entries = [.. visit.Entries.Select(e => e.Entry)],
            Photos = reader == SheetReader.File ? store.Photos.Of(id) : new Dictionary<Guid, byte[]>(),
            Known = CondemnedNames.Undecided(store.Condemned.Matches(visit), visit.Fields),
        };
        return VisitSheet.Write(visit.Fields.Assemble().Root, order).Match(
            sheet => Results.File(sheet.Pdf, "application/pdf", $"{visit.Heading.Number}-{(reader == SheetReader.File ? "file" : "customer")}.pdf"),
            problem => ApiAnswer.Wrong(problem));
    }
}
