using AngleSharp.Dom;
using Bunit;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Refit;

namespace Trundle.Web.Client.Tests.Refit;

public sealed class StagesTests : BayContext
{
    [Fact]
    public void Each_stage_says_its_share_and_what_the_wrench_is_set_to()
    {
        BeforeTheWork(Role.Technician, ("work.steps.1L.hub-face", "done"), ("work.steps.1L.by-hand", "all by hand"));
        var page = Page(Leg.Refit, "1L", "stages");
        var rows = page.FindAll(".beside-picture tbody tr").Select(r => r.Children.Select(c => c.TextContent.Trim()).ToList()).ToList();
        rows.ShouldBe([["1", "50 %", "60 N·m (44 lbf·ft)"], ["2", "100 %", "120 N·m (89 lbf·ft)"]]);
        page.Find("h1").TextContent.ShouldStartWith("Front left");
        page.FindAll(".caution").ShouldNotBeEmpty();
        page.Markup.ShouldContain("50 to 100 km");
        page.Find(".read--wide").TextContent.ShouldContain("kN");
    }

    [Fact]
    public void The_sequence_is_walked_fixing_by_fixing_and_an_interruption_begins_at_the_first_stage()
    {
        BeforeTheWork(Role.Technician, ("work.steps.1L.hub-face", "done"), ("work.steps.1L.by-hand", "all by hand"));
        var page = Page(Leg.Refit, "1L", "stages");
        var order = WheelFixings.PlanAt(Visit, Trundle.Engine.Vehicles.Position.Read("1L").Value)!.OrderInUse;
        foreach (var fixing in order)
        {
            Next(page).TextContent.ShouldBe($"Stage 1: fixing {fixing} is at 50 %");
            Next(page).Click();
        }

        Next(page).TextContent.ShouldBe($"Stage 2: fixing {order[0]} is at 100 %");
        page.FindAll("button").Single(b => b.TextContent == "Interrupted").Click();
        Next(page).TextContent.ShouldBe($"Stage 1: fixing {order[0]} is at 50 %");
        Visit["work.steps.1L.stages"].ShouldBe("interrupted");
        page.FindAll(".stops").Select(s => s.TextContent).ShouldContain("Slacken all, begin again at the first stage.");

        static IElement Next(IRenderedComponent<BayPage> page) => page.Find(".next button.button--first");
    }

    [Fact]
    public void The_makers_own_order_comes_first()
    {
        BeforeTheWork(Role.Technician, ("work.steps.1L.hub-face", "done"), ("work.steps.1L.by-hand", "all by hand"), ("vehicle.axles.0.fixings.order.0", "1"), ("vehicle.axles.0.fixings.order.1", "3"), ("vehicle.axles.0.fixings.order.2", "5"), ("vehicle.axles.0.fixings.order.3", "2"), ("vehicle.axles.0.fixings.order.4", "4"));
        var page = Page(Leg.Refit, "1L", "stages");
        page.Find(".beside-picture").TextContent.ShouldContain("The maker’s own order: 1 – 3 – 5 – 2 – 4");
    }

    [Fact]
    public void An_adapter_changes_the_setting_and_not_the_torque()
    {
        BeforeTheWork(Role.Technician, ("work.steps.1L.hub-face", "done"), ("work.steps.1L.by-hand", "all by hand"));
        var page = Page(Leg.Refit, "1L", "stages");
        page.Find("#wrench-length").Change("450");
        page.Find("#wrench-adapter").Change("60 mm");

        // 120·450/(450 + 60) = 105.9 N·m.
        var last = page.FindAll(".beside-picture tbody tr")[1].Children.Select(c => c.TextContent.Trim()).ToList();
        last.ShouldBe(["2", "100 %", "120 N·m (89 lbf·ft)", "106 N·m (78 lbf·ft)"]);
    }

    [Fact]
    public void A_turn_without_an_adapter_is_said_at_the_field()
    {
        BeforeTheWork(Role.Technician, ("work.steps.1L.hub-face", "done"), ("work.steps.1L.by-hand", "all by hand"));
        var page = Page(Leg.Refit, "1L", "stages");
        page.Find("#wrench-length").Change("450");
        page.Find("#wrench-turn").Change("90");
        page.Find("#wrench-adapter-problem").TextContent.ShouldContain("A turn needs the adapter’s length.");
        page.Find("#wrench-adapter").GetAttribute("aria-invalid").ShouldBe("true");
    }

