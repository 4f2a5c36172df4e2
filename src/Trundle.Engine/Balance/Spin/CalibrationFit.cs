using System.Numerics;
using Trundle.Engine.Balance.Machine;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Spin;

/// <summary>One spin of a calibration: what was on the wheel beside itself, and what the transducers said.</summary>
/// <param name="Added">The known unbalance that was added in the two planes; nothing in a plain spin.</param>
/// <param name="Speed">The speed.</param>
/// <param name="Points">Amplitude and phase of each transducer, phases in the calibration's sense.</param>
public sealed record CalibrationSpin(UnbalancePair Added, RotationalSpeed Speed, IReadOnlyList<VibrationReading> Points)
{
    /// <summary>The standard error of a component of each reading, where a recording tells it, the index mark's left out; else empty.</summary>
    public IReadOnlyList<double> StandardErrors { get; init; } = [];

    /// <summary>One standard error of the index mark's angle, which turns both readings alike.</summary>
    public Angle MarkStandardError { get; init; }
}

/// <summary>What one spin's transducers said beyond what the fitted coefficients explain.</summary>
/// <param name="Spin">The spin, counted from 0 in the order given.</param>
/// <param name="Left">What is left at each transducer.</param>
/// <param name="AsUnbalance">What that would be taken for in the two planes: how far a reading may be off.</param>
public sealed record CalibrationResidual(int Spin, IReadOnlyList<VibrationReading> Left, UnbalancePair AsUnbalance);

/// <summary>What the spins leave unexplained, held against the readings' own errors.</summary>
/// <param name="ChiSquared">The squares left over those of the errors, over all spins and transducers.</param>
/// <param name="Limit">What chi-squared stays below with the confidence of the figures, where the errors explain all.</param>
/// <param name="DegreesOfFreedom">Two for each transducer of each spare spin.</param>
public sealed record CalibrationMisfit(double ChiSquared, double Limit, int DegreesOfFreedom)
{
    /// <summary>True where the spins do not fit each other.</summary>
    public bool IsBeyondErrors => ChiSquared > Limit;
}

/// <summary>The coefficients of one speed, and how well they fit.</summary>
/// <param name="Coefficients">The coefficients, at the mean speed of these spins.</param>
/// <param name="Residuals">One a spin.</param>
/// <param name="Spare">Spins beyond the three that the coefficients take: with none, the residuals are nothing whatever the spins were like.</param>
/// <param name="ConditionNumber">How well the planes are told apart.</param>
public sealed record SpeedFit(CalibratedSpeed Coefficients, IReadOnlyList<CalibrationResidual> Residuals, int Spare, double ConditionNumber)
{
    /// <summary>How the spins fit each other; null without a spare one.</summary>
    public CalibrationMisfit? Misfit { get; init; }

    /// <summary>True where the planes are so nearly dependent that the masses found may fight each other.</summary>
    public bool IsNearlyDependent => ConditionNumber > Figures.Of("spin.mostConditionNumber").Value;

    /// <summary>True where no second spin checks a known mass of the inner plane: entered wrongly, it is met all the same.</summary>
    public bool InnerUnchecked { get; init; }

    /// <summary>The same of the outer plane.</summary>
    public bool OuterUnchecked { get; init; }
}

/// <summary>Calibrating a machine by spins with known masses.</summary>
public static class CalibrationFit
{
    /// <summary>Spins in groups of one speed, slowest first; each spin by its number.</summary>
    /// <source>Own choice: docs/theory/spin.md, calibration</source>
    public static IReadOnlyList<IReadOnlyList<int>> BySpeed(IReadOnlyList<RotationalSpeed> speeds)
    {
        ArgumentNullException.ThrowIfNull(speeds);
        var near = 1 + (Figures.Of("spin.sameSpeedPercent").Value / 100);
        var groups = new List<List<int>>();
        foreach (var spin in Enumerable.Range(0, speeds.Count).OrderBy(i => speeds[i].Si))
        {
            if (groups.Count == 0 || speeds[spin].Si > speeds[groups[^1][0]].Si * near)
            {
                groups.Add([]);
            }

            groups[^1].Add(spin);
        }

        return groups;
    }

