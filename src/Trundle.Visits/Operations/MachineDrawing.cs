using System.Globalization;
using System.Numerics;
using Trundle.Engine.Balance;
using Trundle.Engine.Balance.Machine;
using Trundle.Engine.Reference;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Pictures;

namespace Trundle.Visits.Operations;

/// <summary>The drawings that belong to the answer of <c>balance machine</c>, each named by its test and plane: "traverse inner", "reduction left outer".</summary>
public static class MachineDrawing
{
    private const string FromTheMark = "angles grow clockwise as seen from outside";

    private static readonly PlaneSide[] Sides = [PlaneSide.Inner, PlaneSide.Outer];

    /// <summary>The drawings of a file; none where the file cannot be answered.</summary>
    /// <param name="body">The file.</param>
    /// <param name="unit">The reader's unit of mass: <c>g</c> or <c>oz</c>.</param>
    public static IReadOnlyList<Drawing> Of(FileNode body, string unit)
    {
        ArgumentNullException.ThrowIfNull(body);
        var problems = new List<Problem>();
        if (MachineFileReader.Read(body, problems) is not { } file || problems.Count > 0)
        {
            return [];
        }

        var outcome = MachineCheck.Of(file.Spins);
        return
        [
            .. outcome.Traverse.Select(t => Traverse(t.Key, t.Value, file.Spins, unit)),
            .. Sides.SelectMany(side => Reduction(side, file.Spins, unit)),
            .. outcome.Index.Select(i => Index(i.Key, i.Value, file.Spins, unit)),
            .. outcome.Repeat.Keys.Select(side => Repeat(side, file.Spins, unit)),
        ];
    }

    private static Drawing Traverse(PlaneSide side, TraverseResult result, MachineSpins spins, string unit) => new(
        $"traverse {BalanceWords.Word(side)}",
        TraverseBand.Draw($"traverse-{BalanceWords.Word(side)}", new TraverseView(
            $"Traverse test, {BalanceWords.Word(side)} plane", result.Ratios, Mass.FromGrams(result.Mean.GramMillimetres / spins.RadiusOf(side).Millimetres).Text(unit, unit == "oz" ? 3 : 2),
            Figures.Of("machine.traversePercent").Value)));

    /// <summary>What was put on beside what the machine found, and what a correction by it would leave of each.</summary>
    private static IEnumerable<Drawing> Reduction(PlaneSide side, MachineSpins spins, string unit)
    {
        var (word, radius) = (BalanceWords.Word(side), spins.RadiusOf(side));
        var tried = spins.Known.Select((spin, i) => (Number: i + 1, Added: spin.Added.At(side), Found: spin.Found.At(side))).Where(s => s.Added.Amount.Si > 0).ToList();
        if (tried.Count == 0)
        {
            yield break;
        }

        double In(UnbalanceVector v) => v.MassAt(radius).In(unit);
        yield return new Drawing($"reduction {word}", VectorPolar.Draw($"reduction-{word}", new VectorView($"Known masses, {word} plane", "zero", unit,
        [
            .. tried.Select(s => new NumberVector($"spin {Text(s.Number)}, on the wheel", In(s.Added), Turn(s.Added), VectorLook.First)),
            .. tried.Select(s => new NumberVector($"spin {Text(s.Number)}, found", In(s.Found), Turn(s.Found), VectorLook.Between) { Mark = Text(s.Number) }),
        ])
        { Sense = FromTheMark }));
        yield return new Drawing($"reduction left {word}", VectorPolar.Draw($"reduction-left-{word}", new VectorView($"What one correction would leave, {word} plane", "zero", "%",
        [
            .. tried.Select(s => (s.Number, s.Added, Left: ReductionRatio.Left(s.Added, s.Found)))
                .Select(s => new NumberVector($"spin {Text(s.Number)}", 100 * (s.Left.Amount / s.Added.Amount), Turn(s.Left), VectorLook.First) { Mark = Text(s.Number) }),
        ])
        { Within = spins.ReductionPercent is { } ratio && ratio < 100 ? 100 - ratio : null, Sense = FromTheMark }));
    }

    private static Drawing Index(PlaneSide side, IndexResult result, MachineSpins spins, string unit)
    {
        var radius = spins.RadiusOf(side).Millimetres;
        var view = new IndexView(
            $"Index balancing, {BalanceWords.Word(side)} plane", Grams(result.Fixture, radius), Grams(result.Wheel, radius), [.. spins.Index.Select(s => Grams(s.Found.At(side), radius))],
            result.FixtureStandardError?.GramMillimetres / radius, spins.FixtureLimit?.Grams, unit);
        return new Drawing($"index {BalanceWords.Word(side)}", IndexCircle.Draw($"index-{BalanceWords.Word(side)}", view));
    }

    private static Drawing Repeat(PlaneSide side, MachineSpins spins, string unit)
    {
        var radius = spins.RadiusOf(side).Millimetres;
        var view = new ScatterView($"Repeat spins, {BalanceWords.Word(side)} plane", [.. spins.Repeats.Select(r => Grams(r.At(side), radius))], spins.RepeatLimit?.Grams, unit);
        return new Drawing($"repeat {BalanceWords.Word(side)}", SpinScatter.Draw($"repeat-{BalanceWords.Word(side)}", view));
    }

    private static Complex Grams(UnbalanceVector vector, double radiusMillimetres) => Complex.FromPolarCoordinates(vector.Amount.GramMillimetres / radiusMillimetres, vector.Place.Radians);

    private static Angle Turn(UnbalanceVector vector) => Angle.FromDegrees(vector.Place.Degrees);

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