    [Fact]
    public void Without_the_makers_torque_there_is_none_and_nothing_is_tightened()
    {
        BeforeTheWork(Role.Technician, ("work.steps.1L.hub-face", "done"), ("work.steps.1L.by-hand", "all by hand"), ("vehicle.axles.0.fixings.torque", ""));
        var page = Page(Leg.Refit, "1L", "stages");
        page.Find(".beside-picture tbody").TextContent.ShouldNotContain("N·m");
        page.FindAll("button").ShouldNotContain(b => b.TextContent.Contains("fixing", StringComparison.Ordinal));
        page.Find(".beside-picture .stops a").GetAttribute("href").ShouldEndWith("/arrive/axle-1#f-vehicle-axles-0-fixings-torque");
    }

    private static readonly (string, string)[] ByHand = [("work.steps.1L.hub-face", "done"), ("work.steps.1L.by-hand", "all by hand"), ("work.steps.1R.hub-face", "done"), ("work.steps.1R.by-hand", "all by hand")];

    private IReadOnlyList<int> Order => WheelFixings.PlanAt(Visit, Trundle.Engine.Vehicles.Position.Read("1L").Value)!.OrderInUse;

    private static IElement First(IRenderedComponent<BayPage> page) => page.Find(".next button.button--first");

    private IRenderedComponent<BayPage> Tightened(int fixings)
    {
        BeforeTheWork(Role.Technician, ByHand);
        var page = Page(Leg.Refit, "1L", "stages");
        for (var i = 0; i < fixings; i++)
        {
            First(page).Click();
        }

        return page;
    }

    [Fact]
    public void Each_fixing_is_an_entry_so_that_leaving_the_page_loses_nothing()
    {
        Tightened(7);
        var order = Order;
        Visit["work.tightening.1L.stage-1"].ShouldBe($"{string.Join(", ", order)} at 50 %");
        Visit["work.tightening.1L.stage-2"].ShouldBe($"{order[0]}, {order[1]} at 100 %");
        Browser.HostEntries.Count(e => e["field"]!.GetValue<string>().StartsWith("work.tightening.1L.stage-", StringComparison.Ordinal)).ShouldBe(7);
    }

    [Fact]
    public void Every_fixings_torque_is_recorded_at_every_stage_by_whom_and_with_which_wrench_and_stays_when_the_page_is_left()
    {
        BeforeTheWork(Role.Technician, [.. ByHand, ("work.instruments.torqueWrench", "wrench 1")]);
        var page = Page(Leg.Refit, "1L", "stages");
        for (var i = 0; i < 6; i++)
        {
            First(page).Click();
        }

        Enumerable.Range(1, 5).ShouldAllBe(n => Visit[TighteningRecord.TorqueAt("1L", 0, n)] == "60 N·m");
        Visit[TighteningRecord.TorqueAt("1L", 1, Order[0])].ShouldBe("120 N·m");
        Visit[TighteningRecord.WrenchAt("1L", 0)].ShouldBe("wrench 1");
        page.FindAll("details legend").Select(l => l.TextContent).ShouldBe(["Stage 1, 50 % · by T2 · with wrench 1", "Stage 2, 100 % · by T2 · with wrench 1"]);

        using var reloaded = new Reload(Browser);
        var again = reloaded.Page(Leg.Refit, "1L", "stages");
        again.FindAll("details legend").Count.ShouldBe(2);
        reloaded.Visit.State.Work.Tightening[Trundle.Engine.Vehicles.Position.Read("1L").Value].Torques[0].Torques.Count.ShouldBe(5);

        // Begun again at the first stage, nothing of the old torques stands.
        First(again).Click();
        reloaded.Visit[TighteningRecord.TorqueAt("1L", 0, 1)].ShouldBeNull();
    }

    [Fact]
    public void A_left_hand_thread_is_said_where_the_hand_is()
    {
        BeforeTheWork(Role.Technician, [.. ByHand, ("vehicle.axles.0.fixings.leftHand", ""), ("vehicle.axles.0.fixings.leftHandSide", "left")]);
        Page(Leg.Refit, "1L", "stages").Find(".beside-picture").TextContent.ShouldContain("Tighten anticlockwise, loosen clockwise: left-hand thread");
        Page(Leg.Refit, "1R", "stages").Find(".beside-picture").TextContent.ShouldContain("Tighten clockwise, loosen anticlockwise");
        Page(Leg.Refit, "1L", "by-hand").FindAll(".caution").Select(c => c.TextContent).ShouldContain(c => c.StartsWith("Left-hand thread: start it and run it in anticlockwise.", StringComparison.Ordinal));
    }

