using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

public class RunoutOperationTests
{
    private static Reading<Answer> Run(string body) => RunoutOperation.Operation.Run(FileNode.Parse(body, "body").Value);

    private static double Number(JsonNode? node) => node!.GetValue<double>();

    private const string Eight = "\"readings\": [\"0.85 mm\", \"1.12 mm\", \"0.94 mm\", \"0.54 mm\", \"0.24 mm\", \"0.36 mm\", \"0.36 mm\", \"0.38 mm\"]";

    [Fact]
    public void The_sample_of_twelve_places_has_its_answer()
    {
        var answer = Run(File.ReadAllText("runout-twelve-places.json")).Value;
        var first = answer.Body["harmonics"]![0]!;
        first["order"]!.GetValue<int>().ShouldBe(1);
        Number(first["amplitudeMillimetres"]).ShouldBe(0.400366, 5e-7);
        Number(first["highPointDegrees"]).ShouldBe(50.104, 5e-4);
        Number(answer.Body["peakToPeakMillimetres"]).ShouldBe(0.85, 1e-9);
        Number(answer.Body["eccentricityMillimetres"]).ShouldBe(0.400366, 5e-7);
        answer.Body["warnings"]!.AsArray().ShouldBeEmpty();

        // 0.85 mm lies between a bulletin's 0.8 mm and a service text's 1.27 mm: nobody but the maker can say.
        answer.Body["withinLimit"].ShouldBeNull();
        Number(answer.Body["limit"]!["value"]).ShouldBe(0.8);
        answer.Body["limit"]!["status"]!.GetValue<string>().ShouldBe("read");
        answer.No.ShouldBeTrue();
        answer.Body["cautions"]!.AsArray().Select(c => c!.GetValue<string>()).ShouldContain(c => c.Contains("ask for it", StringComparison.Ordinal));
    }

    [Fact]
    public void The_sample_of_three_mountings_parts_tyre_and_wheel_and_says_the_turn()
    {
        var answer = Run(File.ReadAllText("runout-three-mountings.json")).Value;

        // Made from a tyre of 0.30 mm at 130° and a wheel of 0.20 mm at 40°, rounded to a hundredth.
        var parts = answer.Body["parts"]!;
        Number(parts["tyre"]!["amplitudeMillimetres"]).ShouldBe(0.30, 0.004);
        Number(parts["tyre"]!["highPointDegrees"]).ShouldBe(130, 0.8);
        Number(parts["wheel"]!["amplitudeMillimetres"]).ShouldBe(0.20, 0.004);
        Number(parts["wheel"]!["highPointDegrees"]).ShouldBe(40, 1.2);
        Number(parts["standardErrorMillimetres"]).ShouldBeInRange(0, 0.004);

        // The tyre's high point is at 130 + 240 = 10° now and belongs at 220°: 210° on.
        Number(answer.Body["match"]!["turnDegrees"]).ShouldBe(210, 1.5);
        Number(answer.Body["match"]!["afterMillimetres"]).ShouldBe(0.10, 0.006);
        string.Join('\n', answer.ForPeople).ShouldContain("anticlockwise");
        string.Join('\n', answer.ForPeople).ShouldContain("never above 250 kPa");
        answer.Body["traces"]!.AsArray().Count.ShouldBe(2);
        answer.Body["traces"]![1]!["direction"]!.GetValue<string>().ShouldBe("lateral");
        answer.Body["traces"]![1]!["eccentricityMillimetres"].ShouldBeNull();
        answer.Body["withinLimit"]!.GetValue<bool>().ShouldBeFalse();
        answer.No.ShouldBeTrue();
    }

