using Bunit;
using Trundle.Visits.Bay;

namespace Trundle.Web.Client.Tests.LookOver;

public sealed class MarkingFieldTests : BayContext
{
    [Fact]
    public void What_is_typed_is_read_at_once_and_completed_and_entered_only_by_a_tap()
    {
        Browser.Enter([.. Sample.Fields().Where(f => !f.Item1.EndsWith(".tyre.marking", StringComparison.Ordinal))], Sample.Noon);
        var page = Page(Leg.LookOver, "1L");
        var placard = Visit["vehicle.axles.0.placard.size"]!;

        Control(page, "fitted.1L.tyre.marking").Input(placard[..^4]);

        Visit["fitted.1L.tyre.marking"].ShouldBeNull();
        Offered(page).ShouldContain(placard);
        Offered(page).Count.ShouldBeLessThanOrEqualTo(4);

        Control(page, "fitted.1L.tyre.marking").Input("205/55 R16 91V");
        page.Markup.ShouldContain("index 91");
        Visit["fitted.1L.tyre.marking"].ShouldBeNull();

        Control(page, "fitted.1L.tyre.marking").Input("");
        page.FindAll("[aria-label='The sidewall says'] button").First(b => b.TextContent == placard).Click();
        Visit["fitted.1L.tyre.marking"].ShouldBe(placard);
    }

    [Fact]
    public void Four_equal_tyres_are_said_once_and_each_keeps_its_own_week()
    {
        Browser.Enter([.. Sample.Fields().Where(f => !f.Item1.Contains(".tyre.marking", StringComparison.Ordinal)), ("fitted.1L.tyre.marking", "195/65 R15 91H"), ("fitted.1L.tyre.tin", "1AB CDEFHJ 2220"), ("fitted.1R.tyre.tin", "1AB CDEFHJ 2320")], Sample.Noon);
        var page = Page(Leg.LookOver, "1L");

        page.FindAll("button").First(b => b.TextContent.StartsWith("I have read them", StringComparison.Ordinal)).Click();

        foreach (var other in new[] { "1R", "2L", "2R" })
        {
            Visit[$"fitted.{other}.tyre.marking"].ShouldBe("195/65 R15 91H");
        }

        Visit["fitted.1R.tyre.tin"].ShouldBe("1AB CDEFHJ 2320");
        page.FindAll("button").Any(b => b.TextContent.StartsWith("I have read them", StringComparison.Ordinal)).ShouldBeFalse();
    }

    private static IReadOnlyList<string> Offered(IRenderedComponent<BayPage> page) => [.. page.FindAll("[aria-label='The sidewall says'] button").Select(b => b.TextContent)];
}
