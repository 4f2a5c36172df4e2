using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

public class BalanceMachineOperationTests
{
    private const string Planes = """ "planes": {"inner": {"radius": "200 mm"}, "outer": {"radius": "200 mm"}} """;
    private const string None = """{"inner": {"mass": "0 g"}, "outer": {"mass": "0 g"}}""";

    private static Reading<Answer> Run(string body) => BalanceMachineOperation.Operation.Run(FileNode.Parse(body, "body").Value);

    private static Answer Of(string parts) => Run($"{{{Planes}, {parts}}}").Value;

    private static double Number(JsonNode? node) => node!.GetValue<double>();

    private static string Text(JsonNode? node) => node!.GetValue<string>();

    [Fact]
    public void The_worked_sample_has_its_answer()
    {
        var answer = Run(File.ReadAllText("balance-machine-worked.json")).Value;
        answer.No.ShouldBeFalse();
        Text(answer.Body["verdict"]).ShouldBe("passed");

        // By hand: 97 g at 2° for 100 g leaves √(100² + 97² − 2·100·97·cos 2°) = 4.5627 g. A tenth of 10 g × 200 mm.
        Number(answer.Body["unbalanceReductionRatioPercent"]).ShouldBe(100 - Math.Sqrt(10_000 + 9409 - (19_400 * Math.Cos(Math.PI / 90))), 1e-9);
        Number(answer.Body["minimumAchievableGramMillimetres"]).ShouldBe(200, 1e-9);
        Text(answer.Body["source"]).ShouldContain("ISO 21940-21");

        // Made from a fixture of 1500 g·mm at 75° and a wheel of 2200 g·mm at 200°, and rounded to 0.01 g and 0.1°.
        var inner = answer.Body["index"]!["inner"]!;
        Number(inner["fixture"]!["gramMillimetres"]).ShouldBe(1500, 3);
        Number(inner["fixture"]!["angleDegrees"]).ShouldBe(75, 0.1);
        Number(inner["wheel"]!["gramMillimetres"]).ShouldBe(2200, 3);
        Number(inner["wheel"]!["angleDegrees"]).ShouldBe(200, 0.1);
        Number(answer.Body["index"]!["dialMillimetres"]).ShouldBe(0.22, 0.001);
        answer.Body["tests"]!.AsArray().Select(t => Text(t!["name"])).Distinct().ShouldBe(["traverse", "reduction", "index", "repeat", "empty-shaft", "known-mass", "five-spins", "four-places"]);
        foreach (var limit in answer.Body["tests"]!.AsArray().Select(t => t!["limit"]!))
        {
            Text(limit["source"]).ShouldNotBeEmpty();
            Text(limit["status"]).ShouldNotBeEmpty();
        }

        answer.ForPeople.ShouldContain(l => l.StartsWith("Caution:", StringComparison.Ordinal) && l.Contains("Do not knock the shaft"));
        answer.ForPeople.ShouldContain(l => l.Contains("guard down"));
    }

    [Fact]
    public void Angles_from_the_valve_and_from_the_shaft_say_the_same()
    {
        var shaft = Of("""
            "index": {"anglesFrom": "shaft", "spins": [
              {"turned": 0, "display": {"inner": {"mass": "20 g", "angle": 30}, "outer": {"mass": "0 g"}}},
              {"turned": 90, "display": {"inner": {"mass": "12 g", "angle": 200}, "outer": {"mass": "0 g"}}}]}
            """);
        var valve = Of("""
            "index": {"anglesFrom": "valve", "spins": [
              {"turned": 0, "display": {"inner": {"mass": "20 g", "angle": 30}, "outer": {"mass": "0 g"}}},
              {"turned": 90, "display": {"inner": {"mass": "12 g", "angle": 110}, "outer": {"mass": "0 g"}}}]}
            """);
        foreach (var part in new[] { "fixture", "wheel" })
        {
            Number(valve.Body["index"]!["inner"]![part]!["massGrams"]).ShouldBe(Number(shaft.Body["index"]!["inner"]![part]!["massGrams"]), 1e-9);
            Number(valve.Body["index"]!["inner"]![part]!["angleDegrees"]).ShouldBe(Number(shaft.Body["index"]!["inner"]![part]!["angleDegrees"]), 1e-9);
        }

        // No limit was given: there is a figure and no yes.
        Text(shaft.Body["verdict"]).ShouldBe("undecided");
        shaft.No.ShouldBeTrue();
        shaft.Body["tests"]![0]!["limit"].ShouldBeNull();
        Text(shaft.Body["tests"]![0]!["nextStep"]).ShouldContain("Ask the machine's maker");
        shaft.Body["unbalanceReductionRatioPercent"].ShouldBeNull();
        shaft.Body["minimumAchievableGramMillimetres"].ShouldBeNull();
        shaft.ForPeople.ShouldContain(l => l.Contains("the machine maker's to say"));
    }

