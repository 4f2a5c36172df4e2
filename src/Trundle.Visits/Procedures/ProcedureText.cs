using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using Trundle.Visits.Bay;

namespace Trundle.Visits.Procedures;

/// <summary>Writes a procedure in the form in which it is read.</summary>
public static class ProcedureText
{
    private static readonly JsonSerializerOptions Written = new() { Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping, WriteIndented = true };

    /// <summary>The whole procedure as a workshop's file: as it stands it changes nothing, and what is changed in it becomes the workshop's own.</summary>
    public static JsonObject Whole(Procedure procedure)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        var json = new JsonObject { ["name"] = procedure.Workshop?.Name ?? procedure.Name, ["of"] = procedure.Edition };
        if (procedure.Machines.Count > 0)
        {
            json["machines"] = new JsonArray([.. procedure.Machines.Select(m => (JsonNode?)new JsonObject { ["name"] = m.Name, ["instruction"] = m.Instruction })]);
        }

        var before = "";
        var steps = new JsonArray();
        foreach (var step in procedure.Steps)
        {
            steps.Add((JsonNode)Of(step, Procedure.BuiltIn.Find(step.Id) is null ? before : null));
            before = step.Id;
        }

        json["steps"] = steps;
        return json;
    }

    /// <summary>What a workshop's file says that the carried procedure does not: what a visit takes along.</summary>
    public static JsonObject OwnOnly(Procedure procedure)
    {
        ArgumentNullException.ThrowIfNull(procedure);
        var json = Whole(procedure);
        if (procedure.Workshop is { } own)
        {
            json["name"] = own.Name;
            json["edition"] = own.Edition;
        }
        else
        {
            json.Remove("name");
        }

        var steps = new JsonArray([.. procedure.Steps.Where(s => s.OfTheWorkshop).Select(s => Procedure.BuiltIn.Find(s.Id) is { } carried ? Difference(carried, s) : json["steps"]!.AsArray().First(n => n!["id"]!.GetValue<string>() == s.Id)!.DeepClone())]);
        if (steps.Count > 0)
        {
            json["steps"] = steps;
        }
        else
        {
            json.Remove("steps");
        }

        return json;
    }

    /// <summary>As text, line by line.</summary>
    public static string Text(JsonObject json)
    {
        ArgumentNullException.ThrowIfNull(json);
        return json.ToJsonString(Written);
    }

    private static JsonObject Of(ProcedureStep step, string? after)
    {
        var json = new JsonObject { ["id"] = step.Id };
        Put("after", after);
        json["leg"] = step.Leg.Key();
        json["at"] = step.PerWheel ? "wheel" : "vehicle";
        Put("job", step.Job == WheelJob.OffAndOn ? null : PartFileReader.JobWords.First(w => w.Value == step.Job).Word);
        List("when", step.When.Select(w => (JsonNode?)w.Key()));
        json["title"] = step.Title;
        json["text"] = step.Text;
        List("also", step.Also.Select(Sentence));
        Put("why", step.Why);
        List("tools", step.Tools.Select(t => (JsonNode?)t));
        List("cautions", step.Cautions.Select(Sentence));
        Flag("machine", step.AtMachine);
        Put("enter", step.Entry == StepEntry.Confirm ? null : PartFileReader.EntryWords.First(w => w.Value == step.Entry).Word);
        List("choices", step.Choices.Select(c => (JsonNode?)c));
        List("passing", step.Passing.Select(c => (JsonNode?)c));
        Put("stop", step.Stop);
        Flag("hold", step.HoldPoint);
        Put("act", step.Act?.Key());
        return json;

        void Put(string key, string? text)
        {
            if (!string.IsNullOrEmpty(text))
            {
                json[key] = text;
            }
        }

        void Flag(string key, bool so)
        {
            if (so)
            {
                json[key] = true;
            }
        }

        void List(string key, IEnumerable<JsonNode?> items)
        {
            JsonArray list = [.. items];
            if (list.Count > 0)
            {
                json[key] = list;
            }
        }
    }

    private static JsonObject Difference(ProcedureStep carried, ProcedureStep own)
    {
        var (was, now) = (Of(carried, null), Of(own, null));
        var json = new JsonObject { ["id"] = own.Id };
        foreach (var (key, value) in now.Where(p => p.Key != "id" && !JsonNode.DeepEquals(p.Value, was[p.Key])))
        {
            json[key] = value is JsonArray all && was[key] is JsonArray old && key is "also" or "cautions"
                ? new JsonArray([.. now[key]!.AsArray().Where(n => !was[key]!.AsArray().Any(o => JsonNode.DeepEquals(o, n))).Select(n => n!.DeepClone())])
                : value?.DeepClone();
        }

        return json;
    }

    private static JsonNode? Sentence(StepSentence sentence) => sentence.When.Count == 0
        ? JsonValue.Create(sentence.Text)
        : new JsonObject { ["text"] = sentence.Text, ["when"] = new JsonArray([.. sentence.When.Select(w => (JsonNode?)w.Key())]) };
}
