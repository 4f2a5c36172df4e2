using System.Text.Json.Nodes;
using Bunit;
using Trundle.Visits.Bay;
using Trundle.Visits.Paper;
using Trundle.Web.Client.Paper;

namespace Trundle.Web.Client.Tests.Paper;

/// <summary>The pages of the visit's paper in the bay.</summary>
public sealed class PaperPagesTests : BayContext
{
    private static AngleSharp.Dom.IElement Button(IRenderedComponent<BayPage> page, string words) =>
        page.FindAll("button").First(b => b.TextContent.StartsWith(words, StringComparison.Ordinal));

    [Fact]
    public void Lamps_are_entered_lit_or_not_and_the_rest_by_one_touch()
    {
        BeforeTheWork(Role.Technician);
        var page = Page(Leg.Arrive, "came");
        page.Find("#f-arrival-lamps-tyre-pressure input[value=true]").Change("true");
        Button(page, "The rest are not lit").Click();
        Visit.State.Entered.Arrival.Lit.ShouldBe(["tyre pressure"]);
        Visit.State.Entered.Arrival.Lamps.Count.ShouldBe(WarningLamp.All.Count);
        page.FindAll("button").ShouldNotContain(b => b.TextContent.StartsWith("The rest", StringComparison.Ordinal));
    }

    [Fact]
    public void A_photograph_is_kept_on_the_device_named_by_an_entry_shown_and_sent()
    {
        BeforeTheWork(Role.Technician);
        var page = Page(Leg.Arrive, "came");
        Button(page, "Enter a damage").Click();
        Control(page, "arrival.damage.0.place").Change("front left wing");
        Browser.Mood = HostMood.Down;
        page.Find("#f-arrival-damage-0-photos-camera").Change("C:\\fakepath\\wing.jpg");

        var id = Visit["arrival.damage.0.photos.0"].ShouldNotBeNull();
        Guid.TryParseExact(id, "D", out var photo).ShouldBeTrue();
        page.Find("ul.photos img").GetAttribute("src").ShouldStartWith("data:image/jpeg");
        page.Find("ul.photos img").GetAttribute("alt").ShouldBe("Photograph 1 of front left wing");
        Browser.KeptPhotos.ShouldHaveSingleItem();
        page.WaitForAssertion(() => page.Find(".unsent").TextContent.ShouldContain("1 photograph"));

        Browser.Mood = HostMood.Answers;
        Visit.NetworkIsBack();
        page.WaitForAssertion(() => Browser.HostPhotos.ShouldHaveSingleItem().ShouldBe($"/api/v1/visits/{VisitId:D}/photos/{photo:D}"));
        Browser.KeptPhotos.ShouldBeEmpty();
        page.WaitForAssertion(() => page.Find("ul.photos").TextContent.ShouldNotContain("not yet sent"));
    }

    [Fact]
    public void What_an_earlier_page_left_unsent_is_sent_by_this_one()
    {
        Browser.KeptPhotos.Add(new JsonObject { ["id"] = "01920000-0000-7000-8000-00000000000a", ["visit"] = VisitId.ToString("D"), ["preview"] = "data:," });
        BeforeTheWork(Role.Technician);
        var page = Page(Leg.Arrive, "came");
        Visit.NetworkIsBack();
        page.WaitForAssertion(() => Browser.HostPhotos.Count.ShouldBe(1));
    }

    [Theory]
    [InlineData("too-large", "too large")]
    [InlineData("not-a-picture", "no picture that the browser can read")]
    public void What_is_no_picture_is_said_in_one_sentence_and_nothing_is_entered(string wrong, string words)
    {
        BeforeTheWork(Role.Technician, ("arrival.damage.0.place", "front left wing"));
        Browser.PictureIsWrong = wrong;
        var page = Page(Leg.Arrive, "came");
        page.Find("#f-arrival-damage-0-photos-chosen").Change("C:\\fakepath\\notes.txt");
        page.Find("#f-arrival-damage-0-photos-problem").TextContent.ShouldContain(words);
        Visit.Fields.Under("arrival.damage.0.photos").ShouldBeEmpty();
    }

    [Fact]
    public void A_photograph_that_the_host_will_not_take_says_why_where_it_is_shown()
    {
        BeforeTheWork(Role.Technician, ("arrival.damage.0.place", "front left wing"));
        Browser.PhotoRefused = "There are 60 photographs of this visit already; no more are kept.";
        var page = Page(Leg.Arrive, "came");
        page.Find("#f-arrival-damage-0-photos-chosen").Change("C:\\fakepath\\wing.jpg");
        page.WaitForAssertion(() => page.Find("ul.photos").TextContent.ShouldContain("60 photographs"));
        Button(page, "Take back").Click();
        Browser.KeptPhotos.ShouldBeEmpty();
        Visit.Fields.Under("arrival.damage.0.photos").ShouldBeEmpty();
    }

