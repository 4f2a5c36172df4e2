using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

public class PressureOperationTests
{
    private static Reading<Answer> Run(string body) => PressureOperation.Operation.Run(FileNode.Parse(body, "body").Value);

    private static JsonObject Body(string body) => Run(body).Value.Body;

    private static double Number(JsonNode? node) => node!.GetValue<double>();

    [Fact]
    public void A_dual_tyre_without_a_dual_index_is_overloaded_above_its_single_load_and_asked_for_below_it()
    {
        // LI 97 = 730 kg.
        var over = Run("""{"rules":"uk","tyre":{"marking":"195/70 R15 97T"},"load":"825 kg","dual":true,"placard":{"cold":"400 kPa"}}""").Value;
        over.No.ShouldBeTrue();
        over.Body["case"]!.GetValue<string>().ShouldBe("overloaded");
        over.Body["cold"].ShouldBeNull();
        over.Body["findings"]!.AsArray().ShouldContain(f => f!["rule"]!.GetValue<string>() == "pressure.overloaded");

        var open = Run("""{"rules":"uk","tyre":{"marking":"195/70 R15 97T"},"load":"700 kg","dual":true}""").Value;
        open.No.ShouldBeFalse();
        open.Body["case"]!.GetValue<string>().ShouldBe("notKnown");
        var cautions = open.Body["cautions"]!.AsArray().Select(c => c!.GetValue<string>()).ToList();
        cautions.Count(c => c.Contains("no load index for dual wheels", StringComparison.Ordinal)).ShouldBe(1);
        cautions.ShouldNotContain(c => c.Contains("nor a load was given", StringComparison.Ordinal));
    }

    private const string OneTyre = """
        {"rules":"uk","tyre":{"marking":"205/55 R16 91V","maximumPressure":"300 kPa"},"load":"450 kg","placard":{"cold":"2.2 bar"},
         "temperature":{"set":"20 °C","used":"0 °C"}}
        """;

    [Fact]
    public void One_tyre_answers_the_four_keys()
    {
        var body = Body(OneTyre);
        Number(body["cold"]!["kilopascals"]).ShouldBe(220, 1e-9);
        Number(body["atTemperature"]!["kilopascals"]).ShouldBe(198.1, 0.05);
        Number(body["warning"]!["kilopascals"]).ShouldBe(176, 1e-9);
        Number(body["seatingLimit"]!["kilopascals"]).ShouldBe(275);
        body["seatingLimit"]!["case"]!.GetValue<string>().ShouldBe("makerValueNotGiven");
        foreach (var key in new[] { "cold", "atTemperature", "warning", "seatingLimit" })
        {
            body[key]!["source"]!.GetValue<string>().ShouldNotBeEmpty();
            body[key]!["status"]!.GetValue<string>().ShouldBeOneOf("read", "second-hand", "from memory", "calculated");
        }

        body["considered"]!.AsArray().Count(l => l!["ruled"]!.GetValue<bool>()).ShouldBe(1);
        body.ContainsKey("positions").ShouldBeFalse();
        Run(OneTyre).Value.No.ShouldBeFalse();
    }

    [Fact]
    public void Wheels_weighed_one_by_one_set_the_axle_for_the_heaviest()
    {
        const string Vehicle = "\"vehicle\":{\"axles\":[{},{}],\"axleLoads\":[\"900 kg\",\"700 kg\"]}";
        string Body4(string left, string right) => $$"""
            { {{Vehicle}},"fitted":[{"position":"1L","tyre":{"marking":"205/55 R16 91V"} {{left}} },{"position":"1R","tyre":{"marking":"205/55 R16 91V"} {{right}} },{"position":"2L","tyre":{"marking":"205/55 R16 91V"} } ] }
            """;
        double[] Loads(string left, string right) => [.. Body(Body4(left, right))["positions"]!.AsArray().Select(p => Number(p!["loadKilograms"]))];
        Loads("", "").ShouldBe([450, 450, 350]);
        Loads(",\"load\":\"520 kg\"", ",\"load\":\"380 kg\"").ShouldBe([520, 520, 350]);
        Loads(",\"load\":\"380 kg\"", "").ShouldBe([450, 450, 350], "the one that was not weighed may carry its equal part");
        Loads(",\"load\":\"520 kg\"", "").ShouldBe([520, 520, 350]);
        Number(Body(Body4(",\"load\":\"520 kg\"", ",\"load\":\"380 kg\""))["cold"]!["kilopascals"]).ShouldBeGreaterThan(Number(Body(Body4("", ""))["cold"]!["kilopascals"]));
    }

    [Fact]
    public void Nothing_known_is_null_with_a_caution()
    {
        var body = Body("""{"tyre":{"marking":"205/55 R16 91V"}}""");
        body["cold"].ShouldBeNull();
        body["atTemperature"].ShouldBeNull();
        body["warning"].ShouldBeNull();
        Number(body["seatingLimit"]!["kilopascals"]).ShouldBe(275);
        body["cautions"]!.AsArray().Select(c => c!.GetValue<string>()).ShouldContain(c => c.Contains("read the placard", StringComparison.Ordinal));
    }

