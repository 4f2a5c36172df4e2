using Trundle.Engine.Vectors;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Machine;

/// <summary>What index balancing tells of one plane.</summary>
/// <param name="Fixture">The unbalance of the fixture (shaft, cone, clamping): it stays with the shaft.</param>
/// <param name="Wheel">The unbalance of the wheel itself, told from the shaft's zero with the wheel turned by nothing.</param>
/// <param name="Scatter">Standard deviation of a component of one spin about what the two explain; null with two spins, which cannot show it.</param>
/// <param name="FixtureStandardError">One standard error of a component of the fixture's unbalance; null likewise.</param>
/// <param name="WheelStandardError">The same of the wheel's.</param>
public sealed record IndexResult(
    UnbalanceVector Fixture, UnbalanceVector Wheel, Unbalance? Scatter, Unbalance? FixtureStandardError, Unbalance? WheelStandardError);

/// <summary>Index balancing: the wheel is turned on the shaft by known angles, and what stays is the fixture's.</summary>
public static class IndexTest
{
    /// <summary>
    /// Parts the fixture's unbalance from the wheel's, by least squares over any number of spins.
    /// </summary>
    /// <param name="turned">By how much the wheel is turned on the shaft, clockwise from outside, in each spin.</param>
    /// <param name="unbalance">The unbalance found in each spin, its angle from the shaft's zero.</param>
    /// <returns>The two, or null where no two of the turns differ by more than a degree: the wheel in one position tells nothing of the fixture.</returns>
    /// <source>H. P. Bloch, F. K. Geitner, Machinery Component Maintenance and Repair, p. 312 (index balancing); docs/theory/balancer.md</source>
    public static IndexResult? Part(IReadOnlyList<Angle> turned, IReadOnlyList<UnbalanceVector> unbalance)
    {
        ArgumentNullException.ThrowIfNull(turned);
        ArgumentNullException.ThrowIfNull(unbalance);
        if (turned.Count != unbalance.Count)
        {
            throw new ArgumentException("There is one unbalance for each turn.", nameof(unbalance));
        }

        var places = turned.Select(t => WheelAngle.FromDegrees(t.Degrees)).ToList();
        if (places.Count < 2 || places.All(p => Math.Abs((p - places[0]).Degrees) <= 1))
        {
            return null;
        }

        var parted = IndexParting.Of([.. unbalance.Select(u => u.GramMillimetres)], [.. places.Select(p => p.Radians)]);
        var error = Amount(parted.StandardError);
        return new IndexResult(new UnbalanceVector(parted.Fixed), new UnbalanceVector(parted.Turned), Amount(parted.Scatter), error, error);

        static Unbalance? Amount(double? gramMillimetres) => gramMillimetres is { } g ? Unbalance.FromGramMillimetres(g) : null;
    }
}
