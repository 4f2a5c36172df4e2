using System.Numerics;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Machine;

/// <summary>What a traverse test in one plane shows.</summary>
/// <param name="Ratios">Each reading over the mean of all.</param>
/// <param name="Mean">The mean reading.</param>
/// <param name="LeastRatio">The least of the ratios.</param>
/// <param name="GreatestRatio">The greatest.</param>
/// <param name="Passed">Every reading lies within the limit of the mean.</param>
/// <param name="Tested">The minimum achievable residual unbalance that the test mass stands for: a tenth of it.</param>
/// <param name="WouldPass">The least such value at which readings as scattered as these would just pass.</param>
/// <param name="Residual">The unbalance left on the rotor that the readings themselves tell: what goes once around the places.</param>
/// <param name="Scatter">What is left of the readings after that, one standard deviation.</param>
public sealed record TraverseResult(
    IReadOnlyList<double> Ratios, Unbalance Mean, double LeastRatio, double GreatestRatio, bool Passed, Unbalance Tested, Unbalance WouldPass, Unbalance Residual, Unbalance Scatter);

/// <summary>
/// The traverse test for the minimum achievable residual unbalance: a mass ten times as great is put at twelve places, and the amounts shown may not differ
/// from their mean by more than it and a fifth.
/// </summary>
public static class TraverseTest
{
    /// <summary>How many places, evenly around.</summary>
    public const int Places = 12;

    /// <summary>
    /// The test mass of each plane: ten times the minimum achievable residual unbalance, which is half of what the eccentricity makes of the rotor.
    /// </summary>
    /// <param name="rotor">Mass of the rotor.</param>
    /// <param name="eccentricity">The minimum achievable residual eccentricity.</param>
    /// <param name="radius">Where the test mass sits.</param>
    /// <source>H. P. Bloch, F. K. Geitner, Machinery Component Maintenance and Repair, pp. 296-298 (ISO 2953, now ISO 21940-21)</source>
    public static Mass TestMass(Mass rotor, Length eccentricity, Length radius) =>
        Mass.FromGrams(10 * rotor.Grams * eccentricity.Millimetres / 2 / radius.Millimetres);

    /// <summary>
    /// Judges the amounts that one plane showed.
    /// </summary>
    /// <param name="shown">The amounts, in order of the twelve places.</param>
    /// <param name="tested">The minimum achievable residual unbalance: a tenth of the test mass's unbalance.</param>
    /// <source>H. P. Bloch, F. K. Geitner, Machinery Component Maintenance and Repair, pp. 296-298 (ISO 2953, now ISO 21940-21): within 12 % of the mean</source>
    public static TraverseResult Judge(IReadOnlyList<Unbalance> shown, Unbalance tested)
    {
        ArgumentNullException.ThrowIfNull(shown);
        if (shown.Count != Places)
        {
            throw new ArgumentException("There are twelve readings.", nameof(shown));
        }

        var limit = Figures.Of("machine.traversePercent").Value / 100;
        var mean = Unbalance.FromSi(shown.Average(u => u.Si));
        var ratios = shown.Select(u => mean.Si > 0 ? u / mean : 0).ToList();
        var off = ratios.Max(r => Math.Abs(r - 1));

        // A small residual on the rotor makes the amounts go up and down once around; what is left of them then is the machine's own scatter.
        var once = Complex.Zero;
        for (var k = 0; k < Places; k++)
        {
            once += shown[k].Si * Complex.FromPolarCoordinates(2.0 / Places, -Math.Tau * k / Places);
        }

        var squares = shown.Select((u, k) => u.Si - mean.Si - (once * Complex.FromPolarCoordinates(1, Math.Tau * k / Places)).Real).Sum(d => d * d);
        return new TraverseResult(
            ratios, mean, ratios.Min(), ratios.Max(), mean.Si > 0 && off <= limit, tested, tested * (off / limit),
            Unbalance.FromSi(once.Magnitude), Unbalance.FromSi(Math.Sqrt(squares / (Places - 3))));
    }
}
