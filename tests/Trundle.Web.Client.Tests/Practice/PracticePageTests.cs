using System.Globalization;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.AspNetCore.Components.Web;
using Trundle.Engine.Fixings;
using Trundle.Engine.Practice.Bench;
using Trundle.Engine.Practice.Drills;
using Trundle.Engine.Practice;
using Trundle.Web.Client.Practice;

namespace Trundle.Web.Client.Tests.Practice;

/// <summary>Whole attempts on the practice pages, by what stands on them and nothing else.</summary>
public sealed partial class PracticePageTests : BayContext
{
    [Fact]
    public async Task One_weight_is_put_on_where_the_display_says_and_passes()
    {
        var page = Bench("one-weight", 7);
        await TickAsync(page);
        await ClickAsync(page, "Spin");
        var (grams, place) = Shown(page.Find(".measured").TextContent);
        await page.Find("#at-twelve").ChangeAsync(new ChangeEventArgs { Value = place.ToString(CultureInfo.InvariantCulture) });
        page.Find(".turned-wheel desc").TextContent.ShouldContain($"{place}° from the valve at twelve");
        await ClickAsync(page, $"{Math.Round(grams / 5.0, MidpointRounding.AwayFromZero) * 5:0} g");
        page.Find(".shown h2").TextContent.ShouldContain("something was changed since");
        await page.FindAll("input[type=checkbox]")[0].ChangeAsync(new ChangeEventArgs { Value = true });
        await ClickAsync(page, "Spin");
        await ClickAsync(page, "Hand in");
        page.Find("#result").TextContent.ShouldBe("Passed · 100 of 100 points");
        page.Find("#truth").ShouldNotBeNull();
    }

    [Fact]
    public async Task The_second_spin_with_the_guard_left_up_ends_the_attempt_at_once()
    {
        var page = Bench("one-weight", 7);
        await TickAsync(page);
        await ClickAsync(page, "Spin");
        await ClickAsync(page, "Spin");
        page.Find("#result").TextContent.ShouldBe("Stopped for safety · 0 of 100 points");
        page.Find(".stops").TextContent.ShouldContain("guard up");
    }

    [Fact]
    public async Task Two_planes_by_gauges_cone_and_drawer_pass_and_a_typed_word_is_said_at_its_field()
    {
        var wheel = PracticeWheels.Of(11, PracticeLevel.TwoPlanes);
        var page = Bench("two-planes", 11);
        page.Find("#bore-gauge-desc").TextContent.ShouldContain(string.Create(CultureInfo.InvariantCulture, $"{Math.Floor(wheel.Bore.Millimetres + 1e-9)} mm of the main scale; its line {Math.Round(wheel.Bore.Millimetres * 10) % 10}"));
        await page.FindAll("input[name=cone]")[CentringCones.Set.Select(c => c.Suits(wheel.Bore)).ToList().IndexOf(true)].ChangeAsync(new ChangeEventArgs { Value = true });
        await page.FindAll("input[name=cone-end]")[0].ChangeAsync(new ChangeEventArgs { Value = true });
        await page.FindAll("input[name=nut]")[0].ChangeAsync(new ChangeEventArgs { Value = true });
        await ClickAsync(page, "Clamp it so");

        Part(page, "measure");
        await page.Find("#rim-width").ChangeAsync(new ChangeEventArgs { Value = "wide" });
        page.Find("#rim-width-problem").TextContent.ShouldContain("wide");
        foreach (var (field, value) in new[] { ("#rim-distance", wheel.Gauged.RimDistance.Millimetres), ("#rim-diameter", wheel.Gauged.RimDiameter.Inches), ("#rim-width", wheel.Gauged.RimWidth.Inches) })
        {
            await page.Find(field).ChangeAsync(new ChangeEventArgs { Value = value.ToString("0.##", CultureInfo.InvariantCulture) });
        }

        Part(page, "spin");
        await TickAsync(page);
        await ClickAsync(page, "Spin");
        for (var round = 0; round < 4; round++)
        {
            var shown = page.FindAll(".measured").Select(m => Shown(m.TextContent)).ToList();
            if (shown.All(s => s.Grams <= 3))
            {
                break;
            }

            for (var side = 0; side < 2; side++)
            {
                if (shown[side].Grams > 2)
                {
                    await page.FindAll("input[name=side]")[side].ChangeAsync(new ChangeEventArgs { Value = true });
                    await page.Find("#at-twelve-slide").InputAsync(new ChangeEventArgs { Value = shown[side].Place.ToString(CultureInfo.InvariantCulture) });
                    await ClickAsync(page, $"{Math.Round(shown[side].Grams / 5.0, MidpointRounding.AwayFromZero) * 5:0} g");
                }
            }

            await page.FindAll("input[type=checkbox]")[0].ChangeAsync(new ChangeEventArgs { Value = true });
            await ClickAsync(page, "Spin");
        }

        await ClickAsync(page, "Hand in");
        page.Find("#result").TextContent.ShouldStartWith("Passed");
    }

