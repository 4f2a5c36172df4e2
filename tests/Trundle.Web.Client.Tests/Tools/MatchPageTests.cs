using System.Text.Json.Nodes;
using Bunit;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using Trundle.Web.Client.Tools;

namespace Trundle.Web.Client.Tests.Tools;

/// <summary>Match mounting: one assembly from two mountings, and a set.</summary>
public sealed class MatchPageTests : ToolContext
{
    [Theory]
    [InlineData("match-one-tyre.json")]
    [InlineData("match-two-mountings.json")]
    [InlineData("match-four-sizes-only.json")]
    [InlineData("match-set-unbalance.json")]
    public void The_page_answers_as_the_command_does_for_the_same_file(string sample)
    {
        var page = Tool("match", sample);
        Form(page).Body!.ToJsonString().ShouldBe(Command("match", sample).Body.ToJsonString());
        page.FindAll(".match-pair").Count.ShouldBe(Form(page).Body!["pairs"]!.AsArray().Count);
    }

    [Fact]
    public void The_numbers_of_the_worked_sample_stand_on_the_page()
    {
        // docs/guide/runout-and-match-files.md: turned by 90 degrees clockwise 20 N are left of 100 N.
        var page = Tool("match", "match-one-tyre.json");
        var pair = page.Find(".match-pair").TextContent;
        pair.ShouldContain("turn 90° clockwise");
        pair.ShouldContain("100.0 N before");
        pair.ShouldContain("20.0 N after");
        pair.ShouldContain("with the valve at twelve the mark then stands at 3:00");
        page.FindAll(".match-picture svg").Count.ShouldBe(1);
    }

    [Fact]
    public void Two_mountings_are_entered_by_hand()
    {
        var page = Tool("match");
        page.Find("#f-on input[value=forceVariation]").Change("forceVariation");
        page.Find("#f-amplitude input[value=peakToPeak]").Change("peakToPeak");
        foreach (var (row, place) in new[] { (0, "93.1301"), (1, "346.8699") })
        {
            Control(page, $"mountings.{row}.assembly.amplitude").Change("100");
            Control(page, $"mountings.{row}.assembly.highPoint").Change(place);
        }

        Form(page)["mountings.1.turn"].ShouldBe("180");
        Control(page, "repeatability").Change("3");
        Control(page, "tyre.marking").Change("205/55 R16 91V");
        Control(page, "wheel.seatingLimit").Change("300");

        // The sample says the same and tells the rim besides, which changes nothing here.
        var same = Command("match", "match-two-mountings.json").Body;
        Form(page).Body!["pairs"]!.ToJsonString().ShouldBe(same["pairs"]!.ToJsonString());
    }

    [Fact]
    public async Task A_large_set_waits_to_be_asked_for_and_draws_the_rest_of_its_pairs_one_by_one()
    {
        var random = new Random(5);
        JsonArray Parts(string letter) => new([.. Enumerable.Range(1, 15).Select(i => (JsonNode?)new JsonObject
        {
            ["id"] = $"{letter}{i}", ["force"] = new JsonObject { ["amplitude"] = $"{random.Next(20, 150)} N", ["highPoint"] = random.Next(360) },
        })]);
        var file = new JsonObject { ["on"] = "forceVariation", ["amplitude"] = "zeroToPeak", ["objective"] = "worst", ["tyres"] = Parts("T"), ["wheels"] = Parts("W") };
        Browser.Remembered["trundle-match"] = new JsonObject(FileFields.Of("", file).Select(f => KeyValuePair.Create(f.Field, (JsonNode?)f.Typed))).ToJsonString();
        var page = Tool("match");
        page.FindAll(".match-pair").ShouldBeEmpty();
        page.Find("[role=status]").TextContent.ShouldContain("reckoned when you ask for it");

        var button = page.Find(".next .button--first");
        button.TextContent.ShouldBe("Reckon it now");

        // What it said between is gathered as it was drawn: how long it stood there is the machine's affair.
        var said = new List<string>();
        page.OnMarkupUpdated += (_, _) => said.Add(page.Find(".next .button--first").TextContent);
        await button.ClickAsync(new());
        said.ShouldContain("Reckoning …");
        page.FindAll(".match-pair").Count.ShouldBe(15);
        Form(page).Body!.ToJsonString().ShouldBe(OperationList.Of("match").Run(FileNode.From(file)).Value.Body.ToJsonString());
        page.FindAll(".match-picture svg").Count.ShouldBe(12);
        await page.FindAll(".match-pair button")[0].ClickAsync(new());
        page.WaitForAssertion(() => page.FindAll(".match-picture svg").Count.ShouldBe(13));

        // The next entry does not reckon by itself.
        await Control(page, "makerLimit").ChangeAsync(new() { Value = "60" });
        page.WaitForAssertion(() => page.FindAll(".match-pair").ShouldBeEmpty());
        page.Find(".next .button--first").TextContent.ShouldBe("Reckon it now");
    }

