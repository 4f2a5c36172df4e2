using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Complaint;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary><c>complaint FILE</c>: what a complaint may come of by what the driver says, what to look at first and what to ask next, before any instrument.</summary>
public static class ComplaintOperation
{
    /// <summary>What stands beside every answer.</summary>
    public const string Hint = "This goes by what was said alone: it orders what to look at, and says of nothing that it is sound.";

    private const double WorthNaming = 0.02;

    private const double Telling = 1.15;

    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new(
        "complaint",
        "What a complaint may come of by speed, place, braking and drive; what to look at first and what to ask next.",
        Run)
    {
        TakesFile = true,
    };

    /// <summary>Reads a visit's file and answers.</summary>
    public static Reading<Answer> Run(FileNode body)
    {
        ArgumentNullException.ThrowIfNull(body);
        var problems = new List<Problem>();
        var file = VisitFileReader.Read(body, problems);
        if (problems.Count == 0 && file.Subject.Vehicle.ComplaintDetail is not { Given.Count: > 0 } and not { At: not null })
        {
            problems.Add(new Problem("vehicle.complaintDetail", "missing", "'vehicle.complaintDetail' is missing or empty: write what the driver says, for example {\"kind\": \"shake\", \"speed\": \"band\", \"felt\": \"steering-wheel\"}."));
        }

        return problems.Count > 0 ? AnswerJson.Wrong(problems) : Reading<Answer>.Of(Of(ComplaintTriage.Of(file.Subject.Vehicle.ComplaintDetail!)));
    }

    /// <summary>The answer to what was said. While a cause that may not be driven with is not excluded, it is a 'no'.</summary>
    public static Answer Of(ComplaintOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        var body = new JsonObject
        {
            ["causes"] = AnswerJson.List(outcome.Causes.Select(c => (JsonNode?)new JsonObject
            {
                ["cause"] = c.Cause,
                ["text"] = c.Text,
                ["probability"] = c.Probability,
                ["prior"] = c.Prior,
                ["evidence"] = AnswerJson.List(c.Evidence.Select(e => (JsonNode?)new JsonObject { ["question"] = e.Question, ["answer"] = e.Text, ["times"] = e.Times })),
                ["check"] = c.Check,
                ["doNotDrive"] = c.Caution is not null,
                ["caution"] = c.Caution,
                ["source"] = c.Source.Text,
                ["status"] = c.Source.StatusText,
            })),
            ["notExcluded"] = AnswerJson.List(outcome.NotExcluded.Select(c => c.Cause)),
            ["doNotDrive"] = outcome.NotExcluded.Count > 0,
            ["look"] = AnswerJson.List(outcome.Look.Select(c => (JsonNode?)new JsonObject { ["cause"] = c.Cause, ["check"] = c.Check })),
            ["next"] = outcome.Next is { } next
                ? new JsonObject
                {
                    ["question"] = next.Question.Key,
                    ["text"] = next.Question.Text,
                    ["answers"] = AnswerJson.List(next.Question.Choices.Select(c => (JsonNode?)new JsonObject { ["answer"] = c.Key, ["text"] = c.Text })),
                    ["bits"] = next.Bits,
                }
                : null,
            ["cautions"] = AnswerJson.List(Cautions(outcome)),
        };
        return new Answer(outcome.NotExcluded.Count > 0, body, [.. Lines(outcome)]);
    }

    /// <summary>Safety first, then what this answer is.</summary>
    public static IEnumerable<string> Cautions(ComplaintOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        foreach (var cause in outcome.NotExcluded)
        {
            yield return $"Not excluded ({WearAnswer.Percent(cause.Probability)}): {cause.Caution}.";
        }

        yield return Hint;
    }

    /// <summary>The likeliest causes in one line.</summary>
    public static string InOneLine(ComplaintOutcome outcome)
    {
        ArgumentNullException.ThrowIfNull(outcome);
        return $"{string.Join(", ", outcome.Causes.Take(3).Select(c => $"{c.Text} {WearAnswer.Percent(c.Probability)}"))}."
            + (outcome.NotExcluded.Count == 0 ? "" : $" Not to be driven before these were looked at: {string.Join("; ", outcome.NotExcluded.Select(c => $"{c.Text} ({WearAnswer.Percent(c.Probability)})"))}.");
    }

    /// <summary>The strongest evidence for and against a cause, in words and numbers: how many times likelier an answer is with it than with any complaint.</summary>
    public static string Evidence(ComplaintCause cause)
    {
        ArgumentNullException.ThrowIfNull(cause);
        var telling = cause.Evidence.Where(e => Math.Abs(Math.Log(e.Times)) > Math.Log(Telling)).Take(3)
            .Select(e => string.Create(CultureInfo.InvariantCulture, $"{e.Text}: {(e.Times >= 1 ? e.Times : 1 / e.Times):0.0} times {(e.Times >= 1 ? "likelier" : "less likely")} with it")).ToList();
        return telling.Count == 0 ? "no answer speaks for or against it" : string.Join("; ", telling);
    }

    private static IEnumerable<string> Lines(ComplaintOutcome outcome)
    {
        foreach (var cause in outcome.NotExcluded)
        {
            yield return $"Caution: not excluded ({WearAnswer.Percent(cause.Probability)}): {cause.Caution}.";
        }

        foreach (var cause in outcome.Causes.Where(c => c.Probability >= WorthNaming))
        {
            yield return $"{WearAnswer.Percent(cause.Probability),9}  {cause.Text}: {Evidence(cause)} [{cause.Source.ForPeople}]";
        }

        foreach (var (cause, i) in outcome.Look.Select((c, i) => (c, i + 1)))
        {
            yield return string.Create(CultureInfo.InvariantCulture, $"Look {i}: {cause.Check}.");
        }

        if (outcome.Next is { } next)
        {
            yield return $"Ask next: {next.Question.Text} ({string.Join("; ", next.Question.Choices.Select(c => $"{c.Key}: {c.Text}"))})";
        }

        yield return Hint;
    }
}
