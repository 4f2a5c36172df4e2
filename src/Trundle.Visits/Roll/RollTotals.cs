using System.Globalization;
using Trundle.Engine.Practice.Standards;
using Trundle.Visits.Keeping;

namespace Trundle.Visits.Roll;

/// <summary>What a learner has shown of a task.</summary>
public enum TaskStanding
{
    /// <summary>Never tried.</summary>
    NotTried,

    /// <summary>Tried; the assessor's last word was not satisfactory, or there is none.</summary>
    Tried,

    /// <summary>Satisfactory, in practice only.</summary>
    Practised,

    /// <summary>Satisfactory by the hand on a real wheel.</summary>
    Shown,
}

/// <summary>One priority of one learner.</summary>
/// <param name="Share">What is asked.</param>
/// <param name="Tasks">How many tasks there are.</param>
/// <param name="Shown">How many are shown.</param>
public sealed record ShareTotal(AskedShare Share, int Tasks, int Shown)
{
    /// <summary>How many are asked.</summary>
    public int Asked => Share.Of(Tasks);

    /// <summary>How many are left.</summary>
    public int Left => Math.Max(0, Asked - Shown);
}

/// <summary>One learner at a glance.</summary>
/// <param name="Learner">Who.</param>
/// <param name="Standings">By task, in the order of the list.</param>
/// <param name="Shares">By priority.</param>
public sealed record LearnerTotal(string Learner, IReadOnlyList<(PracticeTask Task, TaskStanding Standing)> Standings, IReadOnlyList<ShareTotal> Shares)
{
    /// <summary>Every share is reached.</summary>
    public bool Reached => Shares.All(s => s.Left == 0);
}

/// <summary>Who has shown what, and what is left. Source of the shares: practice_shares.csv.</summary>
public static class RollTotals
{
    /// <summary>The word of a standing.</summary>
    public static string Word(this TaskStanding standing) => standing switch
    {
        TaskStanding.NotTried => "not tried",
        TaskStanding.Tried => "tried",
        TaskStanding.Practised => "practised",
        TaskStanding.Shown => "shown",
    };

    /// <summary>The standing of a learner at a task: an attempt on a real wheel counts before one in practice, and of several the last decision holds.</summary>
    public static TaskStanding Of(RollBook book, string learner, string task)
    {
        ArgumentNullException.ThrowIfNull(book);
        var rows = book.Rows.Where(r => r.Learner == learner && r.Task == task).OrderBy(r => r.Number).ToList();
        return rows.Count == 0 ? TaskStanding.NotTried
            : Last(rows.Where(r => r.Mode != AttemptMode.Simulated)) == AttemptDecision.Satisfactory ? TaskStanding.Shown
            : Last(rows.Where(r => r.Mode == AttemptMode.Simulated)) == AttemptDecision.Satisfactory ? TaskStanding.Practised
            : TaskStanding.Tried;

        static AttemptDecision? Last(IEnumerable<AttemptRow> decided) => decided.LastOrDefault(r => r.Decision != AttemptDecision.Open)?.Decision;
    }

    /// <summary>Each learner, in the order given.</summary>
    public static IReadOnlyList<LearnerTotal> Of(RollBook book, IEnumerable<string> learners)
    {
        ArgumentNullException.ThrowIfNull(learners);
        return [.. learners.Select(learner =>
        {
            List<(PracticeTask Task, TaskStanding Standing)> standings = [.. PracticeTasks.List.Select(t => (t, Of(book, learner, t.Key)))];
            return new LearnerTotal(learner, standings,
            [
                .. PracticeTasks.Shares.Select(s => new ShareTotal(s, standings.Count(t => t.Task.Priority == s.Priority), standings.Count(t => t.Task.Priority == s.Priority && t.Standing == TaskStanding.Shown)))
                    .Where(s => s.Tasks > 0),
            ]);
        })];
    }

    /// <summary>The class as a CSV file: a line for each learner, a column for each task, then what is shown and left of each priority.</summary>
    public static string Csv(IReadOnlyList<LearnerTotal> totals)
    {
        ArgumentNullException.ThrowIfNull(totals);
        var shares = PracticeTasks.Shares.Where(s => PracticeTasks.List.Any(t => t.Priority == s.Priority)).ToList();
        var head = CsvLine.Of([
            "learner",
            .. PracticeTasks.List.Select(t => t.Key),
            .. shares.SelectMany(s => new[] { $"P-{s.Priority} shown", $"P-{s.Priority} asked", $"P-{s.Priority} left" }),
        ]);
        return head + string.Concat(totals.Select(l => CsvLine.Of([
            l.Learner,
            .. l.Standings.Select(s => s.Standing.Word()),
            .. l.Shares.SelectMany(s => new[] { Text(s.Shown), Text(s.Asked), Text(s.Left) }),
        ])));

        static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
    }
}