    /// <summary>
    /// Influence coefficients of one speed by least squares: what each g·mm in each plane does at each transducer, beside what the wheel gives by itself.
    /// </summary>
    /// <param name="spins">Spins of one speed, numbered as <paramref name="numbers"/> says.</param>
    /// <param name="numbers">The number of each spin, for the residuals.</param>
    /// <param name="sense">The senses that the phases are told in.</param>
    /// <returns>The fit, or null where the masses do not tell the wheel and its two planes apart: at least three spins, among them different masses in each plane.</returns>
    /// <source>T. P. Goodman, A Least-Squares Method for Computing Balance Corrections, 1964; docs/theory/spin.md, calibration</source>
    public static SpeedFit? Of(IReadOnlyList<CalibrationSpin> spins, IReadOnlyList<int> numbers, SpinSense sense)
    {
        ArgumentNullException.ThrowIfNull(spins);
        ArgumentNullException.ThrowIfNull(numbers);
        if (spins.Count < 3)
        {
            return null;
        }

        // In units of the greatest mass the three columns are of one size, so that their dependence is told by the condition number alone.
        var unit = spins.Max(s => Math.Max(s.Added.Inner.Amount.GramMillimetres, s.Added.Outer.Amount.GramMillimetres));
        Complex[][] design = [[.. spins.Select(_ => Complex.One)], [.. spins.Select(s => s.Added.Inner.GramMillimetres / unit)], [.. spins.Select(s => s.Added.Outer.GramMillimetres / unit)]];
        var states = unit > 0 ? SingularValues.Of(design) : null;
        if (states is null || states.ConditionNumber > 1e6)
        {
            return null;
        }

        var mean = RotationalSpeed.FromRadiansPerSecond(spins.Average(s => s.Speed.RadiansPerSecond));
        var points = spins[0].Points.Count;
        var columns = new[] { new Complex[points], new Complex[points] };
        var left = spins.Select(_ => new Complex[points]).ToArray();
        for (var p = 0; p < points; p++)
        {
            // Within one group the speeds differ a little: each reading is brought to the mean speed by the square.
            var readings = spins.Select(s => InWheelSense(s.Points[p], sense) * Math.Pow(mean / s.Speed, 2)).ToArray();
            var x = states.LeastSquares(readings);
            (columns[0][p], columns[1][p]) = (x[1] / unit, x[2] / unit);
            for (var s = 0; s < spins.Count; s++)
            {
                left[s][p] = readings[s] - x[0] - (columns[0][p] * spins[s].Added.Inner.GramMillimetres) - (columns[1][p] * spins[s].Added.Outer.GramMillimetres);
            }
        }

        var influence = SingularValues.Of(columns);
        var spare = spins.Count - 3;

        // What each plane's coefficient takes of an error in each spin: a row of the pseudo-inverse.
        double[][] taken = [.. new[] { 1, 2 }.Select(k => spins.Select((_, s) => Math.Pow(states.LeastSquares([.. spins.Select((_, i) => i == s ? Complex.One : Complex.Zero)])[k].Magnitude / unit, 2)).ToArray())];
        var misfit = spare > 0 ? 1.0 / (2 * spare) * left.Aggregate(default(PairErrors), (sum, l) => sum + PairErrors.Common(l[0], l[1])) : (PairErrors?)null;
        var (inner, outer) = (ErrorsOf(0), ErrorsOf(1));
        return new SpeedFit(
            new CalibratedSpeed(mean, Told(0, inner), Told(1, outer))
            {
                Misfit = misfit is { } m ? [Math.Sqrt(m.First), Math.Sqrt(m.Second)] : [],
                MisfitCorrelation = misfit?.Correlation ?? Complex.Zero,
                InnerCorrelation = inner?.Correlation ?? Complex.Zero,
                OuterCorrelation = outer?.Correlation ?? Complex.Zero,
            },
            [.. left.Select((l, s) => Residual(l, numbers[s]))],
            spare,
            influence.ConditionNumber)
        {
            Misfit = spare > 0 ? Misfit(spins, left, columns, spare, sense) : null,
            InnerUnchecked = Unchecked(spins, states, design, u => u.Inner),
            OuterUnchecked = Unchecked(spins, states, design, u => u.Outer),
        };

        List<UnbalanceInfluence> Told(int plane, PairErrors? errors) => [.. columns[plane].Select((c, p) =>
            new UnbalanceInfluence(c.Magnitude, VibrationReading.InOneTurn(sense.WithWheelAngle * c.Phase))
            {
                StandardErrorPerGramMillimetre = errors is { } e ? Math.Sqrt(p == 0 ? e.First : e.Second) : null,
            })];

        // By the readings' own errors with their marks', or by what the spins show, whichever does more to the planes; null where neither tells it.
        PairErrors? ErrorsOf(int plane)
        {
            var own = spins.All(s => s.StandardErrors.Count == points)
                ? spins.Select((s, i) => taken[plane][i] * OfReadings(s, Math.Pow(mean / s.Speed, 2), sense)).Aggregate(default(PairErrors), (a, b) => a + b)
                : (PairErrors?)null;
            var shown = misfit is { } m ? taken[plane].Sum() * m : (PairErrors?)null;
            return own is { } o && shown is { } s ? InPlanes(o) >= InPlanes(s) ? o : s : own ?? shown;
        }

        double InPlanes(PairErrors errors)
        {
            if (double.IsInfinity(influence.ConditionNumber))
            {
                return errors.First + errors.Second;
            }

            var (one, two) = (influence.LeastSquares([1, 0]), influence.LeastSquares([0, 1]));
            return errors.Through(one[0], two[0]) + errors.Through(one[1], two[1]);
        }

        CalibrationResidual Residual(Complex[] of, int number)
        {
            var taken = double.IsInfinity(influence.ConditionNumber) ? [Complex.Zero, Complex.Zero] : influence.LeastSquares(of);
            return new CalibrationResidual(
                number,
                [.. of.Select(c => new VibrationReading(c.Magnitude, VibrationReading.InOneTurn(sense.WithWheelAngle * c.Phase)))],
                new UnbalancePair(new UnbalanceVector(taken[0]), new UnbalanceVector(taken[1])));
        }
    }

