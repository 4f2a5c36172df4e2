using System.Text.Json.Nodes;
using Trundle.Sheets;
using UglyToad.PdfPig;

namespace Trundle.Sheets.Tests;

/// <summary>Punctures, leaks, other sizes, new valves and wheels on the customer's page.</summary>
public class RepairsAndStandInsTests
{
    /// <summary>The sample with a puncture at the rear left that was repaired, and one at the rear right that may not be.</summary>
    private static JsonObject Punctured()
    {
        var visit = TestVisits.Saloon();
        foreach (var (at, place) in new[] { ("2L", "tread"), ("2R", "shoulder") })
        {
            var assembly = visit["fitted"]!.AsArray().Single(f => f!["position"]!.GetValue<string>() == at)!;
            assembly["damage"] = JsonNode.Parse($$"""[{"kind":"puncture","place":"{{place}}","size":"3 mm"}]""");
            assembly["tyre"]!["repaired"] = false;
            assembly["tyre"]!["ranLow"] = false;
            assembly["tyre"]!["repairPolicy"] = "permitted";
            visit["work"]!["jobs"]![at] = "demount";
        }

        visit["work"]!["repairs"] = JsonNode.Parse("""
            {"2L": {"asked": true, "place": "tread", "size": "3 mm", "fromMiddle": "20 mm", "lean": "5", "kind": "plug and patch", "material": "stem and patch, 6 mm"},
             "2R": {"asked": true, "place": "shoulder", "size": "3 mm", "fromMiddle": "80 mm", "lean": "5", "kind": "plug and patch"}}
            """);
        visit["work"]!["steps"]!["2L"]!["repair-marked"] = "R-0031";
        visit["work"]!["steps"]!["2L"]!["soap-test"] = "no bubbles";
        visit["work"]!["steps"]!["2R"]!["soap-test"] = "bubbles";
        return visit;
    }

