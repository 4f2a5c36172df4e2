using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using UglyToad.PdfPig;

namespace Trundle.Browser.Tests;

/// <summary>One invented vehicle, by hand in a real browser, from arrival to a downloaded PDF; then the command on the same visit.</summary>
public sealed partial class WholeVisitTests(Bay bay)
{
    [Fact]
    public async Task A_vehicle_goes_from_arrival_to_its_sheet()
    {
        var page = await bay.PageAsync();
        var errors = new List<string>();
        page.PageError += (_, error) => errors.Add(error);

        await Bay.EnterAsAsync(page, Bay.Technician());

        await page.GotoAsync("/arrive");
        await page.Locator("#vehicle-name").FillAsync("Green van, DEMO 21");
        await page.Locator("button[form=arrive]").ClickAsync();
        // Asked for, not waited on as an event: where the page is there before the wait begins, the event never comes again.
        await Assertions.Expect(page).ToHaveURLAsync(BayUrl(), new PageAssertionsToHaveURLOptions { Timeout = 30_000 });
        var visit = BayUrl().Match(page.Url).Groups["id"].Value;
        var hand = new BayHand(bay, page, visit);
        errors.ShouldBeEmpty();

        await ArriveAsync(hand);
        await LookOverAsync(hand);
        await hand.GoAsync("plan/rotation");
        await hand.EnterAsync(("work.rotation", "none"));
        await hand.GoAsync("plan/jobs");
        await hand.EnterAsync(("work.jobs.1L", "demount"), ("work.jobs.1R", "stays on"), ("work.jobs.2L", "stays on"), ("work.jobs.2R", "stays on"));
        await hand.SentAsync("work.jobs.2R");

        await HandWorkAsync(page, hand, visit);

        await hand.GoAsync("handBack");
        await page.Locator(".next .button--first, main .button--first").First.ClickAsync();
        await hand.SentAsync("work.handBack.by");

        var state = await StateAsync(visit);
        state.Stops.Select(s => $"{s.Leg} {s.Position} {s.What}: {s.Why}").ShouldBeEmpty();
        state.HandedBack.ShouldBeTrue();
        state.NotTightened.ShouldBeEmpty();

        var download = await page.RunAndWaitForDownloadAsync(() => page.EvaluateAsync(
            "address => { const a = document.createElement('a'); a.href = address; a.download = ''; document.body.append(a); a.click(); a.remove(); }",
            $"/api/v1/visits/{visit}/sheet.pdf?for=customer&paper=a4"));
        var file = Path.Combine(Bay.Pictures, "customer.pdf");
        await download.SaveAsAsync(file);
        using var pdf = PdfDocument.Open(file);
        pdf.NumberOfPages.ShouldBe(1);
        var text = string.Join(" ", pdf.GetPages().Select(p => p.Text));
        text.ShouldContain("Green van");
        errors.ShouldBeEmpty();

        await TheCommandAnswersTheSameAsync(visit);
    }

    private static async Task ArriveAsync(BayHand hand)
    {
        await hand.GoAsync("arrive");
        await hand.EnterAsync(
            ("vehicle.complaint", "front left loses air"), ("vehicle.odometer", "81500"),
            ("rules", "uk"), ("date", "2026-03-14"));
        await hand.SentAsync("date");
        foreach (var axle in new[] { 1, 2 })
        {
            await hand.GoAsync($"arrive/axle-{axle}");
            var at = $"vehicle.axles.{axle - 1}";
            await hand.EnterAsync(
                ($"{at}.placard.size", "205/65 R16C 107/105T"), ($"{at}.placard.cold", "380"),
                ($"{at}.fixings.count", "5"), ($"{at}.fixings.torque", "160"));
            await hand.SentAsync($"{at}.fixings.torque");
        }
    }

