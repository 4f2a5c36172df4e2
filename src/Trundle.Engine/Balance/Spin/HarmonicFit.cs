using System.Numerics;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Spin;

/// <summary>
/// What least squares finds in a signal: offset and harmonics of the turning. The signal is offset + Σ Aₕ·cos(h·ψ + φₕ), with ψ the angle turned since
/// the index mark, so that a phase here LEADS.
/// </summary>
/// <remarks>Signs and senses are in docs/theory/spin.md. Amplitudes are in the recording's own unit.</remarks>
public readonly record struct HarmonicFit
{
    /// <summary>The first harmonic, in the recording's unit.</summary>
    public double Amplitude { get; private init; }

    /// <summary>Phase of the first harmonic, leading, 0 ≤ phase &lt; 360°.</summary>
    public Angle Phase { get; private init; }

    /// <summary>One standard error of the amplitude, from the noise that the fit leaves, taken as white.</summary>
    public double AmplitudeStandardError { get; private init; }

    /// <summary>One standard error of the phase; half a turn where there is no amplitude to have one.</summary>
    public Angle PhaseStandardError { get; private init; }

    /// <summary>The mean that the harmonics ride on.</summary>
    public double Offset { get; private init; }

    /// <summary>Standard deviation of what the fit leaves of each sample.</summary>
    public double Noise { get; private init; }

    internal Complex First { get; private init; }

    /// <summary>
    /// Fits offset and harmonics at a known, steady speed. The turns need not be whole. One pass over the samples, nothing allocated.
    /// </summary>
    /// <param name="samples">Evenly spaced samples; at least two more than twice the harmonics.</param>
    /// <param name="sampleRate">Samples in a second.</param>
    /// <param name="speed">Speed of turning.</param>
    /// <param name="angleAtFirstSample">The angle turned since the index mark at the first sample.</param>
    /// <param name="phasors">As many harmonics are fitted as fit in here, 1 to 10; each is left as amplitude and leading phase. The highest stays below half the sample rate.</param>
    /// <returns>The fit, or null where the harmonics cannot be told apart: too small a part of a turn, or too close to half the sample rate.</returns>
    /// <source>IEEE Std 1057, three-parameter sine fit (from memory); harmonics and closed sums: docs/theory/spin.md, least squares</source>
    public static HarmonicFit? AtSteadySpeed(
        ReadOnlySpan<double> samples, Frequency sampleRate, RotationalSpeed speed, Angle angleAtFirstSample, Span<Complex> phasors)
    {
        var step = speed.RadiansPerSecond / sampleRate.Hertz;
        return Steady(samples, AngleTrack.Steady(angleAtFirstSample.Radians, step), phasors);
    }

    /// <summary>
    /// Fits offset and harmonics where the speed changes evenly over the record. Sample by sample, so slower than at a steady speed.
    /// </summary>
    /// <param name="samples">Evenly spaced samples; at least two more than twice the harmonics.</param>
    /// <param name="sampleRate">Samples in a second.</param>
    /// <param name="speedAtMiddle">Speed of turning in the middle of the record.</param>
    /// <param name="changePercent">By how much the speed changes from the first sample to the last, in per cent of that in the middle.</param>
    /// <param name="angleAtMiddle">The angle turned since the index mark in the middle of the record, half-way between the first sample and the last.</param>
    /// <param name="phasors">As at a steady speed.</param>
    /// <returns>The fit, or null where the harmonics cannot be told apart.</returns>
    /// <source>IEEE Std 1057, three-parameter sine fit (from memory), along an angle that is a square law of time: docs/theory/spin.md</source>
    public static HarmonicFit? AtChangingSpeed(
        ReadOnlySpan<double> samples, Frequency sampleRate, RotationalSpeed speedAtMiddle, double changePercent, Angle angleAtMiddle, Span<Complex> phasors)
    {
        var step = speedAtMiddle.RadiansPerSecond / sampleRate.Hertz;
        return Along(samples, new AngleTrack((samples.Length - 1) / 2.0, angleAtMiddle.Radians, step, step * changePercent / 100 / (samples.Length - 1)), phasors);
    }

    /// <summary>The fit along an angle track: by the quick way where the speed is steady, else sample by sample.</summary>
    internal static HarmonicFit? Along(ReadOnlySpan<double> samples, AngleTrack track, Span<Complex> phasors)
    {
        if (track.RadiansPerSampleSquared == 0)
        {
            return Steady(samples, track, phasors);
        }

        Check(samples, phasors);
        Span<Complex> sums = stackalloc Complex[phasors.Length];
        Span<Complex> angles = stackalloc Complex[2 * phasors.Length];
        HarmonicSums.Changing(samples, samples[0], track, sums, angles, out var sum, out var squares);
        return Solve(samples.Length, samples[0], sum, squares, sums, angles, phasors, 0);
    }

    private static HarmonicFit? Steady(ReadOnlySpan<double> samples, AngleTrack track, Span<Complex> phasors)
    {
        Check(samples, phasors);
        var step = track.RadiansPerSample;
        if (Math.Abs(step) * phasors.Length > 0.95 * Math.PI || step == 0)
        {
            return null;
        }

        // Told about the middle of the record, Σ cos(mωt) has a closed form and Σ sin(mωt) is nothing: no sums of angles are needed.
        var middle = (samples.Length - 1) / 2.0;
        Span<Complex> sums = stackalloc Complex[phasors.Length];
        Span<Complex> angles = stackalloc Complex[2 * phasors.Length];
        HarmonicSums.Steady(samples, samples[0], step, -step * middle, sums, out var sum, out var squares);
        for (var m = 1; m <= angles.Length; m++)
        {
            angles[m - 1] = Math.Sin(samples.Length * m * step / 2) / Math.Sin(m * step / 2);
        }

        return Solve(samples.Length, samples[0], sum, squares, sums, angles, phasors, track.RadiansAt(middle));
    }

    private static void Check(ReadOnlySpan<double> samples, Span<Complex> phasors)
    {
        if (phasors.Length is < 1 or > HarmonicSums.MostHarmonics || samples.Length < (2 * phasors.Length) + 2)
        {
            throw new ArgumentException("There are 1 to 10 harmonics, and at least two samples more than twice as many.", nameof(samples));
        }
    }

    /// <summary>Solves the normal equations in the order offset, cos 1, sin 1, cos 2, sin 2, …</summary>
    private static HarmonicFit? Solve(
        int count, double shift, double sum, double squares, ReadOnlySpan<Complex> sums, ReadOnlySpan<Complex> angles, Span<Complex> phasors, double angleTaken)
    {
        var harmonics = phasors.Length;
        var size = (2 * harmonics) + 1;
        Span<double> factor = stackalloc double[size * size];
        Span<double> right = stackalloc double[size];
        factor[0] = count;
        right[0] = sum;
        for (var g = 1; g <= harmonics; g++)
        {
            var (gc, gs) = ((2 * g) - 1, 2 * g);
            factor[gc * size] = angles[g - 1].Real;
            factor[gs * size] = angles[g - 1].Imaginary;
            right[gc] = sums[g - 1].Real;
            right[gs] = sums[g - 1].Imaginary;
            for (var h = 1; h <= g; h++)
            {
                var (plus, minus) = (angles[g + h - 1], g == h ? new Complex(count, 0) : angles[g - h - 1]);
                var (hc, hs) = ((2 * h) - 1, 2 * h);
                factor[(gc * size) + hc] = (minus.Real + plus.Real) / 2;
                factor[(gs * size) + hs] = (minus.Real - plus.Real) / 2;
                factor[(gs * size) + hc] = (plus.Imaginary + minus.Imaginary) / 2;
                if (hs < gc)
                {
                    factor[(gc * size) + hs] = (plus.Imaginary - minus.Imaginary) / 2;
                }
            }
        }

        Span<double> solution = stackalloc double[size];
        if (!SquareRoot.Of(factor, size))
        {
            return null;
        }

        right.CopyTo(solution);
        SquareRoot.Solve(factor, size, solution);
        var explained = 0.0;
        for (var i = 0; i < size; i++)
        {
            explained += solution[i] * right[i];
        }

        var noise = Math.Sqrt(Math.Max(0, squares - explained) / (count - size));
        for (var h = 1; h <= harmonics; h++)
        {
            // a·cos + b·sin is the real part of (a − ib)·e^{iψ}.
            phasors[h - 1] = new Complex(solution[(2 * h) - 1], -solution[2 * h]) * Complex.FromPolarCoordinates(1, -h * angleTaken);
        }

        Span<double> column = stackalloc double[size];
        column[1] = 1;
        SquareRoot.Solve(factor, size, column);
        var (aa, ab) = (column[1], column[2]);
        column.Clear();
        column[2] = 1;
        SquareRoot.Solve(factor, size, column);
        var bb = column[2];
        var (a, b) = (solution[1], solution[2]);
        var amplitude = Math.Sqrt((a * a) + (b * b));
        var (ca, cb) = amplitude > 0 ? (a / amplitude, b / amplitude) : (1, 0);
        var along = noise * Math.Sqrt(Math.Max(0, (ca * ca * aa) + (2 * ca * cb * ab) + (cb * cb * bb)));
        var across = noise * Math.Sqrt(Math.Max(0, (cb * cb * aa) - (2 * ca * cb * ab) + (ca * ca * bb)));
        return new HarmonicFit
        {
            First = phasors[0],
            Amplitude = amplitude,
            Phase = VibrationReading.InOneTurn(phasors[0].Phase),
            AmplitudeStandardError = along,
            PhaseStandardError = Angle.FromRadians(amplitude > 0 ? Math.Min(Math.PI, across / amplitude) : Math.PI),
            Offset = shift + solution[0],
            Noise = noise,
        };
    }
}

