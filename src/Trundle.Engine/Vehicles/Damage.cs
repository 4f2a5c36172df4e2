using Trundle.Measures;

namespace Trundle.Engine.Vehicles;

/// <summary>What is wrong with a tyre.</summary>
public enum DamageKind
{
    Puncture,
    Cut,
    Bulge,
    Cord,
    Crack,
    Bead,
    Other,

    /// <summary>Tread or plies have parted.</summary>
    Separation,

    /// <summary>Pieces are torn out of the tread.</summary>
    Chunk,

    /// <summary>Inside: a ring of scuffed or wrinkled liner, powdered rubber, loose cords: the tyre ran without air.</summary>
    RunLowMarks,

    /// <summary>Ripples, soft spots or popping in the sidewall while air goes in: the signs before a zipper rupture.</summary>
    Ripple,

    /// <summary>Air is heard to go out of it.</summary>
    Leak,

    /// <summary>Rubber swollen or softened by oil or solvent.</summary>
    Oil,
}

/// <summary>Where on a tyre.</summary>
public enum DamagePlace
{
    Tread,
    Shoulder,
    Sidewall,
    Bead,
}

/// <summary>One damage of a tyre. What nobody measured is null and is asked for where a limit turns on it.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Place">Where it is.</param>
/// <param name="Size">Its greatest extent; of a puncture the hole after preparation.</param>
public sealed record Damage(DamageKind Kind, DamagePlace Place, Length? Size)
{
    /// <summary>How deep it goes, by the probe.</summary>
    public Length? Depth { get; init; }

    /// <summary>Ply, cord, belt or bead wire is to be seen or felt in it.</summary>
    public bool? CordShows { get; init; }

    /// <summary>Cracks have grown together.</summary>
    public bool? Joined { get; init; }

    /// <summary>How far the canal of a puncture leans from square through the tread.</summary>
    public Angle? Lean { get; init; }

    /// <summary>From the middle of the tread to the farthest point of the injury, outside or inside.</summary>
    public Length? FromMiddle { get; init; }

    /// <summary>Where round the tyre, clockwise from the valve as seen from outside.</summary>
    public Angle? Around { get; init; }

    /// <summary>To the nearest earlier repair, edge to edge; nothing where they would overlap.</summary>
    public Length? FromRepair { get; init; }

    /// <summary>How far round the tyre the nearest earlier repair is.</summary>
    public Angle? RoundFromRepair { get; init; }
}