    [Theory]
    [InlineData("0.9 mm", true)]
    [InlineData("0.882 mm", true)]
    [InlineData("0.88 mm", false)]
    public void The_makers_limit_is_held_against_what_the_harmonics_reach_where_that_is_more_than_the_reading(string limit, bool within)
    {
        var answer = Run($$"""{"part": "wheel", "material": "alloy", "direction": "lateral", "makerLimit": "{{limit}}", "makerLimitSource": "the wheel's sheet", {{Eight}}}""").Value;
        answer.Body["withinLimit"]!.GetValue<bool>().ShouldBe(within);
        answer.Body["limit"]!["source"]!.GetValue<string>().ShouldBe("the wheel's sheet");

        // The dial showed 0.88 mm; three orders fitted to it, tried at a hundred thousand places, reach 0.881226 mm.
        Number(answer.Body["peakToPeakMillimetres"]).ShouldBe(0.88, 1e-9);
        Number(answer.Body["judgedMillimetres"]).ShouldBe(0.881226, 2e-6);
        answer.No.ShouldBe(!within);
    }

    [Fact]
    public void Eight_places_that_miss_the_crest_are_judged_by_what_their_harmonics_reach()
    {
        // 0.62 mm off centre, the crest half-way between two places: the dial shows 1.24 mm · cos 22.5°.
        var readings = string.Join(", ", Enumerable.Range(0, 8).Select(i => FormattableString.Invariant($"\"{2 + (0.62 * Math.Cos((i - 0.5) * Math.PI / 4)):0.000000} mm\"")));
        var answer = Run($$"""{"part": "assembly", "mounted": "offVehicle", "direction": "radial", "makerLimit": "1.2 mm", "readings": [{{readings}}]}""").Value;
        Number(answer.Body["peakToPeakMillimetres"]).ShouldBe(1.24 * Math.Cos(Math.PI / 8), 1e-5);
        Number(answer.Body["peakToPeakAroundMillimetres"]).ShouldBe(1.24, 1e-5);
        Number(answer.Body["judgedMillimetres"]).ShouldBe(1.24, 1e-5);
        answer.Body["withinLimit"]!.GetValue<bool>().ShouldBeFalse();
        answer.No.ShouldBeTrue();
        answer.ForPeople[0].ShouldContain("the harmonics fitted to them reach 1.24");
    }

    [Theory]
    [InlineData("\"makerLimit\": \"1.2 mm\",", """["2.566 mm", "2.566 mm", "1.434 mm", "1.434 mm"]""", 1.132)]
    [InlineData("", """[{"angle": 0, "value": "3.088 mm"}, {"angle": 10, "value": "3.159 mm"}, {"angle": 20, "value": "3.195 mm"}, {"angle": 30, "value": "3.195 mm"}, {"angle": 40, "value": "3.159 mm"}, {"angle": 50, "value": "3.088 mm"}]""", 0.107)]
    public void Places_too_few_or_crowded_are_referred_and_never_called_within(string limit, string readings, double shown)
    {
        var answer = Run($$"""{"part": "assembly", "mounted": "offVehicle", "direction": "radial", {{limit}} "readings": {{readings}}}""").Value;
        Number(answer.Body["peakToPeakMillimetres"]).ShouldBe(shown, 1e-9);
        answer.Body["limit"].ShouldNotBeNull();
        answer.Body["withinLimit"].ShouldBeNull();
        answer.No.ShouldBeTrue();
        answer.Body["cautions"]!.AsArray().Select(c => c!.GetValue<string>()).ShouldContain(c => c.Contains("too few or too crowded", StringComparison.Ordinal));
        answer.ForPeople[0].ShouldContain("cannot tell whether it is within");
    }

    [Fact]
    public void What_few_places_showed_above_the_limit_is_not_within()
    {
        var answer = Run("""{"part": "assembly", "direction": "radial", "makerLimit": "1.1 mm", "readings": ["2.566 mm", "2.566 mm", "1.434 mm", "1.434 mm"]}""").Value;
        answer.Body["withinLimit"]!.GetValue<bool>().ShouldBeFalse();
        answer.No.ShouldBeTrue();
    }

    [Fact]
    public void No_limit_known_is_null_with_a_caution()
    {
        var answer = Run($$"""{"part": "wheel", "material": "alloy", "direction": "lateral", {{Eight}}}""").Value;
        answer.Body["withinLimit"].ShouldBeNull();
        answer.Body["limit"].ShouldBeNull();
        answer.No.ShouldBeFalse();
        answer.Body["cautions"]!.AsArray().Select(c => c!.GetValue<string>()).ShouldContain(c => c.Contains("nothing is judged", StringComparison.Ordinal));
    }

