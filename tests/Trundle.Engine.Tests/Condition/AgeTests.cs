using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Tests.Fitment;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Tests.Condition;

public sealed class AgeTests
{
    /// <summary>Week 22 of 2018 begins on 3 June 2018.</summary>
    private const string Tin = "DOT 1AB CDEFHJ 2218";

    [Theory]
    [InlineData("2023-06-02", "age.inspect", Category.None, "In order.")]
    [InlineData("2023-06-05", "age.inspect", Category.None, "Look at this tyre every year")]
    [InlineData("2024-06-01", "age.inspect", Category.None, "Look at this tyre every year")]
    [InlineData("2024-06-04", "age.six", Category.Minor, "Ask for the vehicle maker's own limit")]
    [InlineData("2028-06-01", "age.six", Category.Minor, "Ask for the vehicle maker's own limit")]
    [InlineData("2028-06-05", "age.ten", Category.Minor, "Advise replacement")]
    public void Guidance_at_five_six_and_ten_years(string day, string rule, Category category, string action)
    {
        var finding = Run(RuleSet.UnitedKingdom, "car", day, Tin).One(rule, "1L");
        finding.Category.ShouldBe(category);
        finding.Action.ShouldStartWith(action);
        finding.Limit!.Source.Text.ShouldNotBeNullOrWhiteSpace();
    }

    [Theory]
    [InlineData("2028-06-01", Category.None)]
    [InlineData("2028-06-09", Category.None)]
    [InlineData("2028-06-12", Category.Major)]
    public void Over_ten_years_is_against_the_law_on_some_axles_in_the_united_kingdom_once_it_is_certain(string day, Category expected)
    {
        Run(RuleSet.UnitedKingdom, "goods over 3500 kg", day, Tin).One("age.law", "1L").Category.ShouldBe(expected);
        Run(RuleSet.UnitedKingdom, "bus", day, Tin).One("age.law", "1L").Category.ShouldBe(expected);
        Run(RuleSet.UnitedKingdom, "minibus", day, Tin).One("age.law", "1L").Category.ShouldBe(expected);
        foreach (var (rules, vehicleClass) in new[] { (RuleSet.UnitedKingdom, "car"), (RuleSet.UnitedKingdom, "van"), (RuleSet.EuropeanUnion, "bus"), (RuleSet.UnitedStates, "bus") })
        {
            Run(rules, vehicleClass, day, Tin).CategoryOf("age.law", "1L").ShouldBeNull();
        }
    }

    /// <summary>Beside the limit the age is told so that anybody sees on which side it lies.</summary>
    [Theory]
    [InlineData("2028-06-01", "car", "age.six", "9 years 363 days (week 22 of 2018, give or take a week)")]
    [InlineData("2028-06-06", "car", "age.ten", "10 years 3 days (week 22 of 2018, give or take a week)")]
    [InlineData("2026-01-03", "car", "age.six", "7.6 years (week 22 of 2018, give or take a week)")]
    [InlineData("2028-06-12", "bus", "age.law", "at least 10 years 2 days (week 22 of 2018)")]
    [InlineData("2028-06-14", "bus", "age.law", "at least 10 years 4 days (week 22 of 2018)")]
    public void An_age_beside_its_limit_is_told_in_years_and_days(string day, string vehicleClass, string rule, string text) =>
        Run(RuleSet.UnitedKingdom, vehicleClass, day, Tin).One(rule, "1L").Measured.Text.ShouldBe(text);

    [Fact]
    public void The_law_names_front_steered_axles_of_lorries_and_all_single_wheels_of_minibuses()
    {
        const string day = "2030-01-01";
        Run(RuleSet.UnitedKingdom, "bus", day, Tin, "2L").CategoryOf("age.law", "2L").ShouldBeNull();
        Run(RuleSet.UnitedKingdom, "minibus", day, Tin, "2L").One("age.law", "2L").Category.ShouldBe(Category.Major);
    }

    [Fact]
    public void Where_the_law_asks_for_a_legible_code_a_missing_one_is_for_a_person_to_decide()
    {
        Run(RuleSet.UnitedKingdom, "bus", "2026-01-01", null).One("age.legible", "1L").Category.ShouldBe(Category.Refer);
        Run(RuleSet.UnitedKingdom, "bus", "2026-01-01", "DOT 1AB CDEFHJ").One("age.legible", "1L").Category.ShouldBe(Category.Refer);
        var car = Run(RuleSet.UnitedKingdom, "car", "2026-01-01", "DOT 1AB CDEFHJ");
        car.Faults.ShouldBeEmpty();
        car.Needs.ShouldContain(n => n.Position == "1L" && n.What.Contains("TIN", StringComparison.Ordinal));
    }

    [Fact]
    public void Three_digits_are_old_by_any_reading()
    {
        var finding = Run(null, "car", "2026-03-14", "DOT A1 B2 CDEF 238").One("age.unknown-decade", "1L");
        finding.Category.ShouldBe(Category.Minor);
        finding.Measured.Value!.Value.ShouldBeGreaterThan(25);
    }

    [Fact]
    public void A_date_after_today_is_read_again_and_without_a_date_no_age_is_told()
    {
        Run(null, "car", "2018-01-01", Tin).One("age.code", "1L").Category.ShouldBe(Category.Refer);
        var dateless = Run(null, "car", null, Tin);
        dateless.Faults.ShouldBeEmpty();
        dateless.Needs.ShouldContain(n => n.What == "today's date");
    }

    private static CheckResult Run(RuleSet? rules, string vehicleClass, string? day, string? tin, string position = "1L") =>
        ConditionCheck.Run(Bay.Four(rules, Bay.Car with { VehicleClass = vehicleClass }).With(position, a => a with { Tyre = a.Tyre! with { Tin = tin } })
            with
        { Date = day is null ? null : DateOnly.ParseExact(day, "yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture) });
}
