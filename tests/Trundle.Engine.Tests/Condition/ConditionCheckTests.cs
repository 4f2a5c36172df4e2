using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.InUse;
using Trundle.Engine.Tests.Fitment;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Condition;

public sealed class ConditionCheckTests
{
    /// <summary>Rules, class, position, the figure that holds, the rule, and what a breach is.</summary>
    public static TheoryData<string, string, string, string, string, Category> Limits => new()
    {
        { "us", "car", "1L", "us.tread.depth", "tread.depth", Category.Major },
        { "us", "goods over 3500 kg", "1L", "us.tread.depth.heavy-front", "tread.depth.heavy-front", Category.Major },
        { "us", "goods over 3500 kg", "2L", "us.tread.depth.heavy", "tread.depth.heavy", Category.Major },
        { "us", "bus", "1R", "us.tread.depth.heavy-front", "tread.depth.heavy-front", Category.Major },
        { "uk", "car", "1L", "uk.tread.depth", "tread.depth", Category.Dangerous },
        { "uk", "van", "2R", "uk.tread.depth", "tread.depth", Category.Dangerous },
        { "uk", "goods over 3500 kg", "1L", "uk.tread.depth.heavy", "tread.depth.heavy", Category.Dangerous },
        { "uk", "bus", "2L", "uk.tread.depth.heavy", "tread.depth.heavy", Category.Dangerous },
        { "uk", "motorcycle", "1L", "uk.tread.depth.heavy", "tread.depth.heavy", Category.Dangerous },
        { "eu", "car", "1L", "eu.tread.depth", "tread.depth", Category.Dangerous },
        { "", "car", "1L", "trade.tread.depth", "tread.depth", Category.Major },
    };

    /// <summary>A depth that no new tyre of its class has is doubted, at the place and with the unit to look at; the bounds are our own.</summary>
    [Theory]
    [InlineData("195/65 R15 91H", 15, false)]
    [InlineData("195/65 R15 91H", 15.1, true)]
    [InlineData("LT245/75 R16 120/116S", 20, false)]
    [InlineData("LT245/75 R16 120/116S", 20.1, true)]
    [InlineData("315/80 R22.5 156/150L", 25, false)]
    public void A_tread_deeper_than_any_new_one_waits_for_a_person(string marking, double millimetres, bool doubted)
    {
        var tread = new TreadDepths(Depths(6), Depths(millimetres), Depths(6));
        var findings = ConditionCheck.Run(Bay.Four().With("1L", _ => Bay.On("1L", marking) with { Tread = tread })).Findings;
        var doubt = findings.SingleOrDefault(f => f.Rule == "tread.beyond-new");
        (doubt is not null).ShouldBe(doubted);
        if (doubt is not null)
        {
            doubt.Category.ShouldBe(Category.Refer);
            doubt.Position.ShouldBe("1L");
            doubt.Measured.Value!.Value.ShouldBe(millimetres, 1e-9);
            doubt.Action.ShouldContain("32nds");
            doubt.Limit!.Source.Text.ShouldContain("Own choice");
        }
    }

    [Theory]
    [MemberData(nameof(Limits))]
    public void Tread_at_inside_and_outside_its_limit_at_every_place(string rules, string vehicleClass, string position, string figure, string rule, Category breach)
    {
        var limit = InUseLimits.List.Single(l => l.Id == figure).Compared;
        // Heavy classes are told by class where no axle loads are known.
        var vehicle = Bay.Car with { VehicleClass = vehicleClass, Axles = [Bay.Axle(steered: true, loadKilograms: null), Bay.Axle(loadKilograms: null)] };
        foreach (var (depth, expected) in new[] { (limit - 0.0001, breach), (limit, Category.None), (limit + 0.0001, Category.None) })
        {
            foreach (var place in new[] { "inner", "centre", "outer" })
            {
                // With the 1.0 mm rule three quarters of the breadth count, so there the centre goes too.
                var all = place != "centre" && rule == "tread.depth.heavy" && rules == "uk";
                var tread = new TreadDepths(Depths(place == "inner" ? depth : 6), Depths(place == "centre" || all ? depth : 6), Depths(place == "outer" ? depth : 6));
                var finding = ConditionCheck.Run(Bay.Four(Set(rules), vehicle).With(position, a => a with { Tread = tread })).One(rule, position);
                finding.Category.ShouldBe(expected, $"{depth} at {place}");
                finding.Measured.Value!.Value.ShouldBe(depth, 1e-9);
                finding.Limit!.Source.Text.ShouldNotBeNullOrWhiteSpace();
            }
        }
    }

