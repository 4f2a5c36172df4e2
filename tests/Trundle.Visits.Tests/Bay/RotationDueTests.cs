using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;

namespace Trundle.Visits.Tests.Bay;

/// <summary>A day for the next rotation is reckoned from the vehicle's own readings, or not told.</summary>
public sealed class RotationDueTests
{
    private static readonly DateOnly Today = new(2026, 3, 14);

    private static RotationDue Due(double? odometer, params (int DaysAgo, double Kilometres)[] earlier) =>
        RotationDue.Of(new Vehicle { Odometer = odometer is { } o ? Length.FromKilometres(o) : null }, Today, earlier.Select(e => (Today.AddDays(-e.DaysAgo), Length.FromKilometres(e.Kilometres))));

    [Fact]
    public void The_day_is_the_distance_over_what_the_vehicle_went_a_day()
    {
        // 12 000 km in 365 days are 32.877 km a day: 10 000 km last 304.2 days.
        var due = Due(48_000, (365, 36_000), (100, 47_000));
        due.About.ShouldBe(Today.AddDays(304));
        due.At!.Value.Kilometres.ShouldBe(58_000, 1e-9);
        due.Reckoned.ShouldBe("12000 km in 365 days before");
    }

    [Theory]
    [InlineData(27, 46_000)] // too short a time
    [InlineData(1096, 20_000)] // too long ago
    [InlineData(200, 48_000)] // no distance
    [InlineData(200, 52_000)] // another odometer, or a mistake
    [InlineData(365, 47_500)] // 500 km a year: twenty years off is a guess
    public void Where_the_readings_do_not_tell_there_is_no_day(int daysAgo, double kilometres)
    {
        var due = Due(48_000, (daysAgo, kilometres));
        due.About.ShouldBeNull();
        due.Reckoned.ShouldBeNull();
        due.At!.Value.Kilometres.ShouldBe(58_000, 1e-9);
    }

    [Fact]
    public void Without_an_odometer_only_the_distance_is_told()
    {
        Due(null, (365, 36_000)).ShouldBe(new RotationDue(Length.FromKilometres(10_000), null, null, null));
        Due(48_000).About.ShouldBeNull();
    }
}
