using System.Globalization;
using BenchmarkDotNet.Attributes;
using Google.OrTools.Sat;
using Trundle.Engine.Uniformity;
using Trundle.Engine.Uniformity.Matching;
using Trundle.Measures;

namespace Trundle.Bench;

/// <summary>Matching a set of tyres to wheels, worst first and then the sum, beside a general solver on the same pairs.</summary>
[MemoryDiagnoser]
public class MatchBench
{
    // Newtons to whole numbers: a hundredth of a newton is finer than any machine measures.
    private const double Scale = 100;
    private MatchProblem<Force> _problem = null!;
    private long[,] _costs = null!;

    // From about twenty on the solver takes minutes for the worst pair, and a run would not end.
    [Params(4, 8, 12)]
    public int Parts { get; set; }

    [GlobalSetup]
    public void Setup()
    {
        var random = new Random(2026);
        MatchPart<Force> Part(string name, int i) =>
            new($"{name}{i.ToString(CultureInfo.InvariantCulture)}", [HarmonicVector<Force>.At(Force.FromNewtons(random.Next(500, 10_000) / Scale), WheelAngle.FromDegrees(random.Next(360)))], true);
        _problem = new MatchProblem<Force>
        {
            Tyres = [.. Enumerable.Range(0, Parts).Select(i => Part("T", i))],
            Wheels = [.. Enumerable.Range(0, Parts).Select(i => Part("W", i))],
        };
        _costs = new long[Parts, Parts];
        for (var t = 0; t < Parts; t++)
        {
            for (var w = 0; w < Parts; w++)
            {
                _costs[t, w] = (long)Math.Round(Math.Abs((_problem.Tyres[t].Planes[0].Amount - _problem.Wheels[w].Planes[0].Amount).Newtons) * Scale);
            }
        }

        var (ours, theirs) = (Match(), CpSat());
        if (!ours.ProvenOptimal || Math.Abs((ours.Worst.Newtons * Scale) - theirs.Worst) > 0.01 || Math.Abs((ours.Sum.Newtons * Scale) - theirs.Sum) > 0.01)
        {
            throw new InvalidOperationException("The two do not find the same optimum: their times cannot be compared.");
        }
    }

    [Benchmark(Baseline = true, Description = "CP-SAT, one worker, pairs' costs given")]
    public (long Worst, long Sum) CpSat()
    {
        var worst = Solve(null);
        return (worst, Solve(worst));
    }

    [Benchmark(Description = "match, with the turns and the proof")]
    public MatchOutcome<Force>.Matched Match() => (MatchOutcome<Force>.Matched)SetMatch.Solve(_problem);

    /// <summary>The least worst; or, under a worst, the least sum.</summary>
    private long Solve(long? most)
    {
        var model = new CpModel();
        var x = new BoolVar[Parts, Parts];
        var worst = model.NewIntVar(0, 20_000, "worst");
        for (var t = 0; t < Parts; t++)
        {
            for (var w = 0; w < Parts; w++)
            {
                x[t, w] = model.NewBoolVar("");
                if (most is null)
                {
                    model.Add(worst >= _costs[t, w]).OnlyEnforceIf(x[t, w]);
                }
                else if (_costs[t, w] > most)
                {
                    model.Add(x[t, w] == 0);
                }
            }
        }

        for (var i = 0; i < Parts; i++)
        {
            model.AddExactlyOne(Enumerable.Range(0, Parts).Select(w => x[i, w]));
            model.AddExactlyOne(Enumerable.Range(0, Parts).Select(t => x[t, i]));
        }

        model.Minimize(most is null ? worst : LinearExpr.WeightedSum(x.Cast<BoolVar>(), _costs.Cast<long>()));
        var solver = new CpSolver { StringParameters = "num_workers:1" };
        return solver.Solve(model) == CpSolverStatus.Optimal ? (long)Math.Round(solver.ObjectiveValue) : throw new InvalidOperationException("CP-SAT did not prove its answer.");
    }

    internal static void Run(Report report)
    {
        var summary = InOneProcess.Run<MatchBench>();
        var rows = summary.Reports
            .Select(r => (
                Parts: (int)r.BenchmarkCase.Parameters["Parts"],
                What: r.BenchmarkCase.Descriptor.WorkloadMethodDisplayInfo.Trim('\''),
                Microseconds: r.ResultStatistics!.Mean / 1000,
                Bytes: r.GcStats.GetBytesAllocatedPerOperation(r.BenchmarkCase) ?? 0))
            .ToList();
        report.Table("Matching a set of tyres and wheels",
            "In one process, warm; the worst pair first, then the sum; both prove their optimum, and they agree or the run stops. The solver is told each pair's cost; match works out the turns as well.",
            ["tyres and wheels", "what", "µs", "ratio", "managed bytes allocated"],
            rows.Select(r => (IReadOnlyList<string>)[
                r.Parts.ToString(CultureInfo.InvariantCulture), r.What, StartBench.Text(r.Microseconds, "F1"),
                StartBench.Text(r.Microseconds / rows.First(b => b.Parts == r.Parts && b.What.StartsWith("CP-SAT", StringComparison.Ordinal)).Microseconds, "F4"), StartBench.Text(r.Bytes, "F0")]));
    }
}
