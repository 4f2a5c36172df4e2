using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// The whole-number program of Huang et al., Shock and Vibration 16 (2009) 1-12, §4.2-4.3, eqs 7-9 (read): the least of |Σ pieces − correction|, at most
/// one 142 g piece in a hole, at most so many pieces. Its printed sets are five pieces on holes 7.5° apart and eight on holes 5° apart; which holes were
/// free is not told, so every hole is offered here and the printed sets are upper bounds.
/// </summary>
public class HuangPiecesTests
{
    private const double Piece = 142;
    private const double Radius = 100;

    [Fact]
    public void Five_pieces_come_as_near_as_any_five_holes_can_and_nearer_than_the_printed_set()
    {
        var need = Phasor(639.888, 73.80);
        var outcome = BalanceSolve.Run(Problem(639.888, 73.80, 7.5, 5) with { Aims = [BalanceAim.Score], MassPenaltyPerGram = 0 });
        outcome.ProvenOptimal.ShouldBeTrue();
        outcome.Weights.Select(w => w.Place.Degrees).ShouldBeUnique();
        outcome.Weights.ShouldAllBe(w => Math.Abs((w.Place.Degrees / 7.5) - Math.Round(w.Place.Degrees / 7.5)) < 1e-9);

        var left = Left(outcome, need);
        left.ShouldBe(LeastByTryingAll(need, 5), 1e-6);
        left.ShouldBeLessThan((Sum([45, 52.5, 82.5, 90, 97.5]) - need).Magnitude);
    }

    [Fact]
    public void Eight_pieces_are_the_fewest_and_come_nearer_than_the_printed_set()
    {
        var need = Phasor(1122.814, 165.19);
        var printed = (Sum([145, 150, 155, 165, 170, 175, 180, 185]) - need).Magnitude;
        printed.ShouldBe(20.4, 0.05);
        var outcome = BalanceSolve.Run(Problem(1122.814, 165.19, 5, 8) with { Tolerance = PerPlane(printed) });
        outcome.ProvenOptimal.ShouldBeTrue();
        outcome.WithinTolerance.ShouldBeTrue();
        outcome.Pieces.ShouldBe(8);
        outcome.Weights.Select(w => w.Place.Degrees).ShouldBeUnique();
        Left(outcome, need).ShouldBeLessThan(printed);
    }

    private static BalanceProblem Problem(double grams, double degrees, double step, int pieces) => new()
    {
        Inner = new WeightPlane(WeightKind.Clip, new PlanePlace(Length.FromMillimetres(Radius), Length.FromMillimetres(0)), false),
        Outer = new WeightPlane(WeightKind.Adhesive, new PlanePlace(Length.FromMillimetres(Radius), Length.FromMillimetres(1000)), false),
        Readings = new UnbalancePair(UnbalanceVector.OfMass(Mass.FromGrams(grams), Length.FromMillimetres(Radius), WheelAngle.FromDegrees(degrees)), default),

        // A length shorter than the way to the next hole: one piece in a hole.
        Stock = new WeightStock([new StockItem(Mass.FromGrams(Piece), Length.FromMillimetres(5), null)], []),
        Tolerance = PerPlane(71),
        AngleStep = Angle.FromDegrees(step),
        MaxPieces = pieces,
    };

    private static BalanceTolerance PerPlane(double grams) => new()
    {
        Inner = PlaneTolerance.Of(Mass.FromGrams(grams)), Outer = PlaneTolerance.Of(Mass.FromGrams(grams)), Source = Source.Entered("the test"),
    };

    private static Complex Phasor(double grams, double degrees) => Complex.FromPolarCoordinates(grams, degrees * Math.PI / 180);

    private static Complex Sum(double[] places) => places.Aggregate(Complex.Zero, (sum, p) => sum + Phasor(Piece, p));

    private static double Left(BalanceOutcome outcome, Complex need) => (Sum([.. outcome.Weights.Select(w => w.Place.Degrees)]) - need).Magnitude;

    /// <summary>Every set of up to so many of the 48 holes.</summary>
    private static double LeastByTryingAll(Complex need, int most)
    {
        Complex[] holes = [.. Enumerable.Range(0, 48).Select(i => Phasor(Piece, 7.5 * i))];
        var least = double.PositiveInfinity;
        Next(0, -need, most);
        return least;

        void Next(int from, Complex sum, int rest)
        {
            least = Math.Min(least, sum.Magnitude);
            for (var i = from; i < holes.Length && rest > 0; i++)
            {
                Next(i + 1, sum + holes[i], rest - 1);
            }
        }
    }
}
