using System.Text.Json.Nodes;
using Trundle.Engine.Findings;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using UglyToad.PdfPig;

namespace Trundle.Sheets.Tests;

/// <summary>
/// Ten whole invented vehicles, each from its file to the answers of the check and both sheets: what makes it the vehicle that it is must stand in
/// all of them.
/// </summary>
public sealed class WholeVehiclesTests
{
    /// <summary>What is to be said of one vehicle.</summary>
    /// <param name="Worst">The gravest category as it leaves.</param>
    /// <param name="Came">Rules that were broken when it came, each with its place.</param>
    /// <param name="Stands">Rules that are still broken as it leaves.</param>
    /// <param name="MayLeave">Nothing stops hand-back.</param>
    /// <param name="HandedBack">It was handed back.</param>
    /// <param name="Customer">Words on the customer's sheet.</param>
    /// <param name="File">Words on the file's sheet.</param>
    /// <param name="NoSuch">Words that stand on neither.</param>
    public sealed record Told(Category Worst, string[] Came, string[] Stands, bool MayLeave, bool HandedBack, string[] Customer, string[] File, string[] NoSuch);

    private static readonly Dictionary<string, Told> All = new(StringComparer.Ordinal)
    {
        ["sand-hatchback"] = new(Category.Refer,
            ["damage.puncture.crown@1R", "winter.tread@1L", "pressure.low@1R", "pressure.low@S"],
            ["winter.tread@2L", "winter.tread@2R"], true, true,
            ["Rotated (forward cross): 2R to 1L, 2L to 1R, 1L to 2L, 1R to 2R", "puncture, tread, 3 mm (limit 6.4 mm, 0.25 in)", "Puncture at the front right repaired from inside: hole of 3.0 mm in the tread, plug and patch, stem and patch, 3 to 5 mm; soap test: no bubbles", "S 420 kPa", "Re-torque: between 61 890 km and 61 940 km"],
            ["T115/70 D15 90M", "Austrian winter rule", "reaches 22 mm from the middle", "marked: 26-0120-2, T1", "Probed from inside: size, place, angle 1R see puncture repairs passed"], ["psi (2", " mi ("]),
        ["copper-coupe"] = new(Category.None,
            ["tread.depth@2L", "direction.rotation@1R", "wear.one-shoulder@2L"],
            [], true, true,
            ["mounted for the left (should be mounted for the right)", "Put right on this visit", "255/35 ZR18 94Y XL", "tread inner 1.4, centre 3.0, outer 3.2 mm", "not certain: one shoulder wears faster", "Somebody should look at the tyre"],
            ["Refused: rearward cross", "Refused: X", "1L 1, 50 % 60 60 60 60 61 wrench 1 T1", "2R 2, 100 % 120 120 120 121 120 wrench 1 T1", "The complaint may come of, by what was said alone: uneven wear"], ["New tyre on the wheel that came from the front right"]),
        ["slate-all-wheel-drive"] = new(Category.Major,
            ["damage.bulge@2R", "pressure.warning@2R", "wheel.bent.small@2R"],
            ["tread.spread@vehicle"], false, false,
            ["Not handed back", "Tread depths differ by 3.57 mm between 2R (7.9) and 2L (4.33)", "nobody yet", "52 300 mi (84 169 km)"],
            ["asymmetric, outer face out", "M14x1.5", "2R 1, 50 % 70 70 70 70 70 wrench 1 A2", "The complaint may come of"], ["circumferences differ by 3.57 mm"]),
        ["white-van-with-duals"] = new(Category.Major,
            ["tread.depth@2Ri", "pressure.run-low@2Ri", "damage.cut.shallow@2Ri", "pressure.low@S"],
            ["dual.diameter@2Ro", "dual.larger-outside@2Ro", "instrument.pressure-gauge@vehicle"], true, true,
            ["Rear left inner", "Rear right inner", "the pair's diameters differ by 8.5 mm", "12 of 12 fixings", "2Li 2Lo 2Ri 2Ro 320 kPa (46 psi)"],
            ["The rules for low-pressure warnings leave dual wheels out", "6.4 mm, 0.25 in", "dual rear", "Wear: likeliest by the program's model: heel and toe 98 %", "an axle that only rolls"], ["why the driver was not warned"]),
        ["olive-pickup"] = new(Category.Refer,
            ["size.placard@1L", "pressure.sidewall@2R", "wear.centre@2L", "damage.crack@S", "age.ten@S", "sensor.not-working@2R"],
            ["size.placard@1L", "damage.crack@S"], true, true,
            ["31X10.50R15LT C 109S", "51 psi (352 kPa) (limit 50 psi (345 kPa))", "1L 1R 41 psi (283 kPa), 2L 2R 43 psi (296 kPa)", "83 lbf·ft (113 N·m)", "size 31x10.50 R15 LT (should be P235/75 R15)", "74 200 mi"],
            ["inner 8, centre 5, outer 8/32 in", "2/32 in", "the placard's load on the fitted tyre", "load range C", "What each fixing got at each stage, in lbf·ft", "2L 1, 50 % 42 42 42 42 42 43 wrench 3 I1", "Re-torque after 30 to 60 mi (50 to 100 km)", "each plane 0.18 oz (5.0 g)", "size placard: front left, front right, rear left, rear right"], ["6.35, centre 3.969", "Let air out to 32 psi"]),
        ["cream-motorhome"] = new(Category.Refer,
            ["age.ten@1L", "damage.crack@2L", "pressure.run-low@2L", "valve.pressure@1L", "valve.state@2L"],
            ["seen.damper@2R"], true, true,
            ["215/70 R15CP 109Q", "age 12 years", "550 kPa (80 psi)", "Front left, front right, rear left, rear right: age 12 years"],
            ["placard, full load", "load rating 1060 kg", "The complaint may come of, by what was said alone: flat places from long standing 98 %", "checked on 2026-03-26"], ["Replace this tyre before hand-back", "psi (5"]),
        ["yellow-minibus"] = new(Category.Major,
            ["age.law@2L", "age.law@2R"],
            ["age.law@2L", "age.law@2R"], false, false,
            ["Not handed back", "Rear left, rear right: age 11.3 years", "UK rules in force from 1 February 2021", "1.0 mm", "2L 2R 470 kPa"],
            ["Pressures as they leave"], ["Advise replacement"]),
        ["blue-boat-trailer"] = new(Category.Minor,
            ["load.index@2R", "size.placard@2R", "axle.size@axle 2", "pressure.run-low@2R", "wear.one-shoulder@2L"],
            ["age.six@1L"], true, true,
            ["load index 97 (limit 101)", "after 30 to 60 mi (50 to 100 km)", "after 6 200 mi (10 000 km)", "50 psi (345 kPa)", "95 lbf·ft (129 N·m)"],
            ["ST205/75R15 C 101/97M", "neither a motorcycle nor a light trailer"], ["Which axle is driven was not entered", "why the driver was not warned", "1.588", "6 214 mi"]),
        ["green-classic"] = new(Category.Major,
            ["mix.radial-in-front@axles 1 and 2", "damage.crack@2L", "pressure.run-low@2L"],
            ["mix.radial-in-front@axles 1 and 2", "size.placard@1L", "pressure.run-low@2L"], false, false,
            ["axle 1 radial, axle 2 diagonal", "not taken off its wheel", "size 165 R15 (should be 5.60-15)", "1L 1R 2L 2R 165 kPa (24 psi)"],
            ["4 nuts, 7/16-20, cone seat, dry"], ["Put right on this visit. Before any air"]),
        ["red-motorcycle"] = new(Category.None,
            ["tread.depth@2L", "wear.centre.motorcycle@2L", "pressure.low@1L"],
            [], true, true,
            ["Rear: tread 1.2 mm at the centre", "not certain: the middle wears faster", "1 of 1 fixing finally tightened", "Look over: at 28 730 km"],
            ["A motorcycle has one wheel on each axle", "180/55 ZR17 M/C (73W)"], ["Front left", "Rear right", "toe on driven wheels", "the spare too", "Look over and rotation"]),
    };

