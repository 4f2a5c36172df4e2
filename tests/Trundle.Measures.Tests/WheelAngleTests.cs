namespace Trundle.Measures.Tests;

/// <summary>Places around the wheel: 0 at the valve, clockwise from outside, below 360.</summary>
public sealed class WheelAngleTests
{
    [Theory]
    [InlineData(0, 0)]
    [InlineData(360, 0)]
    [InlineData(725, 5)]
    [InlineData(-90, 270)]
    [InlineData(-720, 0)]
    [InlineData(359.999, 359.999)]
    [InlineData(-1e-15, 0)]
    public void Any_number_of_degrees_is_brought_into_one_turn(double degrees, double place) =>
        WheelAngle.FromDegrees(degrees).Degrees.ShouldBe(place, 1e-9);

    [Fact]
    public void A_place_is_never_360_itself()
    {
        var random = new Random(7);
        for (var i = 0; i < 10_000; i++)
        {
            var place = WheelAngle.FromDegrees((random.NextDouble() - 0.5) * Math.Pow(10, random.Next(-18, 6)));
            place.Degrees.ShouldBeInRange(0, Math.BitDecrement(360.0));
        }
    }

    [Theory]
    [InlineData(350, 20, 10)]
    [InlineData(10, -20, 350)]
    [InlineData(180, 180, 0)]
    public void A_turn_leads_from_place_to_place(double from, double turn, double to)
    {
        var reached = WheelAngle.FromDegrees(from) + Angle.FromDegrees(turn);
        reached.Degrees.ShouldBe(to, 1e-9);
    }

    [Theory]
    [InlineData(10, 350, 20)]
    [InlineData(350, 10, -20)]
    [InlineData(180, 0, 180)]
    [InlineData(0, 180, 180)]
    [InlineData(90, 90, 0)]
    public void Two_places_differ_by_the_shorter_turn_above_minus_180(double to, double from, double turn) =>
        (WheelAngle.FromDegrees(to) - WheelAngle.FromDegrees(from)).Degrees.ShouldBe(turn, 1e-9);

    [Fact]
    public void Opposite_is_half_a_turn_on_and_radians_agree()
    {
        WheelAngle.FromDegrees(200).Opposite.Degrees.ShouldBe(20, 1e-9);
        WheelAngle.FromRadians(Math.PI / 2).Degrees.ShouldBe(90, 1e-9);
        WheelAngle.FromDegrees(90).Radians.ShouldBe(Math.PI / 2, 1e-12);
        default(WheelAngle).Degrees.ShouldBe(0);
    }
}
