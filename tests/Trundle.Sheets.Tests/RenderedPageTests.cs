using System.Diagnostics;
using Trundle.Sheets;

namespace Trundle.Sheets.Tests;

/// <summary>The page as a printer would see it, by poppler's pdftoppm.</summary>
public class RenderedPageTests
{
    [Theory]
    [InlineData(SheetReader.Customer)]
    [InlineData(SheetReader.File)]
    public void A_rendered_page_has_ink_and_its_few_colours(SheetReader reader)
    {
        var folder = Directory.CreateTempSubdirectory("sheet");
        try
        {
            var pdf = Path.Combine(folder.FullName, "sheet.pdf");
            File.WriteAllBytes(pdf, TestVisits.Write(TestVisits.Finished(), reader).Pdf);
            var page = Render(pdf, Path.Combine(folder.FullName, "page"));
            var pixels = page.Count;
            var ink = page.Count(p => p.R < 90 && p.G < 90 && p.B < 100);
            var paper = page.Count(p => p is { R: > 250, G: > 250, B: > 250 });
            ((double)ink / pixels).ShouldBeInRange(0.004, 0.2);
            ((double)paper / pixels).ShouldBeGreaterThan(0.6);

            // The rubber of the treads, and the vermilion of what is below the limit.
            page.ShouldContain(p => p.R == 0xe6 && p.G == 0xe0 && p.B == 0xd6);
            page.ShouldContain(p => p.R == 0xd5 && p.G == 0x5e && p.B == 0x00);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    /// <summary>The first page as pixels, from the plain form that pdftoppm writes without any option for a picture format.</summary>
    private static List<(byte R, byte G, byte B)> Render(string pdf, string root)
    {
        using var process = Process.Start(new ProcessStartInfo("pdftoppm", ["-r", "60", "-singlefile", pdf, root]) { RedirectStandardError = true })!;
        var said = process.StandardError.ReadToEnd();
        process.WaitForExit();
        process.ExitCode.ShouldBe(0, said);
        var bytes = File.ReadAllBytes(root + ".ppm");

        // P6, width height, greatest value, then three bytes a pixel.
        var (at, fields) = (0, new List<string>());
        while (fields.Count < 4)
        {
            var from = at;
            while (!char.IsWhiteSpace((char)bytes[at]))
            {
                at++;
            }

            fields.Add(System.Text.Encoding.ASCII.GetString(bytes, from, at - from));
            at++;
        }

        fields[0].ShouldBe("P6");
        return [.. bytes.Skip(at).Chunk(3).Select(p => (p[0], p[1], p[2]))];
    }
}
