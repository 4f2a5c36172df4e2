using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

public class BalanceWhyOperationTests
{
    private static readonly string Worked = File.ReadAllText("balance-why-worked.json");

    private static Reading<Answer> Run(string body) => FileNode.Parse(body, "body").Then(BalanceWhyOperation.Operation.Run);

    private static double Number(JsonNode? node) => node!.GetValue<double>();

    private static JsonObject First(Answer answer) => First(answer.Body);

    private static JsonObject First(JsonObject body) => (JsonObject)body["explanations"]![0]!;

    [Fact]
    public void The_worked_sample_has_its_answer()
    {
        var answer = Run(Worked).Value;
        answer.No.ShouldBeFalse();
        var first = First(answer);
        first["cause"]!.GetValue<string>().ShouldBe("rim-width");
        Number(first["estimate"]!["value"]).ShouldBe(6, 1e-9);
        first["estimate"]!["unit"]!.GetValue<string>().ShouldBe("in");
        Number(first["estimate"]!["low"]).ShouldBeInRange(5.5, 6);
        Number(first["estimate"]!["high"]).ShouldBeInRange(6, 6.5);
        Number(first["probability"]).ShouldBeGreaterThan(0.8);
        first["nextStep"]!.GetValue<string>().ShouldContain("rim width");
        Number(first["misfitGrams"]).ShouldBe(0, 0.1);
        var all = answer.Body["explanations"]!.AsArray();
        all.Count.ShouldBe(12);
        all.Sum(e => Number(e!["probability"])).ShouldBe(1, 1e-9);
        all.Select(e => Number(e!["probability"])).ShouldBeInOrder(SortDirection.Descending);
        all.ShouldAllBe(e => e!["evidence"]!.GetValue<string>().Length > 10 && e["nextStep"]!.GetValue<string>().Length > 10);
        answer.ForPeople[1].ShouldContain("rim-width");
    }

    [Fact]
    public void The_balancers_check_tells_its_repeatability_instead()
    {
        // 12, 16 and 14 g at one place inside: a variance of (4 + 4 + 0) over two components of two free spins, 2; nothing outside.
        string Checked(params string[] shown)
        {
            var spins = string.Join(", ", shown.Select(g => "{\"inner\": {\"mass\": \"" + g + " g\", \"angle\": 30}, \"outer\": {\"mass\": \"0 g\"}}"));
            return Worked.Replace("\"repeatability\": \"1 g\"", "\"check\": {\"planes\": {\"inner\": {\"radius\": \"180 mm\"}, \"outer\": {\"radius\": \"180 mm\"}}, \"repeat\": {\"spins\": [" + spins + "]}}", StringComparison.Ordinal);
        }

        var body = Run(Checked("12", "16", "14")).Value.Body;
        Number(body["repeatabilityGrams"]).ShouldBe(Math.Sqrt(2), 1e-9);
        var told = Run(Worked.Replace("\"repeatability\": \"1 g\"", FormattableString.Invariant($"\"repeatability\": \"{Math.Sqrt(2):R} g\""), StringComparison.Ordinal)).Value.Body;
        Number(First(body)["probability"]).ShouldBe(Number(First(told)["probability"]), 1e-9);
        Number(First(body)["probability"]).ShouldBeLessThan(Number(First(Run(Worked).Value.Body)["probability"]));

        Problem(Checked("12", "12", "12")).ShouldBe(("machine.check.repeat", "no-scatter"));
        Problem(Checked("12", "16")).Where.ShouldStartWith("machine.check.repeat");
        Problem(Checked("12", "16", "14").Replace("\"check\"", "\"repeatability\": \"1 g\", \"check\"", StringComparison.Ordinal)).ShouldBe(("machine.check", "one-of-two"));

        static (string Where, string Code) Problem(string file) => Run(file).Problem is { } p ? (p.Where, p.Code) : ("", "");
    }

