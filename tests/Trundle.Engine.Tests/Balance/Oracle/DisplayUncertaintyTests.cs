using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>
/// What a display leaves open, against trying true readings one by one: each is shown by a display of our own that rounds and hides, and only those
/// that are shown as read may count. The residuals are reckoned here from moments about the axis, not by the engine.
/// </summary>
public sealed class DisplayUncertaintyTests
{
    private static Mass G(double grams) => Mass.FromGrams(grams);

    private static BalanceProblem Problem(int seed, double step, double hidden)
    {
        var random = new Random(seed);
        var problem = RandomProblems.Continuous(seed);
        var read = seed % 2 == 0
            ? new PlanePair(new PlanePlace(Length.FromMillimetres(195), Length.FromMillimetres(-20)), new PlanePlace(Length.FromMillimetres(205), Length.FromMillimetres(170)))
            : null;
        var at = read ?? problem.Planes;
        return problem with
        {
            ReadingPlanes = read,
            Readings = new UnbalancePair(Shown(at.Inner), seed % 3 == 0 ? default : Shown(at.Outer)),
            MaxPieces = 2,
        };

        UnbalanceVector Shown(PlanePlace place)
        {
            var steps = random.Next((int)Math.Ceiling(hidden / step), 12);
            return UnbalanceVector.OfMass(G(steps * step), place.Radius, WheelAngle.FromDegrees(random.Next(120) * 3));
        }
    }

    [Theory, MemberData(nameof(Cases))]
    public void No_true_reading_that_is_shown_so_leaves_more_and_one_leaves_nearly_as_much(int seed, double step, double hidden, double turn)
    {
        var problem = Problem(seed, step, hidden);
        var outcome = BalanceSolve.Run(problem);
        var profile = new BalancerProfile { DisplayStep = G(step), DisplayHidesBelow = G(hidden), DisplayAngleStep = Angle.FromDegrees(turn) };
        var open = DisplayReckoning.Of(outcome, profile)!;

        var read = problem.ReadingPlanes ?? problem.Planes;
        var added = new[] { PlaneSide.Inner, PlaneSide.Outer }.Select(side => outcome.Weights.Where(w => w.Plane == side)
            .Aggregate(Complex.Zero, (sum, w) => sum + Complex.FromPolarCoordinates(w.Mass.Grams * problem.Planes.At(side).Radius.Millimetres, w.Place.Radians))).ToArray();
        var (z1, z2) = (problem.Planes.Inner.Axial.Millimetres, problem.Planes.Outer.Axial.Millimetres);
        double mostInner = 0, mostOuter = 0, mostStatic = 0, mostCouple = 0, mostOffInner = 0;
        var shownNeed = Needed(problem.Readings.Inner.Phasor(), problem.Readings.Outer.Phasor());
        var tried = 0;
        var inner = TrueReadings(problem.Readings.Inner, read.Inner.Radius.Millimetres, step, hidden, turn).ToList();
        var outer = TrueReadings(problem.Readings.Outer, read.Outer.Radius.Millimetres, step, hidden, turn).ToList();
        foreach (var i in inner)
        {
            foreach (var o in outer)
            {
                tried++;
                var (n1, n2) = Needed(i, o);
                var (r1, r2) = (added[0] - n1, added[1] - n2);
                mostInner = Math.Max(mostInner, r1.Magnitude / problem.Planes.Inner.Radius.Millimetres);
                mostOuter = Math.Max(mostOuter, r2.Magnitude / problem.Planes.Outer.Radius.Millimetres);
                mostStatic = Math.Max(mostStatic, (r1 + r2).Magnitude);
                mostCouple = Math.Max(mostCouple, ((r2 - r1) * (z2 - z1) / 2).Magnitude);
                mostOffInner = Math.Max(mostOffInner, (n1 - shownNeed.Item1).Magnitude / problem.Planes.Inner.Radius.Millimetres);
            }
        }

        tried.ShouldBeGreaterThan(400);
        Close(open.WorstInner.Grams, mostInner, 0.35);
        Close(open.WorstOuter.Grams, mostOuter, 0.35);
        Close(open.OffInner.Grams, mostOffInner, 0.35);
        Close(open.WorstStatic.GramMillimetres, mostStatic, 80);
        Close(open.WorstCouple.GramSquareMillimetres, mostCouple, 8000);
        open.WithinToleranceAtWorst.ShouldBe(open.WorstParts.Max(p => p.Ratio) <= 1);

        // Equilibrium: the same force and the same moment about the axis' zero, from the planes that were read.
        (Complex, Complex) Needed(Complex i, Complex o)
        {
            var force = i + o;
            var moment = (i * read.Inner.Axial.Millimetres) + (o * read.Outer.Axial.Millimetres);
            var second = (moment - (force * z1)) / (z2 - z1);
            return (force - second, second);
        }

        static void Close(double bound, double found, double most)
        {
            found.ShouldBeLessThanOrEqualTo(bound + 1e-6);
            found.ShouldBeGreaterThan(bound - most);
        }
    }

