using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Findings;
using Trundle.Engine.Fixings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Visits.Operations;

/// <summary>A tightening plan in the contract's keys and as lines for a person; the visit's answer holds the same.</summary>
public static class FixingPlanAnswer
{
    /// <summary>For programs.</summary>
    public static JsonObject Json(FixingPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        var fixings = plan.Question.Fixings;
        var json = new JsonObject
        {
            ["count"] = fixings.Count,
            ["torqueNewtonMetres"] = fixings.Torque?.NewtonMetres,
            ["sequence"] = Order(plan.Sequence),
        };
        if (plan.MakerOrder is { } maker)
        {
            json["makerOrder"] = Order(maker);
        }

        json["orderInUse"] = Order(plan.OrderInUse);
        json["imbalance"] = new JsonObject
        {
            ["sequence"] = Judgement(TighteningSequence.Judge(plan.Sequence)),
            ["makerOrder"] = plan.MakerOrder is { } order ? Judgement(TighteningSequence.Judge(order)) : null,
        };
        json["stages"] = AnswerJson.List(plan.Stages.Select(s => (JsonNode?)new JsonObject
        {
            ["percent"] = s.Percent,
            ["torqueNewtonMetres"] = s.Torque?.NewtonMetres,
            ["wrenchSettingNewtonMetres"] = s.WrenchSetting?.NewtonMetres,
            ["wrenchRefused"] = s.Refused,
        }));
        json["direction"] = new JsonObject
        {
            ["tightens"] = plan.Direction.Tightens,
            ["loosens"] = plan.Direction.Loosens,
            ["leftHandSide"] = fixings.LeftHandSide switch { Side.Left => "left", Side.Right => "right", null => null },
        };
        json["wrench"] = plan.Reach is { } reach
            ? new JsonObject { ["deviationPercent"] = reach.WorstPercent, ["off"] = reach.Off, ["leastNewtonMetres"] = reach.Least.NewtonMetres, ["mostNewtonMetres"] = reach.Most.NewtonMetres }
            : null;
        json["engagement"] = Engagement(fixings);
        json["clamp"] = Clamp(plan);
        json["proofLoad"] = AnswerJson.Of(plan.ProofLoad);
        json["reTorque"] = new JsonObject
        {
            ["fromKilometres"] = plan.ReTorque.From.Kilometres,
            ["toKilometres"] = plan.ReTorque.To.Kilometres,
            ["source"] = plan.ReTorque.Source.Text,
            ["status"] = plan.ReTorque.Source.StatusText,
            ["standing"] = AnswerJson.Of(plan.ReTorque.Standing),
        };
        json["findings"] = AnswerJson.List(plan.Findings.Select(f => (JsonNode?)AnswerJson.Of(f)));
        json["worst"] = FindingSet.Worst(plan.Findings).Word();
        json["cautions"] = AnswerJson.List(plan.Cautions);
        return json;
    }

