using Trundle.Engine.Findings;
using Trundle.Engine.Pressure;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using static Trundle.Engine.Tests.Rotation.Invented;

namespace Trundle.Engine.Tests.Pressure;

public class ColdPressureTests
{
    private static readonly PressureConditions Plain = new(null, null, null, null, false, null);

    private static ColdPressure Cold(string? marking, double? loadKg = null, double? placard = null, double? maximum = null, double? wheel = null,
        string? size = null, double? laden = null, bool dual = false, string vehicleClass = "car", double? topSpeed = null, PressureConditions? conditions = null) =>
        ColdPressure.For(
            new Assembly
            {
                Position = Position.On(1, Side.Left, dual ? DualPlace.Outer : DualPlace.Single),
                Tyre = new FittedTyre { Marking = marking is null ? null : Marked(marking), MaximumPressure = maximum is { } m ? Kilopascals(m) : null },
                Wheel = new Wheel { MaximumPressure = wheel is { } w ? Kilopascals(w) : null },
            },
            new Placard(size is null ? null : Marked(size), placard is { } p ? Kilopascals(p) : null, laden is { } l ? Kilopascals(l) : null),
            loadKg is { } kg ? Mass.FromKilograms(kg) : null,
            new Vehicle { VehicleClass = vehicleClass, TopSpeed = topSpeed is { } v ? Speed.FromKilometresPerHour(v) : null },
            conditions ?? Plain);

    private static string[] Ruled(ColdPressure cold) => [.. cold.Considered.Where(l => l.Ruled).Select(l => l.Name)];

    [Fact]
    public void The_placard_rules_where_the_load_needs_less()
    {
        var cold = Cold("205/55 R16 91V", 450, 230, 300);
        cold.Case.ShouldBe(ColdPressureCase.Set);
        cold.Pressure!.Pressure.Kilopascals.ShouldBe(230);
        cold.Pressure.Source.Status.ShouldBe(SourceStatus.Read);
        Ruled(cold).ShouldBe(["placard"]);
    }

    [Fact]
    public void The_load_rules_where_it_needs_more_and_is_rounded_up()
    {
        // 250 kPa (600/615)^(1/0.8) = 242.4 kPa.
        var cold = Cold("205/55 R16 91V", 600, 210, 300);
        cold.Pressure!.Pressure.Kilopascals.ShouldBe(250);
        cold.Considered.Single(l => l.Ruled).Pressure!.Value.Kilopascals.ShouldBe(250 * Math.Pow(600.0 / 615, 1.25), 1e-9);
        Ruled(cold).ShouldBe(["load carried"]);
        Cold("205/55 R16 91V", 600, 210, 300, conditions: Plain with { Rules = RuleSet.UnitedStates }).Pressure!.Pressure.PoundsPerSquareInch.ShouldBe(36, 1e-9);
    }

    [Fact]
    public void Rounding_does_not_pass_a_ceiling_that_the_exact_value_keeps()
    {
        var cold = Cold("205/55 R16 91V", 600, null, 245);
        cold.Case.ShouldBe(ColdPressureCase.Set);
        cold.Pressure!.Pressure.Kilopascals.ShouldBe(245);
    }

    [Fact]
    public void A_placard_in_psi_stays_what_it_says() =>
        Cold(null, null, GaugePressure.FromPoundsPerSquareInch(33).Kilopascals).Pressure!.Pressure.PoundsPerSquareInch.ShouldBe(33, 1e-9);

    [Theory]
    [InlineData(240.0, null, "tyre's marked maximum")]
    [InlineData(300.0, 240.0, "wheel's greatest pressure")]
    public void What_is_needed_above_what_is_allowed_is_a_conflict(double maximum, double? wheel, string ceiling)
    {
        var cold = Cold("205/55 R16 91V", null, 250, maximum, wheel);
        cold.Case.ShouldBe(ColdPressureCase.LimitsConflict);
        cold.Pressure.ShouldBeNull();
        Ruled(cold).ShouldBe(["placard", ceiling]);
    }

    [Fact]
    public void More_than_the_load_index_has_no_pressure()
    {
        var cold = Cold("205/55 R16 91V", 616, 230, 300);
        cold.Case.ShouldBe(ColdPressureCase.Overloaded);
        cold.Pressure.ShouldBeNull();
        Cold("205/55 R16 91V", 615, 230, 300).Case.ShouldBe(ColdPressureCase.Set);
    }

    [Fact]
    public void An_extra_load_tyre_in_place_of_a_standard_one_needs_more_for_the_same_load()
    {
        // 91 at 230 kPa of 250 carries 575.3 kg; 94 XL carries that at 290 (575.3/670)^1.25 = 239.7 kPa.
        var cold = Cold("205/55 R16 94V XL", 450, 230, 340, size: "205/55 R16 91V");
        Ruled(cold).ShouldBe(["the placard's load on the fitted tyre"]);
        cold.Pressure!.Pressure.Kilopascals.ShouldBe(240);
    }

    [Fact]
    public void A_car_tyre_on_another_vehicle_carries_its_rating_divided_by_one_point_one()
    {
        Cold("205/55 R16 91V", 559, 230, 300, vehicleClass: "van").Case.ShouldBe(ColdPressureCase.Set);
        Cold("205/55 R16 91V", 560, 230, 300, vehicleClass: "van").Case.ShouldBe(ColdPressureCase.Overloaded);
        Cold("205/55 R16 91V", 560, 230, 300, vehicleClass: "van", conditions: Plain with { Rules = RuleSet.UnitedKingdom }).Case.ShouldBe(ColdPressureCase.Set);
    }

