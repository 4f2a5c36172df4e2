using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.InUse;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Fitment;

public sealed class RollingMatchTests
{
    private static readonly Vehicle AllDriven = Bay.Car with { Drive = Drive.All };

    [Fact]
    public void With_all_wheels_driven_half_a_per_cent_and_one_per_cent_are_the_limits()
    {
        // D = 635 mm: a tread less by t makes it smaller by 2 t, and the spread is D / (D - 2 t) - 1.
        var diameter = Bay.Marked(Bay.Size).Size.OverallDiameter!.Value.Millimetres;
        diameter.ShouldBe(635);
        foreach (var (percent, expected, rule) in new[]
        {
            (0.499, Category.None, "circumference.all-wheel-drive.minor"), (0.501, Category.Minor, "circumference.all-wheel-drive.minor"),
            (0.999, Category.Minor, "circumference.all-wheel-drive.minor"), (1.001, Category.Major, "circumference.all-wheel-drive"),
        })
        {
            var less = diameter * (1 - (1 / (1 + (percent / 100)))) / 2;
            var finding = FitmentCheck.Run(Worn(AllDriven, 8, "2R", 8 - less)).One(rule, null);
            finding.Category.ShouldBe(expected, percent.ToString(System.Globalization.CultureInfo.InvariantCulture));
            finding.Measured.Value!.Value.ShouldBe(percent, 1e-9);
        }
    }

    [Fact]
    public void A_staggered_set_on_its_own_placards_has_no_spread_and_another_size_has()
    {
        var staggered = AllDriven with { Axles = [Bay.Axle("225/45 R17 91W", true, true), Bay.Axle("255/40 R17 94W", driven: true)] };
        FitmentCheck.Run(Bay.Pair(null, "225/45 R17 91W", "255/40 R17 94W", staggered)).One("circumference.all-wheel-drive.minor", null).Measured.Value!.Value.ShouldBe(0, 1e-9);
        FitmentCheck.Run(Bay.Pair(null, "225/45 R17 91W", "225/50 R17 94W", staggered)).One("circumference.all-wheel-drive", null).Category.ShouldBe(Category.Major);
    }

    [Fact]
    public void On_one_driven_axle_a_spread_is_minor_and_other_axles_are_not_compared()
    {
        FitmentCheck.Run(Worn(Bay.Car, 8, "1R", 4)).One("circumference.axle", "axle 1").Category.ShouldBe(Category.Minor);
        FitmentCheck.Run(Worn(Bay.Car, 8, "1R", 5)).One("circumference.axle", "axle 1").Category.ShouldBe(Category.None);
        FitmentCheck.Run(Worn(Bay.Car, 8, "2R", 2)).Findings.Where(f => f.Rule.StartsWith("circumference", StringComparison.Ordinal)).ShouldHaveSingleItem().Category.ShouldBe(Category.None);
    }

    /// <summary>LT265/75R16 is some 804 mm high, so 2/32 in of tread is only 0.4 % of it: the tread's own limits come first.</summary>
    [Theory]
    [InlineData(10.5, "circumference.all-wheel-drive.minor", Category.None, "%")]
    [InlineData(10.2, "circumference.all-wheel-drive.minor", Category.Minor, "mm")]
    [InlineData(8.9, "circumference.all-wheel-drive.minor", Category.Minor, "%")]
    [InlineData(8.5, "circumference.all-wheel-drive", Category.Major, "mm")]
    public void On_a_large_tyre_the_spread_of_treads_decides(double worn, string rule, Category expected, string unit)
    {
        const string size = "LT265/75R16 123/120R";
        var vehicle = new Vehicle { VehicleClass = "car", Drive = Drive.All, Axles = [Bay.Axle(size, true, true), Bay.Axle(size, driven: true)] };
        var subject = Bay.Pair(null, size, size, vehicle);
        var finding = FitmentCheck.Run(subject with { Fitted = [.. subject.Fitted.Select(a => Depth(a, a.Position == Bay.At("2R") ? worn : 12))] }).One(rule, null);
        finding.Category.ShouldBe(expected);
        finding.Measured.Unit.ShouldBe(unit);
        finding.Limit!.Amount.Unit.ShouldBe(unit == "mm" ? "in" : "%");
    }

