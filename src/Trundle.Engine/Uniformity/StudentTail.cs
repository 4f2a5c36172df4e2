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

    /// <summary>The t that |t| passes with a chance: 12.706 for 0.05 with one degree of freedom. By halving, to the last digits.</summary>
    public static double Quantile(double chance, int degreesOfFreedom)
    {
        var (low, high) = (0.0, 1.0);
        while (Of(high, degreesOfFreedom) > chance)
        {
            high *= 2;
        }

        for (var i = 0; i < 100 && low < high; i++)
        {
            var middle = (low + high) / 2;
            (low, high) = Of(middle, degreesOfFreedom) > chance ? (middle, high) : (low, middle);
        }

        return high;
    }
}
