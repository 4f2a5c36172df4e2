using System.Globalization;
using System.Text.Json.Nodes;
using Bunit;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using Trundle.Web.Client.Tools;
using Trundle.Web.Client.Tools.Balancer;

namespace Trundle.Web.Client.Tests.Tools;

/// <summary>The balancer put to its tests: one at a time, each answered as the command answers it.</summary>
public sealed class BalancerPageTests : ToolContext
{
    private const string Worked = "balance-machine-worked.json";

    [Theory]
    [InlineData("wheel-shop", "shop", 0)]
    [InlineData("reduction", "knownMass", 4)]
    [InlineData("traverse-inner", "traverse", 1)]
    [InlineData("index", "index", 2)]
    [InlineData("repeat", "repeat", 2)]
    public void Each_test_is_answered_by_itself_as_the_command_answers_it(string test, string key, int drawings)
    {
        var page = Test(test, Worked);
        var file = JsonNode.Parse(Text(Worked))!.AsObject();
        foreach (var other in new[] { "shop", "knownMass", "traverse", "index", "repeat" }.Where(o => o != key))
        {
            file.Remove(other);
        }

        foreach (var besides in new[] { ("rotor", "index"), ("permissible", "repeat") }.Where(b => b.Item2 != key))
        {
            file.Remove(besides.Item1);
        }

        (file["traverse"] as JsonObject)?.Remove("outer");
        Form(page).Body!.ToJsonString().ShouldBe(OperationList.Of("balance machine").Run(FileNode.From(file)).Value.Body.ToJsonString());
        page.Find("[aria-label=Answer] h2").TextContent.ShouldStartWith("What it says · ");
        page.FindAll("[aria-label=Answer] figure svg").Count.ShouldBe(drawings);
        page.FindAll("[aria-label=Answer] svg").ShouldAllBe(s => s.QuerySelector("title") != null && s.QuerySelector("desc")!.TextContent.Length > 40);
        page.FindAll("nav[aria-label=Tests] a").ShouldAllBe(a => a.TextContent.EndsWith("passed", StringComparison.Ordinal));
    }

    [Fact]
    public void The_numbers_of_the_worked_sample_stand_on_the_page_with_limit_source_and_status()
    {
        // By hand: 97 g at 2 degrees for 100 g leaves 4.5627 g of 100 g.
        var known = Answer("reduction");
        known.ShouldContain("95.4 %");
        known.ShouldContain("Limit 95.0 %");
        known.ShouldContain("ISO 21940-21");
        known.ShouldContain("(read)");

        // Made from a fixture of 1500 g·mm at 75 degrees and a wheel of 2200 g·mm at 200 degrees, at 200 mm.
        var index = Answer("index");
        index.ShouldMatch(@"Fixture: heavy place 7\.5 g at 7[45]");
        index.ShouldMatch(@"Wheel: heavy place 11 g at (199|200)");
        index.ShouldContain("0.220 mm on a dial");
        Answer("wheel-shop").ShouldContain("repeat the wheel-shop test in 2 weeks");
        Answer("repeat").ShouldContain("With 5.00 g permitted: accept up to");
    }

    [Fact]
    public void Only_the_fields_of_the_chosen_test_stand_there_and_a_half_made_one_holds_no_other_up()
    {
        var page = Test("repeat", Worked);
        page.FindAll("[id^=f-index], [id^=f-traverse], [id^=f-shop], [id^=f-knownMass], #f-rotor-mass").ShouldBeEmpty();
        Form(page)["permissible"].ShouldBe("5 g");

        // Spoil another test: this one still answers, and the other says that it is begun.
        Browser.Remembered["trundle-balancer"] = JsonNode.Parse(Browser.Remembered["trundle-balancer"])!.AsObject() is var kept && kept.Remove("index.spins.1.turned") && kept.Remove("traverse.outer.shown.11") ? kept.ToJsonString() : "";
        page = Test("repeat");
        page.FindAll("[aria-label=Answer]").Count.ShouldBe(1);
        page.FindAll("nav[aria-label=Tests] a").Count(a => a.TextContent.EndsWith("begun", StringComparison.Ordinal)).ShouldBe(2);
        Test("traverse-outer").Find("[role=status]").TextContent.ShouldBe("Still needed: the amounts shown at all twelve places.");
        Test("index").Find("[role=status]").TextContent.ShouldBe("Still needed: how far the wheel was turned at spin 2.");
    }

    [Fact]
    public async Task Twelve_amounts_are_entered_one_after_the_other()
    {
        var page = Test("traverse-outer");
        await Control(page, "planes.inner.radius").ChangeAsync(new() { Value = "200" });
        await Control(page, "planes.outer.radius").ChangeAsync(new() { Value = "200" });
        await Control(page, "traverse.outer.testMass").ChangeAsync(new() { Value = "10" });
        for (var place = 0; place < 12; place++)
        {
            page.Find(".dial-now").TextContent.ShouldContain(string.Create(CultureInfo.InvariantCulture, $"Place {place + 1} of 12 · mass at {30 * place}°"));
            await page.Find(".dial-now input").InputAsync(new() { Value = place == 4 ? "13" : "10" });
            await page.Find(".dial-now .button--first").ClickAsync(new());
        }

        // By hand: the mean is 10.25 g, and 13 g lies 26.83 % above it.
        var answer = page.Find("[aria-label=Answer]").TextContent;
        answer.ShouldContain("Failed. Balance nothing more on this machine before this is right");
        answer.ShouldContain("26.83 %");
        answer.ShouldContain("Limit 12 %");
        page.Find("[aria-label=Answer] svg").OuterHtml.ShouldContain("+27 %");
        Form(page)["traverse.outer.shown.4"].ShouldBe("13 g");
    }

