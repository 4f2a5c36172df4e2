using System.Text.Json.Nodes;
using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Visits.Operations;

/// <summary>The contract's forms of what every answer is made of. Output numbers are not rounded.</summary>
public static class AnswerJson
{
    /// <summary><c>{value, unit, text}</c>.</summary>
    public static JsonObject Of(Amount amount)
    {
        ArgumentNullException.ThrowIfNull(amount);
        return new JsonObject { ["value"] = amount.Value, ["unit"] = amount.Unit, ["text"] = amount.Text };
    }

    /// <summary><c>{value, unit, text, source, status}</c>, or null.</summary>
    public static JsonObject? Of(Limit? limit)
    {
        if (limit is null)
        {
            return null;
        }

        var json = Of(limit.Amount);
        json["source"] = limit.Source.Text;
        json["status"] = limit.Source.StatusText;
        return json;
    }

    /// <summary><c>{rule, category, position, measured, limit, source, status, action, cautions}</c>.</summary>
    public static JsonObject Of(Finding finding)
    {
        ArgumentNullException.ThrowIfNull(finding);
        return new JsonObject
        {
            ["rule"] = finding.Rule,
            ["category"] = finding.Category.Word(),
            ["position"] = finding.Position,
            ["measured"] = Of(finding.Measured),
            ["limit"] = Of(finding.Limit),
            ["source"] = finding.Source.Text,
            ["status"] = finding.Source.StatusText,
            ["action"] = finding.Action,
            ["cautions"] = List(finding.Cautions),
        };
    }

    /// <summary>A list of texts.</summary>
    public static JsonArray List(IEnumerable<string> texts) => new([.. texts.Select(t => (JsonNode?)JsonValue.Create(t))]);

    /// <summary>A list of nodes.</summary>
    public static JsonArray List(IEnumerable<JsonNode?> nodes) => new([.. nodes]);

    /// <summary>The findings and the worst of them, as every operation that judges answers.</summary>
    public static JsonObject Findings(IReadOnlyList<Finding> findings) => new()
    {
        ["findings"] = List(findings.Select(f => (JsonNode?)Of(f))),
        ["worst"] = FindingSet.Worst(findings).Word(),
    };

    /// <summary>Findings as lines for a person, gravest first.</summary>
    public static IEnumerable<string> Lines(IReadOnlyList<Finding> findings)
    {
        foreach (var f in findings.OrderByDescending(f => f.Category))
        {
            yield return $"{f.Category.Word(),-9} {f.Position ?? "vehicle",-7} {FindingWords.Of(f)}{(f.Limit is null ? "" : $" ({FindingWords.BeforeLimit(f)} {f.Limit.Amount.Text}{Whose(f)})")}";
            yield return $"          {f.Action} [{f.Source.ForPeople}]";
            foreach (var caution in f.Cautions)
            {
                yield return $"          Caution: {caution}";
            }
        }
    }

    /// <summary>Where a limit comes from, where that is not the rule's own text: a limit from memory is never said as if it were certain.</summary>
    private static string Whose(Finding finding) => finding.Limit is { } limit && limit.Source.Text != finding.Source.Text ? $": {limit.Source.ForPeople}" : "";

    /// <summary>The first problem of a list as a reading that failed.</summary>
    public static Reading<Answer> Wrong(IReadOnlyList<Problem> problems)
    {
        ArgumentNullException.ThrowIfNull(problems);
        return Reading<Answer>.Failed(problems[0]);
    }

    /// <summary>True where the worst of the findings is refer, major or dangerous.</summary>
    public static bool IsNo(IEnumerable<Finding> findings) => FindingSet.Worst(findings) >= Category.Refer;
}
