using Trundle.Engine.Complaint;

namespace Trundle.Engine.Tests.Complaint;

/// <summary>How an interview of the study is drawn and led.</summary>
/// <param name="Questions">The questions put, in order; empty where each next one is the engine's own choice.</param>
/// <param name="Asked">How many are put.</param>
public sealed record ComplaintPlan(IReadOnlyList<string> Questions, int Asked)
{
    /// <summary>How often an answer is misheard: then any answer is as likely as any other.</summary>
    /// <remarks>Null: as often as the model takes it.</remarks>
    public double? Misheard { get; init; }

    /// <summary>Every cause is drawn equally often, not by what is held.</summary>
    public bool AllAlikeOften { get; init; }

    /// <summary>An interview that contradicts itself is drawn anew, as the driver is asked again.</summary>
    public bool AskedAgain { get; init; }
}

/// <summary>How well causes are named over many drawn interviews.</summary>
internal sealed class ComplaintStudy
{
    private readonly double[] _sum = new double[10];
    private readonly int[] _count = new int[10];
    private readonly int[] _true = new int[10];

    public int Cases { get; private set; }

    public int Right { get; private set; }

    public int AmongThree { get; private set; }

    public double Expected { get; private set; }

    public double Bits { get; private set; }

    /// <summary>Interviews whose true cause can cost a wheel, a tyre or a brake, and those of them in which it was named.</summary>
    public (int True, int Named) Dangers { get; private set; }

    /// <summary>Interviews that are told not to drive.</summary>
    public int NotToBeDriven { get; private set; }

    /// <summary>Interviews that contradict themselves.</summary>
    public int Contradictory { get; private set; }

    /// <summary>For each tenth: how many probabilities, their mean, and how often the cause was true.</summary>
    public IEnumerable<(int Count, double Mean, double TruePart)> Reliability =>
        Enumerable.Range(0, 10).Where(b => _count[b] > 0).Select(b => (_count[b], _sum[b] / _count[b], (double)_true[b] / _count[b]));

    /// <summary>Mean distance of the reliability curve from the diagonal.</summary>
    public double ReliabilityError => Reliability.Sum(r => r.Count * Math.Abs(r.Mean - r.TruePart)) / _count.Sum();

    public static ComplaintStudy Of(int cases, ComplaintPlan plan)
    {
        var study = new ComplaintStudy();
        for (var seed = 1; seed <= cases; seed++)
        {
            var (cause, detail) = Draw(seed, plan);
            study.Add(cause, detail);
        }

        return study;
    }

    /// <summary>A cause by what is held likely, and answers by the tables as the test reads them, each by itself.</summary>
    public static (string Cause, ComplaintDetail Detail) Draw(int seed, ComplaintPlan plan)
    {
        var random = new Random(seed);
        var cause = Pick(random, [.. ComplaintData.Causes.Select(c => (c["cause"], plan.AllAlikeOften ? 1 : ComplaintData.Prior(c["cause"])))]);
        while (true)
        {
            var given = new Dictionary<string, string>(StringComparer.Ordinal);
            for (var i = 0; i < plan.Asked; i++)
            {
                var question = plan.Questions.Count > 0 ? plan.Questions[i] : ComplaintTriage.Of(new ComplaintDetail(given, null)).Next!.Question.Key;
                given[question] = Answer(random, cause, question, plan.Misheard ?? ComplaintData.SlipOf(question));
            }

            var detail = new ComplaintDetail(given, null);
            if (!plan.AskedAgain || ComplaintContradiction.In(detail) is null)
            {
                return (cause, detail);
            }
        }
    }

    private static string Answer(Random random, string cause, string question, double misheard)
    {
        var answers = ComplaintData.Answers(question);
        return random.NextDouble() < misheard ? answers[random.Next(answers.Count)] : Pick(random, [.. answers.Select(a => (a, ComplaintData.Held(cause, question, a)))]);
    }

    private static string Pick(Random random, IReadOnlyList<(string Word, double Weight)> among)
    {
        var at = random.NextDouble() * among.Sum(a => a.Weight);
        foreach (var (word, weight) in among)
        {
            at -= weight;
            if (at < 0)
            {
                return word;
            }
        }

        return among[^1].Word;
    }

    private void Add(string cause, ComplaintDetail detail)
    {
        var outcome = ComplaintTriage.Of(detail);
        var truly = outcome.Causes.Single(c => c.Cause == cause);
        Cases++;
        Right += outcome.Causes[0] == truly ? 1 : 0;
        AmongThree += outcome.Causes.Take(3).Contains(truly) ? 1 : 0;
        Expected += outcome.Causes[0].Probability;
        Bits -= Math.Log2(truly.Probability);
        Dangers = truly.Caution is null ? Dangers : (Dangers.True + 1, Dangers.Named + (outcome.NotExcluded.Contains(truly) ? 1 : 0));
        NotToBeDriven += outcome.NotExcluded.Count > 0 ? 1 : 0;
        Contradictory += ComplaintContradiction.In(detail) is null ? 0 : 1;
        foreach (var held in outcome.Causes)
        {
            var bin = Math.Min(9, (int)(10 * held.Probability));
            _sum[bin] += held.Probability;
            _count[bin]++;
            _true[bin] += held == truly ? 1 : 0;
        }
    }
}
