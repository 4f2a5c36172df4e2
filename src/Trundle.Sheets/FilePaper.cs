using System.Globalization;
using PdfSharp.Drawing;
using Trundle.Measures;
using Trundle.Sheets.Drawing;
using Trundle.Visits.Bay;
using Trundle.Visits.Paper;

namespace Trundle.Sheets;

/// <summary>The visit's paper on the sheet for the file: what came, with photographs; what was agreed and declined; what was seen, used and sent out.</summary>
internal static class FilePaper
{
    private const double PhotoWidth = 118;
    private const double PhotoHeight = 92;
    private const double Between = 8;

    /// <summary>The vehicle as it came.</summary>
    public static void Came(SheetFlow flow, SheetContent content)
    {
        var lines = SheetPaper.Came(content.State).ToList();
        if (lines.Count == 0)
        {
            return;
        }

        flow.Heading("When it came, before any work");
        foreach (var line in lines)
        {
            flow.Paragraph(line);
        }

        Photos(flow, content);
    }

    /// <summary>What was agreed and declined.</summary>
    public static void Agreed(SheetFlow flow, SheetContent content)
    {
        var paper = content.State.Work.Paper;
        if (paper.Agreed.Count == 0 && paper.Declined.Count == 0)
        {
            return;
        }

        flow.Heading("Agreed and declined");
        if (SheetPaper.Agreed(paper) is { } agreed)
        {
            flow.Paragraph(agreed);
        }

        if (paper.Declined.Count > 0)
        {
            flow.Table([new("declined", 2.2), new("risk that was told", 3.2), new("customer's signature", 1.8)],
                paper.Declined.Select(d => (IReadOnlyList<Cell>)[d.What, d.Risk, d.Signed is { } signed ? SheetPaper.Signature(signed, d.At) : "not signed"]));
        }
    }

    /// <summary>What was seen with the wheels off.</summary>
    public static void Seen(SheetFlow flow, SheetContent content)
    {
        var seen = content.State.Work.Paper.Seen;
        if (seen.Count == 0)
        {
            return;
        }

        flow.Heading("Seen with the wheels off");
        flow.Paragraph("Passed on to whoever is of that trade; no verdict is given here. A limit is the maker's own, as entered.", SheetInk.Soft);
        flow.Table([new("where", 1), new("part", 1.2), new("thickness", 0.9), new("maker's limit", 1), new("noticed", 2.4), new("to be looked at by", 1.8), new("seen by", 1.2)],
            seen.Select(s => (IReadOnlyList<Cell>)
            [
                content.At(s.Position), s.Part.Name, s.Thickness is { } t ? t.Text("mm", 1) : "–",
                s.MakerLimit is { } limit ? limit.Text("mm", 1) : s.Thickness is null ? "–" : "not given",
                s.Words ?? "nothing", s.Referred ? s.LookedAtBy ?? s.Part.By : "–", $"{s.By ?? "–"}{(s.Role is { } role ? $", {role.Word()}" : "")}",
            ]));
    }

    /// <summary>Stock used and scrap out.</summary>
    public static void Used(SheetFlow flow, SheetContent content)
    {
        var paper = content.State.Work.Paper;
        if (paper.Stock.Count > 0)
        {
            flow.Heading("Stock used");
            flow.Paragraph(string.Join("; ", paper.Stock.Select(s => string.Create(CultureInfo.InvariantCulture, $"{s.Count} × {s.Name}"))) + ".");
        }

        if (!paper.Scrap.Empty)
        {
            flow.Heading("Scrap out");
            foreach (var tyre in paper.Scrap.Tyres)
            {
                flow.Paragraph($"Tyre{(tyre.Tin is { } tin ? $", TIN {tin}" : ", no TIN entered")}{(tyre.Words is { } words ? $": {words}" : "")}.");
            }

            if (paper.Scrap.LeadWeights is { } lead)
            {
                flow.Paragraph($"Lead weights: {lead.Text("g", 0)}.");
            }

            flow.Paragraph($"Carrier or waste note: {paper.Scrap.Note ?? "no number entered"}.");
        }
    }

    /// <summary>The photographs, small, in rows; one that the workshop does not hold (yet) is named.</summary>
    private static void Photos(SheetFlow flow, SheetContent content)
    {
        var x = flow.Left;
        var there = new List<(BodyDamage Damage, byte[] Bytes)>();
        var away = 0;
        foreach (var damage in content.State.Entered.Arrival.Damage)
        {
            foreach (var id in damage.Photos)
            {
                if (content.Photos.TryGetValue(id, out var bytes))
                {
                    there.Add((damage, bytes));
                }
                else
                {
                    away++;
                }
            }
        }

        var broken = 0;
        foreach (var (damage, bytes) in there)
        {
            if (x == flow.Left)
            {
                flow.Need(PhotoHeight + 20);
            }

            using var stream = new MemoryStream(bytes);
            using var image = Image(stream);
            if (image is null)
            {
                broken++;
                continue;
            }

            var scale = Math.Min(PhotoWidth / image.PixelWidth, PhotoHeight / image.PixelHeight);
            var (width, height) = (image.PixelWidth * scale, image.PixelHeight * scale);
            flow.Graphics.DrawImage(image, x, flow.At, width, height);
            flow.Graphics.DrawRectangle(SheetInk.Line(SheetInk.Hairline, 0.5), x, flow.At, width, height);
            SheetText.DrawLine(flow.Graphics, SheetText.Wrap(flow.Graphics, damage.Place, 7, PhotoWidth)[0], x, flow.At + PhotoHeight + 9, 7, SheetInk.Soft);
            x += PhotoWidth + Between;
            if (x + PhotoWidth > flow.Left + flow.Width)
            {
                x = flow.Left;
                flow.Skip(PhotoHeight + 16);
            }
        }

        if (x > flow.Left)
        {
            flow.Skip(PhotoHeight + 16);
        }

        if (broken > 0)
        {
            flow.Paragraph(FormattableString.Invariant($"Photographs that cannot be printed: {broken}. They are shown on the office's page of the visit."), SheetInk.Soft);
        }

        if (away > 0)
        {
            flow.Paragraph(away == 1 ? "One photograph is not here: it lies in the workshop's store, or still on a device." : FormattableString.Invariant($"{away} photographs are not here: they lie in the workshop's store, or still on a device."), SheetInk.Soft);
        }
    }

    /// <summary>The picture, or null where the paper cannot carry it: one spoilt photograph keeps no sheet from being written.</summary>
    private static XImage? Image(MemoryStream stream)
    {
        try
        {
            return XImage.FromStream(stream);
        }
        catch (Exception e) when (e is not OutOfMemoryException)
        {
            return null;
        }
    }
}
