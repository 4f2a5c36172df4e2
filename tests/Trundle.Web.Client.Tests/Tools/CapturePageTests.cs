using System.Text.Json.Nodes;
using Bunit;
using Microsoft.AspNetCore.Components.Forms;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Web.Client.Tests.Tools;

/// <summary>A recorded spin: the file is read in the browser.</summary>
public sealed class CapturePageTests : ToolContext
{
    private static InputFileContent Sample(string name) => InputFileContent.CreateFromBinary(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, name)), name);

    private static void Choose(IRenderedComponent<Trundle.Web.Client.Tools.ToolPage> page, int which, string sample) => page.FindComponents<InputFile>()[which].UploadFiles(Sample(sample));

    private static string Command(JsonObject body) => OperationList.Of("balance capture").Run(FileNode.From(body)).Value.Body.ToJsonString();

    [Fact]
    public void A_csv_is_read_here_and_answers_as_the_command_does()
    {
        var page = Tool("capture");
        page.Find(".next .button--first").TextContent.ShouldBe("Choose the recording");
        Choose(page, 0, "balance-capture-spin.csv");
        Form(page).Body!.ToJsonString().ShouldBe(Command(new JsonObject { ["recording"] = new JsonObject { ["csv"] = Text("balance-capture-spin.csv") } }));
        page.Find("[aria-label=Answer]").TextContent.ShouldContain("r/min");
        page.FindAll(".polar svg").Count.ShouldBe(2);

        // With the machine's calibration: 35 g at 30 degrees inner and 22 g at 240 degrees outer, as docs/guide/spin-files.md tells.
        Choose(page, 1, "machine-calibration.json");
        page.FindAll(".polar svg").Count.ShouldBe(4);
        var planes = Form(page).Body!["planes"]!;
        planes["inner"]!["massGrams"]!.GetValue<double>().ShouldBe(35, 0.3);
        planes["outer"]!["angleDegrees"]!.GetValue<double>().ShouldBe(240, 1);
        Form(page).Body!.ToJsonString().ShouldBe(Command(new JsonObject
        {
            ["recording"] = new JsonObject { ["csv"] = Text("balance-capture-spin.csv") },
            ["calibration"] = JsonNode.Parse(Text("machine-calibration.json"))!["calibration"]?.DeepClone() ?? JsonNode.Parse(Text("machine-calibration.json")),
        }));
        Browser.Calls.ShouldNotContain(c => c.StartsWith("POST", StringComparison.Ordinal));

        // A reload loses nothing.
        Tool("capture").FindAll(".polar svg").Count.ShouldBe(4);
    }

    [Fact]
    public void A_wav_asks_for_what_it_does_not_tell()
    {
        var page = Tool("capture");
        Choose(page, 0, "balance-capture-spin.wav");
        page.FindAll(".polar svg").ShouldBeEmpty();
        page.Find("[role=status]").TextContent.ShouldBe("Still needed: which way it turned.");
        page.Find("#f-rotation input[value=clockwise]").Change("clockwise");
        page.Find("#f-phases input[value=lag]").Change("lag");
        Control(page, "fullScale").Change("5");
        Form(page).Body!.ToJsonString().ShouldBe(Command(new JsonObject
        {
            ["rotation"] = "clockwise", ["phases"] = "lag", ["fullScale"] = "5",
            ["recording"] = new JsonObject { ["wav"] = Convert.ToBase64String(File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "balance-capture-spin.wav"))) },
        }));
    }

    [Fact]
    public void A_bad_file_is_said_with_its_place_and_a_good_one_takes_its_place()
    {
        var page = Tool("capture");
        page.FindComponents<InputFile>()[0].UploadFiles(InputFileContent.CreateFromText("time_s,first,second,index\n0,1,x,0\n", "bad.csv"));
        page.Find("[role=status]").TextContent.ShouldContain("line 2");
        page.FindComponents<InputFile>()[0].UploadFiles(InputFileContent.CreateFromBinary([0xff, 0xfe, 0x00], "bad.bin"));
        page.Find(".problem").TextContent.ShouldContain("bad.bin is neither text nor a WAV file");
        Choose(page, 0, "balance-capture-spin.csv");
        page.FindAll(".problem").ShouldBeEmpty();
        page.FindAll(".polar svg").Count.ShouldBe(2);
    }

    [Fact]
    public void A_recording_too_long_for_the_browser_is_left_out_and_that_is_said()
    {
        var page = Tool("capture");
        Control(page, "fullScale").Change("5");
        Browser.Room = 2_000;
        Choose(page, 0, "balance-capture-spin.csv");
        page.FindAll(".polar svg").Count.ShouldBe(2);
        page.Find(".title-block").TextContent.ShouldContain("without the recording");
        Browser.Remembered["trundle-capture"].ShouldContain("fullScale");
    }
}
