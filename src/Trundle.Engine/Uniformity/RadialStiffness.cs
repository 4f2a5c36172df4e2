using Trundle.Engine.Findings;
using Trundle.Engine.Reference;
using Trundle.Engine.Sidewall;
using Trundle.Measures;

namespace Trundle.Engine.Uniformity;

/// <summary>A tyre's radial stiffness, by which a runout becomes a force.</summary>
/// <param name="Stiffness">The stiffness.</param>
/// <param name="Source">Measured, or estimated by a formula.</param>
public sealed record SourcedStiffness(Stiffness Stiffness, Source Source);

/// <summary>Force from geometry.</summary>
public static class RadialStiffness
{
    private const double NewtonsPerKilogram = 9.80665;

    /// <summary>
    /// An estimate of a radial tyre's static stiffness from its size and pressure. It is no value for higher speeds: the static rate does not
    /// follow the modes of a rolling tyre.
    /// </summary>
    /// <param name="size">A size that tells section width, aspect ratio and rim diameter.</param>
    /// <param name="pressure">Gauge pressure.</param>
    /// <returns>The estimate with its source, or null where the size does not tell enough.</returns>
    /// <source>T. B. Rhyne, Tire Science and Technology 33(3) 2005, 136-155 (the formula's coefficients from memory)</source>
    public static SourcedStiffness? Estimate(SizeDesignation size, GaugePressure pressure)
    {
        ArgumentNullException.ThrowIfNull(size);
        var rimMillimetres = size.RimDiameterMillimetres ?? (size.RimDiameterInches is { } inches ? inches * 25.4 : null);
        if (size.SectionWidth is not { } width || size.AspectRatioPercent is not { } aspect || rimMillimetres is not { } rim)
        {
            return null;
        }

        var factor = Figures.Of("uniformity.stiffness-factor");
        var sn = width.Millimetres;
        var shape = (Figures.Of("uniformity.stiffness-shape").Value - (Figures.Of("uniformity.stiffness-shape-slope").Value * aspect)) * sn * ((sn * aspect / 50) + rim);
        var kilogramsPerMillimetre = (factor.Value * pressure.Kilopascals * Math.Sqrt(shape)) + Figures.Of("uniformity.stiffness-constant").Value;
        return new SourcedStiffness(Stiffness.FromNewtonsPerMillimetre(kilogramsPerMillimetre * NewtonsPerKilogram), factor.Source);
    }

    /// <summary>
    /// The first harmonic of radial force that a first harmonic of radial runout makes, in the same convention (peak-to-peak from peak-to-peak).
    /// An upper bound: a tyre's own stiffness variation adds a second part.
    /// </summary>
    /// <source>derived: docs/theory/runout-and-matching.md (force from geometry)</source>
    public static HarmonicVector<Force> ForceOf(HarmonicVector<Length> runout, Stiffness stiffness) => new(runout.Si * stiffness.Si);
}

/// <summary>A tyre's mean lateral force, parted by turning it both ways.</summary>
/// <param name="Conicity">Keeps its direction on the tyre when the tyre turns the other way: a cone's.</param>
/// <param name="PlySteer">Changes its direction with the turning.</param>
public sealed record LateralForceParts(Force Conicity, Force PlySteer)
{
    /// <summary>Conicity is half the sum, ply steer half the difference, of the mean lateral forces turning clockwise and anticlockwise.</summary>
    /// <param name="clockwise">Mean lateral force turning clockwise, in one direction along the axis.</param>
    /// <param name="anticlockwise">The same turning anticlockwise, in the same direction.</param>
    /// <source>a teaching note on ply steer and conicity (read for the directions; formulas derived)</source>
    public static LateralForceParts Of(Force clockwise, Force anticlockwise) => new((clockwise + anticlockwise) / 2, (clockwise - anticlockwise) / 2);
}