    [Fact]
    public async Task The_turn_that_stands_ready_goes_in_with_the_amount()
    {
        var page = Test("index");
        Control(page, "index.spins.1.turned").GetAttribute("value").ShouldBe("180");
        await Control(page, "index.spins.1.display.inner.mass").ChangeAsync(new() { Value = "4" });
        Form(page)["index.spins.1.turned"].ShouldBe("180");
        page.FindAll("p.caution").ShouldContain(c => c.TextContent.Contains("If it does not run on freely, stop"));
    }

    [Fact]
    public async Task Where_nobody_gave_a_limit_the_figure_is_told_and_not_judged()
    {
        var page = Test("repeat", Worked);
        await Control(page, "repeat.limit").ChangeAsync(new() { Value = "" });
        var answer = page.Find("[aria-label=Answer]").TextContent;
        answer.ShouldContain("Undecided. Ask the machine's maker how well spins should repeat.");
        answer.ShouldContain("Inner plane: not judged");
        answer.ShouldContain("Limit not given");
        answer.ShouldContain("the limit is the machine maker's to say, and was not given");
    }

    [Fact]
    public void From_one_test_to_another_the_page_goes_with_the_address()
    {
        var page = Test("repeat", Worked);
        Navigation.NavigateTo(BalancerTest.All.Single(t => t.Key == "index").Address);
        page.WaitForAssertion(() => page.FindAll("#f-index-spins").Count.ShouldBe(1));
        page.FindAll("#f-repeat-spins").ShouldBeEmpty();
        page.Find("nav[aria-label=Tests] a[aria-current]").TextContent.ShouldStartWith("Index balancing");
    }

    [Fact]
    public async Task Whole_spins_fold_to_a_line_when_the_next_is_asked_for()
    {
        var page = Test("repeat", Worked);
        page.FindAll("details.spin-told").Count(d => d.HasAttribute("open")).ShouldBe(0);
        page.FindAll("details.spin-told > summary")[1].TextContent.ShouldBe("inner 21.87 g at 319.3° · outer 15.53 g at 140.4°");
        await page.FindAll("button").Single(b => b.TextContent == "Enter spin 11").ClickAsync(new());
        page.FindAll("details.spin-told").Select(d => d.HasAttribute("open")).ShouldBe([.. Enumerable.Repeat(false, 10), true]);
        foreach (var (field, typed) in new[] { ("inner.mass", "22"), ("inner.angle", "320"), ("outer.mass", "15"), ("outer.angle", "140") })
        {
            await Control(page, $"repeat.spins.10.{field}").ChangeAsync(new() { Value = typed });
        }

        // Under the hand nothing folds.
        page.FindAll("details.spin-told")[10].HasAttribute("open").ShouldBeTrue();
        page.Find("[aria-label=Answer] desc").TextContent.ShouldStartWith("11 spins");
    }

    [Fact]
    public void All_tests_go_into_one_file_that_the_command_reads()
    {
        var text = Uri.UnescapeDataString(Test("index", Worked).Find("a[download]").GetAttribute("href")!.Split(',', 2)[1]);
        OperationList.Of("balance machine").Run(FileNode.Parse(text, "file").Value).Value.Body.ToJsonString().ShouldBe(Command("balance machine", Worked).Body.ToJsonString());
    }

    [Fact]
    public async Task Beginning_anew_takes_one_test_away()
    {
        var page = Test("index", Worked);
        await page.FindAll("button").Single(b => b.TextContent == "Begin anew").ClickAsync(new());
        await page.FindAll("button").Single(b => b.TextContent == "Really take all of it away").ClickAsync(new());
        Form(page).Fields.Under("index").ShouldBeEmpty();
        Form(page)["repeat.limit"].ShouldBe("1.5 g");
        Form(page)["planes.inner.radius"].ShouldBe("200 mm");
    }

    private string Answer(string test) => Test(test, Worked).Find("[aria-label=Answer]").TextContent;

    private IRenderedComponent<ToolPage> Test(string test, string? sample = null)
    {
        if (sample is not null)
        {
            Browser.Remembered["trundle-balancer"] = new JsonObject(Fields(sample).Select(f => KeyValuePair.Create(f.Field, (JsonNode?)f.Typed))).ToJsonString();
        }

        Navigation.NavigateTo(BalancerTest.All.Single(t => t.Key == test).Address);
        return Render<ToolPage>(p => p.Add(x => x.Key, BalancerTest.Tool));
    }
}
