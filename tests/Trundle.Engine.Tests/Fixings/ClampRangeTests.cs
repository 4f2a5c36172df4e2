using Trundle.Engine.Fixings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Fixings;

public class ClampRangeTests
{
    private static readonly ThreadDesignation M12 = ThreadDesignation.Read("M12x1.5").Value;
    private static readonly Torque OneHundredAndTen = Torque.FromNewtonMetres(110);

    private static ClampRange Range(SeatShape? seat, ThreadCondition? condition, double? k = null) => ClampRange.Of(OneHundredAndTen, M12, seat, condition, k);

    [Fact]
    public void A_cone_doubles_the_friction_of_its_seat()
    {
        var flat = NutFactor.LongForm(M12, SeatContact.Estimated(M12, SeatShape.Flat), 0.15, 0.15);
        var cone = NutFactor.LongForm(M12, SeatContact.Estimated(M12, SeatShape.Cone), 0.15, 0.15);
        (cone.Seat / flat.Seat).ShouldBe(2, 1e-12);
        cone.Thread.ShouldBe(flat.Thread);
    }

    [Fact]
    public void Oil_raises_the_clamp_at_the_same_torque()
    {
        foreach (var seat in Enum.GetValues<SeatShape>())
        {
            Range(seat, ThreadCondition.Oiled).Nominal.Nominal.ShouldBeGreaterThan(Range(seat, ThreadCondition.Dry).Nominal.Nominal * 1.3);
        }
    }

    [Fact]
    public void A_seat_or_condition_that_nobody_gave_widens_the_range_over_all_cases()
    {
        var open = Range(null, null);
        var all = Enum.GetValues<SeatShape>().SelectMany(s => Enum.GetValues<ThreadCondition>().Select(c => Range(s, c))).ToList();
        open.Cases.Count.ShouldBe(6);
        open.Low.ShouldBe(all.Min(r => r.Low));
        open.High.ShouldBe(all.Max(r => r.High));
        open.Assumed.ShouldBe(["seat", "condition"]);
        Range(SeatShape.Ball, null).Assumed.ShouldBe(["condition"]);
        Range(SeatShape.Ball, null).High.ShouldBe(Range(SeatShape.Ball, ThreadCondition.Oiled).High);
        Range(SeatShape.Ball, null).Low.ShouldBe(Range(SeatShape.Ball, ThreadCondition.Dry).Low);
        Range(null, ThreadCondition.Dry).Assumed.ShouldBe(["seat"]);
    }

    [Fact]
    public void A_given_nut_factor_makes_the_seat_indifferent()
    {
        var range = Range(null, null, 0.2);
        range.Nominal.Nominal.Kilonewtons.ShouldBe(110 / (0.2 * 12), 1e-9);
        range.Low.Kilonewtons.ShouldBe(110 / (0.2 * 12) * 0.65, 1e-9);
        range.High.Kilonewtons.ShouldBe(110 / (0.2 * 12) * 1.35, 1e-9);
        Range(SeatShape.Cone, ThreadCondition.Oiled, 0.2).High.Kilonewtons.ShouldBe(110 / (0.2 * 12) * 1.25, 1e-9);
    }

    // Worked in the reference notes by the same derivation: seat 6.75 to 9.5 mm, mean radius 8.203 mm.
    [Theory]
    [InlineData(SeatShape.Flat, 0.10, 0.1413, 64.88)]
    [InlineData(SeatShape.Cone, 0.10, 0.2097, 43.72)]
    [InlineData(SeatShape.Flat, 0.12, 0.1656, 55.36)]
    [InlineData(SeatShape.Cone, 0.12, 0.2476, 37.02)]
    [InlineData(SeatShape.Flat, 0.15, 0.2020, 45.38)]
    [InlineData(SeatShape.Cone, 0.15, 0.3045, 30.10)]
    [InlineData(SeatShape.Flat, 0.20, 0.2627, 34.89)]
    [InlineData(SeatShape.Cone, 0.20, 0.3994, 22.95)]
    public void The_seat_and_its_friction_decide_how_much_of_the_torque_clamps(SeatShape shape, double friction, double k, double kilonewtons)
    {
        var seat = SeatContact.Ring(shape, Length.FromMillimetres(6.75), Length.FromMillimetres(9.5));
        seat.MeanRadius.Millimetres.ShouldBe(8.203, 0.0005);
        var shares = NutFactor.LongForm(M12, seat, friction, friction);
        shares.NutFactor(M12.Diameter).ShouldBe(k, 0.00005);
        shares.Clamp(OneHundredAndTen).Kilonewtons.ShouldBe(kilonewtons, 0.005);
    }

