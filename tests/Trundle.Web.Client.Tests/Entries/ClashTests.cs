using Bunit;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;
using Trundle.Web.Client.Frame;

namespace Trundle.Web.Client.Tests.Entries;

/// <summary>Two tablets on one visit: different fields merge, one field with two values is shown to both until somebody chooses.</summary>
public sealed class ClashTests : BayContext
{
    private const string Field = "vehicle.odometer";

    private readonly List<OpenVisit> _others = [];

    [Fact]
    public async Task Different_fields_merge_and_the_same_text_is_no_clash()
    {
        var (here, there, host) = await TwoAsync();
        await here.EnterAsync("vehicle.name", "Grey van");
        await there.EnterAsync("work.bay", "3");
        await here.EnterAsync(Field, "48200 km");
        await there.EnterAsync(Field, "48200 km");
        await MeetAsync(here, there);
        foreach (var tablet in new[] { here, there })
        {
            (tablet["vehicle.name"], tablet["work.bay"], tablet[Field]).ShouldBe(("Grey van", "3", "48200 km"));
            tablet.Clashes.ShouldBeEmpty();
        }

        host.Count.ShouldBe(4);
    }

    [Fact]
    public async Task A_clash_is_shown_to_both_with_both_values_until_one_chooses()
    {
        var (here, there, _) = await TwoAsync();
        await here.EnterAsync(Field, "48200 km");
        await Task.Delay(2);
        await there.EnterAsync(Field, "42800 km");
        await MeetAsync(here, there);
        foreach (var tablet in new[] { here, there })
        {
            tablet[Field].ShouldBe("42800 km");
            tablet.Clashes.ShouldHaveSingleItem().Entries.Select(e => e.Typed).ShouldBe(["42800 km", "48200 km"]);
        }

        await there.ChooseAsync(there.Clashes[0], there.Clashes[0].Entries[1]);
        await MeetAsync(here, there);
        foreach (var tablet in new[] { here, there })
        {
            tablet[Field].ShouldBe("48200 km");
            tablet.Clashes.ShouldBeEmpty();
        }
    }

    [Fact]
    public async Task The_newest_may_be_chosen_as_it_stands()
    {
        var (here, there, _) = await TwoAsync();
        await here.EnterAsync(Field, "48200 km");
        await Task.Delay(2);
        await there.EnterAsync(Field, "42800 km");
        await MeetAsync(here, there);
        await here.ChooseAsync(here.Clashes[0], here.Clashes[0].Entries[0]);
        await MeetAsync(here, there);
        (here[Field], here.Clashes.Count, there.Clashes.Count).ShouldBe(("42800 km", 0, 0));
    }

    [Fact]
    public async Task The_page_names_the_field_shows_both_and_hand_back_waits()
    {
        BeforeTheSignature(Role.Technician);
        var page = Page(Leg.HandBack);
        await page.InvokeAsync(() => Visit.EnterAsync("fitted.1L.tread.inner.0", "5.01 mm"));
        var before = Browser.HostEntries.First(e => e["field"]!.GetValue<string>() == "fitted.1L.tread.inner.0")["id"]!.GetValue<string>();
        Browser.HostEntries.Add(new System.Text.Json.Nodes.JsonObject
        {
            ["id"] = Guid.NewGuid().ToString("D"), ["field"] = "fitted.1L.tread.inner.0", ["typed"] = "5.04 mm", ["by"] = "T4", ["role"] = "trainee", ["at"] = "2026-03-14T13:00:00.000Z", ["after"] = new System.Text.Json.Nodes.JsonArray(before),
        });
        await page.InvokeAsync(Visit.NetworkIsBack);
        page.WaitForAssertion(() => page.Find(".clash legend").TextContent.ShouldBe("Front left, tread, inner, 1"));
        page.FindAll(".clash button").Select(b => b.TextContent.Split('·')[0].Trim()).ShouldBe(["5.01 mm", "5.04 mm"], ignoreOrder: true);
        page.Find(".unsent a").GetAttribute("href").ShouldEndWith("#clash");
        page.Find(".next a.button--first").TextContent.ShouldBe("Choose between two values");
        await page.FindAll(".clash button").Single(b => b.TextContent.Contains("5.04 mm", StringComparison.Ordinal)).ClickAsync();
        page.FindAll(".clash").ShouldBeEmpty();
        Visit["fitted.1L.tread.inner.0"].ShouldBe("5.04 mm");
    }

    [Fact]
    public void A_field_is_named_in_words()
    {
        BeforeTheWork(Role.Technician);
        Page(Leg.Arrive);
        FieldName.Of("work.steps.2R.bead-broken", Visit.Reading).ShouldBe("Rear right, bead broken");
        FieldName.Of("fitted.2L.tyre.maximumPressure", Visit.Reading).ShouldBe("Rear left, tyre, maximum pressure");
        FieldName.Of("vehicle.odometer", Visit.Reading).ShouldBe("Odometer");
    }

    /// <summary>Two tablets on one host, and neither reaches it.</summary>
    private async Task<(OpenVisit Here, OpenVisit There, List<System.Text.Json.Nodes.JsonObject> Host)> TwoAsync()
    {
        var host = new List<System.Text.Json.Nodes.JsonObject>();
        var tablets = new List<OpenVisit>();
        foreach (var fake in new[] { new FakeBrowser { HostEntries = host }, new FakeBrowser { HostEntries = host } })
        {
            var browser = new Browser(fake);
            var visit = new OpenVisit(browser, new Outbox(browser), new Photos(fake), new KnownVisits(fake, browser), TimeProvider.System);
            await visit.OpenAsync(VisitId);
            fake.Mood = HostMood.Down;
            tablets.Add(visit);
            _others.Add(visit);
            _fakes.Add(fake);
        }

        return (tablets[0], tablets[1], host);
    }

    private readonly List<FakeBrowser> _fakes = [];

    /// <summary>The network comes back for both, and they hear of each other.</summary>
    private async Task MeetAsync(params OpenVisit[] tablets)
    {
        _fakes.ForEach(f => f.Mood = HostMood.Answers);
        foreach (var tablet in tablets.Concat(tablets))
        {
            await tablet.NetworkIsBack();
            tablet.Unsent.ShouldBe(0);
        }
    }

    protected override void Dispose(bool disposing)
    {
        _others.ForEach(v => v.Dispose());
        base.Dispose(disposing);
    }
}
