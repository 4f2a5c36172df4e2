using Trundle.Engine.Reference;

namespace Trundle.Engine.Complaint;

/// <summary>Tells from what the driver says, before any instrument, what a complaint may come of, what to look at and what to ask next.</summary>
public static class ComplaintTriage
{
    /// <summary>
    /// Weighs every cause against the answers, each answer by itself given the cause. A cause that can cost a wheel, a tyre or a brake is named as long
    /// as it is not excluded.
    /// </summary>
    /// <param name="detail">What the driver says; nothing said gives what is held of any complaint.</param>
    /// <returns>Every cause with its probability, which add up to one; what is not excluded; the next question.</returns>
    /// <source>Bayes' theorem with answers independent given the cause; <c>complaint_causes.csv</c> and <c>complaint_answers.csv</c>: own choice, docs/theory/complaint.md</source>
    public static ComplaintOutcome Of(ComplaintDetail detail)
    {
        ArgumentNullException.ThrowIfNull(detail);
        var open = detail.Open();
        var weights = ComplaintTable.Causes.Select(c => c.Prior * open.Aggregate(1.0, (product, said) => product * Likelihood(c, said.Key, said.Value))).ToArray();
        var whole = weights.Sum();
        double[] probabilities = [.. weights.Select(w => w / whole)];
        var any = open.ToDictionary(said => said.Key, said => ComplaintTable.Causes.Sum(c => c.Prior * Likelihood(c, said.Key, said.Value)), StringComparer.Ordinal);
        var causes = ComplaintTable.Causes.Select((c, i) => new ComplaintCause(
            c.Cause,
            c.Text,
            probabilities[i],
            c.Prior,
            [
                .. open.Select(said => new ComplaintEvidence(said.Key, Words(said.Key, said.Value), Likelihood(c, said.Key, said.Value) / any[said.Key]))
                    .OrderByDescending(e => Math.Abs(Math.Log(e.Times))).ThenBy(e => e.Question, StringComparer.Ordinal),
            ],
            c.Check,
            c.Caution.Length > 0 ? c.Caution : null,
            c.Source)).OrderByDescending(c => c.Probability).ToList();
        var least = Figures.Of("complaint.not-excluded").Value / 100;
        return new ComplaintOutcome(causes, [.. causes.Where(c => c.Caution is not null && c.Probability >= least)], Next(open.Keys, probabilities));
    }

    private static double Likelihood(ComplaintCauseRow cause, string question, IReadOnlyList<string> answers) => answers.Sum(a => ComplaintTable.Likelihood(cause.Cause, question, a));

    private static string Words(string question, IReadOnlyList<string> answers) =>
        string.Join(" or ", ComplaintTable.Questions.First(q => q.Key == question).Choices.Where(c => answers.Contains(c.Key)).Select(c => c.Text));

    /// <summary>The question, not answered yet, whose answer is expected to tell most of the cause.</summary>
    private static NextQuestion? Next(IEnumerable<string> answered, double[] probabilities)
    {
        var before = Entropy(probabilities);
        return ComplaintTable.Questions.Where(q => !answered.Contains(q.Key)).Select(q => new NextQuestion(q, before - q.Choices.Sum(choice => Left(q.Key, choice.Key, probabilities)))).MaxBy(n => n.Bits);
    }

    /// <summary>What would be left unknown after an answer, times how likely it is.</summary>
    private static double Left(string question, string answer, double[] probabilities)
    {
        double[] joint = [.. ComplaintTable.Causes.Select((c, i) => probabilities[i] * ComplaintTable.Likelihood(c.Cause, question, answer))];
        var whole = joint.Sum();
        return whole * Entropy([.. joint.Select(j => j / whole)]);
    }

    private static double Entropy(IEnumerable<double> probabilities) => -probabilities.Where(p => p > 0).Sum(p => p * Math.Log2(p));
}
