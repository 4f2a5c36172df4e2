using Bunit;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Frame;

namespace Trundle.Web.Client.Tests.Tools;

/// <summary>Which sizes may stand in for the placard's: the page beside any visit, and on a visit's plan.</summary>
public sealed class ReplacePageTests : ToolContext
{
    [Theory]
    [InlineData("replace-teal-hatchback.json")]
    [InlineData("replace-ochre-estate.json")]
    public void The_page_answers_as_the_command_does_for_the_same_file(string sample)
    {
        var page = Tool("replace", sample);
        var command = Command("replace", sample).Body;
        Form(page).Body!.ToJsonString().ShouldBe(command.ToJsonString());
        page.FindAll(".stand-ins tbody tr").Count.ShouldBe(command["candidates"]!.AsArray().Count);
    }

    [Fact]
    public void The_numbers_of_the_worked_sample_stand_in_the_table()
    {
        // docs/guide/replace-files.md: 205/55 R16 91V is -0.47 %, with approval; 205/60 R16 96V XL +2.68 %; 195/60 R15 is refused at -3.15 %.
        var page = Tool("replace", "replace-teal-hatchback.json");
        var rows = page.FindAll(".stand-ins tbody tr").ToDictionary(r => r.QuerySelector("th")!.TextContent, r => r.QuerySelectorAll("td").Select(d => d.TextContent).ToArray());
        rows["205/55 R16 91V"].ShouldBe(["with approval", "615 kg", "149 mph", "-0.47 %", "59.7 mph", rows["205/55 R16 91V"][5], rows["205/55 R16 91V"][6]]);
        rows["205/55 R16 91V"][5].ShouldMatch(@"^[0-9.]+\sto [0-9.]+\sin$");
        rows["195/65 R15 91H"][6].ShouldBe("axle 1: 230 kPaaxle 2: 220 kPa");
        rows["205/60 R16 96V XL"][3].ShouldBe("+2.68 %");
        rows["195/60 R15"][0].ShouldBe("refused");
        rows["195/60 R15"][1].ShouldBe("ask");
        rows["195/60 R15"][3].ShouldBe("-3.15 %");
        page.FindAll("article").Single(a => a.QuerySelector("h2")!.TextContent.StartsWith("185/65 R15 88T", StringComparison.Ordinal)).QuerySelectorAll(".stops").ShouldNotBeEmpty();
    }

    [Fact]
    public void It_is_entered_by_hand_and_the_tables_offer_sizes_until_some_are_named()
    {
        var page = Tool("replace");
        page.Find(".next .button--first").TextContent.ShouldBe("Still needed: the placard’s size of an axle");
        Control(page, "vehicle.axles.0.placard.size").Change("195/65 R15 91H");
        page.FindAll(".stand-ins tbody tr").Count.ShouldBeGreaterThan(3);
        Control(page, "vehicle.axles.1.placard.size").Change("195/65 R15 91H");
        Control(page, "vehicle.axles.0.placard.cold").Change("230");
        Control(page, "fitted.1L.wheel.rim").Change("6J x 15");
        Form(page)["fitted.1R.wheel.rim"].ShouldBe("6J x 15");
        Control(page, "replace.candidates.0.marking").Change("205/60 R15 91V");
        page.FindAll(".stand-ins tbody tr").ShouldHaveSingleItem().TextContent.ShouldContain("205/60 R15 91V");
        page.FindAll("input[type=checkbox]").First(c => c.ParentElement!.TextContent == "3PMSF").Change(true);
        Form(page)["replace.candidates.0.marks.0"].ShouldBe("3PMSF");
        page.Find("#f-replace-axles").QuerySelectorAll("input")[2].Change(true);
        Form(page).Body!["axles"]!.ToJsonString().ShouldBe("[2]");

        Tool("replace").FindAll(".stand-ins tbody tr").ShouldHaveSingleItem();
    }

    [Fact]
    public void A_marking_that_stands_alone_keeps_it_when_a_rim_is_entered()
    {
        var page = Tool("replace", "replace-teal-hatchback.json");
        Control(page, "replace.candidates.4.rim").Change("6J x 15");
        Form(page)["replace.candidates.4"].ShouldBeNull();
        Form(page)["replace.candidates.4.marking"].ShouldBe("185/65 R15 88T");
        Control(page, "replace.candidates.4.marking").GetAttribute("value").ShouldBe("185/65 R15 88T");
        Form(page).Body!["candidates"]!.AsArray().Count.ShouldBe(6);
    }

    [Fact]
    public void On_a_visits_plan_it_reads_the_vehicle_and_the_choice_is_kept_in_the_visit()
    {
        BeforeTheSignature(Role.Technician);
        Page(Leg.Plan, "jobs").FindAll("a").ShouldContain(a => a.GetAttribute("href") == Places.Of(VisitId, Leg.Plan, "replace", null));
        var page = Page(Leg.Plan, "replace");
        page.Find("caption").TextContent.ShouldContain(Visit["vehicle.axles.0.placard.size"]!);
        page.FindAll("button").ShouldNotContain(b => b.TextContent.StartsWith("Begin anew", StringComparison.Ordinal));
        Control(page, "replace.candidates.0.marking").Change(Visit["vehicle.axles.0.placard.size"]!);
        Control(page, "replace.newTread").Change("8");
        page.FindAll("button").Single(b => b.TextContent.StartsWith("Choose ", StringComparison.Ordinal)).Click();
        Visit["replace.chosen"].ShouldBe(Visit["vehicle.axles.0.placard.size"]);
        page.Find(".do-next").TextContent.ShouldContain("as the placard");
        Visit.Reading.Whole.ShouldBeTrue();
    }

    [Fact]
    public void A_choice_makes_the_plan_and_taking_it_back_takes_the_plan_back()
    {
        BeforeTheWork(Role.Technician, [("vehicle.topSpeed", "240 km/h"), .. Sample.Fields().Where(f => f.Field.StartsWith("work.renewed.", StringComparison.Ordinal) || f.Field.StartsWith("work.jobs.", StringComparison.Ordinal)).Select(f => (f.Field, ""))]);
        var page = Page(Leg.Plan, "replace");
        Control(page, "replace.candidates.0.marking").Change("205/55 R16 91V");
        Control(page, "replace.candidates.0.rim").Change("6.5J x 16");
        page.FindAll("button").Single(b => b.TextContent == "Choose 205/55 R16 91V").Click();
        foreach (var at in new[] { "1L", "1R", "2L", "2R" })
        {
            Visit[$"work.renewed.{at}.tyre.marking"].ShouldBe("205/55 R16 91V");
            Visit[$"work.jobs.{at}"].ShouldBe("demount");
            Visit[$"work.renewed.{at}.valve.kind"].ShouldBe("clamp-in");
        }

        var plan = Page(Leg.Plan, "jobs");
        Control(plan, "work.renewed.2R.tyre.marking").GetAttribute("value").ShouldBe("205/55 R16 91V");
        plan.FindAll("section").Single(s => s.GetAttribute("aria-labelledby") == "with-them").TextContent.ShouldContain("the pressure label: a second one", Case.Insensitive);
        Visit.State.Work.RenewedWheels.Count.ShouldBe(4);

        var again = Page(Leg.Plan, "replace");
        again.FindAll("button").Single(b => b.TextContent == "Take the choice back").Click();
        Visit.Fields.Under("work.renewed").ShouldBeEmpty();
        Visit["replace.chosen"].ShouldBeNull();
        Visit.Reading.Whole.ShouldBeTrue();
    }
}
