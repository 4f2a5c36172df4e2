using System.Text;
using BenchmarkDotNet.Attributes;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Bench;

/// <summary>A whole visit check beside reading its file alone.</summary>
[MemoryDiagnoser]
public class CheckBench
{
    private const string Sample = "samples/visit-blue-hatchback.json";

    [Benchmark(Baseline = true, Description = "read the file's bytes")]
    public byte[] ReadBytes() => File.ReadAllBytes(Sample);

    [Benchmark(Description = "read and parse the file")]
    public FileNode Parse() => FileNode.Parse(File.ReadAllText(Sample, Encoding.UTF8), Sample).Value;

    [Benchmark(Description = "visit check, whole")]
    public string Check() => VisitCheckOperation.Run(Parse()).Value.Body.ToJsonString();

    internal static void Run(Report report)
    {
        var summary = InOneProcess.Run<CheckBench>();
        var rows = summary.Reports
            .Select(r => (r.BenchmarkCase.Descriptor.WorkloadMethodDisplayInfo, Microseconds: r.ResultStatistics!.Mean / 1000, Bytes: r.GcStats.GetBytesAllocatedPerOperation(r.BenchmarkCase) ?? 0))
            .ToList();
        report.Table("A whole visit check", "In one process, warm. The check reads strictly, judges fitment and condition, plans pressure and rotation, solves four wheels' weights and tightening.",
            ["what", "µs", "ratio", "bytes allocated"],
            rows.Select(r => (IReadOnlyList<string>)[r.WorkloadMethodDisplayInfo.Trim('\''), StartBench.Text(r.Microseconds, "F1"), StartBench.Text(r.Microseconds / rows[0].Microseconds, "F1"), StartBench.Text(r.Bytes, "F0")]));
    }
}
