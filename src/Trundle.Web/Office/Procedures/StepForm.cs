using System.Text.Json;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Http;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Procedures;

namespace Trundle.Web.Office.Procedures;

/// <summary>One field of the form of a step: a text, or lines of which each is one of a list.</summary>
/// <param name="Key">Its key in the file.</param>
/// <param name="Label">What it is called.</param>
/// <param name="Lines">How many lines are shown.</param>
/// <param name="IsList">Each line is one.</param>
/// <param name="Hint">What helps, or null.</param>
public sealed record StepField(string Key, string Label, int Lines, bool IsList, string? Hint = null);

/// <summary>One step of the procedure in a form, with what stands in it.</summary>
/// <param name="Step">The step that is changed, or behind which a new one stands.</param>
/// <param name="IsNew">A new one.</param>
/// <param name="Typed">What stands in each field.</param>
/// <param name="HoldPoint">It is a hold point.</param>
/// <param name="Problem">What is wrong, or null.</param>
public sealed record StepForm(ProcedureStep Step, bool IsNew, IReadOnlyDictionary<string, string> Typed, bool HoldPoint, Problem? Problem)
{
    /// <summary>The fields of a carried step.</summary>
    private static readonly StepField[] Carried =
    [
        new("title", "Title", 1, false),
        new("text", "What to do", 4, false),
        new("also", "What to do besides", 2, true, "a line each; added to what stands"),
        new("why", "Why", 2, false),
        new("tools", "Tools", 2, true, "a line each"),
        new("cautions", "More cautions", 3, true, "a line each; those of the carried procedure stay above them"),
        new("stop", "What to do where it does not pass", 2, false),
    ];

    /// <summary>What a new one has besides.</summary>
    private static readonly StepField[] OfANew =
    [
        new("id", "Its short name", 1, false, "small letters, digits, dashes: rim-photograph"),
        .. Carried,
        new("choices", "Words to choose from", 3, true, "a line each; none where it is only confirmed"),
        new("passing", "Words that let the work go on", 2, true, "a line each"),
    ];

    /// <summary>The fields that it has.</summary>
    public IReadOnlyList<StepField> Fields => IsNew ? OfANew : Carried;

    /// <summary>What stands in a field.</summary>
    public string this[string key] => Typed.GetValueOrDefault(key, "");

    /// <summary>The problem of a field, or null.</summary>
    public string? Wrong(string key) => Problem is { } p && KeyOf(p.Where) == key ? p.Message : null;

    /// <summary>The problem of the form as a whole, or null.</summary>
    public string? WrongItself => Problem is { } p && Fields.All(f => Wrong(f.Key) is null) ? p.Message : null;

    /// <summary>The form of a step that stands.</summary>
    public static StepForm Of(ProcedureStep step)
    {
        ArgumentNullException.ThrowIfNull(step);
        var carried = Procedure.BuiltIn.Find(step.Id);
        return new StepForm(step, false, new Dictionary<string, string>(StringComparer.Ordinal)
        {
            ["title"] = step.Title,
            ["text"] = step.Text,
            ["also"] = Added(step.Also, carried?.Also),
            ["why"] = step.Why ?? "",
            ["tools"] = string.Join('\n', step.Tools),
            ["cautions"] = Added(step.Cautions, carried?.Cautions),
            ["stop"] = step.Stop ?? "",
        }, step.HoldPoint, null);
    }

    /// <summary>The form of a new step behind another.</summary>
    public static StepForm After(ProcedureStep before) => new(before, true, new Dictionary<string, string>(StringComparer.Ordinal), false, null);

    /// <summary>The form with what was sent; null where it names no step.</summary>
    public static StepForm? Sent(IFormCollection sent, Procedure procedure)
    {
        ArgumentNullException.ThrowIfNull(sent);
        ArgumentNullException.ThrowIfNull(procedure);
        var isNew = sent["new"] == "true";
        return procedure.Find(sent["step"].ToString()) is not { } step ? null
            : (isNew ? After(step) : Of(step)) is var form ? form with { Typed = form.Fields.ToDictionary(f => f.Key, f => sent[f.Key == "id" ? "name" : f.Key].ToString().ReplaceLineEndings("\n").Trim(), StringComparer.Ordinal), HoldPoint = sent["hold"] == "true" || (!isNew && form.HoldPoint && Procedure.BuiltIn.Find(step.Id)?.HoldPoint == true) }
            : null;
    }

