using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Trundle.Browser.Tests;

/// <summary>The bay in a browser whose person reads American: the texts are fetched once, and no British word is on the page.</summary>
public sealed partial class LanguageTests(Bay bay)
{
    [Fact]
    public async Task An_american_browser_reads_american_and_a_british_one_fetches_nothing_more()
    {
        await using var context = await bay.Browser.NewContextAsync(new BrowserNewContextOptions { Locale = "en-US", BaseURL = bay.Address.ToString(), ReducedMotion = ReducedMotion.Reduce, ServiceWorkers = ServiceWorkerPolicy.Block });
        var page = await context.NewPageAsync();
        await Bay.EnterAsAsync(page, Bay.Technician());
        var visit = await bay.VisitAsync("Blue hatchback");
        foreach (var address in new[] { "/", "/bay/tools", "/bay/tools/match", $"/bay/{visit}/look-over/1L", $"/bay/{visit}/plan", $"/bay/{visit}/off-the-car" })
        {
            await page.GotoAsync(address);
            await page.Locator("h1").First.WaitForAsync();
            if (address.StartsWith("/bay", StringComparison.Ordinal))
            {
                await BayHand.OpenedAsync(page);
            }

            (await page.EvaluateAsync<string>("() => document.documentElement.lang")).ShouldBe("en-US", address);
            var texts = await TextsAsync(page);
            texts.Length.ShouldBeGreaterThan(10, address);
            texts.Where(t => British().IsMatch(t)).ShouldBeEmpty(address);
        }

        (await page.EvaluateAsync<int[]>(Fetched)).Length.ShouldBe(1);
        (await page.EvaluateAsync<int[]>(Fetched))[0].ShouldBeLessThan(70_000, "bytes over the wire");
        var home = await bay.PageAsync();
        await home.GotoAsync("/bay/tools/match");
        await BayHand.OpenedAsync(home);
        (await TextsAsync(home)).ShouldContain(t => British().IsMatch(t));
        (await home.EvaluateAsync<int[]>(Fetched)).ShouldBeEmpty();
        await home.Context.CloseAsync();
    }

    [Fact]
    public async Task With_no_network_the_page_still_reads_american()
    {
        await using var context = await bay.Browser.NewContextAsync(new BrowserNewContextOptions { Locale = "en-US", BaseURL = bay.Address.ToString(), ReducedMotion = ReducedMotion.Reduce });
        var page = await context.NewPageAsync();
        await Bay.EnterAsAsync(page, Bay.Technician());
        var visit = await bay.VisitAsync("Blue hatchback");
        await page.GotoAsync($"/bay/{visit}/look-over/1L");
        await BayHand.OpenedAsync(page);
        await BayHand.UntilAsync(page, "async () => (await navigator.serviceWorker.ready) && await caches.match('/bay/') !== undefined && await caches.match('/texts/en-US.json') !== undefined");
        await context.SetOfflineAsync(true);
        await page.ReloadAsync();
        await BayHand.OpenedAsync(page);
        var texts = await TextsAsync(page);
        texts.ShouldContain(t => t.Contains("tire", StringComparison.OrdinalIgnoreCase));
        texts.Where(t => British().IsMatch(t)).ShouldBeEmpty();
    }

    private const string Fetched = "() => performance.getEntriesByType('resource').filter(r => r.name.includes('/texts/')).map(r => r.encodedBodySize)";

    private static Task<string[]> TextsAsync(IPage page) => page.EvaluateAsync<string[]>("""
        () => {
          const texts = [];
          const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT, n => n.parentElement.closest('script,style,textarea,noscript') ? NodeFilter.FILTER_REJECT : NodeFilter.FILTER_ACCEPT);
          while (walk.nextNode()) texts.push(walk.currentNode.data.trim());
          document.body.querySelectorAll('[aria-label],[title],[placeholder]').forEach(e => ['aria-label', 'title', 'placeholder'].forEach(a => texts.push(e.getAttribute(a) ?? '')));
          return texts.filter(t => t.length > 0);
        }
        """);

    [GeneratedRegex(@"(?<![\w./])(?:tyres?|kerb|centre[sd]?|colour|metres?|millimetres?|kilometres?|mould|anticlockwise)\b", RegexOptions.IgnoreCase)]
    private static partial Regex British();
}
