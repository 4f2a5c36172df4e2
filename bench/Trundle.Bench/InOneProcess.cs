using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Loggers;
using BenchmarkDotNet.Reports;
using BenchmarkDotNet.Running;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace Trundle.Bench;

/// <summary>Runs the benchmarks of a class in this process, quietly, so that all that is compared ran in the same minutes.</summary>
internal static class InOneProcess
{
    public static Summary Run<T>() => BenchmarkRunner.Run<T>(ManualConfig.CreateEmpty()
        .AddJob(Job.ShortRun.WithToolchain(InProcessEmitToolchain.Instance))
        .AddLogger(NullLogger.Instance)
        .AddColumnProvider(DefaultConfig.Instance.GetColumnProviders().ToArray()));
}
