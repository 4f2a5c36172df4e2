using System.Text.Json.Nodes;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

/// <summary>One answer of every operation: a pressure above any that a car tyre is listed with (240 to 350 kPa, MAX PRESS by 49 CFR 571.139, from memory), a wheel that is missing, a tyre without air.</summary>
public sealed class TradeLimitsTests
{
    private static Answer Ask(string operation, string body) => OperationList.Of(operation).Run(FileNode.Parse(body, "visit.json").Value).Value;

    private static string Wheel(string position, string pressure, string marking = "195/65 R15 91H") =>
        $$$"""{"position":"{{{position}}}","tyre":{"marking":"{{{marking}}}"},"wheel":{"rim":"6J x 15"},"tread":{"inner":["6 mm"],"centre":["6 mm"],"outer":["6 mm"]},"pressure":{"value":"{{{pressure}}}","temperature":"18 °C","hot":false}}""";

    private static string Car(string pressure, string placard = "230 kPa", string[]? places = null, string rules = "uk") => $$$"""
        {"rules":"{{{rules}}}","date":"2026-03-14","vehicle":{"name":"Grey saloon","class":"car","drive":"front","axles":[
          {"steered":true,"driven":true,"dual":false,"placard":{"size":"195/65 R15 91H","cold":"{{{placard}}}"}},{"steered":false,"driven":false,"dual":false,"placard":{"size":"195/65 R15 91H","cold":"{{{placard}}}"}}]},
         "fitted":[{{{string.Join(",", (places ?? ["1L", "1R", "2L", "2R"]).Select(p => Wheel(p, p == "1L" ? pressure : placard)))}}}]}
        """;

    private static IEnumerable<string> Rules(Answer answer, string? position = "1L") =>
        answer.Body["findings"]!.AsArray().Where(f => (string?)f!["position"] == position && (string)f["category"]! is "refer" or "major" or "dangerous").Select(f => (string)f!["rule"]!);

    [Theory]
    [InlineData("450 kPa")]
    [InlineData("600 kPa")]
    public void A_pressure_above_any_car_tyres_is_a_finding_where_the_sidewalls_own_was_not_entered(string pressure)
    {
        foreach (var operation in new[] { "inspect", "pressure" })
        {
            var answer = Ask(operation, Car(pressure));
            answer.No.ShouldBeTrue(operation);
            Rules(answer).ShouldContain("pressure.above-class", operation);
            var finding = answer.Body["findings"]!.AsArray().Single(f => (string)f!["rule"]! == "pressure.above-class")!;
            ((double)finding["limit"]!["value"]!).ShouldBe(350);
            ((string)finding["limit"]!["status"]!).ShouldBe("from memory");
        }

        Ask("inspect", Car(pressure)).Body["needs"]!.AsArray().ShouldContain(n => (string?)n!["position"] == "1L" && ((string)n["what"]!).Contains("MAX PRESS", StringComparison.Ordinal));
        Ask("inspect", Car(pressure)).Body["verdicts"]!.AsArray().Single(v => (string)v!["position"]! == "1L" && (string)v["part"]! == "tyre")!["asked"]!.AsArray()
            .ShouldContain(n => ((string)n!["what"]!).Contains("MAX PRESS", StringComparison.Ordinal));
        Ask("inspect", Car("230 kPa")).No.ShouldBeFalse();
        var rotated = Ask("rotate", Car(pressure));
        rotated.No.ShouldBeTrue();
        rotated.Body["keptOut"]!.AsArray().ShouldContain(k => (string)k!["position"]! == "1L");
        Ask("rotate", Car("230 kPa")).Body["keptOut"]!.AsArray().ShouldBeEmpty();
    }

    [Fact]
    public void A_placard_above_any_car_tyres_is_doubted_and_never_told_as_the_cold_pressure()
    {
        var pressure = Ask("pressure", Car("900 kPa", "900 kPa"));
        pressure.No.ShouldBeTrue();
        pressure.Body["positions"]!.AsArray().ShouldAllBe(p => p!["cold"] == null);
        pressure.Body["positions"]!.AsArray().ShouldAllBe(p => (string)p!["case"]! == "limitsConflict");
        Rules(pressure).ShouldBe(["pressure.limits-conflict", "pressure.placard-doubt", "pressure.above-class"], ignoreOrder: true);
        Rules(Ask("inspect", Car("900 kPa", "900 kPa"))).ShouldContain("pressure.placard-doubt");
    }