    [Fact]
    public void A_temporary_spare_beside_a_full_tyre_of_a_driven_axle_is_referred()
    {
        // 195/65 R15: 635 mm; T125/80 D15: 581 mm by design; 635 / 581 = 1.0929.
        var driven = FitmentCheck.Run(Bay.Four(null, Bay.Car).With("1L", _ => Bay.On("1L", "T125/80D15 95M"))).One("circumference.axle.temporary-spare", "axle 1");
        driven.Category.ShouldBe(Category.Refer);
        driven.Measured.Value!.Value.ShouldBe(9.29, 0.01);
        driven.Action.ShouldContain("handbook");
        driven.Source.ShouldBe(Source.CommonPractice);
        FitmentCheck.Run(Bay.Four(null, Bay.Car).With("2L", _ => Bay.On("2L", "T125/80D15 95M"))).Findings.ShouldNotContain(f => f.Rule == "circumference.axle.temporary-spare");
    }

    [Fact]
    public void Two_full_tyres_of_a_driven_axle_farther_apart_than_wear_can_make_are_a_major_finding()
    {
        // 195/65 R15: 635 mm; 185/60 R14: 578 mm by design; 635 / 578 = 1.0986.
        var driven = FitmentCheck.Run(Bay.Four(null, Bay.Car).With("1L", _ => Bay.On("1L", "185/60R14 82H"))).One("circumference.axle.sizes", "axle 1");
        driven.Category.ShouldBe(Category.Major);
        driven.Measured.Value!.Value.ShouldBe(9.86, 0.01);
        driven.Limit!.Source.Status.ShouldBe(SourceStatus.Calculated);
        driven.Source.ShouldBe(Source.CommonPractice);

        // A new tyre beside a worn-out one stays a matter of wear.
        FitmentCheck.Run(Worn(Bay.Car, 8, "1R", 1.6)).One("circumference.axle", "axle 1").Category.ShouldBe(Category.Minor);
        FitmentCheck.Run(Bay.Four(null, Bay.Car).With("2L", _ => Bay.On("2L", "185/60R14 82H"))).Findings.ShouldNotContain(f => f.Rule == "circumference.axle.sizes");
    }

    [Fact]
    public void Without_tread_depths_the_design_sizes_are_compared_and_the_depths_asked_for()
    {
        var result = FitmentCheck.Run(Bay.Four(null, AllDriven));
        result.One("circumference.all-wheel-drive.minor", null).Category.ShouldBe(Category.None);
        result.Needs.ShouldContain(n => n.What.Contains("tread depths of all driven wheels", StringComparison.Ordinal));
    }

    /// <summary>Each step of the table of the trade, and the law's half inch, at, inside and outside.</summary>
    [Theory]
    [InlineData("215/75 R17.5 126/124M", "trade.dual.diameter.30-to-40")]
    [InlineData("195/65 R15 91H", "trade.dual.diameter.under-30")]
    [InlineData("295/80 R22.5 152/148M", "trade.dual.diameter.40-to-50")]
    public void Duals_are_of_nearly_one_diameter(string size, string key)
    {
        var limit = InUseLimits.List.Single(l => l.Id == key).Compared;
        var law = InUseLimits.List.Single(l => l.Id == "us.dual.diameter.law").Compared;
        foreach (var (apart, over) in new[] { (limit - 0.01, false), (limit, false), (limit + 0.01, true) })
        {
            Run(size, apart).One("dual.diameter", "2Lo").Category.ShouldBe(over ? Category.Refer : Category.None);
        }

        foreach (var (apart, over) in new[] { (law - 0.01, false), (law, false), (law + 0.01, true) })
        {
            Run(size, apart, RuleSet.UnitedStates).One("dual.diameter.law", "2Lo").Category.ShouldBe(over ? Category.Major : Category.None);
        }

        Run(size, -1).One("dual.larger-outside", "2Lo").Category.ShouldBe(Category.Minor);
        Run(size, 1).CategoryOf("dual.larger-outside", "2Lo").ShouldBeNull();

        CheckResult Run(string marking, double outerLarger, RuleSet? rules = null)
        {
            var vehicle = new Vehicle { Axles = [Bay.Axle(marking), Bay.Axle(marking) with { Dual = true }] };
            return FitmentCheck.Run(new FittedVehicle(vehicle, [Depth(Bay.On("2Li", marking), 10), Depth(Bay.On("2Lo", marking), 10 + (outerLarger / 2))], rules, null));
        }
    }

    private static Assembly Depth(Assembly assembly, double millimetres) => assembly with { Tread = new TreadDepths([], [Length.FromMillimetres(millimetres)], []) };

    private static FittedVehicle Worn(Vehicle vehicle, double all, string one, double other)
    {
        var subject = Bay.Four(null, vehicle);
        return subject with { Fitted = [.. subject.Fitted.Select(a => Depth(a, a.Position == Bay.At(one) ? other : all))] };
    }
}