    [Theory]
    [InlineData("behind-spokes"), InlineData("wrong-setting"), InlineData("match"), InlineData("calibration")]
    public async Task Every_level_has_its_sheets_and_says_what_is_lacking(string level)
    {
        var page = Bench(level, 3);
        page.FindAll("nav.parts a").Select(a => a.TextContent).ShouldBe(["Centre", "Measure and set", "Look further", "Spin and fit"]);
        page.FindAll("aside.needed li").Count.ShouldBe(BenchCriteria.Of(PracticeAttempts.Of($"wheel/{level}")!.Level!.Value).Count + 1);
        Part(page, "look");
        page.FindAll("td.figure").Count.ShouldBe(24);
        await page.Find("#tyre-turn").ChangeAsync(new ChangeEventArgs { Value = "400" });
        await ClickAsync(page, "Turn it");
        page.Find("#tyre-turn-problem").TextContent.ShouldContain("Less than one turn");
        await page.Find("#tyre-turn").ChangeAsync(new ChangeEventArgs { Value = "-90" });
        await ClickAsync(page, "Turn it");
        page.Markup.ShouldContain("stands 270° from where it came");
        Part(page, "spin");
        await ClickAsync(page, "Spin");
        page.Find("#spin-problem").TextContent.ShouldContain("not clamped");
        await ClickAsync(page, "Hand in");
        page.Find("#result").TextContent.ShouldStartWith("Not yet");
    }

    [Fact]
    public async Task A_valid_sequence_on_the_circle_passes_by_touch_and_by_key()
    {
        var page = Render<TighteningPage>(p => p.Add(x => x.Seed, 4));
        var count = TighteningDrill.Of(4).Count;
        for (var fixing = 1; fixing <= count; fixing++)
        {
            await Fixing(page, fixing).ClickAsync(new());
        }

        foreach (var hand in new[] { 1, 2 })
        {
            await page.FindAll("input[name=in-hand]")[hand].ChangeAsync(new ChangeEventArgs { Value = true });
            foreach (var fixing in TighteningSequence.For(count))
            {
                await Fixing(page, fixing).KeyDownAsync(new KeyboardEventArgs { Key = "Enter" });
            }
        }

        Fixing(page, 1).GetAttribute("aria-label").ShouldBe("Fixing 1, last stage");
        await ClickAsync(page, "Hand in");
        page.Find("#result").TextContent.ShouldBe("Passed · 100 of 100 points");
        await ClickAsync(page, "The same again");
        await page.FindAll("input[name=in-hand]")[3].ChangeAsync(new ChangeEventArgs { Value = true });
        await Fixing(page, 2).ClickAsync(new());
        page.Find("#result").TextContent.ShouldStartWith("Stopped for safety");
    }

    [Fact]
    public async Task A_demount_in_order_passes_and_a_bead_before_the_core_ends_it()
    {
        var page = Render<DemountPage>(p => p.Add(x => x.Seed, 9));
        foreach (var deed in DemountDrill.Deeds.Where(d => !d.IsTrap))
        {
            await ClickAsync(page, deed.Words);
        }

        await ClickAsync(page, "Hand in");
        page.Find("#result").TextContent.ShouldBe("Passed · 100 of 100 points");
        await ClickAsync(page, "The same again");
        await ClickAsync(page, "Break both beads.");
        page.Find(".stops").TextContent.ShouldContain("core in");
    }

