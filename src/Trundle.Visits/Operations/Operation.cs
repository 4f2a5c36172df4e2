using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary>What an operation answers: the same whether the command, the HTTP interface, the bay or the sheet asked.</summary>
/// <param name="No">True where the answer is 'no' (a finding of refer, major or dangerous, a tolerance not met): exit status 1.</param>
/// <param name="Body">The answer for programs, in the contract's keys.</param>
/// <param name="ForPeople">The answer as lines of text for a person, with units, limits, sources and cautions.</param>
public sealed record Answer(bool No, JsonObject Body, IReadOnlyList<string> ForPeople)
{
    /// <summary>The answer for programs, in the contract's keys, its numbers as <see cref="AnswerNumbers"/> writes them.</summary>
    public JsonObject Body { get; } = AnswerNumbers.Plain(Body);

    /// <summary>The drawings that come with the answer and need nothing reckoned again; for most operations a page makes them from the body.</summary>
    public Func<IReadOnlyList<Drawing>> Drawings { get; init; } = () => [];
}

/// <summary>An option of a command that stands for a key of the body.</summary>
/// <param name="Name">As typed, with two dashes.</param>
/// <param name="Key">The key of the body that it sets.</param>
/// <param name="About">What it is, with an example.</param>
public sealed record OperationOption(string Name, string Key, string About)
{
    /// <summary>True where the option's text is a list with commas: it becomes a JSON list.</summary>
    public bool IsList { get; init; }

    /// <summary>True where the option names a JSON file: its content becomes the key's value.</summary>
    public bool IsFile { get; init; }

    /// <summary>What is wrong with such a file by itself, before it goes into the body; null where nothing is asked of it.</summary>
    public Func<FileNode, Problem?>? Refuses { get; init; }
}

/// <summary>One computation that can be asked for by the command, by the HTTP interface under /api/v1, and by the bay, with one body.</summary>
/// <param name="Name">The command's words, such as <c>balance solve</c>; the address is the same with a slash.</param>
/// <param name="About">One line for the help.</param>
/// <param name="Run">Reads the body strictly and computes; a problem names its place.</param>
public sealed record Operation(string Name, string About, Func<FileNode, Reading<Answer>> Run)
{
    /// <summary>True where the command takes a FILE (or '-') that is the body; else the body is made of argument and options.</summary>
    public bool TakesFile { get; init; }

    /// <summary>
    /// True where the command's FILE may be a recording itself (CSV or WAV), and where <c>"recording": {"file": "…"}</c> in a JSON file names one beside it:
    /// the command reads it and hands it over as <c>"recording": {"csv": "…"}</c> or <c>{"wav": "…"}</c> in base 64.
    /// </summary>
    public bool TakesRecordings { get; init; }

    /// <summary>The key that the one argument sets, or null where there is none (or the argument is a FILE).</summary>
    public string? ArgumentKey { get; init; }

    /// <summary>Options.</summary>
    public IReadOnlyList<OperationOption> Options { get; init; } = [];
}

/// <summary>Every operation, once.</summary>
public static class OperationList
{
    /// <summary>All operations in the order in which the help lists them.</summary>
    public static IReadOnlyList<Operation> All { get; } =
    [
        PressureOperation.Operation,
        LeakOperation.Operation,
        RotateOperation.Operation,
        ReplaceOperation.Operation,
        FixingsOperation.Operation,
        BalanceSolveOperation.Operation,
        BalanceTrialOperation.Operation,
        BalanceWhyOperation.Operation,
        BalanceToleranceOperation.Operation,
        BalanceCaptureOperation.Operation,
        BalanceCalibrateOperation.Operation,
        BalanceMachineOperation.Operation,
        RunoutOperation.Operation,
        MatchOperation.Operation,
        ComplaintOperation.Operation,
        SidewallOperation.Operation,
        FitmentOperation.Operation,
        InspectOperation.Operation,
        InstrumentCheckOperation.Operation,
        ProcedureCheckOperation.Operation,
        ProcedurePrintOperation.Operation,
        VisitCheckOperation.Operation,
    ];

    /// <summary>The operation of a name; throws where there is none, since that is a mistake in the code.</summary>
    public static Operation Of(string name) => All.First(o => o.Name == name);
}
