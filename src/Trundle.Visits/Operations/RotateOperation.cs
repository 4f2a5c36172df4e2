using System.Text.Json.Nodes;
using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Rotation;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary><c>rotate FILE [--ahead "60000 km"]</c>: the rotation proposed, its moves in order for the lift, every pattern refused with the reason.</summary>
public static class RotateOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new(
        "rotate",
        "The rotation for a vehicle: moves in order for the lift, and every pattern refused with the reason.",
        Run)
    {
        TakesFile = true,
        Options =
        [
            new OperationOption("--ahead", "ahead", "How far to look ahead, for example \"60000 km\"; the file gives the wear rates."),
            CheckAnswer.RulesOption,
            CheckAnswer.ShopRulesOption,
        ],
    };

    /// <summary>Reads a body and answers.</summary>
    public static Reading<Answer> Run(FileNode body)
    {
        ArgumentNullException.ThrowIfNull(body);
        var problems = new List<Problem>();
        var visit = VisitFileReader.Read(body, problems);
        var request = RotationFileReader.Read(body, problems);
        if (problems.Count > 0)
        {
            return AnswerJson.Wrong(problems);
        }

        if (visit.Subject.Fitted.Count == 0)
        {
            return Reading<Answer>.Failed(new Problem("fitted", "missing", "'fitted' is missing: a rotation needs what sits at each position."));
        }

        var plan = RotationPlan.For(visit.Subject);
        if (!plan.IsRead)
        {
            return Reading<Answer>.Failed(plan.Problem!);
        }

        if (request.Ahead is null)
        {
            return Reading<Answer>.Of(Of(plan.Value, visit.Subject.Vehicle, null));
        }

        var ahead = RotationForecast.For(plan.Value, visit.Subject, request);
        return ahead.Then(a => Reading<Answer>.Of(Of(plan.Value, visit.Subject.Vehicle, a)));
    }

    /// <summary>The answer of a plan, with what was looked ahead where that was asked for.</summary>
    public static Answer Of(RotationPlan plan, Vehicle vehicle, RotationForecast? forecast)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(vehicle);
        var chosen = plan.Chosen;
        var cautions = plan.Cautions.Concat(forecast is null ? [] : RotationForecast.Cautions).Distinct(StringComparer.Ordinal).ToList();
        var body = new JsonObject
        {
            ["pattern"] = chosen?.Pattern.Name,
            ["moves"] = AnswerJson.List((chosen?.Moves ?? []).Select(m => (JsonNode?)Move(m))),
            ["refused"] = AnswerJson.List(plan.Refused.Select(v => (JsonNode?)new JsonObject { ["pattern"] = v.Pattern.Name, ["why"] = v.Why, ["reasons"] = AnswerJson.List(v.Refusals.Select(r => Word(r.Reason)).Distinct(StringComparer.Ordinal)) })),
            ["keptOut"] = AnswerJson.List(plan.KeptOut.Select(k => (JsonNode?)new JsonObject
            {
                ["position"] = k.Position.ToString(),
                ["part"] = k.Part.Word(),
                ["reason"] = Word(k.Reason),
                ["why"] = k.Why,
                ["replaceFirst"] = k.ReplaceFirst,
                ["source"] = k.Source.Text,
                ["status"] = k.Source.StatusText,
            })),
            ["why"] = plan.Why,
            ["source"] = chosen?.Pattern.Source.Text,
            ["status"] = chosen?.Pattern.Source.StatusText,
            ["needsMakerDiagram"] = chosen?.Pattern.NeedsMakerDiagram ?? false,
            ["lift"] = AnswerJson.List(plan.Steps.Select(s => (JsonNode?)new JsonObject
            {
                ["do"] = s.Action switch { LiftAction.Off => "off", LiftAction.Move => "move", LiftAction.On => "on" },
                ["from"] = s.From.ToString(),
                ["to"] = s.To.ToString(),
                ["remount"] = s.Remount,
                ["waiting"] = s.Waiting?.ToString(),
                ["words"] = s.Words,
            })),
            ["others"] = AnswerJson.List(plan.Verdicts.Where(v => v.Allowed && !ReferenceEquals(v, chosen)).Select(v => (JsonNode?)new JsonObject { ["pattern"] = v.Pattern.Name, ["use"] = v.Pattern.Use, ["moves"] = AnswerJson.List(v.Moves.Select(m => (JsonNode?)Move(m))) })),
            ["setPressures"] = AnswerJson.List((chosen?.Moves ?? []).OrderBy(m => m.To.IsSpare ? int.MaxValue : m.To.Axle).ThenBy(m => m.To.Side).ThenBy(m => m.To.Dual).Select(m => (JsonNode?)new JsonObject
            {
                ["position"] = m.To.ToString(),
                ["pressureKilopascals"] = vehicle.PlacardAt(m.To)?.Cold?.Kilopascals,
            })),
            ["cautions"] = AnswerJson.List(cautions),
        };
        forecast?.WriteTo(body);
        return new Answer(chosen is null || plan.KeptOut.Count > 0, body, [.. Lines(plan, forecast, cautions)]);
    }

    private static JsonObject Move(RotationMove move) => new() { ["from"] = move.From.ToString(), ["to"] = move.To.ToString(), ["remount"] = move.Remount };

    private static string Word(RefusalReason reason) => reason switch
    {
        RefusalReason.Layout => "layout",
        RefusalReason.NothingFitted => "nothing-fitted",
        RefusalReason.Condemned => "condemned",
        RefusalReason.ReplaceFirst => "replace-first",
        RefusalReason.ReferFirst => "refer-first",
        RefusalReason.TemporarySpare => "temporary-spare",
        RefusalReason.SpareNotAlike => "spare-not-alike",
        RefusalReason.Size => "size",
        RefusalReason.Load => "load",
        RefusalReason.Wheel => "wheel",
        RefusalReason.Construction => "construction",
        RefusalReason.Direction or RefusalReason.DirectionForGood => "direction",
        RefusalReason.MakerSaysNone => "maker-says-none",
    };

    private static IEnumerable<string> Lines(RotationPlan plan, RotationForecast? forecast, List<string> cautions)
    {
        yield return plan.Chosen is { } chosen ? $"Rotation: {chosen.Pattern.Name}. {plan.Why} [{chosen.Pattern.Source.ForPeople}]" : $"No rotation. {plan.Why}";
        foreach (var kept in plan.KeptOut)
        {
            yield return $"Kept out: {kept.Why} [{kept.Source.ForPeople}]";
        }

        var n = 0;
        foreach (var step in plan.Steps)
        {
            yield return $"  {(++n).ToString(System.Globalization.CultureInfo.InvariantCulture),2}. {step.Words}";
        }

        foreach (var refused in plan.Refused)
        {
            yield return $"Refused: {refused.Pattern.Name}. {refused.Why}";
        }

        foreach (var line in forecast?.Lines ?? [])
        {
            yield return line;
        }

        foreach (var caution in cautions)
        {
            yield return $"Caution: {caution}";
        }
    }
}
