using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>
/// Strips behind spokes from a drawer without counts and without any limit on mass: the choice is proven all the same, because a set in hand
/// says by the price of mass how heavy a better one may be. Held against every set up to that mass.
/// </summary>
public class SpokeWheelsTests
{
    private const double RadiusMillimetres = 200;
    private const double Segment = 5;
    private const double PerGram = 0.02;

    [Theory]
    [InlineData(null, null)]
    [InlineData(3, 180.0)]
    [InlineData(null, 180.0)]
    [InlineData(null, 90.0)]
    public void Five_spokes_at_six_tenths_of_a_gram_are_proven_with_and_without_limits(int? mostPieces, double? mostGrams)
    {
        var outcome = BalanceSolve.Run(Wheel(5, 0, 0, 0, 35, 100, 0.6) with { MaxPieces = mostPieces, MaxMass = mostGrams is { } g ? Mass.FromGrams(g) : null });
        outcome.Weights.Select(w => (w.Place.Degrees, w.Mass.Grams)).ShouldBe([(72, 45), (144, 5), (216, 20)]);
        outcome.Residual.Outer.MassAt(Length.FromMillimetres(RadiusMillimetres)).Grams.ShouldBe(0.5443, 0.00005);
        outcome.ProvenOptimal.ShouldBeTrue();
    }

    [Fact]
    public void Sixty_random_wheels_at_a_gram_a_plane_are_proven_and_the_best_of_all_sets()
    {
        var seen = new HashSet<int>();
        for (var seed = 0; seed < 60; seed++)
        {
            var random = new Random(seed);
            var spokes = random.Next(3, 10);
            var (inner, innerAt, outer, outerAt) = (random.NextDouble() * 40, random.NextDouble() * 360, random.NextDouble() * 40, random.NextDouble() * 360);
            var first = random.Next(360);
            var outcome = BalanceSolve.Run(Wheel(spokes, first, inner, innerAt, outer, outerAt, 1));
            outcome.ProvenOptimal.ShouldBeTrue($"seed {seed}");
            if (!outcome.WithinTolerance)
            {
                // Three, four and six spokes make a grid of vectors: what it leaves no set goes below, by whatever mass.
                (spokes is 3 or 4 or 6).ShouldBeTrue($"seed {seed}");
                outcome.Score.ShouldBe(Math.Max(NearestOnGrid(spokes, first, inner, innerAt), NearestOnGrid(spokes, first, outer, outerAt)), 1e-9, $"seed {seed}");
                continue;
            }

            var worth = outcome.Score + (PerGram * outcome.TotalMass.Grams);
            var least = Best(spokes, first, Complex.FromPolarCoordinates(inner, Radians(innerAt)), Complex.FromPolarCoordinates(outer, Radians(outerAt)), worth / PerGram, outcome.Pieces);
            least.Pieces.ShouldBe(outcome.Pieces, $"seed {seed}");
            least.Worth.ShouldBe(worth, 1e-9, $"seed {seed}");
            seen.Add(spokes);
        }

        seen.IsSupersetOf([5, 7, 8, 9]).ShouldBeTrue();
    }

    [Fact]
    public void A_tolerance_that_joins_the_planes_is_proven_out_of_reach_by_both_grids_together()
    {
        var beyond = 0;
        for (var seed = 0; seed < 24; seed++)
        {
            var random = new Random(seed);
            var spokes = new[] { 3, 4, 6 }[random.Next(3)];
            var (inner, innerAt, outer, outerAt) = (random.NextDouble() * 40, random.NextDouble() * 360, random.NextDouble() * 40, random.NextDouble() * 360);
            var (most, apart) = (Unbalance.FromGramMillimetres(300), CoupleUnbalance.FromGramSquareMillimetres(25_000));
            var outcome = BalanceSolve.Run(Wheel(spokes, 0, inner, innerAt, outer, outerAt, 1) with { Tolerance = new BalanceTolerance { Static = most, Couple = apart, Source = Source.Entered("the test") } });
            outcome.ProvenOptimal.ShouldBeTrue($"seed {seed}");
            if (outcome.WithinTolerance)
            {
                continue;
            }

            // Every whole step of either sign in both planes that leaves less than 20 g in each.
            var (left1, left2) = (Left(spokes, inner, innerAt), Left(spokes, outer, outerAt));
            var least = (from a in left1
                         from b in left2
                         select Math.Max((a + b).Magnitude * RadiusMillimetres / 300, (b - a).Magnitude * RadiusMillimetres * 75 / 25_000)).Min();
            outcome.Score.ShouldBe(least, 1e-9, $"seed {seed}");
            beyond++;
        }

        beyond.ShouldBeGreaterThan(5);

        static List<Complex> Left(int spokes, double grams, double degrees)
        {
            var need = Complex.FromPolarCoordinates(grams, Radians(degrees));
            var other = Complex.FromPolarCoordinates(Segment, Radians(360.0 / spokes));
            return [.. from n in Enumerable.Range(-20, 41) from m in Enumerable.Range(-20, 41) let left = (n * Segment) + (m * other) - need where left.Magnitude < 20 select left];
        }
    }