    [Fact]
    public void The_same_1_59_millimetres_pass_in_the_united_states_and_fail_in_the_united_kingdom()
    {
        One("us", "tread.depth", [1.59]).Category.ShouldBe(Category.None);
        One("uk", "tread.depth", [1.59]).Category.ShouldBe(Category.Dangerous);
        One("eu", "tread.depth", [1.59]).Category.ShouldBe(Category.Dangerous);
        One("us", "tread.depth", [1.5875]).Category.ShouldBe(Category.None);
        One("us", "tread.depth", [1.5874]).Category.ShouldBe(Category.Major);
        One("us", "tread.depth", [Quantity.Read<Length>("2/32 in").Value.Millimetres]).Category.ShouldBe(Category.None);
    }

    [Fact]
    public void At_the_height_of_the_indicators_they_are_exposed_by_the_european_categories()
    {
        One("eu", "tread.wear-indicator", [1.6]).Category.ShouldBe(Category.Major);
        Run("eu", [1.61]).Findings.ShouldNotContain(f => f.Rule == "tread.wear-indicator");
        Run("eu", [1.59]).Findings.ShouldNotContain(f => f.Rule == "tread.wear-indicator");
        Run("uk", [1.6]).Findings.ShouldNotContain(f => f.Rule == "tread.wear-indicator");
    }

    [Fact]
    public void The_lowest_of_several_places_round_the_tyre_counts_and_is_named()
    {
        var finding = ConditionCheck.Run(Bay.Four(RuleSet.UnitedKingdom).With("1R", a => a with { Tread = new TreadDepths(Depths(5, 5, 5), Depths(5, 5, 5), Depths(5, 1.2, 5)) })).One("tread.depth", "1R");
        finding.Category.ShouldBe(Category.Dangerous);
        finding.Measured.Text.ShouldStartWith("1.2 mm at the outer");
    }

    [Fact]
    public void One_worn_shoulder_of_a_heavy_vehicle_is_measured_further_in_the_united_kingdom()
    {
        var bus = Bay.Car with { VehicleClass = "bus" };
        Worn(0.9, 3, 3).ShouldBe(("tread.depth.heavy-band", Category.Refer));
        Worn(0.9, 3, 0.9).ShouldBe(("tread.depth.heavy", Category.Dangerous));
        Worn(3, 0.9, 3).ShouldBe(("tread.depth.heavy", Category.Dangerous));
        Worn(0, 3, 3).ShouldBe(("tread.depth.heavy", Category.Dangerous));
        Worn(1.0, 3, 3).ShouldBe(("tread.depth.heavy", Category.None));

        (string, Category) Worn(double inner, double centre, double outer)
        {
            var finding = ConditionCheck.Run(Bay.Four(RuleSet.UnitedKingdom, bus).With("1L", a => a with { Tread = new TreadDepths(Depths(inner), Depths(centre), Depths(outer)) }))
                .Findings.Single(f => f.Position == "1L" && f.Rule.StartsWith("tread.depth", StringComparison.Ordinal));
            return (finding.Rule, finding.Category);
        }
    }

    [Fact]
    public void Where_the_european_text_does_not_cover_the_class_the_country_is_asked_and_the_trade_stands_in()
    {
        var result = ConditionCheck.Run(Bay.Four(RuleSet.EuropeanUnion, Bay.Car with { VehicleClass = "goods over 3500 kg" }).With("1L", a => a with { Tread = Tread(3) }));
        result.Needs.ShouldContain(n => n.Position == "1L" && n.What.Contains("country", StringComparison.Ordinal));
        result.One("tread.depth", "1L").Source.ShouldBe(Source.CommonPractice);
    }

    [Fact]
    public void Tread_near_its_limit_is_said()
    {
        One("us", "tread.near-limit", [2.99]).Category.ShouldBe(Category.Minor);
        Run("us", [3.0]).Findings.ShouldNotContain(f => f.Rule == "tread.near-limit");
    }

    [Fact]
    public void Heaviness_is_told_by_the_axle_loads_where_they_are_known()
    {
        // 10,000 lb = 4535.92 kg.
        foreach (var (kilograms, rule) in new[] { (2267.9, "tread.depth"), (2268.0, "tread.depth.heavy-front") })
        {
            var vehicle = Bay.Car with { Axles = [Bay.Axle(loadKilograms: kilograms), Bay.Axle(loadKilograms: kilograms)] };
            ConditionCheck.Run(Bay.Four(RuleSet.UnitedStates, vehicle).With("1L", a => a with { Tread = Tread(4) })).One(rule, "1L").Category.ShouldBe(Category.None);
        }
    }

