using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Fixings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary>The answers of every operation that a visit's file has data for, by leg: made by the very operations that the single commands call.</summary>
public sealed class VisitAnswers
{
    private readonly Dictionary<Leg, List<(string Name, JsonNode? Answer)>> _answers = [];

    /// <summary>Asks each operation that has what it needs.</summary>
    public VisitAnswers(FileNode body, VisitState state)
    {
        ArgumentNullException.ThrowIfNull(body);
        ArgumentNullException.ThrowIfNull(state);
        if (state.Arrived.Fitted.Count > 0)
        {
            Ask(Leg.LookOver, "fitment", "fitment", body);
            if (state.Arrived.Rules is not null)
            {
                Ask(Leg.LookOver, "inspect", "inspect", body);
            }

            Ask(Leg.Plan, "pressure", "pressure", body);
            Ask(Leg.Plan, "rotate", "rotate", body);
        }

        Replacement(body);

        if (state.Arrived.Vehicle.ComplaintDetail is { Given.Count: > 0 } or { At: not null })
        {
            Ask(Leg.LookOver, "complaint", "complaint", body);
        }

        Balance(state);
        Studies(state);
        Fixings(state);
    }

    /// <summary>What kept an operation from answering, or null.</summary>
    public Problem? Problem { get; private set; }

    /// <summary>True where a balance does not meet its tolerance, or a torque would stretch a thread past its proof load.</summary>
    public bool AnyNo { get; private set; }

    /// <summary>The answers on a leg.</summary>
    public IReadOnlyList<(string Name, JsonNode? Answer)> On(Leg leg) => _answers.GetValueOrDefault(leg, []);

    /// <summary>The answer of a name on a leg, or null.</summary>
    public JsonNode? Of(Leg leg, string name) => On(leg).FirstOrDefault(a => a.Name == name).Answer;

    /// <summary>Each wheel that has a balance part, with the tyre that is on it now: a setting that contradicts the marking or the stamp is said.</summary>
    private void Balance(VisitState state)
    {
        var onWheels = LeavingVehicle.WithRenewals(state.Arrived, state.Work);
        var solved = new JsonObject();
        foreach (var (position, node) in state.Entered.Balance.OrderBy(b => b.Key.ToString(), StringComparer.Ordinal))
        {
            var problems = new List<Problem>();
            if (BalanceFileReader.Read(node, onWheels.At(position), problems) is { } file && problems.Count == 0)
            {
                var answer = BalanceSolveOperation.Answer(file);
                solved[position.ToString()] = answer.Body;
                AnyNo |= answer.No;
            }
            else
            {
                Problem ??= problems.FirstOrDefault();
            }
        }

        if (solved.Count > 0)
        {
            Add(Leg.OffTheCar, "balance", solved);
        }
    }

    /// <summary>What was looked into at a wheel. One that cannot be answered yet says why, and keeps nothing else from being answered.</summary>
    private void Studies(VisitState state)
    {
        foreach (var (key, operation) in WheelStudies.All)
        {
            var answered = new JsonObject();
            foreach (var ((position, _), node) in state.Entered.Studies.Where(s => s.Key.Key == key).OrderBy(s => s.Key.At.ToString(), StringComparer.Ordinal))
            {
                var answer = OperationList.Of(operation).Run(node);
                answered[position.ToString()] = answer.IsRead ? answer.Value.Body : NotAnswered(answer.Problem!);
            }

            if (answered.Count > 0)
            {
                Add(Leg.OffTheCar, key, answered);
            }
        }
    }

    /// <summary>Which sizes may stand in, where the file asks. It is asked before anything is fitted, so it keeps nothing else from being answered.</summary>
    private void Replacement(FileNode body)
    {
        if (body.Member("replace") is not { Kind: not NodeKind.Null })
        {
            return;
        }

        var answer = OperationList.Of("replace").Run(body);
        Add(Leg.Plan, "replace", answer.IsRead ? answer.Value.Body : NotAnswered(answer.Problem!));
        AnyNo |= answer is { IsRead: true, Value: { No: true } no } && no.Body["chosen"] is not null;
    }

    private static JsonObject NotAnswered(Problem problem) =>
        new() { ["notAnswered"] = new JsonObject { ["code"] = problem.Code, ["where"] = problem.Where, ["message"] = problem.Message } };

