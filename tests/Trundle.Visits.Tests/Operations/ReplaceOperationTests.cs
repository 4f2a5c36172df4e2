using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Tests.Operations;

public sealed class ReplaceOperationTests
{
    private static Reading<Answer> Run(string body) => FileNode.Parse(body, "replace.json").Then(ReplaceOperation.Run);

    private static Answer Sample(string name)
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!Directory.Exists(Path.Combine(folder.FullName, "samples")))
        {
            folder = folder.Parent!;
        }

        return Run(File.ReadAllText(Path.Combine(folder.FullName, "samples", name))).Value;
    }

    private static string Body(string replace, string vehicle = "\"axles\":[{\"placard\":{\"size\":\"195/65 R15 91H\",\"cold\":\"230 kPa\"}},{\"placard\":{\"size\":\"195/65 R15 91H\"}}]") =>
        $$"""{"vehicle":{{{vehicle}}},"replace":{{replace}}}""";

    private static JsonNode Of(Answer answer, string marking) => answer.Body["candidates"]!.AsArray().Single(c => c!["marking"]!.GetValue<string>() == marking)!;

    [Theory]
    [InlineData("195/65 R15 91H", "asPlacard", 0)]
    [InlineData("205/55 R16 91V", "withApproval", -0.4724)]
    [InlineData("205/60 R16 96V XL", "ask", 2.6772)]
    [InlineData("185/65 R15 88T", "refused", -2.2047)]
    [InlineData("195/60 R15", "refused", -3.1496)]
    public void The_sample_answers_as_the_guide_says(string marking, string verdict, double percent)
    {
        var answer = Sample("replace-teal-hatchback.json");
        answer.No.ShouldBeFalse();
        var candidate = Of(answer, marking);
        candidate["verdict"]!.GetValue<string>().ShouldBe(verdict);
        candidate["axles"]![0]!["circumferencePercent"]!.GetValue<double>().ShouldBe(percent, 1e-4);
        candidate["odometer"]!["trueKilometres"]!.GetValue<double>().ShouldBe(1000 + (10 * percent), 1e-3);
        candidate["findings"]!.AsArray().ShouldAllBe(f => f!["source"]!.GetValue<string>().Length > 3 && f["action"]!.GetValue<string>().Length > 3);
    }

    [Fact]
    public void Refused_ones_say_why_and_the_allowed_come_first()
    {
        var candidates = Sample("replace-teal-hatchback.json").Body["candidates"]!.AsArray();
        candidates.Select(c => c!["verdict"]!.GetValue<string>()).ShouldBe(["asPlacard", "asPlacard", "withApproval", "ask", "refused", "refused"]);
        candidates.Where(c => c!["verdict"]!.GetValue<string>() == "refused").ShouldAllBe(c => c!["why"]!.AsArray().Count > 0);
    }

    [Fact]
    public void Without_a_list_the_carried_sizes_are_judged_and_all_four_wheels_are_driven()
    {
        var answer = Sample("replace-ochre-estate.json");
        answer.No.ShouldBeTrue();
        answer.Body["howMany"]!["atLeast"]!.GetValue<string>().ShouldBe("all");
        answer.Body["newPair"]!["axle"]!.GetValue<int>().ShouldBe(2);
        answer.Body["candidates"]!.AsArray().ShouldAllBe(c => c!["fromTables"]!.GetValue<bool>());
        answer.Body["renew"]!.AsArray().Count.ShouldBeGreaterThan(2);
    }

    [Fact]
    public void Carried_sizes_ask_for_load_and_speed()
    {
        var answer = Run(Body("{}", "\"axles\":[{\"placard\":{\"size\":\"205/55 R16 91V\"}},{\"placard\":{\"size\":\"205/55 R16 91V\"}}]")).Value;
        var own = Of(answer, "205/55 R16");
        own["verdict"]!.GetValue<string>().ShouldBe("ask");
        own["axles"]![0]!["mustCarry"]!["loadIndexSingle"]!.GetValue<int>().ShouldBe(91);
        own["axles"]![0]!["mustCarry"]!["speedSymbol"]!.GetValue<string>().ShouldBe("V");
        own["rims"]!["measuringInches"]!.GetValue<double>().ShouldBe(6.5, 1e-9);
    }

    [Theory]
    [InlineData("""{"candidates":["205/55 R16 91V","205/55R"]}""", "replace.candidates[1]")]
    [InlineData("""{"candidates":[{"mark":"205/55 R16 91V"}]}""", "replace.candidates[0].marking")]
    [InlineData("""{"candidates":[{"marking":"205/55 R16 91V","rim":"wide"}]}""", "replace.candidates[0].rim")]
    [InlineData("""{"candidates":[7]}""", "replace.candidates[0]")]
    [InlineData("""{"axles":[3]}""", "replace.axles[0]")]
    [InlineData("""{"axles":[1,1]}""", "replace.axles[1]")]
    [InlineData("""{"newTread":"80 mm"}""", "replace.newTread")]
    [InlineData("""{"speedometer":{"shown":"100 km/h"}}""", "replace.speedometer.true")]
    [InlineData("""{"rimDiameter":9}""", "replace.rimDiameter")]
    [InlineData("""{"candidate":[]}""", "replace.candidate")]
    public void Wrong_input_is_one_problem_with_its_place(string replace, string where)
    {
        var read = Run(Body(replace));
        read.IsRead.ShouldBeFalse();
        read.Problem!.Where.ShouldBe(where);
        read.Problem.Message.Length.ShouldBeGreaterThan(20);
    }

    [Fact]
    public void A_vehicle_without_axles_or_placard_is_asked_for_them()
    {
        Run("""{"vehicle":{}}""").Problem!.Where.ShouldBe("vehicle.axles");
        Run(Body("{}", "\"axles\":[{}]")).Problem!.Where.ShouldBe("vehicle.axles[0].placard.size");
    }

    [Fact]
    public void A_sensor_word_that_is_none_is_refused()
    {
        Run("""{"vehicle":{"axles":[{"placard":{"size":"195/65 R15 91H"}}]},"fitted":[{"position":"1L","sensor":"maybe"}]}""").Problem!.Where.ShouldBe("fitted[0].sensor");
    }

    [Fact]
    public void The_one_chosen_is_told_and_one_that_was_not_judged_is_a_problem()
    {
        const string Vehicle = """{"rules":"uk","vehicle":{"drive":"front","axles":[{"placard":{"size":"195/65 R15 91H","cold":"230 kPa"}},{"placard":{"size":"195/65 R15 91H","cold":"230 kPa"}}]},"replace":{"candidates":["195/65 R15 91H","195/60 R15 88H"],"chosen":"CHOSEN"}}""";
        Reading<Answer> Chosen(string marking) => Run(Vehicle.Replace("CHOSEN", marking, StringComparison.Ordinal));
        Chosen("195/65R15 91H").Value.Body["chosen"]!.ToJsonString().ShouldBe("""{"marking":"195/65 R15 91H","verdict":"ask"}""");
        Chosen("195/65R15 91H").Value.No.ShouldBeFalse();
        Chosen("195/60 R15 88H").Value.No.ShouldBeTrue();
        Chosen("195/60 R15 88H").Value.ForPeople.ShouldContain("Chosen: 195/60 R15 88H, refused");
        Chosen("205/55 R16 91V").Problem!.Code.ShouldBe("chosen-not-judged");
        Chosen("205/55 R16 91V").Problem!.Where.ShouldBe("replace.chosen");
        Chosen("round").Problem!.Where.ShouldBe("replace.chosen");
    }
}
