using System.Globalization;
using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace Trundle.Browser.Tests;

/// <summary>Practice with no network: a whole wheel by keyboard alone, a stud circle by touch; and every practice page looked at.</summary>
public sealed partial class PracticeTests(Bay bay, Device device) : IClassFixture<Device>
{
    [Theory]
    [InlineData("", "practice")]
    [InlineData("/wheel/two-planes/11", "practice-centre")]
    [InlineData("/wheel/two-planes/11/measure", "practice-measure")]
    [InlineData("/wheel/match/3/look", "practice-look")]
    [InlineData("/wheel/behind-spokes/3/spin", "practice-spin")]
    [InlineData("/wheel/one-weight/7", "practice-one-weight")]
    [InlineData("/drill/tightening/4", "practice-tightening")]
    [InlineData("/drill/demount/9", "practice-demount")]
    [InlineData("/drill/sidewall/5", "practice-sidewall")]
    [InlineData("/drill/tread/5", "practice-tread")]
    [InlineData("/drill/damage/5", "practice-damage")]
    [InlineData("/drill/pressure/5", "practice-pressure")]
    [InlineData("/drill/rotation/5", "practice-rotation")]
    [InlineData("/drill/mixing/5", "practice-mixing")]
    [InlineData("/drill/adapter/5", "practice-adapter")]
    public Task A_practice_page_has_no_fault_and_fits_its_window(string address, string name) => device.CheckAsync($"/bay/practice{address}", name);

