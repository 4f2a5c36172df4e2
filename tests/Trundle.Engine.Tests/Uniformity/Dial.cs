using Trundle.Engine.Uniformity;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Uniformity;

/// <summary>Dial readings of a known shape.</summary>
internal static class Dial
{
    /// <summary>Readings in mm, evenly around from the valve, clockwise.</summary>
    public static IReadOnlyList<DialReading> Even(params double[] millimetres) =>
        [.. millimetres.Select((v, i) => new DialReading(WheelAngle.FromDegrees(i * 360.0 / millimetres.Length), Length.FromMillimetres(v)))];

    /// <summary>Readings at places of one's own.</summary>
    public static IReadOnlyList<DialReading> At(IEnumerable<double> degrees, Func<double, double> millimetres) =>
        [.. degrees.Select(d => new DialReading(WheelAngle.FromDegrees(d), Length.FromMillimetres(millimetres(d))))];

    /// <summary>So many places evenly around.</summary>
    public static IEnumerable<double> Around(int count) => Enumerable.Range(0, count).Select(i => i * 360.0 / count);

    public static double Wave(int order, double degrees, double phaseDegrees) => Math.Cos(double.DegreesToRadians((order * degrees) - phaseDegrees));

    public static RunoutOutcome.Found Found(this RunoutOutcome outcome) => outcome.ShouldBeOfType<RunoutOutcome.Found>();

    public static double Apart(double a, double b) => Math.Abs((WheelAngle.FromDegrees(a) - WheelAngle.FromDegrees(b)).Degrees);
}
