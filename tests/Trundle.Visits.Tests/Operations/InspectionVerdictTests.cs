using System.Text.Json.Nodes;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

/// <summary>The keys of an inspection as they are read, and the verdicts in the answer of <c>inspect</c> and <c>visit check</c>.</summary>
public sealed class InspectionVerdictTests
{
    private const string Known = """ "repaired":false,"repairPolicy":"permitted","ranLow":false """;

    [Fact]
    public void Every_key_is_read()
    {
        var problems = new List<Problem>();
        var right = VisitFileReader.Read(FileNode.Parse(Files.InventedVisit.Json, "visit.json").Value, problems).Subject.At(Position.Read("1R").Value)!;
        problems.ShouldBeEmpty();
        var history = right.Tyre!.History;
        (history.Policy, history.PolicyText, history.RunFlat, history.SelfSealing, history.RanLow).ShouldBe((RepairPolicy.Permitted, "maker's leaflet of 2025", true, false, true));
        history.RanLowDistance!.Value.Kilometres.ShouldBe(3, 1e-9);
        history.RanLowTime.ShouldBe(TimeSpan.FromMinutes(12));
        history.Repairs!.ShouldHaveSingleItem().ShouldBe(new EarlierRepair(DamagePlace.Tread, Length.FromMillimetres(4), RepairMethod.StemAndPatch));
        var puncture = right.Damage[0];
        new[] { puncture.Lean!.Value.Degrees, puncture.FromMiddle!.Value.Millimetres, puncture.FromRepair!.Value.Millimetres, puncture.RoundFromRepair!.Value.Degrees }.ShouldBe([20, 30, 450, 120], 1e-9);
        right.Damage[1].Depth!.Value.Inches.ShouldBe(0.0625, 1e-12);
        right.Damage[1].CordShows.ShouldBe(false);
        right.Damage[2].Joined.ShouldBe(true);
        right.Wheel!.Damage.Select(d => d.Kind).ShouldBe([WheelDamageKind.BentFlange, WheelDamageKind.Corrosion]);
        right.Wheel.MultiPiece.ShouldBe(false);
        (right.Valve!.Kind, right.Valve.State, right.Valve.Renewed, right.Valve.Cap).ShouldBe((ValveKind.RubberSnapIn, ValveState.Cracked, new DateOnly(2019, 5, 2), false));
        right.Valve.Rating!.Value.Kilopascals.ShouldBe(448.2, 0.1);
        right.SensorParts.ShouldBe(new SensorParts(SensorBattery.Low, true, false));
    }

    [Theory]
    [InlineData("12 min", 12)]
    [InlineData("1.5 h", 90)]
    [InlineData("1,5 hours", 90)]
    [InlineData("20", 20)]
    public void A_time_is_read_in_minutes_or_hours(string typed, double minutes) => InspectionFileReader.ReadTime(typed).Value.TotalMinutes.ShouldBe(minutes, 1e-9);