    [Theory]
    [InlineData("inner", 85, 0, "passed")]
    [InlineData("outer", 85, 0, "failed")]
    [InlineData("inner", 77, 0, "failed")]
    [InlineData("inner", 80, 6, "passed")]
    [InlineData("inner", 85, 8, "failed")]
    public void Eighty_five_grams_are_called_on_the_same_plane_half_a_turn_round(string shownIn, double shown, double other, string verdict)
    {
        var otherPlane = shownIn == "inner" ? "outer" : "inner";
        var answer = Of(FormattableString.Invariant(
            $$$"""
            "shop": {"added": {"plane": "inner", "mass": "85 g", "angle": 45},
              "display": {"{{{shownIn}}}": {"mass": "{{{shown}}} g", "angle": 225}, "{{{otherPlane}}}": {"mass": "{{{other}}} g", "angle": 10} } }
            """));
        Text(answer.Body["verdict"]).ShouldBe(verdict);
        answer.No.ShouldBe(verdict != "passed");
        if (verdict == "failed")
        {
            Text(answer.Body["nextStep"]).ShouldStartWith("Balance nothing more on this machine");
        }
    }

    [Theory]
    [InlineData(7, 7, "passed")]
    [InlineData(8, 0, "failed")]
    public void The_empty_shaft(double inner, double outer, string verdict) =>
        Text(Of(FormattableString.Invariant($$$""" "shop": {"empty": {"inner": {"mass": "{{{inner}}} g", "angle": 5}, "outer": {"mass": "{{{outer}}} g", "angle": 5} } } """)).Body["verdict"]).ShouldBe(verdict);

    [Fact]
    public void What_the_machine_showed_before_counts_as_nothing()
    {
        // 10 g at 0° were there and stay there; 50 g at 90° more are called exactly.
        var answer = Of("""
            "knownMass": {"base": {"inner": {"mass": "10 g", "angle": 180}, "outer": {"mass": "0 g"}}, "reductionRatio": "99 %",
              "spins": [{"added": [{"plane": "inner", "mass": "30 g", "angle": 90}, {"plane": "inner", "mass": "20 g", "angle": 90}],
                         "display": {"inner": {"mass": "50.99019513592785 g", "angle": 258.6900675259798}, "outer": {"mass": "0 g"}}}]}
            """);
        Number(answer.Body["unbalanceReductionRatioPercent"]).ShouldBe(100, 1e-9);
        Text(answer.Body["verdict"]).ShouldBe("passed");
    }

    [Fact]
    public void A_repeatability_within_its_own_interval_is_undecided()
    {
        static string Spins(double limit) => FormattableString.Invariant($$$"""
            "repeat": {"limit": "{{{limit}}} g", "spins": [
              {"inner": {"mass": "20 g", "angle": 0}, "outer": {"mass": "20 g", "angle": 0}}, {"inner": {"mass": "21 g", "angle": 0}, "outer": {"mass": "21 g", "angle": 0}},
              {"inner": {"mass": "22 g", "angle": 0}, "outer": {"mass": "22 g", "angle": 0}}]}, "permissible": "5 g"
            """);
        Text(Of(Spins(0.8)).Body["verdict"]).ShouldBe("undecided");
        Text(Of(Spins(3)).Body["verdict"]).ShouldBe("passed");
        Text(Of(Spins(0.3)).Body["verdict"]).ShouldBe("failed");

        // Deviations −1, 0, 1 g along one direction: s = √(2/4); two of it are the error.
        var answer = Of(Spins(3)).Body;
        Number(answer["repeat"]!["inner"]!["standardDeviationGrams"]).ShouldBe(Math.Sqrt(0.5), 1e-9);
        Number(answer["acceptance"]!["inner"]!["acceptUpToGrams"]).ShouldBe(5 - (2 * Math.Sqrt(0.5)), 1e-9);
        Number(answer["acceptance"]!["outer"]!["rejectAboveGrams"]).ShouldBe(5 + (2 * Math.Sqrt(0.5)), 1e-9);
    }

    [Fact]
    public void A_traverse_test_that_fails_says_whether_the_rotor_or_the_machine_is_to_blame()
    {
        static Answer Traverse(Func<int, double> at) => Of($$$"""
            "traverse": {"inner": {"testMass": "10 g", "shown": [{{{string.Join(", ", Enumerable.Range(0, 12).Select(k => FormattableString.Invariant($"\"{at(k):0.000} g\"")))}}}]} }
            """);
        var rotor = Traverse(k => 10 + (1.5 * Math.Cos(Math.Tau * k / 12)));
        Text(rotor.Body["verdict"]).ShouldBe("failed");
        Text(rotor.Body["tests"]![0]!["nextStep"]).ShouldContain("Balance it again");
        rotor.Body["minimumAchievableGramMillimetres"].ShouldBeNull();
        var machine = Traverse(k => k % 2 == 0 ? 11.5 : 8.5);
        Text(machine.Body["tests"]![0]!["nextStep"]).ShouldContain("250 g·mm is the least that would pass");
        Number(machine.Body["traverse"]!["inner"]!["wouldPassGramMillimetres"]).ShouldBe(2000 * 0.15 / 1.2, 1e-6);
    }