    [Fact]
    public void Turns_counted_by_hand_are_held_against_their_limits_at_once()
    {
        BeforeTheWork(Role.Technician, [ByHand[0], ("vehicle.axles.0.fixings.engagement", "5 turns")]);
        var stops = Page(Leg.Refit, "1L", "by-hand").FindAll(".stops").Select(s => s.TextContent).ToList();
        stops.ShouldContain(s => s.StartsWith("Less than", StringComparison.Ordinal) && s.Contains("memory", StringComparison.Ordinal));
        Visit.State.LeavingFindings.ShouldContain(f => f.Rule == "fixings.engagement-stripping" && f.Position == "axle 1");
    }

    [Theory]
    [InlineData("1R", "stages", Leg.Refit)]
    [InlineData("1L", "by-hand", Leg.Refit)]
    [InlineData("1L", null, Leg.LookOver)]
    public void A_wheel_that_was_left_says_so_and_the_safe_choice_stands_first(string elsewhere, string? step, Leg leg)
    {
        var page = Tightened(7);
        page.Render(p => p.Add(x => x.LegKey, leg.Key()).Add(x => x.Place, elsewhere).Add(x => x.Step, step));
        page.Render(p => p.Add(x => x.LegKey, Leg.Refit.Key()).Add(x => x.Place, "1L").Add(x => x.Step, "stages"));

        page.FindAll(".stops").Select(s => s.TextContent).ShouldContain(t => t.StartsWith($"This wheel was left at stage 2, fixing {Order[2]}, less than a minute ago, by T2.", StringComparison.Ordinal));
        page.FindAll(".next button").Select(b => b.TextContent).ShouldBe(["All slackened: begin again at the first stage", $"Nothing was moved: go on at fixing {Order[2]}"]);
        First(page).Click();
        First(page).TextContent.ShouldBe($"Stage 1: fixing {Order[0]} is at 50 %");
        page.Markup.ShouldContain("Begun again once");
        Visit["work.tightening.1L.stage-1"].ShouldBeNull();
    }

    [Fact]
    public void It_goes_on_at_the_fixing_where_it_was_left_only_at_a_persons_word_which_is_kept()
    {
        Tightened(7);
        using var reloaded = new Reload(Browser);
        var page = reloaded.Page(Leg.Refit, "1L", "stages");
        page.FindAll(".next button")[1].Click();
        reloaded.Visit["work.tightening.1L.wentOn"].ShouldBe($"at stage 2, fixing {Order[2]}: nothing was moved");
        First(page).TextContent.ShouldBe($"Stage 2: fixing {Order[2]} is at 100 %");
        for (var left = 3; left > 0; left--)
        {
            First(page).Click();
        }

        page.Markup.ShouldContain("Every fixing has had its last stage.");
        First(page).TextContent.ShouldBe("All stages in sequence");
    }

    [Fact]
    public void What_another_device_tightened_meanwhile_makes_this_one_ask()
    {
        var page = Tightened(2);
        Browser.Enter([("work.tightening.1L.stage-1", $"{Order[0]}, {Order[1]}, {Order[2]} at 50 %")], DateTimeOffset.UtcNow.AddMinutes(1));
        Visit.NetworkIsBack();
        page.FindAll(".stops").Select(s => s.TextContent).ShouldContain(t => t.StartsWith($"This wheel was left at stage 1, fixing {Order[3]}", StringComparison.Ordinal));
    }

    [Fact]
    public void A_record_that_the_order_in_use_does_not_follow_leaves_only_the_first_stage()
    {
        BeforeTheWork(Role.Technician, [.. ByHand, ("work.tightening.1L.stage-1", "2, 1 at 50 %")]);
        var page = Page(Leg.Refit, "1L", "stages");
        page.FindAll(".next button").Select(b => b.TextContent).ShouldBe(["All slackened: begin again at the first stage"]);
        First(page).Click();
        First(page).TextContent.ShouldBe($"Stage 1: fixing {Order[0]} is at 50 %");
    }

    [Fact]
    public void What_is_begun_is_told_beside_the_page()
    {
        Tightened(6);
        Visit.State.On(Leg.Refit).Steps.Single(s => s.At == "1L" && s.Step.Id == "stages").Why.ShouldBe("Begun and not recorded as done: stage 1 done, stage 2 at 1 of 5 fixings.");
    }

    /// <summary>The same browser after a reload: what is on the host and on the device is there, what was in hand is not.</summary>
    private sealed class Reload : BayContext
    {
        public Reload(FakeBrowser before)
        {
            Browser.HostEntries.AddRange(before.HostEntries);
            Browser.Kept.AddRange(before.Kept);
        }
    }
}