    [Fact]
    public void Behind_eight_spokes_no_three_strips_however_heavy_do_what_four_are_proven_for()
    {
        var proven = 0;
        for (var seed = 0; seed < 400; seed++)
        {
            var random = new Random(seed);
            var (grams, degrees, first) = (random.NextDouble() * 60, random.NextDouble() * 360, random.Next(360));
            var outcome = BalanceSolve.Run(Wheel(8, first, 0, 0, grams, degrees, 1));
            if (outcome is { ProvenOptimal: true, Pieces: 4 })
            {
                proven++;
                NearestOfThree(8, first, Complex.FromPolarCoordinates(grams, Radians(degrees)), 200).ShouldBeGreaterThan(1, $"seed {seed}");
            }
        }

        proven.ShouldBeGreaterThan(10);
    }

    [Fact]
    public void Out_of_reach_of_the_light_strips_it_is_said_that_heavier_ones_were_left_out_and_a_limit_settles_it()
    {
        var problem = Wheel(5, 0, 0, 0, 35, 100, 0.1);
        var open = BalanceSolve.Run(problem);
        open.WithinTolerance.ShouldBeFalse();
        open.Gap.ShouldBe(ProofGap.HeavierStrips);
        var upTo = open.StripsTo.ShouldNotBeNull();

        BalanceSolve.Run(problem with { MaxMass = upTo }).ProvenOptimal.ShouldBeTrue();
        BalanceSolve.Run(problem with { MaxMass = Mass.FromGrams(250) }).ShouldSatisfyAllConditions(o => o.ProvenOptimal.ShouldBeTrue(), o => o.WithinTolerance.ShouldBeFalse());
        BalanceSolve.Run(problem with { MaxMass = Mass.FromGrams(300) }).WithinTolerance.ShouldBeTrue();

        // It is no mere want of work: four strips of up to a kilogram do meet it.
        var need = Complex.FromPolarCoordinates(35, Radians(100));
        Complex[] units = [.. Enumerable.Range(0, 5).Select(i => Complex.FromPolarCoordinates(Segment, Radians(72 * i)))];
        Enumerable.Range(1, 200).SelectMany(n => Enumerable.Range(1, 200).Select(m => need - (n * units[0]) - (m * units[1])))
            .Min(rest => (rest - OnTwo(rest, units[2], units[4])).Magnitude).ShouldBeLessThan(0.1);
    }

    private static BalanceProblem Wheel(int spokes, double first, double inner, double innerAt, double outer, double outerAt, double tolerance)
    {
        var plane = PlaneTolerance.Of(Mass.FromGrams(tolerance));
        var radius = Length.FromMillimetres(RadiusMillimetres);
        return new BalanceProblem
        {
            Inner = new WeightPlane(WeightKind.Adhesive, new PlanePlace(radius, Length.FromMillimetres(0)), true),
            Outer = new WeightPlane(WeightKind.Adhesive, new PlanePlace(radius, Length.FromMillimetres(150)), true),
            Readings = new UnbalancePair(
                UnbalanceVector.OfMass(Mass.FromGrams(inner), radius, WheelAngle.FromDegrees(innerAt)), UnbalanceVector.OfMass(Mass.FromGrams(outer), radius, WheelAngle.FromDegrees(outerAt))),
            Spokes = new SpokePlaces(spokes, WheelAngle.FromDegrees(first)),
            Stock = new WeightStock([], [new StockItem(Mass.FromGrams(Segment), null, null)]),
            Tolerance = new BalanceTolerance { Inner = plane, Outer = plane, Source = Source.Entered("the test") },
            MassPenaltyPerGram = PerGram,
        };
    }

