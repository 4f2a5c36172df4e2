using Trundle.Engine.Balance;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>
/// One wheel worked through with plain algebra apart from this code, to six digits: supports at 0 and −130 mm, planes at 170 and 350 mm, 180 r/min,
/// unbalance 6000 g·mm at 40° inner and 4500 g·mm at 250° outer. Angles run in one sense, which carries over to ours as it stands.
/// </summary>
public class WheelGeometryTests
{
    private static readonly PlanePair Flanges = Planes(170, 202.8, 350, 202.8);
    private static readonly UnbalancePair Truth = new(At(6000, 40), At(4500, 250));

    [Fact]
    public void Forces_on_the_supports_give_the_two_planes_back()
    {
        var found = UnbalancePair.OfSupportForces(
            new SupportForce(Force.FromNewtons(2.958074), WheelAngle.FromDegrees(306.2591), Length.FromMillimetres(0)),
            new SupportForce(Force.FromNewtons(2.348712), WheelAngle.FromDegrees(106.4037), Length.FromMillimetres(-130)),
            RotationalSpeed.FromRevolutionsPerMinute(180),
            Flanges);
        Shows(found.Inner, 6000, 0.05, 40, 0.0005);
        Shows(found.Outer, 4500, 0.05, 250, 0.0005);
    }

    [Fact]
    public void Clip_masses_at_the_flanges()
    {
        Truth.Inner.MassAt(Flanges.Inner.Radius).Grams.ShouldBe(29.5858, 0.00005);
        Truth.Outer.MassAt(Flanges.Outer.Radius).Grams.ShouldBe(22.1893, 0.00005);
        Truth.Opposite.Inner.Place.Degrees.ShouldBe(220, 1e-9);
        Truth.Opposite.Outer.Place.Degrees.ShouldBe(70, 1e-9);
    }

    [Fact]
    public void Static_and_couple_parts()
    {
        Shows(Truth.Static, 3079.7124, 0.00005, 353.0643, 0.00005);
        Truth.Static.MassAt(Length.FromMillimetres(202.8)).Grams.ShouldBe(15.1860, 0.00005);
        Truth.Static.Opposite.Place.Degrees.ShouldBe(173.0643, 0.00005);

        var couple = Truth.Couple(Flanges);
        couple.Amount.GramSquareMillimetres.ShouldBe(913_468.4, 0.05);
        couple.Place.Degrees.ShouldBe(232.808, 0.0005);
        couple.InOuterPlane(Flanges.Apart).Amount.GramMillimetres.ShouldBe(5074.8244, 0.00005);

        var elsewhere = Truth.CoupleAbout(Flanges, Length.FromMillimetres(250));
        elsewhere.Amount.GramSquareMillimetres.ShouldBe(898_344.6, 0.05);
        elsewhere.Place.Degrees.ShouldBe(234.5, 0.05);
    }

    [Fact]
    public void Two_adhesive_planes()
    {
        var planes = Planes(185, 196, 300, 178);
        var moved = Truth.MovedTo(Flanges, planes);
        Shows(moved.Inner, 8533.2660, 0.00005, 46.5829, 0.00005);
        Shows(moved.Outer, 7145.0039, 0.00005, 246.8606, 0.00005);
        moved.Inner.MassAt(planes.Inner.Radius).Grams.ShouldBe(43.5371, 0.00005);
        moved.Inner.Opposite.Place.Degrees.ShouldBe(226.5829, 0.00005);
        moved.Outer.MassAt(planes.Outer.Radius).Grams.ShouldBe(40.1405, 0.00005);
        moved.Outer.Opposite.Place.Degrees.ShouldBe(66.8606, 0.00005);
    }

    [Fact]
    public void Inner_clip_and_outer_adhesive()
    {
        var planes = Planes(170, 202.8, 300, 178);
        var moved = Truth.MovedTo(Flanges, planes);
        Shows(moved.Inner, 7548.6584, 0.00005, 46.5829, 0.00005);
        Shows(moved.Outer, 6230.7692, 0.00005, 250, 0.00005);
        moved.Inner.MassAt(planes.Inner.Radius).Grams.ShouldBe(37.2222, 0.00005);
        moved.Outer.MassAt(planes.Outer.Radius).Grams.ShouldBe(35.0043, 0.00005);
        (moved.Outer.MassAt(planes.Outer.Radius) / Truth.Outer.MassAt(Flanges.Outer.Radius)).ShouldBe(1.5775, 0.00005);
    }

    [Fact]
    public void A_pure_couple_costs_more_mass_in_closer_planes()
    {
        var planes = Planes(185, 196, 300, 178);
        var couple = new UnbalancePair(At(1000, 30), At(1000, 210));
        var moved = couple.MovedTo(Flanges, planes);
        var before = couple.Inner.MassAt(Flanges.Inner.Radius) + couple.Outer.MassAt(Flanges.Outer.Radius);

        // (L/L')·(R/mean R'), with the mean of the two radii taken as 187 mm.
        (2 * moved.Inner.Amount.GramMillimetres / 187 / before.Grams).ShouldBe(1.6975, 0.00005);
    }