    public static TheoryData<int, double, double, double> Cases
    {
        get
        {
            var cases = new TheoryData<int, double, double, double>();
            for (var seed = 1; seed <= 6; seed++)
            {
                cases.Add(seed, 1, 5, 0);
                cases.Add(seed, 5, 8, 3);
                cases.Add(seed, 2, 0.5, 6);
            }

            return cases;
        }
    }

    /// <summary>True vectors on a fine grid that a display shows as this one, whether it hides before it rounds or after.</summary>
    private static IEnumerable<Complex> TrueReadings(UnbalanceVector shown, double radiusMm, double step, double hidden, double turn)
    {
        var phasor = shown.Phasor();
        var shownGrams = Math.Round(phasor.Magnitude / radiusMm, 6);
        if (shownGrams == 0)
        {
            for (var grams = 0.0; grams < 12; grams += 0.1)
            {
                if (grams < hidden || Rounded(grams) < hidden - 1e-9 || Rounded(grams) == 0)
                {
                    for (var degrees = 0; degrees < 360; degrees += 6)
                    {
                        yield return Complex.FromPolarCoordinates(grams * radiusMm, double.DegreesToRadians(degrees));
                    }
                }
            }

            yield break;
        }

        for (var part = -10; part <= 10; part++)
        {
            for (var arc = turn == 0 ? 0 : -10; arc <= (turn == 0 ? 0 : 10); arc++)
            {
                var grams = shownGrams + (part * step / 20);
                yield return Complex.FromPolarCoordinates(grams * radiusMm, phasor.Phase + double.DegreesToRadians(arc * turn / 20));
            }
        }

        double Rounded(double grams) => Math.Round(grams / step, MidpointRounding.ToEven) * step;
    }

    [Theory]
    [InlineData(1, 5, 5)]
    [InlineData(5, 0, 2.5)]
    [InlineData(5, 5, 5)]
    [InlineData(5, 8, 8)]
    [InlineData(5, 6, 7.5)]
    [InlineData(0, 4, 4)]
    public void Nothing_shown_hides_up_to_the_greater_of_what_is_hidden_and_what_is_rounded(double step, double hidden, double most) =>
        new BalancerProfile { DisplayStep = G(step), DisplayHidesBelow = G(hidden) }.MostShownAsNothing.Grams.ShouldBe(most, 1e-9);

    [Fact]
    public void A_profile_that_tells_nothing_of_the_display_leaves_nothing_to_reckon() =>
        DisplayReckoning.Of(BalanceSolve.Run(RandomProblems.Continuous(3)), new BalancerProfile()).ShouldBeNull();
}

file static class Phasors
{
    public static Complex Phasor(this UnbalanceVector vector) => Complex.FromPolarCoordinates(vector.Amount.GramMillimetres, vector.Place.Radians);
}
