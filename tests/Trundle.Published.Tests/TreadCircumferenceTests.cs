using Trundle.Engine.Fitment;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// How much a difference of tread does to the circumference with all wheels driven, on a tyre of 27 in: dC % = 2 dt / D × 100, the four rows of the trade's
/// table (calculated): 1/32 in 0.23 %, 2/32 0.46, 3/32 0.69, 4/32 0.93. The tyre here is 686 mm, which is 27.01 in; the engine's spread is over the smaller one.
/// </summary>
public sealed class TreadCircumferenceTests
{
    [Theory]
    [InlineData(1, 0.23)]
    [InlineData(2, 0.46)]
    [InlineData(3, 0.69)]
    [InlineData(4, 0.93)]
    public void Each_row_of_tread_is_its_circumference(int thirtySeconds, double percent)
    {
        var size = MarkingReader.Read("215/65 R16 98H").Value;
        var axle = new Axle { Driven = true, Placard = new Placard(size, null, null) };
        Assembly On(int number, Side side, double tread) => new()
        {
            Position = Position.On(number, side),
            Tyre = new FittedTyre { Marking = size },
            Tread = new TreadDepths([], [Length.FromInches(tread / 32)], []),
        };
        var vehicle = new FittedVehicle(
            new Vehicle { Drive = Drive.All, Axles = [axle, axle] },
            [On(1, Side.Left, 10 - thirtySeconds), On(1, Side.Right, 10), On(2, Side.Left, 10), On(2, Side.Right, 10)],
            null,
            null);
        var finding = FitmentCheck.Run(vehicle).Findings.Single(f => f.Rule.StartsWith("circumference.all-wheel-drive", StringComparison.Ordinal));
        finding.Measured.Unit.ShouldBe("%");
        finding.Measured.Value!.Value.ShouldBe(percent, 0.01);
    }
}
