using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

public sealed class LeakOperationTests
{
    private static Reading<Answer> Run(string body) => FileNode.Parse(body, "leak.json").Then(LeakOperation.Run);

    private static double Number(JsonNode? node) => node!.GetValue<double>();

    private static string Body(string readings, string more = "") =>
        $$"""{"rules":"uk","tyre":{"marking":"205/55 R16 91V"},"placard":{"size":"205/55 R16 91V","cold":"230 kPa"},{{more}}"readings":[{{readings}}]}""";

    private const string Two = """
        {"at":"2026-01-05 08:00","pressure":"230 kPa","temperature":"20 °C"},{"at":"2026-02-04 08:00","pressure":"210 kPa","temperature":"20 °C"}
        """;

    [Fact]
    public void A_leak_is_told_with_its_range_and_the_day_of_the_warning()
    {
        var answer = Run(Body(Two, "\"gauge\":{\"accuracy\":\"2 kPa\",\"repeatability\":\"0.5 kPa\"},\"thermometer\":\"1 K\",")).Value;
        var body = answer.Body;
        body["verdict"]!.GetValue<string>().ShouldBe("leak");
        answer.No.ShouldBeTrue();
        Number(body["lossPerDay"]!["estimateKilopascals"]).ShouldBe(20 / 30d, 1e-12);
        Number(body["lossPerMonth"]!["estimateKilopascals"]).ShouldBe(20 / 30d * 30.4375, 1e-9);
        Number(body["lossPerMonth"]!["lowKilopascals"]).ShouldBeGreaterThan(14);
        Number(body["warning"]!["kilopascals"]).ShouldBe(184, 1e-9);
        Number(body["toWarning"]!["days"]).ShouldBe((210 - 184) / (20 / 30d), 1e-6);
        body["toWarning"]!["date"]!.GetValue<string>().ShouldBe("2026-03-15");
        Number(body["toWarning"]!["earliestDays"]).ShouldBeLessThan(39);
        Number(body["toWarning"]!["latestDays"]).ShouldBeGreaterThan(39);
        body["findings"]!.AsArray().Select(f => f!["rule"]!.GetValue<string>()).ShouldBe(["pressure.loss", "pressure.warning-soon", "pressure.low"]);
    }

    [Fact]
    public void A_cold_snap_is_no_leak_and_the_warning_comes_by_the_cold_alone()
    {
        // 230 kPa at 20 °C is 207.3 at 0 °C by the gas law.
        var body = Run(Body("""
            {"at":"2026-01-05","pressure":"230 kPa","temperature":"20 °C"},{"at":"2026-02-04","pressure":"207.4 kPa","temperature":"0 °C"}
            """, "\"gauge\":{\"accuracy\":\"1 kPa\",\"repeatability\":\"0.3 kPa\"},\"thermometer\":\"0.5 °C\",\"expected\":\"-25 °C\",")).Value.Body;
        Number(body["lossPerMonth"]!["estimateKilopascals"]).ShouldBe(0, 0.2);
        body["verdict"]!.GetValue<string>().ShouldBe("sound");
        Number(body["toWarningExpected"]!["earliestDays"]).ShouldBe(0);
        body["findings"]!.AsArray().ShouldContain(f => f!["rule"]!.GetValue<string>() == "pressure.warning-soon");
    }

    [Fact]
    public void What_was_not_given_is_said()
    {
        var body = Run("""{"readings":[{"at":"2026-01-05","pressure":"230","temperature":"20"},{"at":"2026-01-12","pressure":"229","temperature":"20"}]}""").Value.Body;
        body["warning"].ShouldBeNull();
        body["toWarning"].ShouldBeNull();
        body["verdict"]!.GetValue<string>().ShouldBe("cannotTell");
        var cautions = body["cautions"]!.AsArray().Select(c => c!.GetValue<string>()).ToList();
        foreach (var part in new[] { "gauge's greatest error", "temperatures are known", "No altitude", "noon", "Without the placard's pressure" })
        {
            cautions.ShouldContain(c => c.Contains(part, StringComparison.Ordinal), part);
        }

        Number(body["accuracy"]!["gaugeKilopascals"]).ShouldBe(8);
        body["accuracy"]!["status"]!.GetValue<string>().ShouldBe("from memory");
    }

    [Fact]
    public void A_tyre_run_low_is_looked_at_before_any_air()
    {
        var body = Run(Body("""{"at":"2026-01-05 08:00","pressure":"230 kPa","temperature":"10 °C"},{"at":"2026-01-06 08:00","pressure":"150 kPa","temperature":"10 °C"}""")).Value.Body;
        body["findings"]!.AsArray().ShouldContain(f => f!["rule"]!.GetValue<string>() == "pressure.warning");
        body["verdict"]!.GetValue<string>().ShouldBe("leak");
        body["toWarning"]!["reached"]!.GetValue<bool>().ShouldBeTrue();
    }

    [Theory]
    [InlineData("")]
    [InlineData(""","filled":true},{"at":"2026-01-07 08:00","pressure":"229 kPa","temperature":"10 °C" """)]
    public void A_flat_tyre_is_run_low_with_no_placard_and_with_air_let_in_since(string after)
    {
        var later = after.Length == 0 ? "" : """,{"at":"2026-01-06 12:00","pressure":"230 kPa","temperature":"10 °C" """ + after + "}";
        var answer = Run("""{"tyre":{"marking":"205/55 R16 91V"},"readings":[{"at":"2026-01-05 08:00","pressure":"230 kPa","temperature":"10 °C"},{"at":"2026-01-06 08:00","pressure":"0","temperature":"10 °C"}""" + later + "]}").Value;
        answer.No.ShouldBeTrue();
        var finding = answer.Body["findings"]!.AsArray().Single(f => f!["rule"]!.GetValue<string>() == "pressure.flat")!;
        finding["action"]!.GetValue<string>().ShouldContain("Put no air in");
        answer.Body["cautions"]!.AsArray().ShouldContain(c => c!.GetValue<string>().Contains("at least what the readings tell", StringComparison.Ordinal));
    }

