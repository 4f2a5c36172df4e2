using System.Numerics;

namespace Trundle.Engine.Balance;

/// <summary>
/// Balancing without phase: finds the influence coefficient a that makes |v0 + a·t| meet the amplitudes of the trial runs best, by least
/// squares on the amplitudes with the initial run taken as exact. Only the phase of a against the initial vibration can be known, and it is
/// all that the correction needs.
/// </summary>
internal static class AmplitudeFit
{
    /// <summary>The coefficient and the sum of squared misfits.</summary>
    /// <param name="initial">Amplitude of the initial run, above nothing.</param>
    /// <param name="trialGrams">The mass on in each trial run, as a phasor.</param>
    /// <param name="amplitudes">The amplitude of each trial run.</param>
    public static (Complex PerGram, double SumOfSquares) Of(double initial, Complex[] trialGrams, double[] amplitudes) =>
        Valleys(initial, trialGrams, amplitudes).MinBy(v => v.SumOfSquares);

    /// <summary>Where each descent came to rest, one a start; many end in the same valley.</summary>
    public static IReadOnlyList<(Complex PerGram, double SumOfSquares)> Valleys(double initial, Complex[] trialGrams, double[] amplitudes)
    {
        // The misfit has more than one valley, so the descent starts from every side, at the size that the squares of the amplitudes suggest.
        var mass = trialGrams.Average(t => t.Magnitude);
        var square = amplitudes.Average(a => a * a) - (initial * initial);
        var size = Math.Sqrt(Math.Max(square, 1e-4 * initial * initial)) / mass;
        var valleys = new List<(Complex PerGram, double SumOfSquares)>();
        for (var direction = 0; direction < 24; direction++)
        {
            foreach (var factor in (ReadOnlySpan<double>)[0.5, 1, 2])
            {
                valleys.Add(Descend(Complex.FromPolarCoordinates(size * factor, Math.Tau * direction / 24), initial, trialGrams, amplitudes));
            }
        }

        return valleys;
    }

    /// <summary>Levenberg's damped least squares in two unknowns.</summary>
    private static (Complex PerGram, double SumOfSquares) Descend(Complex a, double initial, Complex[] t, double[] amplitudes)
    {
        var damping = 1e-3;
        var sum = Misfit(a, initial, t, amplitudes);
        for (var step = 0; step < 200; step++)
        {
            double xx = 0, xy = 0, yy = 0, gx = 0, gy = 0;
            for (var i = 0; i < t.Length; i++)
            {
                var v = initial + (a * t[i]);
                var size = v.Magnitude;
                var direction = size > 0 ? Complex.Conjugate(v) / size * t[i] : t[i];
                var (dx, dy, miss) = (direction.Real, -direction.Imaginary, size - amplitudes[i]);
                xx += dx * dx;
                xy += dx * dy;
                yy += dy * dy;
                gx += dx * miss;
                gy += dy * miss;
            }

            var (hx, hy) = (xx * (1 + damping), yy * (1 + damping));
            var determinant = (hx * hy) - (xy * xy);
            if (determinant <= 0)
            {
                break;
            }

            var next = a - new Complex(((hy * gx) - (xy * gy)) / determinant, ((hx * gy) - (xy * gx)) / determinant);
            var nextSum = Misfit(next, initial, t, amplitudes);
            if (nextSum > sum)
            {
                damping *= 10;
                if (damping > 1e12)
                {
                    break;
                }

                continue;
            }

            var settled = (next - a).Magnitude <= 1e-15 * (a.Magnitude + next.Magnitude);
            (a, sum) = (next, nextSum);
            damping = Math.Max(damping / 10, 1e-12);
            if (settled)
            {
                break;
            }
        }

        return (a, sum);
    }

    private static double Misfit(Complex a, double initial, Complex[] t, double[] amplitudes)
    {
        var sum = 0.0;
        for (var i = 0; i < t.Length; i++)
        {
            var miss = (initial + (a * t[i])).Magnitude - amplitudes[i];
            sum += miss * miss;
        }

        return sum;
    }
}