    [Fact]
    public void A_car_with_three_tyres_is_told_of_the_fourth_by_inspect_and_pressure()
    {
        foreach (var operation in new[] { "inspect", "pressure", "fitment" })
        {
            var answer = Ask(operation, Car("230 kPa", places: ["1L", "1R", "2L"]));
            answer.No.ShouldBeTrue(operation);
            answer.Body["findings"]!.AsArray().Single(f => (string)f!["rule"]! == "axle.wheel-missing")!["position"]!.GetValue<string>().ShouldBe("2R");
        }

        // One wheel alone is a wheel looked at, and no vehicle.
        Ask("inspect", Car("230 kPa", places: ["1L"])).Body["findings"]!.AsArray().ShouldNotContain(f => (string)f!["rule"]! == "axle.wheel-missing");
    }

    [Fact]
    public void A_lone_outer_of_a_dual_pair_is_judged_at_the_whole_load_of_the_pair()
    {
        static string Lorry(params string[] places) => $$$"""
            {"rules":"uk","date":"2026-03-14","vehicle":{"name":"Copper lorry","class":"goods over 3500 kg","drive":"rear","axleLoads":["7000 kg","12500 kg"],"axles":[
              {"steered":true,"driven":false,"dual":false,"placard":{"size":"295/80 R22.5 152/148M","cold":"850 kPa"}},{"steered":false,"driven":true,"dual":true,"placard":{"size":"295/80 R22.5 152/148M","cold":"800 kPa"}}]},
             "fitted":[{{{string.Join(",", places.Select(p => Wheel(p, p[0] == '1' ? "850 kPa" : "800 kPa", "295/80 R22.5 152/148M").Replace("6J x 15", "22.5x8.25", StringComparison.Ordinal)))}}}]}
            """;
        // LI 148 is 3150 kg: a quarter of 12 500 kg is borne, half of it is not.
        var whole = Ask("pressure", Lorry("1L", "1R", "2Li", "2Lo", "2Ri", "2Ro"));
        Rules(whole, "2Lo").ShouldBeEmpty();
        var pressure = Ask("pressure", Lorry("1L", "1R", "2Lo", "2Ri", "2Ro"));
        Rules(pressure, "2Li").ShouldBe(["axle.wheel-missing"]);
        Rules(pressure, "2Lo").ShouldContain("pressure.overloaded");
        ((double)pressure.Body["positions"]!.AsArray().Single(p => (string)p!["position"]! == "2Lo")!["loadKilograms"]!).ShouldBe(6250, 1e-9);
        Rules(pressure, "2Ro").ShouldBeEmpty();
        var inspect = Ask("inspect", Lorry("1L", "1R", "2Lo", "2Ri", "2Ro"));
        Rules(inspect, "2Li").ShouldBe(["axle.wheel-missing"]);
        Rules(inspect, "2Lo").ShouldContain("load.axle");
        ((double)inspect.Body["findings"]!.AsArray().Single(f => (string)f!["rule"]! == "load.axle" && (string?)f["position"] == "2Lo")!["limit"]!["value"]!).ShouldBe(6250, 1e-9);
    }