    [Fact]
    public void Dual_wheels_go_by_the_dual_load_index()
    {
        Cold("LT235/85 R16 120/116Q LRE", 1250, null, 552, dual: true).Case.ShouldBe(ColdPressureCase.Set);
        Cold("LT235/85 R16 120/116Q LRE", 1270, null, 552, dual: true).Case.ShouldBe(ColdPressureCase.Overloaded);
        Cold("LT235/85 R16 120/116Q LRE", 1270, null, 552).Case.ShouldBe(ColdPressureCase.Set);
        Cold("205/55 R16 91V", 400, null, 300, dual: true).Case.ShouldBe(ColdPressureCase.NotKnown);
    }

    [Theory]
    [InlineData(730, ColdPressureCase.Set)]
    [InlineData(730.1, ColdPressureCase.Overloaded)]
    [InlineData(825, ColdPressureCase.Overloaded)]
    public void Without_a_dual_index_more_than_the_single_load_is_too_much_whatever_the_placard_says(double loadKg, ColdPressureCase expected)
    {
        // LI 97 = 730 kg.
        var cold = Cold("195/70 R15 97T", loadKg, 340, null, dual: true);
        cold.Case.ShouldBe(expected);
        cold.Cautions.ShouldContain(c => c.Contains(expected == ColdPressureCase.Set ? "no load index for dual wheels" : "730 kg singly, and no more in a dual pair", StringComparison.Ordinal));
    }

    [Fact]
    public void A_dual_index_above_the_single_one_gives_no_more_load() =>
        Cold("195/70 R15C 102/104R", 860, 400, 475, dual: true).Case.ShouldBe(ColdPressureCase.Overloaded);

    [Fact]
    public void A_load_that_leads_to_no_pressure_says_why()
    {
        Cold("195/70 R15 97T", 700, dual: true).Cautions[0].ShouldBe("No placard pressure was given, and none follows from the load. The marking has no load index for dual wheels: take the load in a dual pair from the tyre's maker. The maximum on the sidewall is no target.");
        Cold(null, 700).Cautions[0].ShouldContain("The tyre's marking was not given");
        Cold("195/70 R15 97T").Cautions[0].ShouldStartWith("Neither a placard pressure nor a load was given");
    }

    [Fact]
    public void Above_one_hundred_and_sixty_the_load_needs_more()
    {
        var plain = Cold("205/55 R16 91H", 560, null, 350).Considered.Single(l => l.Name == "load carried").Pressure!.Value;
        var fast = Cold("205/55 R16 91H", 560, null, 350, topSpeed: 185).Considered.Single(l => l.Name == "load carried, at top speed").Pressure!.Value;
        fast.Kilopascals.ShouldBe(plain.Kilopascals + 15, 1e-9);
        Cold("205/55 R16 91H", 560, null, 350, topSpeed: 160).Considered.ShouldNotContain(l => l.Name == "load carried, at top speed");
        Cold("205/55 R16 91W", 560, null, 350, topSpeed: 190).Cautions.ShouldNotContain(c => c.Contains("top speed", StringComparison.Ordinal));
        Cold("205/55 R16 91W", 560, null, 350, topSpeed: 230).Cautions.ShouldContain(c => c.Contains("top speed", StringComparison.Ordinal));
    }

    [Fact]
    public void Full_load_takes_the_placards_figure_for_it_or_asks()
    {
        Cold(null, null, 230, laden: 270, conditions: Plain with { Laden = true }).Pressure!.Pressure.Kilopascals.ShouldBe(270);
        Cold(null, null, 230, laden: 270).Pressure!.Pressure.Kilopascals.ShouldBe(230);
        Cold(null, null, 230, conditions: Plain with { Laden = true }).Cautions.ShouldContain(c => c.Contains("full load", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("T125/80 D15 95M")]
    [InlineData("ST205/75 R15 LRD")]
    public void Where_only_the_maker_can_tell_no_number_is_made_up(string marking)
    {
        var cold = Cold(marking, 400);
        cold.Case.ShouldBe(ColdPressureCase.NotKnown);
        cold.Pressure.ShouldBeNull();
        cold.Cautions.ShouldNotBeEmpty();
    }

    [Fact]
    public void A_van_tyre_goes_by_the_pressure_on_its_sidewall()
    {
        // 475 kPa (900/1030)^(1/0.8).
        Cold("215/65 R16C 109/107T", 900, null, 475).Considered.Single(l => l.Name == "load carried").Pressure!.Value.Kilopascals
            .ShouldBe(475 * Math.Pow(900.0 / 1030, 1.25), 1e-9);
        Cold("215/65 R16C 109/107T", 900).Pressure.ShouldBeNull();
    }

    [Fact]
    public void More_load_never_needs_less_pressure()
    {
        foreach (var marking in new[] { "175/65 R14 81T", "175/65 R14 82T", "205/55 R16 91V", "205/55 R16 94V XL", "P205/55 R16 91V", "LT235/85 R16 120/116Q LRE", "LT265/75 R16 112/109Q LRC" })
        {
            var last = 0.0;
            for (var kg = 100.0; kg < 1500; kg += 1)
            {
                if (LoadPressure.For(Marked(marking), null, Mass.FromKilograms(kg), false, "car", null) is not LoadPressure.Found found)
                {
                    break;
                }

                found.Pressure.Pressure.Kilopascals.ShouldBeGreaterThanOrEqualTo(last - 1e-9, $"{marking} at {kg} kg");
                last = found.Pressure.Pressure.Kilopascals;
            }

            last.ShouldBeGreaterThan(230, marking);
        }
    }
}
