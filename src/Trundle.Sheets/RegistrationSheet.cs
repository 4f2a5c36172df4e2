using System.Globalization;
using Trundle.Sheets.Drawing;
using Trundle.Visits.Keeping;
using Trundle.Words;

namespace Trundle.Sheets;

/// <summary>The registration of tyres that were sold, on paper: for the purchaser, or for the maker.</summary>
public static class RegistrationSheet
{
    /// <summary>Draws it.</summary>
    /// <returns>The PDF's bytes.</returns>
    public static byte[] Write(Registration registration, PaperSize paper, Texts? texts = null)
    {
        ArgumentNullException.ThrowIfNull(registration);
        var day = registration.SoldOn.ToString("d MMM yyyy", CultureInfo.InvariantCulture);
        var sale = registration.Sale;
        using var document = new SheetDocument(paper, $"Tyre registration {registration.Kept.Number}", registration.SoldOn, texts);
        using var flow = new SheetFlow(document, $"Tyre registration {registration.Kept.Number} · {day}", $"{sale.Seller.Name} · registration {registration.Kept.Number}");
        SheetText.Draw(flow.Graphics, "Tyre registration", flow.Left, flow.At + 14, 16, SheetInk.Ink, true);
        flow.Skip(26);
        flow.Paragraph("To the purchaser: the maker of your tyres can tell you of a recall only if it knows who has them. Give it what stands here: by its own form, by its site, or by this sheet. It costs you nothing.", size: 10);
        flow.Paragraph("This sheet is the shop’s own and no official form. The maker’s own form comes first where the shop has it. Information as in 49 CFR 574.7 (its fields from memory).", SheetInk.Soft, 8.5);
        flow.Skip(6);
        Named(flow, "Purchaser", sale.Purchaser, "e-mail");
        Named(flow, "Seller", sale.Seller, "number with the maker");
        flow.Heading($"Tyres, sold on {day}");
        flow.Table([new("", 0.4), new("Tyre identification number (TIN)", 2.4), new("Maker or brand", 1.6), new("Marking", 1.8)],
            sale.Tyres.Select((t, i) => (IReadOnlyList<Cell>)[(i + 1).ToString(CultureInfo.InvariantCulture), new Cell(t.Tin, Bold: true), t.Maker ?? "–", t.Marking ?? "–"]), 10);
        flow.Paragraph(string.Create(CultureInfo.InvariantCulture, $"Number of tyres: {sale.Tyres.Count}."), size: 9.5);
        flow.Finish();
        return document.Finish().Pdf;
    }

    private static void Named(SheetFlow flow, string heading, Party? party, string other)
    {
        flow.Heading(heading);
        if (party is null)
        {
            flow.Paragraph("Name and address were taken out of the shop’s record.", size: 10);
            return;
        }

        flow.Table([new("", 1), new("", 3)],
        [
            ["name", new Cell(party.Name, Bold: true)],
            ["street", party.Street],
            ["city, state, post code", party.Lines[1]],
            [other, party.Other ?? "–"],
        ], 10);
    }
}
