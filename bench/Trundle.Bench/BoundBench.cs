using System.Globalization;
using System.Numerics;
using Trundle.Engine.Balance.Spin;
using Trundle.Measures;

namespace Trundle.Bench;

/// <summary>
/// The scatter of the first harmonic beside the least that any estimate can have (Cramér-Rao; Rife and Boorstyn 1974, Kay 1993, from memory): white noise,
/// seeded, with the speed known and unknown.
/// </summary>
internal static class BoundBench
{
    private const int Runs = 20_000;
    private const int Count = 200;
    private const double Step = Math.Tau * 0.05;
    private const double Amplitude = 1.2;
    private const double Noise = 0.1;

    public static void Run(Report report)
    {
        const double eta = Amplitude * Amplitude / (2 * Noise * Noise);
        const double amplitude = 2 * Noise * Noise / Count;
        const double phase = 2.0 * ((2 * Count) - 1) / (eta * Count * (Count + 1));
        const double speed = 12 / (eta * Count * ((Count * (double)Count) - 1));
        var random = new Random(20260314);
        var (known, unknown) = (new List<HarmonicFit>(), new List<SineFit>());
        var phasors = new Complex[1];
        for (var i = 0; i < Runs; i++)
        {
            known.Add(HarmonicFit.AtSteadySpeed(Drawn(random), Frequency.FromHertz(1), RotationalSpeed.FromRadiansPerSecond(Step), default, phasors)!.Value);
            unknown.Add(SineFit.WithUnknownSpeed(Drawn(random), Frequency.FromHertz(1), RotationalSpeed.FromRadiansPerSecond(Step * 1.002), 1)!);
        }

        report.Table("Scatter beside the Cramér-Rao bound",
            $"{Runs.ToString(CultureInfo.InvariantCulture)} seeded signals each: amplitude 1.2, noise 0.1, {Count.ToString(CultureInfo.InvariantCulture)} samples, ten turns. The variance over the least that any estimate can have; its own error is about 1 %. Aim: within 5 %.",
            ["what", "variance / bound"],
            [
                Row("amplitude, speed known", Variance(known.Select(f => f.Amplitude)) / amplitude),
                Row("phase, speed known", Variance(known.Select(f => f.Phase.Radians)) / (amplitude / (Amplitude * Amplitude))),
                Row("amplitude, speed unknown", Variance(unknown.Select(f => f.Harmonics.Amplitude)) / amplitude),
                Row("phase at the first sample, speed unknown", Variance(unknown.Select(f => f.Harmonics.Phase.Radians)) / phase),
                Row("speed", Variance(unknown.Select(f => f.Speed.RadiansPerSecond)) / speed),
            ]);
    }

    private static string[] Row(string what, double ratio) => [what, ratio.ToString("F3", CultureInfo.InvariantCulture)];

    private static double[] Drawn(Random random)
    {
        var samples = new double[Count];
        for (var k = 0; k < Count; k++)
        {
            samples[k] = 0.3 + (Amplitude * Math.Cos((Step * k) + (40 * Math.PI / 180))) + (Noise * Gauss(random));
        }

        return samples;
    }

    private static double Gauss(Random random) => Math.Sqrt(-2 * Math.Log(1 - random.NextDouble())) * Math.Cos(Math.Tau * random.NextDouble());

    private static double Variance(IEnumerable<double> values)
    {
        var list = values.ToList();
        var mean = list.Average();
        return list.Sum(v => (v - mean) * (v - mean)) / (list.Count - 1);
    }
}
