using System.Globalization;
using System.Text;
using Microsoft.Playwright;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Browser.Tests;

/// <summary>
/// One invented vehicle with four wheels as one hand does it: looked over, rotated, balanced, tightened, handed back. Every tap and key is counted, and
/// docs/taps.md holds the count. The figures typed are what an invented gauge shows at each place; nothing is copied that was not read.
/// </summary>
public sealed class TapsTests(Bay bay)
{
    private static readonly string[] Wheels = ["1L", "1R", "2L", "2R"];

    private static string Page => Path.Combine(Bay.Checkout(), "docs", "taps.md");

    [Fact]
    public async Task One_vehicle_with_four_wheels_is_counted()
    {
        var page = await bay.PageAsync();
        await Bay.EnterAsAsync(page, Bay.Technician());
        var visit = await OpenAsync(page);
        var hand = new BayHand(bay, page, visit);
        await hand.GoAsync("lookOver");
        await LookOverAsync(page, hand);
        await PlanAsync(page, hand);
        for (var i = 0; i < 110 && !page.Url.EndsWith("/handBack", StringComparison.Ordinal); i++)
        {
            try
            {
                await StepAsync(page, hand);
            }
            catch (TimeoutException)
            {
                await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, "taps-stuck.png") });
                throw;
            }
        }

        await hand.TapAsync(page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Sign and hand back" }).First);
        await hand.SentAsync("work.handBack.by");

        var problems = new List<Problem>();
        var state = VisitStanding.Of(FileNode.From(await bay.JsonAsync($"/api/v1/visits/{visit}/file.json")), problems);
        problems.ShouldBeEmpty();
        state.Stops.Select(s => $"{s.Leg} {s.Position} {s.What}: {s.Why}").ShouldBeEmpty();
        state.HandedBack.ShouldBeTrue();
        state.NotTightened.ShouldBeEmpty();
        state.Legs.SelectMany(l => l.Steps).Where(s => s.Step.HoldPoint && s.Standing != StepStanding.Passed).ShouldBeEmpty();

        var text = Told(hand.Counted, state);
        if (Environment.GetEnvironmentVariable("TRUNDLE_WRITE_DOCS") == "1")
        {
            await File.WriteAllTextAsync(Page, text);
        }

        (await File.ReadAllTextAsync(Page)).ShouldBe(text, "Run this test with TRUNDLE_WRITE_DOCS=1 to write the page anew.");
    }

    private static async Task LookOverAsync(IPage page, BayHand hand)
    {
        foreach (var wheel in Wheels)
        {
            await hand.TapAsync(page.Locator(".next .button--first"));
            await page.Locator($"[id='f-fitted-{wheel}-tyre-marking']").WaitForAsync();
            if (wheel == "1L")
            {
                await hand.TapAsync(page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "195/65 R15 91H" }).First);
                await hand.TapAsync(page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { NameRegex = new("all 3 others") }));
                await hand.TapAsync(page.Locator($"[id='f-fitted-{wheel}-tread-inner-0']"));
            }

            await page.WaitForFunctionAsync($"() => document.activeElement?.id === 'f-fitted-{wheel}-tread-inner-0'");
            await hand.TypeAsync(wheel[0] == '1' ? "5.15.35.1" : "6.46.66.4");
            await hand.TypeAsync(wheel == "1R" ? "232" : "230");
        }

        await hand.SentAsync("fitted.2R.pressure.value");
    }

    private static async Task PlanAsync(IPage page, BayHand hand)
    {
        await NextAsync(page, hand, "Plan");
        await NextAsync(page, hand, "Rotation");
        await hand.TapAsync(page.Locator("input[name=rotation]:not([value=none])").First);
        await NextAsync(page, hand, "Pressures");
        await NextAsync(page, hand, "Each wheel");
        await hand.TapAsync(page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "off, balanced, on" }).First);
        await NextAsync(page, hand, "Agreed");
        await NextAsync(page, hand, "Off the car");
        await page.Locator(".steps a[aria-current=step]").WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached });
    }

    private static Task NextAsync(IPage page, BayHand hand, string name) =>
        hand.TapAsync(page.Locator(".next").GetByRole(AriaRole.Link, new LocatorGetByRoleOptions { Name = name, Exact = true }).First);

    /// <summary>Does the step that the page shows, and goes on to the next or to the next leg.</summary>
    private static async Task StepAsync(IPage page, BayHand hand)
    {
        var here = page.Locator(".steps a[aria-current=step]");
        var href = await here.GetAttributeAsync("href") ?? "";
        var parts = href.Split('/');
        var (at, step) = (parts[^2], parts[^1]);
        var field = $"f-work-steps-{at}-{step}";
        switch (step)
        {
            case "first-spin":
                await FirstSpinAsync(page, hand, at);
                break;
            case "check-spin":
                await hand.TapAsync(page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { NameRegex = new("in both planes") }));
                break;
            case "pressure-set":
                await hand.TapAsync(page.Locator($"[id='{field}']"));
                await hand.TypeAsync("230");
                break;
            case "stages" when (await Thumb(page).InnerTextAsync()).StartsWith("Stage ", StringComparison.Ordinal):
                // The hand has gone round with a stage, in the order drawn: one touch.
                foreach (var stage in new[] { 1, 2 })
                {
                    var done = page.Locator(".next").GetByRole(AriaRole.Button, new LocatorGetByRoleOptions { Name = string.Create(CultureInfo.InvariantCulture, $"Stage {stage} done") });
                    await hand.TapAsync(done);
                    await done.WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Detached });
                }

                break;
            case "final-torque":
                while (await Thumb(page).InnerTextAsync() is { } words && words.Contains("ixing ", StringComparison.Ordinal))
                {
                    await hand.TapAsync(Thumb(page));
                    await Assertions.Expect(Thumb(page)).Not.ToHaveTextAsync(words);
                }

                break;
        }

        // What records the step goes on to the next by itself, except behind the last of a leg.
        await Assertions.Expect(Thumb(page)).ToBeVisibleAsync();
        var before = page.Url;
        await hand.TapAsync(Thumb(page));
        await page.WaitForFunctionAsync("""
            ([before, href]) => location.pathname.endsWith("/handBack") ? document.querySelector("h1") !== null
              : (document.querySelector(".steps a[aria-current=step]")?.getAttribute("href") ?? href) !== href
                || ![undefined, href.split("/")[3]].includes(document.querySelector(".next a.button--first")?.getAttribute("href").split("/")[3])
            """, new[] { before, href });
    }

    private static ILocator Thumb(IPage page) => page.Locator(".next .button--first").First;

    private static async Task FirstSpinAsync(IPage page, BayHand hand, string at)
    {
        var balance = $"f-fitted-{at}-balance";
        var other = page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { NameRegex = new("^Same balancer") });
        var first = await other.CountAsync() == 0;
        if (!first)
        {
            await hand.TapAsync(other);
        }
        else
        {
            await hand.TapAsync(page.GetByRole(AriaRole.Button, new PageGetByRoleOptions { Name = "Begin with what the stamp says" }));
            await hand.TapAsync(page.Locator($"[id='{balance}-settings-rimDistance']"));
            await hand.TypeAsync("95\n15\n6\n");
            await hand.TapAsync(page.Locator($"[id='{balance}-stock-clip']"));
            await hand.TypeAsync("5,10,20,30");
        }

        await hand.TapAsync(page.Locator($"[id='{balance}-readings-inner-mass']"));
        await hand.TypeAsync("20\n115\n10\n250\n");
    }

    /// <summary>The visit as the desk took it in: its arrival is the desk's work and is not counted here.</summary>
    private static async Task<string> OpenAsync(IPage page) => await page.EvaluateAsync<string>("""
        async () => {
          const fields = { "vehicle.name": "White hatchback, counted", "vehicle.complaint": "seasonal check", "vehicle.odometer": "48200 km", "vehicle.drive": "front", rules: "uk" };
          for (const axle of [0, 1]) {
            const at = `vehicle.axles.${axle}`;
            Object.assign(fields, { [`${at}.steered`]: String(axle === 0), [`${at}.driven`]: String(axle === 0), [`${at}.placard.size`]: "195/65 R15 91H", [`${at}.placard.cold`]: "230 kPa",
              [`${at}.fixings.count`]: "4", [`${at}.fixings.torque`]: "110 Nm", [`${at}.fixings.condition`]: "dry" });
          }
          const at = new Date().toISOString();
          const entries = Object.entries(fields).map(([field, typed]) => ({ id: crypto.randomUUID(), field, typed, by: "T2", at }));
          const answer = await fetch("/api/v1/visits", { method: "POST", headers: { "Content-Type": "application/json" }, body: JSON.stringify({ by: "T2", entries }) });
          if (answer.status !== 201) throw new Error(await answer.text());
          return (await answer.json()).id;
        }
        """);

    private static string Told(SortedDictionary<string, (int Ways, int Acts, int Keys)> counted, VisitState state)
    {
        var text = new StringBuilder();
        var order = LegWords.All.Select(l => l.Key()).Where(counted.ContainsKey).ToList();
        counted.Keys.Except(order).ShouldBeEmpty();
        int ways = counted.Values.Sum(c => c.Ways), acts = counted.Values.Sum(c => c.Acts), keys = counted.Values.Sum(c => c.Keys);
        var stages = state.Work.Tightening.Values.Sum(t => t.Stages.Count);
        var final = state.Legs.SelectMany(l => l.Steps).Where(s => s.Step.Entry == StepEntry.Torques).Sum(s => s.Record!.Torques.Count);
        var steps = state.Legs.SelectMany(l => l.Steps).ToList();
        text.Append(string.Create(CultureInfo.InvariantCulture, $"""
            # Taps and keys of one vehicle

            This page is written by a browser test (`TapsTests`, with `TRUNDLE_WRITE_DOCS=1`), which also holds it to the count. One invented hatchback with four wheels
            of four fixings, four equal tyres: looked over, rotated, all four wheels balanced, tightened in stages, finally tightened after lowering, handed back.
            The desk has taken it in with its placard and torque. Counted is every tap on the glass and every key; Enter counts as a way.

            | leg | ways: to a place or a field | acts: what records something | keys: figures typed | all |
            | --- | ---: | ---: | ---: | ---: |

            """).ReplaceLineEndings("\n"));
        foreach (var leg in order)
        {
            var (w, a, k) = counted[leg];
            text.Append(CultureInfo.InvariantCulture, $"| {LegWords.Of(leg)!.Value.Title()} | {w} | {a} | {k} | {w + a + k} |\n");
        }

        text.Append(string.Create(CultureInfo.InvariantCulture, $"""
            | **in all** | **{ways}** | **{acts}** | **{keys}** | **{ways + acts + keys}** |

            **The aim is under 120, and it is {(ways + acts + keys < 120 ? "reached" : "not reached")}.** {acts} acts and {keys} keys are more than that by themselves. {stages} of the acts are
            stages that went round a wheel and {final} are fixings finally tightened, one tap each; {steps.Count(s => s.Step.HoldPoint)} of the {steps.Count} steps are hold points. One tap for several
            wheels would say what nobody did one by one, and a figure that was not read would be invented. What the pages can still save are the ways; the keys only a
            gauge or a balancer that sends its reading can save.

            """).ReplaceLineEndings("\n"));
        return text.ToString();
    }
}
