using System.Numerics;
using MathNet.Numerics.LinearAlgebra;
using Trundle.Engine.Balance.Spin;
using Trundle.Measures;

namespace Trundle.Engine.Tests.Balance.Spin;

/// <summary>
/// The kernel against the naive discrete Fourier transform over whole turns, against MathNet's least squares over parts of turns, and against a table
/// computed apart from this code: y = 0.3 + 1.2·cos(ωk + 40°) + 0.5·cos(2ωk + 110°), ω = 2π·3/1000.
/// </summary>
public class HarmonicFitTests
{
    private const double Step = Math.Tau * 3 / 1000;

    private static double[] Table(int n) => Signals.Of(n, Step, 0.3, (1.2, 40), (0.5, 110));

    [Theory]
    [InlineData(1000, 1.200000, 40.0000, 1.200000, 40.0000)]
    [InlineData(2000, 1.200000, 40.0000, 1.200000, 40.0000)]
    [InlineData(1900, 1.121716, 38.5189, 1.173475, 39.6483)]
    [InlineData(850, 1.080734, 37.8141, 1.137118, 41.4114)]
    public void The_table_to_its_digits(int n, double demodulated, double demodulatedDegrees, double fitted, double fittedDegrees)
    {
        var samples = Table(n);
        var naive = NaiveDft(samples, Step);
        naive.Magnitude.ShouldBe(demodulated, 0.0000005);
        Degrees(naive).ShouldBe(demodulatedDegrees, 0.00005);

        var one = Signals.Fit(samples, Step, new Complex[1]);
        one.Amplitude.ShouldBe(fitted, 0.0000005);
        one.Phase.Degrees.ShouldBe(fittedDegrees, 0.00005);

        var phasors = new Complex[2];
        var two = Signals.Fit(samples, Step, phasors);
        two.Amplitude.ShouldBe(1.2, 1e-12);
        two.Phase.Degrees.ShouldBe(40, 1e-10);
        phasors[1].Magnitude.ShouldBe(0.5, 1e-12);
        Degrees(phasors[1]).ShouldBe(110, 1e-10);
        two.Offset.ShouldBe(0.3, 1e-12);
        two.Noise.ShouldBeLessThan(1e-7);
    }

    [Fact]
    public void Over_whole_turns_it_is_the_naive_transform()
    {
        var random = new Random(11);
        for (var i = 0; i < 50; i++)
        {
            var turns = random.Next(1, 12);
            var n = turns * random.Next(20, 300);
            var step = Math.Tau * turns / n;
            var samples = Enumerable.Range(0, n).Select(_ => Signals.Gauss(random)).ToArray();
            var phasors = new Complex[3];
            Signals.Fit(samples, step, phasors);
            for (var h = 1; h <= 3; h++)
            {
                (phasors[h - 1] - NaiveDft(samples, h * step)).Magnitude.ShouldBe(0, 1e-12);
            }
        }
    }

    [Fact]
    public void Over_parts_of_turns_it_is_the_least_squares_of_another_library()
    {
        var random = new Random(12);
        for (var i = 0; i < 60; i++)
        {
            var harmonics = random.Next(1, 6);
            var n = random.Next(200, 3000);
            var step = Math.Tau * (1.2 + (random.NextDouble() * 20)) / n;
            var start = random.NextDouble() * 7;
            var offset = 1000 * random.NextDouble();
            var samples = Enumerable.Range(0, n).Select(k => offset + Math.Cos(step * k) + Signals.Gauss(random)).ToArray();
            var design = Matrix<double>.Build.Dense(n, (2 * harmonics) + 1, (k, c) => c == 0 ? 1 : c % 2 == 1 ? Math.Cos((c + 1) / 2 * ((step * k) + start)) : Math.Sin(c / 2 * ((step * k) + start)));
            var y = MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(samples);
            var x = design.QR().Solve(y);
            var left = y - (design * x);
            var variance = left.DotProduct(left) / (n - x.Count);
            var covariance = (design.Transpose() * design).Inverse() * variance;

            var phasors = new Complex[harmonics];
            var fit = Signals.Fit(samples, step, phasors, start);
            for (var h = 1; h <= harmonics; h++)
            {
                (phasors[h - 1] - new Complex(x[(2 * h) - 1], -x[2 * h])).Magnitude.ShouldBe(0, 1e-9);
            }

            fit.Offset.ShouldBe(x[0], 1e-9);
            fit.Noise.ShouldBe(Math.Sqrt(variance), 1e-9);

            // Standard errors by the slopes of amplitude and phase over the fitted terms.
            var (a, b, amplitude) = (x[1], x[2], Math.Sqrt((x[1] * x[1]) + (x[2] * x[2])));
            var along = Math.Sqrt(((a * a * covariance[1, 1]) + (2 * a * b * covariance[1, 2]) + (b * b * covariance[2, 2])) / (amplitude * amplitude));
            var across = Math.Sqrt(((b * b * covariance[1, 1]) - (2 * a * b * covariance[1, 2]) + (a * a * covariance[2, 2])) / (amplitude * amplitude)) / amplitude;
            fit.AmplitudeStandardError.ShouldBe(along, 1e-9);
            fit.PhaseStandardError.Radians.ShouldBe(across, 1e-9);
        }
    }

