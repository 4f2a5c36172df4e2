using Trundle.Engine.Reference;
using Trundle.Engine.Vectors;
using Trundle.Measures;

namespace Trundle.Engine.Uniformity;

/// <summary>The assembly's first harmonic with the tyre at one turn on its wheel.</summary>
/// <param name="Turn">How far the tyre stands turned on the wheel since the first mounting, clockwise as seen from outside.</param>
/// <param name="Assembly">What was measured, from the valve.</param>
/// <typeparam name="T">The quantity.</typeparam>
public sealed record Mounting<T>(Angle Turn, HarmonicVector<T> Assembly) where T : struct, IQuantity<T>;

/// <summary>Tyre and wheel parted, or why not.</summary>
/// <typeparam name="T">The quantity.</typeparam>
public abstract record PartingOutcome<T> where T : struct, IQuantity<T>
{
    private PartingOutcome()
    {
    }

    /// <summary>Both parts are known.</summary>
    /// <param name="Tyre">The tyre's share as it stood at turn nothing.</param>
    /// <param name="Wheel">The wheel's share.</param>
    /// <param name="NoiseGain">Standard uncertainty of either part over that of one measurement.</param>
    /// <param name="Misfit">Root mean square of what the two parts do not explain; nothing with two mountings.</param>
    /// <param name="StandardError">Of either part along any direction, from the misfit; null with two mountings.</param>
    public sealed record Parted(HarmonicVector<T> Tyre, HarmonicVector<T> Wheel, double NoiseGain, T Misfit, T? StandardError) : PartingOutcome<T>;

    /// <summary>The turns are so small that an error of measuring would be all there is in the answer.</summary>
    /// <param name="Least">The least turn between two mountings.</param>
    public sealed record TurnTooSmall(Angle Least) : PartingOutcome<T>;

    /// <summary>The mountings differ by less than the gauge repeats.</summary>
    /// <param name="Difference">The greatest difference.</param>
    public sealed record WithinRepeatability(T Difference) : PartingOutcome<T>;

    /// <summary>Goes on with one of the three cases.</summary>
    public TResult Match<TResult>(Func<Parted, TResult> parted, Func<TurnTooSmall, TResult> turnTooSmall, Func<WithinRepeatability, TResult> withinRepeatability)
    {
        ArgumentNullException.ThrowIfNull(parted);
        ArgumentNullException.ThrowIfNull(turnTooSmall);
        ArgumentNullException.ThrowIfNull(withinRepeatability);
        return this switch
        {
            Parted p => parted(p),
            TurnTooSmall t => turnTooSmall(t),
            WithinRepeatability w => withinRepeatability(w),
            _ => throw new InvalidOperationException(),
        };
    }
}

/// <summary>Parting tyre and wheel by measuring the assembly with the tyre turned on the wheel in between.</summary>
public static class MountingParts
{
    /// <summary>
    /// Tyre's and wheel's shares of the assembly's first harmonic: T = (A₂ − A₁)/(e^{iα} − 1), W = A₁ − T; with more mountings by least squares.
    /// </summary>
    /// <param name="mountings">Two or more.</param>
    /// <param name="repeatability">How far the gauge's own repeats lie apart, or null.</param>
    /// <returns>One of the three cases.</returns>
    /// <source>vector algebra, derived: docs/theory/runout-and-matching.md (two mountings); a passenger-car maker's bulletin of 1990 does the same by hand</source>
    public static PartingOutcome<T> Part<T>(IReadOnlyList<Mounting<T>> mountings, T? repeatability) where T : struct, IQuantity<T>
    {
        ArgumentNullException.ThrowIfNull(mountings);
        var least = Figures.Of("uniformity.least-turn").As<Angle>();
        double[] turns = [.. mountings.Select(m => m.Turn.Radians)];
        if (mountings.Count < 2 || IndexParting.NoiseGainOf(turns) > IndexParting.NoiseGainOf([0, least.Radians]) * (1 + 1e-9))
        {
            return new PartingOutcome<T>.TurnTooSmall(least);
        }

        var difference = mountings.Max(a => mountings.Max(b => (a.Assembly.Si - b.Assembly.Si).Magnitude));
        if (repeatability is { } r && difference < r.Si)
        {
            return new PartingOutcome<T>.WithinRepeatability(T.FromSi(difference));
        }

        var parted = IndexParting.Of([.. mountings.Select(m => m.Assembly.Si)], turns);
        return new PartingOutcome<T>.Parted(
            new HarmonicVector<T>(parted.Turned),
            new HarmonicVector<T>(parted.Fixed),
            parted.NoiseGain,
            T.FromSi(mountings.Count > 2 ? parted.MisfitRootMeanSquare : 0),
            parted.StandardError is { } e ? T.FromSi(e) : null);
    }
}
