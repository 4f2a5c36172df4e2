using System.Text.Json.Nodes;
using Trundle.Engine.Practice;

namespace Trundle.Visits.Roll;

/// <summary>An attempt in practice as it is kept: what was done, and how it was judged then. A later engine changes nothing of it.</summary>
public static class AttemptJson
{
    /// <summary>As kept.</summary>
    public static string Of(PracticeAttempt attempt, AttemptRow row, string engine)
    {
        ArgumentNullException.ThrowIfNull(attempt);
        ArgumentNullException.ThrowIfNull(row);
        return new JsonObject
        {
            ["kind"] = attempt.Kind,
            ["seed"] = attempt.Seed,
            ["day"] = attempt.Day.ToString("yyyy-MM-dd", System.Globalization.CultureInfo.InvariantCulture),
            ["acts"] = new JsonArray([.. attempt.Acts.Select(a => (JsonNode?)a)]),
            ["engine"] = engine,
            ["learner"] = row.Learner,
            ["task"] = row.Task,
            ["edition"] = row.Edition,
            ["on"] = row.On,
            ["points"] = row.Points,
            ["stop"] = row.SafetyStop,
            ["feedback"] = row.Feedback,
            ["criteria"] = new JsonArray([.. row.Criteria.Select(c => (JsonNode?)new JsonObject { ["words"] = c.Words, ["met"] = c.Met })]),
            ["measures"] = new JsonArray([.. row.Measures.Select(m => (JsonNode?)new JsonObject { ["what"] = m.What, ["measured"] = m.Measured, ["required"] = m.Required })]),
        }.ToJsonString();
    }

    /// <summary>The row of what was kept.</summary>
    /// <param name="body">As it was kept.</param>
    /// <param name="id">The row.</param>
    /// <param name="number">Which attempt of this learner at this task.</param>
    /// <param name="at">When it was taken.</param>
    public static AttemptRow Row(string body, Guid id, int number, DateTimeOffset at)
    {
        var json = JsonNode.Parse(body)!.AsObject();
        return new AttemptRow
        {
            Id = id,
            Learner = Text(json, "learner"),
            Task = Text(json, "task"),
            Edition = Text(json, "edition"),
            Number = number,
            At = at,
            On = Text(json, "on"),
            Mode = AttemptMode.Simulated,
            Points = json["points"]?.GetValue<int>(),
            SafetyStop = json["stop"]?.GetValue<string>(),
            Feedback = Text(json, "feedback"),
            Criteria = [.. json["criteria"]!.AsArray().Select(c => new AttemptCriterion(Text(c!, "words"), c!["met"]!.GetValue<bool>()))],
            Measures = [.. json["measures"]!.AsArray().Select(m => new AttemptMeasure(Text(m!, "what"), Text(m!, "measured"), Text(m!, "required")))],
        };
    }

    /// <summary>A decision as kept.</summary>
    public static string Of(AttemptRow decision)
    {
        ArgumentNullException.ThrowIfNull(decision);
        return new JsonObject { ["satisfactory"] = decision.Decision == AttemptDecision.Satisfactory, ["feedback"] = decision.Feedback, ["assessor"] = decision.Assessor }.ToJsonString();
    }

    /// <summary>The row of a decision that was kept.</summary>
    public static AttemptRow Decision(string body, AttemptRow attempt, Guid id, DateTimeOffset at)
    {
        var json = JsonNode.Parse(body)!.AsObject();
        return AttemptRows.Deciding(attempt, id, json["satisfactory"]!.GetValue<bool>(), Text(json, "feedback"), new AttemptSignature(Text(json, "assessor"), at));
    }

    private static string Text(JsonNode json, string key) => json[key]?.GetValue<string>() ?? "";
}
