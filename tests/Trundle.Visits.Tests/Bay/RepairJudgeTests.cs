using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Tests.Bay;

/// <summary>Which punctures are repaired, and which are refused with what reason.</summary>
public sealed class RepairJudgeTests
{
    private const string Good = """{"asked":true,"place":"tread","size":"4 mm","fromMiddle":"20 mm","lean":"5","kind":"plug and patch"}""";

    private const string NeverRepaired = "\"repaired\":false,\"ranLow\":false,\"repairPolicy\":\"permitted\"";

    private static RepairVerdict Judged(string repair, string marking = "205/55 R16 91H", string tread = "5 mm", string damage = "[]", string tyre = NeverRepaired, string decisions = "{}")
    {
        var json = $$$"""
            {"rules": "us", "vehicle": {}, "fitted": [{"position": "1L", "tyre": {"marking": "{{{marking}}}", {{{tyre}}} }, "tread": {"inner": ["{{{tread}}}"], "centre": ["{{{tread}}}"], "outer": ["{{{tread}}}"]}, "damage": {{{damage}}} }],
             "work": {"repairs": {"1L": {{{repair}}} }, "decisions": {{{decisions}}} } }
            """;
        var problems = new List<Problem>();
        var file = VisitFileReader.Read(FileNode.Parse(json, "repair").Value, problems);
        var work = VisitWorkReader.Read(file, problems);
        problems.ShouldBeEmpty();
        return RepairJudge.Of(file.Subject, file.Subject.Fitted[0], work.Repairs.Single().Value, work);
    }

    private static string With(params (string Key, string Value)[] over)
    {
        var json = JsonNode.Parse(Good)!.AsObject();
        foreach (var (key, value) in over)
        {
            json[key] = value;
        }

        return json.ToJsonString();
    }

    [Fact]
    public void A_small_hole_in_the_crown_square_to_the_tread_may_be_repaired()
    {
        var verdict = Judged(Good);
        verdict.Refused.ShouldBeEmpty();
        verdict.Missing.ShouldBeEmpty();
        verdict.MayBeRepaired.ShouldBeTrue();
        verdict.Cautions.ShouldContain(c => c.Contains("143.5 mm", StringComparison.Ordinal), "70 % of 205 mm, BS AU 159g");
    }

    // 70 % of 205 mm is 143.5 mm, so an injury may reach 71.75 mm from the middle; the chart's greatest injury is 1/4 in, 6.35 mm.
    [Theory]
    [InlineData("fromMiddle", "71.7 mm", true)]
    [InlineData("fromMiddle", "71.8 mm", false)]
    [InlineData("size", "6.3 mm", true)]
    [InlineData("size", "6.4 mm", false)]
    [InlineData("place", "shoulder", false)]
    [InlineData("place", "sidewall", false)]
    [InlineData("place", "bead", false)]
    [InlineData("kind", "plug from outside", false)]
    [InlineData("kind", "plug alone", false)]
    [InlineData("kind", "patch alone", false)]
    public void Each_refused_case_is_refused_with_its_reason_and_source(string key, string value, bool mayBe)
    {
        var verdict = Judged(With((key, value)));
        verdict.MayBeRepaired.ShouldBe(mayBe);
        verdict.Refused.Count.ShouldBe(mayBe ? 0 : 1);
        verdict.Refused.ShouldAllBe(r => r.EndsWith(')') || r.EndsWith(").", StringComparison.Ordinal));
    }

    [Fact]
    public void A_worn_tyre_one_with_another_grave_damage_and_one_repaired_improperly_are_not_repaired()
    {
        Judged(Good, tread: "1.5 mm").Refused.ShouldHaveSingleItem().ShouldContain("USTMA");
        Judged(Good, damage: """[{"kind":"bulge","place":"sidewall"}]""").Refused.ShouldContain(r => r.StartsWith("Bulge", StringComparison.Ordinal));
        Judged(With(("fromRepair", "600 mm"), ("roundFromRepair", "110")), tyre: "\"repairs\":[{\"place\":\"tread\",\"method\":\"plug\"}],\"ranLow\":false").Refused.ShouldNotBeEmpty();
        Judged(With(("fromRepair", "0 mm")), tyre: "\"repairs\":[{\"place\":\"tread\",\"method\":\"stem and patch\"}],\"ranLow\":false").Refused.ShouldNotBeEmpty("repairs never overlap");
        Judged(Good, tyre: "\"repaired\":false,\"ranLow\":false,\"repairPolicy\":\"not permitted\"").Refused.ShouldHaveSingleItem().ShouldContain("not permitted by the tyre's maker");
    }

