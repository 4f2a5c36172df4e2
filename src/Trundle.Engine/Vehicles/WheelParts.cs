using Trundle.Measures;

namespace Trundle.Engine.Vehicles;

/// <summary>What is wrong with a wheel.</summary>
public enum WheelDamageKind
{
    /// <summary>A crack, wherever it is.</summary>
    Crack,

    /// <summary>A bent flange or rim.</summary>
    BentFlange,

    /// <summary>Corrosion where the bead seats.</summary>
    Corrosion,

    /// <summary>The centre bore is worn.</summary>
    BoreWear,

    /// <summary>The seats under the fixings are worn.</summary>
    SeatWear,

    /// <summary>Holes for the fixings have become longer than wide.</summary>
    ElongatedHole,

    /// <summary>It was welded.</summary>
    Weld,

    /// <summary>A lock ring or side ring is missing, bent, cracked or not of this rim.</summary>
    LockRing,

    /// <summary>Something else.</summary>
    Other,
}

/// <summary>One damage of a wheel.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Size">Of a bent flange how far it runs out in one turn; else its extent; or null.</param>
public sealed record WheelDamage(WheelDamageKind Kind, Length? Size);

/// <summary>The kind of a valve.</summary>
public enum ValveKind
{
    /// <summary>Rubber, pulled through the hole.</summary>
    RubberSnapIn,

    /// <summary>Snap-in for higher pressure, with a metal body.</summary>
    HighPressureSnapIn,

    /// <summary>Metal, clamped by a nut.</summary>
    ClampIn,
}

/// <summary>The state of a valve.</summary>
public enum ValveState
{
    /// <summary>Sound.</summary>
    Sound,

    /// <summary>Cracked when bent.</summary>
    Cracked,

    /// <summary>It leaks.</summary>
    Leaking,

    /// <summary>Corroded.</summary>
    Corroded,
}

/// <summary>The valve of a wheel.</summary>
public sealed record Valve
{
    /// <summary>Its kind.</summary>
    public ValveKind? Kind { get; init; }

    /// <summary>Its state.</summary>
    public ValveState? State { get; init; }

    /// <summary>When it was fitted, or null.</summary>
    public DateOnly? Renewed { get; init; }

    /// <summary>The greatest pressure that its maker gives, or null.</summary>
    public GaugePressure? Rating { get; init; }

    /// <summary>It has a cap; null where nobody said.</summary>
    public bool? Cap { get; init; }
}

/// <summary>How a sensor's battery stands, by its own telegram.</summary>
public enum SensorBattery
{
    /// <summary>Good.</summary>
    Good,

    /// <summary>Low.</summary>
    Low,
}

/// <summary>The parts of a pressure sensor that wear.</summary>
/// <param name="Battery">Its battery, or null.</param>
/// <param name="SealWorn">Its seal has set or is torn; null where nobody looked.</param>
/// <param name="NutCorroded">Its nut or stem is corroded; null where nobody looked.</param>
public sealed record SensorParts(SensorBattery? Battery, bool? SealWorn, bool? NutCorroded);
