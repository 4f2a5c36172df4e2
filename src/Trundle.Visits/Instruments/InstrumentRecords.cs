using System.Text.Json.Nodes;
using Trundle.Engine.Instruments;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Visits.Instruments;

/// <summary>A record as reckoned: what is kept beside what was typed.</summary>
/// <param name="Operation">Which operation reckoned it, or null where nothing is reckoned.</param>
/// <param name="Answer">Its answer, or null.</param>
/// <param name="Figures">The answer in lines for a person.</param>
/// <param name="Verdict">What it says, or null where it is no check.</param>
public sealed record ReckonedRecord(string? Operation, JsonObject? Answer, IReadOnlyList<string> Figures, InstrumentVerdict? Verdict);

/// <summary>Which records an instrument may have, and how each is read and reckoned.</summary>
public static class InstrumentRecords
{
    /// <summary>The most characters of a record's body.</summary>
    public const int MostCharacters = 60_000;

    private const string MachineOperation = "balance machine";

    /// <summary>The records that may be added to an instrument of a kind: a balancer's own tests only where this program reckons them.</summary>
    public static IReadOnlyList<InstrumentRecordKind> Offered(InstrumentKind kind)
    {
        var balancer = kind == InstrumentKind.Balancer;
        var machine = balancer && OperationOf(InstrumentRecordKind.MachineCheck) is not null;
        return kind.IsInspected() ? [InstrumentRecordKind.Inspection, InstrumentRecordKind.Note] :
        [
            .. machine ? new[] { InstrumentRecordKind.MachineCheck, InstrumentRecordKind.RepeatSpins } : [],
            InstrumentRecordKind.OutsideCalibration,
            .. balancer ? Array.Empty<InstrumentRecordKind>() : [InstrumentRecordKind.Comparison],
            InstrumentRecordKind.Note,
        ];
    }

    /// <summary>Reads a record's body strictly and reckons it.</summary>
    /// <param name="kind">What the record is about.</param>
    /// <param name="body">As typed, as JSON.</param>
    /// <param name="of">What it is a record of: a balancer's profile and a wrench's scale are read each in its own way.</param>
    /// <returns>What is kept, or the problem with its place in the body.</returns>
    public static Reading<ReckonedRecord> Reckon(InstrumentRecordKind kind, string body, InstrumentKind of = InstrumentKind.Balancer)
    {
        ArgumentNullException.ThrowIfNull(body);
        return body.Length > MostCharacters
            ? Reading<ReckonedRecord>.Failed(new Problem("body", "too-long", $"A record has at most {MostCharacters} characters."))
            : FileNode.Parse(body, "body").Then(root => kind.IsCheck() ? Check(kind, root) : Told(kind, root, of));
    }

    /// <summary>A check: reckoned by its operation.</summary>
    private static Reading<ReckonedRecord> Check(InstrumentRecordKind kind, FileNode root) =>
        OperationOf(kind) is { } operation
            ? operation.Run(root).Then(answer => Reading<ReckonedRecord>.Of(new ReckonedRecord(operation.Name, answer.Body, answer.ForPeople, VerdictOf(answer))))
            : Reading<ReckonedRecord>.Failed(new Problem("kind", "not-offered", $"This program cannot reckon a {kind.Word()}."));

    /// <summary>What is told and not reckoned.</summary>
    private static Reading<ReckonedRecord> Told(InstrumentRecordKind kind, FileNode root, InstrumentKind of)
    {
        var problems = new List<Problem>();
        var o = new FileObject(root, problems);
        IReadOnlyList<string> figures = [];
        if (kind == InstrumentRecordKind.Profile && of == InstrumentKind.TorqueWrench)
        {
            FixingsOperation.ReadWrench(o, "least", "most");
            o.Done();
        }
        else if (kind == InstrumentRecordKind.Profile)
        {
            BalanceFileReader.ReadProfile(o, out _);
        }
        else if (kind == InstrumentRecordKind.Details)
        {
            o.Knows("name", "identification", "inUseFrom", "outOfUseFrom");
            o.Done();
        }
        else
        {
            if (o.Require("text", "say what is worth knowing") && o.Text("text") is { } text)
            {
                figures = [text];
            }

            o.Done();
        }

        return problems.Count == 0
            ? Reading<ReckonedRecord>.Of(new ReckonedRecord(null, null, figures, null))
            : Reading<ReckonedRecord>.Failed(problems[0]);
    }

    private static Operation? OperationOf(InstrumentRecordKind kind) => kind switch
    {
        InstrumentRecordKind.OutsideCalibration or InstrumentRecordKind.Comparison or InstrumentRecordKind.Inspection => InstrumentCheckOperation.Operation,
        InstrumentRecordKind.MachineCheck or InstrumentRecordKind.RepeatSpins => OperationList.All.FirstOrDefault(o => o.Name == MachineOperation),
        _ => null,
    };

    /// <summary>The answer's own verdict; where its word is none of ours, whether the answer is 'no'.</summary>
    private static InstrumentVerdict VerdictOf(Answer answer) =>
        InstrumentVerdictWords.Of(answer.Body["verdict"] is JsonValue value && value.TryGetValue<string>(out var word) ? word : null)
        ?? (answer.No ? InstrumentVerdict.Failed : InstrumentVerdict.NotJudged);
}
