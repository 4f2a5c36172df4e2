using System.Text.Json.Nodes;
using Trundle.Engine;
using Trundle.Engine.Findings;
using Trundle.Engine.Instruments;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Instruments;

namespace Trundle.Visits.Operations;

/// <summary>One whole visit: everything that its file has data for, by leg, with what stops hand-back.</summary>
public static class VisitCheckOperation
{
    /// <summary>The operation.</summary>
    public static Operation Operation { get; } = new("visit check", "One whole visit: everything that its file has data for, by leg, and what stops hand-back.", Run)
    {
        TakesFile = true,
        Options = [CheckAnswer.RulesOption, CheckAnswer.ShopRulesOption],
    };

    /// <summary>Reads a visit's file and answers by leg.</summary>
    public static Reading<Answer> Run(FileNode body)
    {
        ArgumentNullException.ThrowIfNull(body);
        var problems = new List<Problem>();
        var state = VisitStanding.Of(body, problems);
        if (problems.Count > 0)
        {
            return AnswerJson.Wrong(problems);
        }

        var answers = new VisitAnswers(body, state);
        if (answers.Problem is { } problem)
        {
            return Reading<Answer>.Failed(problem);
        }

        var legs = new JsonObject();
        foreach (var leg in state.Legs)
        {
            var json = new JsonObject
            {
                ["done"] = leg.Done,
                ["needs"] = AnswerJson.List(leg.Needs.Select(n => (JsonNode?)new JsonObject { ["position"] = n.Position, ["field"] = n.Field, ["what"] = n.What, ["why"] = n.Why })),
            };
            if (leg.Steps.Count > 0)
            {
                json["steps"] = AnswerJson.List(leg.Steps.Select(s => (JsonNode?)new JsonObject
                {
                    ["step"] = s.Step.Id,
                    ["at"] = s.At,
                    ["standing"] = Word(s.Standing),
                    ["holdPoint"] = s.Step.HoldPoint,
                    ["why"] = s.Why,
                }));
            }

            foreach (var (name, answer) in answers.On(leg.Leg))
            {
                json[name] = answer;
            }

            legs[leg.Leg.Key()] = json;
        }

        var worst = FindingSet.Worst(state.LeavingFindings);
        var result = new JsonObject
        {
            ["vehicle"] = state.Arrived.Vehicle.Name,
            ["number"] = state.Work.Number,
            ["legs"] = legs,
            ["findings"] = AnswerJson.List(state.LeavingFindings.Select(f => (JsonNode?)AnswerJson.Of(f))),
            ["worst"] = worst.Word(),
            ["handBack"] = new JsonObject
            {
                ["mayLeave"] = state.MayLeave,
                ["handedBack"] = state.HandedBack,
                ["note"] = SignatureNote(state),
                ["by"] = state.Work.HandedBackBy,
                ["stops"] = AnswerJson.List(state.Stops.Select(s => (JsonNode?)new JsonObject { ["leg"] = s.Leg.Key(), ["position"] = s.Position, ["what"] = s.What, ["why"] = s.Why, ["decision"] = s.DecisionKey })),
            },
            ["procedure"] = new JsonObject { ["edition"] = state.Work.Procedure.Edition, ["workshopEdition"] = state.Work.Procedure.Workshop?.Edition },
            ["repairs"] = AnswerJson.List(state.Work.Repairs.OrderBy(r => r.Key.ToString(), StringComparer.Ordinal).Select(r => (JsonNode?)Repair(r.Key.ToString(), RepairJudge.OnVisit(state, r.Key)?.Verdict))),
            ["procedureLeftOut"] = AnswerJson.List(state.Work.Procedure.LeftOut),
            ["decisionsWithoutFinding"] = AnswerJson.List(DecisionNotes.Of(state).Select(n => (JsonNode?)new JsonObject { ["key"] = n.Key, ["nearest"] = n.Nearest, ["note"] = n.Text })),
            ["reTorque"] = Json(ReTorqueDue.Of(state)),
            ["instruments"] = AnswerJson.List(state.Work.Instruments.Select(i => (JsonNode?)new JsonObject
            {
                ["use"] = i.Use.Key,
                ["kind"] = i.Use.Kind.Word(),
                ["name"] = i.Name,
                ["verdict"] = i.Verdict?.Word(),
                ["checked"] = InstrumentJson.Day(i.Checked),
                ["due"] = InstrumentJson.Day(i.Due),
            })),
            ["notFinallyTightened"] = AnswerJson.List(state.NotTightened.Select(p => p.ToString())),
            ["engineVersion"] = EngineVersion.Engine,
            ["tableEdition"] = EngineVersion.Tables,
        };

        foreach (var (key, paper) in VisitPaperAnswer.Of(state))
        {
            result[key] = paper;
        }

        // A bare file of data, with no work recorded, is judged by its findings alone; a visit in work also by what stops it.
        var inWork = body.Member("work") is not null;
        return Reading<Answer>.Of(new Answer(worst >= Category.Refer || answers.AnyNo || (inWork && !state.MayLeave), result, [.. Lines(state)]));
    }

