using System.Globalization;
using System.Runtime.InteropServices;
using System.Text;

namespace Trundle.Bench;

/// <summary>One run's ratios, with the processor and the versions that they were measured on.</summary>
internal sealed class Report
{
    private readonly StringBuilder _text = new();

    public void Table(string title, string note, IReadOnlyList<string> header, IEnumerable<IReadOnlyList<string>> rows)
    {
        var from = _text.Length;
        _text.Append(CultureInfo.InvariantCulture, $"\n## {title}\n\n{note}\n\n| {string.Join(" | ", header)} |\n|{string.Concat(Enumerable.Repeat(" --- |", header.Count))}\n");
        foreach (var row in rows)
        {
            _text.Append(CultureInfo.InvariantCulture, $"| {string.Join(" | ", row)} |\n");
        }

        Console.WriteLine(_text.ToString()[from..]);
    }

    public void Write(string folder)
    {
        var processor = Processor();
        var into = Path.Combine(folder, new string([.. processor.Select(c => char.IsAsciiLetterOrDigit(c) ? c : '-')]).Trim('-'));
        Directory.CreateDirectory(into);
        var head = string.Create(CultureInfo.InvariantCulture, $"""
            # Speed, side by side, in one run

            {processor}, {Environment.ProcessorCount} logical processors · {RuntimeInformation.OSDescription} · {RuntimeInformation.FrameworkDescription} · Trundle {Engine.EngineVersion.Engine}, tables {Engine.EngineVersion.Tables} · OR-Tools {Version(typeof(Google.OrTools.Sat.CpModel))} · MathNet.Numerics {Version(typeof(MathNet.Numerics.Combinatorics))}

            Ratios are what counts: both sides ran in turn in the same minutes. Made by `bench/run`.

            """);
        File.WriteAllText(Path.Combine(into, "results.md"), head + _text);
        Console.WriteLine($"Kept in {into}.");
    }

    private static string Version(Type type) => type.Assembly.GetName().Version!.ToString();

    private static string Processor() => File.Exists("/proc/cpuinfo")
        ? File.ReadLines("/proc/cpuinfo").Where(l => l.StartsWith("model name", StringComparison.Ordinal)).Select(l => l[(l.IndexOf(':', StringComparison.Ordinal) + 1)..].Trim()).FirstOrDefault() ?? "unknown processor"
        : "unknown processor";
}
