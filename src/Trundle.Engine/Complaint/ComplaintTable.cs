using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;

namespace Trundle.Engine.Complaint;

/// <summary>A cause of complaints as the table holds it.</summary>
internal sealed record ComplaintCauseRow(string Cause, double Prior, string Text, string Check, string Caution, Source Source);

/// <summary>The questions, and how often each is answered so where a complaint has a cause: data, in two tables.</summary>
public static class ComplaintTable
{
    /// <summary>How often an answer is misheard; what is tried in two gears more seldom than what is remembered.</summary>
    private static double SlipOf(string question) => Figures.Of(question == "follows" ? "complaint.slip-follows" : "complaint.slip").Value / 100;

    private static readonly Dictionary<(string Cause, string Question), Dictionary<string, double>> Answers = [];

    internal static IReadOnlyList<ComplaintCauseRow> Causes { get; } = LoadCauses();

    /// <summary>Every question, in the order in which they are asked where nothing parts them.</summary>
    public static IReadOnlyList<ComplaintQuestion> Questions { get; } = LoadQuestions();

    /// <summary>How often a question is answered so where the complaint has a cause, mishearing counted in.</summary>
    /// <param name="cause">The cause's word.</param>
    /// <param name="question">The question's key.</param>
    /// <param name="answer">The answer's word.</param>
    /// <returns>A probability; those of all answers of a question add up to one.</returns>
    /// <source><c>complaint_answers.csv</c>: own choice, docs/theory/complaint.md</source>
    public static double Likelihood(string cause, string question, string answer) => Answers[(cause, question)][answer];

    private static List<ComplaintCauseRow> LoadCauses()
    {
        var table = CsvTable.Embedded("complaint_causes.csv");
        var whole = table.Rows.Sum(r => Number(table.Cell(r, "prior")));
        return [.. table.Rows.Select(r => new ComplaintCauseRow(
            table.Cell(r, "cause"),
            Number(table.Cell(r, "prior")) / whole,
            table.Cell(r, "text"),
            table.Cell(r, "check"),
            table.Cell(r, "caution"),
            new Source(table.Cell(r, "source"), Source.StatusOf(table.Cell(r, "status")) ?? throw new InvalidOperationException($"'{table.Cell(r, "status")}' is not a status."))))];
    }

    private static List<ComplaintQuestion> LoadQuestions()
    {
        var table = CsvTable.Embedded("complaint_answers.csv");
        var questions = table.Rows.GroupBy(r => table.Cell(r, "question"), StringComparer.Ordinal).ToList();
        foreach (var question in questions)
        {
            var slip = SlipOf(question.Key);
            foreach (var cause in Causes)
            {
                var whole = question.Sum(r => Number(table.Cell(r, cause.Cause)));
                Answers[(cause.Cause, question.Key)] = question.ToDictionary(
                    r => table.Cell(r, "answer"),
                    r => ((1 - slip) * Number(table.Cell(r, cause.Cause)) / whole) + (slip / question.Count()),
                    StringComparer.Ordinal);
            }
        }

        return [.. questions.Select(q => new ComplaintQuestion(q.Key, table.Cell(q.First(), "asks"), [.. q.Select(r => new ComplaintChoice(table.Cell(r, "answer"), table.Cell(r, "text")))]))];
    }

    private static double Number(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);
}
