using System.Text.Json.Nodes;
using Trundle.Engine.Balance;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary><c>balance solve</c>: from what a balancer shows to the weights that the drawer holds.</summary>
public static class BalanceSolveOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new("balance solve", "The weights to fit, from a balancer's readings and the drawer's stock.", Run) { TakesFile = true };

    /// <summary>The answer for one wheel's part as read; the same for the command, a visit's check, the bay and the sheet.</summary>
    public static Answer Answer(BalanceFile file)
    {
        ArgumentNullException.ThrowIfNull(file);
        var outcome = file.Problem is { } problem ? BalanceSolve.Run(problem) : null;
        var json = outcome is null ? BeforeTheSpin(file) : BalanceJson.Of(file, outcome);
        var findings = AnswerJson.Findings(file.Findings);
        json["findings"] = findings["findings"]!.DeepClone();
        json["worst"] = findings["worst"]!.DeepClone();
        List<string> lines =
        [
            .. AnswerJson.Lines(file.Findings),
            .. outcome is null
                ? [Planes(file.Planes), file.Findings.Count == 0 ? "The settings contradict nothing that is known of this wheel. Spin, and enter the readings." : "Put the settings right before the spin.", .. BalanceDisplayWords.Assumed(file).Select(c => $"Caution: {c}")]
                : BalanceWords.Lines(file, outcome),
        ];
        return new Answer(AnswerJson.IsNo(file.Findings) || outcome is { WithinTolerance: false } or { LengthsBreakTolerance: true }, json, lines);
    }

    private static JsonObject BeforeTheSpin(BalanceFile file) => new()
    {
        ["planes"] = new JsonObject { ["inner"] = BalanceJson.Place(file.Planes.Inner), ["outer"] = BalanceJson.Place(file.Planes.Outer) },
        ["weights"] = null,
        ["residual"] = null,
        ["withinTolerance"] = null,
        ["cautions"] = AnswerJson.List([.. BalanceWords.Cautions, .. BalanceDisplayWords.Assumed(file)]),
    };

    private static string Planes(PlanePair planes) =>
        $"By the settings weights sit at a radius of {planes.Inner.Radius.Text("mm", 1)} inner and {planes.Outer.Radius.Text("mm", 1)} outer, {planes.Apart.Text("mm", 1)} apart.";

    private static Reading<Answer> Run(FileNode body)
    {
        var problems = new List<Problem>();
        if (body.Member("fitted") is not null || body.Member("vehicle") is not null)
        {
            return OfVisit(body, problems);
        }

        var file = BalanceFileReader.Read(body, null, problems);
        return file is null || problems.Count > 0 ? AnswerJson.Wrong(problems) : Reading<Answer>.Of(Answer(file));
    }

    /// <summary>Every wheel of a visit that has a balance part; where there is one only, its keys stand at the top as well.</summary>
    private static Reading<Answer> OfVisit(FileNode body, List<Problem> problems)
    {
        var visit = VisitFileReader.Read(body, problems);
        var files = new List<(Position Position, BalanceFile File)>();
        foreach (var (position, node) in visit.Balance)
        {
            if (BalanceFileReader.Read(node, visit.Subject.At(position), problems) is { } file)
            {
                files.Add((position, file));
            }
        }

        if (problems.Count == 0 && files.Count == 0)
        {
            problems.Add(new Problem("fitted", "missing", "No assembly here has a 'balance' part; add one with planes, readings and stock."));
        }

        if (problems.Count > 0)
        {
            return AnswerJson.Wrong(problems);
        }

        var answers = files.Select(f => (f.Position, Answer: Answer(f.File))).ToList();
        var json = answers.Count == 1 ? (JsonObject)answers[0].Answer.Body.DeepClone() : new JsonObject { ["worst"] = FindingSet.Worst(files.SelectMany(f => f.File.Findings)).Word() };
        json["wheels"] = AnswerJson.List(answers.Select(a =>
        {
            var wheel = (JsonObject)a.Answer.Body.DeepClone();
            wheel["position"] = a.Position.ToString();
            return (JsonNode?)wheel;
        }));
        return Reading<Answer>.Of(new Answer(
            answers.Any(a => a.Answer.No),
            json,
            [.. answers.SelectMany(a => a.Answer.ForPeople.Prepend($"{a.Position}"))]));
    }
}