    /// <summary>
    /// What is left of each spin is chi-squared over the covariance of its readings, with two degrees of freedom for each transducer of a spare spin: the mean of their own
    /// errors and of their marks', and what placing a mass is granted. That moves both transducers as unbalance does, so that it hides nothing that does not.
    /// </summary>
    private static CalibrationMisfit Misfit(IReadOnlyList<CalibrationSpin> spins, Complex[][] left, Complex[][] columns, int spare, SpinSense sense)
    {
        var granted = Figures.Of("spin.placingErrorPercent").Value / 100;
        double Greatest(int p) => spins.Max(s => s.Points[p].Amplitude);
        double Mass(Func<UnbalancePair, UnbalanceVector> of) => spins.Max(s => of(s.Added).Amount.GramMillimetres);

        // A typed reading tells no error of its own: it is granted at each transducer alone what else is granted a mass.
        var typed = PairErrors.Independent(granted * Greatest(0), granted * Greatest(1));
        var told = spins.All(s => s.StandardErrors.Count == 2);
        var own = 1.0 / spins.Count * spins.Select(s => OfReadings(s, 1, sense)).Aggregate(default(PairErrors), (a, b) => a + b);
        var (inner, outer) = (granted * Mass(u => u.Inner), granted * Mass(u => u.Outer));
        var errors = told
            ? own + PairErrors.Common(inner * columns[0][0], inner * columns[0][1]) + PairErrors.Common(outer * columns[1][0], outer * columns[1][1])
            : own + typed;
        var chi = left.Sum(l => errors.ChiSquared(l[0], l[1]) ?? (own + typed).ChiSquared(l[0], l[1]) ?? 0);
        var pairs = spare * 2;
        return new CalibrationMisfit(chi, RepeatStudy.ChiSquared(Figures.Of("spin.misfitConfidencePercent").Value / 100, pairs), 2 * pairs);
    }

    /// <summary>The covariance of a spin's readings: their own errors, none where they were typed, and the mark's, which turns both alike.</summary>
    private static PairErrors OfReadings(CalibrationSpin spin, double scale, SpinSense sense)
    {
        var turn = spin.MarkStandardError.Radians * scale;
        return PairErrors.Independent(scale * spin.StandardErrors.ElementAtOrDefault(0), scale * spin.StandardErrors.ElementAtOrDefault(1))
            + PairErrors.Common(turn * InWheelSense(spin.Points[0], sense), turn * InWheelSense(spin.Points[1], sense));
    }

    /// <summary>
    /// True where some known mass of a plane stands in all the spins that tell of it, so that whatever was entered for it is met: taking a column of ones over the spins that
    /// carry that mass, hardly any of it is left by the fit.
    /// </summary>
    private static bool Unchecked(IReadOnlyList<CalibrationSpin> spins, SingularValues states, Complex[][] columns, Func<UnbalancePair, UnbalanceVector> plane)
    {
        var least = Figures.Of("spin.leastCheckedPercent").Value / 100;
        return spins.GroupBy(s => plane(s.Added).GramMillimetres).Where(mass => mass.Key != Complex.Zero).Any(mass =>
        {
            Complex[] carries = [.. spins.Select(s => plane(s.Added).GramMillimetres == mass.Key ? Complex.One : Complex.Zero)];
            var x = states.LeastSquares(carries);
            var left = carries.Select((c, s) => c - (x[0] * columns[0][s]) - (x[1] * columns[1][s]) - (x[2] * columns[2][s])).Sum(c => c.Magnitude * c.Magnitude);
            return left < least * mass.Count();
        });
    }

    private static Complex InWheelSense(VibrationReading reading, SpinSense sense) =>
        Complex.FromPolarCoordinates(reading.Amplitude, sense.WithWheelAngle * (reading.Phase?.Radians ?? 0));
}
