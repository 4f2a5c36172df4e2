using Trundle.Engine.Balance;
using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>Wheels as they stand in a bay, with places that can be counted, too large to try everything in a test.</summary>
internal static class LargeProblems
{
    private static readonly Source Given = Source.Entered("the test");

    /// <summary>Strips of 5 g segments of 19 mm behind spokes in both planes, up to twelve segments a strip, the valve kept free.</summary>
    public static BalanceProblem Strips(int spokes, double innerGrams, double innerDegrees, double outerGrams, double outerDegrees, string tolerance, int mostPieces) => new()
    {
        Inner = Plane(WeightKind.Adhesive, 186, 0, true),
        Outer = Plane(WeightKind.Adhesive, 178, 115, true),
        Readings = Readings(186, innerGrams, innerDegrees, 178, outerGrams, outerDegrees),
        Spokes = new SpokePlaces(spokes, WheelAngle.FromDegrees(11)),
        Stock = new WeightStock([], [new StockItem(Mass.FromGrams(5), Length.FromMillimetres(19), null)]),
        Forbidden = [new ForbiddenArc(PlaneSide.Outer, WheelAngle.FromDegrees(352), WheelAngle.FromDegrees(8))],
        Tolerance = Tolerance(tolerance),
        MaxPieces = mostPieces,
    };

    /// <summary>Clips on the inner flange on a grid of angles, strips behind the spokes outside.</summary>
    public static BalanceProblem ClipsAndStrips(int spokes, double step, double innerGrams, double innerDegrees, double outerGrams, double outerDegrees, string tolerance, int mostPieces) =>
        Strips(spokes, innerGrams, innerDegrees, outerGrams, outerDegrees, tolerance, mostPieces) with
        {
            Inner = Plane(WeightKind.Clip, 202.8, 0, false),
            Readings = Readings(202.8, innerGrams, innerDegrees, 178, outerGrams, outerDegrees),
            AngleStep = Angle.FromDegrees(step),
            Stock = new WeightStock(
                [.. Enumerable.Range(1, 12).Select(i => new StockItem(Mass.FromGrams(5 * i), null, null))],
                [new StockItem(Mass.FromGrams(5), Length.FromMillimetres(19), 12)]),
        };

    /// <summary>Few kinds of clip, each with its length, on both flanges, on a grid of angles or at any angle where the step is 0; past a valve and a sensor.</summary>
    public static BalanceProblem SizedClips(double step, double innerGrams, double innerDegrees, double outerGrams, double outerDegrees, string tolerance, int mostPieces) => new()
    {
        Inner = Plane(WeightKind.Clip, 202.8, 0, false),
        Outer = Plane(WeightKind.Clip, 202.8, 180, false),
        Readings = Readings(202.8, innerGrams, innerDegrees, 202.8, outerGrams, outerDegrees),
        AngleStep = step > 0 ? Angle.FromDegrees(step) : null,
        Stock = new WeightStock([.. new[] { 5, 10, 15, 20 }.Select(g => new StockItem(Mass.FromGrams(g), Length.FromMillimetres(12 + (1.2 * g)), g == 20 ? 4 : null))], []),
        Forbidden =
        [
            new ForbiddenArc(PlaneSide.Outer, WheelAngle.FromDegrees(352), WheelAngle.FromDegrees(8)),
            new ForbiddenArc(PlaneSide.Inner, WheelAngle.FromDegrees(55), WheelAngle.FromDegrees(80)),
        ],
        Tolerance = Tolerance(tolerance),
        MaxPieces = mostPieces,
    };

    private static WeightPlane Plane(WeightKind kind, double radius, double axial, bool spokes) =>
        new(kind, new PlanePlace(Length.FromMillimetres(radius), Length.FromMillimetres(axial)), spokes);

    private static UnbalancePair Readings(double innerRadius, double innerGrams, double innerDegrees, double outerRadius, double outerGrams, double outerDegrees) => new(
        UnbalanceVector.OfMass(Mass.FromGrams(innerGrams), Length.FromMillimetres(innerRadius), WheelAngle.FromDegrees(innerDegrees)),
        UnbalanceVector.OfMass(Mass.FromGrams(outerGrams), Length.FromMillimetres(outerRadius), WheelAngle.FromDegrees(outerDegrees)));

    private static BalanceTolerance Tolerance(string name)
    {
        var plane = PlaneTolerance.Of(Mass.FromGrams(5));
        var (s, c) = (Unbalance.FromGramMillimetres(1000), CoupleUnbalance.FromGramSquareMillimetres(110_000));
        return name switch
        {
            "a plane" => new BalanceTolerance { Inner = plane, Outer = plane, Source = Given },
            "static" => new BalanceTolerance { Static = s, Source = Given },
            "static and couple" => new BalanceTolerance { Static = s, Couple = c, Source = Given },
            "all" => new BalanceTolerance { Static = s, Couple = c, Inner = plane, Outer = plane, Source = Given },
            _ => throw new ArgumentException($"There is no tolerance '{name}' here.", nameof(name)),
        };
    }
}