    public static TheoryData<string> Names => [.. All.Keys];

    private static JsonObject Read(string name) => (JsonObject)JsonNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "vehicles", $"{name}.json")))!;

    [Fact]
    public void Every_sample_is_told_of_here() =>
        Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "vehicles"), "*.json").Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal).ShouldBe(All.Keys.Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Names))]
    public void From_the_file_to_the_answers(string name)
    {
        var told = All[name];
        var problems = new List<Problem>();
        var state = VisitStanding.Of(FileNode.From(Read(name)), problems);
        problems.ShouldBeEmpty();
        told.Came.Except(Broken(state.On(Leg.LookOver).Findings)).ShouldBeEmpty("not found when it came");
        var left = Broken(state.LeavingFindings);
        told.Stands.Except(left).ShouldBeEmpty("not found as it leaves");
        if (told.Stands.Length == 0)
        {
            left.ShouldBeEmpty();
        }

        FindingSet.Worst(state.LeavingFindings).ShouldBe(told.Worst);
        state.MayLeave.ShouldBe(told.MayLeave, string.Join("; ", state.Stops.Select(s => $"{s.Position} {s.What}: {s.Why}")));
        state.HandedBack.ShouldBe(told.HandedBack);
        state.NotTightened.ShouldBeEmpty();

        var answer = VisitCheckOperation.Operation.Run(FileNode.From(Read(name)));
        answer.IsRead.ShouldBeTrue();
        answer.Value.Body["worst"]!.GetValue<string>().ShouldBe(told.Worst.Word());
        answer.Value.Body["handBack"]!["mayLeave"]!.GetValue<bool>().ShouldBe(told.MayLeave);
        answer.Value.Body["decisionsWithoutFinding"]!.AsArray().ShouldBeEmpty();
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void Both_sheets_say_what_makes_it_this_vehicle(string name)
    {
        var told = All[name];
        var visit = Read(name);
        var paper = visit["rules"]!.GetValue<string>() == "us" ? PaperSize.Letter : PaperSize.A4;
        var customer = TestVisits.Write(visit, SheetReader.Customer, paper);
        var file = TestVisits.Write(visit, SheetReader.File, paper);
        customer.Pages.ShouldBe(1);
        customer.MayLeave.ShouldBe(told.MayLeave);
        var (customerText, fileText) = (TestVisits.Text(customer.Pdf), TestVisits.Text(file.Pdf));
        customerText.ShouldHold(visit["vehicle"]!["name"]!.GetValue<string>());
        Array.ForEach(told.Customer, words => customerText.ShouldHold(words));
        Array.ForEach(told.File, words => fileText.ShouldHold(words));
        foreach (var words in told.NoSuch)
        {
            customerText.ShouldNotHold(words);
            fileText.ShouldNotHold(words);
        }
    }

    /// <summary>Whatever came off is checked again: the paper that goes with the vehicle says when, and what to do at a knock.</summary>
    [Theory]
    [MemberData(nameof(Names))]
    public void The_customers_paper_says_when_the_fixings_are_checked_again(string name)
    {
        var visit = Read(name);
        var text = TestVisits.Text(TestVisits.Write(visit, SheetReader.Customer, PaperSize.A4).Pdf);
        text.ShouldHold("If you feel a new shake or hear a knock from a wheel, stop where it is safe");
        if (visit["work"]!["reTorque"] is not null)
        {
            text.ShouldHold("Re-torque: checked on");
        }
        else if (visit["work"]!["steps"]!.AsObject().Any(at => at.Value!["final-torque"] is not null))
        {
            text.ShouldHold("Have every wheel fixing checked with a torque wrench after");
            text.ShouldHold("Re-torque: ");
        }
        else
        {
            text.ShouldNotHold("torque wrench after");
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void No_heading_and_no_tables_head_stands_alone_at_the_foot_of_a_page_and_nothing_leaves_the_frame(string name)
    {
        using var document = PdfDocument.Open(TestVisits.Write(Read(name), SheetReader.File, PaperSize.A4).Pdf);
        foreach (var page in document.GetPages())
        {
            page.Letters.Max(l => l.BoundingBox.Right).ShouldBeLessThan(page.Width - 28);
            page.Letters.Min(l => l.BoundingBox.Left).ShouldBeGreaterThan(28);

            // The lowest line is the foot; the one above it is the last of the body. Headings are of 11.5 and 9.5, a table's head of 6.8 and 6.3.
            var lines = page.Letters.Where(l => !string.IsNullOrWhiteSpace(l.Value)).GroupBy(l => Math.Round(l.StartBaseLine.Y)).OrderBy(l => l.Key).ToList();
            var last = lines[1].Max(l => l.PointSize);
            foreach (var head in new[] { 11.5, 9.5, 6.8, 6.3 })
            {
                Math.Abs(last - head).ShouldBeGreaterThan(0.05, string.Concat(lines[1].Select(l => l.Value)));
            }
        }
    }

    private static List<string> Broken(IEnumerable<Finding> findings) => [.. findings.Where(f => f.Category > Category.None).Select(f => f.Key)];
}
