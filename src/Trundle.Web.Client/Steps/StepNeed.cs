using Trundle.Engine.Vehicles;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Balance;
using Trundle.Web.Client.Entries;
using Trundle.Web.Client.Frame;
using Trundle.Web.Client.Refit;

namespace Trundle.Web.Client.Steps;

/// <summary>What a step still needs before it can be recorded, and where that is entered.</summary>
/// <param name="Href">The page and the field on it.</param>
/// <param name="What">In a few words.</param>
public sealed record StepNeed(string Href, string What)
{
    private static readonly (string Key, string Name)[] Planes = [("inner", "inner"), ("outer", "outer")];

    /// <summary>The need of a step that is not passed; null where nothing has to be typed for it, or where all of it is.</summary>
    public static StepNeed? Of(OpenVisit visit, StepState state)
    {
        ArgumentNullException.ThrowIfNull(visit);
        ArgumentNullException.ThrowIfNull(state);
        if (state.Standing == StepStanding.Passed)
        {
            return null;
        }

        var position = Position.Read(state.At) is { IsRead: true } read ? read.Value : (Position?)null;
        var field = state.Step.FieldAt(state.At);
        return state.Step switch
        {
            { Entry: StepEntry.Pressure } => Here(field, state.Record is null ? "what the gauge shows" : $"another pressure, since {Short(visit, field)} does not pass"),
            { Entry: StepEntry.Text } => Here(field, state.Step.Title),
            { Entry: StepEntry.Spin } => Spin(),
            { Entry: StepEntry.Repair } when position is { } at => Repair(at),
            { Entry: StepEntry.Nothing } => Licensed(),
            { Entry: StepEntry.Torques } or { Id: "stages" } when position is { } at => Tightening(at),
            { Id: "first-spin" } when position is { } at => BalanceOf(at),
            _ => null,
        };

        StepNeed Here(string at, string what) => new($"{Places.Of(visit.Id, state.Step.Leg, state.At, state.Step.Id)}#{FieldPart.IdOf(at)}", what);

        StepNeed? Spin()
        {
            var open = Planes.Where(p => visit[$"{field}.{p.Key}.mass"] is null).ToList();
            return open.Count switch
            {
                0 => null,
                1 => Here($"{field}.{open[0].Key}.mass", $"the {open[0].Name} plane’s display"),
                _ => Here($"{field}.inner.mass", "the display of both planes"),
            };
        }

        StepNeed? Repair(Position at)
        {
            var open = RepairJudge.OnVisit(visit.State, at)?.Verdict;
            return open is { Refused.Count: 0, Missing: [var first, ..] } ? Here(first.Field, first.What) : null;
        }

        StepNeed? Licensed() => state.Standing == StepStanding.Passed ? null
            : Here($"{LicensedWork.FieldAt(state.At)}.{(visit[$"{LicensedWork.FieldAt(state.At)}.by"] is null ? "by" : "paper")}", "what the licensed shop did");

        StepNeed? Tightening(Position at) => WheelFixings.PlanAt(visit, at) switch
        {
            null => new(Places.OfField(visit.Id, Leg.Arrive, null, WheelFixings.FieldOf(at, "count")), "how many fixings the wheel has"),
            { Stages: [.., { Torque: null }] } => new(Places.OfField(visit.Id, Leg.Arrive, null, WheelFixings.FieldOf(at, "torque")), "the vehicle maker’s torque"),
            _ => null,
        };

        StepNeed? BalanceOf(Position at)
        {
            var needs = WheelBalance.Of(visit, at).Needs(visit).ToList();
            return needs.Count == 0 ? null : Here(needs[0].Field, string.Join(", ", needs.Select(n => n.What)));
        }
    }

    private static string Short(OpenVisit visit, string field) => visit[field] ?? "it";
}