    [Theory]
    [InlineData("sidewall"), InlineData("tin"), InlineData("tread"), InlineData("damage"), InlineData("pressure"), InlineData("rotation"), InlineData("mixing"), InlineData("adapter")]
    public async Task A_drill_of_questions_is_answered_on_its_page_and_judged(string key)
    {
        var page = Render<DrillPage>(p => p.Add(x => x.Kind, key).Add(x => x.Seed, 5));
        var drill = DrillList.Of(PracticeAttempts.Of($"drill/{key}")!.Drill!.Value, 5, DateOnly.FromDateTime(DateTime.UtcNow));
        page.FindAll("aside.needed li").Count.ShouldBe(drill.Criteria.Count + 1);
        foreach (var question in drill.Questions)
        {
            if (question.Unit is null)
            {
                var right = question.Choices.Select((c, i) => (c, i)).First(c => question.Hold(c.c.Key).Met).i;
                await page.FindAll($"input[name=answer-{question.Criterion.Key}]")[right].ChangeAsync(new ChangeEventArgs { Value = true });
            }
            else
            {
                await page.Find($"#answer-{question.Criterion.Key}").ChangeAsync(new ChangeEventArgs { Value = question.Hold("0").Required!.Amount.Text });
            }
        }

        await ClickAsync(page, "Hand in");
        page.Find("#result").TextContent.ShouldBe("Passed · 100 of 100 points");
        await ClickAsync(page, "The same again");
        await ClickAsync(page, "Hand in");
        page.FindAll(".judged li").ShouldAllBe(li => li.TextContent.Contains("Nothing was answered", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_number_gives_its_own_wheel_to_everybody_and_what_is_none_is_said()
    {
        var page = Render<PracticePage>();
        await page.Find("#seed").InputAsync(new ChangeEventArgs { Value = "4711" });
        page.FindAll("a").Select(a => a.GetAttribute("href")).ShouldContain("/bay/practice/wheel/two-planes/4711");
        page.FindAll(".tool-list a").Count.ShouldBe(PracticeAttempts.Kinds.Count);
        await page.Find("#seed").InputAsync(new ChangeEventArgs { Value = "many" });
        page.Find("#seed-hint").TextContent.ShouldContain("A whole number");
        Bench("nothing", 1).Find("h1").TextContent.ShouldBe("There is no such practice wheel");
        Render<DrillPage>(p => p.Add(x => x.Kind, "nothing").Add(x => x.Seed, 1)).Find("h1").TextContent.ShouldBe("There is no such drill");
    }

    [Fact]
    public async Task What_was_done_goes_to_the_roll_and_is_judged_there_as_on_the_page()
    {
        var page = Bench("one-weight", 7);
        await TickAsync(page);
        await ClickAsync(page, "Spin");
        await ClickAsync(page, "25 g");
        await ClickAsync(page, "Hand in");
        page.WaitForAssertion(() => page.Markup.ShouldContain("Kept in the roll"));
        var attempt = Browser.Attempts.ShouldHaveSingleItem().Value;
        (attempt.Kind, attempt.Seed).ShouldBe(("wheel/one-weight", 7UL));
        page.Find("#result").TextContent.ShouldContain($" {PracticeAttempts.Judge(attempt).Value.Score} of 100");
        Browser.Remembered.ShouldNotContainKey(PracticeKeeping.Name);
    }

    [Fact]
    public async Task With_no_network_an_attempt_waits_on_the_device_and_leaves_only_for_whoever_did_it()
    {
        Render<PracticePage>();
        Browser.Mood = HostMood.Down;
        var page = Render<DemountPage>(p => p.Add(x => x.Seed, 9));
        await ClickAsync(page, "Hand in");
        page.WaitForAssertion(() => page.Markup.ShouldContain("Kept on this device"));

        // Somebody else enters here once the host answers: it stays.
        Browser.Mood = HostMood.Answers;
        var own = JsonNode.Parse(Browser.Remembered[PracticeKeeping.Name]!)!.AsArray();
        own[0]!["by"] = 999;
        Browser.Remembered[PracticeKeeping.Name] = own.ToJsonString();
        var list = Render<PracticePage>();
        list.WaitForAssertion(() => list.Markup.ShouldContain("one attempt waits here"));
        Browser.Attempts.ShouldBeEmpty();

        // Whoever did it: it goes, once.
        own[0]!["by"] = Browser.Me;
        Browser.Remembered[PracticeKeeping.Name] = own.ToJsonString();
        list = Render<PracticePage>();
        list.WaitForAssertion(() => Browser.Attempts.Count.ShouldBe(1));
        list.WaitForAssertion(() => list.Markup.ShouldNotContain("waits here"));
        Browser.Remembered.ShouldNotContainKey(PracticeKeeping.Name);
    }

    [Fact]
    public async Task Where_nobody_enters_nothing_is_kept_and_the_page_says_so()
    {
        Browser.Me = null;
        var page = Render<DemountPage>(p => p.Add(x => x.Seed, 9));
        await ClickAsync(page, "Hand in");
        page.WaitForAssertion(() => page.Markup.ShouldContain("nobody has said who enters here"));
        Browser.Attempts.ShouldBeEmpty();
        Browser.Remembered.ShouldNotContainKey(PracticeKeeping.Name);
    }

    private IRenderedComponent<BenchPage> Bench(string level, int seed) => Render<BenchPage>(p => p.Add(x => x.Level, level).Add(x => x.Seed, seed));

    private static void Part(IRenderedComponent<BenchPage> page, string part) => page.Render(p => p.Add(x => x.Part, part));

    private static async Task TickAsync(IRenderedComponent<BenchPage> page)
    {
        await page.FindAll("input[type=checkbox]")[0].ChangeAsync(new ChangeEventArgs { Value = true });
        await page.FindAll("input[type=checkbox]")[1].ChangeAsync(new ChangeEventArgs { Value = true });
    }

    private static Task ClickAsync<T>(IRenderedComponent<T> page, string words) where T : IComponent => page.FindAll("button").First(b => b.TextContent.Trim() == words).ClickAsync(new());

    private static AngleSharp.Dom.IElement Fixing(IRenderedComponent<TighteningPage> page, int number) => page.Find($"g[aria-label^='Fixing {number},']");

    private static (int Grams, int Place) Shown(string text)
    {
        var m = Reading().Match(text);
        return m.Success ? (int.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture), int.Parse(m.Groups[2].Value, CultureInfo.InvariantCulture)) : (0, 0);
    }

    [GeneratedRegex(@"add (\d+)\sg at (\d+)")]
    private static partial Regex Reading();
}
