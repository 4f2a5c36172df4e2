using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace Trundle.Browser.Tests;

/// <summary>Every page at two sizes, in light and dark: no fault that axe finds, nothing wider than its window, and a picture to be looked at.</summary>
[Collection(BayCollection.Name)]
public sealed class PagesTests(Bay bay)
{
    private static readonly (string Name, int Width, int Height, bool Dark)[] Looks = [("tablet", 1280, 800, false), ("phone", 390, 844, false), ("tablet-dark", 1280, 800, true)];

    public static TheoryData<string> OfficePages => ["/", "/arrive", "/history", "/people", "/condemned", "/sources"];

    public static TheoryData<string> BayPages =>
    [
        "arrive", "arrive/axle-1", "lookOver", "lookOver/1L", "plan", "plan/rotation", "plan/jobs", "offTheCar", "offTheCar/1L/seat", "offTheCar/1L/first-spin",
        "refit", "refit/1L/stages", "prove", "prove/1L/final-torque", "handBack", "who",
    ];

    [Theory, MemberData(nameof(OfficePages))]
    public Task An_office_page_has_no_fault(string address) => CheckLookAsync(address, "office" + address.Replace('/', '-'));

    [Theory, MemberData(nameof(BayPages))]
    public async Task A_bay_page_has_no_fault(string place)
    {
        // Of the demo's vehicles: the one whose wheels are off for the work on them, the one that is back on its wheels for the rest.
        var name = place.StartsWith("offTheCar", StringComparison.Ordinal) || place.StartsWith("plan", StringComparison.Ordinal) || place.StartsWith("lookOver", StringComparison.Ordinal) ? "Blue hatchback" : "Grey saloon";
        var visits = (await bay.JsonAsync("/api/v1/visits"))["visits"]!.AsArray().Select(v => v!["id"]!.GetValue<string>());
        string? found = null;
        foreach (var visit in visits)
        {
            if ((await bay.JsonAsync($"/api/v1/visits/{visit}"))["fields"]!["vehicle.name"]?.GetValue<string>().StartsWith(name, StringComparison.Ordinal) == true)
            {
                found = visit;
            }
        }

        await CheckLookAsync($"/bay/{found}/{place}", "bay-" + place.Replace('/', '-'));
    }

    /// <summary>Opens a page once, and looks at it at each size and theme.</summary>
    private async Task CheckLookAsync(string address, string name)
    {
        var page = await bay.DeviceAsync();
        await page.GotoAsync(address);
        await BayHand.OpenedAsync(page);
        foreach (var (look, width, height, dark) in Looks)
        {
            await page.SetViewportSizeAsync(width, height);
            await page.EmulateMediaAsync(new PageEmulateMediaOptions { ColorScheme = dark ? ColorScheme.Dark : ColorScheme.Light, ReducedMotion = ReducedMotion.Reduce });
            await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, $"{name}-{look}.png") });
            var axe = await page.RunAxe();
            axe.Violations.Select(Said).ShouldBeEmpty($"{address} {look}");
            var overhang = await page.EvaluateAsync<int>("() => document.documentElement.scrollWidth - document.documentElement.clientWidth");
            overhang.ShouldBeLessThanOrEqualTo(0, $"{address} {look} is wider than its window");
        }
    }

    private static string Said(AxeResultItem fault) =>
        $"{fault.Id}: {fault.Help} {string.Join(" | ", fault.Nodes.Take(3).Select(n => n.Html))}";
}
