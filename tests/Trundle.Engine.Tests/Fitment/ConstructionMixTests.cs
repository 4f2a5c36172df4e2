using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Fitment;

public sealed class ConstructionMixTests
{
    private static readonly (string Letter, string Marking)[] Built = [("D", "195/65 D15 91H"), ("B", "195/65 B15 91H"), ("R", "195/65 R15 91H")];

    private static string Of(char letter) => Built.Single(b => b.Letter[0] == letter).Marking;

    /// <summary>Reg. 26(2) as a matrix: front, rear, fails.</summary>
    public static TheoryData<char, char, bool> Matrix => new()
    {
        { 'D', 'D', false }, { 'D', 'B', false }, { 'D', 'R', false },
        { 'B', 'D', true }, { 'B', 'B', false }, { 'B', 'R', false },
        { 'R', 'D', true }, { 'R', 'B', true }, { 'R', 'R', false },
    };

    [Theory]
    [MemberData(nameof(Matrix))]
    public void The_united_kingdoms_matrix_of_two_axles_holds_in_each_of_its_nine_cells(char front, char rear, bool fails)
    {
        var broken = ConstructionMix.Broken(Bay.Pair(RuleSet.UnitedKingdom, Of(front), Of(rear)));

        broken.Any().ShouldBe(fails);
        if (fails)
        {
            broken.ShouldHaveSingleItem();
            broken[0].Category.ShouldBe(Category.Major);
            broken[0].Source.Text.ShouldContain("reg. 26(2)");
            broken[0].Source.Text.ShouldContain("category by common practice");
            broken[0].Position.ShouldBe("axles 1 and 2");
        }
    }

    [Theory]
    [InlineData('D')]
    [InlineData('B')]
    public void Radial_tyres_in_front_of_others_are_a_finding_under_every_rule_set(char rear)
    {
        foreach (var rules in Bay.EveryRuleSet)
        {
            var broken = ConstructionMix.Broken(Bay.Pair(rules, Of('R'), Of(rear)));
            var finding = broken.ShouldHaveSingleItem();
            finding.Rule.ShouldBe("mix.radial-in-front");
            finding.Category.ShouldBe(Category.Major);
            (finding.Source == Source.CommonPractice).ShouldBe(rules != RuleSet.UnitedKingdom);
        }
    }

    [Fact]
    public void On_one_axle_constructions_never_mix_under_any_rule_set_each_with_its_own_source()
    {
        var sources = new List<string>();
        foreach (var rules in Bay.EveryRuleSet)
        {
            foreach (var (one, other) in Built.SelectMany(a => Built, (a, b) => (a, b)))
            {
                var subject = Bay.Four(rules) with { Fitted = [Bay.On("1L", one.Marking), Bay.On("1R", other.Marking)] };
                var finding = ConstructionMix.Judge(subject).Single(f => f.Rule == "mix.axle");
                finding.Category.ShouldBe(one == other ? Category.None : Category.Major);
                sources.Add(finding.Source.Text);
            }
        }

        sources.Distinct().Count().ShouldBe(4);
    }

    [Fact]
    public void Bias_belted_in_front_of_diagonal_is_against_the_united_kingdoms_law_and_advised_against_elsewhere()
    {
        foreach (var rules in Bay.EveryRuleSet)
        {
            var worst = FindingSet.Worst(ConstructionMix.Judge(Bay.Pair(rules, Of('B'), Of('D'))));
            worst.ShouldBe(rules == RuleSet.UnitedKingdom ? Category.Major : Category.Minor);
        }
    }

    [Fact]
    public void With_all_wheels_driven_no_two_axles_differ()
    {
        var four = Bay.Car with { Drive = Drive.All };
        ConstructionMix.Broken(Bay.Pair(RuleSet.UnitedKingdom, Of('D'), Of('R'))).ShouldBeEmpty();
        ConstructionMix.Broken(Bay.Pair(RuleSet.UnitedKingdom, Of('D'), Of('R'), four)).ShouldHaveSingleItem().Rule.ShouldBe("mix.all-wheel-drive");
    }

    [Fact]
    public void All_steered_axles_and_all_driven_axles_that_are_not_steered_are_built_alike_in_the_united_kingdom()
    {
        var lorry = new Vehicle { Axles = [Bay.Axle(steered: true), Bay.Axle(steered: true), Bay.Axle(driven: true), Bay.Axle(driven: true)] };
        FittedVehicle Fitted(string built, RuleSet rules) => new(lorry, [.. built.Select((letter, i) => Bay.On($"{i + 1}L", Of(letter)))], rules, null);

        Rules("DDRR").ShouldBeEmpty();
        Rules("DBRR").ShouldContain("mix.steered");
        Rules("DDRB").ShouldContain("mix.driven");
        Rules("DDRB").ShouldNotContain("mix.steered");
        ConstructionMix.Judge(Fitted("DBRR", RuleSet.EuropeanUnion)).Select(f => f.Rule).ShouldNotContain("mix.steered");

        List<string> Rules(string built) => [.. ConstructionMix.Broken(Fitted(built, RuleSet.UnitedKingdom)).Where(f => f.Rule != "mix.other-vehicle").Select(f => f.Rule)];
    }