    /// <summary>The best of all sets of up to so many pieces and so much mass, at 1 g a plane: fewest pieces that meet it, then score and price of mass.</summary>
    private static (int Pieces, double Worth) Best(int spokes, double first, Complex inner, Complex outer, double mostGrams, int mostPieces)
    {
        var (a, b) = (new List<Dictionary<int, double>>(), new List<Dictionary<int, double>>());
        for (var pieces = 0; pieces <= mostPieces; pieces++)
        {
            Complex[] units = [.. Enumerable.Range(0, spokes).Select(i => Complex.FromPolarCoordinates(Segment, Radians(first + (360.0 * i / spokes))))];

            // With so many pieces in one plane, the other has no more than the rest.
            a.Add(b.Exists(m => m.Values.Any(d => d <= 1)) && b.FindIndex(m => m.Values.Any(d => d <= 1)) + pieces > mostPieces ? [] : Nearest(units, pieces, inner, mostGrams));
            b.Add(a.Exists(m => m.Values.Any(d => d <= 1)) && a.FindIndex(m => m.Values.Any(d => d <= 1)) + pieces > mostPieces ? [] : Nearest(units, pieces, outer, mostGrams));
            var met = from k in Enumerable.Range(0, pieces + 1)
                      from x in a[k]
                      from y in b[pieces - k]
                      where x.Value <= 1 && y.Value <= 1
                      select Math.Max(x.Value, y.Value) + (PerGram * Segment * (x.Key + y.Key));
            if (met.Any())
            {
                return (pieces, met.Min());
            }
        }

        return (-1, double.NaN);
    }

    /// <summary>For each mass in segments, how near so many strips behind different spokes come to a vector in grams.</summary>
    private static Dictionary<int, double> Nearest(Complex[] units, int pieces, Complex need, double mostGrams)
    {
        var nearest = new Dictionary<int, double>();
        Extend(0, pieces, need, 0);
        return nearest;

        void Extend(int from, int left, Complex rest, int segments)
        {
            if (left == 0)
            {
                nearest[segments] = Math.Min(nearest.GetValueOrDefault(segments, double.PositiveInfinity), rest.Magnitude);
                return;
            }

            for (var place = from; place < units.Length; place++)
            {
                for (var n = 1; (segments + n) * Segment <= mostGrams; n++)
                {
                    Extend(place + 1, left - 1, rest - (n * units[place]), segments + n);
                }
            }
        }
    }

    /// <summary>How near one to three strips of up to so many segments come, the third of them by the way that is left.</summary>
    private static double NearestOfThree(int spokes, double first, Complex need, int most)
    {
        Complex[] units = [.. Enumerable.Range(0, spokes).Select(i => Complex.FromPolarCoordinates(Segment, Radians(first + (360.0 * i / spokes))))];
        var nearest = need.Magnitude;
        for (var i = 0; i < spokes; i++)
        {
            for (var j = i + 1; j < spokes; j++)
            {
                for (var k = j + 1; k < spokes; k++)
                {
                    for (var n = 0; n <= most; n++)
                    {
                        for (var m = 0; m <= most; m++)
                        {
                            var rest = need - (n * units[i]) - (m * units[j]);
                            var along = ((rest.Real * units[k].Real) + (rest.Imaginary * units[k].Imaginary)) / (Segment * Segment);
                            nearest = Math.Min(nearest, (rest - (Math.Clamp(Math.Round(along), 0, most) * units[k])).Magnitude);
                        }
                    }
                }
            }
        }

        return nearest;
    }

    /// <summary>About the best that whole segments at two places make of a vector in grams.</summary>
    private static Complex OnTwo(Complex wanted, Complex first, Complex second)
    {
        var cross = (first.Real * second.Imaginary) - (first.Imaginary * second.Real);
        var onFirst = ((wanted.Real * second.Imaginary) - (wanted.Imaginary * second.Real)) / cross;
        var onSecond = ((first.Real * wanted.Imaginary) - (first.Imaginary * wanted.Real)) / cross;
        return (Math.Clamp(Math.Round(onFirst), 0, 200) * first) + (Math.Clamp(Math.Round(onSecond), 0, 200) * second);
    }

    /// <summary>How near whole segments of either sign come to a vector in grams, behind three, four or six spokes.</summary>
    private static double NearestOnGrid(int spokes, double first, double grams, double degrees)
    {
        var need = Complex.FromPolarCoordinates(grams, Radians(degrees - first));
        var other = Complex.FromPolarCoordinates(Segment, Radians(360.0 / spokes));
        return (from n in Enumerable.Range(-40, 81) from m in Enumerable.Range(-40, 81) select (need - (n * Segment) - (m * other)).Magnitude).Min();
    }

    private static double Radians(double degrees) => degrees * Math.PI / 180;
}
