using System.Text.Json.Nodes;
using Trundle.Sheets;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using UglyToad.PdfPig;

namespace Trundle.Sheets.Tests;

public class CustomerSheetTests
{
    [Theory]
    [InlineData(PaperSize.A4, 595.3, 841.9)]
    [InlineData(PaperSize.Letter, 612, 792)]
    public void It_is_one_page_of_the_paper_that_was_asked_for(PaperSize paper, double width, double height)
    {
        var sheet = TestVisits.Write(TestVisits.Finished(), paper: paper);
        sheet.Pages.ShouldBe(1);
        using var document = PdfDocument.Open(sheet.Pdf);
        document.NumberOfPages.ShouldBe(1);
        document.GetPage(1).Width.ShouldBe(width, 0.1);
        document.GetPage(1).Height.ShouldBe(height, 0.1);
        document.Information.Title.ShouldBe("Blue hatchback, DEMO 07, 2026-03-14");
    }

    [Fact]
    public void It_says_what_was_found_what_was_done_what_to_watch_when_next_and_who_signed()
    {
        var text = TestVisits.Text(TestVisits.Write(TestVisits.Finished()).Pdf);
        foreach (var words in new[]
        {
            "You told us: shakes at 70 mph", "What we found", "1.4 mm", "limit 1.6 mm", "Put right on this visit. Replace this tyre", "What we did", "1AB CDEFHJ 4725", "230 kPa (33 psi)",
            "20 of 20 fixings finally tightened", "120 N·m (89 lbf·ft)", "What you should watch", "after 30 to 60 mi (50 to 100 km)", "Next", "between 29 981 mi (48 250 km) and 30 012 mi (48 300 km)",
            "58 200 km", "2027-03-14", "handed back by T2, technician", "26-0314-3", "195/65 R15 91H · 230 kPa",
        })
        {
            text.ShouldHold(words);
        }

        text.ShouldNotHold("Not handed back");
    }

    [Fact]
    public void Its_numbers_are_those_of_the_check()
    {
        var visit = TestVisits.Finished();
        var check = VisitCheckOperation.Run(FileNode.From(visit)).Value;
        var sheet = TestVisits.Write(visit);
        sheet.No.ShouldBe(check.No);
        sheet.Worst.ShouldBe(check.Body["worst"]!.GetValue<string>());
        var text = TestVisits.Text(sheet.Pdf);
        var found = check.Body["legs"]!["lookOver"]!["inspect"]!["findings"]!.AsArray().Where(f => f!["category"]!.GetValue<string>() is "major" or "dangerous").ToList();
        found.Count.ShouldBeGreaterThan(0);
        foreach (var finding in found)
        {
            text.ShouldHold(finding!["measured"]!["text"]!.GetValue<string>());
        }
    }

    [Fact]
    public void A_visit_that_is_stopped_says_so_before_anything_else()
    {
        var visit = TestVisits.Finished();
        ((JsonObject)visit["work"]!["steps"]!["1L"]!).Remove("final-torque");
        var sheet = TestVisits.Write(visit);
        sheet.MayLeave.ShouldBeFalse();
        sheet.No.ShouldBeTrue();
        var text = TestVisits.Text(sheet.Pdf);
        text.ShouldHold("Not handed back: this still stops it.");
        text.ShouldHold("Wheels not finally tightened: 1L. Do not drive.");
        text.IndexOf("Nothandedback", StringComparison.Ordinal).ShouldBeLessThan(text.IndexOf("Whatwefound", StringComparison.Ordinal));
        text.ShouldHold("nobody yet");
        text.ShouldNotHold("after 50 to 100 km");
    }

    [Fact]
    public void Under_us_rules_pounds_miles_and_thirty_seconds_come_first()
    {
        var visit = TestVisits.Finished();
        visit["rules"] = "us";
        var text = TestVisits.Text(TestVisits.Write(visit, paper: PaperSize.Letter).Pdf);
        text.ShouldHold("33 psi (230 kPa)");
        text.ShouldHold("89 lbf·ft (120 N·m)");
        text.ShouldHold("in 1/32 in");
        text.ShouldHold("29 950 mi (48 200 km)");
    }

    [Fact]
    public void However_much_was_found_it_stays_one_page_and_says_what_it_left_out()
    {
        var visit = TestVisits.Finished();
        foreach (var assembly in visit["fitted"]!.AsArray())
        {
            assembly!["damage"] = new JsonArray([.. Enumerable.Range(1, 40).Select(i => (JsonNode?)new JsonObject { ["kind"] = "cut", ["place"] = i % 2 == 0 ? "sidewall" : "tread", ["size"] = $"{i} mm" })]);
        }

        visit["work"]!["watch"] = string.Join(' ', Enumerable.Repeat("Keep an eye on the front left tyre and come back when it looks tired.", 8));
        foreach (var paper in Enum.GetValues<PaperSize>())
        {
            var sheet = TestVisits.Write(visit, paper: paper);
            sheet.Pages.ShouldBe(1);
            using var document = PdfDocument.Open(sheet.Pdf);
            var page = document.GetPage(1);
            page.Letters.Min(l => l.BoundingBox.Bottom).ShouldBeGreaterThan(28);
            page.Letters.Max(l => l.BoundingBox.Right).ShouldBeLessThan(page.Width - 28);
            var text = TestVisits.Text(sheet.Pdf);
            text.ShouldHold("more like it in the workshop's file");
            text.ShouldHold("handed back by");

            // The words above the title block end before it begins.
            var block = page.GetWords().First(w => w.Text == "odometer" && w.BoundingBox.Bottom < 140).BoundingBox.Top;
            page.GetWords().Where(w => w.Text == "month.").ShouldAllBe(w => w.BoundingBox.Bottom > block);
        }
    }

    [Fact]
    public void Long_and_foreign_words_stay_within_the_frame()
    {
        var visit = TestVisits.Finished();
        visit["vehicle"]!["name"] = "Žluťoučký kůň " + new string('W', 160);
        visit["vehicle"]!["complaint"] = new string('x', 900);
        var sheet = TestVisits.Write(visit);
        using var document = PdfDocument.Open(sheet.Pdf);
        var page = document.GetPage(1);
        page.Letters.Max(l => l.BoundingBox.Right).ShouldBeLessThan(page.Width - 28);
        TestVisits.Text(sheet.Pdf).ShouldHold("Žluťoučký kůň");
    }

    [Fact]
    public void An_empty_visit_has_a_sheet_that_says_how_little_it_holds()
    {
        var text = TestVisits.Text(TestVisits.Write([]).Pdf);
        text.ShouldHold("Vehicle without a name");
        text.ShouldHold("Nothing was looked at.");
        text.ShouldHold("Not handed back");
    }

    [Fact]
    public void A_file_that_cannot_be_read_gives_its_place_and_no_paper()
    {
        var visit = TestVisits.Finished();
        visit["vehicle"]!["odometer"] = "far";
        var read = VisitSheet.Write(FileNode.From(visit), new SheetOrder(SheetReader.Customer, PaperSize.A4));
        read.Problem!.Where.ShouldBe("vehicle.odometer");
    }
}
