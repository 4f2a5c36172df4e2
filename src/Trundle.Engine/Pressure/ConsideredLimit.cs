using Trundle.Engine.Findings;
using Trundle.Measures;

namespace Trundle.Engine.Pressure;

/// <summary>Whether a limit says how much there must be at least or may be at most.</summary>
public enum LimitBound
{
    /// <summary>Not less than this.</summary>
    Least,

    /// <summary>Not more than this.</summary>
    Most,
}

/// <summary>One limit that was looked at, known or not, and whether it ruled the answer.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Bound">Least or most.</param>
/// <param name="Pressure">Its value, or null where nobody gave one.</param>
/// <param name="Source">Where it comes from.</param>
/// <param name="Ruled">True where it is the one that decided.</param>
public sealed record ConsideredLimit(string Name, LimitBound Bound, GaugePressure? Pressure, Source Source, bool Ruled = false);

/// <summary>A pressure with where it comes from.</summary>
public sealed record SourcedPressure(GaugePressure Pressure, Source Source);

/// <summary>In what step a calculated pressure is rounded up.</summary>
public enum PressureStep
{
    /// <summary>10 kPa.</summary>
    TenKilopascals,

    /// <summary>1 psi.</summary>
    OnePoundPerSquareInch,
}

/// <summary>Rounding of calculated pressures.</summary>
public static class PressureRounding
{
    /// <summary>Rounds up to the next step; what lies on a step stays (to a millionth of it).</summary>
    /// <source>common practice</source>
    public static GaugePressure Up(this PressureStep step, GaugePressure exact)
    {
        var unit = step switch
        {
            PressureStep.TenKilopascals => GaugePressure.FromKilopascals(10),
            PressureStep.OnePoundPerSquareInch => GaugePressure.FromPoundsPerSquareInch(1),
        };
        return unit * Math.Ceiling((exact / unit) - 1e-6);
    }
}
