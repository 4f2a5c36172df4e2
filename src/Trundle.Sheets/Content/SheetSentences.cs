using System.Globalization;
using System.Text.Json.Nodes;
using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Vehicles;
using Trundle.Measures;
using Trundle.Visits.Bay;

namespace Trundle.Sheets;

/// <summary>What was done, what to watch and when to come again, as plain sentences.</summary>
internal static class SheetSentences
{
    /// <summary>What was done, from what was recorded and not from what was planned.</summary>
    public static IEnumerable<string> Did(VisitState state, IReadOnlyList<SheetWheel> wheels, IReadOnlyList<SheetAxle> axles, SheetUnits units, SheetStandIn? standIn)
    {
        // On a page that is too full the last lines go first: what is not as it should be stands before what is.
        string[] otherSize = standIn is null ? [] : [standIn.Fitted];
        foreach (var line in SheetRenewals.Punctures(state).Concat(otherSize).Concat(SheetRenewals.Losses(state, wheels, units)).Concat(SheetRenewals.Renewed(state, wheels)))
        {
            yield return line;
        }

        if (SheetPaper.Agreed(state.Work.Paper) is { } agreed)
        {
            yield return agreed;
        }

        var moved = wheels.Where(w => w.CameFrom != w.Position).ToList();
        if (moved.Count > 0)
        {
            yield return $"Rotated ({state.Work.Rotation}): {string.Join(", ", moved.Select(w => $"{w.CameFrom} to {w.Position}"))}.";
        }

        var spun = wheels.Where(w => w.CheckSpin is not null).ToList();
        if (spun.Count > 0)
        {
            yield return $"Balanced in both planes; the check spin showed, inner and outer: {string.Join("; ", spun.GroupBy(w => $"{Shown(w.CheckSpin!.Inner)} and {Shown(w.CheckSpin.Outer)}").Select(g => $"{string.Join(" ", g.Select(w => w.Position))} {g.Key}"))}.";
        }

        var set = wheels.Where(w => w.SetTo is not null).ToList();
        if (set.Count > 0)
        {
            yield return $"Pressures set cold: {string.Join(", ", set.GroupBy(w => units.Pressure(w.SetTo!.Value)).Select(g => $"{string.Join(" ", g.Select(w => w.Position))} {g.Key}"))}.";
        }

        var tightened = axles
            .Where(a => a.Fixings is { Torque: not null, Count: not null })
            .Select(a => (Axle: a, On: wheels.Where(w => w.Position.Axle == a.Axle && w.Steps.Any(s => s.Step.Id == "final-torque")).ToList()))
            .Where(a => a.On.Any(w => w.FinalTorques.Count > 0));
        var lowered = state.Legs.SelectMany(l => l.Steps).Any(s => s.Step.Id == "lowered" && s.Standing == StepStanding.Passed);
        foreach (var alike in tightened.GroupBy(a => a.Axle.Fixings!.Torque!.Value))
        {
            var done = alike.Sum(a => a.On.Sum(w => w.FinalTorques.Keys.Count(n => n <= a.Axle.Fixings!.Count)));
            var due = alike.Sum(a => a.On.Count * a.Axle.Fixings!.Count!.Value);
            yield return string.Create(CultureInfo.InvariantCulture, $"{Join(alike.Select(a => a.Axle.Name))}: {done} of {due} {(due == 1 ? "fixing" : "fixings")} finally tightened{(lowered ? " with the vehicle standing" : "; that it stood on its wheels is not recorded")}, to the maker's {units.Torque(alike.Key)}.");
        }

        if (state.Work.At("vehicle", "road-test")?.Word is { } roadTest)
        {
            yield return $"Road test: {roadTest}.";
        }

        static string Join(IEnumerable<string> names) => string.Join(" and ", names.Select((n, i) => i == 0 ? n : n.ToLowerInvariant()));

        string Shown(PlaneDisplay? plane) => plane is null ? "–" : units.Mass(plane.Mass);
    }

