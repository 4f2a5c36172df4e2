using System.Globalization;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;

namespace Trundle.Engine.Practice.Standards;

/// <summary>Where a task stands in an open occupational standard.</summary>
/// <param name="Body">Who issues it.</param>
/// <param name="Code">Its code.</param>
/// <param name="Edition">Its edition, or that it is not known.</param>
/// <param name="Source">What of it was read, and how.</param>
public sealed record StandardCode(string Body, string Code, string Edition, Source Source);

/// <summary>A task of the trade, in our own sentence.</summary>
/// <param name="Key">Its name in rows.</param>
/// <param name="Words">What is shown.</param>
/// <param name="Priority">1, 2 or 3: how great a share of such tasks a trainee has to show.</param>
/// <param name="SecondSignature">It lifts or inflates: a row needs a second signature.</param>
/// <param name="Steps">The steps of the built-in procedure at which work on a visit shows it.</param>
/// <param name="Source">Where the priority comes from.</param>
/// <param name="Codes">Where it stands in open standards.</param>
public sealed record PracticeTask(string Key, string Words, int Priority, bool SecondSignature, IReadOnlyList<string> Steps, Source Source, IReadOnlyList<StandardCode> Codes);

/// <summary>The share of the tasks of a priority that has to be shown.</summary>
/// <param name="Priority">1, 2 or 3.</param>
/// <param name="Percent">The share.</param>
/// <param name="Source">Which standard asks for it.</param>
public sealed record AskedShare(int Priority, double Percent, Source Source)
{
    /// <summary>How many tasks of so many that is.</summary>
    public int Of(int tasks) => (int)Math.Ceiling((tasks * Percent / 100) - 1e-9);
}

/// <summary>The tasks and the shares that are asked (<c>practice_tasks.csv</c>, <c>practice_task_codes.csv</c>, <c>practice_shares.csv</c>).</summary>
public static class PracticeTasks
{
    /// <summary>Every task.</summary>
    public static IReadOnlyList<PracticeTask> List { get; } = LoadTasks();

    /// <summary>The share of each priority.</summary>
    public static IReadOnlyList<AskedShare> Shares { get; } = LoadShares();

    /// <summary>The task of a key, or null.</summary>
    /// <source>each task names its own</source>
    public static PracticeTask? Of(string key) => List.FirstOrDefault(t => t.Key == key);

    private static PracticeTask[] LoadTasks()
    {
        var codes = CsvTable.Embedded("practice_task_codes.csv");
        var byTask = codes.Rows.ToLookup(r => codes.Cell(r, "task"), r => new StandardCode(codes.Cell(r, "body"), codes.Cell(r, "code"), codes.Cell(r, "edition"), SourceOf(codes, r)), StringComparer.Ordinal);
        var table = CsvTable.Embedded("practice_tasks.csv");
        return [.. table.Rows.Select(r => new PracticeTask(
            table.Cell(r, "task"),
            table.Cell(r, "words"),
            int.Parse(table.Cell(r, "priority"), CultureInfo.InvariantCulture),
            table.Cell(r, "second-signature") == "yes",
            table.Cell(r, "steps").Split(' ', StringSplitOptions.RemoveEmptyEntries),
            SourceOf(table, r),
            [.. byTask[table.Cell(r, "task")]]))];
    }

    private static AskedShare[] LoadShares()
    {
        var table = CsvTable.Embedded("practice_shares.csv");
        return [.. table.Rows.Select(r => new AskedShare(
            int.Parse(table.Cell(r, "priority"), CultureInfo.InvariantCulture),
            double.Parse(table.Cell(r, "share_percent"), CultureInfo.InvariantCulture),
            SourceOf(table, r)))];
    }

    private static Source SourceOf(CsvTable table, string[] row) => new(table.Cell(row, "source"), Source.StatusOf(table.Cell(row, "status"))!.Value);
}
