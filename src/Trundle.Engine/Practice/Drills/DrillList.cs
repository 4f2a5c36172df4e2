namespace Trundle.Engine.Practice.Drills;

/// <summary>Every drill of questions, made from a seed.</summary>
public static class DrillList
{
    /// <summary>Makes a drill.</summary>
    /// <param name="kind">Which.</param>
    /// <param name="seed">Any number; the same gives the same drill.</param>
    /// <param name="today">The day on which ages are told.</param>
    /// <source>own choice for practice: docs/theory/practice.md (drills); the answers are the engine's own</source>
    public static Drill Of(DrillKind kind, ulong seed, DateOnly today) => kind switch
    {
        DrillKind.Sidewall => SidewallDrill.Of(seed),
        DrillKind.Tin => TinDrill.Of(seed, today),
        DrillKind.Tread => TreadDrill.Of(seed),
        DrillKind.Damage => DamageDrill.Of(seed),
        DrillKind.PressureAtTemperature => PressureDrill.Of(seed),
        DrillKind.Rotation => RotationDrill.Of(seed),
        DrillKind.Mixing => MixingDrill.Of(seed),
        DrillKind.Adapter => AdapterDrill.Of(seed),
    };

    /// <summary>What a drill is called.</summary>
    /// <param name="kind">Which.</param>
    /// <source>the project's own words</source>
    public static string Title(DrillKind kind) => kind switch
    {
        DrillKind.Sidewall => "Read a sidewall",
        DrillKind.Tin => "Read a TIN",
        DrillKind.Tread => "Judge a tread",
        DrillKind.Damage => "Judge a damage",
        DrillKind.PressureAtTemperature => "Pressure and temperature",
        DrillKind.Rotation => "Choose a rotation",
        DrillKind.Mixing => "Constructions together",
        DrillKind.Adapter => "Wrench with an adapter",
    };
}