    /// <summary>What the customer should watch: the workshop's own words, what stays open, the re-torque, the pressures.</summary>
    public static IEnumerable<string> Watch(VisitState state, IReadOnlyList<Finding> leaving, IReadOnlyList<SheetAxle> axles, SheetUnits units, SheetStandIn? standIn)
    {
        if (state.Work.Watch is { } watch)
        {
            yield return watch.EndsWith('.') ? watch : watch + ".";
        }

        if (standIn is not null)
        {
            yield return standIn.Watch;
        }

        // One decision on one thing at several wheels is said once.
        var decided = leaving.Where(f => f.Category >= Category.Refer)
            .Select(f => (Finding: f, Decision: state.Work.Decisions.GetValueOrDefault(VisitFindings.DecisionKey(f))))
            .Where(d => d.Decision is not null);
        foreach (var alike in decided.GroupBy(d => (d.Decision, What: SheetContent.Said(d.Finding, FindingWords.Of(d.Finding), units))))
        {
            var (decision, what) = alike.Key;
            var places = string.Join(" ", alike.Select(d => d.Finding.Position).OfType<string>());
            yield return $"Decided by {decision!.By}{(decision.Role is { } role ? $" ({role.Word()})" : "")} {(places.Length == 0 ? "" : $"at {places} ")}({what}): {decision.Text.TrimEnd('.')}.{(decision.SignedRefusal is { } signed ? $" The customer refused the work and signed: {signed}." : "")}";
        }

        if (state.NotTightened.Count == 0 && state.Work.ReTorque is not { Turned: false } && ReTorque(axles) is var (from, to, source) && state.Work.Steps.Values.Any(s => s.ContainsKey("final-torque")))
        {
            var standing = Visits.Bay.ReTorqueDue.Of(state)?.After.Standing is { } time ? $", or after {time.Amount.Text} where it only stands" : "";
            yield return $"Have every wheel fixing checked with a torque wrench after {units.ToGo(from, to)}{standing} ({source}); a maker's own distance comes first.";
        }

        yield return "If you feel a new shake or hear a knock from a wheel, stop where it is safe and have the fixings checked before you drive on.";
    }

    /// <summary>When and at what distance it is seen again.</summary>
    public static IEnumerable<string> Next(VisitState state, IReadOnlyList<SheetAxle> axles, SheetUnits units, bool rotates)
    {
        if (state.Work.ReTorque is { } checkedAgain)
        {
            yield return $"Re-torque: checked on {checkedAgain.On.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}, {checkedAgain.Words}{(checkedAgain.Turned ? "; it is checked again after the same distance" : "")}.";
        }
        else if (state.Work.Steps.Values.Any(s => s.ContainsKey("final-torque")) && ReTorque(axles) is var (from, to, _))
        {
            yield return $"Re-torque: {(state.Arrived.Vehicle.Odometer is { } odometer ? $"between {units.Road(odometer + from)} and {units.Road(odometer + to)}" : $"after {units.ToGo(from, to)}")}{(Visits.Bay.ReTorqueDue.Of(state)?.AskOn is { } ask ? $"; if we have not seen it by {ask.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}, we ask" : "")}.";
        }

        var interval = Figures.Of("rotation.interval");
        var months = Figures.Of("condition.next-months");
        var distance = interval.As<Length>();
        var at = state.Arrived.Vehicle.Odometer is { } now ? $"at {units.Road(now + distance)}" : $"after {units.ToGo(distance)}";
        var on = state.Arrived.Date is { } date ? $"by {date.AddMonths((int)months.Value).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}" : $"within {Quantity.Number(months.Value, 0)} months";
        yield return $"{(rotates ? "Look over and rotation" : "Look over")}: {at} or {on}, whichever comes first ({months.Source.ForPeople}; the maker's own interval comes first).";
        var spare = VisitNeeds.Positions(state.Arrived).Any(p => p.IsSpare);
        yield return $"Pressures, cold{(spare ? ", the spare too" : "")}: every {(Figures.Of("condition.pressure-months").Value is 1 ? "month" : $"{Quantity.Number(Figures.Of("condition.pressure-months").Value, 0)} months")}.";
    }

    private static (Length From, Length To, string Source)? ReTorque(IReadOnlyList<SheetAxle> axles)
    {
        var answers = axles.Select(a => a.Answer?["reTorque"]).OfType<JsonObject>().ToList();
        return answers.Count == 0 ? null : (
            Length.FromKilometres(answers.Min(a => a["fromKilometres"]!.GetValue<double>())),
            Length.FromKilometres(answers.Min(a => a["toKilometres"]!.GetValue<double>())),
            answers[0]["source"]!.GetValue<string>());
    }
}
