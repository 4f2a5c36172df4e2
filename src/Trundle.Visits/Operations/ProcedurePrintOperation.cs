using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Procedures;

namespace Trundle.Visits.Operations;

/// <summary><c>procedure print</c>: the carried procedure as a file, from which a workshop writes its own.</summary>
public static class ProcedurePrintOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new("procedure print", "The carried procedure as a file, to write a workshop's own from.", Run)
    {
        Options = [new OperationOption("--part", "part", $"One part as it is carried, in place of the whole: {ChoiceText.Of(Parts())}.")],
    };

    private static Reading<Answer> Run(FileNode body)
    {
        var problems = new List<Problem>();
        var file = new FileObject(body, problems);
        var part = file.Word("part", [.. Parts().Select((p, i) => (p, i))]) is { } index ? Parts().ElementAt(index) : null;
        file.Done();
        if (problems.Count > 0)
        {
            return AnswerJson.Wrong(problems);
        }

        var json = part is null ? ProcedureText.Whole(Procedure.BuiltIn) : JsonNode.Parse(BuiltInProcedure.TextOf(part))!.AsObject();
        return Reading<Answer>.Of(new Answer(false, json, ProcedureText.Text(json).Split('\n')));
    }

    private static IEnumerable<string> Parts() => BuiltInProcedure.Files.Select(f => f.Part!);
}
