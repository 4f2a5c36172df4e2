namespace Trundle.Browser.Tests;

/// <summary>Sets in storage, tyres sold and the recall look-up at two sizes, in light and dark.</summary>
public sealed class SetPagesTests(Bay bay, Device device) : IClassFixture<Device>
{
    /// <summary>On a phone the form fills the screen: what was found comes into sight by itself, and a wrong entry stays in sight.</summary>
    [Fact]
    public async Task Looking_for_a_recall_on_a_phone_ends_at_what_was_found()
    {
        var page = await bay.PageAsync(390, 844);
        await page.GotoAsync("/recall");
        await page.GetByLabel("Plant").First.FillAsync("1AB");
        await page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "Look" }).ClickAsync();
        await page.Locator("#found").WaitForAsync();
        (await page.Locator("#found").EvaluateAsync<double>("e => e.getBoundingClientRect().top")).ShouldBeInRange(-1, 420);
        await page.GetByLabel("Plant").First.FillAsync("1ABC");
        await page.GetByRole(Microsoft.Playwright.AriaRole.Button, new() { Name = "Look" }).ClickAsync();
        await page.Locator("#plant-problem").WaitForAsync();
        (await page.Locator("#plant-problem").EvaluateAsync<double>("e => e.getBoundingClientRect().top")).ShouldBeInRange(0, 844);
        await page.Context.CloseAsync();
    }

    /// <summary>A TIN in a list is read in the list's own type; only a code that is read aloud once is large.</summary>
    [Fact]
    public async Task A_TIN_stands_in_the_type_of_its_list()
    {
        var page = await bay.PageAsync();
        await page.GotoAsync("/recall?plant=1AB&code=&from=&to=");
        var tin = page.Locator("th.code").First;
        await tin.WaitForAsync();
        const string size = "e => getComputedStyle(e).fontSize";
        (await tin.EvaluateAsync<string>(size)).ShouldBe(await page.Locator("td").First.EvaluateAsync<string>(size));
        await page.Context.CloseAsync();
    }

    [Theory]
    [InlineData("/sets?out=yes", "sets")]
    [InlineData("/sets/new", "sets-new")]
    [InlineData("/sets/new?visit=(visit)", "sets-new-visit")]
    [InlineData("(set)", "set")]
    [InlineData("/registrations", "registrations")]
    [InlineData("(sale)", "registration")]
    [InlineData("/recall", "recall")]
    [InlineData("/recall?plant=1AB&code=&from=4021&to=2423", "recall-found")]
    [InlineData("/recall?plant=1ABC&code=&from=&to=", "recall-wrong")]
    public async Task A_page_has_no_fault(string address, string name)
    {
        device.Whole = true;
        await device.CheckAsync(
            address.Replace("(visit)", await bay.VisitAsync("Blue hatchback"), StringComparison.Ordinal).Replace("(set)", await bay.LinkAsync("/sets", "/sets/"), StringComparison.Ordinal)
                .Replace("(sale)", await bay.LinkAsync("/registrations", "/registrations/"), StringComparison.Ordinal),
            $"office-{name}", unfolded: name is not "set");
    }
}