    [Fact]
    public void The_guide_prints_the_sample() =>
        File.ReadAllText("balance-why.md").ReplaceLineEndings("\n").ShouldContain(Worked.ReplaceLineEndings("\n").Trim());

    [Fact]
    public void The_true_setting_is_told_in_the_unit_it_was_entered_in()
    {
        var answer = Run(Worked.Replace("\"7 in\"", "\"177.8 mm\"", StringComparison.Ordinal)).Value;
        First(answer)["estimate"]!["unit"]!.GetValue<string>().ShouldBe("mm");
        Number(First(answer)["estimate"]!["value"]).ShouldBe(152.4, 1e-6);
        var inches = Run(Worked.Replace("\"60 mm\"", "\"2.5 in\"", StringComparison.Ordinal)).Value;
        inches.Body["explanations"]!.AsArray().First(e => e!["cause"]!.GetValue<string>() == "rim-distance")!["estimate"]!["unit"]!.GetValue<string>().ShouldBe("in");
    }

    [Fact]
    public void One_spin_is_answered_and_asks_for_another()
    {
        var answer = Run("""
            {"entered": {"rimDistance": "60 mm", "rimDiameter": "16 in", "rimWidth": "7 in"}, "machine": {"repeatability": "1.5 g"},
             "spins": [{"display": {"inner": {"mass": "35 g", "angle": 40}, "outer": {"mass": "0 g"}}}]}
            """).Value;
        answer.No.ShouldBeFalse();
        First(answer)["nextStep"]!.GetValue<string>().ShouldContain("spin again");
        Number(First(answer)["probability"]).ShouldBeLessThan(0.5);
        First(answer)["evidenceLogRatio"].ShouldNotBeNull();
    }

    [Fact]
    public void A_measurement_again_is_read()
    {
        var body = Worked.Replace("\"spins\":", "\"measuredAgain\": {\"rimWidth\": \"6 in\"}, \"spins\":", StringComparison.Ordinal);
        var first = First(Run(body).Value);
        first["cause"]!.GetValue<string>().ShouldBe("rim-width");
        Number(first["probability"]).ShouldBeGreaterThan(0.99);
        first["nextStep"]!.GetValue<string>().ShouldNotContain("Measure the rim width");
    }

    [Fact]
    public void A_profile_moves_both_planes_and_weights()
    {
        var body = Worked.Replace("\"balancer\": {", "\"balancer\": {\"distanceUnit\": \"cm\", \"distanceZero\": \"30 mm\", \"displayHidesBelow\": \"2 g\", \"weightPlaces\": {\"outerAdhesive\": {\"radial\": \"-25 mm\", \"axial\": \"-45 mm\"}}, ", StringComparison.Ordinal)
            .Replace("\"rimWidth\": \"7 in\"}", "\"rimWidth\": \"7 in\", \"outer\": \"adhesive\"}", StringComparison.Ordinal);
        var answer = Run(body).Value;
        answer.Body["explanations"]!.AsArray().Count.ShouldBe(12);
        Number(answer.Body["misfitExpectedGrams"]).ShouldBe(Math.Sqrt(1 + (1.0 / 12)), 1e-9);
    }

    [Theory]
    [InlineData("35 g", "70 g", 1)]
    [InlineData("35.5 g", "70 g", 0.1)]
    [InlineData("35 g", "70.25 g", 0.01)]
    [InlineData("1 1/4 oz", "70 g", 0)]
    public void Displays_are_known_to_the_digits_typed(string inner, string outer, double step)
    {
        var answer = Run("""
            {"entered": {"rimDistance": "60 mm", "rimDiameter": "16 in", "rimWidth": "7 in"}, "machine": {"repeatability": "0.1 g"},
             "spins": [{"display": {"inner": {"mass": "INNER", "angle": 90}, "outer": {"mass": "OUTER", "angle": 270}}},
                       {"display": {"inner": {"mass": "6 g", "angle": 90}, "outer": {"mass": "0 g"}}}]}
            """.Replace("INNER", inner, StringComparison.Ordinal).Replace("OUTER", outer, StringComparison.Ordinal)).Value;
        Number(answer.Body["misfitExpectedGrams"]).ShouldBe(Math.Sqrt(0.01 + (step * step / 12)), 1e-6);
    }