    [Fact]
    public async Task A_set_that_is_felt_says_that_it_reckons_and_then_reckons_by_itself()
    {
        JsonArray Parts(string letter) => new([.. Enumerable.Range(1, 8).Select(i => (JsonNode?)new JsonObject
        {
            ["id"] = $"{letter}{i}", ["force"] = new JsonObject { ["amplitude"] = $"{20 + (i * i)} N", ["highPoint"] = 41 * i % 360 },
        })]);
        var file = new JsonObject { ["on"] = "forceVariation", ["amplitude"] = "zeroToPeak", ["objective"] = "worst", ["tyres"] = Parts("T"), ["wheels"] = Parts("W") };
        Browser.Remembered["trundle-match"] = new JsonObject(FileFields.Of("", file).Select(f => KeyValuePair.Create(f.Field, (JsonNode?)f.Typed))).ToJsonString();
        var page = Tool("match");
        page.WaitForAssertion(() => page.FindAll(".match-pair").Count.ShouldBe(8));

        // The answer of before stands until the new one is there, and the foot says what goes on.
        var said = new List<(string Thumb, int Pairs)>();
        page.OnMarkupUpdated += (_, _) => said.Add((page.Find(".next").TextContent, page.FindAll(".match-pair").Count));
        await Control(page, "makerLimit").ChangeAsync(new() { Value = "60" });
        page.WaitForAssertion(() => page.Find(".match-pair").TextContent.ShouldContain("60.0 N"));
        said.ShouldContain(s => s.Thumb.Contains("Reckoning …") && s.Pairs == 8);
        said.ShouldAllBe(s => s.Pairs == 8);
        page.Find(".next").TextContent.ShouldNotContain("Reckoning");
        file["makerLimit"] = "60 N";
        Form(page).Body!.ToJsonString().ShouldBe(OperationList.Of("match").Run(FileNode.From(file)).Value.Body.ToJsonString());
    }

    [Fact]
    public void A_set_is_entered_part_by_part_with_names_that_stand_ready()
    {
        var page = Tool("match");
        page.Find("#f-on input[value=runout]").Change("runout");
        page.FindAll("label.choice").Single(c => c.TextContent == "parts measured each").QuerySelector("input")!.Change(true);
        Control(page, "tyres.0.runout.amplitude").Change("0.5");
        Control(page, "tyres.0.runout.highPoint").Change("30");
        Control(page, "tyres.0.sitsOn").Change("1");
        Control(page, "wheels.0.runout.amplitude").Change("0.2");
        Control(page, "wheels.0.runout.highPoint").Change("30");
        Form(page)["tyres.0.id"].ShouldBe("A");

        // High point on high point: half a turn leaves the difference.
        page.Find(".match-pair").TextContent.ShouldContain("half a turn");
        page.Find(".match-pair").TextContent.ShouldContain("0.300 mm after");
    }

    [Fact]
    public void At_a_wheel_it_knows_the_tyre_and_is_kept_in_the_visit()
    {
        BeforeTheSignature(Role.Technician);
        var page = AtWheel("1R", "match");
        Form(page)["tyre.marking"].ShouldBe(Visit["fitted.1R.tyre.marking"]);
        page.Find("#f-on input[value=runout]").Change("runout");
        Visit["fitted.1R.match.on"].ShouldBe("runout");
        Visit["fitted.1R.match.tyre.marking"].ShouldBe(Visit["fitted.1R.tyre.marking"]);
        Visit.Reading.Whole.ShouldBeTrue();
    }
}