    [Fact]
    public void Twin_rear_wheels_three_axles_and_wide_tyres_are_referred_with_both_readings()
    {
        var twin = Bay.Car with { Axles = [Bay.Axle(steered: true), Bay.Axle(driven: true) with { Dual = true }] };
        var three = Bay.Car with { Axles = [Bay.Axle(steered: true), Bay.Axle(driven: true), Bay.Axle()] };
        Refers(new FittedVehicle(twin, [Bay.On("1L", Of('B')), Bay.On("2Li", Of('D'))], RuleSet.UnitedKingdom, null)).ShouldBeTrue();
        Refers(new FittedVehicle(three, [Bay.On("1L", Of('B')), Bay.On("2L", Of('D'))], RuleSet.UnitedKingdom, null)).ShouldBeTrue();

        // 295 is just inside, 305 just outside of what the contact of 300 mm can be.
        Refers(Bay.Pair(RuleSet.UnitedKingdom, "295/65 B15 91H", "295/65 D15 91H")).ShouldBeFalse();
        Refers(Bay.Pair(RuleSet.UnitedKingdom, "300/65 B15 99H", "300/65 D15 99H")).ShouldBeTrue();
        Refers(Bay.Pair(RuleSet.UnitedKingdom, "305/65 B15 91H", "305/65 D15 91H")).ShouldBeTrue();

        static bool Refers(FittedVehicle subject)
        {
            var finding = ConstructionMix.Judge(subject).SingleOrDefault(f => f.Rule == "mix.other-vehicle");
            finding?.Category.ShouldBe(Category.Refer);
            finding?.Cautions.Select(c => c.Split(':')[0]).ShouldBe(["One reading", "Another reading"]);
            return finding is not null;
        }
    }

    [Fact]
    public void A_vehicle_that_does_30_mph_at_most_is_let_out_of_the_two_axle_rule_but_not_of_the_trades()
    {
        foreach (var (mph, law) in new[] { (29.9, false), (30.0, false), (30.1, true) })
        {
            var slow = Bay.Car with { TopSpeed = Speed.FromMilesPerHour(mph) };
            ConstructionMix.Broken(Bay.Pair(RuleSet.UnitedKingdom, Of('B'), Of('D'), slow)).Any().ShouldBe(law);
            var finding = ConstructionMix.Broken(Bay.Pair(RuleSet.UnitedKingdom, Of('R'), Of('D'), slow)).ShouldHaveSingleItem();
            (finding.Source == Source.CommonPractice).ShouldBe(!law);
        }
    }

    [Fact]
    public void A_temporary_spare_is_excused_on_a_car_and_not_on_a_bus()
    {
        var subject = Bay.Four(RuleSet.UnitedKingdom).With("1L", a => a with { Tyre = new FittedTyre { Marking = Bay.Marked("T125/80 D15 95M") } });
        ConstructionMix.Broken(subject).ShouldBeEmpty();
        ConstructionMix.Judge(subject).Single(f => f.Rule == "spare.excused").Source.Text.ShouldContain("26(5)");
        ConstructionMix.Broken(subject with { Vehicle = Bay.Car with { VehicleClass = "bus" } }).Select(f => f.Rule).ShouldContain("mix.axle");
    }

    [Fact]
    public void A_dash_in_the_size_asks_for_the_construction_and_breaks_only_what_it_breaks_either_way()
    {
        // '-' is diagonal or bias-belted: behind radial tyres both are wrong; beside another '-' nobody knows.
        ConstructionMix.Broken(Bay.Pair(RuleSet.UnitedStates, Of('R'), "195/65-15 91H")).ShouldContain(f => f.Rule == "mix.radial-in-front");

        var open = ConstructionMix.Check(Bay.Pair(RuleSet.UnitedKingdom, "195/65-15 91H", "195/65-15 91H"));
        open.Worst.ShouldBe(Category.None);
        open.Needs.Select(n => n.Position).ShouldBe(["1L", "1R", "2L", "2R"], ignoreOrder: true);

        var read = Bay.Pair(RuleSet.UnitedKingdom, "195/65-15 91H", "195/65-15 91H");
        read = read with { Fitted = [.. read.Fitted.Select(a => a with { Tyre = a.Tyre! with { ConstructionRead = a.Position.Axle == 1 ? Construction.BiasBelted : Construction.Diagonal } })] };
        ConstructionMix.Broken(read).ShouldHaveSingleItem().Rule.ShouldBe("mix.bias-belted-in-front");
    }

    [Fact]
    public void The_spare_is_on_no_axle()
    {
        var subject = Bay.Four(RuleSet.UnitedKingdom);
        ConstructionMix.Broken(subject with { Fitted = [.. subject.Fitted, Bay.On("S", Of('D'))] }).ShouldBeEmpty();
    }

    /// <summary>Every axle against every axle by the plain words of the rules, over all ways to build three axles.</summary>
    [Fact]
    public void Any_radial_axle_in_front_of_another_kind_is_found_whatever_stands_between()
    {
        var three = new Vehicle { Axles = [Bay.Axle(), Bay.Axle(), Bay.Axle()] };
        foreach (var rules in Bay.EveryRuleSet)
        {
            foreach (var built in Built.SelectMany(_ => Built, (a, b) => a.Letter + b.Letter).SelectMany(_ => Built, (ab, c) => ab + c.Letter))
            {
                var expected = Enumerable.Range(0, 3).Any(i => built[i] == 'R' && built[(i + 1)..].Any(c => c != 'R'));
                var subject = new FittedVehicle(three, [.. built.Select((c, i) => Bay.On($"{i + 1}L", Of(c)))], rules, null);
                var said = ConstructionMix.Judge(subject);
                // Where the UK text reads two ways, one finding holds both readings and the trade's rule.
                (said.Any(f => f.Rule == "mix.radial-in-front" && f.Category == Category.Major)
                    || said.Any(f => f.Rule == "mix.other-vehicle" && f.Cautions.Any(c => c.StartsWith("The trade's rule", StringComparison.Ordinal)))).ShouldBe(expected, $"{rules} {built}");
                said.Where(f => f.Rule is "mix.radial-in-front" or "mix.other-vehicle").Select(f => f.Position).ShouldBeUnique($"{rules} {built}: one telling for two axles");
            }
        }
    }
}
