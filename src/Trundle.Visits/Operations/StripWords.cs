using Trundle.Engine.Balance;
using Trundle.Measures;

namespace Trundle.Visits.Operations;

/// <summary>What long strips leave that masses at one point would not, and what to do about it.</summary>
internal static class StripWords
{
    /// <summary>Less is shown as nothing.</summary>
    private const double Seen = 0.05;

    /// <summary>What a plane keeps with the strips as they act, where that breaks the tolerance; else nothing.</summary>
    public static string Left(BalanceOutcome outcome, PlaneSide side)
    {
        var radius = outcome.Problem.Planes.At(side).Radius;
        var (left, atPoints) = (outcome.ResidualWithLengths.At(side), outcome.Residual.At(side));
        return outcome.LengthsBreakTolerance && (left + atPoints.Opposite).MassAt(radius).Grams >= Seen
            ? $" as masses at one point, {left.MassAt(radius).Text("g", 1)} at {left.Place} with the strips as long as they are"
            : "";
    }

    /// <summary>The caution of a choice that meets the tolerance by point masses only.</summary>
    public static string Caution(BalanceOutcome outcome)
    {
        var left = outcome.ResidualWithLengths;
        var planes = new[] { PlaneSide.Inner, PlaneSide.Outer }
            .Select(side => (Word: BalanceWords.Word(side), Left: left.At(side), outcome.Problem.Planes.At(side).Radius))
            .Where(p => p.Left.MassAt(p.Radius).Grams >= Seen)
            .Select(p => $"{p.Left.MassAt(p.Radius).Text("g", 1)} at {p.Left.Place} on the {p.Word} plane");
        var strips = outcome.Weights
            .Select(w => (Weight: w, Lacks: w.Mass - w.ActsAs(outcome.Problem.Planes.At(w.Plane).Radius)))
            .Where(s => s.Lacks.Grams >= Seen)
            .Select(s => $"{s.Lacks.Text("g", 1)} at {s.Weight.Place} on the {BalanceWords.Word(s.Weight.Plane)} plane");
        return $"Bent round the rim, the strips leave {string.Join(" and ", planes)} (heavy place): {BalanceWords.Part(outcome.PartsWithLengths.MaxBy(p => p.Ratio)!, "keeps")}. "
            + $"Split the strip into shorter pieces side by side in more than one row, where the rim has the room, or add what it lacks ({string.Join("; ", strips)}) beside its middle; then spin again. The check spin decides.";
    }
}