    [Theory]
    [InlineData("\"tyre\":{\"ranLowTime\":\"12 parsec\"}", "fitted[0].tyre.ranLowTime")]
    [InlineData("\"tyre\":{\"ranLowTime\":\"900 h\"}", "fitted[0].tyre.ranLowTime")]
    [InlineData("\"tyre\":{\"repairPolicy\":\"maybe\"}", "fitted[0].tyre.repairPolicy")]
    [InlineData("\"tyre\":{\"repaired\":false,\"repairs\":[{\"place\":\"tread\"}]}", "fitted[0].tyre.repaired")]
    [InlineData("\"tyre\":{\"repairs\":[{\"method\":\"plug\"}]}", "fitted[0].tyre.repairs[0].place")]
    [InlineData("\"damage\":[{\"kind\":\"hole\",\"place\":\"tread\"}]", "fitted[0].damage[0].kind")]
    [InlineData("\"damage\":[{\"kind\":\"puncture\",\"place\":\"tread\",\"lean\":\"120°\"}]", "fitted[0].damage[0].lean")]
    [InlineData("\"damage\":[{\"kind\":\"puncture\",\"place\":\"tread\",\"fromMidle\":\"3 mm\"}]", "fitted[0].damage[0].fromMidle")]
    [InlineData("\"wheel\":{\"damage\":[{\"size\":\"3 mm\"}]}", "fitted[0].wheel.damage[0].kind")]
    [InlineData("\"valve\":{\"kind\":\"wooden\"}", "fitted[0].valve.kind")]
    [InlineData("\"valve\":{\"rating\":\"3 kg\"}", "fitted[0].valve.rating")]
    [InlineData("\"sensorParts\":{\"battery\":\"empty\"}", "fitted[0].sensorParts.battery")]
    public void What_cannot_be_meant_is_said_at_its_place(string part, string where)
    {
        var problems = new List<Problem>();
        VisitFileReader.Read(FileNode.Parse($$"""{"fitted":[{"position":"1L",{{part}}}]}""", "file").Value, problems);
        problems.Select(p => p.Where).ShouldContain(where);
    }

    [Fact]
    public void Asked_and_not_known_is_as_if_nobody_had_asked()
    {
        var answer = Inspect("""{"marking":"195/65 R15 91H","repairPolicy":"not known","runFlat":true}""", """{"kind":"puncture","place":"tread","size":"3 mm"}""");
        Text(Part(answer, "tyre")["verdict"]).ShouldBe("refer");
        Part(answer, "tyre")["asked"]!.AsArray().Select(a => Text(a!["what"])).ShouldContain("the tyre maker's repair policy: permitted, or not permitted");
    }

    [Theory]
    [InlineData("""{"kind":"puncture","place":"tread","size":"4 mm","fromMiddle":"30 mm"}""", "repair", "damage.puncture.crown")]
    [InlineData("""{"kind":"puncture","place":"tread","size":"4 mm","fromMiddle":"64 mm"}""", "discard", "damage.puncture.edge")]
    [InlineData("""{"kind":"puncture","place":"shoulder","size":"4 mm"}""", "discard", "damage.puncture.side")]
    [InlineData("""{"kind":"cut","place":"sidewall","size":"8 mm","depth":"1 mm"}""", "may run", "damage.cut.shallow")]
    [InlineData("""{"kind":"cut","place":"sidewall","size":"8 mm","depth":"2 mm"}""", "discard", "damage.cut.deep")]
    [InlineData("""{"kind":"cut","place":"sidewall","size":"8 mm"}""", "refer", "damage.cut.side")]
    [InlineData("""{"kind":"crack","place":"sidewall","depth":"1 mm","joined":true}""", "discard", "damage.crack.deep")]
    public void Each_damage_and_its_tyre_have_a_verdict_with_reasons_and_sources(string damage, string verdict, string rule)
    {
        var tyre = Part(Inspect($$"""{"marking":"195/65 R15 91H",{{Known}}}""", damage), "tyre");
        Text(tyre["verdict"]).ShouldBe(verdict);
        var one = tyre["damage"]!.AsArray().ShouldHaveSingleItem()!;
        Text(one["verdict"]).ShouldBe(verdict);
        var reason = one["reasons"]![0]!;
        (Text(reason["rule"]), Text(reason["verdict"])).ShouldBe((rule, verdict));
        Text(reason["source"]).ShouldNotBeNullOrWhiteSpace();
        Text(reason["status"]).ShouldBeOneOf("read", "second-hand", "from memory", "calculated");
        if (rule is not "damage.puncture.side")
        {
            Text(reason["limit"]!["source"]).ShouldNotBeNullOrWhiteSpace();
        }
    }

