using Bunit;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Tests.LookOver;

/// <summary>A few taps on arrival tell on look over what the complaint may come of, what may not be driven with, and what to ask next.</summary>
public sealed class ComplaintTests : BayContext
{
    [Fact]
    public void Taps_on_arrival_are_answered_on_look_over_and_the_next_question_is_asked_there()
    {
        BeforeTheWork(Role.Technician);
        Page(Leg.LookOver).FindAll("section[aria-labelledby=complaint]").ShouldBeEmpty();

        var arrive = Page(Leg.Arrive);
        arrive.Find("#f-vehicle-complaintDetail-kind input[value=shake]").Change(true);
        arrive.Find("#f-vehicle-complaintDetail-after input[value=wheel-work]").Change(true);
        Visit["vehicle.complaintDetail.after"].ShouldBe("wheel-work");

        var page = Page(Leg.LookOver);
        var part = page.Find("section[aria-labelledby=complaint]");
        page.Find(".stops").TextContent.ShouldContain("Not to be driven");
        part.QuerySelectorAll(".caution")[0].TextContent.ShouldContain("A wheel may be coming loose");
        part.QuerySelectorAll("dl dt").Length.ShouldBe(4);
        var before = part.QuerySelector("dl dt")!.TextContent;

        var asked = page.Find("section[aria-labelledby=complaint] fieldset").Id!;
        asked.ShouldStartWith("f-vehicle-complaintDetail-");
        page.FindAll("section[aria-labelledby=complaint] fieldset input")[^1].Change(true);
        Visit.Fields.Under("vehicle.complaintDetail").Count().ShouldBe(3);
        page.Find("section[aria-labelledby=complaint] fieldset").Id.ShouldNotBe(asked);
        page.Find("section[aria-labelledby=complaint] dl dt").TextContent.ShouldNotBe(before);

        Page(Leg.Plan).Find("section[aria-labelledby=complaint] .caution").TextContent.ShouldContain("coming loose");
    }
}