    [Fact]
    public void A_visit_answers_every_position_and_the_first_one_on_top()
    {
        var body = Body("""
            {"rules":"us","vehicle":{"axles":[{"placard":{"size":"205/55 R16 91V","cold":"33 psi"}},{"placard":{"size":"205/55 R16 91V","cold":"30 psi"}}],"axleLoads":["1000 kg","800 kg"]},
             "conditions":{"altitudeSet":"0 m","altitudeUsed":"1500 m"},
             "fitted":[{"position":"2R","tyre":{"marking":"205/55 R16 91V"}},{"position":"1L","tyre":{"marking":"205/55 R16 91V"}}]}
            """);
        body["positions"]!.AsArray().Select(p => p!["position"]!.GetValue<string>()).ShouldBe(["1L", "2R"]);
        Number(body["cold"]!["kilopascals"]).ShouldBe(33 * 6.894757293168361, 1e-9);
        Number(body["positions"]![1]!["cold"]!["kilopascals"]).ShouldBe(30 * 6.894757293168361, 1e-9);
        Number(body["warning"]!["kilopascals"]).ShouldBe(24.75 * 6.894757293168361, 1e-9);
        (Number(body["atTemperature"]!["kilopascals"]) - Number(body["cold"]!["kilopascals"])).ShouldBe(16.8, 0.05);
        Number(body["loadKilograms"]).ShouldBe(500);
    }

    [Fact]
    public void Where_nothing_is_fitted_the_placards_size_stands_in() =>
        Body("""{"vehicle":{"axles":[{"placard":{"size":"205/55 R16 91V","cold":"230 kPa"}}]}}""")["positions"]!.AsArray().Count.ShouldBe(2);

    [Theory]
    [InlineData("""{"tyre":{"marking":"205/55 R16 91V"},"load":"700 kg","placard":{"cold":"230 kPa"}}""", "overloaded")]
    [InlineData("""{"tyre":{"marking":"205/55 R16 91V","maximumPressure":"220 kPa"},"placard":{"cold":"230 kPa"}}""", "limitsConflict")]
    public void No_pressure_is_right_answers_no(string json, string word)
    {
        var answer = Run(json).Value;
        answer.No.ShouldBeTrue();
        answer.Body["cold"].ShouldBeNull();
        answer.Body["case"]!.GetValue<string>().ShouldBe(word);
    }

    [Fact]
    public void The_samples_answer_as_the_guide_says()
    {
        JsonObject Sample(string name) => PressureOperation.Operation.Run(FileNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, name)), name).Value).Value.Body;
        var one = Sample("pressure-one-tyre.json");
        Number(one["cold"]!["kilopascals"]).ShouldBe(240, 1e-9);
        Number(one["atTemperature"]!["kilopascals"]).ShouldBe(205.189, 0.0005);
        Number(one["setHere"]!["kilopascals"]).ShouldBe(278.765, 0.0005);
        Number(one["warning"]!["kilopascals"]).ShouldBe(192, 1e-9);
        Number(one["reading"]!["coldEquivalentKilopascals"]).ShouldBe(241.678, 0.0005);
        var van = Sample("pressure-white-van.json")["positions"]!.AsArray();
        van.Select(p => Number(p!["cold"]!["kilopascals"])).ShouldBe([350, 350, 430, 430]);
        van.Select(p => Number(p!["seatingLimit"]!["kilopascals"])).ShouldBe([275, 275, 250, 250]);
        Number(van[2]!["atTemperature"]!["kilopascals"]).ShouldBe(417.122, 0.0005);
    }

    [Theory]
    [InlineData("""{"tyre":{"marking":"205/55 R16 91V"},"lod":"450 kg"}""", "lod", "key-unknown")]
    [InlineData("""{"tyre":{"marking":"205/55 R16 91V"},"load":"450 bar"}""", "load", "unit-unknown")]
    [InlineData("""{"tyre":{"marking":"205/55 R16 91V"},"temperature":{"set":"20 °C","used":"200 °C"}}""", "temperature.used", "out-of-range")]
    [InlineData("""{"tyre":{"marking":"205/55 R16 91V"},"placard":{"cold":"1,234 kPa"}}""", "placard.cold", "comma-ambiguous")]
    [InlineData("""{"rules":"uk"}""", "fitted", "missing")]
    [InlineData("""{"vehicle":{},"fitted":[]}""", "fitted", "missing")]
    public void Wrong_input_names_its_place(string json, string where, string code)
    {
        var problem = Run(json).Problem!;
        problem.Where.ShouldBe(where);
        problem.Code.ShouldBe(code);
    }

    [Theory]
    [InlineData("205/55 R16 91H", 230, "speed.vehicle", "major")]
    [InlineData("205/55 R16 91H", 210, null, null)]
    [InlineData("205/55 R16 91(Y)", 320, null, null)]
    public void A_top_speed_past_the_tyres_symbol_is_a_finding_as_fitment_grades_it(string marking, int topSpeed, string? rule, string? category)
    {
        var one = Run($$$"""{"tyre":{"marking":"{{{marking}}}"},"load":"450 kg","topSpeed":"{{{topSpeed}}} km/h","placard":{"cold":"220 kPa"}}""").Value;
        var visit = Run($$$"""{"vehicle":{"topSpeed":"{{{topSpeed}}} km/h","axles":[{"placard":{"cold":"220 kPa"}}]},"fitted":[{"position":"1L","tyre":{"marking":"{{{marking}}}"}}]}""").Value;
        foreach (var answer in new[] { one, visit })
        {
            var findings = answer.Body["findings"]!.AsArray().Where(f => f!["rule"]!.GetValue<string>().StartsWith("speed.", StringComparison.Ordinal)).ToList();
            answer.No.ShouldBe(rule is not null);
            findings.Select(f => (f!["rule"]!.GetValue<string>(), f["category"]!.GetValue<string>())).ShouldBe(rule is null ? [] : [(rule, category!)]);
            answer.ForPeople.Any(l => l.StartsWith("major: 1L Fit tyres whose speed symbol covers", StringComparison.Ordinal)).ShouldBe(rule is not null);
            answer.Body["cautions"]!.AsArray().Any(c => c!.GetValue<string>().Contains("its maker's word on it", StringComparison.Ordinal)).ShouldBe(topSpeed == 320);
        }
    }
}