    [Fact]
    public async Task A_wheel_is_put_right_by_keyboard_alone_with_no_network()
    {
        var page = await bay.PageAsync(1280, 800);
        await page.GotoAsync("/bay/practice/wheel/one-weight/7");
        await page.GetByRole(AriaRole.Heading, new() { Name = "One weight" }).WaitForAsync();
        await page.Context.SetOfflineAsync(true);
        await KeyAsync(page.GetByLabel("guard down"), " ");
        await KeyAsync(page.GetByLabel("eyes covered"), " ");
        await KeyAsync(page.GetByRole(AriaRole.Button, new() { Name = "Spin", Exact = true }), "Enter");
        var shown = Reading().Match(await page.Locator(".measured").InnerTextAsync());
        var grams = 5 * Math.Round(int.Parse(shown.Groups[1].Value, CultureInfo.InvariantCulture) / 5.0, MidpointRounding.AwayFromZero);
        var place = int.Parse(shown.Groups[2].Value, CultureInfo.InvariantCulture);

        // The wheel is turned by its slide: the arrow keys turn it a degree at a time.
        var slide = page.GetByLabel("Turn the wheel");
        await slide.FocusAsync();
        await page.Keyboard.PressAsync(place > 180 ? "End" : "Home");
        for (var at = place > 180 ? 359 : 0; at != place; at += place > 180 ? -1 : 1)
        {
            await page.Keyboard.PressAsync(place > 180 ? "ArrowLeft" : "ArrowRight");
        }

        (await page.Locator("#at-twelve").InputValueAsync()).ShouldBe(place.ToString(CultureInfo.InvariantCulture));
        await KeyAsync(page.GetByRole(AriaRole.Button, new() { Name = $"{grams:0} g", Exact = true }), "Enter");
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, "practice-fitted-tablet.png") });
        await KeyAsync(page.GetByLabel("guard down"), " ");
        await KeyAsync(page.GetByRole(AriaRole.Button, new() { Name = "Spin", Exact = true }), "Enter");
        await KeyAsync(page.GetByRole(AriaRole.Button, new() { Name = "Hand in" }), "Enter");
        await page.GetByText("100 of 100 points").WaitForAsync();
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, "practice-result-tablet.png") });
        await page.Context.CloseAsync();

        static async Task KeyAsync(ILocator control, string key)
        {
            await control.FocusAsync();
            await control.PressAsync(key);
        }
    }

    [Fact]
    public async Task A_stud_circle_is_touched_on_a_phone_and_a_power_tool_ends_it()
    {
        var page = await bay.PageAsync(390, 844);
        await page.GotoAsync("/bay/practice/drill/tightening/4");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Tighten a wheel" }).WaitForAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Fixing 1, started by a turn" }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Fixing 1, run in by hand" }).WaitForAsync();
        await page.GetByLabel("power tool").CheckAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Fixing 2, started by a turn" }).ClickAsync();
        await page.GetByText("Stopped for safety").WaitForAsync();
        (await page.Locator(".stops").InnerTextAsync()).ShouldContain("crossed thread");
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, "practice-stopped-phone.png") });
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task An_attempt_made_with_no_network_comes_into_the_roll_and_an_instructor_decides_it()
    {
        await device.CheckAsync("/roll", "roll-own");
        var page = await bay.PageAsync(1280, 800);
        await Bay.EnterAsAsync(page, Trainee());
        await page.GotoAsync("/bay/practice/drill/demount/9");
        await page.GetByRole(AriaRole.Heading, new() { Name = "Order of a demount" }).WaitForAsync();
        await page.GetByText("once handed in").WaitForAsync();
        await page.Context.SetOfflineAsync(true);
        await page.GetByRole(AriaRole.Button, new() { Name = "Unscrew the valve cap and keep it." }).ClickAsync();
        await page.GetByRole(AriaRole.Button, new() { Name = "Hand in" }).ClickAsync();
        await page.GetByText("Kept on this device").WaitForAsync();
        await page.Context.SetOfflineAsync(false);
        await page.GotoAsync("/bay/practice");
        await page.GetByText("once handed in").WaitForAsync();
        await page.GotoAsync("/roll");
        await page.GetByRole(AriaRole.Link, new() { Name = "Order of a demount, number 9" }).WaitForAsync();
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, "roll-trainee-tablet.png") });
        await Bay.EnterAsAsync(page, Instructor());
        await page.GotoAsync("/roll");
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, "roll-class-tablet.png") });
        await page.GetByRole(AriaRole.Link, new() { Name = "Order of a demount, number 9" }).ClickAsync();
        await page.GetByLabel("not yet").CheckAsync();
        await page.GetByLabel("What to do differently").FillAsync("Core out before a bead is broken.");
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, "roll-attempt-tablet.png") });
        await page.GetByRole(AriaRole.Button, new() { NameRegex = Sign() }).ClickAsync();
        await page.GetByText("Core out before a bead is broken.").First.WaitForAsync();
        (await Device.FaultsAsync(page)).ShouldBeEmpty();
        await page.Context.CloseAsync();
    }

    [Fact]
    public async Task An_instructor_makes_a_lesson_that_is_seen_on_the_page_and_on_paper()
    {
        var page = await bay.PageAsync(1280, 800);
        await Bay.EnterAsAsync(page, Instructor());
        await page.GotoAsync("/lessons");
        await page.GetByRole(AriaRole.Textbox, new() { Name = "Title" }).FillAsync("Monday");
        await page.GetByLabel("Number for all").FillAsync("9");
        await page.GetByLabel("Judge a tread").CheckAsync();
        await page.GetByLabel("Order of a demount").CheckAsync();
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, "lessons-tablet.png") });
        (await Device.FaultsAsync(page)).ShouldBeEmpty();
        await page.GetByRole(AriaRole.Button, new() { Name = "Make the lesson" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Monday" }).WaitForAsync();
        // The demo's trainee may have tried one of the two in another test.
        (await page.GetByText("not tried").CountAsync()).ShouldBeGreaterThan(0);
        (await Device.FaultsAsync(page)).ShouldBeEmpty();
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, "lesson-tablet.png") });
        await page.GetByRole(AriaRole.Link, new() { Name = "On paper" }).ClickAsync();
        await page.GetByRole(AriaRole.Heading, new() { Name = "Judge a tread" }).WaitForAsync();
        (await Device.FaultsAsync(page)).ShouldBeEmpty();
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, "lesson-paper-tablet.png") });
        await page.Context.CloseAsync();
    }

    [GeneratedRegex("trainee")]
    private static partial Regex Trainee();

    [GeneratedRegex("instructor")]
    private static partial Regex Instructor();

    [GeneratedRegex("Decide and sign")]
    private static partial Regex Sign();

    [GeneratedRegex(@"add (\d+)\sg at (\d+)")]
    private static partial Regex Reading();
}
