using Trundle.Engine.Uniformity;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>
/// W. Gander, G. H. Golub, R. Strebel, Least-squares fitting of circles and ellipses, BIT 34 (1994) 558-578 (its example's answers from memory,
/// recomputed). It tells that the circle fit of these tests is sound; with it, that a dial's first harmonic is the eccentricity of a true circle.
/// </summary>
public class GanderGolubStrebelTests
{
    [Fact]
    public void The_six_points()
    {
        (double, double)[] points = [(1, 7), (2, 6), (5, 8), (7, 7), (9, 5), (3, 7)];
        var fit = CircleFit.Geometric(points);
        fit.X.ShouldBe(4.7398, 5e-5);
        fit.Y.ShouldBe(2.9835, 5e-5);
        fit.R.ShouldBe(4.7142, 5e-5);
        fit.Squares.ShouldBe(1.2276, 5e-5);
        var start = CircleFit.Algebraic(points);
        start.X.ShouldBe(4.742331, 5e-7);
        start.Y.ShouldBe(3.835123, 5e-7);
        start.R.ShouldBe(4.108762, 5e-7);
    }

    [Fact]
    public void A_true_circle_off_its_axis_reads_as_its_eccentricity_to_a_thousandth()
    {
        // A circle of 316 mm, 0.5 mm off towards 75°: what a dial reads is the distance of its surface from the axis, less 316 mm.
        const double radius = 316;
        const double off = 0.5;
        var readings = Enumerable.Range(0, 24).Select(i => i * 15.0).Select(d =>
        {
            var a = double.DegreesToRadians(d - 75);
            var surface = (off * Math.Cos(a)) + Math.Sqrt((radius * radius) - (off * off * Math.Sin(a) * Math.Sin(a)));
            return new DialReading(WheelAngle.FromDegrees(d), Length.FromMillimetres(surface - radius));
        }).ToList();
        var found = RunoutAnalysis.Of(readings, null, null).ShouldBeOfType<RunoutOutcome.Found>();

        // The difference from a limaçon is e²/(2R), all of it in the mean and the second order.
        found.Harmonics[1].Amplitude.Millimetres.ShouldBe(off * off / (4 * radius), 1e-7);
        (found.PeakToPeakAfterFirst.Millimetres).ShouldBe(0.000396, 5e-7);
        var circle = CircleFit.Geometric([.. readings.Select(r =>
        {
            var (a, d) = (r.Place.Radians, radius + r.Value.Millimetres);
            return (d * Math.Cos(a), d * Math.Sin(a));
        })]);
        found.First.Amount.Millimetres.ShouldBe(Math.Sqrt((circle.X * circle.X) + (circle.Y * circle.Y)), 1e-6);
        found.First.HighPoint.Radians.ShouldBe(Math.Atan2(circle.Y, circle.X), 1e-6);
    }
}
