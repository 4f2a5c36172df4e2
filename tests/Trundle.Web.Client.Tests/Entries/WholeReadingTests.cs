using System.Globalization;
using Trundle.Measures;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tests.Entries;

/// <summary>A reading is whole when nothing more would be typed of it, and never means another value than the figures say.</summary>
public sealed class WholeReadingTests
{
    [Theory]
    [InlineData(HabitKind.Depth, "mm", "6", null)]
    [InlineData(HabitKind.Depth, "mm", "61", "6.1")]
    [InlineData(HabitKind.Depth, "mm", "6.1", "6.1")]
    [InlineData(HabitKind.Depth, "mm", "6,4", "6,4")]
    [InlineData(HabitKind.Depth, "mm", "16", null)] // 16 mm on a lorry, or 1.6 mm: the point is typed, or Enter
    [InlineData(HabitKind.Depth, "mm", "20", null)]
    [InlineData(HabitKind.Depth, "mm", "21", "2.1")]
    [InlineData(HabitKind.Depth, "mm", "1.6", "1.6")]
    [InlineData(HabitKind.Depth, "mm", "08", null)]
    [InlineData(HabitKind.Depth, "32nds", "3", null)]
    [InlineData(HabitKind.Depth, "32nds", "4", "4")]
    [InlineData(HabitKind.Depth, "32nds", "10", "10")]
    [InlineData(HabitKind.Pressure, "kPa", "23", null)]
    [InlineData(HabitKind.Pressure, "kPa", "230", "230")]
    [InlineData(HabitKind.Pressure, "kPa", "90", null)]
    [InlineData(HabitKind.Pressure, "psi", "33", "33")]
    [InlineData(HabitKind.Pressure, "psi", "11", null)]
    [InlineData(HabitKind.Pressure, "psi", "110", "110")]
    [InlineData(HabitKind.Pressure, "bar", "23", "2.3")]
    [InlineData(HabitKind.Pressure, "bar", "8", null)]
    [InlineData(HabitKind.Pressure, "bar", "2.3", null)]
    [InlineData(HabitKind.Pressure, "bar", "2.35", "2.35")]
    [InlineData(HabitKind.Pressure, "kPa", "33 psi", null)]
    [InlineData(HabitKind.Depth, "mm", "", null)]
    [InlineData(HabitKind.Depth, "mm", ".5", null)]
    [InlineData(HabitKind.Torque, "N·m", "120", null)]
    public void Whole_or_not(HabitKind kind, string unit, string typed, string? whole) => WholeReading.Of(new Habit(kind, unit), typed).ShouldBe(whole);

    [Fact]
    public void Two_figures_are_taken_as_tenths_only_where_the_whole_number_is_no_reading_of_a_tyre()
    {
        for (var n = 10; n < 100; n++)
        {
            var text = n.ToString(CultureInfo.InvariantCulture);
            if (WholeReading.Of(new Habit(HabitKind.Depth, "mm"), text) is { } depth)
            {
                n.ShouldBeGreaterThan(20, "a tread of a commercial tyre may be 20 mm deep");
                NumberText.Read(depth).Value.ShouldBe(n / 10.0, 1e-9);
            }

            if (WholeReading.Of(new Habit(HabitKind.Pressure, "bar"), text) is { } bar)
            {
                n.ShouldBeGreaterThan(15, "no road tyre of the tables is set so high");
                NumberText.Read(bar).Value.ShouldBe(n / 10.0, 1e-9);
            }
        }
    }
}
