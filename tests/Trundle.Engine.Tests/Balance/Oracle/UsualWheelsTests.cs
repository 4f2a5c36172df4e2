using Trundle.Engine.Balance;
using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>The wheels of an ordinary day: the choice is always proven, whatever the tolerance asks for.</summary>
public class UsualWheelsTests
{
    private static readonly Source Given = Source.Entered("the test");
    private static readonly BalanceTolerance[] Tolerances =
    [
        BalanceTolerance.WhereNoneGiven,
        new() { Static = Unbalance.FromGramMillimetres(1000), Source = Given },
        new() { Static = Unbalance.FromGramMillimetres(1000), Couple = CoupleUnbalance.FromGramSquareMillimetres(150_000), Source = Given },
        BalanceTolerance.WhereNoneGiven with { Static = Unbalance.FromGramMillimetres(1000) },
    ];

    private static readonly StockItem[] Clips = [.. Enumerable.Range(1, 12).Select(i => new StockItem(Mass.FromGrams(5 * i), null, null))];
    private static readonly StockItem[] QuarterOunces = [.. Enumerable.Range(1, 12).Select(i => new StockItem(Mass.FromOunces(i / 4.0), null, null))];
    private static readonly StockItem[] TwelveSegments = [new(Mass.FromGrams(5), Length.FromMillimetres(19), 12)];
    private static readonly StockItem[] Segments = [new(Mass.FromGrams(5), Length.FromMillimetres(19), null), new(Mass.FromGrams(10), Length.FromMillimetres(24), null)];

    [Fact]
    public void Clips_on_both_flanges_at_any_angle() =>
        Unproven((random, tolerance) => Wheel(random, WeightKind.Clip, false, 60) with { Stock = new WeightStock(random.Next(2) == 0 ? Clips : QuarterOunces, []), Tolerance = tolerance }).ShouldBeEmpty();

    [Fact]
    public void Clips_inside_and_strips_behind_five_to_twelve_spokes_past_the_valve() =>
        Unproven((random, tolerance) => Wheel(random, WeightKind.Adhesive, true, 60) with
        {
            Stock = new WeightStock(Clips, random.Next(2) == 0 ? TwelveSegments : Segments),
            Spokes = new SpokePlaces(random.Next(5, 13), WheelAngle.FromDegrees(random.Next(360))),
            Forbidden = random.Next(2) == 0 ? [] : [new ForbiddenArc(PlaneSide.Outer, WheelAngle.FromDegrees(350), WheelAngle.FromDegrees(10))],
            Tolerance = tolerance,
        }).ShouldBeEmpty();

    [Fact]
    public void Strips_behind_the_spokes_on_both_sides() =>
        Unproven((random, tolerance) => Wheel(random, WeightKind.Adhesive, true, 60) is var wheel ? wheel with
        {
            Inner = wheel.Inner with { Kind = WeightKind.Adhesive, BehindSpokes = true },
            Stock = new WeightStock([], Segments),
            Spokes = new SpokePlaces(random.Next(5, 13), WheelAngle.FromDegrees(random.Next(360))),
            Tolerance = tolerance,
        } : wheel).ShouldBeEmpty();

    [Fact]
    public void Clips_inside_and_a_strip_at_any_angle_past_the_valve() =>
        Unproven((random, tolerance) => Wheel(random, WeightKind.Adhesive, false, 40) with
        {
            Stock = new WeightStock(Clips, TwelveSegments),
            Forbidden = [new ForbiddenArc(PlaneSide.Outer, WheelAngle.FromDegrees(350), WheelAngle.FromDegrees(10))],
            Tolerance = tolerance,
        }).ShouldBeEmpty();

    /// <summary>The wheels whose choice is not proven.</summary>
    private static List<string> Unproven(Func<Random, BalanceTolerance, BalanceProblem> make) =>
    [
        .. from seed in Enumerable.Range(0, 60)
           from tolerance in Enumerable.Range(0, Tolerances.Length)
           where !BalanceSolve.Run(make(new Random(seed), Tolerances[tolerance])).ProvenOptimal
           select $"seed {seed}, tolerance {tolerance}",
    ];

    private static BalanceProblem Wheel(Random random, WeightKind outer, bool spokes, int mostGrams)
    {
        var inner = new WeightPlane(WeightKind.Clip, new PlanePlace(Length.FromMillimetres(202.8), Length.FromMillimetres(0)), false);
        var strip = new WeightPlane(outer, outer == WeightKind.Clip
            ? new PlanePlace(Length.FromMillimetres(202.8), Length.FromMillimetres(180))
            : new PlanePlace(Length.FromMillimetres(178), Length.FromMillimetres(135)), spokes);
        return new BalanceProblem
        {
            Inner = inner,
            Outer = strip,
            Readings = new UnbalancePair(Reading(inner), Reading(strip)),
            Stock = new WeightStock([], []),
            Tolerance = BalanceTolerance.WhereNoneGiven,
        };

        UnbalanceVector Reading(WeightPlane plane) =>
            UnbalanceVector.OfMass(Mass.FromGrams(random.NextDouble() * mostGrams), plane.Place.Radius, WheelAngle.FromDegrees(random.NextDouble() * 360));
    }
}
