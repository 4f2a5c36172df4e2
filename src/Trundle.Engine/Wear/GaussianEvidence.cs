namespace Trundle.Engine.Wear;

/// <summary>How likely a row of readings is under a bell in as many dimensions.</summary>
internal static class GaussianEvidence
{
    /// <summary>The logarithm of the density of <paramref name="values"/> about <paramref name="mean"/> with a covariance, which is overwritten (Cholesky).</summary>
    public static double LogDensity(ReadOnlySpan<double> values, ReadOnlySpan<double> mean, double[,] covariance)
    {
        var n = values.Length;
        var logRoot = 0.0;
        var squares = 0.0;
        Span<double> solved = n <= 64 ? stackalloc double[n] : new double[n];
        for (var i = 0; i < n; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var sum = covariance[i, j];
                for (var k = 0; k < j; k++)
                {
                    sum -= covariance[i, k] * covariance[j, k];
                }

                covariance[i, j] = i == j ? Math.Sqrt(sum) : sum / covariance[j, j];
            }

            var left = values[i] - mean[i];
            for (var k = 0; k < i; k++)
            {
                left -= covariance[i, k] * solved[k];
            }

            solved[i] = left / covariance[i, i];
            squares += solved[i] * solved[i];
            logRoot += Math.Log(covariance[i, i]);
        }

        return -(0.5 * squares) - logRoot - (0.5 * n * Math.Log(2 * Math.PI));
    }

    /// <summary>The logarithm of a sum of weights given by their logarithms.</summary>
    public static double LogSum(IReadOnlyCollection<double> logs)
    {
        var greatest = logs.Max();
        return double.IsNegativeInfinity(greatest) ? greatest : greatest + Math.Log(logs.Sum(l => Math.Exp(l - greatest)));
    }
}
