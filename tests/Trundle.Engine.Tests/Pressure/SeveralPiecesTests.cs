using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Mounting;
using Trundle.Engine.Pressure;
using Trundle.Engine.Tests.Fitment;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Pressure;

/// <summary>A rim of several pieces stops before any figure of pressure, and where nobody looked none is taken for one piece.</summary>
public sealed class SeveralPiecesTests
{
    private const string Tubed = "10.00 R20 146/143K";

    [Theory]
    [InlineData(Tubed, null, "goods over 3500 kg", RimPieces.LikelySeveral)]
    [InlineData("8.25 R20 133/131K", null, "bus", RimPieces.LikelySeveral)]
    [InlineData("7.50 R16LT 112/107Q", null, "van", RimPieces.LikelySeveral)]
    [InlineData("7.50-16", null, "goods over 3500 kg", RimPieces.LikelySeveral)]
    [InlineData("215/75 R17.5 126/124M TT", null, "goods over 3500 kg", RimPieces.LikelySeveral)]
    [InlineData("215/75 R17.5 126/124M TL", "6.00-17.5", "goods over 3500 kg", RimPieces.LikelySeveral)]
    [InlineData("295/80 R22.5 152/148M", "8.25x22.5", "goods over 3500 kg", RimPieces.NotKnown)]
    [InlineData("195/65 R15 91H", "6J x 15", "car", RimPieces.One)]
    [InlineData("195/65 R15 91H", "6J-15", "car", RimPieces.One)]
    [InlineData("235/65 R16C 115/113R", "6.5J x 16", "van", RimPieces.One)]
    public void One_piece_is_never_taken_for_granted_where_the_size_the_tube_or_the_stamp_speaks_for_a_ring(string marking, string? stamp, string vehicleClass, RimPieces expected)
    {
        var tyre = new FittedTyre { Marking = Bay.Marked(marking) };
        var wheel = new Wheel { Rim = stamp is null ? null : StampReader.Rim(stamp).Value };
        WheelKind.Pieces(wheel, tyre, vehicleClass).ShouldBe(expected);
        WheelKind.Pieces(wheel with { MultiPiece = true }, tyre, vehicleClass).ShouldBe(RimPieces.Several);
        WheelKind.Pieces(wheel with { MultiPiece = false }, tyre, vehicleClass).ShouldBe(RimPieces.One);
    }

    [Theory]
    [InlineData(true, "wheel.multi-piece")]
    [InlineData(null, "wheel.pieces-not-known")]
    public void The_stop_stands_first_and_no_ceiling_for_seating_is_told(bool? pieces, string rule)
    {
        var plan = PressurePlan.For(Lorry(pieces), new PressureConditions(null, null, null, null, false, null));
        var at = plan.Positions[0];
        at.Cold.Pressure.ShouldNotBeNull("the placard's figure is told, after the stop");
        at.Seating.ShouldBeNull();
        at.Stop!.Rule.ShouldBe(rule);
        at.Cautions[0].ShouldStartWith("Stop: ");
        at.Cautions[0].ShouldContain("29 CFR 1910.177");
        at.Cautions[0].ShouldContain("licensed");
        at.Cautions[0].ShouldContain("cage");
        plan.Findings.Single(f => f.Rule == rule).Category.ShouldBe(Category.Refer);
        at.Reading!.Advice.ShouldStartWith("Stop: ");
    }

    [Fact]
    public void A_rim_of_one_piece_has_no_stop_and_its_ceiling()
    {
        var plan = PressurePlan.For(Lorry(false), new PressureConditions(null, null, null, null, false, null));
        plan.Positions[0].Stop.ShouldBeNull();
        plan.Positions[0].Seating.ShouldNotBeNull();
        plan.Findings.ShouldNotContain(f => f.Rule.StartsWith("wheel.", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(780)]
    [InlineData(600)]
    public void No_advice_about_air_comes_before_the_stop(double found)
    {
        var result = ConditionCheck.Run(Lorry(true).With("1L", a => a with { Pressure = new PressureReading(GaugePressure.FromKilopascals(found), null, false) }));
        result.Findings.Single(f => f.Rule.StartsWith("pressure.", StringComparison.Ordinal)).Action.ShouldStartWith("Stop: ");
    }

    private static FittedVehicle Lorry(bool? pieces)
    {
        var axle = Bay.Axle(Tubed, true) with { Placard = new Placard(Bay.Marked(Tubed), GaugePressure.FromKilopascals(800), null) };
        var vehicle = new Vehicle { VehicleClass = "goods over 3500 kg", Axles = [axle] };
        var on = Bay.On("1L", Tubed);
        return new FittedVehicle(vehicle, [on with { Wheel = new Wheel { MultiPiece = pieces }, Pressure = new PressureReading(GaugePressure.FromKilopascals(780), null, false) }], null, null);
    }
}