    private void Fixings(VisitState state)
    {
        var axles = new JsonArray();
        for (var i = 0; i < state.Arrived.Vehicle.Axles.Count; i++)
        {
            if (FixingsBody(state.Arrived.Vehicle.Axles[i].Fixings, state.Arrived.Vehicle.VehicleClass, state.Work.Used("torqueWrench")?.Wrench) is not { } fixings)
            {
                continue;
            }

            var answer = OperationList.Of("fixings").Run(FileNode.From(fixings));
            if (answer.IsRead)
            {
                var json = answer.Value.Body;
                json.Insert(0, "axle", i + 1);
                axles.Add((JsonNode?)json);
                AnyNo |= answer.Value.No;
            }
            else
            {
                Problem ??= answer.Problem!.At(string.Create(CultureInfo.InvariantCulture, $"vehicle.axles[{i}].fixings.{answer.Problem!.Where}"));
            }
        }

        Add(Leg.Refit, "fixings", axles);
        var tightened = state.Work.Tightening.OrderBy(t => t.Key.ToString(), StringComparer.Ordinal).SelectMany(t => t.Value.Torques.Select(s => (JsonNode?)new JsonObject
        {
            ["at"] = t.Key.ToString(),
            ["stage"] = s.Stage + 1,
            ["percent"] = t.Value.Stages.ElementAtOrDefault(s.Stage)?.Percent,
            ["torquesNewtonMetres"] = new JsonObject(s.Torques.OrderBy(f => f.Key).Select(f => KeyValuePair.Create(f.Key.ToString(CultureInfo.InvariantCulture), (JsonNode?)f.Value.NewtonMetres))),
            ["wrench"] = s.Wrench,
            ["by"] = s.By,
        })).ToList();
        if (tightened.Count > 0)
        {
            Add(Leg.Refit, "tightening", AnswerJson.List(tightened));
        }
    }

    /// <summary>The body of the <c>fixings</c> operation for the fixings of an axle, or null where their number is not known.</summary>
    public static JsonObject? FixingsBody(FixingSet? fixings, string vehicleClass, TorqueWrench? wrench = null)
    {
        if (fixings?.Count is not { } count)
        {
            return null;
        }

        var body = new JsonObject { ["count"] = count.ToString(CultureInfo.InvariantCulture), ["leftHand"] = fixings.LeftHand, ["class"] = vehicleClass };
        Put("torque", fixings.Torque is { } torque ? string.Create(CultureInfo.InvariantCulture, $"{torque.NewtonMetres} N·m") : null);
        Put("thread", fixings.Thread?.Text);
        Put("propertyClass", fixings.PropertyClass);
        Put("seat", fixings.Seat switch { SeatShape.Cone => "cone", SeatShape.Ball => "ball", SeatShape.Flat => "flat", null => null });
        Put("condition", fixings.Condition switch { ThreadCondition.Dry => "dry", ThreadCondition.Oiled => "oiled", null => null });
        Put("wrenchLeast", Exact(wrench?.Least));
        Put("wrenchMost", Exact(wrench?.Most));
        if (wrench is { DeviationPercents.Count: > 0 })
        {
            body["wrenchDeviation"] = AnswerJson.List(wrench.DeviationPercents.Select(d => d.ToString(CultureInfo.InvariantCulture)));
        }

        Put("reTorqueFrom", Road(fixings.ReTorque?.From));
        Put("reTorqueTo", Road(fixings.ReTorque?.To));
        Put("leftHandSide", fixings.LeftHandSide switch { Side.Left => "left", Side.Right => "right", null => null });
        Put("engagement", fixings.Engagement?.Exact);
        Put("leastEngagement", fixings.LeastEngagement?.Exact);
        Put("seatState", fixings.SeatWorn ? "worn" : null);
        Put("seatAngle", fixings.Form?.ConeAngle is { } angle ? string.Create(CultureInfo.InvariantCulture, $"{angle.Degrees}°") : null);
        Put("ballRadius", fixings.Form?.BallRadius is { } ball ? string.Create(CultureInfo.InvariantCulture, $"{ball.Millimetres} mm") : null);
        if (fixings.Order.Count > 0)
        {
            body["order"] = AnswerJson.List(fixings.Order.Select(n => n.ToString(CultureInfo.InvariantCulture)));
        }

        return body;

        static string? Road(Length? distance) => distance is { } d ? string.Create(CultureInfo.InvariantCulture, $"{d.Kilometres} km") : null;

        static string? Exact(Torque? torque) => torque is { } t ? string.Create(CultureInfo.InvariantCulture, $"{t.NewtonMetres} N·m") : null;

        void Put(string key, string? value)
        {
            if (value is not null)
            {
                body[key] = value;
            }
        }
    }

    private void Ask(Leg leg, string name, string operation, FileNode body)
    {
        var answer = OperationList.Of(operation).Run(body);
        if (answer.IsRead)
        {
            Add(leg, name, answer.Value.Body);
        }
        else
        {
            Problem ??= answer.Problem;
        }
    }

    private void Add(Leg leg, string name, JsonNode answer)
    {
        if (!_answers.TryGetValue(leg, out var list))
        {
            _answers[leg] = list = [];
        }

        list.Add((name, answer));
    }
}
