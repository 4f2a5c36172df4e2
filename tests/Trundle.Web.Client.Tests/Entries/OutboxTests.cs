using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tests.Entries;

/// <summary>Losing the network, the host's answer or the page loses no entry and doubles none.</summary>
public sealed class OutboxTests : IDisposable
{
    private static readonly Guid VisitId = BayContext.VisitId;

    private readonly FakeBrowser _browser = new();
    private readonly List<OpenVisit> _pages = [];

    [Fact]
    public async Task An_entry_is_kept_on_the_device_before_anything_is_sent()
    {
        var visit = await OpenAsync(_browser);
        _browser.Calls.Clear();

        await visit.EnterAsync("vehicle.name", "Grey van");

        _browser.Calls[0].ShouldBe("keep");
        _browser.Calls[1].ShouldStartWith("POST");
    }

    [Fact]
    public async Task Without_the_host_entries_wait_in_order_and_the_page_goes_on_computing()
    {
        var visit = await OpenAsync(_browser);
        _browser.Mood = HostMood.Down;

        await visit.EnterAsync("vehicle.name", "Grey van");
        await visit.EnterAsync("vehicle.odometer", "48200 km");
        await visit.EnterAsync("vehicle.odometer", "48300 km");

        visit.Unsent.ShouldBe(3);
        visit.Reached.ShouldBeFalse();
        visit.State.Arrived.Vehicle.Odometer!.Value.Kilometres.ShouldBe(48300, 1e-9);
        _browser.Kept.Select(e => e["typed"]!.GetValue<string>()).ShouldBe(["Grey van", "48200 km", "48300 km"]);
        _browser.HostEntries.ShouldBeEmpty();
    }

    [Fact]
    public async Task When_the_host_is_back_it_has_each_entry_once_and_in_order()
    {
        var visit = await OpenAsync(_browser);
        _browser.Mood = HostMood.Down;
        await visit.EnterAsync("vehicle.name", "Grey van");
        await visit.EnterAsync("vehicle.odometer", "48200 km");

        _browser.Mood = HostMood.Answers;
        await visit.NetworkIsBack();

        visit.Unsent.ShouldBe(0);
        _browser.Kept.ShouldBeEmpty();
        _browser.HostEntries.Select(e => e["field"]!.GetValue<string>()).ShouldBe(["vehicle.name", "vehicle.odometer"]);
    }

    [Fact]
    public async Task An_answer_lost_on_the_way_doubles_nothing()
    {
        var visit = await OpenAsync(_browser);
        _browser.Mood = HostMood.TakesAndAnswerIsLost;
        await visit.EnterAsync("vehicle.name", "Grey van");
        visit.Unsent.ShouldBe(1);
        _browser.HostEntries.Count.ShouldBe(1);

        _browser.Mood = HostMood.Answers;
        await visit.NetworkIsBack();

        visit.Unsent.ShouldBe(0);
        _browser.HostEntries.Count.ShouldBe(1);
        visit["vehicle.name"].ShouldBe("Grey van");
    }

    [Fact]
    public async Task A_page_that_is_opened_again_takes_up_what_the_last_one_left_unsent()
    {
        var first = await OpenAsync(_browser);
        _browser.Mood = HostMood.Down;
        await first.EnterAsync("vehicle.name", "Grey van");
        first.Dispose();
        _browser.Mood = HostMood.Answers;

        var second = await OpenAsync(new FakeBrowser { Kept = _browser.Kept, HostEntries = _browser.HostEntries });
        second["vehicle.name"].ShouldBe("Grey van");
        await second.NetworkIsBack();

        _browser.HostEntries.Count.ShouldBe(1);
        second.Unsent.ShouldBe(0);
    }

    [Fact]
    public async Task A_refused_entry_stays_with_its_reason_at_the_field_until_it_is_entered_anew()
    {
        var visit = await OpenAsync(_browser);
        _browser.Refuses = e => e["typed"]!.GetValue<string>() == "false" ? "Only an instructor or the owner may take 'condemned' back." : null;

        await visit.EnterAsync("fitted.1L.tyre.condemned", "false");

        visit.ProblemOf("fitted.1L.tyre.condemned").ShouldBe("Only an instructor or the owner may take 'condemned' back.");
        visit.Unsent.ShouldBe(0);
        _browser.Kept.Count.ShouldBe(1);

        await visit.EnterAsync("fitted.1L.tyre.condemned", "true");

        visit.ProblemOf("fitted.1L.tyre.condemned").ShouldBeNull();
        _browser.Kept.ShouldBeEmpty();
    }

