using System.Numerics;
using Trundle.Engine.Reference;

namespace Trundle.Engine.Balance;

/// <summary>What trial-mass runs tell.</summary>
public sealed record TrialSolution
{
    /// <summary>Influence by plane and point; null where no phase was measured.</summary>
    public required IReadOnlyList<IReadOnlyList<InfluenceCoefficient>>? Influence { get; init; }

    /// <summary>Totals, to be put on with every trial off.</summary>
    public required IReadOnlyList<PlaneMass> Corrections { get; init; }

    /// <summary>What to add to the rotor as it stood in the last run.</summary>
    public required IReadOnlyList<PlaneMass> AddToLastRun { get; init; }

    /// <summary>The vibration to expect with the corrections on; without phase where none was measured.</summary>
    public required IReadOnlyList<VibrationReading> ResidualVibration { get; init; }

    /// <summary>With phase, the root mean square of the vibration left; without, that of the amplitudes' misfits.</summary>
    public required double MisfitRootMeanSquare { get; init; }

    /// <summary>The same in per cent of the initial run's root mean square; 0 where the initial run was still.</summary>
    public required double MisfitPercent { get; init; }

    /// <summary>Greatest over least singular value of the influence; 1 for one plane; infinite where planes do the same or a trial did nothing.</summary>
    public required double ConditionNumber { get; init; }

    /// <summary>The condition number is above its limit.</summary>
    public required bool NearlyDependent { get; init; }

    /// <summary>Planes, by number, whose trial changed nothing.</summary>
    public required IReadOnlyList<int> WithoutEffect { get; init; }

    /// <summary>Without phase, how well the circles meet; null with phase.</summary>
    public CircleCheck? Circles { get; init; }
}

/// <summary>Balancing with trial masses by influence coefficients.</summary>
public static class TrialBalance
{
    /// <summary>
    /// Solves runs whose readings all have a phase: any number of planes and at least as many points, by least squares where there are more.
    /// </summary>
    /// <param name="runs">The initial run first, then trial runs; every plane has a trial mass above nothing.</param>
    /// <param name="trialKeptOn">True where each trial stays on for all later runs and a run lists only what it added.</param>
    /// <source>T. P. Goodman, A Least-Squares Method for Computing Balance Corrections, 1964; T. D. Feese, P. E. Grazier, Balance This!, 2004, p. 197</source>
    public static TrialSolution WithPhase(IReadOnlyList<TrialRun> runs, bool trialKeptOn)
    {
        ArgumentNullException.ThrowIfNull(runs);
        var influence = InfluenceMatrix.Measured(runs, trialKeptOn);
        var correction = influence.Correct(runs[0].Vibration);
        return new TrialSolution
        {
            Influence = influence.Coefficients,
            Corrections = correction.Masses,
            AddToLastRun = ToAdd(runs, [.. correction.Masses.Select(m => m.Grams)], trialKeptOn),
            ResidualVibration = correction.Residual,
            MisfitRootMeanSquare = correction.RootMeanSquare,
            MisfitPercent = Percent(correction.RootMeanSquare, runs[0]),
            ConditionNumber = correction.ConditionNumber,
            NearlyDependent = correction.IsNearlyDependent,
            WithoutEffect = influence.WithoutEffect,
        };
    }

    /// <summary>
    /// Solves one plane from amplitudes alone: an initial run and at least three trial runs at different angles, at any number of points.
    /// </summary>
    /// <param name="runs">The initial run first, then trial runs on plane 1.</param>
    /// <param name="trialKeptOn">True where each trial stays on for all later runs.</param>
    /// <source>T. D. Feese, P. E. Grazier, Balance This!, 2004, p. 196 (four runs, three circles); least squares on the amplitudes: docs/theory/balance.md</source>
    public static TrialSolution WithoutPhase(IReadOnlyList<TrialRun> runs, bool trialKeptOn)
    {
        ArgumentNullException.ThrowIfNull(runs);
        Complex[] trials = [.. TrialStates.Of(runs, 1, trialKeptOn).Select(s => s[0])];
        var points = runs[0].Vibration.Count;
        var initial = new double[points];
        var influence = new Complex[points];
        var squares = 0.0;
        for (var p = 0; p < points; p++)
        {
            initial[p] = runs[0].Vibration[p].Amplitude;
            if (initial[p] == 0)
            {
                // A point that was still asks for no correction; how it answers to a mass has no phase to be told against.
                continue;
            }

            var (perGram, sum) = AmplitudeFit.Of(initial[p], trials, [.. runs.Skip(1).Select(r => r.Vibration[p].Amplitude)]);
            influence[p] = perGram;
            squares += sum;
        }

        // What changes the vibration by less than a reading can tell makes a correction of any size at all: it counts as no effect.
        var told = Figures.Of("balance.leastTrialEffectPercent").Value / 100;
        var most = trials.Max(t => t.Magnitude);
        var noEffect = influence.Zip(initial).All(p => p.First.Magnitude * most <= told * p.Second);
        if (noEffect)
        {
            Array.Clear(influence);
        }

        var grams = noEffect ? Complex.Zero : SingularValues.Of([influence]).LeastSquares([.. initial.Select(v => new Complex(-v, 0))])[0];
        var rms = Math.Sqrt(squares / (points * trials.Length));
        return new TrialSolution
        {
            Influence = null,
            Corrections = [PlaneMass.Of(1, grams)],
            AddToLastRun = ToAdd(runs, [grams], trialKeptOn),
            ResidualVibration = [.. influence.Select((a, p) => new VibrationReading((initial[p] + (a * grams)).Magnitude, null))],
            MisfitRootMeanSquare = rms,
            MisfitPercent = Percent(rms, runs[0]),
            ConditionNumber = noEffect ? double.PositiveInfinity : 1,
            NearlyDependent = false,
            WithoutEffect = noEffect && initial.Any(v => v > 0) ? [1] : [],
            Circles = CircleCheck.Of(initial, trials, [.. runs.Skip(1).Select(r => r.Vibration.Select(v => v.Amplitude).ToArray())], influence, grams, [.. Enumerable.Range(0, points).Select(p => runs.Max(r => r.Vibration[p].ReadTo))]),
        };
    }

    private static List<PlaneMass> ToAdd(IReadOnlyList<TrialRun> runs, Complex[] totals, bool trialKeptOn)
    {
        var last = TrialStates.Of(runs, totals.Length, trialKeptOn)[^1];
        return [.. totals.Select((total, p) => PlaneMass.Of(p + 1, total - last[p]))];
    }

    private static double Percent(double rms, TrialRun initial)
    {
        var whole = Math.Sqrt(initial.Vibration.Average(v => v.Amplitude * v.Amplitude));
        return whole > 0 ? 100 * rms / whole : 0;
    }
}
