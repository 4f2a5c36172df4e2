using Trundle.Engine.Wear;

namespace Trundle.Engine.Tests.Wear;

/// <summary>How well patterns and causes are named over many drawn tyres.</summary>
internal sealed class WearStudy
{
    private readonly Dictionary<(string True, string Named), int> _confusion = [];
    private readonly double[] _sum = new double[10];
    private readonly int[] _count = new int[10];
    private readonly int[] _true = new int[10];

    public int Cases { get; private set; }

    public int Right { get; private set; }

    public int AmongTwo { get; private set; }

    public double Expected { get; private set; }

    public double Bits { get; private set; }

    /// <summary>The likeliest cause over all patterns is the true one.</summary>
    public int CauseRight { get; private set; }

    public double CauseExpected { get; private set; }

    public static WearStudy Of(int cases, WearPlan plan, bool allAlikeOften = false)
    {
        var study = new WearStudy();
        for (var seed = 1; seed <= cases; seed++)
        {
            var drawn = WearCase.Draw(seed, plan, allAlikeOften);
            study.Add(drawn, WearReading.Of(drawn.Subject)[0]);
        }

        return study;
    }

    public int Confused(string pattern, string named) => _confusion.GetValueOrDefault((pattern, named));

    /// <summary>For each tenth: how many probabilities, their mean, and how often the pattern was true.</summary>
    public IEnumerable<(int Count, double Mean, double TruePart)> Reliability =>
        Enumerable.Range(0, 10).Where(b => _count[b] > 0).Select(b => (_count[b], _sum[b] / _count[b], (double)_true[b] / _count[b]));

    /// <summary>Mean distance of the reliability curve from the diagonal.</summary>
    public double ReliabilityError => Reliability.Sum(r => r.Count * Math.Abs(r.Mean - r.TruePart)) / _count.Sum();

    private void Add(WearCase drawn, TyreWear wear)
    {
        Cases++;
        var named = wear.Likeliest.Pattern.Word();
        Right += named == drawn.Pattern ? 1 : 0;
        AmongTwo += wear.Patterns.Take(2).Any(p => p.Pattern.Word() == drawn.Pattern) ? 1 : 0;
        Expected += wear.Likeliest.Probability;
        Bits -= Math.Log2(Math.Max(1e-300, wear.Patterns.Single(p => p.Pattern.Word() == drawn.Pattern).Probability));
        _confusion[(drawn.Pattern, named)] = Confused(drawn.Pattern, named) + 1;
        foreach (var pattern in wear.Patterns)
        {
            var bin = Math.Min(9, (int)(10 * pattern.Probability));
            _sum[bin] += pattern.Probability;
            _count[bin]++;
            _true[bin] += pattern.Pattern.Word() == drawn.Pattern ? 1 : 0;
        }

        var (cause, probability) = wear.Patterns.SelectMany(p => p.Causes.Select(c => (c.Cause, Whole: p.Probability * c.Probability))).GroupBy(c => c.Cause)
            .Select(g => (g.Key, g.Sum(c => c.Whole))).MaxBy(c => c.Item2);
        CauseRight += cause == drawn.Cause ? 1 : 0;
        CauseExpected += probability;
    }
}
