using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Engine.Practice.Bench;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Practice;

/// <summary>What each wrong setting does to the first spin, against algebra written out here by hand and not by the engine's plane transfer.</summary>
public sealed class BenchPhysicsTests
{
    private static IEnumerable<PracticeWheel> Wheels => Enumerable.Range(0, 400).Select(i => PracticeWheels.Of((ulong)i, PracticeLevel.TwoPlanes)).Where(w => w.OuterKind == WeightKind.Clip);

    [Fact]
    public void A_rim_distance_off_by_d_errs_by_the_static_part_times_d_over_the_distance_of_the_planes_opposite_in_both()
    {
        foreach (var wheel in Wheels)
        {
            var (need, shown) = FirstSpin(wheel, Mistake.RimDistanceWrong);
            var each = (need.Inner + need.Outer) * 30 / wheel.Gauged.RimWidth.Millimetres;
            HoldsNear(shown.Inner, need.Inner + each);
            HoldsNear(shown.Outer, need.Outer - each);
        }
    }

    [Fact]
    public void A_rim_width_off_keeps_the_outer_moment_and_puts_the_rest_inside()
    {
        foreach (var wheel in Wheels)
        {
            var (need, shown) = FirstSpin(wheel, Mistake.RimWidthWrong);
            var (really, entered) = (wheel.Gauged.RimWidth.Millimetres, wheel.Gauged.RimWidth.Millimetres + 50.8);
            HoldsNear(shown.Outer, need.Outer * really / entered);
            HoldsNear(shown.Inner, need.Inner + (need.Outer * (1 - (really / entered))));
        }
    }

    [Fact]
    public void A_rim_diameter_off_shows_the_grams_of_another_radius()
    {
        foreach (var wheel in Wheels)
        {
            var bench = RobotTrainee.Clamp(RobotTrainee.Set(PracticeBench.For(wheel), Mistake.RimDiameterWrong), Mistake.None) with { Seat = default };
            var shown = bench.Spin().Value.Spins[^1];
            var grams = shown.Exact.Inner.MassAt(shown.Planes.Inner.Radius).Grams;
            var radius = wheel.Gauged.RimDiameter.Millimetres / 2;
            grams.ShouldBe(wheel.Heavy(default).Inner.Amount.GramMillimetres / (radius + 25.4), 1e-6);
        }
    }

    [Fact]
    public void A_transducer_that_shows_too_little_moves_both_planes_by_the_equilibrium_of_the_supports()
    {
        for (var i = 0; i < 300; i++)
        {
            var wheel = PracticeWheels.Of((ulong)i, PracticeLevel.OutOfCalibration);
            var bench = RobotTrainee.Clamp(RobotTrainee.Set(PracticeBench.For(wheel), Mistake.None), Mistake.None) with { Seat = default };
            var shown = bench.Spin().Value.Spins[^1].Exact;
            var (z1, z2) = (wheel.Planes.Inner.Axial.Millimetres, wheel.Planes.Outer.Axial.Millimetres);
            const double za = 0, zb = -130;
            var heavy = wheel.Heavy(default).Opposite;
            var (u1, u2) = (Of(heavy.Inner), Of(heavy.Outer));

            // F_A + F_B = U1 + U2 and zA·F_A + zB·F_B = z1·U1 + z2·U2, each transducer with its own share; then back.
            var fa = (((z1 - zb) * u1) + ((z2 - zb) * u2)) / (za - zb) * wheel.Gains.First;
            var fb = (((za - z1) * u1) + ((za - z2) * u2)) / (za - zb) * wheel.Gains.Second;
            HoldsNear(Of(shown.Inner), (((z2 - za) * fa) + ((z2 - zb) * fb)) / (z2 - z1));
            HoldsNear(Of(shown.Outer), (((za - z1) * fa) + ((zb - z1) * fb)) / (z2 - z1));
        }
    }

    [Fact]
    public void The_forces_on_the_supports_are_those_of_the_worked_case()
    {
        // Calculated once by hand from the two equations of equilibrium: supports at 0 and −130, planes at 170 and 350 mm, 6000 g·mm at 40° and 4500 g·mm at 250°
        // give F/ω² = 8325.4314 g·mm at 306.2591° and 6610.3978 g·mm at 106.4037°.
        var planes = new PlanePair(new PlanePlace(Length.FromMillimetres(202.8), Length.FromMillimetres(170)), new PlanePlace(Length.FromMillimetres(202.8), Length.FromMillimetres(350)));
        var felt = SimulatedBalancer.In(
            [
                new UnbalanceAlong(At(6000, 40), planes.Inner.Axial),
                new UnbalanceAlong(At(4500, 250), planes.Outer.Axial),
            ],
            SimulatedBalancer.Supports);
        HoldsNear(Of(felt.Outer), Complex.FromPolarCoordinates(8325.4314, 306.2591 * Math.PI / 180), 0.02);
        HoldsNear(Of(felt.Inner), Complex.FromPolarCoordinates(6610.3978, 106.4037 * Math.PI / 180), 0.02);
    }

    [Fact]
    public void The_bench_set_rightly_and_centred_shows_what_is_there()
    {
        foreach (var wheel in Wheels)
        {
            var (need, shown) = FirstSpin(wheel, Mistake.None);
            HoldsNear(shown.Inner, need.Inner);
            HoldsNear(shown.Outer, need.Outer);
        }
    }

    [Fact]
    public void A_display_rounds_halves_up_and_hides_what_is_small()
    {
        var radius = Length.FromMillimetres(200);
        var profile = new BalancerProfile { DisplayStep = Mass.FromGrams(5), DisplayHidesBelow = Mass.FromGrams(6), DisplayAngleStep = Angle.FromDegrees(3) };
        Shown(12.5, 10).ShouldBe((15, 9));
        Shown(12.4, 10.6).ShouldBe((10, 12));
        Shown(7.4, 100).ShouldBe((0, 0));

        (double Grams, double Degrees) Shown(double grams, double degrees)
        {
            var v = SimulatedBalancer.Shown(UnbalanceVector.OfMass(Mass.FromGrams(grams), radius, WheelAngle.FromDegrees(degrees)), radius, profile);
            return (Math.Round(v.MassAt(radius).Grams, 9), Math.Round(v.Place.Degrees, 9));
        }
    }

    private static ((Complex Inner, Complex Outer) Need, (Complex Inner, Complex Outer) Shown) FirstSpin(PracticeWheel wheel, Mistake mistake)
    {
        var bench = RobotTrainee.Clamp(RobotTrainee.Set(PracticeBench.For(wheel), mistake), Mistake.None) with { Seat = default };
        var need = wheel.Heavy(default).Opposite;
        var exact = bench.Spin().Value.Spins[^1].Exact;
        return ((Of(need.Inner), Of(need.Outer)), (Of(exact.Inner), Of(exact.Outer)));
    }

    private static UnbalanceVector At(double gramMillimetres, double degrees) => UnbalanceVector.At(Unbalance.FromGramMillimetres(gramMillimetres), WheelAngle.FromDegrees(degrees));

    private static Complex Of(UnbalanceVector v) => Complex.FromPolarCoordinates(v.Amount.GramMillimetres, v.Place.Radians);

    private static void HoldsNear(Complex found, Complex expected, double within = 1e-6) => (found - expected).Magnitude.ShouldBeLessThan(within);
}