    [Fact]
    public void The_locking_key_keeps_the_vehicle_until_it_is_said_where_it_is()
    {
        BeforeTheSignature(Role.Technician, ("work.lockingKey.in", "glove box"));
        var page = Page(Leg.HandBack);
        page.Find(".stop-list").TextContent.ShouldContain("Where the locking key is now");
        page.FindAll("button").ShouldNotContain(b => b.TextContent.Contains("Sign and hand back", StringComparison.Ordinal));
        page.Find(".stop-list a").GetAttribute("href").ShouldEndWith("/handBack#f-work-lockingKey-out");
        Control(page, "work.lockingKey.out").Change("given to the driver");
        Visit.State.MayLeave.ShouldBeTrue();
        Button(page, "Sign and hand back").ShouldNotBeNull();
    }

    [Fact]
    public void What_is_seen_with_the_wheels_off_is_passed_on_with_who_saw_it()
    {
        BeforeTheWork(Role.Technician);
        var page = Page(Leg.OffTheCar, "seen");
        Button(page, "Enter what was seen").Click();
        page.Find("#f-work-seen-0-part input[value=boot]").Change("boot");
        page.Find("#f-work-seen-0-position input[value='1R']").Change("1R");
        page.FindAll("#f-work-seen-0-thickness").ShouldBeEmpty("a boot has no thickness");
        Control(page, "work.seen.0.words").Change("split");
        var finding = Visit.State.LeavingFindings.Single(f => f.Rule == "seen.boot");
        finding.Action.ShouldContain("by T2, technician");
        page.Find("section.part").TextContent.ShouldContain("Have it looked at by a workshop for steering and suspension");
        page.FindAll("#f-work-decisions-seen-boot-1R-decision").ShouldHaveSingleItem();
    }

    [Fact]
    public void Declined_work_is_entered_with_its_risk_and_signature()
    {
        BeforeTheWork(Role.Technician);
        var page = Page(Leg.Plan, "agreed");
        Button(page, "Enter work that was declined").Click();
        Control(page, "work.declined.0.what").Change("Front wheel alignment measured");
        page.Find("#f-work-declined-0-risk-problem").TextContent.ShouldContain("in plain words");
        Control(page, "work.declined.0.risk").Change("the tyres wear at their inner edge");
        Control(page, "work.declined.0.signed").Change("P. Driver");
        var declined = Visit.State.Work.Paper.Declined.ShouldHaveSingleItem();
        (declined.Signed, declined.At is { Length: > 10 }).ShouldBe(("P. Driver", true));
    }

    [Fact]
    public void Stock_is_taken_from_the_shops_list_and_counted_up_touch_by_touch()
    {
        Browser.Stock = [new JsonObject { ["kind"] = "valve", ["item"] = "snap-in, short", ["massGrams"] = null, ["unit"] = "piece" }, new JsonObject { ["kind"] = "clip", ["item"] = null, ["massGrams"] = 15, ["unit"] = "piece" }];
        BeforeTheWork(Role.Technician);
        var page = Page(Leg.OffTheCar, "used");
        Button(page, "valve: snap-in, short").Click();
        Button(page, "valve: snap-in, short").Click();
        Button(page, "clip-on weight 15").Click();
        Visit.State.Work.Paper.Stock.Select(s => (s.Name, s.Count)).ShouldBe([("valve: snap-in, short", 2), ("clip-on weight 15 g", 1)]);
    }

    [Fact]
    public void The_weights_that_were_fitted_are_proposed_and_taken_once()
    {
        BeforeTheSignature(Role.Technician);
        var page = Page(Leg.OffTheCar, "used");
        var expected = FittedWeights.Of(Visit).Select(w => (w.Name, w.Count)).ToList();
        expected.Count.ShouldBeGreaterThan(0);

        // By hand from the check's own answer: every piece of every wheel, weighed.
        var grams = Visit.Reading.Read.Balance.Keys.Sum(p => Trundle.Web.Client.Balance.WheelBalance.Of(Visit, p).Outcome!.Weights.Sum(w => w.Mass.Grams));
        FittedWeights.Of(Visit).Sum(w => w.Mass!.Value.Grams * w.Count).ShouldBe(grams, 1e-6);
        for (var i = 0; i < 2; i++)
        {
            Button(page, "Take the weights that were fitted").Click();
            Visit.State.Work.Paper.Stock.Select(s => (s.Name, s.Count)).ShouldBe(expected);
        }
    }

    [Fact]
    public void The_tyres_that_were_replaced_are_proposed_as_scrap_with_their_TIN()
    {
        BeforeTheSignature(Role.Technician);
        var page = Page(Leg.OffTheCar, "used");
        Button(page, "Take the tyres that were replaced").Click();
        var scrap = Visit.State.Work.Paper.Scrap.Tyres;
        scrap.Count.ShouldBe(Visit.State.Work.Renewed.Count);
        scrap.Select(t => t.Tin).ShouldBe(Visit.State.Work.Renewed.Keys.OrderBy(p => p.ToString(), StringComparer.Ordinal).Select(p => Visit.State.Arrived.At(p)!.Tyre!.Tin));
        page.FindAll("button").ShouldNotContain(b => b.TextContent.StartsWith("Take the tyre", StringComparison.Ordinal));
    }

    [Fact]
    public void A_vehicle_identification_number_says_whether_its_check_digit_agrees()
    {
        BeforeTheWork(Role.Technician, ("vehicle.vin", "DEMXPVM49TR000031"));
        Page(Leg.Arrive).Find(".read-as").TextContent.ShouldContain("would be 8");
    }
}