    /// <summary>For a person.</summary>
    public static IEnumerable<string> Lines(FixingPlan plan)
    {
        ArgumentNullException.ThrowIfNull(plan);
        yield return $"Order       {string.Join(" - ", plan.OrderInUse)}{(plan.MakerOrder is null ? "" : " (the maker's own)")}";
        if (plan.MakerOrder is not null)
        {
            yield return $"            computed: {string.Join(" - ", plan.Sequence)}";
        }

        if (plan.Question.Fixings.LeftHand)
        {
            yield return $"Direction   tighten {plan.Direction.Tightens}, loosen {plan.Direction.Loosens}: left-hand thread";
        }
        else if (plan.Question.Fixings.LeftHandSide is { } side)
        {
            yield return $"Direction   left-hand threads on the {(side == Side.Left ? "left" : "right")} side: there tighten anticlockwise; the other side clockwise";
        }

        foreach (var stage in plan.Stages)
        {
            yield return $"Stage       {Quantity.Number(stage.Percent, 0),3} %  {StageText(stage, plan.Question.Adapter is not null)}";
        }

        if (plan.Reach is { } reach)
        {
            yield return $"Wrench      last check {reach.WorstPercent.ToString("+0.0;-0.0;0.0", CultureInfo.InvariantCulture)} % at the farthest: the fixing gets {reach.Least.Text("N·m", 1)} to {reach.Most.Text("N·m", 1)}";
        }

        foreach (var limit in LeastEngagement.Of(plan.Question.Fixings))
        {
            yield return $"Engagement  {plan.Question.Fixings.Engagement!.Text}, at least {limit.Least.Amount.Text} [{limit.Least.Source.ForPeople}]{(limit.Breached ? ": TOO LITTLE" : "")}";
        }

        if (plan.Clamp is { } clamp)
        {
            yield return $"Clamp       {clamp.Low.Text("kN", 1)} to {clamp.High.Text("kN", 1)}, nominal {clamp.Nominal.Nominal.Text("kN", 1)} (nut factor {Quantity.Number(clamp.Nominal.NutFactor, 3)}) [{ClampRange.Source.ForPeople}]";
        }

        if (plan.ProofLoad is { } proof)
        {
            var share = plan.Clamp is { } c ? $", of which the nominal clamp is {Quantity.Number(100 * (c.Nominal.Nominal.Kilonewtons / proof.Amount.Value!.Value), 0)} %" : "";
            yield return $"Proof load  {proof.Amount.Text}{share} [{proof.Source.ForPeople}]";
        }

        yield return $"Re-torque   after {Quantity.Number(plan.ReTorque.From.Kilometres, 0)} to {plan.ReTorque.To.Text("km", 0)}{(plan.ReTorque.Standing is { } standing ? $", or after {standing.Amount.Text} where it only stands" : "")} [{plan.ReTorque.Source.ForPeople}]";
        foreach (var line in AnswerJson.Lines(plan.Findings))
        {
            yield return line;
        }

        foreach (var caution in plan.Cautions)
        {
            yield return $"Caution: {caution}";
        }
    }

    private static string StageText(TighteningStage stage, bool lengthened)
    {
        if (stage is { Torque: { } wanted, Refused: { } refused })
        {
            return $"{wanted.Text("N·m", 1)} ({wanted.Text("lbf·ft", 1)}) at the fixing, and not with this wrench: {refused}";
        }

        if (stage is not { Torque: { } torque, WrenchSetting: { } setting })
        {
            return "torque not given";
        }

        var text = $"{torque.Text("N·m", 1)} ({torque.Text("lbf·ft", 1)})";
        return lengthened ? $"{text} at the fixing: set the wrench to {setting.Text("N·m", 1)} ({setting.Text("lbf·ft", 1)})" : text;
    }

    private static JsonObject? Engagement(FixingSet fixings) => fixings.Engagement is not { } engagement ? null : new JsonObject
    {
        ["text"] = engagement.Text,
        ["lengthMillimetres"] = engagement.On(fixings.Thread)?.Millimetres,
        ["turns"] = engagement.Turns ?? (fixings.Thread is { } thread ? engagement.Measured!.Value / thread.Pitch : null),
        ["least"] = AnswerJson.List(LeastEngagement.Of(fixings).Select(l => (JsonNode?)new JsonObject { ["rule"] = l.Rule, ["breached"] = l.Breached, ["limit"] = AnswerJson.Of(l.Least) })),
    };

    private static JsonArray Order(IEnumerable<int> order) => AnswerJson.List(order.Select(n => (JsonNode?)JsonValue.Create(n)));

    private static JsonObject Judgement(SequenceJudgement judgement) => new()
    {
        ["greatest"] = judgement.GreatestImbalance,
        ["sum"] = judgement.SumOfImbalances,
        ["leastMove"] = judgement.LeastMove,
        ["oppositesAlternate"] = judgement.OppositesAlternate,
    };

    private static JsonObject? Clamp(FixingPlan plan)
    {
        if (plan.Clamp is not { } clamp)
        {
            return null;
        }

        var proof = plan.ProofLoad?.Amount.Value;
        return new JsonObject
        {
            ["lowKilonewtons"] = clamp.Low.Kilonewtons,
            ["nominalKilonewtons"] = clamp.Nominal.Nominal.Kilonewtons,
            ["highKilonewtons"] = clamp.High.Kilonewtons,
            ["proofLoadKilonewtons"] = proof,
            ["proofLoadShare"] = proof is { } p
                ? new JsonObject { ["low"] = clamp.Low.Kilonewtons / p, ["nominal"] = clamp.Nominal.Nominal.Kilonewtons / p, ["high"] = clamp.High.Kilonewtons / p }
                : null,
            ["nutFactor"] = clamp.Nominal.NutFactor,
            ["assumed"] = AnswerJson.List(clamp.Assumed),
            ["cases"] = AnswerJson.List(clamp.Cases.Select(c => (JsonNode?)new JsonObject
            {
                ["seat"] = c.Seat is { } seat ? SeatWord(seat) : null,
                ["condition"] = c.Condition == ThreadCondition.Dry ? "dry" : "oiled",
                ["nutFactor"] = c.NutFactor,
                ["lowKilonewtons"] = c.Low.Kilonewtons,
                ["nominalKilonewtons"] = c.Nominal.Kilonewtons,
                ["highKilonewtons"] = c.High.Kilonewtons,
            })),
            ["source"] = ClampRange.Source.Text,
            ["status"] = ClampRange.Source.StatusText,
        };
    }

    private static string SeatWord(SeatShape seat) => seat switch
    {
        SeatShape.Cone => "cone",
        SeatShape.Ball => "ball",
        SeatShape.Flat => "flat",
    };
}
