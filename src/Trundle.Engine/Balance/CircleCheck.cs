using System.Numerics;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Balance;

/// <summary>One trial run beside the fit through all of them.</summary>
/// <param name="Run">The run's number as listed, from 1; the initial run is 1.</param>
/// <param name="Point">The measuring point, from 1.</param>
/// <param name="Measured">The amplitude measured, in the meter's unit.</param>
/// <param name="ByFit">The amplitude that the fit gives for this run.</param>
public sealed record CircleMiss(int Run, int Point, double Measured, double ByFit)
{
    /// <summary>How far the run's circle passes by the fit; above nothing where more was measured.</summary>
    public double Miss => Measured - ByFit;
}

/// <summary>What is likeliest wrong where the circles of trial runs do not meet in one point.</summary>
public enum CircleFault
{
    /// <summary>They meet as well as the limit asks.</summary>
    None,

    /// <summary>The trial mass changed the vibration by little more than the misfit: it was too small to tell.</summary>
    TrialTooSmall,

    /// <summary>One run disagrees with all the others: without it they meet.</summary>
    OneRun,

    /// <summary>The trial runs agree among themselves but not with the initial run.</summary>
    InitialRun,

    /// <summary>They do not meet, and these runs cannot tell why.</summary>
    Unknown,
}

