using System.Text.Json.Nodes;
using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Sheets;

/// <summary>Gathers a sheet's content from a visit's file, by the operations that <c>visit check</c> asks.</summary>
internal static class SheetContents
{
    /// <summary>Reads and gathers; a problem of the file names its place.</summary>
    public static Reading<SheetContent> Of(FileNode visit, SheetOrder order)
    {
        var problems = new List<Problem>();
        var file = VisitFileReader.Read(visit, problems);
        var state = VisitStanding.Of(file, VisitWorkReader.Read(file, problems), order.Known, []);
        if (problems.Count > 0)
        {
            return Reading<SheetContent>.Failed(problems[0]);
        }

        var answers = new VisitAnswers(visit, state);
        if (answers.Problem is { } problem)
        {
            return Reading<SheetContent>.Failed(problem);
        }

        var units = SheetUnits.Of(order.Units, state.Arrived.Rules);
        var found = Ranked(state.On(Leg.LookOver).Findings.Concat(state.Work.Paper.Seen.Select(s => s.Finding)));
        var leaving = Ranked(state.LeavingFindings);
        var wheels = Wheels(state, answers, leaving, units).ToList();
        var axles = Axles(state, answers).ToList();
        var rotation = answers.Of(Leg.Plan, "rotate") as JsonObject;
        var standIns = answers.Of(Leg.Plan, "replace") as JsonObject;
        var standIn = SheetStandIn.Of(standIns, state, units);
        return Reading<SheetContent>.Of(new SheetContent
        {
            State = state,
            Units = units,
            Texts = order.Texts.Keeping(new[] { state.Arrived.Vehicle.Name, state.Arrived.Vehicle.Complaint, order.Workshop }.OfType<string>()),
            Workshop = order.Workshop,
            Wheels = wheels,
            Axles = axles,
            Found = found,
            Verdicts = InspectionVerdicts.Of(state.Arrived, new CheckResult(found, [])),
            Leaving = leaving,
            Rotation = rotation,
            StandIns = standIns,
            DepthLimit = DepthLimit(found.Concat(leaving)),
            Did = [.. SheetSentences.Did(state, wheels, axles, units, standIn)],
            Watch = [.. SheetSentences.Watch(state, leaving, axles, units, standIn)],
            Next = [.. SheetSentences.Next(state, axles, units, rotation?["pattern"] is not null)],
            Came = [.. SheetPaper.Came(state)],
            CameShort = [.. SheetPaper.CameShort(state)],
            Photos = order.Photos,
            No = FindingSet.Worst(leaving) >= Category.Refer || answers.AnyNo || (visit.Member("work") is not null && !state.MayLeave),
            Entries = [.. order.Entries.OrderBy(e => e.At).ThenBy(e => e.Id)],
        });
    }

    private static List<Finding> Ranked(IEnumerable<Finding> findings) =>
        [.. findings.OrderByDescending(f => f.Category).ThenBy(f => f.Position, StringComparer.Ordinal).ThenBy(f => f.Rule, StringComparer.Ordinal)];

    /// <summary>The least depth of the rules that were applied: the limit of their own findings, not the trade's earlier warning.</summary>
    private static Length? DepthLimit(IEnumerable<Finding> findings)
    {
        var limits = findings
            .Where(f => f.Rule.StartsWith("tread.depth", StringComparison.Ordinal) && f.Limit?.Amount is { Value: not null } amount && Length.Units.Any(u => u.Symbol == amount.Unit))
            .Select(f => Quantity.Of<Length>(f.Limit!.Amount.Value!.Value, f.Limit.Amount.Unit))
            .ToList();
        return limits.Count == 0 ? null : limits.Min();
    }

    private static IEnumerable<SheetWheel> Wheels(VisitState state, VisitAnswers answers, List<Finding> leaving, SheetUnits units)
    {
        var pressures = (answers.Of(Leg.Plan, "pressure") as JsonObject)?["positions"] as JsonArray;
        var balances = answers.Of(Leg.OffTheCar, "balance") as JsonObject;
        var leaks = answers.Of(Leg.OffTheCar, "leak") as JsonObject;
        var cameFrom = LeavingVehicle.Of(state.Arrived, state.Work).CameFrom;
        foreach (var position in VisitNeeds.Positions(state.Arrived))
        {
            var at = position.ToString();
            var finalTorque = state.Work.At(at, "final-torque");
            yield return new SheetWheel(position, SheetContent.Capital(state.Arrived.Vehicle.InWords(position)))
            {
                Arrived = state.Arrived.At(position),
                Leaving = state.Leaving.At(position),
                CameFrom = cameFrom.GetValueOrDefault(position, position),
                Job = state.Work.Jobs.TryGetValue(position, out var job) ? job : null,
                Renewed = state.Work.Renewed.GetValueOrDefault(position),
                RenewedValve = state.Work.RenewedValves.GetValueOrDefault(position),
                RenewedWheel = state.Work.RenewedWheels.GetValueOrDefault(position),
                Pressure = pressures?.OfType<JsonObject>().FirstOrDefault(p => p["position"]?.GetValue<string>() == at),
                Balance = balances?.FirstOrDefault(b => string.Equals(b.Key, at, StringComparison.OrdinalIgnoreCase)).Value is JsonObject answer ? SheetBalances.Of(answer, units) : null,
                Leak = leaks?.FirstOrDefault(l => string.Equals(l.Key, at, StringComparison.OrdinalIgnoreCase)).Value as JsonObject,
                CheckSpin = state.Work.At(at, "check-spin"),
                SetTo = state.Work.At(at, "pressure-set")?.Pressure ?? state.Work.At(at, "core-in")?.Pressure,
                FinalTorques = finalTorque?.Torques ?? new Dictionary<int, Torque>(),
                FinallyTightened = state.Legs.SelectMany(l => l.Steps).Any(s => s.Step.Id == "final-torque" && s.At == at && s.Standing == StepStanding.Passed),
                Steps = [.. state.Legs.SelectMany(l => l.Steps).Where(s => s.At == at)],
                WorstLeaving = FindingSet.Worst(leaving.Where(f => f.Position == at)),
            };
        }
    }

    private static IEnumerable<SheetAxle> Axles(VisitState state, VisitAnswers answers)
    {
        var fixings = (answers.Of(Leg.Refit, "fixings") as JsonArray)?.OfType<JsonObject>().ToList() ?? [];
        var axles = state.Arrived.Vehicle.Axles;
        for (var i = 0; i < axles.Count; i++)
        {
            var name = axles.Count == 1 ? "Axle" : axles.Count == 2 ? (i == 0 ? "Front axle" : "Rear axle") : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"Axle {i + 1}");
            yield return new SheetAxle(i + 1, name, fixings.FirstOrDefault(f => f["axle"]?.GetValue<int>() == i + 1), axles[i].Fixings, axles[i].Hub);
        }
    }
}
