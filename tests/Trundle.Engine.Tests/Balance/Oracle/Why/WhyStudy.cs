using Trundle.Engine.Balance.Why;

namespace Trundle.Engine.Tests.Balance.Oracle.Why;

/// <summary>How well causes are named over many drawn cases.</summary>
internal sealed class WhyStudy
{
    private readonly Dictionary<(string True, string Named), int> _confusion = [];
    private readonly double[] _binSum = new double[10];
    private readonly int[] _binCount = new int[10];
    private readonly int[] _binTrue = new int[10];

    private readonly int[] _bandCount = new int[4];
    private readonly int[] _bandRight = new int[4];

    public static IReadOnlyList<string> Words { get; } = [.. WhyPriors.Causes.Select(c => c.Cause)];

    public int Cases { get; private set; }

    /// <summary>The cause named first is the true one.</summary>
    public int Right { get; private set; }

    /// <summary>The true one is among the first two.</summary>
    public int AmongTwo { get; private set; }

    /// <summary>Sum of the first cause's probability: what the program itself expects to get right.</summary>
    public double Expected { get; private set; }

    /// <summary>Sum of −log₂ of the true cause's probability.</summary>
    public double Bits { get; private set; }

    public int Sizes { get; private set; }

    public int SizesInside { get; private set; }

    public void Add(WhyCase drawn, IReadOnlyList<(string Cause, double Probability)> ranked, WhyEstimate? trueCausesEstimate = null, double? misfitRatio = null)
    {
        Cases++;
        var right = drawn.IsTrue(ranked[0].Cause) ? 1 : 0;
        Right += right;
        AmongTwo += ranked.Take(2).Any(r => drawn.IsTrue(r.Cause)) ? 1 : 0;
        if (misfitRatio is { } ratio)
        {
            var band = ratio < 1.5 ? 0 : ratio < 3 ? 1 : ratio < 6 ? 2 : 3;
            _bandCount[band]++;
            _bandRight[band] += right;
        }

        Expected += ranked[0].Probability;
        Bits -= Math.Log2(Math.Max(1e-300, ranked.First(r => r.Cause == drawn.Cause).Probability));
        _confusion[(drawn.Cause, ranked[0].Cause)] = Confused(drawn.Cause, ranked[0].Cause) + 1;
        foreach (var (cause, probability) in ranked)
        {
            var bin = Math.Min(9, (int)(10 * probability));
            _binSum[bin] += probability;
            _binCount[bin]++;
            _binTrue[bin] += drawn.IsTrue(cause) ? 1 : 0;
        }

        if (drawn.Size is { } size && trueCausesEstimate is { } estimate)
        {
            Sizes++;
            var (low, high) = (estimate.Low.Value!.Value, estimate.High.Value!.Value);
            var inside = estimate.Value.Unit == "°"
                ? Math.Abs(Math.IEEERemainder(size - ((low + high) / 2), 360)) <= (high - low) / 2
                : size >= low && size <= high;
            SizesInside += inside ? 1 : 0;
        }
    }

    public int Confused(string trueCause, string named) => _confusion.GetValueOrDefault((trueCause, named));

    /// <summary>How often the first cause is right, by the misfit over what repeatability leaves.</summary>
    public IEnumerable<(string Words, int Count, int Right)> ByMisfit =>
        new[] { "under 1.5", "1.5 to 3", "3 to 6", "over 6" }.Select((w, b) => (w, _bandCount[b], _bandRight[b])).Where(b => b.Item2 > 0);

    /// <summary>For each tenth: how many probabilities, their mean, and how often the cause was true.</summary>
    public IEnumerable<(int Count, double Mean, double TruePart)> Reliability =>
        Enumerable.Range(0, 10).Where(b => _binCount[b] > 0).Select(b => (_binCount[b], _binSum[b] / _binCount[b], (double)_binTrue[b] / _binCount[b]));

    /// <summary>The mean distance of the reliability curve from the diagonal, each tenth by how many probabilities it holds.</summary>
    public double CalibrationError => Reliability.Sum(r => r.Count * Math.Abs(r.Mean - r.TruePart)) / _binCount.Sum();

    /// <summary>Asks the engine about drawn cases.</summary>
    public static WhyStudy Of(int firstSeed, int cases, Departure departure)
    {
        var study = new WhyStudy();
        for (var i = 0; i < cases; i++)
        {
            var drawn = WhyCase.Draw(firstSeed + i, departure);
            var outcome = BalanceWhy.Run(drawn.Problem);
            study.Add(drawn, [.. outcome.Explanations.Select(e => (e.Cause.Word(), e.Probability))], outcome.Explanations.First(e => e.Cause.Word() == drawn.Cause).Estimate,
                outcome.MisfitWithoutCause / outcome.MisfitExpected);
        }

        return study;
    }
}