    [Fact]
    public void Too_few_places_are_warned_of()
    {
        var answer = Run("""{"part": "tyre", "direction": "radial", "readings": [0.9, 1.0, 0.4, 0.3]}""").Value;
        var warning = answer.Body["warnings"]!.AsArray().First()!;
        warning["code"]!.GetValue<string>().ShouldBe("aliasing");
        warning["order"]!.GetValue<int>().ShouldBe(3);
        answer.Body["harmonics"]![0]!["mayBeOrder"]!.GetValue<int>().ShouldBe(3);
    }

    [Fact]
    public void First_place_and_sense_turn_the_answer()
    {
        double High(string more) => Number(Run($$"""{"part": "tyre", "direction": "radial", {{more}} {{Eight}}}""").Value.Body["harmonics"]![0]!["highPointDegrees"]);
        var plain = High("");
        High("\"first\": 90,").ShouldBe(plain + 90, 1e-9);
        High("\"sense\": \"anticlockwise\",").ShouldBe(360 - plain, 1e-9);
        High("\"sense\": \"anticlockwise\", \"first\": 10,").ShouldBe(10 + 360 - plain, 1e-9);
    }

    [Fact]
    public void A_bad_reading_is_named()
    {
        var answer = Run("""{"part": "wheel", "material": "steel", "direction": "radial", "readings": ["0.50 mm","0.47 mm","0.40 mm","0.30 mm","0.20 mm","0.13 mm","0.90 mm","0.13 mm","0.20 mm","0.30 mm","0.40 mm","0.47 mm"]}""").Value;
        answer.Body["suspect"]!["index"]!.GetValue<int>().ShouldBe(6);
        Number(answer.Body["suspect"]!["angleDegrees"]).ShouldBe(180, 1e-9);
        Number(answer.Body["suspect"]!["expectedMillimetres"]).ShouldBe(0.1, 0.02);
        Number(answer.Body["suspect"]!["firstHarmonicWithout"]!["amplitudeMillimetres"]).ShouldBe(0.2, 0.01);
        answer.Body["warnings"]!.AsArray().Select(w => w!["code"]!.GetValue<string>()).ShouldContain("suspect-reading");
    }

    [Theory]
    [InlineData("""{"direction": "radial", "readings": [1,2,3,4]}""", "part", "missing")]
    [InlineData("""{"part": "tyre", "readings": [1,2,3,4]}""", "direction", "missing")]
    [InlineData("""{"part": "tyre", "direction": "radial"}""", "readings", "missing")]
    [InlineData("""{"part": "tyre", "direction": "radial", "readings": [1,2]}""", "readings", "too-few-places")]
    [InlineData("""{"part": "tyre", "direction": "radial", "orders": 2, "readings": [1,2,3,4]}""", "readings", "too-few-places")]
    [InlineData("""{"part": "tyre", "direction": "radial", "reedings": [1,2,3,4]}""", "readings", "missing")]
    [InlineData("""{"part": "tyre", "direction": "radial", "readings": [1,2,3,"4 bar"]}""", "readings[3]", "unit-unknown")]
    [InlineData("""{"part": "tyre", "direction": "radial", "readings": [{"angle": 1, "value": 1}, {"angle": 1.5, "value": 2}, {"angle": 2, "value": 3}], "first": 3}""", "first", "readings-have-angles")]
    [InlineData("""{"part": "tyre", "direction": "radial", "readings": [{"angle": 1, "value": 1}, {"angle": 1.001, "value": 2}, {"angle": 1.002, "value": 3}]}""", "readings", "places-do-not-tell")]
    [InlineData("""{"part": "tyre", "direction": "radial", "makerLimitSource": "book", "readings": [1,2,3,4]}""", "makerLimit", "missing")]
    [InlineData("""{"part": "assembly", "radial": {"mountings": [{"turn": 0, "readings": [1,2,3,4]}]}}""", "radial.mountings", "too-few-mountings")]
    [InlineData("""{"part": "assembly", "radial": {"mountings": [{"turn": 0, "readings": [1,2,3,4]}, {"turn": 10, "readings": [2,2,3,4]}]}}""", "radial.mountings", "turn-too-small")]
    [InlineData("""{"part": "assembly", "radial": {"repeatability": "0.1 mm", "mountings": [{"turn": 0, "readings": [1,2,3,4]}, {"turn": 180, "readings": [1,2,3,4.01]}]}}""", "radial.mountings", "within-repeatability")]
    [InlineData("""{"part": "assembly", "radial": {"mountings": [{"turn": 90, "readings": [1,2,3,4]}, {"turn": 180, "readings": [2,2,3,4]}]}}""", "radial.mountings[0].turn", "first-mounting-turned")]
    [InlineData("""{"part": "wheel", "direction": "radial", "mountings": [{"turn": 0, "readings": [1,2,3,4]}, {"turn": 180, "readings": [1,2,3,5]}]}""", "part", "mountings-of-a-part")]
    public void Wrong_input_has_its_place_and_code(string body, string where, string code)
    {
        var problem = Run(body).Problem.ShouldNotBeNull();
        problem.Where.ShouldBe(where);
        problem.Code.ShouldBe(code);
    }