    private static async Task LookOverAsync(BayHand hand)
    {
        foreach (var position in new[] { "1L", "1R", "2L", "2R" })
        {
            await hand.GoAsync($"lookOver/{position}");
            var at = $"fitted.{position}";
            await hand.EnterAsync(
                ($"{at}.tyre.marking", "205/65 R16C 107/105T"), ($"{at}.tread.inner.0", "6.1"), ($"{at}.tread.centre.0", "6,4"),
                ($"{at}.tread.outer.0", "6.0 mm"), ($"{at}.pressure.value", position == "1L" ? "55 psi" : "382"));
            await hand.SentAsync($"{at}.pressure.value");
        }
    }

    /// <summary>Every step of the hand work, each on its own page, until nothing is open.</summary>
    private async Task HandWorkAsync(IPage page, BayHand hand, string visit)
    {
        for (var i = 0; i < 110; i++)
        {
            var state = await StateAsync(visit);
            var open = state.Legs.Where(l => l.Leg is Leg.OffTheCar or Leg.Refit or Leg.Prove).SelectMany(l => l.Steps).FirstOrDefault(s => s.Standing != StepStanding.Passed);
            if (open is null)
            {
                return;
            }

            open.Standing.ShouldBe(StepStanding.Open, $"{open.Step.Id} at {open.At}: {open.Why}");
            var field = open.Step.FieldAt(open.At);
            await hand.GoAsync($"{open.Step.Leg.Key()}/{open.At}/{open.Step.Id}");
            (await page.Locator("main").InnerTextAsync()).ShouldContain(open.Step.Cautions.Count > 0 ? open.Step.Cautions[0].Text : open.Step.Text);
            switch (open.Step.Entry)
            {
                case StepEntry.Confirm:
                    await hand.TouchAsync("Done");
                    break;
                case StepEntry.Choice:
                    if (open.Step.Choices.Count > 3)
                    {
                        await hand.EnterAsync((field, open.Step.Passing[0]));
                    }
                    else
                    {
                        await hand.TouchAsync(open.Step.Passing[0]);
                    }

                    break;
                case StepEntry.Repair:
                case StepEntry.Nothing:
                    throw new InvalidOperationException($"This visit has no such step: {open.Step.Id}.");
                case StepEntry.Text:
                    await hand.EnterAsync((field, "nothing to add"));
                    break;
                case StepEntry.Pressure:
                    await hand.EnterAsync((field, open.Step.Id == "seat" ? "240" : "380"));
                    break;
                case StepEntry.Spin:
                    await hand.EnterAsync(($"{field}.inner.mass", "0"), ($"{field}.inner.angle", "0"), ($"{field}.outer.mass", "0"), ($"{field}.outer.angle", "0"));
                    field = $"{field}.outer.angle";
                    break;
                case StepEntry.Torques:
                    for (var n = 1; n <= 5; n++)
                    {
                        await hand.EnterAsync(($"{field}.{n}", "160"));
                    }

                    field = $"{field}.5";
                    break;
            }

            await hand.SentAsync(field);
        }

        throw new InvalidOperationException("The hand work did not end.");
    }

    private async Task<VisitState> StateAsync(string visit)
    {
        var problems = new List<Problem>();
        var state = VisitStanding.Of(FileNode.From(await bay.JsonAsync($"/api/v1/visits/{visit}/file.json")), problems);
        problems.ShouldBeEmpty();
        return state;
    }

    /// <summary>The visit's file by the command's own operation gives what the HTTP interface gave.</summary>
    private async Task TheCommandAnswersTheSameAsync(string visit)
    {
        var file = await bay.JsonAsync($"/api/v1/visits/{visit}/file.json");
        var here = VisitCheckOperation.Run(FileNode.From(file));
        here.IsRead.ShouldBeTrue(here.Problem?.ToString());
        using var client = new HttpClient { BaseAddress = bay.Address };
        using var content = new StringContent(file.ToJsonString(), System.Text.Encoding.UTF8, "application/json");
        using var answer = await client.PostAsync(new Uri("/api/v1/visit/check", UriKind.Relative), content);
        JsonNode.Parse(await answer.Content.ReadAsStringAsync())!.ToJsonString().ShouldBe(here.Value.Body.ToJsonString());
    }

    [GeneratedRegex(@"/bay/(?<id>[0-9a-f-]{36})")]
    private static partial Regex BayUrl();
}