/// <summary>How well the circles of trial runs without phase meet, how sure the correction is, and what to repeat where they do not.</summary>
/// <param name="Misses">Every trial run at every point beside the fit.</param>
/// <param name="Fault">What is likeliest wrong.</param>
/// <param name="Run">The run to repeat, where one stands out.</param>
/// <param name="Other">A second answer that fits nearly as well, or null.</param>
/// <param name="Error">How sure the correction is; null where there is none, or the places tell nothing across their direction.</param>
/// <param name="LeftAtMost">The vibration that may remain at each point by the interval of the correction, in the meter's unit; null where that has no bound.</param>
/// <param name="Span">How much of the circle the trial masses span, seen from the axle.</param>
/// <param name="OffLine">The narrowest angle between two lines through the axle that holds all of them, on whichever side.</param>
public sealed record CircleCheck(
    IReadOnlyList<CircleMiss> Misses, CircleFault Fault, int? Run, PlaneMass? Other, CircleError? Error, IReadOnlyList<double?> LeftAtMost, Angle Span, Angle OffLine)
{
    /// <summary>How much of the circle trial masses must span before they tell the direction of a correction.</summary>
    /// <source>own choice: docs/theory/balance.md (without phase)</source>
    public static Figure LeastSpan => Figures.Of("balance.leastTrialSpan");

    /// <summary>How far off one line through the axle they must stand.</summary>
    /// <source>own choice: docs/theory/balance.md (without phase)</source>
    public static Figure LeastOffLine => Figures.Of("balance.leastTrialOffLine");

    /// <summary>The trial run that the others disagree with, or null: judged however little all miss by together.</summary>
    public RunOutlier? Outlier { get; init; }

    /// <summary>The trial masses stand too close together to tell the direction of a correction.</summary>
    public bool IsCrowded => Span.Degrees < LeastSpan.Value - 1e-9;

    /// <summary>The trial masses stand so nearly in line that a correction and its mirror image look alike.</summary>
    public bool IsInLine => !IsCrowded && OffLine.Degrees < LeastOffLine.Value - 1e-9;

    /// <summary>Judges one plane's runs without phase.</summary>
    /// <param name="initial">Amplitude of the initial run at each point.</param>
    /// <param name="trials">The mass on in each trial run, in grams as a phasor.</param>
    /// <param name="amplitudes">Amplitude by trial run and point.</param>
    /// <param name="influence">The fit's influence for each gram at each point.</param>
    /// <param name="correction">The correction in grams, as a phasor.</param>
    /// <param name="reading">One standard error of an amplitude at each point by how finely it was read.</param>
    /// <returns>The judgement; doubts are told, never hidden in a smaller figure.</returns>
    internal static CircleCheck Of(double[] initial, Complex[] trials, double[][] amplitudes, Complex[] influence, Complex correction, double[] reading)
    {
        var misses = new List<CircleMiss>();
        var squares = 0.0;
        for (var r = 0; r < trials.Length; r++)
        {
            for (var i = 0; i < initial.Length; i++)
            {
                if (initial[i] > 0)
                {
                    var miss = new CircleMiss(r + 2, i + 1, amplitudes[r][i], (initial[i] + (influence[i] * trials[r])).Magnitude);
                    misses.Add(miss);
                    squares += miss.Miss * miss.Miss;
                }
            }
        }

        var size = Math.Sqrt(initial.Average(v => v * v));
        var rms = misses.Count > 0 ? Math.Sqrt(squares / misses.Count) : 0;
        var limit = Figures.Of("balance.circlesMisfit").Value / 100;
        var meets = size <= 0 || rms <= limit * size;
        var (fault, run) = meets ? (CircleFault.None, null) : Search(initial, trials, amplitudes, misses, rms, limit * size);

        // The point that is moved most by a gram carries the answer.
        var p = influence.Length == 0 ? -1 : Enumerable.Range(0, influence.Length).MaxBy(i => influence[i].Magnitude);
        var error = p < 0 || influence[p] == Complex.Zero ? null
            : CircleError.Of(initial[p], trials, influence[p], correction.Magnitude, squares, (trials.Length - 2) * initial.Count(v => v > 0), reading[p]);
        return new CircleCheck(
            misses, fault, run,
            initial.Length == 1 && initial[0] > 0 ? SecondAnswer(initial[0], trials, [.. amplitudes.Select(a => a[0])], influence[0], squares) : null,
            error,
            [.. initial.Select((v, i) => influence[i] == Complex.Zero ? v
                : error is { } e ? (v + (influence[i] * correction)).Magnitude + (e.Within.Grams * influence[i].Magnitude) : (double?)null)],
            SpanOf(trials, 360), SpanOf(trials, 180))
        {
            Outlier = RunOutlier.Of(initial, trials, amplitudes, reading),
        };
    }

    private static (CircleFault, int?) Search(double[] initial, Complex[] trials, double[][] amplitudes, List<CircleMiss> misses, double rms, double allowed)
    {
        // Three trial runs leave one number over for two unknowns: any of the four could be the wrong one. Four leave enough to try each.
        if (trials.Length >= 4)
        {
            var without = Enumerable.Range(0, trials.Length)
                .Select(dropped => (Run: dropped + 2, Rms: Misfit(initial, Without(trials, dropped), Without(amplitudes, dropped))))
                .OrderBy(r => r.Rms).ToArray();
            if (without[0].Rms <= allowed && without[0].Rms < without[1].Rms / 2)
            {
                return (CircleFault.OneRun, without[0].Run);
            }

            if (FreeInitial(initial, trials, amplitudes) <= allowed / 2)
            {
                return (CircleFault.InitialRun, 1);
            }
        }

        var change = misses.Max(m => Math.Abs(m.Measured - initial[m.Point - 1]));
        return (change < 3 * rms ? CircleFault.TrialTooSmall : CircleFault.Unknown, null);
    }

    private static double Misfit(double[] initial, Complex[] trials, double[][] amplitudes)
    {
        var squares = 0.0;
        for (var p = 0; p < initial.Length; p++)
        {
            squares += initial[p] > 0 ? AmplitudeFit.Of(initial[p], trials, [.. amplitudes.Select(a => a[p])]).SumOfSquares : 0;
        }

        return Math.Sqrt(squares / (trials.Length * initial.Count(v => v > 0)));
    }

    /// <summary>The misfit where the initial run's amplitude may be what the trial runs ask for: a search along one number for each point.</summary>
    private static double FreeInitial(double[] initial, Complex[] trials, double[][] amplitudes)
    {
        var squares = 0.0;
        for (var p = 0; p < initial.Length; p++)
        {
            if (initial[p] > 0)
            {
                double[] measured = [.. amplitudes.Select(a => a[p])];
                var most = 2 * Math.Max(initial[p], measured.Max());
                squares += Least(v => AmplitudeFit.Of(v, trials, measured).SumOfSquares, 0.01 * most, most);
            }
        }

        return Math.Sqrt(squares / (trials.Length * initial.Count(v => v > 0)));
    }

    /// <summary>The least value of a function of one number: a scan, then the golden section about the best place.</summary>
    private static double Least(Func<double, double> of, double from, double to)
    {
        const int steps = 24;
        var width = (to - from) / steps;
        var at = Enumerable.Range(0, steps + 1).MinBy(i => of(from + (i * width)));
        var (low, high) = (from + (Math.Max(at - 1, 0) * width), from + (Math.Min(at + 1, steps) * width));
        var golden = (Math.Sqrt(5) - 1) / 2;
        for (var i = 0; i < 30; i++)
        {
            var (a, b) = (high - (golden * (high - low)), low + (golden * (high - low)));
            (low, high) = of(a) < of(b) ? (low, b) : (a, high);
        }

        return of((low + high) / 2);
    }

    /// <summary>Another place where the circles meet nearly as well: the misfit has more than one valley where the trial places lie nearly in line.</summary>
    private static PlaneMass? SecondAnswer(double initial, Complex[] trials, double[] amplitudes, Complex best, double squares)
    {
        // Within the usual scatter of a meter the two cannot be told apart.
        var scatter = Figures.Of("balance.amplitudeScatter").Value / 100 * initial;
        var allowed = Math.Max(4 * squares, trials.Length * scatter * scatter);
        var others = AmplitudeFit.Valleys(initial, trials, amplitudes)
            .Where(v => v.SumOfSquares <= allowed && (v.PerGram - best).Magnitude > 0.2 * best.Magnitude && v.PerGram != Complex.Zero);
        var other = others.OrderBy(v => v.SumOfSquares).Select(v => (Complex?)v.PerGram).FirstOrDefault();
        return other is { } a ? PlaneMass.Of(1, -initial / a) : null;
    }

    /// <summary>A turn less the widest gap between the masses that were on; half a turn where both sides of the axle count as one.</summary>
    private static Angle SpanOf(Complex[] trials, double turn)
    {
        var most = trials.Max(t => t.Magnitude);
        double[] places = [.. trials.Where(t => t.Magnitude > 1e-6 * most).Select(t => WheelAngle.FromRadians(t.Phase).Degrees % turn).Order()];
        var widest = places.Select((place, i) => i + 1 < places.Length ? places[i + 1] - place : places[0] + turn - place).DefaultIfEmpty(turn).Max();
        return Angle.FromDegrees(turn - widest);
    }

    private static T[] Without<T>(T[] all, int dropped) => [.. all.Where((_, i) => i != dropped)];
}
