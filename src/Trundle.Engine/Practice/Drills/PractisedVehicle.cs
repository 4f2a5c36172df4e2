using Trundle.Engine.Sidewall;
using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Practice.Drills;

/// <summary>An invented two-axle car for drills, as the engine's checks take it.</summary>
internal static class PractisedVehicle
{
    public static Position[] Places { get; } = [Position.On(1, Side.Left), Position.On(1, Side.Right), Position.On(2, Side.Left), Position.On(2, Side.Right)];

    public static Marking Marking(string text) => MarkingReader.Read(text).Value;

    public static FittedVehicle Of(Drive drive, RuleSet? rules, IEnumerable<Assembly> fitted, string frontSize, string rearSize)
    {
        var (front, rear) = (Marking(frontSize), Marking(rearSize));
        var vehicle = new Vehicle
        {
            Drive = drive,
            Axles =
            [
                new Axle { Steered = true, Driven = drive is Drive.Front or Drive.All, Placard = new Placard(front, GaugePressure.FromKilopascals(230), null) },
                new Axle { Driven = drive is Drive.Rear or Drive.All, Placard = new Placard(rear, GaugePressure.FromKilopascals(230), null) },
            ],
        };
        return new FittedVehicle(vehicle, [.. fitted], rules, null);
    }

    public static RuleSet[] Rules { get; } = [RuleSet.UnitedStates, RuleSet.UnitedKingdom, RuleSet.EuropeanUnion];

    public static string Word(RuleSet set) => set switch
    {
        RuleSet.UnitedStates => "United States",
        RuleSet.UnitedKingdom => "United Kingdom",
        RuleSet.EuropeanUnion => "European Union",
    };

    public static string Word(Drive drive) => drive switch
    {
        Drive.Front => "front wheels driven",
        Drive.Rear => "rear wheels driven",
        Drive.All => "all wheels driven",
    };
}
