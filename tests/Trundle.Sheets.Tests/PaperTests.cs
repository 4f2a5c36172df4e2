using System.Text.Json.Nodes;
using Trundle.Sheets;
using UglyToad.PdfPig;

namespace Trundle.Sheets.Tests;

/// <summary>The visit's paper on both sheets, as read back from the PDF.</summary>
public class PaperTests
{
    private static readonly string[] Came = ["Warning lamps lit before work began: tyre pressure, a spanner in yellow", "Looked at and not lit: anti-lock brakes", "front left wing, scratch of a hand's length", "Key of the locking fixings: came in (glove box); now: back in the glove box"];

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void The_customer_reads_what_came_what_was_declined_with_its_risk_and_signs(PaperSize paper)
    {
        var sheet = TestVisits.Write(TestVisits.Saloon(), paper: paper);
        sheet.Pages.ShouldBe(1);
        var text = TestVisits.Text(sheet.Pdf);

        foreach (var words in Came.Concat(["Work you declined", "Front wheel alignment measured. If it is left: the new tyres may wear at their inner edge", "I was told the risk and declined this work. Signature:",
            "Agreed: look over, rotation and balance of four wheels; two new tyres, front. Signed: P. Driver, 2026-03-14 08:40", "dust boot, split", "Have it looked at by a workshop for steering and suspension"]))
        {
            text.ShouldHold(words);
        }
    }

    [Fact]
    public void A_signature_that_was_given_stands_in_the_place_of_the_line()
    {
        var visit = TestVisits.Saloon();
        visit["work"]!["declined"]![0]!["signed"] = "P. Driver";
        visit["work"]!["declined"]![0]!["at"] = "2026-03-14 16:10";
        var text = TestVisits.Text(TestVisits.Write(visit).Pdf);
        text.ShouldHold("Signed: P. Driver, 2026-03-14 16:10");
        text.ShouldNotHold("I was told the risk");
    }

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void A_page_that_is_too_full_shortens_what_came_and_writes_nothing_over_its_foot(PaperSize paper)
    {
        var visit = TestVisits.Saloon();
        visit["arrival"]!["damage"] = new JsonArray([.. Enumerable.Range(1, 9).Select(i => (JsonNode?)new JsonObject { ["place"] = $"place number {i}", ["words"] = "a scratch down to the primer, about as long as a hand, with rust beginning at its lower end" })]);
        visit["work"]!["declined"] = new JsonArray([.. Enumerable.Range(1, 20).Select(i => (JsonNode?)new JsonObject { ["what"] = $"Work number {i}", ["risk"] = string.Concat(Enumerable.Repeat("the tyre may lose air on a long fast drive and the vehicle become hard to hold; ", 4)) })]);
        var sheet = TestVisits.Write(visit, paper: paper);
        using var document = PdfDocument.Open(sheet.Pdf);
        var words = document.GetPage(1).GetWords().ToList();
        var foot = words.Where(w => w.Text == "odometer").Max(w => w.BoundingBox.Top);
        words.Where(w => w.Text == "Pressures,").Min(w => w.BoundingBox.Bottom).ShouldBeGreaterThan(foot, "the last line stands above the title block");
        var text = TestVisits.Text(sheet.Pdf);
        foreach (var said in new[] { "It came with damage at: place number 1", "and at 5 more places", "Work number 1.", "each with its risk, in the workshop's file", "I was told the risk" })
        {
            text.ShouldHold(said);
        }

        TestVisits.Text(TestVisits.Write(visit, SheetReader.File, paper).Pdf).ShouldHold("Work number 20");
    }

    [Fact]
    public void Whom_to_call_stands_on_the_sheet_for_the_file_alone()
    {
        var visit = TestVisits.Saloon();
        TestVisits.Text(TestVisits.Write(visit).Pdf).ShouldNotHold("0000 070 031");
        TestVisits.Text(TestVisits.Write(visit, SheetReader.File).Pdf).ShouldHold("0000 070 031");
    }

    [Fact]
    public void The_file_holds_all_of_it_with_the_photograph_drawn_small()
    {
        var order = new SheetOrder(SheetReader.File, PaperSize.A4) { Photos = TestVisits.SaloonPhotos() };
        var sheet = TestVisits.Write(TestVisits.Saloon(), order);
        var text = TestVisits.Text(sheet.Pdf);
        foreach (var words in Came.Concat(["DEMXPVM48TR000031", "Seen with the wheels off", "brake pad", "6.5 mm", "3.0 mm", "split, with grease", "Stock used", "3 × clip-on weight 15 g", "2 × valve: snap-in, short",
            "Scrap out", "TIN 1AB CDEFHJ 2220", "Lead weights: 85 g", "WN 0031", "risk that was told", "not signed"]))
        {
            text.ShouldHold(words);
        }

        text.ShouldNotHold("photograph is not here");
        using var document = PdfDocument.Open(sheet.Pdf);
        var picture = document.GetPages().SelectMany(p => p.GetImages()).ShouldHaveSingleItem();
        (picture.WidthInSamples, picture.HeightInSamples).ShouldBe((4, 3));
        picture.BoundingBox.Width.ShouldBe(118, 1);
        picture.BoundingBox.Height.ShouldBeLessThanOrEqualTo(92.5);
    }

    [Fact]
    public void A_photograph_that_is_spoilt_keeps_no_sheet_from_being_written()
    {
        var photos = TestVisits.SaloonPhotos();
        var (id, bytes) = photos.Single();
        photos[id] = [.. bytes[..45], .. new byte[30]];
        TestVisits.Text(TestVisits.Write(TestVisits.Saloon(), new SheetOrder(SheetReader.File, PaperSize.A4) { Photos = photos }).Pdf).ShouldHold("Photographs that cannot be printed: 1");
    }

    [Fact]
    public void A_photograph_that_is_not_held_is_said() =>
        TestVisits.Text(TestVisits.Write(TestVisits.Saloon(), SheetReader.File).Pdf).ShouldHold("One photograph is not here");

    [Fact]
    public void A_check_digit_that_does_not_agree_is_a_note_on_the_file()
    {
        var visit = TestVisits.Saloon();
        visit["vehicle"]!["vin"] = "DEMXPVM49TR000031";
        TestVisits.Text(TestVisits.Write(visit, SheetReader.File).Pdf).ShouldHold("The ninth character is 9; the check digit of 49 CFR 565.15 would be 8");
    }
}
