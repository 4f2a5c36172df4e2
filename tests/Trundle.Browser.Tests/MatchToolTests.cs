using System.Text.Json;
using Microsoft.Playwright;

namespace Trundle.Browser.Tests;

/// <summary>A set that takes the browser's one thread long enough to be felt: the page says so before, and what is typed meanwhile is not lost.</summary>
public sealed class MatchToolTests(Bay bay)
{
    [Fact]
    public async Task A_set_of_ten_says_that_it_reckons_and_loses_nothing_typed_meanwhile()
    {
        var page = await bay.PageAsync();
        await Bay.EnterAsAsync(page, Bay.Technician());
        var fields = new Dictionary<string, string> { ["on"] = "forceVariation", ["amplitude"] = "zeroToPeak", ["objective"] = "worst" };
        foreach (var (list, letter) in new[] { ("tyres", "T"), ("wheels", "W") })
        {
            for (var i = 0; i < 10; i++)
            {
                fields[$"{list}.{i}.id"] = $"{letter}{i + 1}";
                fields[$"{list}.{i}.force.amplitude"] = $"{30 + (7 * i * i % 90)} N";
                fields[$"{list}.{i}.force.highPoint"] = $"{(letter == "T" ? 37 : 101) * i % 360}";
            }
        }

        await page.EvaluateAsync("kept => localStorage.setItem('trundle-match', kept)", JsonSerializer.Serialize(fields));
        await page.GotoAsync("/bay/tools/match");
        await BayHand.OpenedAsync(page);
        await page.Locator(".match-pair").Nth(9).WaitForAsync();
        await page.EvaluateAsync("""
            () => {
              window.said = [];
              new MutationObserver(() => window.said.push(document.querySelector('.next').textContent.trim() + ' ' + document.querySelectorAll('.match-pair').length)).observe(document.body, { subtree: true, childList: true, characterData: true });
            }
            """);
        await page.Locator("#f-makerLimit").FillAsync("60");
        await page.Locator("#f-makerLimit").BlurAsync();
        await page.Locator("#f-keepUnlessGain").FillAsync("5");
        await page.Locator("#f-makerLimitSource").FillAsync("workshop bulletin");
        await page.Locator("#f-makerLimitSource").BlurAsync();
        await page.Locator(".match-pair").First.GetByText("within 60.0 N").First.WaitForAsync();
        await page.Locator(".next").GetByText("Reckoning").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Detached });
        var said = await page.EvaluateAsync<string[]>("() => window.said");
        said.ShouldContain(s => s.StartsWith("Reckoning …", StringComparison.Ordinal));
        said.ShouldAllBe(s => s.EndsWith(" 10", StringComparison.Ordinal), "the answer stays meanwhile");
        var kept = JsonDocument.Parse(await page.EvaluateAsync<string>("() => localStorage.getItem('trundle-match')")).RootElement;
        kept.GetProperty("makerLimit").GetString().ShouldBe("60 N");
        kept.GetProperty("keepUnlessGain").GetString().ShouldBe("5 N");
        kept.GetProperty("makerLimitSource").GetString().ShouldBe("workshop bulletin");
        await page.Context.CloseAsync();
    }
}
