using System.Text.Json.Nodes;
using Bunit;
using Microsoft.AspNetCore.Components.Forms;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Web.Client.Tests.Tools;

/// <summary>The balancer's calibration by known masses: the command's own answer, kept where the page of a recorded spin finds it.</summary>
public sealed class CalibratePageTests : ToolContext
{
    private const string Worked = "balance-calibrate-worked.json";

    [Fact]
    public void The_sample_has_the_commands_answer_with_what_each_spin_is_off_by()
    {
        var page = Tool("calibrate", Worked);
        Form(page).Body!.ToJsonString().ShouldBe(Command("balance calibrate", Worked).Body.ToJsonString());
        page.FindAll("[aria-label=Answer] table").Count.ShouldBe(3);
        page.FindAll("[aria-label=Answer] tbody tr").Count.ShouldBe(12);
        page.FindAll("[aria-label=Answer] .polar svg").Count.ShouldBe(2);
        var row = page.FindAll("[aria-label=Answer] tbody tr")[3].TextContent;
        row.ShouldContain("inner 60 g at 120°; outer 60 g at 250°");
        row.ShouldMatch(@"\d\.\d\d g");
        page.Find(".needed").TextContent.ShouldContain("Known mass holds");
    }

    [Fact]
    public void Kept_on_the_device_it_serves_a_recorded_spin_without_a_file()
    {
        var page = Tool("calibrate", Worked);
        Press(page, "Keep it on this device");
        page.Find("[aria-label=Answer]").TextContent.ShouldContain("Kept on this device: clockwise, at 120, 180 and 240 r/min.");

        var capture = Tool("capture");
        capture.FindComponents<InputFile>()[0].UploadFiles(InputFileContent.CreateFromText(Text("balance-capture-spin.csv"), "balance-capture-spin.csv"));
        Form(capture).Body!["planes"].ShouldBeNull();
        Press(capture, "Use the calibration kept on this device");
        var planes = Form(capture).Body!["planes"]!;
        planes["inner"]!["massGrams"]!.GetValue<double>().ShouldBe(35, 0.3);
        planes["outer"]!["angleDegrees"]!.GetValue<double>().ShouldBe(240, 1);
        Form(capture).Body!.ToJsonString().ShouldBe(OperationList.Of("balance capture").Run(FileNode.From(new JsonObject
        {
            ["recording"] = new JsonObject { ["csv"] = Text("balance-capture-spin.csv") },
            ["calibration"] = Command("balance calibrate", Worked).Body["calibration"]!.DeepClone(),
        })).Value.Body.ToJsonString());
        Browser.Calls.ShouldNotContain(c => c.StartsWith("POST", StringComparison.Ordinal));
    }

    [Fact]
    public void As_a_file_it_is_what_the_command_reads()
    {
        var link = Tool("calibrate", Worked).Find("a[download]");
        var text = Uri.UnescapeDataString(link.GetAttribute("href")!.Split(',', 2)[1]);
        var spin = new JsonObject { ["recording"] = new JsonObject { ["csv"] = Text("balance-capture-spin.csv") }, ["calibration"] = JsonNode.Parse(text) };
        OperationList.Of("balance capture").Run(FileNode.From(spin)).Value.Body["planes"].ShouldNotBeNull();
    }

    [Fact]
    public void It_asks_in_the_pages_words_and_copies_the_known_masses_to_another_speed()
    {
        var page = Tool("calibrate");
        page.FindAll("fieldset.run").Count.ShouldBe(3);
        page.Find("#f-rotation input[value=clockwise]").Change("clockwise");
        page.Find("#f-phases input[value=lag]").Change("lag");
        page.Find("[role=status]").TextContent.ShouldBe("Still needed: where the known masses sit.");
        foreach (var (field, typed) in new[] { ("planes.inner.radius", "200 mm"), ("planes.inner.axial", "0 mm"), ("planes.outer.radius", "200 mm"), ("planes.outer.axial", "180 mm") })
        {
            Enter(page, field, typed);
        }

        Spin(page, 0, "180", ("0.014", "318.99"), ("0.008101", "169.94"));
        page.Find("[role=status]").TextContent.ShouldBe("Still needed: at each speed a plain spin and one with a known mass in each plane.");
        Mass(page, 1, "inner");
        Spin(page, 1, "180", ("0.52", "25.2"), ("0.1649", "204.94"));
        Mass(page, 2, "outer");
        Spin(page, 2, "180", ("0.8762", "25.78"), ("0.5211", "206.09"));
        page.Find("[aria-label=Answer]").TextContent.ShouldContain("Three spins are met exactly whatever they were like.");

        Press(page, "The same 3 spins at another speed");
        page.FindAll("fieldset.run").Count.ShouldBe(6);
        Form(page)["spins.4.added.0.plane"].ShouldBe("inner");
        Form(page)["spins.5.added.0.mass"].ShouldBe("100 g");
        Form(page)["spins.4.speed"].ShouldBeNull();
        page.Find("[role=status]").TextContent.ShouldStartWith("Still needed: ");
    }

    [Fact]
    public void A_recorded_spin_takes_the_place_of_what_was_typed()
    {
        var page = Tool("calibrate", Worked);
        page.FindComponents<InputFile>()[1].UploadFiles(InputFileContent.CreateFromText(Text("balance-capture-spin.csv"), "spin-two.csv"));
        Form(page)["spins.1.speed"].ShouldBeNull();
        Form(page)["spins.1.recording.name"].ShouldBe("spin-two.csv");
        page.FindAll("fieldset.run")[1].TextContent.ShouldContain("spin-two.csv");
    }

    private static void Press(IRenderedComponent<Trundle.Web.Client.Tools.ToolPage> page, string text) => page.FindAll("button").First(b => b.TextContent.Trim() == text).Click();

    private static void Enter(IRenderedComponent<Trundle.Web.Client.Tools.ToolPage> page, string field, string typed) => Control(page, field).Change(typed);

    private static void Mass(IRenderedComponent<Trundle.Web.Client.Tools.ToolPage> page, int spin, string plane)
    {
        page.Find($"#{Trundle.Web.Client.Entries.FieldPart.IdOf($"spins.{spin}.added.0.plane")} input[value={plane}]").Change(plane);
        Enter(page, $"spins.{spin}.added.0.mass", "100 g");
        Enter(page, $"spins.{spin}.added.0.angle", "0");
    }

    private static void Spin(IRenderedComponent<Trundle.Web.Client.Tools.ToolPage> page, int spin, string speed, params (string Amplitude, string Phase)[] points)
    {
        Enter(page, $"spins.{spin}.speed", speed);
        for (var p = 0; p < points.Length; p++)
        {
            Enter(page, $"spins.{spin}.points.{p}.amplitude", points[p].Amplitude);
            Enter(page, $"spins.{spin}.points.{p}.phase", points[p].Phase);
        }
    }
}
