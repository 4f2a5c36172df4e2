using Bunit;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Tests.LookOver;

/// <summary>The wheel's page tells how the tread is worn, as soon as depths stand there.</summary>
public sealed class WearTests : BayContext
{
    [Fact]
    public void Depths_tell_the_likeliest_wear_with_its_causes_and_edges_change_it()
    {
        BeforeTheWork(Role.Technician);
        var page = Page(Leg.LookOver, "1L");
        foreach (var zone in new[] { "inner", "centre", "outer" })
        {
            foreach (var place in Visit.Fields.Under($"fitted.1L.tread.{zone}").Select(e => e.Field).ToList())
            {
                Control(page, place).Change(zone == "inner" ? "3,2" : "5,4");
            }
        }

        var part = page.Find("section[aria-labelledby=wear]");
        part.QuerySelector(".lead")!.TextContent.ShouldContain("One shoulder (inner)");
        part.QuerySelectorAll("dl dt").Length.ShouldBe(4);
        part.QuerySelectorAll("tbody tr").Length.ShouldBe(10);

        foreach (var place in Visit.Fields.Under("fitted.1L.tread.inner").Select(e => e.Field).ToList())
        {
            Control(page, place).Change("5.3");
        }

        Control(page, "fitted.1L.tread.blocks.2.leading").Change("6.3");
        page.FindAll(".problem, .field-problem, [id$=-problem]").Count.ShouldBeGreaterThan(0);
        Control(page, "fitted.1L.tread.blocks.2.trailing").Change("4.8");
        Visit["fitted.1L.tread.blocks.2.place"].ShouldBe("outer");
        page.Find("section[aria-labelledby=wear] .lead").TextContent.ShouldContain("Heel and toe");

        Control(page, "fitted.1L.tread.blocks.2.leading").Change("");
        Control(page, "fitted.1L.tread.blocks.2.trailing").Change("");
        Visit["fitted.1L.tread.blocks.2.place"].ShouldBeNull();
    }
}
