using Trundle.Engine.Condition;
using Trundle.Engine.Findings;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Practice.Drills;

/// <summary>Depths across a tread to be read off a drawn section, and what the chosen rules say of them.</summary>
internal static class TreadDrill
{
    public static Drill Of(ulong seed)
    {
        var stream = SeedStream.Of(seed, "tread");
        var rules = stream.OneOf(PractisedVehicle.Rules);

        // About the limit as often as well above it: tenths of a millimetre at three grooves and three places round.
        var about = stream.Coin() ? stream.Between(10, 24) : stream.Between(24, 65);
        var tread = new TreadDepths(Around(about + stream.Between(-4, 12)), Around(about + stream.Between(0, 14)), Around(about + stream.Between(-4, 12)));
        var at = Position.On(1, Side.Left);
        const string marking = "205/55 R16 91V";
        var vehicle = PractisedVehicle.Of(Drive.Front, rules, [new Assembly { Position = at, Tyre = new FittedTyre { Marking = PractisedVehicle.Marking(marking) }, Tread = tread }], marking, marking);
        var law = TreadLimits.OfLaw(vehicle, at) ?? TreadLimits.OfTrade(vehicle, at);
        var finding = ConditionCheck.Run(vehicle).Findings.First(f => f.Rule.StartsWith("tread.depth", StringComparison.Ordinal));
        var least = tread.All.MinBy(t => t.Depth);
        var stays = finding.Category == Category.None;
        return new Drill(DrillKind.Tread, seed, DrillList.Title(DrillKind.Tread),
        [
            new("tyre", marking),
            new("rules", PractisedVehicle.Word(rules)),
            new("depths", "off the drawn section"),
        ],
        [
            Asking.Quantity(new("least", "The depth that counts.", 30, true), least.Depth, "mm", 1, 0.05, Source.CommonPractice, $"The least of all counts, here at the {least.Place} groove; a mean hides it."),
            Asking.Quantity(new("limit", "The least depth that these rules allow.", 30, false), law.Limit.Amount.Unit == "mm" ? Length.FromMillimetres(law.Limit.Amount.Value!.Value) : Measures.Quantity.Of<Length>(law.Limit.Amount.Value!.Value, law.Limit.Amount.Unit), "mm", 2, 0.05, law.Limit.Source, "It stands in the rules chosen for the visit."),
            Asking.Choice(new("verdict", "May it stay on by its depth?", 40, true), Asking.YesNo, key => key == (stays ? "yes" : "no"), _ => $"{finding.Measured.Text} against {law.Limit.Amount.Text}: {finding.Action}", finding.Source),
        ]) { Drawn = tread };

        Length[] Around(int tenths) => [.. Enumerable.Range(0, 3).Select(_ => Length.FromMillimetres(Math.Max(5, tenths + stream.Between(-2, 2)) / 10.0))];
    }
}
