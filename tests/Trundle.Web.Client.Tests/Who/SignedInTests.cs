using Bunit;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Tests.Who;

/// <summary>Where people sign in: the PIN before entering and before the signature, and nothing lost while nobody is signed in.</summary>
public sealed class SignedInTests : BayContext
{
    [Fact]
    public async Task Who_enters_is_asked_for_the_pin_and_a_wrong_one_changes_nothing()
    {
        (Browser.SignIn, Browser.Me) = (true, null);
        BeforeTheWork(Role.Technician);
        var page = Page(Leg.Arrive);
        Browser.Calls.Clear();
        await page.Find(".people button").ClickAsync();
        Browser.Calls.ShouldBeEmpty();
        page.Find("#pin").GetAttribute("type").ShouldBe("password");
        page.Find("#pin").Input("1111");
        await Button(page, "Enter as").ClickAsync();
        page.Find("#pin-problem").TextContent.ShouldBe("That is not the PIN.");
        page.Find("#pin").GetAttribute("value").ShouldBe("");
        Visit.Me.ShouldBeNull();

        page.Find("#pin").Input("8264");
        await Button(page, "Enter as").ClickAsync();
        Visit.Me!.Name.ShouldBe("T2");
        Browser.Calls.ShouldContain("POST /api/v1/people/me/pin");
    }

    [Fact]
    public async Task The_signature_needs_the_pin()
    {
        Browser.SignIn = true;
        BeforeTheSignature(Role.Technician);
        var page = Page(Leg.HandBack);
        await Button(page, "Sign and hand back").ClickAsync();
        Visit.State.HandedBack.ShouldBeFalse();
        page.Find("#pin-problem").TextContent.ShouldBe("That is not the PIN.");
        page.Find("#pin").Input("8264");
        await Button(page, "Sign and hand back").ClickAsync();
        Visit.State.HandedBack.ShouldBeTrue();
    }

    [Fact]
    public async Task While_nobody_is_signed_in_entries_and_photographs_wait_and_the_line_says_so()
    {
        Browser.SignIn = true;
        BeforeTheWork(Role.Technician);
        var page = Page(Leg.Arrive);
        Browser.Mood = HostMood.NobodySignedIn;
        await page.InvokeAsync(() => Visit.EnterAsync("work.bay", "3"));
        await page.InvokeAsync(() => Visit.PhotographAsync("camera", "work.damage.0.photo"));
        await page.InvokeAsync(Visit.NetworkIsBack);
        Visit.Unsent.ShouldBe(2);
        Browser.Kept.Count.ShouldBe(2);
        Browser.KeptPhotos.Count.ShouldBe(1);
        Visit.Photos.Waiting.ShouldAllBe(p => p.Refused == null);
        page.WaitForAssertion(() => page.Find(".unsent").TextContent.ShouldContain("Nobody is signed in on this device: 2 entries wait here."));
        page.Find(".unsent a").GetAttribute("href").ShouldBe($"/sign-in?to=%2Fbay%2F{VisitId:D}%2Farrive");

        Browser.Mood = HostMood.Answers;
        await page.InvokeAsync(Visit.NetworkIsBack);
        Visit.Unsent.ShouldBe(0);
        Visit.SignedOut.ShouldBeFalse();
        Browser.HostPhotos.Count.ShouldBe(1);
        page.WaitForAssertion(() => page.Find(".unsent").TextContent.ShouldBe(""));
    }

    [Fact]
    public void A_page_that_is_opened_while_nobody_is_signed_in_says_so_and_leads_there()
    {
        Browser.Mood = HostMood.NobodySignedIn;
        var page = Page(Leg.Plan);
        page.Find("h1").TextContent.ShouldBe("Nobody is signed in on this device.");
        page.Find("a.button--first").GetAttribute("href").ShouldStartWith("/sign-in?to=");
    }

    private static AngleSharp.Dom.IElement Button(IRenderedComponent<BayPage> page, string starts) =>
        page.FindAll("button").Single(b => b.TextContent.Trim().StartsWith(starts, StringComparison.Ordinal));
}
