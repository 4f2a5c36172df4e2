using System.Numerics;
using Trundle.Engine.Reference;

namespace Trundle.Engine.Balance;

/// <summary>The masses that make the vibration least, what is left, and how well the planes can be told apart.</summary>
/// <param name="Masses">One a plane: totals, to be put on with every trial off.</param>
/// <param name="Residual">The vibration left at every point.</param>
/// <param name="RootMeanSquare">Root of the mean square of the vibration left.</param>
/// <param name="ConditionNumber">Greatest over least singular value of the influence coefficients; infinite where two planes do the same.</param>
public sealed record LeastSquaresCorrection(
    IReadOnlyList<PlaneMass> Masses, IReadOnlyList<VibrationReading> Residual, double RootMeanSquare, double ConditionNumber)
{
    /// <summary>True where the planes are so nearly dependent that large masses may fight each other.</summary>
    public bool IsNearlyDependent => ConditionNumber > Figures.Of("balance.mostConditionNumber").Value;
}

/// <summary>The influence coefficients of all planes at all points.</summary>
public sealed class InfluenceMatrix
{
    private readonly Complex[][] _columns;

    private InfluenceMatrix(Complex[][] columns) => _columns = columns;

    /// <summary>By plane (number less one) and point.</summary>
    public IReadOnlyList<IReadOnlyList<InfluenceCoefficient>> Coefficients =>
        [.. _columns.Select(c => (IReadOnlyList<InfluenceCoefficient>)[.. c.Select(InfluenceCoefficient.Of)])];

    /// <summary>Planes, by number, whose masses changed nothing at any point.</summary>
    public IReadOnlyList<int> WithoutEffect =>
        [.. Enumerable.Range(1, _columns.Length).Where(plane => _columns[plane - 1].All(c => c == Complex.Zero))];

    /// <summary>Coefficients that are known already.</summary>
    /// <param name="byPlaneAndPoint">One list a plane, each with one coefficient a point; at least as many points as planes.</param>
    /// <source>T. P. Goodman, A Least-Squares Method for Computing Balance Corrections, 1964</source>
    public static InfluenceMatrix Known(IReadOnlyList<IReadOnlyList<InfluenceCoefficient>> byPlaneAndPoint)
    {
        ArgumentNullException.ThrowIfNull(byPlaneAndPoint);
        return Checked([.. byPlaneAndPoint.Select(plane => plane.Select(c => c.PerGram).ToArray())]);
    }

    /// <summary>
    /// Coefficients from runs with phase: the change from the initial run, divided by the masses that were on.
    /// With more trial runs than planes, by least squares.
    /// </summary>
    /// <param name="runs">The initial run first; every plane has a trial.</param>
    /// <param name="trialKeptOn">True where each trial stays on for all later runs.</param>
    /// <source>T. D. Feese, P. E. Grazier, Balance This!, 2004, p. 197; ISO 21940-13 (from memory)</source>
    internal static InfluenceMatrix Measured(IReadOnlyList<TrialRun> runs, bool trialKeptOn)
    {
        var planes = runs.Max(r => r.Trial?.Plane ?? 0);
        var states = TrialStates.Of(runs, planes, trialKeptOn);
        var masses = SingularValues.Of([.. Enumerable.Range(0, planes).Select(p => states.Select(s => s[p]).ToArray())]);
        var columns = Enumerable.Range(0, planes).Select(_ => new Complex[runs[0].Vibration.Count]).ToArray();
        for (var point = 0; point < runs[0].Vibration.Count; point++)
        {
            var initial = runs[0].Vibration[point].Phasor;
            var byPlane = masses.LeastSquares([.. runs.Skip(1).Select(r => r.Vibration[point].Phasor - initial)]);
            for (var p = 0; p < planes; p++)
            {
                columns[p][point] = byPlane[p];
            }
        }

        return Checked(columns);
    }

    /// <summary>
    /// The masses that make the sum of squares of the vibration least.
    /// Where planes do the same at every point, the smallest such masses.
    /// </summary>
    /// <param name="vibration">One reading a point, with every trial off.</param>
    /// <param name="weights">How much each point's square counts, or null for all alike.</param>
    public LeastSquaresCorrection Correct(IReadOnlyList<VibrationReading> vibration, IReadOnlyList<double>? weights = null)
    {
        ArgumentNullException.ThrowIfNull(vibration);
        var measured = vibration.Select(v => v.Phasor).ToArray();
        var roots = weights?.Select(Math.Sqrt).ToArray();
        var plain = SingularValues.Of(_columns);
        var values = roots is null ? plain : SingularValues.Of([.. _columns.Select(c => c.Select((a, i) => a * roots[i]).ToArray())]);
        var grams = values.LeastSquares([.. measured.Select((v, i) => -v * (roots?[i] ?? 1))]);
        var left = Left(measured, grams);
        return new LeastSquaresCorrection(
            [.. grams.Select((g, i) => PlaneMass.Of(i + 1, g))],
            [.. left.Select(VibrationReading.Of)],
            Math.Sqrt(left.Average(v => v.Magnitude * v.Magnitude)),
            plain.ConditionNumber);
    }

    /// <summary>The vibration to expect at every point with masses on, from the vibration without them.</summary>
    public IReadOnlyList<VibrationReading> Expected(IReadOnlyList<VibrationReading> vibration, IReadOnlyList<PlaneMass> masses)
    {
        ArgumentNullException.ThrowIfNull(vibration);
        ArgumentNullException.ThrowIfNull(masses);
        var grams = new Complex[_columns.Length];
        foreach (var mass in masses)
        {
            grams[mass.Plane - 1] += mass.Grams;
        }

        return [.. Left([.. vibration.Select(v => v.Phasor)], grams).Select(VibrationReading.Of)];
    }

    private Complex[] Left(Complex[] measured, Complex[] grams)
    {
        var left = (Complex[])measured.Clone();
        for (var p = 0; p < _columns.Length; p++)
        {
            for (var i = 0; i < left.Length; i++)
            {
                left[i] += _columns[p][i] * grams[p];
            }
        }

        return left;
    }

    private static InfluenceMatrix Checked(Complex[][] columns) =>
        columns.Length > 0 && columns.All(c => c.Length == columns[0].Length) && columns[0].Length >= columns.Length
            ? new InfluenceMatrix(columns)
            : throw new ArgumentException("There is at least one plane, and as many points as planes, the same for each plane.", nameof(columns));
}

/// <summary>Which masses were on the rotor in each run.</summary>
internal static class TrialStates
{
    /// <summary>For each run after the initial one, the grams on each plane.</summary>
    public static Complex[][] Of(IReadOnlyList<TrialRun> runs, int planes, bool keptOn)
    {
        var states = new Complex[runs.Count - 1][];
        for (var r = 1; r < runs.Count; r++)
        {
            var state = keptOn && r > 1 ? (Complex[])states[r - 2].Clone() : new Complex[planes];
            var trial = runs[r].Trial!;
            state[trial.Plane - 1] += trial.Grams;
            states[r - 1] = state;
        }

        return states;
    }
}
