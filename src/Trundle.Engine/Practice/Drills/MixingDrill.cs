using Trundle.Engine.Findings;
using Trundle.Engine.Fitment;
using Trundle.Engine.Vehicles;

namespace Trundle.Engine.Practice.Drills;

/// <summary>Constructions on two axles; whether they may stand so is what the engine's rules say.</summary>
internal static class MixingDrill
{
    private static readonly string[] Sizes = ["185/70 R14 88T", "185/70 D14 88S", "185/70 B14 88S"];

    public static Drill Of(ulong seed)
    {
        var stream = SeedStream.Of(seed, "mixing");
        var rules = stream.OneOf(PractisedVehicle.Rules);
        var (front, rear) = (stream.OneOf(Sizes), stream.OneOf(Sizes));
        var second = stream.Between(0, 3) == 0 ? stream.OneOf(Sizes) : rear;
        string[] fitted = [front, front, rear, second];
        var vehicle = PractisedVehicle.Of(Drive.Rear, rules, PractisedVehicle.Places.Select((p, i) => new Assembly { Position = p, Tyre = new FittedTyre { Marking = PractisedVehicle.Marking(fitted[i]) } }), front, rear);
        var broken = ConstructionMix.Broken(vehicle);
        var may = broken.Count == 0;
        var worst = broken.OrderByDescending(f => f.Category).FirstOrDefault();
        var axle = broken.Any(f => f.Rule == "mix.axle");
        return new Drill(DrillKind.Mixing, seed, DrillList.Title(DrillKind.Mixing),
        [
            new("rules", PractisedVehicle.Word(rules)),
            .. PractisedVehicle.Places.Select((p, i) => new Told(p.ToString(), $"{fitted[i]} ({MixingRules.Word(PractisedVehicle.Marking(fitted[i]).Size.Construction)})")),
        ],
        [
            Asking.Choice(new("may", "May these tyres stand so?", 60, true), Asking.YesNo, key => key == (may ? "yes" : "no"), _ => may ? "Nothing forbids it: no axle is mixed, and no radial stands in front of others." : worst!.Action, worst?.Source ?? Source.CommonPractice),
            Asking.Choice(new("axle", "Is one axle mixed in itself?", 40, true), Asking.YesNo, key => key == (axle ? "yes" : "no"), _ => "Look at the letter before the rim diameter on both sides of the axle: R is radial, D diagonal, B bias-belted; a dash says neither of the last two, and is asked for.", Source.CommonPractice),
        ]);
    }
}