    [Fact]
    public void A_distance_entered_wrongly_by_a_millimetre_errs_by_the_static_part()
    {
        var wrong = Planes(171, 202.8, 351, 202.8);
        var moved = Truth.MovedTo(Flanges, wrong);
        ((moved.Inner - Truth.Inner).MassAt(Flanges.Inner.Radius)).Grams.ShouldBe(0.0844, 0.00005);
        ((moved.Outer - Truth.Outer).MassAt(Flanges.Outer.Radius)).Grams.ShouldBe(0.0844, 0.00005);
        (moved.Inner - Truth.Inner + (moved.Outer - Truth.Outer)).Amount.GramMillimetres.ShouldBe(0, 1e-9);
    }

    [Fact]
    public void A_car_wheel_at_130()
    {
        var speed = PermissibleUnbalance.TurningAt(Speed.FromKilometresPerHour(130), Length.FromMillimetres(310) * Math.Tau);
        speed.RadiansPerSecond.ShouldBe(116.487, 0.0005);
        speed.RevolutionsPerMinute.ShouldBe(1112.4, 0.05);
        var mass = Mass.FromKilograms(18);
        PermissibleUnbalance.Eccentricity(BalanceGrade.Read("40").Value, speed).In("µm").ShouldBe(343.4, 0.05);
        var g40 = PermissibleUnbalance.Of(BalanceGrade.Read("G 40").Value, mass, speed);
        g40.GramMillimetres.ShouldBe(6180.9, 0.05);
        (g40.GramMillimetres / 202.8).ShouldBe(30.48, 0.005);
        (PermissibleUnbalance.PerPlane(g40).GramMillimetres / 202.8).ShouldBe(15.24, 0.005);
        (PermissibleUnbalance.PerPlane(PermissibleUnbalance.Of(BalanceGrade.Read("16").Value, mass, speed)).GramMillimetres / 202.8).ShouldBe(6.10, 0.005);
        (PermissibleUnbalance.PerPlane(PermissibleUnbalance.Of(BalanceGrade.Read("6,3").Value, mass, speed)).GramMillimetres / 202.8).ShouldBe(2.40, 0.005);
    }

    [Fact]
    public void There_and_back_is_the_identity_and_sums_are_kept()
    {
        var random = new Random(7);
        for (var i = 0; i < 500; i++)
        {
            var a = Planes(random.Next(-100, 100), 150 + random.Next(100), 120 + random.Next(200), 150 + random.Next(100));
            var b = Planes(random.Next(-100, 100), 150 + random.Next(100), 120 + random.Next(200), 150 + random.Next(100));
            var pair = new UnbalancePair(At(random.Next(9000), random.NextDouble() * 360), At(random.Next(9000), random.NextDouble() * 360));
            var moved = pair.MovedTo(a, b);
            var back = moved.MovedTo(b, a);
            (back.Inner - pair.Inner).Amount.GramMillimetres.ShouldBe(0, 1e-7);
            (back.Outer - pair.Outer).Amount.GramMillimetres.ShouldBe(0, 1e-7);
            (moved.Static - pair.Static).Amount.GramMillimetres.ShouldBe(0, 1e-7);
            var here = moved.CoupleAbout(b, default).InOuterPlane(Length.FromMillimetres(1));
            var there = pair.CoupleAbout(a, default).InOuterPlane(Length.FromMillimetres(1));
            (here - there).Amount.GramMillimetres.ShouldBe(0, 1e-5);
            var parts = UnbalancePair.OfParts(pair.Static, pair.Couple(a), a);
            (parts.Inner - pair.Inner).Amount.GramMillimetres.ShouldBe(0, 1e-8);
            (parts.Outer - pair.Outer).Amount.GramMillimetres.ShouldBe(0, 1e-8);
        }
    }

    [Fact]
    public void Planes_that_do_not_lie_apart_are_no_pair()
    {
        Should.Throw<ArgumentException>(() => Planes(100, 200, 100, 200));
        Should.Throw<ArgumentException>(() => Planes(100, 200, 50, 200));
        Should.Throw<ArgumentException>(() => Planes(100, 0, 150, 200));
    }

    private static PlanePair Planes(double z1, double r1, double z2, double r2) => new(
        new PlanePlace(Length.FromMillimetres(r1), Length.FromMillimetres(z1)),
        new PlanePlace(Length.FromMillimetres(r2), Length.FromMillimetres(z2)));

    private static UnbalanceVector At(double gramMillimetres, double degrees) =>
        UnbalanceVector.At(Unbalance.FromGramMillimetres(gramMillimetres), WheelAngle.FromDegrees(degrees));

    private static void Shows(UnbalanceVector vector, double gramMillimetres, double within, double degrees, double degreesWithin)
    {
        vector.Amount.GramMillimetres.ShouldBe(gramMillimetres, within);
        vector.Place.Degrees.ShouldBe(degrees, degreesWithin);
    }
}
