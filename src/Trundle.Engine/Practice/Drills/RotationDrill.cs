using Trundle.Engine.Findings;
using Trundle.Engine.Rotation;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Practice.Drills;

/// <summary>A vehicle with constraints; what may be done is what the engine's plan allows.</summary>
internal static class RotationDrill
{
    private static readonly string[] Offered = ["forward cross", "rearward cross", "X", "front-to-rear", "side-to-side"];

    public static Drill Of(ulong seed)
    {
        var stream = SeedStream.Of(seed, "rotation");
        var drive = stream.OneOf([Drive.Front, Drive.Rear, Drive.All]);
        var directional = stream.Between(0, 2) == 0;
        var staggered = stream.Between(0, 2) == 0;
        const string front = "225/45 R17 91W";
        var rear = staggered ? "245/40 R17 91W" : front;
        Length[] deep = [Length.FromMillimetres(5), Length.FromMillimetres(5), Length.FromMillimetres(5)];
        var vehicle = PractisedVehicle.Of(drive, null, PractisedVehicle.Places.Select(p => new Assembly
        {
            Position = p,
            Tyre = new FittedTyre
            {
                Marking = PractisedVehicle.Marking(p.Axle == 1 ? front : rear),
                Directional = directional,
                MountedFor = directional ? (p.Side == Side.Left ? MountedFor.Left : MountedFor.Right) : null,
            },
            Tread = new TreadDepths(deep, deep, deep),
        }), front, rear);
        var plan = RotationPlan.For(vehicle).Value;
        var allowed = plan.Verdicts.Where(v => v.Allowed).Select(v => v.Pattern.Name).ToHashSet(StringComparer.OrdinalIgnoreCase);
        var chosen = plan.Chosen is { } c && c.Allowed ? c.Pattern.Name : null;
        DrillChoice[] choices = [.. Offered.Select(o => new DrillChoice(o, o)), new("none", "none with the tyres as they are mounted")];
        return new Drill(DrillKind.Rotation, seed, DrillList.Title(DrillKind.Rotation),
        [
            new("drive", PractisedVehicle.Word(drive)),
            new("front axle", front),
            new("rear axle", rear),
            new("tread", directional ? "directional, each mounted for its side" : "not directional"),
            new("maker's own rotation", "not given"),
        ],
        [
            Asking.Choice(new("choose", "Which rotation do you choose?", 60, true), choices, key => chosen is null ? key == "none" : string.Equals(key, chosen, StringComparison.OrdinalIgnoreCase), Why, plan.Chosen?.Pattern.Source ?? Source.CommonPractice),
            Asking.Choice(new("cross", "May any pattern be done that takes a tyre to the other side?", 40, false), Asking.YesNo,
                key => key == (Offered.Any(o => allowed.Contains(o) && Crosses(o)) ? "yes" : "no"),
                _ => directional ? "A directional tyre that changes sides turns against its arrow." : Why("X"), Source.CommonPractice),
        ]);

        string Why(string key) => plan.Verdicts.FirstOrDefault(v => string.Equals(v.Pattern.Name, key, StringComparison.OrdinalIgnoreCase)) is { } verdict
            ? verdict.Allowed ? $"{plan.Why} '{key}' is meant for {verdict.Pattern.Use}." : verdict.Why
            : plan.Why;

        static bool Crosses(string name) => RotationPattern.Named(name)!.Moves.Any(m => m.From.Side != m.To.Side);
    }
}
