using Bunit;
using Trundle.Engine.Balance;
using Trundle.Engine.Vehicles;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Balance;

namespace Trundle.Web.Client.Tests.Balance;

/// <summary>What few wheels need for their balance: folded away, and read by the command's own reader.</summary>
public sealed class SeldomFieldsTests : BayContext
{
    private const string At = "fitted.1R.balance";

    private IRenderedComponent<BayPage> FirstSpin(params (string, string)[] over)
    {
        BeforeTheSignature(Role.Technician, over);
        return Page(Leg.OffTheCar, "1R", "first-spin");
    }

    private BalanceOutcome Outcome => WheelBalance.Of(Visit, Position.Read("1R").Value).Outcome!;

    [Fact]
    public void They_are_folded_away_until_one_is_entered()
    {
        var page = FirstSpin();
        var details = page.FindAll("details").Single(d => d.TextContent.Contains("Places to keep free", StringComparison.Ordinal));
        details.HasAttribute("open").ShouldBeFalse();
        Control(page, $"{At}.readingPlanes.inner.radius").Change("190");
        page.FindAll("details").Single(d => d.TextContent.Contains("Places to keep free", StringComparison.Ordinal)).HasAttribute("open").ShouldBeTrue();
    }

    [Fact]
    public void Planes_of_the_machine_are_read_and_a_missing_one_is_said_there()
    {
        var page = FirstSpin();
        foreach (var (field, typed) in new[] { ("inner.radius", "200"), ("inner.axial", "0"), ("outer.radius", "200") })
        {
            Control(page, $"{At}.readingPlanes.{field}").Change(typed);
        }

        page.FindAll(".plane .problem").Select(p => p.TextContent).ShouldContain(t => t.Contains("'axial' is missing", StringComparison.Ordinal));
        Control(page, $"{At}.readingPlanes.outer.axial").Change("180");
        Outcome.Problem.ReadingPlanes!.Outer.Axial.Millimetres.ShouldBe(180, 1e-9);
        page.Find(".polar").TextContent.ShouldContain("needed");
    }

    [Fact]
    public void A_place_to_keep_free_is_named_and_no_weight_sits_in_it()
    {
        var page = FirstSpin();
        var clip = Outcome.Weights.First(w => w.Plane == PlaneSide.Inner);
        page.FindAll("button").Single(b => b.TextContent.Contains("a place where nothing may sit", StringComparison.Ordinal)).Click();
        page.Find($"#f-fitted-1R-balance-forbidden-0-plane input[value=inner]").Change("inner");
        Control(page, $"{At}.forbidden.0.from").Change(FormattableString.Invariant($"{clip.Place.Degrees - 15:0}"));
        Control(page, $"{At}.forbidden.0.to").Change(FormattableString.Invariant($"{clip.Place.Degrees + 15:0}"));
        Control(page, $"{At}.forbidden.0.note").Change("sensor");
        Outcome.Problem.Forbidden.Count.ShouldBe(1);
        Outcome.Weights.Where(w => w.Plane == PlaneSide.Inner).ShouldAllBe(w => Math.Abs((w.Place - clip.Place).Degrees) > 14.4 && Math.Abs((w.Place - clip.Place).Degrees) < 345.6);
        page.FindAll("button").Single(b => b.TextContent == "Take arc 1 back").Click();
        Outcome.Problem.Forbidden.ShouldBeEmpty();
    }

    [Fact]
    public void A_count_stands_with_its_mass_and_stays_when_the_line_is_typed_anew()
    {
        var page = FirstSpin();
        var masses = StockItems.Masses(Visit, $"{At}.stock.clip");
        masses.Count.ShouldBeGreaterThan(3);
        var line = Control(page, $"{At}.stock.clip").GetAttribute("value");
        page.Find("#f-fitted-1R-balance-stock-clip-1-count").Change("0");
        Visit[$"{At}.stock.clip.1.mass"].ShouldBe(masses[1]);
        Visit[$"{At}.stock.clip.1"].ShouldBeNull();
        Control(page, $"{At}.stock.clip").GetAttribute("value").ShouldBe(line);
        Outcome.Problem.Stock.Clip[1].Count.ShouldBe(0);

        // One mass less before it: the count goes with its mass, not with its place.
        Control(page, $"{At}.stock.clip").Change(string.Join(", ", masses.Skip(1).Select(m => m.Replace(" g", "", StringComparison.Ordinal))));
        StockItems.Of(Visit, $"{At}.stock.clip")[0].ShouldBe(new Trundle.Web.Client.Balance.StockItem(masses[1], null, "0"));
        StockItems.Masses(Visit, $"{At}.stock.clip").ShouldBe(masses.Skip(1));
        Outcome.Problem.Stock.Clip[0].Count.ShouldBe(0);

        page.Find("#f-fitted-1R-balance-stock-clip-0-count").Change("");
        Visit[$"{At}.stock.clip.0"].ShouldBe(masses[1]);
        Visit.Fields.Under($"{At}.stock.clip.0").Count().ShouldBe(1);
    }

    [Fact]
    public void A_segment_has_a_length_in_millimetres()
    {
        var page = FirstSpin(($"{At}.stock.adhesive.0", "5 g"), ($"{At}.stock.adhesive.1", "10 g"));
        page.Find("#f-fitted-1R-balance-stock-adhesive-0-length").Change("19");
        Visit[$"{At}.stock.adhesive.0.length"].ShouldBe("19 mm");
        Outcome.Problem.Stock.Adhesive[0].Size!.Value.Millimetres.ShouldBe(19, 1e-9);
        page.FindAll("#f-fitted-1R-balance-stock-clip-0-length").ShouldBeEmpty();
    }
}
