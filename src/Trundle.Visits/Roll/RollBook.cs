using Trundle.Engine.Practice.Standards;
using Trundle.Measures;

namespace Trundle.Visits.Roll;

/// <summary>The roll's rows: they are added and never changed.</summary>
/// <param name="Rows">In the order in which they were added.</param>
public sealed record RollBook(IReadOnlyList<AttemptRow> Rows)
{
    /// <summary>Nothing yet.</summary>
    public static RollBook Empty { get; } = new([]);

    /// <summary>Adds a row.</summary>
    /// <param name="row">The row.</param>
    /// <returns>The longer book, or why the row is not taken.</returns>
    public Reading<RollBook> Add(AttemptRow row)
    {
        ArgumentNullException.ThrowIfNull(row);
        return Lacks(row) is { } problem ? Reading<RollBook>.Failed(problem) : Reading<RollBook>.Of(new RollBook([.. Rows, row]));
    }

    /// <summary>The number of a learner's next attempt at a task.</summary>
    public int NextNumber(string learner, string task) => Rows.Count(r => r.Learner == learner && r.Task == task && r.Decides is null) + 1;

    /// <summary>A learner's own rows: all that a trainee is shown.</summary>
    public RollBook Of(string learner) => new([.. Rows.Where(r => r.Learner == learner)]);

    private Problem? Lacks(AttemptRow row)
    {
        if (PracticeTasks.Of(row.Task) is not { } task)
        {
            return new Problem("task", "task-unknown", $"'{NumberText.Shown(row.Task)}' is no task of the list.");
        }

        if (Rows.Any(r => r.Id == row.Id))
        {
            return new Problem("id", "row-twice", "This row is in the roll already; rows are not changed: add a new one that names it.");
        }

        if (row.Decides is { } decided)
        {
            if (Rows.FirstOrDefault(r => r.Id == decided) is not { } attempt || attempt.Learner != row.Learner || attempt.Task != row.Task || attempt.Number != row.Number || row.Decision == AttemptDecision.Open)
            {
                return new Problem("decides", "decides-unknown", "A decision names an attempt of this learner at this task, and decides.");
            }
        }
        else if (row.Number != NextNumber(row.Learner, row.Task))
        {
            return new Problem("number", "number-not-next", $"Attempt {row.Number} is not the next one of {row.Learner} at this task: that is {NextNumber(row.Learner, row.Task)}.");
        }

        if (row.Again is { } again && !Rows.Any(r => r.Id == again && r.Learner == row.Learner && r.Task == row.Task))
        {
            return new Problem("again", "again-unknown", "The row that this one assesses again is not a row of this learner at this task.");
        }

        if (row.Decision == AttemptDecision.Open)
        {
            return null;
        }

        if (row.Assessor is null || row.Signature?.By != row.Assessor)
        {
            return new Problem("signature", "not-signed", "A decision is the assessor's act: it carries the assessor's own signature.");
        }

        return row.Assessor == row.Learner ? new Problem("assessor", "own-assessor", "Nobody assesses their own attempt.")
            : row.Decision == AttemptDecision.Satisfactory ? LacksToBeSatisfactory(row, task)
            : null;
    }

    private static Problem? LacksToBeSatisfactory(AttemptRow row, PracticeTask task)
    {
        if (row.SafetyStop is { } stop)
        {
            return new Problem("decision", "safety-stop", $"An attempt that ended for safety is not satisfactory: {stop}");
        }

        if (row.Criteria.FirstOrDefault(c => !c.Met) is { } missed)
        {
            return new Problem("decision", "criterion-not-met", $"A criterion is not met: {missed.Words}");
        }

        if (row.Mode == AttemptMode.ThirdParty && row.Visit is null)
        {
            return new Problem("visit", "not-tied", "What somebody else tells must be tied to the very wheels: name the visit.");
        }

        return task.SecondSignature && row.Mode != AttemptMode.Simulated && (row.SecondSignature is not { } second || second.By == row.Assessor || second.By == row.Learner)
            ? new Problem("secondSignature", "second-signature", "Lifting, demounting and first inflation carry a second signature, of somebody else than assessor and learner.")
            : null;
    }
}
