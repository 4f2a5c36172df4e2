using System.Text.Json.Nodes;
using Trundle.Engine;
using Trundle.Sheets;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using UglyToad.PdfPig;

namespace Trundle.Sheets.Tests;

public class FileSheetTests
{
    [Theory]
    [InlineData(PaperSize.A4)]
    [InlineData(PaperSize.Letter)]
    public void Every_page_says_which_it_is_of_how_many(PaperSize paper)
    {
        var sheet = TestVisits.Write(TestVisits.Finished(), SheetReader.File, paper);
        var pages = TestVisits.Pages(sheet.Pdf);
        pages.Count.ShouldBe(sheet.Pages);
        pages.Count.ShouldBeGreaterThan(2);
        for (var i = 0; i < pages.Count; i++)
        {
            pages[i].ShouldHold(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"page {i + 1} of {pages.Count}"));
            pages[i].ShouldHold("Blue hatchback, DEMO 07 · visit 26-0314-3 · 2026-03-14");
            pages[i].ShouldHold($"engine {EngineVersion.Engine} · tables {EngineVersion.Tables}");
        }

        using var document = PdfDocument.Open(sheet.Pdf);
        document.GetPages().SelectMany(p => p.Letters).Min(l => l.BoundingBox.Bottom).ShouldBeGreaterThan(28);
    }

    [Fact]
    public void A_wheels_weighed_load_and_its_sensor_stand_with_it()
    {
        var visit = TestVisits.Finished();
        var wheel = visit["fitted"]!.AsArray()[0]!.AsObject();
        (wheel["load"], wheel["sensor"]) = ("452 kg", "not working");
        var text = TestVisits.Text(TestVisits.Write(visit, SheetReader.File).Pdf);
        text.ShouldHold("Load on this wheel, weighed: 452 kg");
        text.ShouldHold("Pressure sensor: not working");
    }

    [Fact]
    public void A_loss_of_air_that_was_followed_stands_with_its_range_and_the_warning()
    {
        var visit = TestVisits.Finished();
        visit["fitted"]!.AsArray()[0]!["leak"] = JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "leak-slow-valve.json")));
        visit["fitted"]!.AsArray()[1]!["leak"] = JsonNode.Parse("""{"readings":[{"at":"2026-03-14","pressure":"230 kPa","temperature":"9 °C"}]}""");
        var text = TestVisits.Text(TestVisits.Write(visit, SheetReader.File).Pdf);

        // docs/guide/leak-files.md: the figures of the sample.
        text.ShouldHold("19.7 kPa a month (15.8 kPa to 23.7 kPa, 95 %) by 5 readings");
        text.ShouldHold("The warning at 184 kPa (27 psi)");
        text.ShouldHold("comes in 68 days");
        text.ShouldHold("not answered yet. A loss needs at least two readings.");
        TestVisits.Text(TestVisits.Write(TestVisits.Finished(), SheetReader.File).Pdf).ShouldNotHold("Loss of air");
    }

    [Fact]
    public void The_size_that_was_chosen_to_stand_in_is_told_with_what_it_changes()
    {
        var visit = TestVisits.Finished();
        visit["replace"] = JsonNode.Parse("""{"candidates":[{"marking":"205/55 R16 91V","rim":"6.5J x 16"}],"chosen":"205/55 R16 91V"}""");
        var answer = VisitCheckOperation.Run(FileNode.From(visit)).Value.Body["legs"]!["plan"]!["replace"]!;
        var percent = answer["candidates"]![0]!["axles"]![0]!["circumferencePercent"]!.GetValue<double>();
        var text = TestVisits.Text(TestVisits.Write(visit, SheetReader.File).Pdf);
        text.ShouldHold("Stand-in for the placard's size");
        text.ShouldHold("205/55 R16 91V, ");
        text.ShouldHold($"circumference {(percent > 0 ? "+" : "")}{Trundle.Measures.Quantity.Number(percent, 2)} %");
        ((JsonObject)visit["replace"]!).Remove("chosen");
        TestVisits.Text(TestVisits.Write(visit, SheetReader.File).Pdf).ShouldNotHold("Stand-in for the placard's size");
    }

    [Fact]
    public void It_holds_every_finding_of_the_check_with_its_limit_source_and_status()
    {
        var visit = TestVisits.Finished();
        var check = VisitCheckOperation.Run(FileNode.From(visit)).Value.Body;
        var text = TestVisits.Text(TestVisits.Write(visit, SheetReader.File).Pdf);
        var findings = check["findings"]!.AsArray().Concat(check["legs"]!["lookOver"]!["inspect"]!["findings"]!.AsArray()).Select(f => f!).ToList();
        findings.Count.ShouldBeGreaterThan(20);
        foreach (var finding in findings)
        {
            foreach (var words in new[] { finding["rule"]!, finding["measured"]!["text"]!, finding["limit"]?["text"], (finding["limit"] ?? finding)["source"]!, (finding["limit"] ?? finding)["status"]! })
            {
                // Where miles count, a speed has miles an hour in front of it.
                Array.ForEach((words?.GetValue<string>() ?? "").Split('('), part => text.ShouldHold(part));
            }
        }
    }

    [Fact]
    public void It_says_what_becomes_of_each_part_and_each_damage_with_its_limit()
    {
        var visit = TestVisits.Finished();
        var right = visit["fitted"]!.AsArray().Single(f => (string)f!["position"]! == "2R")!;
        right["damage"] = JsonNode.Parse("""[{"kind":"puncture","place":"tread","size":"4 mm","fromMiddle":"30 mm"},{"kind":"cut","place":"sidewall","size":"9 mm","depth":"3 mm"}]""");
        right["tyre"]!["repairPolicy"] = "permitted";
        right["tyre"]!["repairPolicyFrom"] = "leaflet of 2025";
        right["valve"] = JsonNode.Parse("""{"kind":"rubber-snap-in","state":"cracked"}""");
        right["wheel"]!["damage"] = JsonNode.Parse("""[{"kind":"bent-flange","size":"4 mm"}]""");
        var text = TestVisits.Text(TestVisits.Write(visit, SheetReader.File).Pdf);
        text.ShouldHold("Tyre: discard (puncture, tread, 4 mm: repair; cut, sidewall, 9 mm, 3 mm deep: discard)");
        text.ShouldHold("Repair by the tyre's maker: permitted (leaflet of 2025)");
        text.ShouldHold("Wheel: renew (bent flange: renew)");
        text.ShouldHold("Valve: renew");

        var customer = TestVisits.Text(TestVisits.Write(visit).Pdf);
        customer.ShouldHold("cut, sidewall, 9 mm, 3 mm deep (limit 1.6 mm, 0.0625 in)");
        customer.ShouldHold("bent flange, 4 mm (limit 3.2 mm, 0.125 in)");
    }

    [Fact]
    public void It_holds_what_each_fixing_got_at_each_stage_and_the_instruments_used()
    {
        var visit = TestVisits.Finished();
        visit["work"]!["tightening"] = JsonNode.Parse("""{"1L": {"stage-1": "1, 3, 5, 2, 4 at 50 %", "torques": {"stage-1": {"1": "59 N·m", "2": "58 N·m", "3": "61 N·m", "4": "62 N·m", "5": "57 N·m", "wrench": "wrench 7", "by": "T1, T2"}}}}""");
        visit["work"]!["instruments"] = JsonNode.Parse("""{"torqueWrench": "wrench 7", "lift": "two-post lift", "standing": {"torqueWrench": {"verdict": "passed", "checked": "2025-02-01", "due": "2026-02-01"}, "lift": {"verdict": "passed", "due": "2026-12-01"}}}""");
        var text = TestVisits.Text(TestVisits.Write(visit, SheetReader.File).Pdf);
        text.ShouldHold("1L 1, 50 % 59 58 61 62 57 wrench 7 T1, T2");
        text.ShouldHold("torque wrench wrench 7 2025-02-01 passed 2026-02-01 wrench 7: its check is overdue");
        text.ShouldHold("lift two-post lift – passed 2026-12-01 in order");
    }

    [Fact]
    public void It_holds_the_re_torque_that_is_due_and_what_was_found_once_it_is_done()
    {
        var visit = TestVisits.Finished();
        TestVisits.Text(TestVisits.Write(visit, SheetReader.File).Pdf).ShouldHold("Re-torque due between 29 981 mi (48 250 km) and 30 012 mi (48 300 km)");
        TestVisits.Text(TestVisits.Write(visit).Pdf).ShouldHold("if we have not seen it by 2026-03-28, we ask");
        visit["work"]!["reTorque"] = JsonNode.Parse("""{"on": "2026-03-20", "result": "none turned", "wrench": "wrench 2", "by": "T1", "torques": {"1L": {"1": "118 N·m", "2": "119 N·m"}}}""");
        var text = TestVisits.Text(TestVisits.Write(visit, SheetReader.File).Pdf);
        text.ShouldHold("Re-torque checked on 2026-03-20 by T1 with wrench 2: no fixing turned before the click.");
        text.ShouldHold("Found at 1L: 1 118 N·m");
        TestVisits.Text(TestVisits.Write(visit).Pdf).ShouldHold("Re-torque: checked on 2026-03-20, no fixing turned before the click.");
    }

    [Fact]
    public void It_holds_the_torque_of_every_fixing_and_the_order_on_the_circle()
    {
        var visit = TestVisits.Finished();
        visit["work"]!["steps"]!["2R"]!["final-torque"] = new JsonArray("117 N·m", "118 N·m", "119 N·m", "121 N·m", "122 N·m");
        var text = TestVisits.Text(TestVisits.Write(visit, SheetReader.File).Pdf);
        text.ShouldHold("Rear right, 2R 120 117 118 119 121 122 every one");
        text.ShouldHold("1 – 3 – 5 – 2 – 4");
        text.ShouldHold("proof load 103.4 kN");
    }

    [Fact]
    public void It_holds_the_balance_before_and_after()
    {
        var visit = TestVisits.Finished();
        var check = VisitCheckOperation.Run(FileNode.From(visit)).Value.Body;
        var residual = check["legs"]!["offTheCar"]!["balance"]!["1L"]!["residual"]!["inner"]!["massGrams"]!.GetValue<double>();
        var text = TestVisits.Text(TestVisits.Write(visit, SheetReader.File).Pdf);
        text.ShouldHold("Inner plane: heavy place 35 g at 295° before");
        text.ShouldHold($"{Measures.Quantity.Number(residual, Math.Abs(residual - Math.Round(residual)) < 0.05 ? 0 : 1)} g at");
    }

    [Fact]
    public void Entries_stand_as_typed_and_a_superseded_one_says_so()
    {
        var at = new DateTimeOffset(2026, 3, 14, 9, 2, 0, TimeSpan.Zero);
        Entry[] entries =
        [
            new(new Guid(1, 0, 0, new byte[8]), "fitted.1L.pressure.value", "32 psi", "T4", Role.Trainee, at),
            new(new Guid(2, 0, 0, new byte[8]), "fitted.1L.pressure.value", "225 kPa", "T2", Role.Technician, at.AddMinutes(5)),
        ];
        var text = TestVisits.Text(TestVisits.Write(TestVisits.Finished(), new SheetOrder(SheetReader.File, PaperSize.A4) { Entries = entries }).Pdf);
        text.ShouldHold("2026-03-14 09:02:00 fitted.1L.pressure.value 32 psi T4, trainee superseded");
        text.ShouldHold("2026-03-14 09:07:00 fitted.1L.pressure.value 225 kPa T2, technician");
    }

    [Fact]
    public void Duals_and_a_heavy_vehicle_have_their_sheet()
    {
        var text = TestVisits.Text(TestVisits.Write(TestVisits.Lorry(), SheetReader.File).Pdf);
        text.ShouldHold("Rear left outer, 2Lo");
        text.ShouldHold("1 – 6 – 3 – 8 – 5 – 10 – 2 – 7 – 4 – 9");
        text.ShouldHold("Oil raises the clamp");
        text.ShouldHold("Re-torque after 25 to 50 mi (40 to 80 km) (DVSA");
    }

    /// <summary>samples/visit-copper-lorry.json: its front axle begun and left, nothing entered of its rear axle.</summary>
    [Fact]
    public void A_lorry_whose_wheels_were_begun_is_told_plainly_on_both_sheets()
    {
        var visit = (JsonObject)JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "visit-copper-lorry.json")))!;
        var customer = TestVisits.Text(TestVisits.Write(visit).Pdf);
        customer.ShouldHold("Front left, front right: Run low, or damaged? It is a hold point");
        customer.ShouldHold("Axle 1: fixings engaged 11.0 turns (16.5 mm) (should be 14.0 turns)");
        customer.ShouldHold("2L not looked at");
        customer.ShouldHold("2R not looked at");
        customer.ShouldNotHold("1L not looked at");
        var file = TestVisits.Text(TestVisits.Write(visit, SheetReader.File).Pdf);
        file.ShouldHold("Wheel: renew (seat worn");
        file.ShouldNotHold("Re-torque due");
    }
}
