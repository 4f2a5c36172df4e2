using Trundle.Engine.Balance;
using Trundle.Engine.Tests.Balance.Oracle;
using Trundle.Measures;

namespace Trundle.Bench;

/// <summary>The wheels whose choice of weights is timed, on this machine and in the browser.</summary>
internal static class ChoiceWheels
{
    public const double MostGrams = 90;

    /// <summary>Places that can be counted, so that CP-SAT and trying every set are rivals.</summary>
    public static (string Name, BalanceProblem Problem, bool Exhaustive)[] Countable { get; } =
    [
        ("ten spokes, strips both sides, a plane", Limited(LargeProblems.Strips(10, 34, 22, 29, 163, "a plane", 3)), true),
        ("ten spokes, strips both sides, static and couple", Limited(LargeProblems.Strips(10, 34, 22, 29, 163, "static and couple", 3)), true),
        ("ten spokes, clips on 5° inside, static and couple", Limited(LargeProblems.ClipsAndStrips(10, 5, 38, 47, 26, 305, "static and couple", 3)), false),
        ("five spokes, strips both sides, a plane", Limited(LargeProblems.Strips(5, 31, 60, 27, 205, "a plane", 4)), true),
    ];

    /// <summary>Any angle on one side or both: no whole-number program holds that. It is what most wheels in the bay are.</summary>
    public static (string Name, BalanceProblem Problem)[] AnyAngle { get; } =
    [
        ("ten spokes, clips at any angle inside, static and couple", Inside(10)),
        ("clips with lengths inside, a strip past the valve outside, any angle", Inside(10) is var wheel ? wheel with
        {
            Outer = wheel.Outer with { BehindSpokes = false },
            Stock = wheel.Stock with { Clip = [.. Enumerable.Range(1, 12).Select(i => new StockItem(Mass.FromGrams(5 * i), Length.FromMillimetres(12 + (3 * i)), null))] },
        } : wheel),
        ("three touching clips of 20 g and 35 mm a side past the valve, any angle", Inside(10) is var few ? few with
        {
            Outer = few.Outer with { Kind = WeightKind.Clip, BehindSpokes = false },
            Readings = new UnbalancePair(
                UnbalanceVector.OfMass(Mass.FromGrams(58), few.Inner.Place.Radius, WheelAngle.FromDegrees(47)),
                UnbalanceVector.OfMass(Mass.FromGrams(57), few.Outer.Place.Radius, WheelAngle.FromDegrees(5))),
            Stock = new WeightStock([new StockItem(Mass.FromGrams(20), Length.FromMillimetres(35), null)], []),
            Tolerance = BalanceTolerance.WhereNoneGiven,
            MaxPieces = null,
        } : few),
    ];

    /// <summary>All of them.</summary>
    public static IEnumerable<(string Name, BalanceProblem Problem)> All => [.. Countable.Select(w => (w.Name, w.Problem)), .. AnyAngle];

    private static BalanceProblem Inside(int spokes) => LargeProblems.ClipsAndStrips(spokes, 5, 38, 47, 26, 305, "static and couple", 3) with { AngleStep = null };

    private static BalanceProblem Limited(BalanceProblem problem) => problem with { MaxMass = Mass.FromGrams(MostGrams) };
}
