using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Instruments;

/// <summary>What a check says of an instrument.</summary>
public enum InstrumentVerdict
{
    /// <summary>Within its limits.</summary>
    Passed,

    /// <summary>Too close to a limit, or too little tried, to say.</summary>
    Undecided,

    /// <summary>Beyond a limit.</summary>
    Failed,

    /// <summary>There are figures, and nobody gave a limit to hold them against.</summary>
    NotJudged,
}

/// <summary>The words of the verdicts.</summary>
public static class InstrumentVerdictWords
{
    /// <summary>All verdicts.</summary>
    public static IReadOnlyList<InstrumentVerdict> All { get; } = [InstrumentVerdict.Passed, InstrumentVerdict.Undecided, InstrumentVerdict.Failed, InstrumentVerdict.NotJudged];

    /// <summary>As in answers and on pages.</summary>
    /// <source>own words</source>
    public static string Word(this InstrumentVerdict verdict) => verdict switch
    {
        InstrumentVerdict.Passed => "passed",
        InstrumentVerdict.Undecided => "undecided",
        InstrumentVerdict.Failed => "failed",
        InstrumentVerdict.NotJudged => "not-judged",
    };

    /// <summary>The same for a person.</summary>
    /// <source>own words</source>
    public static string ForPeople(this InstrumentVerdict verdict) => verdict.Word().Replace('-', ' ');

    /// <summary>The verdict of a word, or null.</summary>
    /// <source>own words</source>
    public static InstrumentVerdict? Of(string? word)
    {
        foreach (var verdict in All)
        {
            if (string.Equals(verdict.Word(), word?.Trim(), StringComparison.OrdinalIgnoreCase))
            {
                return verdict;
            }
        }

        return null;
    }
}

/// <summary>One point of a comparison.</summary>
/// <param name="Reference">What the reference says, above nothing.</param>
/// <param name="Shown">What the instrument shows, or was set to.</param>
public sealed record ComparedPoint<T>(T Reference, T Shown) where T : struct, IQuantity<T>;

/// <summary>How far an instrument may be off: a part of the reference, or an amount.</summary>
/// <param name="Percent">Per cent of the reference, or null.</param>
/// <param name="Amount">An amount, or null where <paramref name="Percent"/> is given.</param>
/// <param name="Source">Where it comes from.</param>
public sealed record PermittedDeviation<T>(double? Percent, T? Amount, Source Source) where T : struct, IQuantity<T>;

/// <summary>A point with its deviation.</summary>
/// <param name="Point">The point.</param>
/// <param name="Deviation">Shown less reference.</param>
/// <param name="Percent">The same in per cent of the reference.</param>
/// <param name="Permitted">How far it may be off there, or null where nobody said.</param>
/// <param name="Source">Where that comes from, or null.</param>
public sealed record JudgedPoint<T>(ComparedPoint<T> Point, T Deviation, double Percent, T? Permitted, Source? Source) where T : struct, IQuantity<T>
{
    /// <summary>Within what is permitted; null where nobody said.</summary>
    public bool? Within => Permitted is { } most ? Math.Abs(Deviation.Si) <= most.Si * (1 + 1e-9) : null;
}

/// <summary>Compares an instrument with a reference.</summary>
public static class PointCheck
{
    /// <summary>The deviation of each point and whether it is permitted.</summary>
    /// <param name="points">At least one; each reference above nothing.</param>
    /// <param name="permitted">How far a point with this reference may be off, or null where nobody gave it.</param>
    /// <source>ISO 6789 (from memory): the deviation is (set − reference) / reference; the same for any instrument that shows one quantity</source>
    public static IReadOnlyList<JudgedPoint<T>> Judge<T>(IReadOnlyList<ComparedPoint<T>> points, Func<T, PermittedDeviation<T>?> permitted) where T : struct, IQuantity<T>
    {
        ArgumentNullException.ThrowIfNull(points);
        ArgumentNullException.ThrowIfNull(permitted);
        return
        [
            .. points.Select(p =>
            {
                var limit = permitted(p.Reference);
                return new JudgedPoint<T>(
                    p,
                    T.FromSi(p.Shown.Si - p.Reference.Si),
                    100 * (p.Shown.Si - p.Reference.Si) / p.Reference.Si,
                    limit?.Amount ?? (limit?.Percent is { } percent ? T.FromSi(p.Reference.Si * percent / 100) : null),
                    limit?.Source);
            }),
        ];
    }

    /// <summary>Failed where any point is beyond its limit; not judged where one has none; else passed.</summary>
    /// <source>own rule</source>
    public static InstrumentVerdict Verdict<T>(IReadOnlyList<JudgedPoint<T>> points) where T : struct, IQuantity<T>
    {
        ArgumentNullException.ThrowIfNull(points);
        return points.Any(p => p.Within == false) ? InstrumentVerdict.Failed
            : points.Count == 0 || points.Any(p => p.Within is null) ? InstrumentVerdict.NotJudged
            : InstrumentVerdict.Passed;
    }

    /// <summary>How far a hand torque wrench may be off where its maker says nothing.</summary>
    /// <param name="reference">The torque of the reference.</param>
    /// <source>ISO 6789:2003, Type II Class A, as restated in a hand-tool maker's calibration manual (second-hand)</source>
    public static PermittedDeviation<Torque> OfTorqueWrench(Torque reference)
    {
        var small = Figures.Of("instruments.wrench-small-torque").As<Torque>();
        var figure = reference.Si <= small.Si * (1 + 1e-9) ? Figures.Of("instruments.wrench-small") : Figures.Of("instruments.wrench-above");
        return new PermittedDeviation<Torque>(figure.Value, null, figure.Source);
    }
}
