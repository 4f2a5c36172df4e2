using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

/// <summary>How a tread is worn, as <c>inspect</c> and <c>visit check</c> answer it.</summary>
public sealed class WearAnswerTests
{
    private static Reading<Answer> Run(string tread, string operation = "inspect") => FileNode.Parse($$$"""
        {"rules": "uk", "date": "2026-03-14", "vehicle": {"name": "olive estate", "drive": "front", "axles": [{"steered": true, "driven": true, "placard": {"cold": "230 kPa"}}, {"placard": {"cold": "230 kPa"}}]},
         "fitted": [{"position": "1L", "tread": {{{tread}}}, "pressure": {"value": "231 kPa"}}]}
        """, "wear.json").Then(OperationList.Of(operation).Run);

    [Fact]
    public void Each_tyre_with_depths_has_its_patterns_with_causes_checks_and_a_next_step()
    {
        var wear = Run("""{"inner": ["3.1 mm", "3.0 mm", "3.2 mm"], "centre": ["5 mm", "5.1 mm", "5 mm"], "outer": ["5.4 mm", "5.3 mm", "5.3 mm"]}""").Value.Body["wear"]!.AsArray().Single()!;
        wear["position"]!.GetValue<string>().ShouldBe("1L");
        var patterns = wear["patterns"]!.AsArray();
        patterns.Sum(p => p!["probability"]!.GetValue<double>()).ShouldBe(1, 1e-9);
        patterns.Select(p => p!["pattern"]!.GetValue<string>()).ShouldBe(["even", "centre", "both-shoulders", "one-shoulder", "feather", "heel-and-toe", "cups", "diagonal", "flat-spot", "other"], ignoreOrder: true);
        var first = patterns[0]!;
        first["pattern"]!.GetValue<string>().ShouldBe("one-shoulder");
        first["forms"]![0]!["form"]!.GetValue<string>().ShouldBe("inner");
        first["evidence"]!.GetValue<string>().ShouldStartWith("inner 3.1, centre 5.0, outer 5.3 mm");
        first["nextStep"]!.GetValue<string>().ShouldContain("speaks for");
        var causes = first["causes"]!.AsArray();
        causes.Sum(c => c!["probability"]!.GetValue<double>()).ShouldBe(1, 1e-9);
        causes.ShouldAllBe(c => c!["check"]!.GetValue<string>().Length > 0 && c["source"]!.GetValue<string>().Length > 0 && c["status"]!.GetValue<string>().Length > 0);
        wear["context"]!.AsArray().Select(c => c!.GetValue<string>()).ShouldContain("found at 231 kPa cold where the placard asks for 230 kPa");
    }

    [Fact]
    public void The_finding_stays_minor_and_says_the_likeliest_with_its_probability()
    {
        var answer = Run("""{"inner": ["3.1 mm"], "centre": ["5 mm"], "outer": ["5.4 mm"]}""").Value;
        var finding = answer.Body["findings"]!.AsArray().Single(f => f!["rule"]!.GetValue<string>() == "wear.one-shoulder")!;
        finding["category"]!.GetValue<string>().ShouldBe("minor");
        finding["measured"]!["text"]!.GetValue<string>().ShouldBe("inner 3.1, centre 5.0, outer 5.4 mm");
        finding["action"]!.GetValue<string>().ShouldMatch("^Likeliest by the program's model \\((over )?[0-9]+ %\\), not certain: one shoulder wears faster; it may come of .+ Somebody should look at the tyre");
        answer.ForPeople.ShouldContain(l => l.StartsWith("wear      1L", StringComparison.Ordinal) && l.Contains("likeliest by the program's model: one shoulder (inner)", StringComparison.Ordinal));
        answer.No.ShouldBeFalse();
    }

    [Fact]
    public void A_whole_visit_answers_the_same_on_look_over()
    {
        const string tread = """{"inner": ["5 mm"], "centre": ["5 mm"], "outer": ["5 mm"], "ribs": [{"place": "outer", "innerEdge": "6.2 mm", "outerEdge": "4.9 mm"}]}""";
        var visit = Run(tread, "visit check").Value.Body["legs"]!["lookOver"]!["inspect"]!["wear"]!;
        JsonNode.DeepEquals(visit, Run(tread).Value.Body["wear"]).ShouldBeTrue();
        visit[0]!["patterns"]![0]!["pattern"]!.GetValue<string>().ShouldBe("feather");
        Run("""{"inner": ["5 mm"]}""", "fitment").Value.Body["wear"].ShouldBeNull();
    }

    [Theory]
    [InlineData("""{"inner": ["5 mm", "5 mm"], "angles": [0]}""", "fitted[0].tread.angles", "angles-count")]
    [InlineData("""{"ribs": [{"place": "middle", "innerEdge": "5 mm", "outerEdge": "5 mm"}]}""", "fitted[0].tread.ribs[0].place", null)]
    [InlineData("""{"ribs": [{"place": "inner", "innerEdge": "5 mm"}]}""", "fitted[0].tread.ribs[0].outerEdge", null)]
    [InlineData("""{"blocks": [{"leading": "5 mm", "trailing": "5 mm"}]}""", "fitted[0].tread.blocks[0].place", null)]
    [InlineData("""{"blocks": [{"place": "inner", "leading": "5 bar", "trailing": "5 mm"}]}""", "fitted[0].tread.blocks[0].leading", null)]
    [InlineData("""{"block": []}""", "fitted[0].tread.block", null)]
    public void What_cannot_be_read_names_its_place(string tread, string where, string? code)
    {
        var problem = Run(tread).Problem.ShouldNotBeNull();
        problem.Where.ShouldBe(where);
        problem.Code.ShouldBe(code ?? problem.Code);
    }
}