    [Fact]
    public void A_flat_tyre_is_told_once_is_never_sound_and_a_lorrys_asks_for_the_restraining_device()
    {
        const string Years = """{"at":"2022-01-05 08:00","pressure":"230 kPa","temperature":"10 °C"},{"at":"2026-01-06 08:00","pressure":"0","temperature":"10 °C"}""";
        var body = Run(Body(Years)).Value.Body;
        body["verdict"]!.GetValue<string>().ShouldBe("cannotTell");
        body["findings"]!.AsArray().Count(f => f!["rule"]!.GetValue<string>() == "pressure.flat").ShouldBe(1);
        var lorry = Run($$"""{"tyre":{"marking":"315/80 R22.5 156/150L"},"readings":[{{Years}}]}""").Value.Body;
        lorry["cautions"]!.AsArray().ShouldContain(c => c!.GetValue<string>().Contains("restraining device", StringComparison.Ordinal));
        body["cautions"]!.AsArray().ShouldNotContain(c => c!.GetValue<string>().Contains("restraining device", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("""{"at":"2026-01-05","pressure":"0","temperature":"20 °C"},{"at":"2026-01-06","pressure":"0","temperature":"20 °C"}""", "", "readings[1].filled")]
    [InlineData("""{"at":"2026-01-05","pressure":"-5 kPa","temperature":"20 °C"},{"at":"2026-01-06","pressure":"230 kPa","temperature":"20 °C"}""", "", "readings[0].pressure")]
    [InlineData("", "", "readings")]
    [InlineData("""{"at":"2026-01-05","pressure":"230 kPa","temperature":"20 °C"}""", "", "readings")]
    [InlineData("""{"at":"2026-01-05","pressure":"230 kPa","temperature":"20 °C"},{"at":"2026-01-05","pressure":"230 kPa","temperature":"20 °C"}""", "", "readings[1].at")]
    [InlineData("""{"at":"5 January","pressure":"230 kPa","temperature":"20 °C"},{"at":"2026-01-06","pressure":"230 kPa","temperature":"20 °C"}""", "", "readings[0].at")]
    [InlineData("""{"at":"2026-01-05","pressure":"230 kPa"},{"at":"2026-01-06","pressure":"230 kPa","temperature":"20 °C"}""", "", "readings[0].temperature")]
    [InlineData("""{"at":"2026-01-05","pressure":"230 kPa","temperature":"20 °C","altitude":"100 m"},{"at":"2026-01-06","pressure":"230 kPa","temperature":"20 °C"}""", "", "readings[1].altitude")]
    [InlineData("""{"at":"2026-01-05","pressure":"2.3","temperature":"20 °C"},{"at":"2026-01-06","pressure":"230 kPa","temperature":"20 °C"}""", "", "readings[0].pressure")]
    [InlineData(Two, "\"gauge\":{\"accuracy\":\"1 kPa\",\"repeatability\":\"2 kPa\"},", "gauge.repeatability")]
    [InlineData(Two, "\"thermometer\":\"1 bar\",", "thermometer")]
    [InlineData(Two, "\"guage\":{},", "guage")]
    public void Wrong_input_is_one_problem_with_its_place(string readings, string more, string where)
    {
        var read = Run(Body(readings, more));
        read.IsRead.ShouldBeFalse();
        read.Problem!.Where.ShouldBe(where);
        read.Problem.Message.Length.ShouldBeGreaterThan(20);
    }

    [Theory]
    [InlineData("leak-slow-valve.json", "leak", 19.73, 68)]
    [InlineData("leak-cold-snap.json", "sound", 4.2, 378)]
    public void The_samples_answer_as_the_guide_says(string name, string verdict, double perMonth, double days)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!Directory.Exists(Path.Combine(folder.FullName, "samples")))
        {
            folder = folder.Parent!;
        }

        var body = Run(File.ReadAllText(Path.Combine(folder.FullName, "samples", name))).Value.Body;
        body["verdict"]!.GetValue<string>().ShouldBe(verdict);
        Number(body["lossPerMonth"]!["estimateKilopascals"]).ShouldBe(perMonth, 0.05);
        Number(body["toWarning"]!["days"]).ShouldBe(days, 0.5);
    }

    [Fact]
    public void A_trucks_loss_is_held_against_a_share_of_its_pressure_and_no_car_tyres_limit()
    {
        static JsonObject Lorry(double months) => Run($$$"""{"tyre":{"marking":"295/80 R22.5 152/148M"},"readings":[{"at":"2026-01-05 08:00","pressure":"840 kPa","temperature":"10 °C"},{"at":"2026-{{{(int)months + 1:00}}}-04 08:00","pressure":"{{{840 - (25 * months)}}} kPa","temperature":"10 °C"}],"gauge":{"accuracy":"1 kPa"}}""").Value.Body;
        var body = Lorry(2);
        ((double)body["look"]!["value"]!).ShouldBe(14 * 840.0 / 350, 1e-9);
        ((string)body["look"]!["status"]!).ShouldBe("calculated");
        body["verdict"]!.GetValue<string>().ShouldNotBe("leak");
        body["cautions"]!.AsArray().ShouldContain(c => ((string)c!).Contains("in proportion to the pressure", StringComparison.Ordinal));
    }
}