    [Theory]
    [InlineData(Planes, "shop", "missing")]
    [InlineData(""" "shop": {"empty": {"inner": {"mass": "1 g", "angle": 5}, "outer": {"mass": "0 g"}}} """, "planes", "missing")]
    [InlineData(Planes + """, "traverse": {} """, "traverse", "missing")]
    [InlineData(Planes + """, "traverse": {"inner": {"testMass": "10 g", "shown": ["10 g"]}} """, "traverse.inner.shown", "not-twelve")]
    [InlineData(Planes + """, "traverse": {"inner": {"testMass": "10 g", "minimumAchievable": "100 g·mm", "shown": [1,1,1,1,1,1,1,1,1,1,1,1]}} """, "traverse.inner.testMass", "not-ten-times")]
    [InlineData(Planes + """, "index": {"anglesFrom": "shaft", "spins": [{"turned": 0, "display": """ + None + """}, {"turned": 0, "display": """ + None + """}]} """, "index.spins", "index-not-turned")]
    [InlineData(Planes + """, "index": {"anglesFrom": "shaft", "spins": [{"turned": 0, "display": """ + None + """}, {"turned": 360, "display": """ + None + """}]} """, "index.spins", "index-not-turned")]
    [InlineData(Planes + """, "index": {"spins": [{"turned": 0, "display": """ + None + """}, {"turned": 90, "display": """ + None + """}]} """, "index.anglesFrom", "missing")]
    [InlineData(Planes + """, "repeat": {"spins": [""" + None + ", " + None + """]} """, "repeat.spins", "too-few-spins")]
    [InlineData(Planes + """, "shop": {"added": {"plane": "inner", "mass": "85 g", "angle": 45}} """, "shop.display", "missing")]
    [InlineData(Planes + """, "shop": {"repeats": [""" + None + """]} """, "shop.repeats", "too-few-spins")]
    [InlineData(Planes + """, "knownMass": {"spins": []} """, "knownMass.base", "missing")]
    [InlineData(Planes + """, "knownMass": {"base": """ + None + """, "spins": [{"added": [], "display": """ + None + """}]} """, "knownMass.spins[0].added", "missing")]
    [InlineData(Planes + """, "knowMass": {} """, "knowMass", "key-unknown")]
    [InlineData(""" "planes": {"inner": {"radius": "200 mm", "axial": "100 mm"}, "outer": {"radius": "200 mm", "axial": "90 mm"}}, "shop": {"empty": """ + None + "} ", "planes.outer.axial", "planes-not-apart")]
    public void Each_problem_names_its_place(string parts, string where, string code)
    {
        var problem = Run($"{{{parts}}}").Problem.ShouldNotBeNull();
        problem.Where.ShouldBe(where);
        problem.Code.ShouldBe(code);
    }

    [Fact]
    public void A_test_with_a_letter_missing_is_answered_by_the_one_meant() =>
        Run("{" + Planes + """, "travers": {} } """).Problem.ShouldNotBeNull().Message.ShouldContain("did you mean 'traverse'");

    [Theory]
    [InlineData("", 1, "undecided", null)]
    [InlineData(""", "balancer": {"displayStep": "1 g"} """, 1, "passed", 0.288675134594813)]
    [InlineData(""", "balancer": {"displayStep": "1 g", "displayHidesBelow": "5 g"} """, 1, "undecided", 2.516611478423583)]
    [InlineData(""", "balancer": {"displayStep": "1 g", "displayHidesBelow": "5 g"} """, 8, "passed", 2.516611478423583)]
    public void Spins_that_all_show_nothing_prove_no_more_than_the_display_can_show(string balancer, double limit, string verdict, double? deviation)
    {
        var spins = string.Join(", ", Enumerable.Repeat(None, 5));
        var answer = Of(FormattableString.Invariant($" \"repeat\": {{\"limit\": \"{limit} g\", \"spins\": [{spins}]}}, \"permissible\": \"5 g\" ") + balancer);
        Text(answer.Body["verdict"]).ShouldBe(verdict);
        answer.No.ShouldBe(verdict != "passed");
        var inner = answer.Body["repeat"]!["inner"]!;
        inner["noneDiffers"]!.GetValue<bool>().ShouldBeTrue();
        answer.ForPeople.ShouldAllBe(l => !l.Contains("between 0.00 and 0.00", StringComparison.Ordinal));
        if (deviation is not { } s)
        {
            inner["standardDeviationGrams"].ShouldBeNull();
            inner["highGrams"].ShouldBeNull();
            answer.Body["acceptance"]!["inner"]!["acceptUpToGrams"].ShouldBeNull();
            Text(answer.Body["nextStep"]).ShouldContain("finest step");
            return;
        }

        // step²/12 + hidden²/4; a hidden value lies anywhere in a circle. The upper end by chi-squared of 8 degrees of freedom, 2.5 % below 2.1797 (table).
        Number(inner["standardDeviationGrams"]).ShouldBe(s, 1e-9);
        Number(inner["highGrams"]).ShouldBe(s * Math.Sqrt(8 / 2.1797), 1e-4);
        Number(inner["lowGrams"]).ShouldBe(0);
    }
}
