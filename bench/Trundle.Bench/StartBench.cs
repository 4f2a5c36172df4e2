using System.Diagnostics;
using System.Globalization;

namespace Trundle.Bench;

/// <summary>The command's start beside an empty .NET program's, as whole processes, in turn.</summary>
internal static class StartBench
{
    private const int Runs = 41;

    private static readonly string[] Sidewall = ["sidewall", "205/55 R16 91V", "--json"];

    private static readonly string[] Check = ["visit", "check", "samples/visit-blue-hatchback.json", "--json"];

    public static void Run(string published, Report report)
    {
        var contenders = new (string Name, string File, string[] Arguments)[]
        {
            ("empty .NET program", Path.Combine(published, "empty", "Trundle.Bench.Empty"), []),
            ("trundle sidewall, the quick half", Path.Combine(published, "trundle", "quick", "trundle"), Sidewall),
            ("trundle visit check, the quick half", Path.Combine(published, "trundle", "quick", "trundle"), Check),
            ("./trundle sidewall, with the script that looks whether to build", Path.GetFullPath("trundle"), Sidewall),
            ("trundle sidewall, the whole command", Path.Combine(published, "trundle", "trundle"), Sidewall),
            ("trundle visit check, the whole command", Path.Combine(published, "trundle", "trundle"), Check),
        };
        var times = contenders.ToDictionary(c => c.Name, _ => new List<double>());
        for (var i = 0; i < Runs + 3; i++)
        {
            foreach (var (name, file, arguments) in contenders)
            {
                var took = Time(file, arguments);
                if (i >= 3)
                {
                    times[name].Add(took);
                }
            }
        }

        var empty = Median(times[contenders[0].Name]);
        report.Table("Start of the command", $"Whole processes, {Runs.ToString(CultureInfo.InvariantCulture)} runs each in turn after three to warm up; the empty program and the whole command published with ready-to-run code, the quick half as machine code. Aim: 1.5.",
            ["what", "median ms", "ratio"],
            contenders.Select(c => (IReadOnlyList<string>)[c.Name, Text(Median(times[c.Name]), "F1"), Text(Median(times[c.Name]) / empty, "F2")]));
    }

    internal static double Median(List<double> values) => values.Order().ElementAt(values.Count / 2);

    internal static string Text(double value, string format) => value.ToString(format, CultureInfo.InvariantCulture);

    private static double Time(string file, string[] arguments)
    {
        var start = new ProcessStartInfo(file, arguments) { RedirectStandardOutput = true, RedirectStandardError = true };
        var watch = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return process.ExitCode is 0 or 1
            ? watch.Elapsed.TotalMilliseconds
            : throw new InvalidOperationException($"{file} {string.Join(' ', arguments)} ended with {process.ExitCode.ToString(CultureInfo.InvariantCulture)}.");
    }
}
