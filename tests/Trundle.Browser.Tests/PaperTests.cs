using Microsoft.Playwright;
using UglyToad.PdfPig;

namespace Trundle.Browser.Tests;

/// <summary>The visit's paper by hand in a real browser: a photograph that is made smaller, kept, sent and printed; and the pages at two sizes.</summary>
public sealed class PaperTests(Bay bay, Device device) : IClassFixture<Device>
{
    private const string Damage = "arrival.damage.3";

    [Fact]
    public async Task A_photograph_is_made_smaller_kept_while_there_is_no_network_sent_and_printed()
    {
        var visit = await bay.VisitAsync("Blue hatchback");
        var page = await bay.PageAsync();
        await Bay.EnterAsAsync(page, Bay.Technician());
        await device.SendAsync(visit, ($"{Damage}.place", "rear bumper"));
        await page.GotoAsync($"/bay/{visit}/arrive/came");
        var control = page.Locator("#f-arrival-damage-3-photos-chosen");
        await control.WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached });

        await control.SetInputFilesAsync(new FilePayload { Name = "notes.txt", MimeType = "text/plain", Buffer = "no picture"u8.ToArray() });
        await page.GetByText("This is no picture that the browser can read").WaitForAsync();

        // A picture of 4000 by 3000 pixels, in a camera's way with a place written behind its head.
        var large = Convert.FromBase64String(await page.EvaluateAsync<string>("""
            async () => {
              const canvas = document.createElement("canvas");
              canvas.width = 4000; canvas.height = 3000;
              const g = canvas.getContext("2d");
              for (let i = 0; i < 400; i++) { g.fillStyle = `hsl(${i * 47 % 360} 40% ${30 + i % 40}%)`; g.fillRect(i * 97 % 4000, i * 61 % 3000, 600, 400); }
              const blob = await new Promise(done => canvas.toBlob(done, "image/jpeg", 0.9));
              const bytes = new Uint8Array(await blob.arrayBuffer());
              let text = ""; for (const b of bytes) { text += String.fromCharCode(b); }
              return btoa(text);
            }
            """));
        byte[] place = [.. "GPS 12.3456 N"u8];
        byte[] camera = [.. large[..2], 0xFF, 0xFE, 0, (byte)(place.Length + 2), .. place, .. large[2..]];
        await page.Context.SetOfflineAsync(true);
        await control.SetInputFilesAsync(new FilePayload { Name = "bumper.jpg", MimeType = "image/jpeg", Buffer = camera });
        await page.GetByText("1 photograph and 1 entry on this device not yet sent").WaitForAsync();
        var picture = page.Locator("ul.photos img").Last;
        (await picture.GetAttributeAsync("src")).ShouldStartWith("data:image/jpeg");
        await page.ScreenshotAsync(new PageScreenshotOptions { Path = Path.Combine(Bay.Pictures, "bay-arrive-came-photo.png") });

        await page.Context.SetOfflineAsync(false);
        var field = $"{Damage}.photos.0";
        string? id = null;
        for (var i = 0; i < 120 && (id is null || await HostHasAsync(visit, id) is null); i++)
        {
            await Task.Delay(500);
            id = (await bay.JsonAsync($"/api/v1/visits/{visit}"))["fields"]![field]?.GetValue<string>();
        }

        var kept = (await HostHasAsync(visit, id.ShouldNotBeNull())).ShouldNotBeNull();
        kept.Length.ShouldBeLessThan(large.Length);
        System.Text.Encoding.Latin1.GetString(kept).ShouldNotContain("GPS");

        // What was kept outlives the page, and is shown from the host.
        await page.ReloadAsync();
        var size = await page.EvaluateAsync<int[]>($$"""
            async () => {
              const picture = await createImageBitmap(await (await fetch("/api/v1/visits/{{visit}}/photos/{{id}}")).blob());
              return [picture.width, picture.height];
            }
            """);
        size.ShouldBe([1600, 1200]);
        await page.Locator($"img[src$='{id}']").WaitForAsync();

        using var client = new HttpClient { BaseAddress = bay.Address };
        var sheet = await client.GetByteArrayAsync(new Uri($"/api/v1/visits/{visit}/sheet.pdf?for=file", UriKind.Relative));
        await File.WriteAllBytesAsync(Path.Combine(Bay.Pictures, "file-with-photo.pdf"), sheet);
        using var pdf = PdfDocument.Open(sheet);
        pdf.GetPages().SelectMany(p => p.GetImages()).ShouldContain(i => i.WidthInSamples == 1600 && i.HeightInSamples == 1200);
        await page.Context.CloseAsync();
    }

    [Theory]
    [InlineData("/stock", "office-stock", "Put something on the list")]
    [InlineData("/scrap", "office-scrap", "Scrap out")]
    [InlineData("/incidents", "office-incidents", "Incidents and near misses")]
    [InlineData("/fleet", "office-fleet", "Bring a list in")]
    [InlineData("/visits/(visit)", "office-visit-paper", "Lit before work")]
    [InlineData("/bay/(visit)/arrive/came", "bay-arrive-came", "Damage that it came with")]
    [InlineData("/bay/(visit)/plan/agreed", "bay-plan-agreed", "Work that the customer agreed to")]
    [InlineData("/bay/(visit)/offTheCar/seen", "bay-offTheCar-seen", "What was noticed")]
    [InlineData("/bay/(visit)/offTheCar/used", "bay-offTheCar-used", "From the shop’s list")]
    public async Task A_page_of_the_paper_has_no_fault(string address, string name, string part)
    {
        var visit = await bay.VisitAsync("Blue hatchback");
        await device.SendAsync(
            visit,
            ("work.seen.0.part", "brake-pad"), ("work.seen.0.position", "1L"), ("work.seen.0.thickness", "4 mm"), ("work.seen.0.words", "worn aslant"),
            ("work.declined.0.what", "Front wheel alignment measured"), ("work.declined.0.risk", "the new tyres may wear at their inner edge"),
            ("work.stock.0.kind", "valve"), ("work.stock.0.item", "snap-in, short"), ("work.stock.0.count", "2"), ("work.scrap.tyres.0.words", "the old one from the front left"));
        device.Whole = true;
        await device.CheckAsync(address.Replace("(visit)", visit, StringComparison.Ordinal), name, unfolded: true, part);
    }

    private async Task<byte[]?> HostHasAsync(string visit, string id)
    {
        using var client = new HttpClient { BaseAddress = bay.Address };
        using var answer = await client.GetAsync(new Uri($"/api/v1/visits/{visit}/photos/{id}", UriKind.Relative));
        return answer.IsSuccessStatusCode ? await answer.Content.ReadAsByteArrayAsync() : null;
    }
}
