namespace Trundle.Sheets.Tests;

/// <summary>The page as a printer would see it, by poppler's pdftoppm.</summary>
public class RenderedPageTests
{
    [Theory]
    [InlineData(SheetReader.Customer)]
    [InlineData(SheetReader.File)]
    public void A_rendered_page_has_ink_and_its_few_colours(SheetReader reader)
    {
        var image = PageImage.Of(TestVisits.Write(TestVisits.Finished(), reader).Pdf, 60);
        var page = image.Pixels.Chunk(3).Select(p => (R: p[0], G: p[1], B: p[2])).ToList();
        page.Count.ShouldBe(image.Width * image.Height);
        var ink = page.Count(p => p.R < 90 && p.G < 90 && p.B < 100);
        var paper = page.Count(p => p is { R: > 250, G: > 250, B: > 250 });
        ((double)ink / page.Count).ShouldBeInRange(0.004, 0.2);
        ((double)paper / page.Count).ShouldBeGreaterThan(0.6);

        // The rubber of the treads, and the vermilion of what is below the limit.
        page.ShouldContain(p => p.R == 0xe6 && p.G == 0xe0 && p.B == 0xd6);
        page.ShouldContain(p => p.R == 0xd5 && p.G == 0x5e && p.B == 0x00);
    }
}