    [Fact]
    public void Tread_spread_with_all_wheels_driven()
    {
        var minor = InUseLimits.List.Single(l => l.Id == "trade.tread.spread.minor").Compared;
        var major = InUseLimits.List.Single(l => l.Id == "trade.tread.spread").Compared;
        Spread(minor - 0.0001).ShouldBe(Category.None);
        Spread(minor).ShouldBe(Category.None);
        Spread(minor + 0.0001).ShouldBe(Category.Minor);
        Spread(major).ShouldBe(Category.Minor);
        Spread(major + 0.0001).ShouldBe(Category.Major);
        ConditionCheck.Run(Bay.Four().With("1L", a => a with { Tread = Tread(8) }).With("1R", a => a with { Tread = Tread(2) })).Findings.ShouldNotContain(f => f.Rule.StartsWith("tread.spread", StringComparison.Ordinal));

        static Category Spread(double millimetres)
        {
            var subject = Bay.Four(null, Bay.Car with { Drive = Drive.All });
            subject = subject with { Fitted = [.. subject.Fitted.Select(a => a with { Tread = Tread(a.Position == Bay.At("2L") ? 8 - millimetres : 8) })] };
            return ConditionCheck.Run(subject).Findings.Single(f => f.Rule.StartsWith("tread.spread", StringComparison.Ordinal)).Category;
        }
    }

    [Theory]
    [InlineData(5, 3.5, 5, "wear.centre")]
    [InlineData(3.5, 5, 3.5, "wear.both-shoulders")]
    [InlineData(5, 5, 3.5, "wear.one-shoulder")]
    [InlineData(3.5, 5, 5, "wear.one-shoulder")]
    [InlineData(5, 5, 5, "wear.even")]
    [InlineData(5.2, 5, 4.9, "wear.even")]
    public void The_wear_across_is_one_finding_with_its_probability(double inner, double centre, double outer, string rule)
    {
        var result = ConditionCheck.Run(Bay.Four().With("1L", a => a with { Tread = new TreadDepths(Depths(inner), Depths(centre), Depths(outer)) }));
        var finding = result.Findings.Single(f => f.Position == "1L" && f.Rule.StartsWith("wear.", StringComparison.Ordinal));
        finding.Rule.ShouldBe(rule);
        (finding.Action + finding.Measured.Text).ShouldContain(" %");
        finding.Category.ShouldBe(rule == "wear.even" ? Category.None : Category.Minor);
    }

    [Fact]
    public void Depths_that_change_around_a_tyre_are_one_minor_finding()
    {
        Uneven(5, 4.9, 5).ShouldBe(Category.None);
        Uneven(5, 2.5, 5).ShouldBe(Category.Minor);

        static Category Uneven(params double[] outer) => ConditionCheck.Run(Bay.Four().With("1L", a => a with { Tread = new TreadDepths(Depths(5, 5, 5), Depths(5, 5, 5), Depths(outer)) }))
            .Findings.Single(f => f.Rule.StartsWith("wear.", StringComparison.Ordinal)).Category;
    }

    [Fact]
    public void Left_out_data_is_asked_for_and_is_no_fault()
    {
        var result = ConditionCheck.Run(Bay.Four(RuleSet.UnitedKingdom));
        result.Faults.ShouldBeEmpty();
        result.Needs.Count(n => n.What.StartsWith("tread depths", StringComparison.Ordinal)).ShouldBe(4);
        result.Needs.Count(n => n.What.Contains("TIN", StringComparison.Ordinal)).ShouldBe(4);
        result.Needs.Count(n => n.What.Contains("pressure as found", StringComparison.Ordinal)).ShouldBe(4);
    }

    private static RuleSet? Set(string word) => word switch { "us" => RuleSet.UnitedStates, "uk" => RuleSet.UnitedKingdom, "eu" => RuleSet.EuropeanUnion, _ => null };

    private static IReadOnlyList<Length> Depths(params double[] millimetres) => [.. millimetres.Select(Length.FromMillimetres)];

    private static TreadDepths Tread(double millimetres) => new(Depths(millimetres), Depths(millimetres), Depths(millimetres));

    private static CheckResult Run(string rules, double[] depths) =>
        ConditionCheck.Run(Bay.Four(Set(rules)).With("1L", a => a with { Tread = new TreadDepths(Depths(depths), Depths(depths), Depths(depths)) }));

    private static Finding One(string rules, string rule, double[] depths) => Run(rules, depths).One(rule, "1L");
}
