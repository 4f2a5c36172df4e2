using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Procedures;

namespace Trundle.Visits.Operations;

/// <summary><c>procedure check</c>: reads a workshop's own procedure and tells what it changes, and what stays though the file leaves it out.</summary>
public static class ProcedureCheckOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new("procedure check", "A workshop's own procedure: what it changes in the carried one, and what stays whatever it says.", Run) { TakesFile = true };

    private static Reading<Answer> Run(FileNode body)
    {
        var problems = new List<Problem>();
        var laid = WorkshopProcedure.Read(body, problems);
        if (problems.Count > 0)
        {
            return AnswerJson.Wrong(problems);
        }

        var steps = laid.Procedure.Steps;
        var json = new JsonObject
        {
            ["name"] = laid.Procedure.Workshop?.Name,
            ["edition"] = laid.Procedure.Workshop?.Edition,
            ["of"] = laid.Procedure.Edition,
            ["changes"] = AnswerJson.List(laid.Changes),
            ["stays"] = AnswerJson.List(laid.Kept),
            ["warnings"] = AnswerJson.List(laid.Warnings.Select(w => (JsonNode?)new JsonObject { ["where"] = w.Where, ["code"] = w.Code, ["message"] = w.Message })),
            ["machines"] = AnswerJson.List(laid.Procedure.Machines.Select(m => (JsonNode?)new JsonObject { ["name"] = m.Name, ["instruction"] = m.Instruction })),
            ["steps"] = AnswerJson.List(steps.Select(s => (JsonNode?)new JsonObject
            {
                ["step"] = s.Id,
                ["leg"] = s.Leg.Key(),
                ["holdPoint"] = s.HoldPoint,
                ["cautions"] = s.Cautions.Count,
                ["when"] = AnswerJson.List(s.When.Select(w => w.Key())),
                ["ofTheWorkshop"] = s.OfTheWorkshop,
            })),
        };
        return Reading<Answer>.Of(new Answer(false, json, [.. Lines(laid)]));
    }

    private static IEnumerable<string> Lines(LaidOver laid)
    {
        var steps = laid.Procedure.Steps;
        yield return string.Create(CultureInfo.InvariantCulture, $"{laid.Procedure.Name}, {laid.Procedure.EditionText}: {steps.Count} steps, {steps.Count(s => s.HoldPoint)} hold points.");
        yield return laid.Changes.Count == 0 ? "The file changes nothing." : "It changes:";
        foreach (var change in laid.Changes)
        {
            yield return $"    {change}";
        }

        foreach (var warning in laid.Warnings)
        {
            yield return $"Read again: {warning.Where}: {warning.Message}";
        }

        foreach (var kept in laid.Kept)
        {
            yield return $"Stays: {kept}";
        }
    }
}