    [Fact]
    public async Task A_visit_that_the_host_does_not_know_holds_up_no_other_and_throws_nothing_away()
    {
        var visit = await OpenAsync(_browser);
        _browser.Mood = HostMood.KnowsNoVisit;

        await visit.EnterAsync("vehicle.name", "Grey van");

        visit.Unsent.ShouldBe(1);
        _browser.Kept.Count.ShouldBe(1);
    }

    [Fact]
    public async Task Moments_rise_strictly_so_that_the_later_entry_is_later_everywhere()
    {
        var visit = await OpenAsync(_browser);
        for (var i = 0; i < 20; i++)
        {
            await visit.EnterAsync("vehicle.name", $"van {i}");
        }

        var entries = _browser.HostEntries.Select(e => (At: e["at"]!.GetValue<string>(), Id: new Guid(e["id"]!.GetValue<string>()))).ToList();
        entries.Count.ShouldBe(20);
        entries.Zip(entries.Skip(1)).ShouldAllBe(p => string.CompareOrdinal(p.First.At, p.Second.At) < 0);
        entries.Zip(entries.Skip(1)).ShouldAllBe(p => p.First.Id.CompareTo(p.Second.Id) < 0);
        visit["vehicle.name"].ShouldBe("van 19");
    }

    [Fact]
    public async Task What_another_device_entered_appears_here()
    {
        var visit = await OpenAsync(_browser);
        _browser.Enter([("vehicle.name", "Blue hatchback")], Sample.Noon);

        await visit.NetworkIsBack();

        visit.State.Arrived.Vehicle.Name.ShouldBe("Blue hatchback");
    }

    [Fact]
    public async Task A_browser_that_keeps_nothing_says_so_and_still_sends()
    {
        _browser.Keeps = false;
        var visit = await OpenAsync(_browser);
        visit.Keeps.ShouldBeFalse();

        await visit.EnterAsync("vehicle.name", "Grey van");

        _browser.HostEntries.Count.ShouldBe(1);
    }

    [Fact]
    public async Task The_same_text_again_is_no_new_entry()
    {
        var visit = await OpenAsync(_browser);
        await visit.EnterAsync("vehicle.name", "Grey van");
        await visit.EnterAsync("vehicle.name", "Grey van");

        _browser.HostEntries.Count.ShouldBe(1);
    }

    public void Dispose() => _pages.ForEach(p => p.Dispose());

    [Fact]
    public async Task A_page_that_is_opened_with_no_network_shows_what_the_host_told_before_and_what_waits()
    {
        _browser.Enter([("vehicle.name", "Grey van"), ("vehicle.odometer", "48200 km")], DateTimeOffset.UtcNow.AddHours(-1));
        _browser.Instruments = [new System.Text.Json.Nodes.JsonObject { ["name"] = "W1", ["kind"] = "torque wrench", ["inUseFrom"] = "2026-01-01" }];
        var first = await OpenAsync(_browser);
        _browser.Mood = HostMood.Down;
        await first.EnterAsync("vehicle.odometer", "48300 km");

        var second = await OpenAsync(new FakeBrowser { Mood = HostMood.Down, Kept = _browser.Kept, Known = _browser.Known, Remembered = _browser.Remembered });
        second.Loaded.ShouldBeTrue();
        second.Trouble.ShouldBeNull();
        (second["vehicle.name"], second["vehicle.odometer"], second.Unsent).ShouldBe(("Grey van", "48300 km", 1));
        second.Me!.Name.ShouldBe("T2");
        second.Instruments.Count.ShouldBe(first.Instruments.Count);
        await second.EnterAsync("work.bay", "3");
        second["work.bay"].ShouldBe("3");

        // A device that was never told of the visit says so, and goes on asking.
        (await OpenAsync(new FakeBrowser { Mood = HostMood.Down })).Loaded.ShouldBeFalse();
    }

    [Fact]
    public async Task Where_nobody_is_signed_in_any_more_what_the_host_told_leaves_the_device_and_what_waits_stays()
    {
        _browser.SignIn = true;
        _browser.Enter([("vehicle.name", "Grey van")], DateTimeOffset.UtcNow.AddHours(-1));
        var visit = await OpenAsync(_browser);
        _browser.Known.ShouldNotBeEmpty();
        _browser.Mood = HostMood.NobodySignedIn;
        await visit.EnterAsync("work.bay", "3");
        await visit.NetworkIsBack();
        _browser.Known.ShouldBeEmpty();
        _browser.Remembered.Keys.ShouldNotContain("trundle-beside");
        _browser.Kept.Count.ShouldBe(1);
    }

    private async Task<OpenVisit> OpenAsync(FakeBrowser fake)
    {
        var browser = new Browser(fake);
        var visit = new OpenVisit(browser, new Outbox(browser), new Photos(fake), new KnownVisits(fake, browser), TimeProvider.System);
        _pages.Add(visit);
        await visit.OpenAsync(VisitId);
        return visit;
    }
}
