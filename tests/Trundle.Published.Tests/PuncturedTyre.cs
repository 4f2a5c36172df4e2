using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Published.Tests;

/// <summary>One punctured tyre on one axle, to hold the published repair rules against.</summary>
internal static class PuncturedTyre
{
    public static Position At { get; } = Position.On(1, Side.Left);

    public static FittedVehicle Subject(string marking, RuleSet? rules, Func<Damage, Damage>? change = null, RepairHistory? history = null, double? treadMillimetres = null)
    {
        var puncture = new Damage(DamageKind.Puncture, DamagePlace.Tread, Length.FromMillimetres(3));
        var tyre = new FittedTyre { Marking = MarkingReader.Read(marking).Value, History = history ?? RepairHistory.NotKnown };
        var tread = treadMillimetres is { } mm ? new TreadDepths([], [Length.FromMillimetres(mm)], []) : null;
        return new FittedVehicle(new Vehicle { Axles = [new Axle()] }, [new Assembly { Position = At, Tyre = tyre, Tread = tread, Damage = [(change ?? (p => p))(puncture)] }], rules, null);
    }

    /// <summary>What the damage of the tyre is judged by.</summary>
    public static IReadOnlyList<string> Rules(string marking, RuleSet? rules, Func<Damage, Damage>? change = null, RepairHistory? history = null, double? treadMillimetres = null) =>
        [.. ConditionCheck.Run(Subject(marking, rules, change, history, treadMillimetres)).Findings.Where(f => f.Category != Category.None && f.Rule.Split('.')[0] is "damage" or "repair").Select(f => f.Rule)];

    public static Verdict Verdict(FittedVehicle subject) => InspectionVerdicts.Of(subject, ConditionCheck.Run(subject)).Single(v => v.Part == InspectedPart.Tyre).Verdict;
}
