using Bunit;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Tests.Tools;

/// <summary>Dial readings around: entered place by place.</summary>
public sealed class RunoutPageTests : ToolContext
{
    [Theory]
    [InlineData("runout-twelve-places.json")]
    [InlineData("runout-three-mountings.json")]
    public void The_page_answers_as_the_command_does_for_the_same_file(string sample)
    {
        var page = Tool("runout", sample);
        Form(page).Body!.ToJsonString().ShouldBe(Command("runout", sample).Body.ToJsonString());
        page.FindAll("[aria-label=Answer] svg").Count.ShouldBeGreaterThan(0);
    }

    [Fact]
    public void The_numbers_of_the_worked_sample_stand_on_the_page()
    {
        // docs/guide/runout-and-match-files.md: 0.85 mm peak-to-peak, first harmonic 0.4004 mm at 50.1 degrees.
        var answer = Tool("runout", "runout-twelve-places.json").Find("[aria-label=Answer]").TextContent;
        answer.ShouldContain("0.85 mm peak-to-peak");
        answer.ShouldContain("0.400 mm");
        answer.ShouldContain("at 50");
    }

    [Fact]
    public void Each_entry_goes_on_to_the_next_place_and_a_reload_goes_on_there()
    {
        var page = Tool("runout");
        page.Find("#f-part input[value=wheel]").Change("wheel");
        page.Find("#f-direction input[value=radial]").Change("radial");
        page.FindAll(".dial .choice").Single(c => c.TextContent == "8").QuerySelector("input")!.Change(true);
        string[] shown = ["0.1", "0.2", "0.3", "0.2"];
        foreach (var (reading, i) in shown.Select((r, i) => (r, i)))
        {
            page.Find(".dial-place").TextContent.ShouldContain($"Place {i + 1} of 8");
            page.Find("#f-readings-now").Input(reading);
            page.Find("#f-readings-now").KeyDown("Enter");
            Browser.Settled.ShouldBe("f-readings-now");
        }

        Form(page)["readings.2.angle"].ShouldBe("90");
        Form(page)["readings.2.value"].ShouldBe("0.3 mm");
        Tool("runout").Find(".dial-place").TextContent.ShouldContain("Place 5 of 8");

        // Half a turn says nothing of the other half: never within, and not above a limit either.
        page.Find("[aria-label=Answer]").TextContent.ShouldContain("The places cannot tell whether it is within");

        // By thumb: the button keeps what stands there and goes on; a place touched is read anew.
        page.Find("#f-readings-now").Input("0.15");
        page.FindAll("button").Single(b => b.TextContent == "Next place").Click();
        page.Find(".dial-place").TextContent.ShouldContain("Place 6 of 8");
        page.FindAll(".dial-button")[1].Click();
        page.Find("#f-readings-now").GetAttribute("value").ShouldBe("0.2");
        page.Find("#f-readings-now").Input("0.25");
        page.Find("#f-readings-now").FocusOut();
        Form(page)["readings.1.value"].ShouldBe("0.25 mm");
    }

    [Fact]
    public void Too_few_places_are_warned_of()
    {
        var page = Tool("runout");
        page.Find("#f-part input[value=wheel]").Change("wheel");
        page.Find("#f-direction input[value=radial]").Change("radial");
        page.FindAll(".dial .choice").Single(c => c.TextContent == "6").QuerySelector("input")!.Change(true);
        foreach (var reading in new[] { "0.1", "0.2", "0.3", "0.2", "0.1", "0" })
        {
            page.Find("#f-readings-now").Input(reading);
            page.Find("#f-readings-now").KeyDown("Enter");
        }

        page.FindAll(".note--warning").Select(w => w.TextContent).ShouldContain(w => w.Contains("Too few places", StringComparison.Ordinal));
    }

    [Fact]
    public void A_second_mounting_takes_the_readings_along()
    {
        var page = Tool("runout", "runout-twelve-places.json");
        page.FindAll("button").Single(b => b.TextContent.StartsWith("Measure again with the tyre turned", StringComparison.Ordinal)).Click();
        var form = Form(page);
        form["readings.0"].ShouldBeNull();
        form["mountings.0.readings.0"].ShouldBe("0.85 mm");
        form["mountings.1.turn"].ShouldBe("180");
        page.FindAll(".dial").Count.ShouldBe(2);
    }

    [Fact]
    public void The_other_direction_is_measured_too_and_nothing_of_the_first_is_lost()
    {
        var page = Tool("runout", "runout-twelve-places.json");
        page.FindAll("button").Single(b => b.TextContent == "Measure lateral: side to side too").Click();
        Form(page)["radial.readings.0"].ShouldBe("0.85 mm");
        Form(page).Body!["peakToPeakMillimetres"]!.GetValue<double>().ShouldBe(0.85, 1e-9);
        page.Find("#f-lateral-readings-now").Input("0.1");
        page.Find("#f-lateral-readings-now").KeyDown("Enter");
        Form(page)["lateral.readings.0.value"].ShouldBe("0.1 mm");
    }

    [Fact]
    public void At_a_wheel_the_readings_go_into_the_visit()
    {
        BeforeTheSignature(Role.Technician);
        var page = AtWheel("1R", "runout");
        page.Find("#f-direction input[value=radial]").Change("radial");
        page.Find("#f-readings-now").Input("0.1");
        page.Find("#f-readings-now").KeyDown("Enter");
        Visit["fitted.1R.runout.readings.0.value"].ShouldBe("0.1 mm");
        Visit["fitted.1R.runout.part"].ShouldBe("assembly");
        Visit.Reading.Whole.ShouldBeTrue();
    }
}
