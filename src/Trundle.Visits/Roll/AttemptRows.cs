using System.Globalization;
using Trundle.Engine.Practice;
using Trundle.Engine.Practice.Standards;
using Trundle.Visits.Bay;

namespace Trundle.Visits.Roll;

/// <summary>Rows from what was done: a judged attempt in practice, and work on a visit that an instructor signed off.</summary>
public static class AttemptRows
{
    /// <summary>The edition of the built-in task list.</summary>
    public const string Edition = "built-in, 1";

    /// <summary>What an attempt in practice was at, in words.</summary>
    public static string On(PracticeKind kind, ulong seed)
    {
        ArgumentNullException.ThrowIfNull(kind);
        return string.Create(CultureInfo.InvariantCulture, $"{kind.Title}, number {seed}");
    }

    /// <summary>A row from an attempt in practice, open until an assessor decides.</summary>
    /// <param name="book">The roll so far.</param>
    /// <param name="id">The row's own name, made where it was done.</param>
    /// <param name="learner">Who.</param>
    /// <param name="task">The task's key.</param>
    /// <param name="on">The practice wheel's level and seed, or the drill's.</param>
    /// <param name="at">When.</param>
    /// <param name="result">As it was judged.</param>
    public static AttemptRow OfPractice(RollBook book, Guid id, string learner, string task, string on, DateTimeOffset at, PracticeResult result)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(result);
        return new AttemptRow
        {
            Id = id,
            Learner = learner,
            Task = task,
            Edition = Edition,
            Number = book.NextNumber(learner, task),
            At = at,
            On = on,
            Mode = AttemptMode.Simulated,
            Points = result.Score,
            Measures = [.. result.Parts.Where(p => p.Found is not null).Select(p => new AttemptMeasure(p.Criterion.Words, p.Found!.Text, p.Required?.Amount.Text ?? ""))],
            Criteria = [.. result.Parts.Where(p => p.Criterion.MustBeMet).Select(p => new AttemptCriterion(p.Criterion.Words, p.Met))],
            SafetyStop = result.Stop?.Why,
            Feedback = string.Join(" ", result.Parts.Where(p => !p.Met).Select(p => p.Feedback)),
        };
    }

    /// <summary>A row in which an assessor decides an attempt.</summary>
    /// <param name="attempt">The attempt.</param>
    /// <param name="id">The row's own name.</param>
    /// <param name="satisfactory">What was decided.</param>
    /// <param name="feedback">What to do differently.</param>
    /// <param name="signature">The assessor's signature.</param>
    public static AttemptRow Deciding(AttemptRow attempt, Guid id, bool satisfactory, string feedback, AttemptSignature signature)
    {
        ArgumentNullException.ThrowIfNull(attempt);
        ArgumentNullException.ThrowIfNull(signature);
        return attempt with
        {
            Id = id,
            Decides = attempt.Id,
            Assessor = signature.By,
            Decision = satisfactory ? AttemptDecision.Satisfactory : AttemptDecision.NotYet,
            Feedback = feedback,
            Signature = signature,
        };
    }

    /// <summary>A row from a trainee's work at a step of a visit that an instructor looked at; null where the step shows no task, or nobody who may signed.</summary>
    /// <param name="book">The roll so far.</param>
    /// <param name="id">The row's own name.</param>
    /// <param name="visit">The visit.</param>
    /// <param name="on">The vehicle and the wheel, in words.</param>
    /// <param name="step">The step's key in the procedure.</param>
    /// <param name="trainee">Who recorded the step.</param>
    /// <param name="signed">What the instructor said.</param>
    /// <param name="second">The second signature, where the task needs one.</param>
    public static AttemptRow? OfVisit(RollBook book, Guid id, Guid visit, string on, string step, TraineeStep trainee, SignedOff signed, AttemptSignature? second)
    {
        ArgumentNullException.ThrowIfNull(book);
        ArgumentNullException.ThrowIfNull(trainee);
        ArgumentNullException.ThrowIfNull(signed);
        if (!signed.Counts || signed.At is not { } at || PracticeTasks.List.FirstOrDefault(t => t.Steps.Contains(step)) is not { } task)
        {
            return null;
        }

        return new AttemptRow
        {
            Id = id,
            Learner = trainee.By,
            Task = task.Key,
            Edition = Edition,
            Number = book.NextNumber(trainee.By, task.Key),
            At = trainee.At ?? at,
            On = string.Create(CultureInfo.InvariantCulture, $"{on}, {step}"),
            Mode = AttemptMode.Observed,
            Visit = visit,
            Criteria = [new AttemptCriterion(task.Words, signed.Satisfactory)],
            Assessor = signed.By,
            Decision = signed.Satisfactory ? AttemptDecision.Satisfactory : AttemptDecision.NotYet,
            Feedback = signed.Note ?? "",
            Signature = new AttemptSignature(signed.By!, at),
            SecondSignature = second,
        };
    }
}
