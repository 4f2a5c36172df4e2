namespace Trundle.Engine.Uniformity;

/// <summary>The two-sided tail of Student's t for whole degrees of freedom.</summary>
internal static class StudentTail
{
    /// <summary>The chance of a greater |t|, by the finite series in the angle whose tangent is t/√ν.</summary>
    public static double Of(double t, int degreesOfFreedom)
    {
        if (double.IsInfinity(t))
        {
            return 0;
        }

        var angle = Math.Atan(Math.Abs(t) / Math.Sqrt(degreesOfFreedom));
        var cosine2 = Math.Cos(angle) * Math.Cos(angle);
        var odd = degreesOfFreedom % 2 == 1;
        var term = odd ? Math.Cos(angle) : 1.0;
        var sum = degreesOfFreedom == 1 ? 0 : term;
        for (var k = odd ? 3 : 2; k <= degreesOfFreedom - 2; k += 2)
        {
            term *= cosine2 * (k - 1) / k;
            sum += term;
        }

        var within = odd ? 2 / Math.PI * (angle + (Math.Sin(angle) * sum)) : Math.Sin(angle) * sum;
        return Math.Clamp(1 - within, 0, 1);
    }
}