    [Fact]
    public void A_changing_speed_is_followed()
    {
        var random = new Random(13);
        for (var i = 0; i < 20; i++)
        {
            var n = random.Next(500, 3000);
            var (step, change, middle) = (0.02 + (0.02 * random.NextDouble()), 10 * (random.NextDouble() - 0.5), random.NextDouble() * 6);
            double Turned(int k)
            {
                var t = k - ((n - 1) / 2.0);
                return middle + (step * t) + (step * change / 100 / (n - 1) * t * t / 2);
            }

            var samples = Enumerable.Range(0, n).Select(k => 2 + (1.5 * Math.Cos(Turned(k) + 1)) + (0.4 * Math.Cos((2 * Turned(k)) - 2))).ToArray();
            var phasors = new Complex[2];
            var fit = Changing(samples, step, change, middle, phasors);
            fit.Amplitude.ShouldBe(1.5, 1e-10);
            fit.Phase.Radians.ShouldBe(1, 1e-10);
            (phasors[1] - Complex.FromPolarCoordinates(0.4, -2)).Magnitude.ShouldBe(0, 1e-10);
        }
    }

    [Fact]
    public void The_two_ways_agree_where_the_speed_is_steady()
    {
        var samples = Table(1900);
        var (quick, slow) = (new Complex[3], new Complex[3]);
        Signals.Fit(samples, Step, quick);
        Changing(samples, Step, 1e-280, Step * 949.5, slow);
        for (var h = 0; h < 3; h++)
        {
            (quick[h] - slow[h]).Magnitude.ShouldBe(0, 1e-12);
        }
    }

    [Fact]
    public void A_long_record_keeps_its_digits()
    {
        // Two million samples, 6000 turns: the sums against naive cosine and sine.
        const int n = 2_000_000;
        const double step = Math.Tau * 6000.3 / n;
        var random = new Random(14);
        var samples = new double[n];
        for (var k = 0; k < n; k++)
        {
            samples[k] = 5 + Math.Cos((step * k) + 1) + (0.1 * random.NextDouble());
        }

        var phasors = new Complex[1];
        var fit = Signals.Fit(samples, step, phasors);
        var (c, s, cc, ss, cs, c1, s1, y1) = (0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0);
        for (var k = 0; k < n; k++)
        {
            var (sin, cos) = Math.SinCos(step * k);
            c += samples[k] * cos;
            s += samples[k] * sin;
            cc += cos * cos;
            ss += sin * sin;
            cs += cos * sin;
            c1 += cos;
            s1 += sin;
            y1 += samples[k];
        }

        var x = Matrix<double>.Build.DenseOfArray(new[,] { { n, c1, s1 }, { c1, cc, cs }, { s1, cs, ss } }).Solve(MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense([y1, c, s]));
        (phasors[0] - new Complex(x[1], -x[2])).Magnitude.ShouldBe(0, 1e-10);
        fit.Offset.ShouldBe(x[0], 1e-10);
    }

    [Fact]
    public void Nothing_is_allocated()
    {
        var samples = Table(1900);
        var phasors = new Complex[5];
        Signals.Fit(samples, Step, phasors);
        var before = GC.GetAllocatedBytesForCurrentThread();
        var fit = HarmonicFit.AtSteadySpeed(samples, Frequency.FromHertz(1), RotationalSpeed.FromRadiansPerSecond(Step), default, phasors);
        (GC.GetAllocatedBytesForCurrentThread() - before).ShouldBe(0);
        fit.HasValue.ShouldBeTrue();
    }

    [Fact]
    public void Scale_and_start_change_only_what_they_should()
    {
        var samples = Table(1234);
        var (plain, turned, scaled) = (new Complex[2], new Complex[2], new Complex[2]);
        Signals.Fit(samples, Step, plain);
        Signals.Fit(samples, Step, turned, 0.7);
        Signals.Fit([.. samples.Select(v => 3 * v)], Step, scaled);
        for (var h = 1; h <= 2; h++)
        {
            (turned[h - 1] - (plain[h - 1] * Complex.FromPolarCoordinates(1, -0.7 * h))).Magnitude.ShouldBe(0, 1e-12);
            (scaled[h - 1] - (3 * plain[h - 1])).Magnitude.ShouldBe(0, 1e-12);
        }
    }

    [Fact]
    public void What_cannot_be_told_apart_is_no_fit()
    {
        var samples = Table(200);
        HarmonicFit.AtSteadySpeed(samples, Frequency.FromHertz(1), RotationalSpeed.FromRadiansPerSecond(1.7), default, new Complex[2]).ShouldBeNull("the second harmonic would pass half the sample rate");
        HarmonicFit.AtSteadySpeed(samples, Frequency.FromHertz(1), RotationalSpeed.FromRadiansPerSecond(1e-6), default, new Complex[5]).ShouldBeNull("a ten-thousandth of a turn");
        HarmonicFit.AtSteadySpeed(samples, Frequency.FromHertz(1), default, default, new Complex[1]).ShouldBeNull("it stands still");
        Should.Throw<ArgumentException>(() => HarmonicFit.AtSteadySpeed(samples.AsSpan(0, 5), Frequency.FromHertz(1), RotationalSpeed.FromRadiansPerSecond(1), default, new Complex[2]));
    }

    private static HarmonicFit Changing(double[] samples, double step, double changePercent, double middle, Complex[] phasors) =>
        HarmonicFit.AtChangingSpeed(samples, Frequency.FromHertz(1), RotationalSpeed.FromRadiansPerSecond(step), changePercent, Angle.FromRadians(middle), phasors).ShouldNotBeNull();

    private static Complex NaiveDft(double[] samples, double step)
    {
        var sum = Complex.Zero;
        for (var k = 0; k < samples.Length; k++)
        {
            sum += samples[k] * Complex.FromPolarCoordinates(1, -step * k);
        }

        return 2 * sum / samples.Length;
    }

    private static double Degrees(Complex z) => ((z.Phase * 180 / Math.PI) + 360) % 360;
}
