using System.Buffers.Binary;
using Microsoft.Playwright;

namespace Trundle.Browser.Tests;

/// <summary>
/// The guide's pictures are taken of the invented workshop's own pages: written to docs/guide/pictures where TRUNDLE_WRITE_DOCS is 1; every run opens the
/// pages and waits for what each picture is there to show.
/// </summary>
public sealed class GuidePicturesTests(Bay bay)
{
    private const int Width = 960;
    private const int Height = 640;

    [Theory]
    [InlineData("board", "board", ".board-line")]
    [InlineData("look-over", "bay-wheel", ".section-picture")]
    [InlineData("first-spin", "bay-first-spin", ".polar svg")]
    [InlineData("stages", "bay-stages", ".stud-picture")]
    [InlineData("hand-back", "bay-hand-back", ".stops")]
    [InlineData("practice-wheel", "practice-spin", ".turned-wheel")]
    [InlineData("recall", "recall", "#found")]
    public async Task A_picture_of_the_guide_shows_its_page(string picture, string name, string shown)
    {
        var page = await bay.PageAsync(Width, Height);
        await Bay.EnterAsAsync(page, Bay.Technician());
        await page.GotoAsync(await EveryPage.AddressAsync(bay, name));
        await BayHand.OpenedAsync(page);
        var part = page.Locator(shown).First;
        await part.WaitForAsync();
        if (name != "recall")
        {
            // As high as the foot lets it, so that the picture shows it whole.
            await part.EvaluateAsync("e => (e.closest('figure, section') ?? e).scrollIntoView({ block: 'nearest' })");
        }

        var taken = await page.ScreenshotAsync();
        var path = Path.Combine(Bay.Checkout(), "docs", "guide", "pictures", $"{picture}.png");
        if (Environment.GetEnvironmentVariable("TRUNDLE_WRITE_DOCS") == "1")
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            await File.WriteAllBytesAsync(path, taken, TestContext.Current.CancellationToken);
        }

        Size(await File.ReadAllBytesAsync(path, TestContext.Current.CancellationToken)).ShouldBe(Size(taken), $"Run this test with TRUNDLE_WRITE_DOCS=1 to take {picture}.png anew.");
        await page.Context.CloseAsync();
    }

    /// <summary>Width and height of a PNG, px: the first two numbers of its head, behind the signature and the head's own name.</summary>
    private static (int Width, int Height) Size(byte[] png) => (BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)), BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20)));
}
