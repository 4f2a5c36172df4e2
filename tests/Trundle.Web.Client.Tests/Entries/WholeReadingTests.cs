using System.Text.RegularExpressions;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tests.Entries;

/// <summary>The hand goes on by itself only where what is typed can be nothing longer.</summary>
public sealed class WholeReadingTests
{
    [Theory]
    [InlineData(HabitKind.Depth, "mm", "6.1", true)]
    [InlineData(HabitKind.Depth, "mm", "10,5", true)]
    [InlineData(HabitKind.Depth, "mm", "6", false)]
    [InlineData(HabitKind.Depth, "mm", "6.", false)]
    [InlineData(HabitKind.Depth, "32nds", "1", false)]
    [InlineData(HabitKind.Depth, "32nds", "10", true)]
    [InlineData(HabitKind.Pressure, "kPa", "230", true)]
    [InlineData(HabitKind.Pressure, "kPa", "23", false)]
    [InlineData(HabitKind.Pressure, "kPa", "100", false)]
    [InlineData(HabitKind.Pressure, "psi", "33", true)]
    [InlineData(HabitKind.Pressure, "psi", "10", false)]
    [InlineData(HabitKind.Pressure, "bar", "2.4", false)]
    [InlineData(HabitKind.Torque, "Nm", "110", false)]
    public void A_reading_is_whole_where_it_cannot_grow(HabitKind kind, string unit, string typed, bool whole)
    {
        var pattern = WholeReading.Of(new Habit(kind, unit));
        (pattern.Length > 0 && Regex.IsMatch(typed, $"^(?:{pattern})$")).ShouldBe(whole);
    }
}
