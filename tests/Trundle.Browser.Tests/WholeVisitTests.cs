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

        foreach (var (place, entries) in InventedVisit.BeforeTheHandWork)
        {
            await hand.GoAsync(place);
            await hand.EnterAsync(entries);
            await hand.SentAsync(entries[^1].Field);
        }

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
            foreach (var (entered, value) in InventedVisit.StepEntries(open))
            {
                await hand.TakeAsync(entered, value);
                field = entered ?? field;
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