    /// <summary>The workshop's file with this step put into it.</summary>
    /// <param name="text">The newest edition, or null where there is none.</param>
    public Reading<string> Into(string? text)
    {
        var file = text is null ? new JsonObject { ["of"] = Procedure.BuiltIn.Edition } : JsonNode.Parse(text)!.AsObject();
        if (IsNew && this["id"].Length > 0 && (Procedure.BuiltIn.Find(this["id"]) is not null || StepsOf(file).Any(s => IdOf(s) == this["id"])))
        {
            return Reading<string>.Failed(new Problem("id", "step-twice", $"There is a step '{this["id"]}' already; give the new one another short name."));
        }

        var steps = file["steps"] as JsonArray;
        if (steps is null)
        {
            file["steps"] = steps = [];
        }

        var id = IsNew ? this["id"] : Step.Id;
        var there = steps.OfType<JsonObject>().FirstOrDefault(s => IdOf(s) == id);
        var made = there ?? new JsonObject { ["id"] = id };
        if (IsNew)
        {
            made["after"] = Step.Id;
        }

        var carried = IsNew ? null : Procedure.BuiltIn.Find(id);
        foreach (var field in Fields.Where(f => f.Key != "id"))
        {
            var typed = this[field.Key];
            var standing = carried is null ? "" : field.Key switch
            {
                "title" => carried.Title,
                "text" => carried.Text,
                "why" => carried.Why ?? "",
                "stop" => carried.Stop ?? "",
                "tools" => string.Join('\n', carried.Tools),
                _ => "",
            };
            if (typed.Length == 0 || typed == standing.ReplaceLineEndings("\n"))
            {
                made.Remove(field.Key);
            }
            else
            {
                made[field.Key] = field.IsList ? new JsonArray([.. typed.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(l => (JsonNode?)Sentence(made, field.Key, l))]) : JsonValue.Create(typed);
            }
        }

        if (IsNew && this["choices"].Length > 0)
        {
            made["enter"] = "choice";
        }

        if (HoldPoint && carried?.HoldPoint != true)
        {
            made["hold"] = true;
        }
        else
        {
            made.Remove("hold");
        }

        if (there is null)
        {
            steps.Add((JsonNode)made);
        }

        return Reading<string>.Of(ProcedureText.Text(file));
    }

    /// <summary>A sentence as it stood in the file, with where it holds, or as typed.</summary>
    private static JsonNode Sentence(JsonObject step, string key, string line) =>
        (step[key] as JsonArray)?.OfType<JsonObject>().FirstOrDefault(s => s["text"]?.GetValueKind() == JsonValueKind.String && s["text"]!.GetValue<string>() == line)?.DeepClone() ?? JsonValue.Create(line);

    private static IEnumerable<JsonObject> StepsOf(JsonObject file) => (file["steps"] as JsonArray)?.OfType<JsonObject>() ?? [];

    private static string? IdOf(JsonObject step) => step["id"] is JsonValue value && value.TryGetValue<string>(out var id) ? id : null;

    private static string Added(IReadOnlyList<StepSentence> now, IReadOnlyList<StepSentence>? carried) =>
        string.Join('\n', now.Where(s => carried?.Any(c => c.Text == s.Text) != true).Select(s => s.Text));

    /// <summary>The key at the end of a place: cautions of steps[3].cautions[0].</summary>
    private static string KeyOf(string where) => where.Split('.')[^1].Split('[')[0] is var last && last == "text" && where.Contains('[', StringComparison.Ordinal) && where.Split('.').Length > 2 ? where.Split('.')[^2].Split('[')[0] : where.Split('.')[^1].Split('[')[0];
}
