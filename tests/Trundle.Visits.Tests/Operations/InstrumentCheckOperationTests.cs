using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

public class InstrumentCheckOperationTests
{
    private static Reading<Answer> Run(string json) => FileNode.Parse(json, "body").Then(OperationList.Of("instrument check").Run);

    private static double Number(JsonNode? node) => node!.GetValue<double>();

    [Fact]
    public void The_sample_has_its_deviations_by_hand_and_fails_at_the_one_beyond_four_per_cent()
    {
        // 41.2/40 is 3 % over; 8.44/8 is 5.5 % over, where 6 % are permitted up to 10 N·m; 191/200 is 4.5 % under, where 4 % are.
        var answer = Run(File.ReadAllText("instrument-torque-wrench.json")).Value;
        answer.No.ShouldBeTrue();
        answer.Body["verdict"]!.GetValue<string>().ShouldBe("failed");
        var points = answer.Body["points"]!.AsArray();
        points.Select(p => Number(p!["deviationPercent"])).ShouldBe([3, 5.5, -4.5], 1e-9);
        points.Select(p => Number(p!["deviation"]!["value"])).ShouldBe([1.2, 0.44, -9], 1e-9);
        points.Select(p => p!["within"]!.GetValue<bool>()).ShouldBe([true, true, false]);
        points.Select(p => Number(p!["permitted"]!["value"])).ShouldBe([1.6, 0.48, 8], 1e-9);
        points[0]!["permitted"]!["status"]!.GetValue<string>().ShouldBe("second-hand");
        Number(answer.Body["worstDeviationPercent"]).ShouldBe(5.5, 1e-9);
        answer.Body["nextStep"]!.GetValue<string>().ShouldContain("look back");
        answer.ForPeople.ShouldContain(l => l.Contains("BEYOND 8.00 N·m", StringComparison.Ordinal));
    }

    [Fact]
    public void The_makers_figure_comes_before_the_standards()
    {
        var json = JsonNode.Parse(File.ReadAllText("instrument-torque-wrench.json"))!;
        json["permitted"] = "6 %";
        var answer = Run(json.ToJsonString()).Value;
        answer.Body["verdict"]!.GetValue<string>().ShouldBe("passed");
        answer.Body["points"]![0]!["permitted"]!["source"]!.GetValue<string>().ShouldBe("the permitted deviation given");
    }

    [Theory]
    [InlineData("""{"kind": "pressure gauge", "points": [{"reference": "200 kPa", "shown": "29.8 psi"}]}""", "not-judged")]
    [InlineData("""{"kind": "pressure gauge", "permitted": "7 kPa", "points": [{"reference": "200 kPa", "shown": "29.8 psi"}]}""", "passed")]
    [InlineData("""{"kind": "pressure gauge", "permitted": "5 kPa", "points": [{"reference": "200 kPa", "shown": "29.8 psi"}]}""", "failed")]
    [InlineData("""{"kind": "depth gauge", "permitted": "0.1 mm", "points": [{"reference": "5 mm", "shown": "5.1 mm"}]}""", "passed")]
    [InlineData("""{"kind": "other", "stated": "passed"}""", "passed")]
    [InlineData("""{"kind": "torque wrench", "stated": "failed", "points": [{"reference": "40 N·m", "shown": "40 N·m"}]}""", "failed")]
    [InlineData("""{"kind": "torque wrench", "stated": "passed", "points": [{"reference": "40 N·m", "shown": "50 N·m"}]}""", "failed")]
    [InlineData("""{"kind": "balancer", "stated": "passed", "points": [{"reference": "60 g", "shown": "61 g"}]}""", "passed")]
    public void Points_and_certificate_together_say(string json, string verdict)
    {
        var answer = Run(json).Value;
        answer.Body["verdict"]!.GetValue<string>().ShouldBe(verdict);
        answer.No.ShouldBe(verdict == "failed");
        answer.Body["nextStep"]!.GetValue<string>().ShouldNotBeEmpty();
    }

    [Fact]
    public void Certificate_and_points_that_contradict_each_other_are_said()
    {
        Run("""{"kind": "torque wrench", "stated": "passed", "points": [{"reference": "40 N·m", "shown": "50 N·m"}]}""").Value
            .Body["cautions"]!.AsArray().ShouldContain(c => c!.GetValue<string>().Contains("ask who wrote it", StringComparison.Ordinal));
        Run("""{"kind": "pressure gauge", "points": [{"reference": "200 kPa", "shown": "201 kPa"}]}""").Value
            .Body["cautions"]!.AsArray().ShouldContain(c => c!.GetValue<string>().Contains("was not given", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("""{}""", "kind")]
    [InlineData("""{"kind": "torque wrench"}""", "points")]
    [InlineData("""{"kind": "torque wrench", "points": []}""", "points")]
    [InlineData("""{"kind": "torque wrench", "stated": "passed", "permitted": "4 %"}""", "points")]
    [InlineData("""{"kind": "torque wrench", "points": [{"reference": "40 N·m"}]}""", "points[0].shown")]
    [InlineData("""{"kind": "torque wrench", "points": [{"reference": "0 N·m", "shown": "1 N·m"}]}""", "points[0].reference")]
    [InlineData("""{"kind": "torque wrench", "permitted": "4", "points": [{"reference": "40 N·m", "shown": "40 N·m"}]}""", "permitted")]
    [InlineData("""{"kind": "torque wrench", "permitted": "0 %", "points": [{"reference": "40 N·m", "shown": "40 N·m"}]}""", "permitted")]
    [InlineData("""{"kind": "torque wrench", "permitted": "0 N·m", "points": [{"reference": "40 N·m", "shown": "40 N·m"}]}""", "permitted")]
    [InlineData("""{"kind": "other", "points": [{"reference": "40 N·m", "shown": "40 N·m"}]}""", "points")]
    [InlineData("""{"kind": "spanner", "stated": "passed"}""", "kind")]
    [InlineData("""{"kind": "other", "stated": "passed", "verdict": "passed"}""", "verdict")]
    public void A_wrong_file_names_its_place(string json, string where) => Run(json).Problem!.Where.ShouldBe(where);
}
