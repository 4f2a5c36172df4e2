using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Fitment;

public sealed class FitmentCheckTests
{
    [Fact]
    public void A_car_on_its_placard_has_no_fault_under_any_rules_and_shows_what_was_checked()
    {
        foreach (var rules in Bay.EveryRuleSet)
        {
            var result = FitmentCheck.Run(Bay.Four(rules));
            result.Faults.ShouldBeEmpty();
            foreach (var rule in new[] { "size.placard", "load.index", "load.axle", "speed.placard", "rim.diameter", "rim.width", "hub.bolt-circle", "hub.bore", "hub.seat", "wheel.load", "condemned.tyre", "condemned.wheel" })
            {
                result.Findings.Count(f => f.Rule == rule).ShouldBe(4, rule);
            }
        }
    }

    [Fact]
    public void Left_out_data_is_asked_for_and_is_no_fault()
    {
        var bare = new FittedVehicle(new Vehicle { Axles = [new Axle(), new Axle()] }, [new Assembly { Position = Bay.At("1L"), Tyre = new FittedTyre { Marking = Bay.Marked(Bay.Size) } }], null, null);
        var result = FitmentCheck.Run(bare);
        result.Faults.ShouldBeEmpty();
        result.Needs.Select(n => n.Position).ShouldContain("1R");
        result.Needs.ShouldContain(n => n.What.Contains("placard", StringComparison.Ordinal));
        result.Needs.ShouldContain(n => n.Position == "1L" && n.What.Contains("wheel", StringComparison.Ordinal));
        result.Needs.ShouldContain(n => n.What.Contains("driven", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("195/65 R15 90H", Category.Major)]
    [InlineData("195/65 R15 91H", Category.None)]
    [InlineData("195/65 R15 95H", Category.None)]
    public void The_load_index_is_not_below_the_placards(string marking, Category expected) =>
        Changed(marking).One("load.index", "1L").Category.ShouldBe(expected);

    [Theory]
    [InlineData("195/65 R15 91S", "", Category.Major)]
    [InlineData("195/65 R15 91T", "", Category.Major)]
    [InlineData("195/65 R15 91H", "", Category.None)]
    [InlineData("195/65 R15 91V", "", Category.None)]
    [InlineData("195/65 R15 91T", "M+S", Category.Minor)]
    [InlineData("195/65 R15 91T", "3PMSF", Category.Minor)]
    [InlineData("195/65 R15 91U", "", Category.Major)]
    public void The_speed_is_not_below_the_placards_but_winter_tyres_have_their_notice(string marking, string mark, Category expected)
    {
        var result = FitmentCheck.Run(Bay.Four(RuleSet.EuropeanUnion).With("1L", a => a with { Tyre = new FittedTyre { Marking = Bay.Marked(marking), Marks = mark.Length == 0 ? [] : [mark] } }));
        result.One(expected == Category.Minor ? "speed.winter" : "speed.placard", "1L").Category.ShouldBe(expected);
    }

    [Fact]
    public void The_vehicles_top_speed_is_covered()
    {
        foreach (var (kmh, expected) in new[] { (209.9, Category.None), (210.0, Category.None), (210.1, Category.Major) })
        {
            FitmentCheck.Run(Bay.Four(null, Bay.Car with { TopSpeed = Speed.FromKilometresPerHour(kmh) })).One("speed.vehicle", "1L").Category.ShouldBe(expected);
        }
    }

    [Fact]
    public void Only_the_maker_can_say_how_fast_a_bare_ZR_is_above_240()
    {
        var vehicle = Bay.Car with { Axles = [Bay.Axle("195/65 R15 91W", true, true), Bay.Axle()] };
        var result = FitmentCheck.Run(Bay.Four(null, vehicle).With("1L", a => a with { Tyre = new FittedTyre { Marking = Bay.Marked("195/65 ZR15") } }));
        result.CategoryOf("speed.placard", "1L").ShouldBeNull();
        result.Needs.ShouldContain(n => n.Position == "1L" && n.What.Contains("maker's word", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(1229.9, Category.None)]
    [InlineData(1230, Category.None)]
    [InlineData(1230.1, Category.Major)]
    public void Two_tyres_of_index_91_carry_1230_kilograms(double kilograms, Category expected)
    {
        var vehicle = Bay.Car with { Axles = [Bay.Axle(steered: true, driven: true, loadKilograms: kilograms), Bay.Axle()] };
        FitmentCheck.Run(Bay.Four(RuleSet.UnitedStates, vehicle)).One("load.axle", "1L").Category.ShouldBe(expected);
    }

    [Theory]
    [InlineData(1118.18, Category.None)]
    [InlineData(2 * 615 / 1.1, Category.None)]
    [InlineData(1118.19, Category.Major)]
    public void On_another_vehicle_a_car_tyres_rating_counts_divided_by_1_10_in_the_united_states(double kilograms, Category expected)
    {
        // 615 kg / 1.10 x 2 = 1118.18 kg.
        var vehicle = Bay.Car with { VehicleClass = "van", Axles = [Bay.Axle(steered: true, driven: true, loadKilograms: kilograms), Bay.Axle()] };
        FitmentCheck.Run(Bay.Four(RuleSet.UnitedStates, vehicle)).One("load.axle", "1L").Category.ShouldBe(expected);
        FitmentCheck.Run(Bay.Four(RuleSet.EuropeanUnion, vehicle)).One("load.axle", "1L").Category.ShouldBe(Category.None);
    }

    [Fact]
    public void The_moulded_maximum_load_rules_where_it_is_lower_than_the_load_index()
    {
        var vehicle = Bay.Car with { Axles = [Bay.Axle(steered: true, driven: true, loadKilograms: 1225), Bay.Axle()] };
        var result = FitmentCheck.Run(Bay.Four(RuleSet.UnitedStates, vehicle).With("1L", a => a with { Tyre = a.Tyre! with { Marks = ["MAX LOAD 610 KG (1345 LBS)"] } }));
        result.One("load.axle", "1L").Category.ShouldBe(Category.Major);
        result.One("load.axle", "1R").Category.ShouldBe(Category.None);
        result.One("load.axle", "1L").Measured.Value!.Value.ShouldBe(610, 1e-9);
    }

    [Fact]
    public void Duals_are_judged_by_their_dual_load_index_and_share_the_axle_load_by_four()
    {
        const string size = "215/75 R17.5 126/124M";
        var van = new Vehicle { VehicleClass = "goods over 3500 kg", Drive = Drive.Rear, Axles = [Bay.Axle(size, true), Bay.Axle(size, driven: true, loadKilograms: 6400) with { Dual = true }] };
        FittedVehicle Fitted(string inner, double load) => new(van with { Axles = [van.Axles[0], van.Axles[1] with { Load = Mass.FromKilograms(load) }] },
            [Bay.On("2Li", inner), Bay.On("2Lo", size), Bay.On("2Ri", size), Bay.On("2Ro", size)], null, null);

        // LI 124 = 1600 kg.
        FitmentCheck.Run(Fitted(size, 6400)).One("load.axle", "2Li").Category.ShouldBe(Category.None);
        FitmentCheck.Run(Fitted(size, 6401)).One("load.axle", "2Li").Category.ShouldBe(Category.Major);
        FitmentCheck.Run(Fitted("215/75 R17.5 126/123M", 6000)).One("load.index", "2Li").Category.ShouldBe(Category.Major);
        FitmentCheck.Run(Fitted("215/75 R17.5 125/124M", 6000)).One("load.index", "2Li").Category.ShouldBe(Category.None);
    }

    private static CheckResult Pairs(string placard, string fitted, double axleKilograms, RuleSet? rules = null, double? topSpeed = null, string marks = "") => FitmentCheck.Run(new FittedVehicle(
        new Vehicle
        {
            Drive = Drive.Rear,
            TopSpeed = topSpeed is { } kmh ? Speed.FromKilometresPerHour(kmh) : null,
            Axles = [Bay.Axle(placard, true), Bay.Axle(placard, driven: true, loadKilograms: axleKilograms) with { Dual = true }],
        },
        [.. new[] { "2Li", "2Lo", "2Ri", "2Ro" }.Select(p => Bay.On(p, fitted)).Select(a => a with { Tyre = a.Tyre! with { Marks = marks.Length == 0 ? [] : [marks] } })],
        rules,
        null));

    [Theory]
    [InlineData(2920, null)]
    [InlineData(2920.1, Category.Major)]
    [InlineData(3300, Category.Major)]
    public void Without_a_dual_index_a_tyre_in_a_pair_carries_at_most_its_single_load(double axleKilograms, Category? expected)
    {
        // LI 97 = 730 kg, four of them 2920 kg: below that only the dual index can tell.
        foreach (var rules in Bay.EveryRuleSet)
        {
            var result = Pairs("195/70 R15 97T", "195/70 R15 97T", axleKilograms, rules);
            foreach (var position in new[] { "2Li", "2Lo", "2Ri", "2Ro" })
            {
                result.CategoryOf("load.axle", position).ShouldBe(expected);
                result.Needs.Any(n => n.Position == position && n.What == "the tyre's load index or MAX LOAD in a dual pair").ShouldBe(expected is null);
            }
        }

        if (expected is not null)
        {
            var finding = Pairs("195/70 R15 97T", "195/70 R15 97T", axleKilograms).One("load.axle", "2Li");
            finding.Measured.Value!.Value.ShouldBe(730, 1e-9);
            finding.Limit!.Amount.Value!.Value.ShouldBe(axleKilograms / 4, 1e-9);
            finding.Cautions.ShouldContain(c => c.Contains("no more than singly", StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData("195/70 R15C 104/102R", "195/70 R15 97T", Category.Major)]
    [InlineData("195/70 R15C 104/102R", "195/70 R15C 101R", Category.Major)]
    [InlineData("195/70 R15C 104/102R", "195/70 R15C 102R", null)]
    [InlineData("195/70 R15C 104/102R", "195/70 R15C 103R", null)]
    [InlineData("195/70 R15C 104/102R", "195/70 R15C 104/102R", Category.None)]
    [InlineData("195/70 R15 97T", "195/70 R15 96T", Category.Major)]
    [InlineData("195/70 R15 97T", "195/70 R15 97T", null)]
    [InlineData("195/70 R15C 104R", "195/70 R15C 103/101R", Category.Major)]
    [InlineData("195/70 R15C 104R", "195/70 R15C 104/102R", null)]
    public void In_a_pair_a_load_index_below_the_placards_is_said_even_where_a_dual_one_is_missing(string placard, string fitted, Category? expected)
    {
        var result = Pairs(placard, fitted, 2000);
        result.CategoryOf("load.index", "2Li").ShouldBe(expected);
        result.Needs.Any(n => n.Position == "2Li" && n.What.EndsWith("load index in a dual pair", StringComparison.Ordinal)).ShouldBe(expected is null);
    }

    [Fact]
    public void In_a_pair_the_lower_of_two_indices_and_a_load_moulded_for_duals_count()
    {
        // 102 is 850 kg; a dual index above the single one is misread, and the lower holds.
        Pairs("195/70 R15C 102/102R", "195/70 R15C 102/104R", 3400.1).One("load.axle", "2Li").Category.ShouldBe(Category.Major);
        var moulded = Pairs("195/70 R15 97T", "195/70 R15 97T", 2600, marks: "MAX LOAD DUAL 650 KG").One("load.axle", "2Li");
        moulded.Category.ShouldBe(Category.None);
        moulded.Measured.Value!.Value.ShouldBe(650, 1e-9);
        Pairs("195/70 R15 97T", "195/70 R15 97T", 2601, marks: "MAX LOAD DUAL 650 KG").One("load.axle", "2Li").Category.ShouldBe(Category.Major);
        // One moulded for a single tyre is no word for a pair.
        Pairs("195/70 R15 97T", "195/70 R15 97T", 2600, marks: "MAX LOAD 700 KG").CategoryOf("load.axle", "2Li").ShouldBeNull();
        Pairs("195/70 R15 97T", "195/70 R15 97T", 2801, marks: "MAX LOAD 700 KG").CategoryOf("load.axle", "2Li").ShouldBe(Category.Major);
    }

    [Fact]
    public void In_a_pair_at_top_speed_a_load_above_the_single_one_is_said()
    {
        // LI 94 is 670 kg, and a V tyre carries 92.5 % of it at 235 km/h: 619.75 kg.
        Pairs("195/65 R15 94V", "195/65 R15 94V", 4 * 619.7, topSpeed: 235).CategoryOf("load.high-speed", "2Li").ShouldBeNull();
        Pairs("195/65 R15 94V", "195/65 R15 94V", 4 * 619.8, topSpeed: 235).CategoryOf("load.high-speed", "2Li").ShouldBe(Category.Major);
    }

    [Theory]
    [InlineData(5, Category.None)]
    [InlineData(4, Category.Major)]
    [InlineData(6, Category.Major)]
    public void As_many_fixings_as_the_hubs_bolt_circle_is_for(int count, Category expected)
    {
        var axle = Bay.Axle(steered: true, driven: true);
        var finding = FitmentCheck.Run(Bay.Four(null, Bay.Car with { Axles = [axle with { Fixings = axle.Fixings! with { Count = count } }, Bay.Axle()] })).One("fixings.count", "axle 1");
        finding.Category.ShouldBe(expected);
        finding.Limit!.Amount.Text.ShouldBe("5 x 112 mm");
    }

    [Fact]
    public void A_number_of_fixings_other_than_the_wheels_is_said_where_the_hub_is_not_known()
    {
        var axle = Bay.Axle(steered: true, driven: true) with { Hub = null, Fixings = new FixingSet { Count = 4 } };
        var result = FitmentCheck.Run(Bay.Four(null, Bay.Car with { Axles = [axle, Bay.Axle()] }));
        result.CategoryOf("fixings.count", "axle 1").ShouldBeNull();
        result.One("hub.bolt-circle", "1L").Category.ShouldBe(Category.Dangerous);
    }

    [Theory]
    [InlineData("225/45 R17 94W XL", "225/45 R17 91W", "load.extra-load", Category.Major)]
    [InlineData("225/45 R17 94W XL", "225/45 R17 94W", "load.extra-load-word", Category.Refer)]
    [InlineData("225/45 R17 94W XL", "225/45 R17 94W XL", "load.extra-load", Category.None)]
    [InlineData("HL245/40 R19 101Y", "245/40 R19 98Y XL", "load.high-load", Category.Major)]
    [InlineData("HL245/40 R19 101Y", "HL245/40 R19 101Y", "load.high-load", Category.None)]
    [InlineData("LT245/75 R16 LRE", "LT245/75 R16 LRD", "load.range", Category.Major)]
    [InlineData("LT245/75 R16 LRD", "LT245/75 R16 LRE", "load.range", Category.None)]
    [InlineData("205/55 R16 91V", "215/65 R16 98V", "size.placard", Category.Refer)]
    [InlineData("205/55 R16 91V", "P205/55 R16 91V", "size.standard", Category.Minor)]
    [InlineData("165/80 R13 83T", "165 R13 83T", "size.placard", Category.None)]
    public void What_the_placard_asks_for_beyond_the_load_index(string placard, string fitted, string rule, Category expected)
    {
        var vehicle = Bay.Car with { Axles = [Bay.Axle(placard, true, true), Bay.Axle(placard)] };
        FitmentCheck.Run(Bay.Pair(null, fitted, fitted, vehicle)).One(rule, "1L").Category.ShouldBe(expected);
    }

    [Fact]
    public void A_wrong_size_is_major_by_european_law_and_for_a_person_to_decide_elsewhere()
    {
        foreach (var rules in Bay.EveryRuleSet)
        {
            var finding = Changed("205/60 R15 91H", rules).One("size.placard", "1L");
            finding.Category.ShouldBe(rules == RuleSet.EuropeanUnion ? Category.Major : Category.Refer);
        }
    }

    [Theory]
    [InlineData("185/65 R15 91H", Category.Major)]
    [InlineData("195/60 R15 91H", Category.Major)]
    [InlineData("195/65 R15 91H", Category.None)]
    public void One_axle_has_one_size(string marking, Category expected)
    {
        foreach (var rules in Bay.EveryRuleSet)
        {
            Changed(marking, rules).One("axle.size", "axle 1").Category.ShouldBe(expected);
        }
    }

    [Fact]
    public void Aspects_80_and_82_count_as_one_on_an_axle()
    {
        var result = FitmentCheck.Run(Bay.Pair(RuleSet.UnitedKingdom, "165/80 R13 83T", "165/80 R13 83T").With("1L", a => Bay.On("1L", "165 R13 83T")));
        result.One("axle.size", "axle 1").Category.ShouldBe(Category.None);
        result.One("axle.aspect", "axle 1").Category.ShouldBe(Category.Minor);
    }

    [Theory]
    [InlineData("215/70 R16 100H", "6J x 16", Category.None)]
    [InlineData("215/70 R16 100H", "6J x 16.5", Category.Dangerous)]
    [InlineData("8.00-16.5 LT", "6J x 16", Category.Dangerous)]
    [InlineData("190/65 HR390 TRX", "6J x 15", Category.Dangerous)]
    [InlineData("205/55 R16 91V", "160 x 390", Category.Dangerous)]
    [InlineData("190/65 HR390 TRX", "160 x 390", Category.None)]
    public void Rim_and_tyre_have_one_diameter_or_it_is_a_hard_stop(string marking, string rim, Category expected)
    {
        var result = FitmentCheck.Run(Bay.Four().With("1L", a => Bay.On("1L", marking) with { Wheel = Bay.Wheel with { Rim = StampReader.Rim(rim).Value } }));
        result.One("rim.diameter", "1L").Category.ShouldBe(expected);
        if (expected == Category.Dangerous)
        {
            result.Findings.ShouldNotContain(f => f.Rule == "rim.width" && f.Position == "1L");
        }
    }

    [Fact]
    public void Rim_widths_are_judged_by_the_table_only()
    {
        // 195/65 R15: 5.5 to 7.0 in.
        foreach (var (rim, expected) in new[] { ("5J x 15", Category.Refer), ("5.5J x 15", Category.None), ("7J x 15", Category.None), ("7.5J x 15", Category.Refer) })
        {
            FitmentCheck.Run(Bay.Four().With("1L", a => a with { Wheel = Bay.Wheel with { Rim = StampReader.Rim(rim).Value } })).One("rim.width", "1L").Category.ShouldBe(expected);
        }

        var unknown = FitmentCheck.Run(Bay.Pair(null, "185/55 R15 82H", "185/55 R15 82H"));
        unknown.Findings.ShouldNotContain(f => f.Rule == "rim.width");
        unknown.Needs.ShouldContain(n => n.Position == "1L" && n.What.Contains("approved rim widths", StringComparison.Ordinal));
    }

    [Fact]
    public void Bolt_circle_bore_seat_and_rating_at_their_limits()
    {
        var rounding = Figures.Of("fitment.bolt-circle-rounding").Value;
        var play = Figures.Of("fitment.bore-play").Value;
        var under = Figures.Of("fitment.bore-rounding").Value;
        (Func<Wheel, Wheel> Change, string Rule, Category Expected)[] cases =
        [
            (w => w with { BoltCircle = new BoltCircle(5, Length.FromMillimetres(112 + rounding - 0.01)) }, "hub.bolt-circle", Category.None),
            (w => w with { BoltCircle = new BoltCircle(5, Length.FromMillimetres(112 + rounding + 0.01)) }, "hub.bolt-circle", Category.Dangerous),
            (w => w with { BoltCircle = new BoltCircle(4, Length.FromMillimetres(112)) }, "hub.bolt-circle", Category.Dangerous),
            (w => w with { Bore = Length.FromMillimetres(57.1 + play) }, "hub.bore", Category.None),
            (w => w with { Bore = Length.FromMillimetres(57.1 + play + 0.01) }, "hub.bore", Category.Refer),
            (w => w with { Bore = Length.FromMillimetres(57.1 - under) }, "hub.bore", Category.None),
            (w => w with { Bore = Length.FromMillimetres(57.1 - under - 0.01) }, "hub.bore-small", Category.Dangerous),
            (w => w with { Seat = SeatShape.Ball }, "hub.seat", Category.Dangerous),
            (w => w with { Seat = SeatShape.Cone }, "hub.seat", Category.None),
            (w => w with { LoadRating = Mass.FromKilograms(399.9) }, "wheel.load", Category.Major),
            (w => w with { LoadRating = Mass.FromKilograms(400) }, "wheel.load", Category.None),
            (w => w with { Condemned = true }, "condemned.wheel", Category.Dangerous),
        ];
        foreach (var (change, rule, expected) in cases)
        {
            FitmentCheck.Run(Bay.Four().With("1L", a => a with { Wheel = change(Bay.Wheel) })).One(rule, "1L").Category.ShouldBe(expected, rule);
        }
    }

    [Fact]
    public void A_bolt_circle_in_inches_is_the_same_as_in_millimetres()
    {
        var hub = new Hub(null, StampReader.Circle("5 x 4.5 in").Value);
        var vehicle = Bay.Car with { Axles = [Bay.Axle() with { Hub = hub }, Bay.Axle()] };
        FitmentCheck.Run(Bay.Four(null, vehicle).With("1L", a => a with { Wheel = Bay.Wheel with { BoltCircle = StampReader.Circle("5x114.3").Value } })).One("hub.bolt-circle", "1L").Category.ShouldBe(Category.None);
        // 5 x 120 and 5 x 120.65 (4 3/4 in) are two.
        FitmentCheck.Run(Bay.Four(null, Bay.Car with { Axles = [Bay.Axle() with { Hub = new Hub(null, StampReader.Circle("5 x 4 3/4 in").Value) }, Bay.Axle()] })
            .With("1L", a => a with { Wheel = Bay.Wheel with { BoltCircle = StampReader.Circle("5x120").Value } })).One("hub.bolt-circle", "1L").Category.ShouldBe(Category.Dangerous);
    }

    [Fact]
    public void Without_an_axle_load_a_wheel_is_held_against_the_placards_tyre()
    {
        var vehicle = Bay.Car with { Axles = [Bay.Axle(loadKilograms: null), Bay.Axle(loadKilograms: null)] };
        FitmentCheck.Run(Bay.Four(null, vehicle).With("1L", a => a with { Wheel = Bay.Wheel with { LoadRating = Mass.FromKilograms(614) } })).One("wheel.load-placard", "1L").Category.ShouldBe(Category.Refer);
        FitmentCheck.Run(Bay.Four(null, vehicle).With("1L", a => a with { Wheel = Bay.Wheel with { LoadRating = Mass.FromKilograms(615) } })).One("wheel.load-placard", "1L").Category.ShouldBe(Category.None);
    }

    [Theory]
    [InlineData("NHS", "use.restricted", Category.Dangerous)]
    [InlineData("FOR RACING USE ONLY", "use.restricted", Category.Dangerous)]
    [InlineData("NOT FOR HIGHWAY SERVICE", "use.restricted", Category.Dangerous)]
    [InlineData("FARM USE ONLY", "use.restricted", Category.Dangerous)]
    [InlineData("FRT", "use.free-rolling", Category.Major)]
    public void Words_that_keep_a_tyre_off_the_road(string mark, string rule, Category expected)
    {
        var result = FitmentCheck.Run(Bay.Four().With("1L", a => a with { Tyre = a.Tyre! with { Marks = [mark] } }).With("2L", a => a with { Tyre = a.Tyre! with { Marks = ["FRT"] } }));
        result.One(rule, "1L").Category.ShouldBe(expected);
        result.CategoryOf("use.free-rolling", "2L").ShouldBeNull();
    }

    [Fact]
    public void A_condemned_tyre_is_dangerous_wherever_it_sits_the_spares_place_too()
    {
        foreach (var at in new[] { "1L", "S" })
        {
            var subject = Bay.Four();
            subject = subject with { Fitted = [.. subject.Fitted, Bay.On("S")] };
            FitmentCheck.Run(subject.With(at, a => a with { Tyre = a.Tyre! with { Condemned = true } })).One("condemned.tyre", at).Category.ShouldBe(Category.Dangerous);
        }
    }

    [Fact]
    public void A_temporary_spare_in_use_is_for_a_person_to_decide_and_in_its_place_is_in_order()
    {
        const string spare = "T125/80 D15 95M";
        var vehicle = Bay.Car with { SparePlacard = new Placard(Bay.Marked(spare), GaugePressure.FromKilopascals(420), null) };
        var stowed = FitmentCheck.Run(Bay.Four(null, vehicle) with { Fitted = [.. Bay.Four().Fitted, Bay.On("S", spare)] });
        stowed.Faults.ShouldBeEmpty();
        stowed.One("spare.temporary", "S").Limit!.Amount.Value.ShouldBe(80);
        FitmentCheck.Run(Bay.Four(null, vehicle).With("2R", a => Bay.On("2R", spare))).One("spare.in-use", "2R").Category.ShouldBe(Category.Refer);
        FitmentCheck.Run(Bay.Four(null, vehicle) with { Fitted = [.. Bay.Four().Fitted, Bay.On("S", "T135/80 D15 99M")] }).One("spare.size", "S").Category.ShouldBe(Category.Refer);
    }

    [Theory]
    [InlineData(1379.9, Category.None)]
    [InlineData(1380, Category.None)]
    [InlineData(1380.1, Category.Refer)]
    public void The_spare_carries_the_heaviest_wheel(double axleKilograms, Category expected)
    {
        // LI 95 = 690 kg, two of them 1380 kg.
        var vehicle = Bay.Car with { Axles = [Bay.Axle(), Bay.Axle(loadKilograms: axleKilograms)] };
        FitmentCheck.Run(Bay.Four(null, vehicle) with { Fitted = [Bay.On("S", "T125/80 D15 95M")] }).One("spare.load", "S").Category.ShouldBe(expected);
    }

    [Fact]
    public void Without_any_axle_described_the_tyres_are_still_held_against_each_other()
    {
        foreach (var rules in Bay.EveryRuleSet)
        {
            var bare = Bay.Pair(rules, Bay.Size, "195/65 D15 91H", new Vehicle());
            var result = FitmentCheck.Run(bare);
            result.Findings.ShouldContain(f => f.Rule == "mix.radial-in-front" && f.Category == Category.Major);
            result.Findings.ShouldContain(f => f.Rule == "axle.size" && f.Position == "axle 2");
            result.Needs.ShouldContain(n => n.What.Contains("axles from the front", StringComparison.Ordinal));
        }
    }

    [Fact]
    public void The_spares_wheel_goes_on_every_hub()
    {
        var four = new Hub(null, new BoltCircle(4, Length.FromMillimetres(100)));
        var subject = Bay.Four() with { Fitted = [.. Bay.Four().Fitted, Bay.On("S")] };
        FitmentCheck.Run(subject).One("spare.wheel", "S").Category.ShouldBe(Category.None);
        FitmentCheck.Run(subject with { Vehicle = Bay.Car with { Axles = [Bay.Axle(), Bay.Axle() with { Hub = four }] } }).One("spare.wheel", "S").Category.ShouldBe(Category.Refer);
    }

    private static CheckResult Changed(string marking, RuleSet? rules = null) => FitmentCheck.Run(Bay.Four(rules).With("1L", a => Bay.On("1L", marking)));
}
