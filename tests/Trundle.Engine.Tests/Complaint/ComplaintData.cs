using System.Globalization;
using Trundle.Engine.Complaint;
using Trundle.Engine.Tests.Balance.Oracle.Why;

namespace Trundle.Engine.Tests.Complaint;

/// <summary>The engine's tables of complaints, read from the files themselves.</summary>
internal static class ComplaintData
{
    public const double Slip = 0.05;

    /// <summary>What is tried in two gears is misheard more seldom.</summary>
    public static double SlipOf(string question) => question == "follows" ? 0.01 : Slip;

    private static readonly List<Dictionary<string, string>> AnswerRows = WhyPriors.RowsOf(At("complaint_answers.csv"));

    public static IReadOnlyList<Dictionary<string, string>> Causes { get; } = WhyPriors.RowsOf(At("complaint_causes.csv"));

    public static IReadOnlyList<string> Questions { get; } = [.. AnswerRows.Select(r => r["question"]).Distinct()];

    public static string AllText { get; } = string.Concat(new[] { "complaint_causes.csv", "complaint_answers.csv", "complaint_contradictions.csv" }.Select(f => File.ReadAllText(At(f))));

    /// <summary>Of each question and answer the weight of every cause.</summary>
    private static readonly Dictionary<string, Dictionary<string, Dictionary<string, double>>> RowsOf = AnswerRows.GroupBy(r => r["question"]).ToDictionary(
        g => g.Key, g => g.ToDictionary(r => r["answer"], r => Causes.ToDictionary(c => c["cause"], c => Number(r[c["cause"]]))));

    private static readonly Dictionary<string, IReadOnlyList<string>> AnswersOf = AnswerRows.GroupBy(r => r["question"]).ToDictionary(g => g.Key, g => (IReadOnlyList<string>)[.. g.Select(r => r["answer"])]);

    public static IReadOnlyList<string> Answers(string question) => AnswersOf[question];

    public static double Prior(string cause) => Number(Causes.Single(c => c["cause"] == cause)["prior"]) / Causes.Sum(c => Number(c["prior"]));

    /// <summary>How often a question is answered so, a part misheard.</summary>
    public static double Likelihood(string cause, string question, string answer) => ((1 - SlipOf(question)) * Held(cause, question, answer)) + (SlipOf(question) / Answers(question).Count);

    /// <summary>How often a question is answered so where nothing is misheard.</summary>
    public static double Held(string cause, string question, string answer)
    {
        var rows = RowsOf[question];
        return rows[answer].GetValueOrDefault(cause) / rows.Values.Sum(r => r.GetValueOrDefault(cause));
    }

    public static ComplaintDetail Said(params string[] answers) =>
        new(answers.Select(a => a.Split('=')).ToDictionary(a => a[0], a => a[1], StringComparer.Ordinal), null);

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    private static string At(string name) => Path.Combine(WhyPriors.Root, "src", "Trundle.Engine", "Complaint", name);
}
