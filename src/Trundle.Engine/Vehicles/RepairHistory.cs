using Trundle.Measures;

namespace Trundle.Engine.Vehicles;

/// <summary>What the tyre's maker says about repairing it.</summary>
public enum RepairPolicy
{
    /// <summary>May be repaired, as the maker says.</summary>
    Permitted,

    /// <summary>May not be repaired.</summary>
    NotPermitted,
}

/// <summary>How an earlier repair was made.</summary>
public enum RepairMethod
{
    /// <summary>From inside, stem and patch.</summary>
    StemAndPatch,

    /// <summary>A patch inside, the hole not filled.</summary>
    PatchAlone,

    /// <summary>A string or plug from outside.</summary>
    PlugAlone,

    /// <summary>A section repair with new plies.</summary>
    Section,
}

/// <summary>A repair that the tyre has already.</summary>
/// <param name="Place">Where it is.</param>
/// <param name="Size">How large the injury was, or null.</param>
/// <param name="Method">How it was made, or null where nobody can tell.</param>
public sealed record EarlierRepair(DamagePlace Place, Length? Size, RepairMethod? Method)
{
    /// <summary>Where round the tyre, clockwise from the valve as seen from outside; null where nobody said.</summary>
    public Angle? Around { get; init; }
}

/// <summary>What a tyre's repairability turns on besides its injury.</summary>
public sealed record RepairHistory
{
    /// <summary>Nothing is known.</summary>
    public static RepairHistory NotKnown { get; } = new();

    /// <summary>The repairs that it has; null where nobody looked.</summary>
    public IReadOnlyList<EarlierRepair>? Repairs { get; init; }

    /// <summary>What its maker says, or null where that is not known.</summary>
    public RepairPolicy? Policy { get; init; }

    /// <summary>Where that stands: the maker's document and its date.</summary>
    public string? PolicyText { get; init; }

    /// <summary>It runs on without air, said so; else its sidewall tells.</summary>
    public bool RunFlat { get; init; }

    /// <summary>It seals small holes by itself, said so; else its sidewall tells.</summary>
    public bool SelfSealing { get; init; }

    /// <summary>It was driven with little or no air; null where nobody said.</summary>
    public bool? RanLow { get; init; }

    /// <summary>How far it was driven so.</summary>
    public Length? RanLowDistance { get; init; }

    /// <summary>How long it was driven so.</summary>
    public TimeSpan? RanLowTime { get; init; }
}
