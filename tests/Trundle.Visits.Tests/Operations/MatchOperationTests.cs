using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

public class MatchOperationTests
{
    private static Reading<Answer> Run(string body) => MatchOperation.Operation.Run(FileNode.Parse(body, "body").Value);

    private static double Number(JsonNode? node) => node!.GetValue<double>();

    private static List<string> Texts(JsonNode? node) => [.. node!.AsArray().Select(t => t!.GetValue<string>())];

    [Fact]
    public void The_sample_of_one_tyre_has_its_exact_answer_and_an_instruction_for_hands()
    {
        var answer = Run(File.ReadAllText("match-one-tyre.json")).Value;
        var pair = answer.Body["pairs"]!.AsArray().Single()!;
        Number(pair["turnDegrees"]).ShouldBe(90, 1e-9);
        Number(pair["before"]).ShouldBe(100, 1e-9);
        Number(pair["after"]).ShouldBe(20, 1e-9);
        Number(pair["afterVectors"]![0]!["highPointDegrees"]).ShouldBe(220, 1e-9);
        answer.Body["provenOptimal"]!.GetValue<bool>().ShouldBeTrue();
        Number(answer.Body["lateralForces"]![0]!["conicityNewtons"]).ShouldBe(20, 1e-9);
        Number(answer.Body["lateralForces"]![0]!["plySteerNewtons"]).ShouldBe(65, 1e-9);
        Texts(pair["instruction"]).ShouldBe(
        [
            "Mark the tyre at the valve, on the outer sidewall.",
            "Take the valve core out, face, hands and other people out of its line, and wait until no more air comes: all air out and the core out before a bead is broken.",
            "Break both beads down, hands and feet clear of the blade, and lubricate both beads and the flanges.",
            "Turn the tyre on the wheel 90° clockwise as seen from outside: with the valve at twelve the mark then stands at 3:00.",
            Texts(pair["instruction"])[4],
            "Core in, pressure set, then measure again; take the old weights off and balance anew.",
        ]);
        Texts(pair["instruction"])[4].ShouldContain("guard or cage shut where there is one");
        Texts(pair["instruction"])[4].ShouldContain("inflate standing clear, never above 275 kPa");
        var cautions = Texts(answer.Body["cautions"]);
        cautions.ShouldContain(c => c.Contains("All air out before a bead is broken", StringComparison.Ordinal));
        cautions.ShouldContain(c => c.Contains("Never above 275 kPa", StringComparison.Ordinal));
        cautions.ShouldContain(c => c.Contains("nothing is judged", StringComparison.Ordinal));
        answer.Body["withinLimit"].ShouldBeNull();
        answer.No.ShouldBeFalse();
    }

    [Fact]
    public void A_tyre_that_changes_its_wheel_comes_off_only_with_the_air_and_the_core_out()
    {
        var answer = Run("""
            {"on": "unbalance",
             "tyres": [{"id": "A", "sitsOn": "1", "unbalance": {"amount": "3000 g·mm", "heavyPoint": 30}},
                       {"id": "B", "sitsOn": "2", "unbalance": {"amount": "500 g·mm", "heavyPoint": 200}}],
             "wheels": [{"id": "1", "unbalance": {"amount": "500 g·mm", "heavyPoint": 0}},
                        {"id": "2", "unbalance": {"amount": "3000 g·mm", "heavyPoint": 90}}]}
            """).Value;
        foreach (var pair in answer.Body["pairs"]!.AsArray())
        {
            var steps = Texts(pair!["instruction"]);
            pair["tyre"]!.GetValue<string>().ShouldBe(pair["wheel"]!.GetValue<string>() == "2" ? "A" : "B");
            var off = steps.FindIndex(s => s.Contains("take tyre", StringComparison.Ordinal));
            var core = steps.FindIndex(s => s.Contains("all air out and the core out before a bead is broken", StringComparison.Ordinal));
            var broken = steps.FindIndex(s => s.StartsWith("Break both beads down", StringComparison.Ordinal));
            core.ShouldBeGreaterThanOrEqualTo(0);
            broken.ShouldBeGreaterThan(core);
            off.ShouldBeGreaterThan(broken);
            steps.Take(core).ShouldAllBe(s => !s.Contains(" off", StringComparison.Ordinal));
            steps.ShouldContain(s => s.Contains("guard", StringComparison.Ordinal) && s.Contains("never above", StringComparison.Ordinal) && s.Contains("the lowest holds", StringComparison.Ordinal));
            steps.ShouldAllBe(s => answer.ForPeople.Contains("    " + s));
        }
    }

