using System.Globalization;
using Microsoft.Playwright;

namespace Trundle.Browser.Tests;

/// <summary>A balancer is put to its tests on a phone with no network: from one test to another by touch, twelve amounts one after the other.</summary>
public sealed class BalancerToolTests(Bay bay)
{
    [Fact]
    public async Task A_traverse_is_entered_and_answered_with_no_network()
    {
        var page = await bay.PageAsync(390, 844);
        await Bay.EnterAsAsync(page, Bay.Technician());
        await page.GotoAsync("/bay/tools/balancer");
        await BayHand.OpenedAsync(page);
        await page.Context.SetOfflineAsync(true);
        await page.GetByRole(AriaRole.Link, new() { Name = "Traverse, outer" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Twelve places" }).WaitForAsync();
        var hand = new BayHand(bay, page, "");
        await hand.EnterAsync(("planes.inner.radius", "200"), ("planes.outer.radius", "200"), ("traverse.outer.testMass", "10"));
        for (var place = 0; place < 12; place++)
        {
            await page.GetByText(string.Create(CultureInfo.InvariantCulture, $"Place {place + 1} of 12")).WaitForAsync();
            await page.GetByLabel("Amount shown").FillAsync(place == 4 ? "13" : "10");
            await page.GetByRole(AriaRole.Button, new() { Name = "Next place" }).ClickAsync();
        }

        // By hand: the mean is 10.25 g, and 13 g lies 26.83 % above it.
        var answer = page.GetByRole(AriaRole.Status, new() { Name = "Answer" });
        await answer.GetByText("26.83 %").WaitForAsync();
        (await answer.InnerTextAsync()).ShouldContain("Failed. Balance nothing more on this machine");
        await page.EvaluateAsync("() => { document.querySelector('.page').scrollTop = 0; document.querySelector('[aria-label=Answer]').scrollIntoView(); }");
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, "tool-balancer-traverse-failed-phone.png") });

        // Another test and back: what was entered stands.
        await page.GetByRole(AriaRole.Link, new() { Name = "Repeat spins" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "What is asked of it" }).WaitForAsync();
        (await page.GetByRole(AriaRole.Navigation, new() { Name = "Tests" }).GetByRole(AriaRole.Link, new() { Name = "Traverse, outer" }).InnerTextAsync()).ShouldContain("failed");
        await page.GoBackAsync();
        await answer.GetByText("26.83 %").WaitForAsync();
        await page.Context.CloseAsync();
    }
}
