using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tests.Entries;

public sealed class HabitWordsTests
{
    [Theory]
    [InlineData(HabitKind.Pressure, "psi", "33", "33 psi")]
    [InlineData(HabitKind.Pressure, "psi", " 2,3 ", "2,3 psi")]
    [InlineData(HabitKind.Pressure, "psi", "2.3 bar", "2.3 bar")]
    [InlineData(HabitKind.Depth, "32nds", "6", "6 32nds")]
    [InlineData(HabitKind.Depth, "mm", "6/32", "6/32 in")]
    [InlineData(HabitKind.Torque, "lbf·ft", "81", "81 lbf·ft")]
    [InlineData(HabitKind.Weight, "oz", "1.75", "1.75 oz")]
    [InlineData(HabitKind.Distance, "km", "48,200", "48,200")]
    [InlineData(HabitKind.Pressure, "kPa", "about thirty", "about thirty")]
    [InlineData(HabitKind.Pressure, "kPa", "", "")]
    public void A_bare_number_gets_the_unit_of_the_habit_and_everything_else_stays_as_typed(HabitKind kind, string bare, string typed, string recorded) =>
        HabitWords.Record(new Habit(kind, bare), typed).ShouldBe(recorded);

    [Theory]
    [InlineData("33 psi", "33", "psi")]
    [InlineData("2,3 bar", "2,3", "bar")]
    [InlineData("33psi", "33psi", "kPa")]
    [InlineData("about 30 psi", "about 30 psi", "kPa")]
    public void A_recorded_text_is_parted_into_what_stands_in_the_field_and_its_unit(string recorded, string number, string unit) =>
        HabitWords.Part(new Habit(HabitKind.Pressure, "kPa"), recorded).ShouldBe((number, unit));

    [Theory]
    [InlineData(HabitKind.Pressure, "kPa", "230 kPa", "33.4 psi · 2.30 bar")]
    [InlineData(HabitKind.Pressure, "psi", "33 psi", "228 kPa · 2.28 bar")]
    [InlineData(HabitKind.Depth, "mm", "1.6 mm", "2.0 32nds")]
    [InlineData(HabitKind.Torque, "N·m", "110 N·m", "81 lbf·ft")]
    [InlineData(HabitKind.Weight, "g", "35 g", "1.23 oz")]
    [InlineData(HabitKind.Temperature, "°C", "18 °C", "64 °F")]
    public void The_other_units_stand_beside_what_was_entered(HabitKind kind, string bare, string recorded, string also) =>
        HabitWords.Also(new Habit(kind, bare), recorded).Replace('\u00a0', ' ').ShouldBe(also);

    [Fact]
    public void What_cannot_be_read_has_no_other_units() =>
        HabitWords.Also(new Habit(HabitKind.Pressure, "kPa"), "about thirty").ShouldBeEmpty();

    [Theory]
    [InlineData(HabitKind.Pressure)]
    [InlineData(HabitKind.Depth)]
    [InlineData(HabitKind.Torque)]
    [InlineData(HabitKind.Weight)]
    [InlineData(HabitKind.Distance)]
    [InlineData(HabitKind.Load)]
    [InlineData(HabitKind.Temperature)]
    [InlineData(HabitKind.Millimetres)]
    [InlineData(HabitKind.Metres)]
    [InlineData(HabitKind.RoadSpeed)]
    public void Every_unit_that_a_kind_offers_can_be_read_back(HabitKind kind)
    {
        foreach (var symbol in HabitWords.Symbols(kind))
        {
            var habit = new Habit(kind, symbol);
            HabitWords.Also(habit, HabitWords.Record(habit, "5")).ShouldNotBeEmpty();
            HabitWords.Part(habit, HabitWords.Record(habit, "5")).ShouldBe(("5", symbol));
        }
    }
}