    [Theory]
    [InlineData(14, 1.219)]
    [InlineData(12, 1.342)]
    public void A_ball_wedges_by_the_angle_of_its_contact_circle(double ballMillimetres, double wedge)
    {
        // A ring so thin that its mean radius is 8 mm.
        var seat = SeatContact.Ring(SeatShape.Ball, Length.FromMillimetres(7.9999), Length.FromMillimetres(8.0001), Length.FromMillimetres(ballMillimetres));
        seat.Wedge.ShouldBe(wedge, 0.0005);
    }

    [Fact]
    public void The_estimated_seats_pass_through_the_two_worked_cases()
    {
        SeatContact.Estimated(M12, SeatShape.Flat).MeanRadius.Millimetres.ShouldBe(8.203, 0.0005);
        SeatContact.Estimated(ThreadDesignation.Read("M14x1.5").Value, SeatShape.Flat).MeanRadius.Millimetres.ShouldBe(9.469, 0.0005);
    }

    // 90° cone: 1/sin 45° = 1.4142 (the reference's derivation).
    [Theory]
    [InlineData(60, 2)]
    [InlineData(90, 1.41421356)]
    [InlineData(120, 1.15470054)]
    public void A_cone_wedges_by_its_own_angle(double degrees, double wedge)
    {
        SeatContact.Estimated(M12, SeatShape.Cone, new SeatForm(Angle.FromDegrees(degrees), null)).Wedge.ShouldBe(wedge, 1e-6);
        var flat = NutFactor.LongForm(M12, SeatContact.Estimated(M12, SeatShape.Flat), 0.15, 0.15);
        var range = ClampRange.Of(OneHundredAndTen, M12, SeatShape.Cone, ThreadCondition.Dry, new ClampDetail { Form = new SeatForm(Angle.FromDegrees(degrees), null) });
        range.Nominal.Nominal.Newtons.ShouldBe(110 / (flat.Pitch + flat.Thread + (flat.Seat * wedge)).Metres, 0.1);
    }

    [Fact]
    public void A_wrench_that_was_found_too_far_off_widens_the_band_and_one_within_its_tolerance_does_not()
    {
        var plain = Range(SeatShape.Cone, ThreadCondition.Dry);
        var good = With(new TorqueWrench(null, null, [-4, 4]));
        (good.Low, good.High).ShouldBe((plain.Low, plain.High));

        // It shows 10 % too much: at its click the fixing gets 100 N·m of 110.
        var high = With(new TorqueWrench(null, null, [10, 2]));
        (high.Low / plain.Low).ShouldBe(1 / 1.1, 1e-12);
        high.High.ShouldBe(plain.High);

        // It shows 8 % too little at one point: the fixing may get more than 119 N·m.
        var low = With(new TorqueWrench(null, null, [-8, 2]));
        (low.High / plain.High).ShouldBe(1 / 0.92, 1e-12);
        (low.Low / plain.Low).ShouldBe(1 / 1.02, 1e-12);
        low.Nominal.Nominal.ShouldBe(plain.Nominal.Nominal);

        static ClampRange With(TorqueWrench wrench) => ClampRange.Of(OneHundredAndTen, M12, SeatShape.Cone, ThreadCondition.Dry, new ClampDetail { Wrench = wrench });
    }

    [Fact]
    public void A_worn_seat_lowers_the_low_end_and_raises_nothing()
    {
        foreach (var seat in Enum.GetValues<SeatShape>())
        {
            var sound = Range(seat, ThreadCondition.Dry);
            var worn = ClampRange.Of(OneHundredAndTen, M12, seat, ThreadCondition.Dry, new ClampDetail { WornSeat = true });
            (worn.Nominal.Nominal, worn.High).ShouldBe((sound.Nominal.Nominal, sound.High));
            var contact = SeatContact.Estimated(M12, seat);
            var rubbed = NutFactor.LongForm(M12, contact, 0.15, 0.15).Arm / NutFactor.LongForm(M12, contact, 0.15, 0.3).Arm;
            (worn.Low / sound.Low).ShouldBe(0.9 * rubbed, 1e-12);
        }

        ClampRange.Of(OneHundredAndTen, M12, null, ThreadCondition.Dry, new ClampDetail { NutFactor = 0.2, WornSeat = true }).Low.Kilonewtons.ShouldBe(110 / (0.2 * 12) * 0.65 * 0.9, 1e-9);
    }
}
