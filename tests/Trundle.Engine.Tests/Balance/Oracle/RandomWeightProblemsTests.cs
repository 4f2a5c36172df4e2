using System.Collections.Concurrent;

namespace Trundle.Engine.Tests.Balance.Oracle;

/// <summary>The choice of weights against trying everything, on so many small problems that every shape and every tie comes up.</summary>
public class RandomWeightProblemsTests
{
    [Fact]
    public void Two_hundred_thousand_small_problems_agree_with_trying_everything()
    {
        const int Problems = 200_000;
        var faults = new ConcurrentBag<string>();
        var (met, fitted) = (0, 0);
        Parallel.For(0, Problems / 100, block =>
        {
            var (blockMet, blockFitted) = (0, 0);
            for (var seed = block * 100; seed < (block + 1) * 100; seed++)
            {
                if (ExhaustiveCheck.Fault(RandomProblems.Tiny(seed), out var outcome) is { } fault)
                {
                    faults.Add($"seed {seed}: {fault}");
                }

                blockMet += outcome.WithinTolerance ? 1 : 0;
                blockFitted += outcome.Pieces > 0 ? 1 : 0;
            }

            Interlocked.Add(ref met, blockMet);
            Interlocked.Add(ref fitted, blockFitted);
        });
        faults.Take(5).ShouldBeEmpty();

        // Neither all easy nor all out of reach.
        met.ShouldBeInRange(Problems / 5, Problems * 4 / 5);
        fitted.ShouldBeGreaterThan(Problems / 2);
    }
}