    [Theory]
    [InlineData("uk")]
    [InlineData("eu")]
    [InlineData("us")]
    public void A_tyre_without_air_and_one_that_ran_low_have_one_answer_everywhere(string rules)
    {
        foreach (var (found, rule) in new[] { ("0 kPa", "pressure.flat"), ("150 kPa", "pressure.warning"), ("180 kPa", "pressure.run-low") })
        {
            var answers = new[] { "inspect", "pressure" }.Select(o => Ask(o, Car(found, rules: rules)).Body["findings"]!.AsArray().Single(f => (string?)f!["position"] == "1L" && (string)f["rule"]! == rule)!).ToList();
            answers.Select(f => ((string)f["category"]!, (string)f["source"]!, (string)f["action"]!)).Distinct().Count().ShouldBe(1);
            Rules(Ask("inspect", Car(found, rules: rules))).Count(r => r.StartsWith("pressure.", StringComparison.Ordinal)).ShouldBe(1);
        }

        var limit = (string)Ask("inspect", Car("150 kPa", rules: rules)).Body["findings"]!.AsArray().Single(f => (string)f!["rule"]! == "pressure.warning")!["limit"]!["source"]!;
        limit.Contains("taken as guidance", StringComparison.Ordinal).ShouldBe(rules != "us");
        var leak = Ask("leak", """{"tyre":{"marking":"195/65 R15 91H"},"readings":[{"at":"2026-01-05 08:00","pressure":"230 kPa","temperature":"10 °C"},{"at":"2026-01-06 08:00","pressure":"0","temperature":"10 °C"}]}""");
        ((string)leak.Body["findings"]!.AsArray().Single(f => (string)f!["rule"]! == "pressure.flat")!["category"]!).ShouldBe("major");
    }

    [Fact]
    public void A_temporary_spare_on_the_road_and_a_placard_too_slow_for_the_vehicle_stand_with_the_pressures()
    {
        var spare = Ask("pressure", Car("230 kPa").Replace("\"axles\"", "\"spare\":{\"placard\":{\"size\":\"T125/70 D16 96M\",\"cold\":\"420 kPa\"}},\"axles\"", StringComparison.Ordinal)
            .Replace("\"1L\",\"tyre\":{\"marking\":\"195/65 R15 91H\"", "\"1L\",\"tyre\":{\"marking\":\"T125/70 D16 96M\"", StringComparison.Ordinal).Replace("\"value\":\"230 kPa\"", "\"value\":\"420 kPa\"", StringComparison.Ordinal));
        Rules(spare).ShouldContain("spare.in-use");

        // H is 210 km/h.
        var bare = """{"rules":"uk","vehicle":{"name":"Grey saloon","class":"car","topSpeed":"220 km/h","axles":[{"steered":true,"driven":true,"dual":false,"placard":{"size":"195/65 R15 91H","cold":"230 kPa"}}]}}""";
        Rules(Ask("pressure", bare)).ShouldBe(["speed.vehicle"]);
        Ask("pressure", bare.Replace("220", "210", StringComparison.Ordinal)).No.ShouldBeFalse();
    }

    [Fact]
    public void A_minor_finding_of_speed_is_said_in_the_text_too()
    {
        var winter = Ask("pressure", Car("230 kPa").Replace("\"marking\":\"195/65 R15 91H\"", "\"marking\":\"195/65 R15 91T\",\"marks\":[\"M+S\"]", StringComparison.Ordinal));
        winter.No.ShouldBeFalse();
        winter.Body["findings"]!.AsArray().ShouldContain(f => (string)f!["rule"]! == "speed.winter" && (string)f["category"]! == "minor");
        winter.ForPeople.ShouldContain(l => l.StartsWith("minor: 1L", StringComparison.Ordinal));
    }

    [Fact]
    public void A_valve_renewed_after_the_files_date_is_refused_with_its_place()
    {
        var read = OperationList.Of("inspect").Run(FileNode.Parse(Car("230 kPa").Replace("\"position\":\"1R\"", "\"position\":\"1R\",\"valve\":{\"renewed\":\"2026-03-15\"}", StringComparison.Ordinal), "visit.json").Value);
        (read.Problem!.Where, read.Problem.Code).ShouldBe(("fitted[1].valve.renewed", "in-future"));
        var problems = new List<Trundle.Measures.Problem>();
        Trundle.Visits.Bay.VisitStanding.Of(FileNode.Parse("""{"date":"2026-03-14","work":{"renewed":{"1L":{"valve":{"kind":"clamp-in","renewed":"2026-03-15"}}}}}""", "visit.json").Value, problems);
        problems.ShouldHaveSingleItem().Where.ShouldBe("work.renewed.1L.valve.renewed");
    }
}