    [Theory]
    [InlineData("35 g", "70 g", "5 g", 5, "values")]
    [InlineData("1.25 oz", "2.5 oz", "0.25 oz", 7.0873808, "values")]
    [InlineData("1 1/4 oz", "2 1/2 oz", "1/4 oz", 7.0873808, "values")]
    [InlineData("1.30 oz", "2.50 oz", "0.25 oz", 1.41747616, "values")]
    [InlineData("35 g", "70 g", "6 g", 1, "digits")]
    [InlineData("0 g", "70 g", "0 g", 1, "digits")]
    public void A_coarse_display_is_known_by_its_values(string inner, string outer, string second, double step, string from)
    {
        var answer = Run("""
            {"entered": {"rimDistance": "60 mm", "rimDiameter": "16 in", "rimWidth": "7 in"}, "machine": {"repeatability": "0.1 g"},
             "spins": [{"display": {"inner": {"mass": "INNER", "angle": 90}, "outer": {"mass": "OUTER", "angle": 270}}},
                       {"display": {"inner": {"mass": "SECOND", "angle": 90}, "outer": {"mass": "0 g"}}}]}
            """.Replace("INNER", inner, StringComparison.Ordinal).Replace("OUTER", outer, StringComparison.Ordinal).Replace("SECOND", second, StringComparison.Ordinal)).Value;
        Number(answer.Body["displayStepGrams"]).ShouldBe(step, 1e-6);
        answer.Body["displayStepFrom"]!.GetValue<string>().ShouldBe(from);
        Number(answer.Body["misfitExpectedGrams"]).ShouldBe(Math.Sqrt(0.01 + (step * step / 12)), 1e-6);
        answer.ForPeople.Any(l => l.Contains("is a whole multiple of", StringComparison.Ordinal)).ShouldBe(from == "values");
    }

    [Theory]
    [InlineData("\"repeatability\": \"1 g\"", "\"repeatability\": \"0 g\"", "machine.repeatability", "out-of-range")]
    [InlineData(", \"repeatability\": \"1 g\"", "", "machine.repeatability", "missing")]
    [InlineData("[\"-120 mm\", \"-280 mm\"]", "[\"-120 mm\"]", "machine.transducers", "two-transducers")]
    [InlineData("[\"-120 mm\", \"-280 mm\"]", "[\"-120 mm\", \"-120 mm\"]", "machine.transducers", "two-transducers")]
    [InlineData("\"plane\": \"outer\"", "\"plane\": \"middle\"", "spins[0].fittedAfter[1].plane", "word-unknown")]
    [InlineData("\"fittedAfter\": []", "\"fitedAfter\": []", "spins[1].fitedAfter", "key-unknown")]
    [InlineData("\"rimWidth\": \"7 in\"", "\"rimWidth\": \"7 kg\"", "entered.rimWidth", "unit-unknown")]
    [InlineData("\"rimWidth\": \"7 in\"", "\"rimWidth\": \"7 in\", \"outer\": \"adhesive\"", "entered.outer", "place-unknown")]
    [InlineData("\"mass\": \"70 g\", \"angle\": 270}}", "\"angle\": 270}}", "spins[0].display.outer.mass", "missing")]
    public void A_wrong_value_is_refused_at_its_place(string old, string changed, string where, string code)
    {
        Worked.ShouldContain(old);
        var problem = Run(Worked.Replace(old, changed, StringComparison.Ordinal)).Problem.ShouldNotBeNull();
        problem.Where.ShouldBe(where);
        problem.Code.ShouldBe(code);
    }
}