    private static void Leaks(JsonObject visit, string at)
    {
        var leak = (JsonObject)JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "leak-slow-valve.json")))!;
        foreach (var told in new[] { "rules", "tyre", "placard" })
        {
            leak.Remove(told);
        }

        visit["fitted"]!.AsArray().Single(f => f!["position"]!.GetValue<string>() == at)!["leak"] = leak;
    }

    /// <summary>205/55 R16 91V on all four wheels, each on another rim with another valve.</summary>
    private static void StandsIn(JsonObject visit)
    {
        visit["replace"] = JsonNode.Parse("""{"candidates": [{"marking": "205/55 R16 91V", "rim": "6.5J x 16"}], "chosen": "205/55 R16 91V"}""");
        visit["work"]!["renewed"] = new JsonObject(new[] { "1L", "1R", "2L", "2R" }.Select(at => KeyValuePair.Create(at, JsonNode.Parse("""
            {"tyre": {"marking": "205/55 R16 91V", "tin": "1AB CDEFHJ 4725"}, "tread": {"inner": ["7.9 mm"], "centre": ["8.0 mm"], "outer": ["7.9 mm"]}, "valve": {"kind": "clamp-in"},
             "wheel": {"rim": "6.5J x 16", "offset": "45 mm", "material": "alloy", "maker": "vehicle", "bore": "57.1 mm", "boltCircle": "5 x 112 mm", "seat": "ball", "loadRating": "690 kg"}}
            """))));
    }

    [Fact]
    public void A_repair_that_was_made_and_one_that_was_refused_are_told_each_with_its_reason()
    {
        var text = TestVisits.Text(TestVisits.Write(Punctured()).Pdf);
        text.ShouldHold("Puncture at the rear left repaired from inside: hole of 3.0 mm in the tread, plug and patch, stem and patch, 6 mm; soap test: no bubbles.");
        text.ShouldHold("Puncture at the rear right NOT repaired. Puncture, shoulder");
        text.ShouldHold("Looked for leaks with soap and water: ");
        text.ShouldHold("2R bubbles");

        var unfinished = Punctured();
        ((JsonObject)unfinished["work"]!["steps"]!["2L"]!).Remove("repair-marked");
        TestVisits.Text(TestVisits.Write(unfinished).Pdf).ShouldHold("Puncture at the rear left: its repair is not finished.");
    }

    [Fact]
    public void A_loss_of_air_that_was_followed_is_told_with_what_a_sound_tyre_loses()
    {
        var visit = TestVisits.Saloon();
        Leaks(visit, "2R");
        var text = TestVisits.Text(TestVisits.Write(visit).Pdf);

        // samples/leak-slow-valve.json: 19.7 kPa a month (docs/guide/leak-files.md), for 6.9 of a sound tyre.
        text.ShouldHold("Loss of air at the rear right, temperature taken out: 19.7 kPa a month by 5 readings; a sound tyre loses at most 6.9 kPa. It leaks.");
    }

    [Fact]
    public void Another_size_is_told_with_its_valves_its_wheels_and_what_the_speedometer_does()
    {
        var visit = TestVisits.Saloon();
        StandsIn(visit);
        var text = TestVisits.Text(TestVisits.Write(visit).Pdf);
        text.ShouldHold("New tyres on the wheels that came from the front left, front right, rear left and rear right: 205/55 R16 91V, TIN 1AB CDEFHJ 4725; new valve, clamp-in metal.");
        text.ShouldHold("Other wheels (6.5J × 16) in the place of those that came from the front left, front right, rear left and rear right.");
        text.ShouldHold("205/55 R16 91V stands in for the placard's 195/65 R15 91H at 1L 1R 2L 2R: only with the vehicle maker's list of sizes or papers that approve it.");

        // 632 mm for 635 (docs/guide/replace-files.md): 635/632 - 1 = 0.47 % more, and 60 mph shown are 59.7 mph.
        text.ShouldHold("the speedometer reads 0.5 % more than it did: where it was exact, 60 mph shown are 59.7 mph.");

        // What was chosen and is on no wheel is not told as fitted.
        ((JsonObject)visit["work"]!).Remove("renewed");
        TestVisits.Text(TestVisits.Write(visit).Pdf).ShouldNotHold("stands in for");
    }

    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void The_fullest_visit_stays_one_page_with_all_of_it(PaperSize paper)
    {
        var visit = Punctured();
        StandsIn(visit);
        ((JsonObject)visit["work"]!["renewed"]!).Remove("2L");
        ((JsonObject)visit["work"]!["renewed"]!).Remove("2R");
        visit["replace"]!["axles"] = new JsonArray(1);
        Leaks(visit, "2L");
        Leaks(visit, "2R");
        visit["work"]!["lockingKey"] = JsonNode.Parse("""{"in": "glove box", "out": "back in the glove box"}""");
        visit["work"]!["declined"]!.AsArray().Add(JsonNode.Parse("""{"what": "A new tyre at the rear right", "risk": "the puncture in its shoulder cannot be repaired, and it loses air on the road"}"""));
        var sheet = TestVisits.Write(visit, paper: paper);
        sheet.Pages.ShouldBe(1);
        using var document = PdfDocument.Open(sheet.Pdf);
        document.NumberOfPages.ShouldBe(1);
        var page = document.GetPage(1);
        page.Letters.Max(l => l.BoundingBox.Right).ShouldBeLessThan(page.Width - 28);
        var words = page.GetWords().ToList();
        var foot = words.Where(w => w.Text == "odometer").Max(w => w.BoundingBox.Top);
        words.Where(w => w.Text == "Pressures,").Min(w => w.BoundingBox.Bottom).ShouldBeGreaterThan(foot, "the last line stands above the title block");
        var text = TestVisits.Text(sheet.Pdf);
        foreach (var said in new[] { "repaired from inside", "NOT repaired", "Looked for leaks", "stands in for the placard's", "the speedometer reads 0.5 % more", "I was told the risk", "Key of the locking fixings", "after 30 to 60 mi" })
        {
            text.ShouldHold(said);
        }
    }
}
