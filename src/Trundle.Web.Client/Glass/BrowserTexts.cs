using System.Text;
using Microsoft.JSInterop;
using Trundle.Web.Client.Entries;
using Trundle.Words;

namespace Trundle.Web.Client.Glass;

/// <summary>The reader's texts in the browser: those of the language that the page says it is in.</summary>
internal static class BrowserTexts
{
    /// <summary>Fetches the texts before the first page is drawn; where they cannot be had, the page is said as it is written.</summary>
    public static async Task ReadAsync(Browser browser, IJSRuntime js)
    {
        var locale = Locales.Of(await js.InvokeAsync<string?>("document.documentElement.getAttribute", "lang"));
        if (locale is null or Texts.Source)
        {
            return;
        }

        var answer = await browser.AskAsync("GET", $"/texts/{locale}.json");
        if (answer.Good)
        {
            Reader.Is(Locales.Read(locale, Encoding.UTF8.GetBytes(answer.Text)));
        }
    }
}
