using System.Text.Json.Nodes;
using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;

namespace Trundle.Visits.Operations;

/// <summary>The verdicts of an inspection: each tyre, wheel, valve and sensor, and each damage by itself.</summary>
public static class VerdictAnswer
{
    /// <summary><c>[{position, part, verdict, reasons, asked, cautions, damage}]</c>.</summary>
    public static JsonArray Of(IReadOnlyList<PartVerdict> verdicts)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        return AnswerJson.List(verdicts.Select(v => (JsonNode?)new JsonObject
        {
            ["position"] = v.Position.ToString(),
            ["part"] = v.Part.Word(),
            ["verdict"] = v.Verdict.Word(),
            ["heldBy"] = v.HeldBy?.Rule,
            ["reasons"] = Reasons(v.Reasons, v),
            ["asked"] = Asked(v.Asked),
            ["cautions"] = AnswerJson.List(v.Cautions),
            ["damage"] = AnswerJson.List(v.Damage.Select(d => (JsonNode?)new JsonObject
            {
                ["index"] = d.Index,
                ["what"] = d.What,
                ["verdict"] = d.Verdict.Word(),
                ["reasons"] = Reasons(d.Reasons, v),
                ["asked"] = Asked(d.Asked),
            })),
        }));
    }

    /// <summary>For a person: what may run in one line, all else with its gravest reason and what is asked for.</summary>
    public static IEnumerable<string> Lines(IReadOnlyList<PartVerdict> verdicts)
    {
        ArgumentNullException.ThrowIfNull(verdicts);
        foreach (var v in verdicts.Where(v => v.Verdict != Verdict.MayRun))
        {
            yield return $"{v.Verdict.Word(),-9} {v.Position.ToString(),-7} {v.Part.Word()}: {string.Join("; ", v.Reasons.Where(r => Verdicts.Of(r, v.Part, v.Rules) == v.Verdict).Select(r => $"{r.Rule} ({r.Category.Word()}), {FindingWords.Of(r)}").Distinct())}";
            if (v.Asked.Count > 0)
            {
                yield return $"          Asked for: {string.Join("; ", v.Asked.Select(n => n.What))}.";
            }
        }

        foreach (var group in verdicts.Where(v => v.Verdict == Verdict.MayRun).GroupBy(v => v.Part))
        {
            yield return $"may run   {group.Key.Word()}: {string.Join(", ", group.Select(v => v.Position))} (by what was entered)";
        }
    }

    private static JsonArray Reasons(IReadOnlyList<Finding> reasons, PartVerdict part) => AnswerJson.List(reasons.Select(f =>
    {
        var json = AnswerJson.Of(f);
        json.Insert(1, "verdict", Verdicts.Of(f, part.Part, part.Rules)!.Value.Word());
        return (JsonNode?)json;
    }));

    private static JsonArray Asked(IReadOnlyList<Need> asked) => AnswerJson.List(asked.Select(n => (JsonNode?)new JsonObject { ["what"] = n.What, ["why"] = n.Why }));
}
