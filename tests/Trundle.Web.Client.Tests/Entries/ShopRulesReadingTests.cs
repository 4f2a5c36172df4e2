using Trundle.Engine.Findings;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tests.Entries;

/// <summary>The tablet judges by the workshop's rules that came with the visit, without asking anybody, and goes on doing so entry by entry.</summary>
public sealed class ShopRulesReadingTests
{
    [Fact]
    public void The_browser_judges_by_the_workshops_rules()
    {
        const string rules = """{"rules":[{"id":"tread","quantity":"tread depth","holds":"at least","limit":"3 mm","ruleSets":["uk"],"category":"refer","text":"Three.","action":"Offer a tyre.","source":"Workshop rule"}]}""";
        var fields = VisitFields.Of(WorkshopRules.Read(FileNode.Parse(rules, "rules").Value).Value.Fields.Concat([("rules", "uk"), ("fitted.1L.tread.centre.0", "2.9 mm")]).Select(At));
        var first = VisitReading.Of(fields);
        Own(first).ShouldBe(Category.Refer);
        first.State.Stops.ShouldContain(s => s.DecisionKey == "shop-tread@1L");

        var second = VisitReading.Of(fields.With([At(("fitted.1L.tread.centre.0", "3 mm"), 0) with { At = DateTimeOffset.UnixEpoch.AddMinutes(1) }]), Guid.Empty, [], first);
        Own(second).ShouldBe(Category.None);
        second.State.Stops.ShouldNotContain(s => s.DecisionKey == "shop-tread@1L");
    }

    private static Category Own(VisitReading reading)
    {
        reading.Problems.ShouldBeEmpty();
        return reading.State.On(Leg.LookOver).Findings.Single(f => f.Rule == "shop.tread").Category;
    }

    private static Entry At((string Field, string Typed) field, int index) => new(Guid.CreateVersion7(), field.Field, field.Typed, "T1", Role.Technician, DateTimeOffset.UnixEpoch);
}