    [Fact]
    public void Wheel_valve_and_sensor_have_theirs()
    {
        var answer = OperationList.Of("inspect").Run(FileNode.Parse(Files.InventedVisit.Json, "visit.json").Value).Value;
        var at = answer.Body["verdicts"]!.AsArray().Where(v => Text(v!["position"]) == "1R").ToDictionary(v => Text(v!["part"])!, v => Text(v!["verdict"]));
        at.ShouldBe(new Dictionary<string, string?> { ["tyre"] = "discard", ["wheel"] = "refer", ["valve"] = "renew", ["sensor"] = "renew" }, ignoreOrder: true);
        answer.ForPeople.ShouldContain(l => l.StartsWith("renew     1R      valve: ", StringComparison.Ordinal));
        answer.ForPeople.ShouldContain(l => l.StartsWith("may run   wheel: ", StringComparison.Ordinal));

        var visit = OperationList.Of("visit check").Run(FileNode.Parse(Files.InventedVisit.Json, "visit.json").Value).Value;
        visit.Body["legs"]!["lookOver"]!["inspect"]!["verdicts"]!.ToJsonString().ShouldBe(answer.Body["verdicts"]!.ToJsonString());
    }

    [Fact]
    public void The_sample_of_a_van_has_every_verdict()
    {
        var sample = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "inspect-amber-van.json"));
        var answer = OperationList.Of("inspect").Run(FileNode.Parse(sample, "sample").Value).Value;
        answer.Body["verdicts"]!.AsArray().Select(v => $"{Text(v!["position"])} {Text(v["part"])}: {Text(v["verdict"])}").ShouldBe(
            ["1L tyre: repair", "1L valve: may run", "1R tyre: put right", "1R wheel: renew", "2L tyre: discard", "2L valve: renew", "2R tyre: may run", "2R wheel: refer", "2R sensor: renew"]);
        answer.Body["verdicts"]!.AsArray().Single(v => Text(v!["position"]) == "1L" && Text(v["part"]) == "tyre")!["asked"]!.AsArray().ShouldBeEmpty();
    }

    /// <summary>A new tyre takes the damages of the old one away; a valve that was renewed with it takes the old valve's place, one that was not stays.</summary>
    [Theory]
    [InlineData("", true)]
    [InlineData(""","valve":{"kind":"rubber-snap-in","state":"sound"}""", false)]
    public void The_vehicle_leaves_with_what_was_renewed(string valve, bool stays)
    {
        var file = JsonNode.Parse(Files.InventedVisit.Json)!.AsObject();
        file["work"] = JsonNode.Parse("{\"jobs\":{\"1R\":\"demount\"},\"renewed\":{\"1R\":{\"tyre\":{\"marking\":\"195/65 R15 91H\"}" + valve + "}}}");
        var leaving = OperationList.Of("visit check").Run(FileNode.From(file)).Value.Body["findings"]!.AsArray().Where(f => Text(f!["position"]) == "1R").Select(f => Text(f!["rule"])).ToList();
        leaving.Where(r => r!.StartsWith("damage.", StringComparison.Ordinal)).ShouldBeEmpty();
        leaving.Contains("wheel.corrosion").ShouldBeTrue();
        Finding("valve.state").ShouldBe(stays ? "major" : "none");

        string Finding(string rule) => Text(OperationList.Of("visit check").Run(FileNode.From(file)).Value.Body["findings"]!.AsArray().Single(f => Text(f!["position"]) == "1R" && Text(f["rule"]) == rule)!["category"])!;
    }

    private static Answer Inspect(string tyre, string damage) => OperationList.Of("inspect").Run(FileNode.Parse($$"""{"rules":"uk","vehicle":{"axles":[{}]},"fitted":[{"position":"1L","tyre":{{tyre}},"damage":[{{damage}}]}]}""", "file").Value).Value;

    private static JsonNode Part(Answer answer, string part) => answer.Body["verdicts"]!.AsArray().Single(v => Text(v!["part"]) == part)!;

    private static string? Text(JsonNode? node) => (string?)node;
}
