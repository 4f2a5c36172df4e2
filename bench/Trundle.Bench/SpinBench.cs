using System.Diagnostics;
using System.Globalization;
using System.Numerics;
using System.Runtime.InteropServices;
using System.Text.Json.Nodes;
using MathNet.Numerics.LinearAlgebra;
using MathNet.Numerics.LinearRegression;
using Trundle.Engine.Balance.Spin;
using Trundle.Measures;

namespace Trundle.Bench;

/// <summary>
/// The first harmonic of a spin beside the least squares of MathNet and of SciPy on the same samples, and the bytes a second that it gets through beside a plain
/// sum over the same array.
/// </summary>
internal static class SpinBench
{
    private const int Short = 20_000;
    private const int Long = 8_000_000;
    private const int Runs = 31;
    private const double TurnsPerSample = 1 / 333.3;
    private static readonly Frequency Rate = Frequency.FromHertz(1000);
    private static readonly RotationalSpeed Speed = RotationalSpeed.FromHertz(1000 * TurnsPerSample);

    public static void Run(Report report)
    {
        foreach (var harmonics in new[] { 1, 5 })
        {
            Extraction(report, harmonics);
        }

        Memory(report);
    }

    private static void Extraction(Report report, int harmonics)
    {
        var samples = Samples(Short);
        var phasors = new Complex[harmonics];
        var design = Design(Short, harmonics);
        var y = MathNet.Numerics.LinearAlgebra.Vector<double>.Build.Dense(samples);
        var found = new Dictionary<string, double>(StringComparer.Ordinal);
        var contenders = new (string Name, Func<double> Run)[]
        {
            ("Trundle, HarmonicFit.AtSteadySpeed, with standard errors", () => HarmonicFit.AtSteadySpeed(samples, Rate, Speed, default, phasors)!.Value.Amplitude),
            ("MathNet, design made and QR", () => Amplitude(MultipleRegression.QR(Design(Short, harmonics), y))),
            ("MathNet, QR of a design at hand", () => Amplitude(MultipleRegression.QR(design, y))),
            ("MathNet, normal equations of a design at hand", () => Amplitude(MultipleRegression.NormalEquations(design, y))),
        };
        var times = InTurn([.. contenders.Select(c => (c.Name, (Action)(() => found[c.Name] = c.Run())))]);
        var rows = contenders.Select(c => (c.Name, Microseconds: times[c.Name], Amplitude: found[c.Name])).ToList();
        var note = "";
        if (SciPy(samples, harmonics) is { } scipy)
        {
            rows.Add(("SciPy, design made and lstsq", scipy.Whole, scipy.Amplitude));
            rows.Add(("SciPy, lstsq of a design at hand", scipy.Solve, scipy.Amplitude));
            note = $" SciPy {scipy.Version}, timed inside python.";
        }
        else
        {
            note = " SciPy is not installed (Debian: python3-scipy), so it is left out.";
        }

        report.Table(
            string.Create(CultureInfo.InvariantCulture, $"First harmonic of {Short} samples, {harmonics} harmonic{(harmonics == 1 ? "" : "s")} fitted"),
            string.Create(CultureInfo.InvariantCulture, $"Median of {Runs} runs in turn, one thread as each comes. All amplitudes agree within {rows.Max(r => Math.Abs(r.Amplitude - rows[0].Amplitude)):G2}.{note}"),
            ["what", "µs", "ratio"],
            rows.Select(r => (IReadOnlyList<string>)[r.Name, StartBench.Text(r.Microseconds, "F1"), StartBench.Text(r.Microseconds / rows[0].Microseconds, "F1")]));
    }

    private static void Memory(Report report)
    {
        var samples = Samples(Long);
        var sink = 0.0;
        Action Fit(int harmonics)
        {
            var phasors = new Complex[harmonics];
            return () => sink += HarmonicFit.AtSteadySpeed(samples, Rate, Speed, default, phasors)!.Value.Amplitude;
        }

        var contenders = new (string Name, Action Run)[]
        {
            ("plain sum, one by one", () => sink += Sum(samples)),
            ("plain sum, many at once", () => sink += VectorSum(samples)),
            ("first harmonic, 1 fitted", Fit(1)),
            ("first harmonic, 3 fitted", Fit(3)),
            ("first harmonic, 5 fitted", Fit(5)),
        };
        var times = InTurn(contenders);
        var bytes = 8.0 * Long;
        report.Table(
            "First harmonic at memory speed",
            string.Create(CultureInfo.InvariantCulture, $"{Long} samples, {bytes / 1e6:F0} MB, median of {Runs} runs in turn, one thread; vectors of {System.Numerics.Vector<double>.Count} doubles.{(double.IsFinite(sink) ? "" : " !")}"),
            ["what", "ms", "GB/s", "ratio to the sum many at once"],
            contenders.Select(c => (IReadOnlyList<string>)
            [
                c.Name, StartBench.Text(times[c.Name] / 1000, "F2"), StartBench.Text(bytes / times[c.Name] / 1000, "F2"), StartBench.Text(times[c.Name] / times["plain sum, many at once"], "F2"),
            ]));
    }

