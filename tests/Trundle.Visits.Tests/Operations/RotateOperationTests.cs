using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

public class RotateOperationTests
{
    private static Reading<Answer> Run(string body, string? ahead = null)
    {
        var node = FileNode.Parse(body, "body").Value;
        return RotateOperation.Operation.Run(ahead is null ? node : node.With("ahead", FileNode.From(new JsonObject { ["value"] = ahead }).Member("value")!));
    }

    private static string Car(string drive = "front", string tyre = "\"marking\":\"205/55 R16 91V\"", string? maker = null, string rotation = "", double depth = 8, string rear = "")
    {
        var fitted = string.Join(",", new[] { "1L", "1R", "2L", "2R" }.Select(p =>
            $"{{\"position\":\"{p}\",\"tyre\":{{{(p[0] == '2' && rear.Length > 0 ? rear : tyre)}}},\"tread\":{{\"centre\":[\"{depth.ToString(System.Globalization.CultureInfo.InvariantCulture)} mm\"]}}}}"));
        return $"{{\"rules\":\"uk\",\"vehicle\":{{\"drive\":\"{drive}\",\"makerRotation\":{(maker is null ? "null" : $"\"{maker}\"")},\"odometer\":\"48200 km\",\"axles\":[{{\"placard\":{{\"cold\":\"230 kPa\"}}}},{{\"placard\":{{\"cold\":\"210 kPa\"}}}}]}},\"fitted\":[{fitted}]{rotation}}}";
    }

    private const string Wear = ",\"rotation\":{\"wear\":{\"1L\":\"0.14 mm\",\"1R\":0.14,\"2L\":\"0.07 mm\",\"2R\":\"0,07 mm\"},\"interval\":\"10000 km\"}";

    [Fact]
    public void A_front_driven_car_crosses_its_rear_tyres_to_the_front()
    {
        var answer = Run(Car()).Value;
        answer.No.ShouldBeFalse();
        answer.Body["pattern"]!.GetValue<string>().ShouldBe("forward cross");
        answer.Body["moves"]!.AsArray().Select(m => $"{m!["from"]}>{m["to"]}").Order().ShouldBe(["1L>2L", "1R>2R", "2L>1R", "2R>1L"]);
        answer.Body["moves"]!.AsArray().ShouldAllBe(m => !m!["remount"]!.GetValue<bool>());
        answer.Body["lift"]!.AsArray().Select(s => s!["do"]!.GetValue<string>()).ShouldBe(["off", "move", "move", "move", "on"]);
        answer.Body["setPressures"]!.AsArray().Select(p => p!["pressureKilopascals"]!.GetValue<double>()).ShouldBe([230, 230, 210, 210]);
        answer.Body.ContainsKey("schedule").ShouldBeFalse();
    }

    [Fact]
    public void Refused_patterns_name_their_reason()
    {
        var body = Run(Car(tyre: "\"marking\":\"205/55 R16 91V\",\"directional\":true")).Value.Body;
        body["pattern"]!.GetValue<string>().ShouldBe("front-to-rear");
        var cross = body["refused"]!.AsArray().Single(r => r!["pattern"]!.GetValue<string>() == "forward cross")!;
        cross["reasons"]!.AsArray().Select(r => r!.GetValue<string>()).ShouldBe(["direction"]);
        cross["why"]!.GetValue<string>().ShouldContain("against its arrow");
    }

    [Fact]
    public void Nothing_allowed_answers_no()
    {
        var answer = Run(Car(tyre: "\"marking\":\"205/55 R16 91V\",\"condemned\":true")).Value;
        answer.No.ShouldBeTrue();
        answer.Body["pattern"].ShouldBeNull();
        answer.Body["moves"]!.AsArray().ShouldBeEmpty();
        answer.Body["refused"]!.AsArray().ShouldNotBeEmpty();
    }

    /// <summary>Bulged, corded, referred or condemned: status 1, never moved, and the tyre is named with what comes first.</summary>
    [Theory]
    [InlineData("bulge", "replace-first", true)]
    [InlineData("cord", "replace-first", true)]
    [InlineData("other", "refer-first", false)]
    public void A_damaged_tyre_is_kept_out_and_the_answer_is_no(string kind, string reason, bool replace)
    {
        var body = Car(rotation: Wear).Replace("\"position\":\"2L\",", $"\"position\":\"2L\",\"damage\":[{{\"kind\":\"{kind}\",\"place\":\"sidewall\"}}],", StringComparison.Ordinal);
        var answer = Run(body, "30000 km").Value;
        answer.No.ShouldBeTrue();
        answer.Body["moves"]!.AsArray().ShouldNotContain(m => m!["from"]!.GetValue<string>() == "2L" || m["to"]!.GetValue<string>() == "2L");
        var kept = answer.Body["keptOut"]!.AsArray().ShouldHaveSingleItem()!;
        kept["position"]!.GetValue<string>().ShouldBe("2L");
        kept["reason"]!.GetValue<string>().ShouldBe(reason);
        kept["replaceFirst"]!.GetValue<bool>().ShouldBe(replace);
        kept["why"]!.GetValue<string>().ShouldContain("replace", Case.Insensitive);
        answer.ForPeople.ShouldContain(l => l.StartsWith("Kept out: The tyre at 2L", StringComparison.Ordinal));
        if (replace)
        {
            answer.Body["firstReplacementKilometres"]!.GetValue<double>().ShouldBe(0);
            answer.Body["schedule"]!.AsArray().ShouldBeEmpty();
        }
    }

    [Fact]
    public void A_spare_that_is_kept_out_is_an_answer_of_no_though_the_four_may_move()
    {
        var body = Car().Replace("\"fitted\":[", "\"fitted\":[{\"position\":\"S\",\"tyre\":{\"marking\":\"205/55 R16 91V\"},\"damage\":[{\"kind\":\"bulge\",\"place\":\"sidewall\"}]},", StringComparison.Ordinal);
        var answer = Run(body).Value;
        answer.Body["pattern"]!.GetValue<string>().ShouldBe("forward cross");
        answer.No.ShouldBeTrue();
    }

    [Fact]
    public void Looking_ahead_gives_schedule_and_distances()
    {
        var body = Run(Car(rotation: Wear), "30000 km").Value.Body;
        body["schedule"]!.AsArray().Select(s => s!["afterKilometres"]!.GetValue<double>()).ShouldBe([0, 10000, 20000, 30000]);
        body["schedule"]![1]!["odometerKilometres"]!.GetValue<double>().ShouldBe(58200, 1e-6);
        body["firstReplacementKilometres"]!.GetValue<double>().ShouldBe(60714, 1);
        body["unrotatedKilometres"]!.GetValue<double>().ShouldBe(45714, 1);
        body["replaceAt"]!["value"]!.GetValue<double>().ShouldBe(1.6);
    }

    [Fact]
    public void Without_wear_rates_looking_ahead_is_refused_and_says_what_is_missing()
    {
        var problem = Run(Car(), "30000 km").Problem!;
        problem.Code.ShouldBe("wear-rate-missing");
        problem.Where.ShouldBe("rotation.wear");
        problem.Message.ShouldContain("1L, 1R, 2L, 2R");
    }

    [Theory]
    [InlineData("rotate-silver-hatchback.json", "forward cross", false)]
    [InlineData("rotate-orange-coupe.json", "side-to-side", true)]
    public void The_samples_answer_as_the_guide_says(string name, string pattern, bool remount)
    {
        var body = RotateOperation.Operation.Run(FileNode.Parse(File.ReadAllText(Path.Combine(AppContext.BaseDirectory, name)), name).Value).Value.Body;
        body["pattern"]!.GetValue<string>().ShouldBe(pattern);
        body["moves"]!.AsArray().Count.ShouldBe(4);
        body["moves"]!.AsArray().ShouldAllBe(m => m!["remount"]!.GetValue<bool>() == remount);
    }

    [Theory]
    [InlineData("""{"vehicle":{"drive":"front"}}""", "fitted", "missing")]
    [InlineData("""{"vehicle":{"drive":"front"},"fitted":[{"position":"1L"}],"rotation":{"wear":{"1X":"0.1 mm"}}}""", "rotation.wear.1X", "position-unknown")]
    [InlineData("""{"vehicle":{"drive":"front"},"fitted":[{"position":"1L"}],"rotation":{"intervall":"1 km"}}""", "rotation.intervall", "key-unknown")]
    [InlineData("""{"vehicle":{"makerRotation":"1L>2L"},"fitted":[{"position":"1L"}]}""", "vehicle.makerRotation", "rotation-incomplete")]
    [InlineData("""{"fitted":[{"position":"1L"},{"position":"1R","wheel":{"makerRotation":"spin"}}]}""", "fitted[1].wheel.makerRotation", "rotation-unknown")]
    public void Wrong_input_names_its_place(string json, string where, string code)
    {
        var problem = Run(json).Problem!;
        problem.Where.ShouldBe(where);
        problem.Code.ShouldBe(code);
    }
}
