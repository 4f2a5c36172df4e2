using System.Globalization;
using System.Text.Json.Nodes;
using Bunit;
using Microsoft.AspNetCore.Components.Forms;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using Trundle.Web.Client.Tools;

namespace Trundle.Web.Client.Tests.Tools;

/// <summary>Trial mass on the vehicle, with phase and without.</summary>
public sealed class TrialPageTests : ToolContext
{
    [Theory]
    [InlineData("balance-trial-worked.json")]
    [InlineData("balance-trial-without-phase.json")]
    public void The_page_answers_as_the_command_does_for_the_same_file(string sample)
    {
        var page = Tool("trial", sample);
        Form(page).Body!.ToJsonString().ShouldBe(Command("balance trial", sample).Body.ToJsonString());
        page.FindAll("[aria-label=Answer] svg").Count.ShouldBeGreaterThan(0);
    }

    [Fact]
    public void The_numbers_of_the_worked_sample_stand_on_the_page()
    {
        // docs/guide/balance-files.md, by hand: 4 g at 270 degrees and 32 g at 90 degrees; to the last run 14 g at 270 degrees and 22 g at 90 degrees.
        var answer = Tool("trial", "balance-trial-worked.json").Find("[aria-label=Answer]").TextContent;
        answer.ShouldContain("4 g at 270° on plane 1");
        answer.ShouldContain("32 g at 90° on plane 2");
        answer.ShouldContain("14 g at 270° on plane 1");
        answer.ShouldContain("22 g at 90° on plane 2");
    }

    [Fact]
    public void Without_phase_the_mass_is_typed_once_and_the_angles_stand_ready()
    {
        var page = Tool("trial");

        // 20 kg weigh 196.1 N; a tenth of that at 89.0 rad/s is 2475 g·mm, and 12 g at 200 mm.
        page.Markup.ShouldContain("12 g for 20 kg at 850 r/min and 200 mm");
        Control(page, "unit").Change("mm/s");
        Control(page, "runs.1.trial.mass").Change("15");
        Control(page, "runs.0.vibration.0.amplitude").Change("8");
        Control(page, "runs.2.trial.angle").GetAttribute("value").ShouldBe("120");

        // Heavy place at 180 degrees, 20 g, 0.4 mm/s a gram: 0.4 times the length of 20 g at 180 degrees with 15 g at each angle.
        foreach (var (run, amplitude) in new[] { (1, "2"), (2, "12.166"), (3, "12.166") })
        {
            Control(page, $"runs.{run}.vibration.0.amplitude").Change(amplitude);
        }

        var form = Form(page);
        form["runs.3.trial.mass"].ShouldBe("15 g");
        form["runs.3.trial.angle"].ShouldBe("240");
        var correction = form.Body!["corrections"]![0]!;
        correction["massGrams"]!.GetValue<double>().ShouldBe(20, 0.05);
        Math.Cos(double.DegreesToRadians(correction["angleDegrees"]!.GetValue<double>())).ShouldBe(1, 1e-5);
        page.Find(".do-next").TextContent.ShouldContain("fit 20 g at 0°");

        Control(page, "runs.1.trial.mass").Change("30");
        form["runs.3.trial.mass"].ShouldBe("30 g");
    }

    [Fact]
    public void Circles_that_do_not_meet_say_what_to_do()
    {
        var page = Tool("trial", "balance-trial-without-phase.json");
        Control(page, "runs.2.vibration.0.amplitude").Change("6.5");
        page.Find(".do-next").TextContent.ShouldContain("The circles do not meet");
    }

    [Fact]
    public void Each_run_is_read_from_a_recording_as_the_command_reads_it()
    {
        var page = Tool("trial");
        Choose(page, 0);
        page.Find(".problem").TextContent.ShouldContain("Enter the speed of the runs");
        Control(page, "speed").Change("100 km/h");
        Control(page, "rollingCircumference").Change("1960");
        Control(page, "runs.1.trial.mass").Change("30");
        for (var run = 0; run < 4; run++)
        {
            Choose(page, run);
        }

        page.FindAll(".problem").ShouldBeEmpty();
        var byCommand = new JsonObject
        {
            ["speed"] = "100 km/h",
            ["rollingCircumference"] = "1.96 m",
            ["runs"] = new JsonArray([.. Enumerable.Range(0, 4).Select(Run)]),
        };
        var wanted = OperationList.Of("balance trial").Run(FileNode.From(byCommand)).Value.Body;
        var found = Form(page).Body!;
        for (var run = 0; run < 4; run++)
        {
            double.Parse(Form(page)[$"runs.{run}.vibration.0.amplitude"]!, CultureInfo.InvariantCulture)
                .ShouldBe(wanted["recordings"]![run]!["amplitude"]!.GetValue<double>(), 0.0006);
        }

        // The page enters four figures of each amplitude.
        found["corrections"]![0]!["massGrams"]!.GetValue<double>().ShouldBe(wanted["corrections"]![0]!["massGrams"]!.GetValue<double>(), 0.1);
        page.Markup.ShouldContain("(one standard error) in 'az' at 849.8 r/min");

        static JsonNode? Run(int k)
        {
            var run = new JsonObject { ["vibration"] = new JsonArray((JsonNode)new JsonObject { ["recording"] = new JsonObject { ["csv"] = Text($"trial-recording-{k}.csv") } }) };
            if (k > 0)
            {
                run["trial"] = new JsonObject { ["plane"] = 1, ["mass"] = "30 g", ["angle"] = 120 * (k - 1) };
            }

            return run;
        }
    }

    private static void Choose(IRenderedComponent<ToolPage> page, int run) =>
        page.FindComponents<InputFile>()[run].UploadFiles(InputFileContent.CreateFromText(Text($"trial-recording-{run}.csv"), $"run {run + 1}.csv"));

    [Fact]
    public void With_phase_the_points_are_entered_with_their_phase()
    {
        var page = Tool("trial");
        page.FindAll("label.choice").Single(c => c.TextContent == "amplitude and phase").QuerySelector("input")!.Change(true);
        Control(page, "runs.0.vibration.0.amplitude").Change("5");
        Control(page, "runs.0.vibration.0.phase").Change("0");
        Control(page, "runs.1.trial.mass").Change("10");
        Control(page, "runs.1.vibration.0.amplitude").Change("4");
        Control(page, "runs.1.vibration.0.phase").Change("0");

        // Ten grams took 1 away: fifty take 5.
        page.Find(".do-next").TextContent.ShouldContain("fit 50 g at 0°");
    }

    [Fact]
    public void At_a_wheel_the_runs_go_into_the_visit()
    {
        BeforeTheSignature(Role.Technician);
        var page = AtWheel("1L", "trial");
        Control(page, "runs.0.vibration.0.amplitude").Change("8");
        Visit["fitted.1L.trial.runs.0.vibration.0.amplitude"].ShouldBe("8");
        Visit.Reading.Whole.ShouldBeTrue();
    }
}
