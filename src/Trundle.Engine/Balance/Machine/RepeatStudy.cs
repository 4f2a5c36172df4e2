using System.Numerics;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Machine;

/// <summary>How well spins of one assembly repeat, in one plane.</summary>
/// <param name="Mean">The mean.</param>
/// <param name="StandardDeviation">Standard deviation of a component of one spin; not less than what the display cannot show.</param>
/// <param name="Low">Lower end of its interval.</param>
/// <param name="High">Upper end.</param>
/// <param name="GreatestFromMean">The spin furthest from the mean, by how much.</param>
/// <param name="Freedom">Degrees of freedom: two components a spin, less the mean's two.</param>
public sealed record RepeatResult(
    UnbalanceVector Mean, Unbalance StandardDeviation, Unbalance Low, Unbalance High, Unbalance GreatestFromMean, int Freedom)
{
    /// <summary>False where no spin differs and nobody told what the display hides: the scatter is then below its step, by how much nobody can say.</summary>
    public bool IsKnown => StandardDeviation.Si > 0;

    /// <summary>No spin differs from another by what the display shows.</summary>
    public required bool NoneDiffers { get; init; }
}

/// <summary>A repeat-spin study.</summary>
public static class RepeatStudy
{
    /// <summary>
    /// The repeatability of one plane, with the interval that holds the true standard deviation with the confidence named, for scatter that is normal and the
    /// same in every direction.
    /// </summary>
    /// <param name="spins">At least three spins of the same assembly.</param>
    /// <param name="confidencePercent">Between 50 and 99.9.</param>
    /// <param name="hidden">One standard deviation of a component that rounding and hiding keep from the display; nothing where not known.</param>
    /// <source>ISO 5725-2 (from memory): repeatability standard deviation; its interval by the chi-squared distribution, docs/theory/balancer.md</source>
    public static RepeatResult Of(IReadOnlyList<UnbalanceVector> spins, double confidencePercent = 95, Unbalance hidden = default)
    {
        ArgumentNullException.ThrowIfNull(spins);
        if (spins.Count < 3 || confidencePercent is < 50 or > 99.9)
        {
            throw new ArgumentException("There are at least three spins, and a confidence of 50 to 99.9 %.", nameof(spins));
        }

        var mean = spins.Aggregate(Complex.Zero, (a, b) => a + b.GramMillimetres) / spins.Count;
        var squares = spins.Sum(s => Math.Pow((s.GramMillimetres - mean).Magnitude, 2));
        var pairs = spins.Count - 1;

        // Displays of whole steps tell no scatter that is finer than the step.
        var noneDiffers = squares <= 1e-18 * spins.Sum(s => Math.Pow(s.GramMillimetres.Magnitude, 2));
        squares = noneDiffers ? 0 : squares;
        var atLeast = Math.Max(squares, 2 * pairs * hidden.GramMillimetres * hidden.GramMillimetres);
        var tail = (1 - (confidencePercent / 100)) / 2;
        return new RepeatResult(
            new UnbalanceVector(mean),
            Unbalance.FromGramMillimetres(Math.Sqrt(atLeast / (2 * pairs))),
            Unbalance.FromGramMillimetres(Math.Sqrt(squares / ChiSquared(1 - tail, pairs))),
            Unbalance.FromGramMillimetres(Math.Sqrt(atLeast / ChiSquared(tail, pairs))),
            Unbalance.FromGramMillimetres(spins.Max(s => (s.GramMillimetres - mean).Magnitude)),
            2 * pairs)
        {
            NoneDiffers = noneDiffers,
        };
    }

    /// <summary>The value that a chi-squared variable of 2·pairs degrees of freedom stays below with a probability: its distribution has a closed form.</summary>
    internal static double ChiSquared(double probability, int pairs)
    {
        var (low, high) = (0.0, 2.0 * pairs);
        while (Below(high, pairs) < probability)
        {
            high *= 2;
        }

        for (var i = 0; i < 200 && high - low > 1e-14 * high; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Below(middle, pairs) < probability ? (middle, high) : (low, middle);
        }

        return (low + high) / 2;
    }

    /// <summary>The part at or below x. A small one is summed from its own side, so that it keeps its digits.</summary>
    private static double Below(double x, int pairs)
    {
        var half = x / 2;
        var term = Math.Exp(-half);
        var above = 0.0;
        for (var j = 0; j < pairs; j++)
        {
            above += term;
            term *= half / (j + 1);
        }

        if (above < 0.5)
        {
            return 1 - above;
        }

        var below = 0.0;
        for (var j = pairs; term > 1e-18 * below && j < pairs + 10_000; j++)
        {
            below += term;
            term *= half / (j + 1);
        }

        return below;
    }
}
