using System.Numerics;
using Trundle.Engine.Reference;
using Trundle.Engine.Uniformity;
using Trundle.Measures;

namespace Trundle.Engine.Balance;

/// <summary>What the error of a correction without phase rests on.</summary>
public enum CircleErrorBasis
{
    /// <summary>How far the runs miss the fit.</summary>
    Misses,

    /// <summary>How finely the amplitudes were read: the runs miss the fit by less than that.</summary>
    Reading,
}

/// <summary>
/// How sure a correction without phase is: one standard error of its mass and its angle, and the interval that holds the truth in so many of a hundred
/// cases. What the runs miss by tells their scatter from few numbers left over, so the interval is Student's; what a reading cannot tell is in it at least.
/// </summary>
/// <param name="Basis">What it rests on.</param>
/// <param name="LeftOver">Numbers left over to judge by: readings of the trial runs less two for each point.</param>
/// <param name="Along">One standard error of the correction along its direction: of its mass.</param>
/// <param name="Across">One standard error across it.</param>
/// <param name="Correction">The correction's mass.</param>
/// <param name="MassWithin">Half the interval of its mass.</param>
/// <param name="AcrossWithin">Half the interval across it.</param>
/// <param name="Within">The correction lies in a circle of this size about the one told, with the same chance.</param>
public sealed record CircleError(
    CircleErrorBasis Basis, int LeftOver, Mass Along, Mass Across, Mass Correction, Mass MassWithin, Mass AcrossWithin, Mass Within)
{
    /// <summary>The chance with which an interval holds the truth.</summary>
    /// <source>own choice: docs/theory/balance.md (without phase)</source>
    public static Figure Chance => Figures.Of("balance.trialInterval");

    /// <summary>One standard error of the correction's angle; null where it is as large as the correction.</summary>
    public Angle? Turn => AngleOf(Across);

    /// <summary>Half the interval of its angle; null where any angle may be right.</summary>
    public Angle? TurnWithin => AngleOf(AcrossWithin);

    /// <summary>The interval is as large as the correction itself, or larger.</summary>
    public bool IsAsLargeAsTheCorrection => Within.Si >= Correction.Si;

    /// <summary>
    /// The correction is W = -v0/a. An error e of the trial runs' amplitudes and e0 of the initial one move a by C·Jᵀ(e - c·e0), with J how each
    /// amplitude goes with a, c how it goes with v0, and C = (JᵀJ)⁻¹; W moves by the share e0/v0 - da/a of its size.
    /// </summary>
    /// <param name="initial">Amplitude of the initial run at the point that is moved most by a gram.</param>
    /// <param name="trials">The mass on in each trial run, in grams as a phasor.</param>
    /// <param name="influence">The fit's influence for each gram there.</param>
    /// <param name="correctionGrams">The size of the correction.</param>
    /// <param name="squares">The sum of squares of all misses.</param>
    /// <param name="leftOver">Numbers left over to judge by.</param>
    /// <param name="reading">One standard error of an amplitude by how finely it was read, in the meter's unit.</param>
    /// <returns>Null where the places of the trial masses tell nothing across their direction.</returns>
    internal static CircleError? Of(double initial, Complex[] trials, Complex influence, double correctionGrams, double squares, int leftOver, double reading)
    {
        double xx = 0, xy = 0, yy = 0, cx = 0, cy = 0;
        foreach (var t in trials)
        {
            var v = initial + (influence * t);
            var unit = v.Magnitude > 0 ? v / v.Magnitude : Complex.One;
            var (dx, dy) = ((Complex.Conjugate(unit) * t).Real, -(Complex.Conjugate(unit) * t).Imaginary);
            (xx, xy, yy) = (xx + (dx * dx), xy + (dx * dy), yy + (dy * dy));
            (cx, cy) = (cx + (dx * unit.Real), cy + (dy * unit.Real));
        }

        var determinant = (xx * yy) - (xy * xy);
        if (leftOver < 1 || determinant <= 1e-12 * (xx + yy) * (xx + yy))
        {
            return null;
        }

        // In shares of the correction's size, for errors of one: along its direction is the real part.
        var turn = Complex.Conjugate(influence) / influence.Magnitude;
        var (first, second) = (new Complex(yy, -xy) / determinant * turn, new Complex(-xy, xx) / determinant * turn);
        Complex Moved(double x, double y) => ((x * first) + (y * second)) / influence.Magnitude;
        var byInitial = (1 / initial) + Moved(cx, cy);
        double along = byInitial.Real * byInitial.Real, across = byInitial.Imaginary * byInitial.Imaginary, both = byInitial.Real * byInitial.Imaginary;
        foreach (var t in trials)
        {
            var v = initial + (influence * t);
            var direction = Complex.Conjugate(v.Magnitude > 0 ? v / v.Magnitude : Complex.One) * t;
            var moved = Moved(direction.Real, -direction.Imaginary);
            (along, across, both) = (along + (moved.Real * moved.Real), across + (moved.Imaginary * moved.Imaginary), both + (moved.Real * moved.Imaginary));
        }

        var longest = Math.Sqrt(((along + across) / 2) + Math.Sqrt((((along - across) / 2) * ((along - across) / 2)) + (both * both)));
        var scatter = Math.Sqrt(squares / leftOver);
        var outside = 1 - Chance.Value;
        var one = Math.Max(StudentTail.Quantile(outside, leftOver) * scatter, StudentTail.Quantile(outside, AsGoodAsKnown) * reading);
        var two = Math.Max(Math.Sqrt(leftOver * (Math.Pow(outside, -2.0 / leftOver) - 1)) * scatter, Math.Sqrt(-2 * Math.Log(outside)) * reading);
        return new CircleError(
            scatter >= reading ? CircleErrorBasis.Misses : CircleErrorBasis.Reading, leftOver,
            Grams(Math.Sqrt(along) * Math.Max(scatter, reading)), Grams(Math.Sqrt(across) * Math.Max(scatter, reading)), Mass.FromGrams(correctionGrams),
            Grams(Math.Sqrt(along) * one), Grams(Math.Sqrt(across) * one), Grams(longest * two));

        Mass Grams(double share) => Mass.FromGrams(share * correctionGrams);
    }

    // Student's t with so many numbers left over is the normal law's to three figures.
    private const int AsGoodAsKnown = 1000;

    private Angle? AngleOf(Mass across) => across.Si < Correction.Si ? Angle.FromRadians(Math.Asin(across.Si / Correction.Si)) : null;
}
