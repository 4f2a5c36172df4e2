using Trundle.Measures;

namespace Trundle.Engine.Fixings;

/// <summary>The geometry that a thread's diameter and pitch give.</summary>
public static class ThreadGeometry
{
    /// <summary>Pitch diameter d2 = d − 0.649519 P: where the flanks of stud and nut meet.</summary>
    /// <source>ISO 724 (coefficient recomputed)</source>
    public static Length PitchDiameter(this ThreadDesignation thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        return thread.Diameter - (0.649519 * thread.Pitch);
    }

    /// <summary>Minor diameter of the external thread d3 = d − 1.226869 P.</summary>
    /// <source>ISO 724 (coefficient recomputed)</source>
    public static Length MinorDiameter(this ThreadDesignation thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        return thread.Diameter - (1.226869 * thread.Pitch);
    }

    /// <summary>Minor diameter of the internal thread D1 = d − 1.082532 P.</summary>
    /// <source>ISO 724 (coefficient recomputed)</source>
    public static Length NutMinorDiameter(this ThreadDesignation thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        return thread.Diameter - (1.082532 * thread.Pitch);
    }

    /// <summary>
    /// The area that stands for the thread in a pull: π/4·(d − 0.938194 P)² metric, π/4·(d − 0.9743 P)² unified. It is not rounded, so it
    /// differs from the printed tables by up to 0.5 %.
    /// </summary>
    /// <source>ISO 898-1 for metric, ASME B1.1 for unified threads (formulas from memory, checked against the printed areas)</source>
    public static Area StressArea(this ThreadDesignation thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        var effective = thread.Diameter - ((thread.Metric ? 0.938194 : 0.9743) * thread.Pitch);
        return Area.FromSi(Math.PI / 4 * effective.Metres * effective.Metres);
    }

    /// <summary>Lead angle at the pitch diameter: atan(P/(π·d2)).</summary>
    /// <source>common practice: geometry of a helix of one start</source>
    public static Angle LeadAngle(this ThreadDesignation thread)
    {
        ArgumentNullException.ThrowIfNull(thread);
        return Angle.FromRadians(Math.Atan(thread.Pitch / (Math.PI * thread.PitchDiameter())));
    }
}