    [Fact]
    public void The_sample_of_two_mountings_parts_tyre_and_wheel()
    {
        var answer = Run(File.ReadAllText("match-two-mountings.json")).Value;
        var parts = answer.Body["parts"]!;
        Number(parts["tyre"]!["amount"]).ShouldBe(80, 1e-4);
        Number(parts["tyre"]!["highPointDegrees"]).ShouldBe(130, 1e-4);
        Number(parts["wheel"]!["amount"]).ShouldBe(60, 1e-4);
        Number(parts["wheel"]!["highPointDegrees"]).ShouldBe(40, 1e-4);

        // The tyre already stands half a turn on; its best is a quarter turn from the first mounting, so three quarters from now.
        Number(answer.Body["pairs"]![0]!["turnDegrees"]).ShouldBe(270, 1e-4);
        Number(answer.Body["pairs"]![0]!["before"]).ShouldBe(100, 1e-3);
        Number(answer.Body["pairs"]![0]!["after"]).ShouldBe(20, 1e-4);
        Texts(answer.Body["pairs"]![0]!["instruction"])[3].ShouldContain("90° anticlockwise");
        Texts(answer.Body["pairs"]![0]!["instruction"])[3].ShouldContain("9:00");
    }

    [Fact]
    public void The_sample_of_four_sizes_has_its_exact_answer_and_no_turns()
    {
        var answer = Run(File.ReadAllText("match-four-sizes-only.json")).Value;
        var pairs = answer.Body["pairs"]!.AsArray();
        pairs.Select(p => $"{p!["tyre"]}-{p["wheel"]}").ShouldBe(["A-1", "B-3", "C-4", "D-2"]);
        pairs.Select(p => Math.Round(Number(p!["after"]), 9)).ShouldBe([5, 10, 15, 10]);
        pairs.ShouldAllBe(p => p!["turnDegrees"] == null && p["before"] == null);
        Number(answer.Body["objective"]!["sum"]).ShouldBe(40, 1e-9);
        Number(answer.Body["objective"]!["worst"]).ShouldBe(15, 1e-9);
        answer.Body["objective"]!["aim"]!.GetValue<string>().ShouldBe("sum");
    }

    [Fact]
    public void The_sample_of_unbalances_leaves_a_tyre_out_and_keeps_one()
    {
        var answer = Run(File.ReadAllText("match-set-unbalance.json")).Value;
        Texts(answer.Body["tyresLeftOut"]).ShouldBe(["B"]);
        var pairs = answer.Body["pairs"]!.AsArray();
        pairs.Count.ShouldBe(4);
        pairs.Single(p => p!["tyre"]!.GetValue<string>() == "C")!["kept"]!.GetValue<bool>().ShouldBeTrue();
        pairs.Where(p => !p!["kept"]!.GetValue<bool>()).ShouldAllBe(p => Math.Abs((Number(p!["turnDegrees"]) / 15) - Math.Round(Number(p["turnDegrees"]) / 15)) < 1e-9);
        pairs.ShouldAllBe(p => Math.Abs(p!["afterVectors"]!.AsArray().Max(v => Number(v!["amount"])) - Number(p["after"])) < 1e-6);
        answer.Body["withinLimit"]!.GetValue<bool>().ShouldBeTrue();
        answer.Body["provenOptimal"]!.GetValue<bool>().ShouldBeTrue();
        string.Join('\n', answer.ForPeople).ShouldContain("Tyre B is left out");
    }

    [Fact]
    public void The_files_that_the_guide_shows_have_the_answers_that_it_tells()
    {
        var guide = File.ReadAllText("runout-and-match-files.md").ReplaceLineEndings("\n");
        guide.ShouldContain(File.ReadAllText("runout-twelve-places.json").ReplaceLineEndings("\n").Trim());
        var files = guide.Split("```json\n").Skip(1).Select(part => part[..part.IndexOf("```", StringComparison.Ordinal)]).ToList();
        files.Count.ShouldBe(2);
        var runout = RunoutOperation.Operation.Run(FileNode.Parse(files[0], "guide").Value).Value.Body;
        Number(runout["peakToPeakMillimetres"]).ShouldBe(0.85, 0.005);
        Number(runout["eccentricityMillimetres"]).ShouldBe(0.4004, 0.00005);
        Number(runout["harmonics"]![0]!["highPointDegrees"]).ShouldBe(50.1, 0.05);
        var pair = Run(files[1]).Value.Body["pairs"]!.AsArray().Single()!;
        Number(pair["turnDegrees"]).ShouldBe(90, 1e-9);
        Number(pair["before"]).ShouldBe(100, 1e-9);
        Number(pair["after"]).ShouldBe(20, 1e-9);
    }

    [Fact]
    public void A_limit_that_a_pair_passes_is_a_no()
    {
        var answer = Run("""{"on": "runout", "makerLimit": "0.05 mm", "tyres": [{"id": "A", "runout": {"amplitude": "0.4 mm", "highPoint": 0}}], "wheels": [{"id": "1", "runout": {"amplitude": "0.3 mm", "highPoint": 0}}]}""").Value;
        answer.No.ShouldBeTrue();
        answer.Body["pairs"]![0]!["withinLimit"]!.GetValue<bool>().ShouldBeFalse();
        Number(answer.Body["pairs"]![0]!["turnDegrees"]).ShouldBe(180, 1e-9);
        Texts(answer.Body["pairs"]![0]!["instruction"])[1].ShouldContain("6:00: half a turn (180°)");
    }