    private static JsonObject? Json(ReTorqueDue? due) => due is null ? null : new JsonObject
    {
        ["wheels"] = AnswerJson.List(due.Wheels.Select(w => w.ToString())),
        ["fromKilometres"] = due.After.From.Kilometres,
        ["toKilometres"] = due.After.To.Kilometres,
        ["standing"] = AnswerJson.Of(due.After.Standing),
        ["fromOdometerKilometres"] = due.From?.Kilometres,
        ["toOdometerKilometres"] = due.To?.Kilometres,
        ["askOn"] = InstrumentJson.Day(due.AskOn),
        ["source"] = due.After.Source.Text,
        ["status"] = due.After.Source.StatusText,
        ["open"] = due.IsOpen,
        ["done"] = due.Done is not { } done ? null : new JsonObject
        {
            ["on"] = InstrumentJson.Day(done.On),
            ["odometerKilometres"] = done.Odometer?.Kilometres,
            ["result"] = ReTorqueRecord.Results[done.Turned ? 1 : 0],
            ["wrench"] = done.Wrench,
            ["by"] = done.By,
            ["torquesNewtonMetres"] = new JsonObject(done.Torques.Select(w => KeyValuePair.Create(w.Key.ToString(), (JsonNode?)new JsonObject(w.Value.Select(t => KeyValuePair.Create(t.Key.ToString(System.Globalization.CultureInfo.InvariantCulture), (JsonNode?)t.Value.NewtonMetres)))))),
        },
    };

    private static JsonObject Repair(string at, RepairVerdict? verdict) => new()
    {
        ["position"] = at,
        ["mayBeRepaired"] = verdict?.MayBeRepaired ?? false,
        ["refused"] = AnswerJson.List(verdict?.Refused ?? []),
        ["missing"] = AnswerJson.List(verdict?.Missing.Select(m => m.What) ?? []),
        ["cautions"] = AnswerJson.List(verdict?.Cautions ?? []),
    };

    private static string Word(StepStanding standing) => standing switch
    {
        StepStanding.Open => "open",
        StepStanding.Passed => "passed",
        StepStanding.Failed => "failed",
    };

    /// <summary>Why a signature that stands there hands nothing back, or null.</summary>
    private static string? SignatureNote(VisitState state) => state.Work.HandedBackBy is { } by && !VisitState.Signed(state.Work)
        ? $"The signature of {by} does not hand the vehicle back: a technician, an instructor or the owner signs, with the role beside the name."
        : null;

    private static IEnumerable<string> Lines(VisitState state)
    {
        yield return $"{state.Arrived.Vehicle.Name ?? "Vehicle"}{(state.Work.Number is { } number ? $", visit {number}" : "")}";
        foreach (var line in VisitPaperAnswer.Lines(state))
        {
            yield return line;
        }

        foreach (var leg in state.Legs)
        {
            yield return $"{(leg.Done ? "✓" : leg.Leg == state.Current ? "▸" : " ")} {leg.Leg.Title(),-12} {VisitStanding.Line(state, leg.Leg)}";
            foreach (var need in leg.Needs)
            {
                yield return $"    needs: {need.What}{(need.Why is null ? "" : $" ({need.Why})")}";
            }
        }

        yield return "";
        foreach (var line in AnswerJson.Lines([.. state.LeavingFindings.Where(f => f.Category > Category.None)]))
        {
            yield return line;
        }

        foreach (var leftOut in state.Work.Procedure.LeftOut)
        {
            yield return $"Caution: {leftOut}";
        }

        foreach (var note in DecisionNotes.Of(state))
        {
            yield return $"Note: {note.Text}";
        }

        yield return state.MayLeave ? state.HandedBack ? $"Handed back by {state.Work.HandedBackBy}." : "Nothing stops hand-back." : "Hand-back is stopped by:";
        if (SignatureNote(state) is { } signature)
        {
            yield return $"Note: {signature}";
        }

        foreach (var stop in state.Stops)
        {
            yield return $"    {stop.Leg.Title()}{(stop.Position is null ? "" : $", {stop.Position}")}: {stop.What}. {stop.Why}";
        }
    }
}
