using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Spin;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Spin;

/// <summary>Known masses that were entered wrongly: where spare spins show them, and where nothing can. An ordinary overhung shaft, by forces on its two supports.</summary>
public class KnownMassesTests
{
    private static readonly SpinSense Sense = new(RotationSense.Clockwise, PhaseSense.Lead);

    // Supports at 0 and −130 mm, planes at 170 and 350 mm: (z − z_B)/(z_A − z_B) and (z_A − z)/(z_A − z_B), the second transducer a little deaf.
    private static readonly Complex[][] Machine =
    [
        [Complex.FromPolarCoordinates(1.3 * 300 / 130 * 1e-4, 0.2), Complex.FromPolarCoordinates(-0.8 * 170 / 130 * 1e-4, -0.4)],
        [Complex.FromPolarCoordinates(1.3 * 480 / 130 * 1e-4, 0.2), Complex.FromPolarCoordinates(-0.8 * 350 / 130 * 1e-4, -0.4)],
    ];

    private static readonly UnbalancePair Plain = new(default, default);
    private static readonly UnbalancePair Inner = new(At(50, 30), default);
    private static readonly UnbalancePair OtherInner = new(At(50, 150), default);
    private static readonly UnbalancePair Outer = new(default, At(60, 250));
    private static readonly UnbalancePair OtherOuter = new(default, At(40, 90));
    private static readonly UnbalancePair Both = new(At(40, 120), At(40, 120));

    [Fact]
    public void An_ordinary_overhung_shaft_is_not_nearly_dependent()
    {
        var fit = Fit([Plain, Inner, Outer], []);
        fit.ConditionNumber.ShouldBeInRange(20, 35);
        fit.IsNearlyDependent.ShouldBeFalse();
    }

    [Fact]
    public void A_plane_that_no_second_spin_checks_is_named()
    {
        Unchecked(Plain, Inner, Outer).ShouldBe((true, true));
        Unchecked(Plain, Inner, OtherInner, Outer).ShouldBe((false, true));
        Unchecked(Plain, Inner, Outer, OtherOuter).ShouldBe((true, false));
        Unchecked(Plain, Inner, OtherInner, Outer, OtherOuter).ShouldBe((false, false));
        Unchecked(Plain, Inner, Outer, Both).ShouldBe((false, false));

        // The same mass at the same place again repeats whatever was entered wrongly; a plain spin more checks neither.
        Unchecked(Plain, Inner, Inner, Outer, Outer, Plain).ShouldBe((true, true));
        return;

        static (bool, bool) Unchecked(params UnbalancePair[] added)
        {
            var fit = Fit(added, []);
            return (fit.InnerUnchecked, fit.OuterUnchecked);
        }
    }

    [Theory]
    [InlineData(75, 30)]
    [InlineData(50, 45)]
    [InlineData(50, 90)]
    public void A_mass_entered_wrongly_shows_where_its_plane_is_checked_and_not_where_it_is_not(double grams, double degrees)
    {
        var wrong = new Dictionary<int, UnbalancePair> { [1] = new(At(grams, degrees), default) };
        foreach (UnbalancePair[] spins in new UnbalancePair[][] { [Plain, Inner, Outer, Both], [Plain, Inner, OtherInner, Outer], [Plain, Inner, Outer, OtherInner, OtherOuter] })
        {
            Fit(spins, []).Misfit.ShouldNotBeNull().IsBeyondErrors.ShouldBeFalse();
            var fit = Fit(spins, wrong);
            fit.InnerUnchecked.ShouldBeFalse();
            fit.Misfit.ShouldNotBeNull().IsBeyondErrors.ShouldBeTrue($"{fit.Misfit}");
        }

        var blind = Fit([Plain, Inner, Outer, OtherOuter], wrong);
        blind.InnerUnchecked.ShouldBeTrue();
        blind.Misfit.ShouldNotBeNull().IsBeyondErrors.ShouldBeFalse();
    }

    [Fact]
    public void Masses_that_sit_a_degree_off_fit_in_all_but_few_calibrations()
    {
        var random = new Random(21);
        var beyond = Enumerable.Range(0, 400).Count(_ => Fit([Plain, Inner, OtherInner, Outer, Both], [], random).Misfit!.IsBeyondErrors);
        beyond.ShouldBeLessThan(5);
    }

    /// <summary>Spins that carry what is added, entered as it is or as <paramref name="entered"/> says; with a random, each mass set a degree and 1 % off.</summary>
    private static SpeedFit Fit(UnbalancePair[] added, Dictionary<int, UnbalancePair> entered, Random? random = null)
    {
        var own = new UnbalancePair(At(15, 70), At(12, 200));
        var spins = added.Select((a, i) =>
        {
            var set = new UnbalancePair(Set(a.Inner), Set(a.Outer)) + own;
            var points = new[] { 0, 1 }.Select(p =>
            {
                var seen = (Machine[0][p] * Of(set.Inner)) + (Machine[1][p] * Of(set.Outer)) + Complex.FromPolarCoordinates(0.001, 2.4 * ((3 * i) + p));
                return new VibrationReading(seen.Magnitude, Angle.FromRadians(seen.Phase));
            });
            return new CalibrationSpin(entered.GetValueOrDefault(i, a), RotationalSpeed.FromRevolutionsPerMinute(180), [.. points])
            {
                StandardErrors = [0.001, 0.001], MarkStandardError = Angle.FromDegrees(0.1),
            };
        }).ToList();
        return CalibrationFit.Of(spins, [.. Enumerable.Range(0, added.Length)], Sense).ShouldNotBeNull();

        UnbalanceVector Set(UnbalanceVector mass) => random is null
            ? mass
            : UnbalanceVector.At(mass.Amount * (1 + (0.01 * Signals.Gauss(random))), WheelAngle.FromDegrees(mass.Place.Degrees + Signals.Gauss(random)));
    }

    private static Complex Of(UnbalanceVector v) => Complex.FromPolarCoordinates(v.Amount.GramMillimetres, v.Place.Radians);

    private static UnbalanceVector At(double grams, double degrees) => UnbalanceVector.At(Unbalance.FromGramMillimetres(200 * grams), WheelAngle.FromDegrees(degrees));
}