    [Theory]
    [InlineData("225/45 RF17 91H", "\"repaired\":false,\"ranLow\":false", "damage-puncture-run-flat@1L")]
    [InlineData("205/55 R16 91V", "\"repairs\":[{\"place\":\"tread\",\"method\":\"stem and patch\"}],\"ranLow\":false", "damage-puncture-repairs@1L")]
    public void What_a_person_must_decide_waits_for_that_and_no_trainee_decides_it(string marking, string tyre, string key)
    {
        var repair = With(("fromRepair", "600 mm"), ("roundFromRepair", "110"));
        var verdict = Judged(repair, marking, tyre: tyre);
        verdict.Refused.ShouldBeEmpty();
        var missing = verdict.Missing.ShouldHaveSingleItem();
        missing.Field.ShouldBe($"work.decisions.{key}.decision");
        verdict.MayBeRepaired.ShouldBeFalse();
        string Decided(string role) => $$$"""{"{{{key}}}": {"decision": "the tyre's maker allows it, leaflet 7", "by": "T1", "role": "{{{role}}}"} }""";
        Judged(repair, marking, tyre: tyre, decisions: Decided("trainee")).MayBeRepaired.ShouldBeFalse();
        Judged(repair, marking, tyre: tyre, decisions: Decided("technician")).MayBeRepaired.ShouldBeTrue();
    }

    [Fact]
    public void What_nobody_entered_is_asked_for_and_not_taken_for_good()
    {
        var verdict = Judged("""{"asked":true}""", tyre: "\"directional\":false");
        verdict.Missing.Select(m => m.Field).ShouldBe(
            ["work.repairs.1L.place", "work.repairs.1L.size", "work.repairs.1L.fromMiddle", "work.repairs.1L.lean", "work.repairs.1L.kind", "fitted.1L.tyre.repaired", "fitted.1L.tyre.ranLow"]);
        verdict.MayBeRepaired.ShouldBeFalse();
        verdict.Cautions.ShouldContain(c => c.Contains("tyre's maker", StringComparison.Ordinal));
        Judged(Good, tyre: "\"repairs\":[{\"place\":\"tread\",\"method\":\"stem and patch\"}],\"ranLow\":false").Missing.Select(m => m.Field).ShouldContain("work.repairs.1L.fromRepair");
    }

    private static JsonObject Visit(string repair)
    {
        var file = JsonNode.Parse(VisitStandingTests.SampleText)!.AsObject();
        file["work"]!["renewed"]!.AsObject().Clear();
        file["fitted"]![0]!["tread"] = JsonNode.Parse("""{"inner":["5 mm"],"centre":["5 mm"],"outer":["5 mm"]}""");
        file["fitted"]![0]!["damage"] = JsonNode.Parse("""[{"kind":"puncture","place":"tread","size":"4 mm"}]""");
        file["fitted"]![0]!["tyre"]!["repaired"] = false;
        file["fitted"]![0]!["tyre"]!["ranLow"] = false;
        file["fitted"]![0]!["tyre"]!["repairPolicy"] = "permitted";
        file["work"]!["repairs"] = new JsonObject { ["1L"] = JsonNode.Parse(repair) };
        var steps = file["work"]!["steps"]!["1L"]!;
        foreach (var (id, word) in new[] { ("repair-found", "done"), ("repair-inside", "sound inside"), ("repair-prepared", "five minutes, as the cement's maker says"), ("repair-filled", "done"), ("repair-sealed", "done"), ("repair-marked", "2026-03-14, beside the patch") })
        {
            steps[id] = word;
        }

        return file;
    }

    private static VisitState Stands(JsonObject file)
    {
        var problems = new List<Problem>();
        var state = VisitStanding.Of(FileNode.Parse(file.ToJsonString(), "sample").Value, problems);
        problems.ShouldBeEmpty();
        return state;
    }

    [Fact]
    public void A_repair_that_is_done_takes_the_puncture_from_the_vehicle_as_it_leaves()
    {
        var state = Stands(Visit(Good));
        state.Stops.Where(s => s.Position == "1L").Select(s => $"{s.What}: {s.Why}").ShouldBeEmpty();
        state.On(Leg.LookOver).Findings.ShouldContain(f => f.Position == "1L" && f.Rule.StartsWith("damage.puncture", StringComparison.Ordinal));
        state.LeavingFindings.ShouldNotContain(f => f.Position == "1L" && f.Rule.StartsWith("damage.puncture", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("kind", "patch alone", "A patch alone is no repair")]
    [InlineData("place", "shoulder", "Replace this tyre")]
    public void A_refused_repair_stops_the_visit_with_its_reason_and_leaves_the_puncture(string key, string value, string said)
    {
        var file = Visit(With((key, value)));
        file["work"]!["decisions"] = new JsonObject
        {
            ["repair-probed@1L"] = new JsonObject { ["decision"] = "go", ["by"] = "O1", ["role"] = "owner", ["signedRefusal"] = "C" },
        };
        var state = Stands(file);
        var stop = state.Stops.Single(s => s.What == "Probed from inside: size, place, angle");
        stop.Why.ShouldContain(said);
        stop.DecisionKey.ShouldBeNull();
        state.LeavingFindings.ShouldContain(f => f.Position == "1L" && f.Rule.StartsWith("damage.puncture", StringComparison.Ordinal));
    }

    [Fact]
    public void A_repair_is_never_done_with_the_tyre_on_its_rim()
    {
        var file = Visit(Good);
        file["work"]!["jobs"]!["1L"] = "off and on";
        Stands(file).On(Leg.OffTheCar).Steps.ShouldContain(s => s.At == "1L" && s.Step.Id == "demount");
    }
}