/// <summary>Cholesky's square root of a small symmetric matrix, in its own storage.</summary>
internal static class SquareRoot
{
    // Below this share of a diagonal entry what is left of it is rounding: the columns are dependent.
    private const double Rounding = 1e-13;

    /// <summary>Replaces the lower triangle by its root; false where the matrix is not positive definite.</summary>
    public static bool Of(Span<double> a, int size)
    {
        for (var i = 0; i < size; i++)
        {
            for (var j = 0; j <= i; j++)
            {
                var left = a[(i * size) + j];
                for (var k = 0; k < j; k++)
                {
                    left -= a[(i * size) + k] * a[(j * size) + k];
                }

                if (i != j)
                {
                    a[(i * size) + j] = left / a[(j * size) + j];
                }
                else if (left > Rounding * a[(i * size) + i])
                {
                    a[(i * size) + i] = Math.Sqrt(left);
                }
                else
                {
                    return false;
                }
            }
        }

        return true;
    }

    /// <summary>Solves in place with the root.</summary>
    public static void Solve(ReadOnlySpan<double> root, int size, Span<double> x)
    {
        for (var i = 0; i < size; i++)
        {
            for (var k = 0; k < i; k++)
            {
                x[i] -= root[(i * size) + k] * x[k];
            }

            x[i] /= root[(i * size) + i];
        }

        for (var i = size - 1; i >= 0; i--)
        {
            for (var k = i + 1; k < size; k++)
            {
                x[i] -= root[(k * size) + i] * x[k];
            }

            x[i] /= root[(i * size) + i];
        }
    }
}
