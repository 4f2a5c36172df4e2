using Bunit;
using Trundle.Engine.Vehicles;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Frame;

namespace Trundle.Web.Client.Tests.Tools;

/// <summary>How fast a tyre loses air: the page beside any visit, and at a wheel.</summary>
public sealed class LeakPageTests : ToolContext
{
    [Theory]
    [InlineData("leak-slow-valve.json")]
    [InlineData("leak-cold-snap.json")]
    public void The_page_answers_as_the_command_does_for_the_same_file(string sample)
    {
        var page = Tool("leak", sample);
        Form(page).Body!.ToJsonString().ShouldBe(Command("leak", sample).Body.ToJsonString());
        page.FindAll("[aria-label=Answer] svg").Count.ShouldBeGreaterThan(0);
    }

    [Fact]
    public void The_numbers_of_the_worked_sample_stand_on_the_page_and_in_the_picture()
    {
        // docs/guide/leak-files.md: 19.7 kPa a month (15.8 to 23.7), a leak; the warning at 184 kPa in 68 days.
        var answer = Tool("leak", "leak-slow-valve.json").Find("[aria-label=Answer]");
        answer.QuerySelector(".do-next")!.TextContent.ShouldStartWith("A leak");
        answer.QuerySelector(".measured")!.TextContent.ShouldBe("19.7 kPa lost in a month (15.8 kPa to 23.7 kPa, 95 %)");
        answer.TextContent.ShouldContain("in 68 days");
        answer.TextContent.ShouldContain("At -5 °C");
        answer.QuerySelector("svg desc")!.TextContent.ShouldContain("The line meets the warning at 184 kPa after 68 days");
        answer.QuerySelectorAll(".loss-picture circle").Length.ShouldBe(10);
    }

    [Fact]
    public void It_is_entered_reading_by_reading_and_a_reload_loses_nothing()
    {
        var page = Tool("leak");
        page.FindAll(".do-next").ShouldBeEmpty();
        page.Find(".next .button--first").TextContent.ShouldBe("Still needed: two readings, some days apart");
        Control(page, "readings.0.pressure").Change("230");
        Form(page)["readings.0.at"].ShouldNotBeNull();
        page.Find(".next .button--first").TextContent.ShouldBe("Still needed: how warm the tyre was at reading 1");
        Control(page, "readings.0.at").Change("2026-01-05 08:10");
        Control(page, "readings.0.temperature").Change("6");
        page.Find("[role=status]").TextContent.ShouldBe("Still needed: two readings, some days apart.");
        Control(page, "readings.1.pressure").Change("180");
        Control(page, "readings.1.at").Change("2026-02-05 08:10");
        Control(page, "readings.1.temperature").Change("6");
        page.Find(".do-next").TextContent.ShouldStartWith("A leak");
        page.Find("[aria-label=Answer]").TextContent.ShouldContain("When the warning comes is not known");
        page.Find(".next .button--first").Click();
        Browser.Settled.ShouldBe("f-readings-2-pressure");
        page.FindAll("legend").ShouldContain(l => l.TextContent == "Reading 3");

        Tool("leak").Find(".do-next").TextContent.ShouldStartWith("A leak");
    }

    [Fact]
    public void At_a_wheel_it_begins_with_the_placard_and_the_pressure_found_and_is_kept_in_the_visit()
    {
        BeforeTheSignature(Role.Technician);
        var page = AtWheel("1R", "leak");
        var form = Form(page);
        form["placard.cold"].ShouldBe(Visit["vehicle.axles.0.placard.cold"]);
        form["readings.0.pressure"].ShouldBe(Visit["fitted.1R.pressure.value"]);
        form["readings.0.at"].ShouldBe(Visit["date"]);
        Visit.Fields.Under("fitted.1R.leak").ShouldBeEmpty();
        Control(page, "readings.0.temperature").Change("10");
        Control(page, "readings.1.pressure").Change("180");
        Control(page, "readings.1.at").Change("2027-01-05 08:10");
        Control(page, "readings.1.temperature").Change("10");
        page.FindAll("[aria-label=Answer] svg").Count.ShouldBeGreaterThan(0);
        Visit["fitted.1R.leak.placard.cold"].ShouldBe(Visit["vehicle.axles.0.placard.cold"]);
        Visit["fitted.1R.leak.readings.1.pressure"].ShouldBe("180 kPa");
        Visit.Reading.Whole.ShouldBeTrue();
        Visit.Reading.Read.Studies.ShouldContainKey((Position.Read("1R").Value, "leak"));
    }

    [Fact]
    public void The_wheel_leads_to_it_from_its_pressure()
    {
        BeforeTheSignature(Role.Technician);
        var page = Render<BayPage>(p => p.Add(x => x.Id, VisitId).Add(x => x.LegKey, "lookOver").Add(x => x.Place, "1R"));
        page.FindAll("a").ShouldContain(a => a.GetAttribute("href") == Places.AtWheel(VisitId, Position.Read("1R").Value, "leak"));
    }
}