    [Fact]
    public void More_than_the_whole_of_another_order_is_told_as_over_a_hundred_per_cent()
    {
        var body = new JsonObject { ["part"] = "assembly", ["direction"] = "radial", ["readings"] = new JsonArray([.. new[] { 0, 12, 25, 40, 55, 70 }.Select(a => (JsonNode?)new JsonObject { ["angle"] = a, ["value"] = "0.1 mm" })]) };
        var leaks = OperationList.Of("runout").Run(FileNode.From(body)).Value.Body["warnings"]!.AsArray().Where(w => w!["code"]!.GetValue<string>() == "leakage").Select(w => w!["message"]!.GetValue<string>()).ToList();
        leaks.ShouldNotBeEmpty();
        leaks.ShouldContain(m => m.StartsWith("With these places over 100 % of order 2 shows up as first harmonic."));
        leaks.ShouldAllBe(m => !System.Text.RegularExpressions.Regex.IsMatch(m, @"[\d,]{4,} %"));
    }

    [Fact]
    public void Parts_from_few_places_in_any_mounting_are_in_doubt()
    {
        // The same assembly with order 3 in it: 0.30 mm at 130° and 0.20 mm at 40°, with 0.05 mm of order 3 that four places take for the first.
        string Mounting(int turn, int places) => $"{{\"turn\": \"{turn}°\", \"readings\": [{string.Join(", ", Enumerable.Range(0, places).Select(i => $"\"{At(turn, 360.0 * i / places):0.000} mm\""))}]}}";
        static double At(int turn, double degrees) =>
            0.6 + (0.3 * Math.Cos((degrees - 130 - turn) * Math.PI / 180)) + (0.2 * Math.Cos((degrees - 40) * Math.PI / 180)) + (0.05 * Math.Cos(3 * degrees * Math.PI / 180));
        Answer Of(int first, int second) => Run($$"""{"part": "assembly", "direction": "radial", "makerLimit": "2 mm", "mountings": [{{Mounting(0, first)}}, {{Mounting(180, second)}}]}""").Value;

        var sound = Of(12, 12);
        sound.No.ShouldBeFalse();
        sound.Body["warnings"]!.AsArray().ShouldBeEmpty();
        foreach (var (first, second) in new[] { (4, 12), (12, 4) })
        {
            var doubtful = Of(first, second);
            doubtful.No.ShouldBeTrue();
            var codes = doubtful.Body["warnings"]!.AsArray().Select(w => w!["code"]!.GetValue<string>()).ToList();
            codes.ShouldContain("aliasing");
            codes.ShouldContain("parts-in-doubt");
            string.Join('\n', doubtful.ForPeople).ShouldContain("neither part nor the turn");
        }

        Of(4, 12).Body["warnings"]![0]!["message"]!.GetValue<string>().ShouldStartWith("Mounting 1: ");
    }
}
