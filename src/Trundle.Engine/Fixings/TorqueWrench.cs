using Trundle.Engine.Instruments;
using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>Whether a setting lies on a wrench's scale.</summary>
public enum ScalePlace
{
    /// <summary>Within its scale.</summary>
    Within,

    /// <summary>On the scale, below the part that a calibration looks at.</summary>
    LowPart,

    /// <summary>Below the lowest mark.</summary>
    BelowLowest,

    /// <summary>Above the highest mark.</summary>
    AboveHighest,
}

/// <summary>The torque wrench in the hand: its scale, and what its last check found.</summary>
/// <param name="Least">The lowest mark of its scale, or null where nobody gave it.</param>
/// <param name="Most">The highest mark, or null likewise.</param>
/// <param name="DeviationPercents">What the last check found at its points: shown less reference, in per cent of the reference. Empty where nothing is known.</param>
public sealed record TorqueWrench(Torque? Least, Torque? Most, IReadOnlyList<double> DeviationPercents)
{
    /// <summary>The least of the torques that may reach the drive when it clicks at a setting, by the last check.</summary>
    public Torque LeastAt(Torque setting) => setting / (1 + (Math.Max(0, DeviationPercents.DefaultIfEmpty(0).Max()) / 100));

    /// <summary>The greatest of them.</summary>
    public Torque MostAt(Torque setting) => setting / (1 + (Math.Min(0, DeviationPercents.DefaultIfEmpty(0).Min()) / 100));

    /// <summary>The deviation of the last check that is farthest off, or null where nothing is known.</summary>
    public double? WorstPercent => DeviationPercents.Count == 0 ? null : DeviationPercents.MaxBy(Math.Abs);

    /// <summary>True where the last check found it farther off than a hand torque wrench may be at this setting.</summary>
    public bool IsOff(Torque setting) => WorstPercent is { } worst && Math.Abs(worst) > PointCheck.OfTorqueWrench(setting).Percent + 1e-9;

    /// <summary>Where a setting lies on its scale.</summary>
    public ScalePlace PlaceOf(Torque setting) =>
        Most is { } most && setting > most * (1 + 1e-9) ? ScalePlace.AboveHighest
        : Least is { } least && setting < least * (1 - 1e-9) ? ScalePlace.BelowLowest
        : Most is { } top && setting < top * (Figures.Of("fixings.wrench-low-part").Value / 100) * (1 - 1e-9) ? ScalePlace.LowPart
        : ScalePlace.Within;
}
