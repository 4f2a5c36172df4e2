using Microsoft.Playwright;
using UglyToad.PdfPig;

namespace Trundle.Browser.Tests;

/// <summary>
/// Every page as it is met by somebody who enlarges it, uses no pointer, wants nothing to move, or prints it. What is asked is in WCAG 2.2: reflow at
/// 320 CSS px (1.4.10), text at 200 % (1.4.4), keyboard and no trap (2.1.1, 2.1.2), focus seen and not covered (2.4.7, 2.4.11), text with more room (1.4.12), size of what is touched (2.5.8).
/// </summary>
public sealed class EveryPageTests(Bay bay, WalkedDevice device) : IClassFixture<WalkedDevice>
{
    public static TheoryData<string> Pages => [.. EveryPage.All.Select(p => p.Name)];

    [Theory, MemberData(nameof(Pages))]
    public async Task A_page_is_read_enlarged_walked_by_keyboard_and_printed(string name)
    {
        var page = await device.OpenAsync(await EveryPage.AddressAsync(bay, name));
        await EnlargedAsync(page, name);
        await StillAsync(page, name);
        await WalkedAsync(page, name);
        await PrintedAsync(page, name);
    }

    private static async Task EnlargedAsync(IPage page, string name)
    {
        var devTools = await page.Context.NewCDPSessionAsync(page);
        foreach (var (look, width, height, text) in new[] { ("320 CSS px", 320, 640, 16), ("zoom of 200 %", 640, 400, 16), ("zoom of 400 %", 320, 256, 16), ("a phone", 390, 844, 16), ("text of 200 %", 1280, 800, 32) })
        {
            await page.SetViewportSizeAsync(width, height);

            // As a reader sets it in the browser: what is asked of the window in rem grows with it.
            await devTools.SendAsync("Page.setFontSizes", new Dictionary<string, object> { ["fontSizes"] = new { standard = text, @fixed = text } });
            await page.WaitForFunctionAsync("size => getComputedStyle(document.documentElement).fontSize === size", $"{text}px");
            (await page.EvaluateAsync<string[]>(Looks.Overhangs)).ShouldBeEmpty($"{name} at {look}: nothing but a table is moved sideways");
            (await page.EvaluateAsync<int>(Looks.RoomToRead)).ShouldBeGreaterThanOrEqualTo(height / 2, $"{name} at {look}: what stays on the screen leaves half of it to the page");
            await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, $"every-{name}-{width}-{height}.png") });
        }

        await devTools.SendAsync("Page.setFontSizes", new Dictionary<string, object> { ["fontSizes"] = new { standard = 16, @fixed = 13 } });
        await page.SetViewportSizeAsync(390, 844);
        // What lies under the foot is moved out from under it; its size is asked for here.
        await page.EvaluateAsync("() => document.querySelectorAll('.sheet > .next').forEach(foot => foot.style.position = 'static')");
        (await Device.FaultsAsync(page, "target-size")).ShouldBeEmpty($"{name}: what is touched is at least 24 px, or has room around it");
        await page.EvaluateAsync(Looks.MoreRoom);
        (await page.EvaluateAsync<string[]>(Looks.Overhangs)).ShouldBeEmpty($"{name}: text with more room between lines, letters and words");
        await page.EvaluateAsync("() => document.getElementById('more-room').remove()");
        await devTools.DetachAsync();
        await page.SetViewportSizeAsync(1280, 800);
    }

    /// <summary>The device asks for reduced motion: nothing moves by itself or on touch.</summary>
    private static async Task StillAsync(IPage page, string name) => (await page.EvaluateAsync<string[]>(Looks.Moving)).ShouldBeEmpty($"{name}: moves although reduced motion is asked for");

    private static async Task WalkedAsync(IPage page, string name)
    {
        var all = await page.EvaluateAsync<int>(Looks.Reachable);
        all.ShouldBeGreaterThan(0, name);
        var faults = new List<string>();
        for (var i = 0; i < all + 200; i++)
        {
            await page.Keyboard.PressAsync("Tab");
            if (await page.EvaluateAsync<string>(Looks.Focused) is not "" and var said)
            {
                if (said == "end")
                {
                    break;
                }

                faults.Add(said);
            }
        }

        faults.Distinct().ShouldBeEmpty($"{name}: where the focus is, is seen");
        (await page.EvaluateAsync<string[]>(Looks.NotReached)).ShouldBeEmpty($"{name}: is not reached by Tab");
    }

    private static async Task PrintedAsync(IPage page, string name)
    {
        var path = Path.Combine(Bay.Pictures, $"every-{name}.pdf");
        await page.PdfAsync(new PagePdfOptions { Path = path, Format = "A4", PreferCSSPageSize = true });
        using var pdf = PdfDocument.Open(path);
        var heading = (await page.Locator("main h1").First.InnerTextAsync()).Split([' ', '\n', '\u00a0'], StringSplitOptions.RemoveEmptyEntries)[0];
        pdf.GetPage(1).GetWords().Select(w => w.Text).ShouldContain(w => w.Contains(heading, StringComparison.Ordinal), $"{name}: the first sheet of paper begins with the page’s heading");
        foreach (var paper in pdf.GetPages())
        {
            paper.Letters.Count(l => !string.IsNullOrWhiteSpace(l.Value)).ShouldBeGreaterThan(5, $"{name}: sheet {paper.Number} of {pdf.NumberOfPages} is empty");
            paper.GetWords().Where(w => w.BoundingBox.Right > paper.Width - 20 || w.BoundingBox.Left < 20).Select(w => w.Text).ShouldBeEmpty($"{name}: is cut at the edge of sheet {paper.Number}");
        }
    }
}

/// <summary>A device for <see cref="EveryPageTests"/>: a technician has it, and it asks for reduced motion.</summary>
public sealed class WalkedDevice(Bay bay) : IAsyncLifetime
{
    private IPage _page = null!;

    public async ValueTask InitializeAsync()
    {
        _page = await bay.PageAsync();
        await Bay.EnterAsAsync(_page, Bay.Technician());
    }

    public async ValueTask DisposeAsync() => await _page.Context.CloseAsync();

    public async Task<IPage> OpenAsync(string address)
    {
        await _page.SetViewportSizeAsync(1280, 800);
        await _page.GotoAsync(address);
        await BayHand.OpenedAsync(_page);
        return _page;
    }
}