    [Fact]
    public void A_wheel_on_a_hub_turns_by_studs()
    {
        var answer = Run("""{"on": "runout", "studs": 5, "tyres": [{"id": "assembly", "runout": {"amplitude": "0.4 mm", "highPoint": 20}}], "wheels": [{"id": "the hub", "runout": {"amplitude": "0.3 mm", "highPoint": 340}}]}""").Value;
        Number(answer.Body["pairs"]![0]!["turnDegrees"]).ShouldBe(144, 1e-9);
        Texts(answer.Body["pairs"]![0]!["instruction"])[2].ShouldContain("2 stud places (144°) clockwise");
        Texts(answer.Body["cautions"]).ShouldNotContain(c => c.Contains("bead", StringComparison.Ordinal));
    }

    [Fact]
    public void A_stiffness_can_be_estimated_and_says_that_it_is_from_memory()
    {
        var answer = Run("""{"on": "forceVariation", "stiffnessFrom": {"marking": "205/55 R16 91V", "pressure": "220 kPa"}, "tyres": [{"id": "A", "runout": {"amplitude": "0.5 mm", "highPoint": 20}}], "wheels": [{"id": "1", "force": {"amplitude": "60 N", "highPoint": 20}}]}""").Value;
        Number(answer.Body["radialStiffness"]!["newtonsPerMillimetre"]).ShouldBe(229.5, 0.05);
        answer.Body["radialStiffness"]!["status"]!.GetValue<string>().ShouldBe("from memory");
        Number(answer.Body["pairs"]![0]!["after"]).ShouldBe(114.75 - 60, 0.05);
    }

    [Theory]
    [InlineData("""{"tyres": [], "wheels": []}""", "on")]
    [InlineData("""{"on": "forceVariation", "tyres": [{"id": "A", "runout": {"amplitude": "0.3 mm", "highPoint": 1}}], "wheels": [{"id": "1", "force": {"amplitude": "3 N", "highPoint": 1}}]}""", "tyres[0]")]
    [InlineData("""{"on": "runout", "tyres": [{"id": "A", "runout": {"amplitude": "0.3 mm"}}], "turnStep": 15, "wheels": [{"id": "1", "runout": {"amplitude": "3 mm", "highPoint": 1}}]}""", "tyres[0].runout")]
    [InlineData("""{"on": "runout", "tyres": [{"id": "A", "sitsOn": "2", "runout": {"amplitude": "0.3 mm"}}], "wheels": [{"id": "1", "runout": {"amplitude": "3 mm", "highPoint": 1}}]}""", "tyres[0].sitsOn")]
    [InlineData("""{"on": "runout", "tyres": [{"id": "A", "runout": {"amplitude": "0.3 mm"}}, {"id": "A", "runout": {"amplitude": "0.3 mm"}}], "wheels": [{"id": "1", "runout": {"amplitude": "3 mm", "highPoint": 1}}]}""", "tyres[1].id")]
    [InlineData("""{"on": "runout", "mountings": [{"turn": 0, "assembly": {"amplitude": 1, "highPoint": 1}}]}""", "mountings")]
    [InlineData("""{"on": "runout", "mountings": [{"turn": 0, "assembly": {"amplitude": 1, "highPoint": 1}}, {"turn": 20, "assembly": {"amplitude": 2, "highPoint": 1}}]}""", "mountings")]
    [InlineData("""{"on": "runout", "mountings": [{"turn": 30, "assembly": {"amplitude": 1, "highPoint": 1}}, {"turn": 120, "assembly": {"amplitude": 2, "highPoint": 1}}]}""", "mountings[0].turn")]
    [InlineData("""{"on": "runout", "mountings": [{"turn": 0, "assembly": {"amplitude": 1}}, {"turn": 20, "assembly": {"amplitude": 2, "highPoint": 1}}]}""", "mountings[0].assembly.highPoint")]
    [InlineData("""{"on": "unbalance", "tyres": [{"id": "A", "unbalance": {"amount": "100 g·mm", "heavyPoint": 3}}], "wheels": [{"id": "1", "unbalance": {"inner": {"amount": "3 g·mm", "heavyPoint": 1}, "outer": {"amount": "3 g·mm", "heavyPoint": 1}}}]}""", "tyres[0].unbalance")]
    [InlineData("""{"on": "runout", "tyres": [{"id": "A", "mayGoOn": [], "runout": {"amplitude": "0.3 mm"}}], "wheels": [{"id": "1", "runout": {"amplitude": "3 mm", "highPoint": 1}}]}""", "tyres")]
    [InlineData("""{"on": "runout", "objective": "best", "tyres": [{"id": "A", "runout": {"amplitude": "0.3 mm"}}], "wheels": [{"id": "1", "runout": {"amplitude": "3 mm", "highPoint": 1}}]}""", "objective")]
    [InlineData("""{"on": "runout", "studs": 5, "turnStep": 15, "tyres": [{"id": "A", "runout": {"amplitude": "0.3 mm", "highPoint": 1}}], "wheels": [{"id": "1", "runout": {"amplitude": "3 mm", "highPoint": 1}}]}""", "turnStep")]
    public void Wrong_input_has_its_place(string body, string where) => Run(body).Problem.ShouldNotBeNull().Where.ShouldBe(where);
}