    /// <summary>Median microseconds of each, after half a second of it to warm up, one after the other in each round.</summary>
    private static Dictionary<string, double> InTurn(IReadOnlyList<(string Name, Action Run)> contenders)
    {
        var times = contenders.ToDictionary(c => c.Name, _ => new List<double>(), StringComparer.Ordinal);
        foreach (var (_, run) in contenders)
        {
            for (var watch = Stopwatch.StartNew(); watch.ElapsedMilliseconds < 500;)
            {
                run();
            }
        }

        for (var round = 0; round < Runs; round++)
        {
            foreach (var (name, run) in contenders)
            {
                var watch = Stopwatch.StartNew();
                run();
                times[name].Add(watch.Elapsed.TotalMicroseconds);
            }
        }

        return times.ToDictionary(t => t.Key, t => StartBench.Median(t.Value), StringComparer.Ordinal);
    }

    private static double[] Samples(int count)
    {
        var random = new Random(1);
        var samples = new double[count];
        for (var k = 0; k < count; k++)
        {
            samples[k] = 0.3 + (1.2 * Math.Cos((Math.Tau * TurnsPerSample * k) + 0.7)) + (0.5 * Math.Cos((2 * Math.Tau * TurnsPerSample * k) + 1.9)) + (0.1 * (random.NextDouble() - 0.5));
        }

        return samples;
    }

    private static Matrix<double> Design(int count, int harmonics) => Matrix<double>.Build.Dense(count, (2 * harmonics) + 1, (k, c) =>
        c == 0 ? 1 : c % 2 == 1 ? Math.Cos((c + 1) / 2 * Math.Tau * TurnsPerSample * k) : Math.Sin(c / 2 * Math.Tau * TurnsPerSample * k));

    private static double Amplitude(MathNet.Numerics.LinearAlgebra.Vector<double> x) => Math.Sqrt((x[1] * x[1]) + (x[2] * x[2]));

    private static double Sum(double[] samples)
    {
        var sum = 0.0;
        foreach (var value in samples)
        {
            sum += value;
        }

        return sum;
    }

    private static double VectorSum(double[] samples)
    {
        var vectors = MemoryMarshal.Cast<double, System.Numerics.Vector<double>>(samples);
        var (a, b, c, d) = (System.Numerics.Vector<double>.Zero, System.Numerics.Vector<double>.Zero, System.Numerics.Vector<double>.Zero, System.Numerics.Vector<double>.Zero);
        for (var i = 0; i + 3 < vectors.Length; i += 4)
        {
            a += vectors[i];
            b += vectors[i + 1];
            c += vectors[i + 2];
            d += vectors[i + 3];
        }

        return System.Numerics.Vector.Sum(a + b + c + d);
    }

    /// <summary>The same fit by SciPy in a process of its own, which times itself; null where python or SciPy is missing.</summary>
    private static (double Whole, double Solve, double Amplitude, string Version)? SciPy(double[] samples, int harmonics)
    {
        const string script = """
            import json, sys, time
            import numpy, scipy, scipy.linalg
            y = numpy.fromfile(sys.argv[1])
            harmonics, step, runs = int(sys.argv[2]), float(sys.argv[3]), int(sys.argv[4])
            def design():
                psi = step * numpy.arange(y.size)
                return numpy.column_stack([numpy.ones(y.size)] + [f(h * psi) for h in range(1, harmonics + 1) for f in (numpy.cos, numpy.sin)])
            a = design()
            whole, solve = [], []
            for i in range(runs + 3):
                t = time.perf_counter(); x = scipy.linalg.lstsq(design(), y)[0]; whole.append(time.perf_counter() - t)
                t = time.perf_counter(); x = scipy.linalg.lstsq(a, y)[0]; solve.append(time.perf_counter() - t)
            median = lambda v: sorted(v[3:])[runs // 2] * 1e6
            print(json.dumps({"whole": median(whole), "solve": median(solve), "amplitude": float(numpy.hypot(x[1], x[2])), "version": scipy.__version__}))
            """;
        var data = Path.GetTempFileName();
        try
        {
            File.WriteAllBytes(data, MemoryMarshal.AsBytes<double>(samples).ToArray());
            var start = new ProcessStartInfo(File.Exists("/usr/bin/python3") ? "/usr/bin/python3" : "python3", ["-c", script, data, harmonics.ToString(CultureInfo.InvariantCulture), (Math.Tau * TurnsPerSample).ToString("R", CultureInfo.InvariantCulture), Runs.ToString(CultureInfo.InvariantCulture)])
            {
                RedirectStandardOutput = true, RedirectStandardError = true,
            };
            using var process = Process.Start(start);
            var said = process?.StandardOutput.ReadToEnd() ?? "";
            process?.WaitForExit();
            if (process?.ExitCode != 0)
            {
                return null;
            }

            var json = JsonNode.Parse(said)!;
            return (json["whole"]!.GetValue<double>(), json["solve"]!.GetValue<double>(), json["amplitude"]!.GetValue<double>(), json["version"]!.GetValue<string>());
        }
        catch (System.ComponentModel.Win32Exception)
        {
            return null;
        }
        finally
        {
            File.Delete(data);
        }
    }
}
