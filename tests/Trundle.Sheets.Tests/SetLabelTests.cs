using UglyToad.PdfPig;

namespace Trundle.Sheets.Tests;

/// <summary>Labels as they come out of the printer: the words on them, and the code read back from the pixels.</summary>
public sealed class SetLabelTests
{
    private const int PerInch = 300;

    private static LabelContent Label(string position, string address) => new(
        "Set S26-1", position, "Blue hatchback, DEMO 07", "rack B, shelf 3", ["195/65 R15 91T", "TIN 1AB CDEFHJ 2220", "tread 5.1 mm / 5.6 mm / 5.3 mm"], new DateOnly(2026, 3, 14), address);

    [Theory]
    [InlineData("http://127.0.0.1:5151/sets/0195f3c2-7a31-7c11-9d52-3f0a6b1e8c44")]
    [InlineData("https://192.0.2.17:8443/sets/0195f3c2-7a31-7c11-9d52-3f0a6b1e8c44")]
    [InlineData("http://workshop-computer.example/sets/0195f3c2-7a31-7c11-9d52-3f0a6b1e8c44")]
    [InlineData("http://bay/sets/1")]
    public void The_printed_code_reads_back_as_the_address(string address)
    {
        var page = PageImage.Of(SetLabel.Write([Label("Front left, 1L", address)], LabelPaper.Single), PerInch);
        ((double)page.Width).ShouldBe(100 / 25.4 * PerInch, 1.5);
        ((double)page.Height).ShouldBe(60 / 25.4 * PerInch, 1.5);
        QrReader.Read(Modules(page)).ShouldBe(address);
    }

    [Theory]
    [InlineData(LabelPaper.A4, 1)]
    [InlineData(LabelPaper.Letter, 1)]
    [InlineData(LabelPaper.Single, 5)]
    public void Each_wheel_has_a_label_with_what_finds_it(LabelPaper paper, int pages)
    {
        string[] positions = ["Front left, 1L", "Front right, 1R", "Rear left, 2L", "Rear right, 2R", "Spare, S"];
        using var document = PdfDocument.Open(SetLabel.Write([.. positions.Select(p => Label(p, "http://bay/sets/1"))], paper));
        document.NumberOfPages.ShouldBe(pages);
        var words = string.Join('\n', document.GetPages().Select(p => p.Text));
        foreach (var position in positions)
        {
            words.ShouldContain(position);
        }

        words.ShouldContain("Set S26-1");
        words.ShouldContain("rack B, shelf 3");
        words.ShouldContain("1AB CDEFHJ 2220");
        foreach (var page in document.GetPages())
        {
            page.Letters.ShouldAllBe(l => l.BoundingBox.Left >= 0 && l.BoundingBox.Right <= page.Width && l.BoundingBox.Bottom >= 0);
        }
    }

    [Fact]
    public void A_long_name_takes_no_room_from_the_code()
    {
        const string address = "http://127.0.0.1:5151/sets/0195f3c2-7a31-7c11-9d52-3f0a6b1e8c44";
        var label = Label("Front left, 1L", address) with { Vehicle = string.Concat(Enumerable.Repeat("Very long name of a vehicle ", 12)), Place = string.Concat(Enumerable.Repeat("behind the third door ", 9)), Facts = [.. Enumerable.Repeat("a fact that stands in a line of its own", 40)] };
        QrReader.Read(Modules(PageImage.Of(SetLabel.Write([label], LabelPaper.Single), PerInch))).ShouldBe(address);
    }

    /// <summary>The modules of the code at the upper right of a single label, without the quiet zone, told by its own finder pattern.</summary>
    private static bool[,] Modules(PageImage page)
    {
        var (left, bottom) = (page.Width - Points(9 + 96), Points(9 + 96));
        var dark = Enumerable.Range(Points(9), bottom - Points(9)).SelectMany(y => Enumerable.Range(left, Points(96)).Where(x => page.IsDark(x, y)).Select(x => (x, y))).ToList();
        var (x0, y0, x1, y1) = (dark.Min(d => d.x), dark.Min(d => d.y), dark.Max(d => d.x) + 1, dark.Max(d => d.y) + 1);
        var finder = 0;
        while (page.IsDark(x0 + finder, y0 + 1))
        {
            finder++;
        }

        var side = (int)Math.Round((x1 - x0) / (finder / 7.0));
        var step = (x1 - x0) / (double)side;
        Math.Abs(y1 - y0 - (x1 - x0)).ShouldBeLessThan(3);
        var modules = new bool[side, side];
        for (var row = 0; row < side; row++)
        {
            for (var column = 0; column < side; column++)
            {
                modules[row, column] = page.IsDark((int)(x0 + ((column + 0.5) * step)), (int)(y0 + ((row + 0.5) * step)));
            }
        }

        // Four modules of paper around it.
        (left + (4 * step) - 3).ShouldBeLessThan(x0);
        return modules;
    }

    private static int Points(double points) => (int)Math.Round(points / 72 * PerInch);
}
