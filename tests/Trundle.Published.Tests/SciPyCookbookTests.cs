namespace Trundle.Published.Tests;

/// <summary>SciPy Cookbook, Least squares circle (its answers from memory, recomputed): the second fit that the tests' circle is held against.</summary>
public class SciPyCookbookTests
{
    [Fact]
    public void The_six_points_of_the_circle()
    {
        (double, double)[] points = [(9, 34), (35, 10), (-13, 6), (10, -14), (23, 27), (0, -10)];
        var fit = CircleFit.Geometric(points);
        fit.X.ShouldBe(10.50009, 5e-6);
        fit.Y.ShouldBe(9.65995, 5e-6);
        fit.R.ShouldBe(23.33353, 5e-6);
        fit.Squares.ShouldBe(7.71185, 5e-6);
        var start = CircleFit.Algebraic(points);
        start.X.ShouldBe(10.55231, 5e-6);
        start.Y.ShouldBe(9.70590, 5e-6);
    }
}
