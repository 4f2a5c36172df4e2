using Bunit;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Tests.LookOver;

/// <summary>A motorcycle's wheel has no side towards the vehicle, and its arrow points the way it turns or against it.</summary>
public sealed class SingleTrackTests : BayContext
{
    [Fact]
    public void A_cars_wheel_has_a_side_towards_the_vehicle()
    {
        BeforeTheWork(Role.Technician);
        Page(Leg.LookOver, "1L").Find("#depths").TextContent.ShouldContain("inner is the side towards the vehicle");
    }

    [Fact]
    public void A_motorcycles_wheel_is_asked_in_its_own_words()
    {
        BeforeTheWork(Role.Technician, ("vehicle.class", "motorcycle"), ("fitted.1L.tyre.directional", "true"));
        var page = Page(Leg.LookOver, "1L");
        page.Find("#depths").TextContent.ShouldContain("inner is the right side, outer the left, as the rider sits");
        var arrow = page.FindAll("fieldset").Single(f => f.QuerySelector("legend")?.TextContent.Contains("The arrow points", StringComparison.Ordinal) == true);
        arrow.TextContent.ShouldContain("the way it turns");
        arrow.TextContent.ShouldNotContain("left side");
    }
}
