using AngleSharp.Dom;
using Bunit;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tests.LookOver;

/// <summary>Damage, repairs, wheel, valve and sensor on the look over: a kind is chosen, and only what that kind asks for appears.</summary>
public sealed class InspectionTests : BayContext
{
    private const string Damage = "fitted.2R.damage.0";

    [Fact]
    public void A_puncture_asks_for_what_its_repair_turns_on_and_the_verdict_follows()
    {
        BeforeTheWork(Role.Technician);
        var page = Page(Leg.LookOver, "2R");
        Has(page, $"{Damage}.kind").ShouldBeFalse();
        Button(page, "Enter a damage").Click();
        Has(page, $"{Damage}.kind").ShouldBeTrue();
        Has(page, $"{Damage}.place").ShouldBeFalse("nothing is asked before the kind is chosen");

        Choose(page, $"{Damage}.kind", "puncture");
        Choose(page, $"{Damage}.place", "tread");
        Has(page, $"{Damage}.fromMiddle").ShouldBeTrue();
        Has(page, $"{Damage}.depth").ShouldBeFalse();
        Control(page, $"{Damage}.size").Change("4");
        Verdict(page).ShouldContain("Tyre: repair");
        Verdict(page).ShouldContain("Not entered yet: the tyre maker's repair policy");

        Choose(page, "fitted.2R.tyre.repairPolicy", "permitted");
        Choose(page, "fitted.2R.tyre.repaired", "false");
        Choose(page, "fitted.2R.tyre.ranLow", "false");
        Control(page, $"{Damage}.fromMiddle").Change("30");
        Verdict(page).ShouldNotContain("Not entered yet");

        Control(page, $"{Damage}.fromMiddle").Change("90");
        Verdict(page).ShouldContain("Tyre: discard");
        page.FindAll("article.finding").Select(f => f.TextContent).ShouldContain(t => t.Contains("damage puncture edge", StringComparison.Ordinal) && t.Contains("BS AU 159g", StringComparison.Ordinal));
        Visit.Fields[$"{Damage}.fromMiddle"].ShouldBe("90 mm");
    }

    [Fact]
    public void Another_kind_asks_for_its_own_and_not_for_a_punctures()
    {
        BeforeTheWork(Role.Technician, ($"{Damage}.kind", "crack"), ($"{Damage}.place", "sidewall"));
        var page = Page(Leg.LookOver, "2R");
        Has(page, $"{Damage}.joined").ShouldBeTrue();
        Has(page, $"{Damage}.depth").ShouldBeTrue();
        Has(page, $"{Damage}.fromMiddle").ShouldBeFalse();
        Has(page, "fitted.2R.tyre.repairPolicy").ShouldBeFalse();
        Choose(page, $"{Damage}.joined", "true");
        Verdict(page).ShouldContain("Tyre: discard");
        Button(page, "Take damage 1 back").Click();
        page.FindAll("section[aria-labelledby=verdict]").ShouldBeEmpty();
    }

    [Fact]
    public void A_repair_a_wheel_a_valve_and_a_sensor_are_entered_by_few_taps()
    {
        BeforeTheWork(Role.Technician);
        var page = Page(Leg.LookOver, "2R");
        Button(page, "Enter repairs").Click();
        Choose(page, "fitted.2R.tyre.repaired", "true");
        Choose(page, "fitted.2R.tyre.repairs.0.place", "tread");
        Choose(page, "fitted.2R.tyre.repairs.0.method", "plug");
        Verdict(page).ShouldContain("Tyre: discard");
        Control(page, "fitted.2R.tyre.repairs.0.around").Change("90");
        Visit["fitted.2R.tyre.repairs.0.around"].ShouldNotBeNull();

        Button(page, "Enter a wheel damage").Click();
        Has(page, "fitted.2R.wheel.damage.0.size").ShouldBeFalse();
        Choose(page, "fitted.2R.wheel.damage.0.kind", "bent-flange");
        Control(page, "fitted.2R.wheel.damage.0.size").Change("4");
        Verdict(page).ShouldContain("Wheel: renew");

        Has(page, "fitted.2R.valve.state").ShouldBeFalse();
        Choose(page, "fitted.2R.valve.kind", "rubber-snap-in");
        Choose(page, "fitted.2R.valve.state", "cracked");
        Verdict(page).ShouldContain("Valve: renew");

        Choose(page, "fitted.2R.sensor", "working");
        Choose(page, "fitted.2R.sensorParts.seal", "worn");
        Verdict(page).ShouldContain("Sensor: renew");
        Visit.Reading.Whole.ShouldBeTrue();
    }

    /// <summary>A visit keeps the workshop's rules that it was opened with; one that is no stricter than what is carried now is told, and blocks nothing.</summary>
    [Fact]
    public void A_rule_of_the_workshop_that_the_carried_ones_have_overtaken_is_told()
    {
        BeforeTheWork(Role.Technician, ("rules", "uk"), ("shopRules.rules.0.id", "tread"), ("shopRules.rules.0.quantity", "tread depth"), ("shopRules.rules.0.holds", "at least"), ("shopRules.rules.0.limit", "1 mm"),
            ("shopRules.rules.0.category", "refer"), ("shopRules.rules.0.text", "One."), ("shopRules.rules.0.action", "Offer a tyre."), ("shopRules.rules.0.source", "Workshop rule"));
        var page = Page(Leg.LookOver);
        page.FindAll(".caution").Select(c => c.TextContent).ShouldContain(t => t.Contains("'shop.tread'", StringComparison.Ordinal) && t.Contains("the stricter holds", StringComparison.Ordinal));
        Visit.Reading.Whole.ShouldBeTrue();
    }

    private static bool Has(IRenderedComponent<BayPage> page, string field) => page.FindAll($"#{FieldPart.IdOf(field)}").Count > 0;

    private static void Choose(IRenderedComponent<BayPage> page, string field, string word) => page.Find($"#{FieldPart.IdOf(field)} input[value='{word}']").Change(word);

    private static IElement Button(IRenderedComponent<BayPage> page, string text) => page.FindAll("button").First(b => b.TextContent.StartsWith(text, StringComparison.Ordinal));

    private static string Verdict(IRenderedComponent<BayPage> page) => page.Find("section[aria-labelledby=verdict]").TextContent;
}
