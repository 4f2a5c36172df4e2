using Trundle.Engine.Complaint;

namespace Trundle.Engine.Tests.Complaint.Oracle;

/// <summary>
/// Probabilities and the next question by counting every possible complaint: the joint table of cause and the answers of five questions at once, written
/// out cell by cell, without Bayes' theorem and without a formula for what a question tells.
/// </summary>
public sealed class ComplaintOracleTests
{
    private static readonly string[] Counted = ["kind", "speed", "felt", "when", "warm"];

    [Theory]
    [InlineData]
    [InlineData("kind=shake")]
    [InlineData("speed=band", "felt=steering-wheel")]
    [InlineData("kind=noise", "when=turning", "warm=grows")]
    public void Probabilities_are_the_parts_of_the_whole_table(params string[] answers)
    {
        var said = answers.Select(a => a.Split('=')).ToDictionary(a => a[0], a => a[1], StringComparer.Ordinal);
        var cells = Cells().Where(c => said.All(s => c.Answers[Array.IndexOf(Counted, s.Key)] == s.Value)).ToList();
        var whole = cells.Sum(c => c.Weight);
        var outcome = ComplaintTriage.Of(ComplaintData.Said(answers));
        outcome.Causes.Sum(c => c.Probability).ShouldBe(1, 1e-9);
        foreach (var cause in outcome.Causes)
        {
            cause.Probability.ShouldBe(cells.Where(c => c.Cause == cause.Cause).Sum(c => c.Weight) / whole, 1e-9, cause.Cause);
        }
    }

    [Fact]
    public void The_next_question_is_the_one_after_which_least_is_left_unknown_on_average()
    {
        // All others answered, so that only the counted questions are left to ask.
        string[] rest = [.. ComplaintData.Questions.Where(q => !Counted.Contains(q)).Select(q => $"{q}={ComplaintData.Answers(q)[0]}")];
        var next = ComplaintTriage.Of(ComplaintData.Said(rest)).Next.ShouldNotBeNull();
        var weighed = Cells().Select(c => (c.Cause, c.Answers, Weight: c.Weight * rest.Select(r => r.Split('=')).Aggregate(1.0, (p, r) => p * ComplaintData.Likelihood(c.Cause, r[0], r[1])))).ToList();
        var whole = weighed.Sum(w => w.Weight);
        var told = Counted.ToDictionary(q => q, q =>
        {
            var (at, bits) = (Array.IndexOf(Counted, q), 0.0);
            foreach (var cell in weighed.GroupBy(w => (w.Cause, Answer: w.Answers[at])))
            {
                var both = cell.Sum(w => w.Weight) / whole;
                var cause = weighed.Where(w => w.Cause == cell.Key.Cause).Sum(w => w.Weight) / whole;
                var answer = weighed.Where(w => w.Answers[at] == cell.Key.Answer).Sum(w => w.Weight) / whole;
                bits += both * Math.Log2(both / (cause * answer));
            }

            return bits;
        }, StringComparer.Ordinal);
        next.Question.Key.ShouldBe(told.MaxBy(t => t.Value).Key);
        next.Bits.ShouldBe(told.Values.Max(), 1e-9);
    }

    private static IEnumerable<(string Cause, string[] Answers, double Weight)> Cells() =>
        from cause in ComplaintData.Causes.Select(c => c["cause"])
        from kind in ComplaintData.Answers("kind")
        from speed in ComplaintData.Answers("speed")
        from felt in ComplaintData.Answers("felt")
        from at in ComplaintData.Answers("when")
        from warm in ComplaintData.Answers("warm")
        select (cause, new[] { kind, speed, felt, at, warm }, Weight: ComplaintData.Prior(cause) * Table[(cause, "kind", kind)] * Table[(cause, "speed", speed)] * Table[(cause, "felt", felt)] * Table[(cause, "when", at)] * Table[(cause, "warm", warm)]);

    private static readonly Dictionary<(string, string, string), double> Table = (
        from cause in ComplaintData.Causes.Select(c => c["cause"])
        from question in Counted
        from answer in ComplaintData.Answers(question)
        select ((cause, question, answer), ComplaintData.Likelihood(cause, question, answer))).ToDictionary(c => c.Item1, c => c.Item2);
}
