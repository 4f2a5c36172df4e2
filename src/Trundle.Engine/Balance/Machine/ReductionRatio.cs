using Trundle.Measures;

namespace Trundle.Engine.Balance.Machine;

/// <summary>The unbalance reduction ratio: how much of an unbalance one correction by what the machine shows takes away.</summary>
public static class ReductionRatio
{
    /// <summary>
    /// The ratio in per cent, by what was there and what was left. Below nothing where more was left than was there.
    /// </summary>
    /// <param name="initial">Before the correction, above nothing.</param>
    /// <param name="left">After it.</param>
    /// <source>H. P. Bloch, F. K. Geitner, Machinery Component Maintenance and Repair, p. 291 (ISO 21940-21): 95 % leaves 5 of 100</source>
    public static double Percent(Unbalance initial, Unbalance left) => 100 * (1 - (left / initial));

    /// <summary>
    /// What a correction by the shown vector would leave of the true one.
    /// </summary>
    /// <source>H. P. Bloch, F. K. Geitner, Machinery Component Maintenance and Repair, p. 291: residual is the vector difference</source>
    public static UnbalanceVector Left(UnbalanceVector actual, UnbalanceVector shown) => actual - shown;

    /// <summary>
    /// What an error of the angle alone leaves, in per cent of the unbalance: 2·sin(θ/2).
    /// </summary>
    /// <source>H. P. Bloch, F. K. Geitner, Machinery Component Maintenance and Repair, table 6-3</source>
    public static double LeftByAnglePercent(Angle error) => 200 * Math.Abs(Math.Sin(error.Radians / 2));

    /// <summary>The greatest error of angle that a ratio allows with the amount right.</summary>
    /// <source>H. P. Bloch, F. K. Geitner, Machinery Component Maintenance and Repair, table 6-3, turned round</source>
    public static Angle AngleAllowed(double ratioPercent) => Angle.FromRadians(2 * Math.Asin(Math.Clamp(1 - (ratioPercent / 100), 0, 2) / 2));

    /// <summary>
    /// By how many per cent an amount is off where the speed is off by so many: it goes with the square.
    /// </summary>
    /// <source>centrifugal force, F = m·R·ω²</source>
    public static double AmountErrorPercent(double speedErrorPercent) => 100 * (Math.Pow(1 + (speedErrorPercent / 100), 2) - 1);
}

/// <summary>What a measuring error leaves of a judgement.</summary>
public enum Acceptance
{
    /// <summary>Within the permissible unbalance whatever the error was.</summary>
    Accept,

    /// <summary>The error decides: nobody can say.</summary>
    Undecided,

    /// <summary>Beyond it whatever the error was.</summary>
    Reject,
}

/// <summary>Judging a reading that may be off.</summary>
public static class JudgedWithError
{
    /// <summary>Accepts up to the permissible unbalance less the error, rejects above the permissible unbalance and the error.</summary>
    /// <source>ISO 21940-14 (from memory)</source>
    public static Acceptance Of(Unbalance measured, Unbalance permissible, Unbalance error) =>
        measured <= permissible - error ? Acceptance.Accept
        : measured > permissible + error ? Acceptance.Reject
        : Acceptance.Undecided;
}

/// <summary>What an assembly that is clamped badly shows as unbalance that it has not.</summary>
public static class MountingError
{
    /// <summary>Unbalance of an assembly clamped off centre: 1 µm on 1 kg is 1 g·mm. A dial reads twice the eccentricity.</summary>
    /// <source>U = m·e; R. Kelm, W. Kelm, D. Pavelek, Rotor Balancing Tutorial, 2016, p. 3</source>
    public static Unbalance OfEccentricity(Mass assembly, Length eccentricity) => Unbalance.FromKilogramMetres(assembly.Kilograms * eccentricity.Metres);

    /// <summary>The eccentricity that an unbalance of the fixture comes to.</summary>
    /// <source>U = m·e; R. Kelm, W. Kelm, D. Pavelek, Rotor Balancing Tutorial, 2016, p. 3</source>
    public static Length EccentricityOf(Mass assembly, Unbalance unbalance) => Length.FromMetres(unbalance.KilogramMetres / assembly.Kilograms);

    /// <summary>Couple of an assembly clamped askew by a small angle.</summary>
    /// <param name="inertiaDifference">Moment of inertia about the shaft less that about a diameter.</param>
    /// <param name="askew">The angle between the assembly's axis and the shaft.</param>
    /// <source>C = |I_p − I_t|·τ for small τ: rigid-body mechanics, docs/theory/balancer.md</source>
    public static CoupleUnbalance OfCock(MomentOfInertia inertiaDifference, Angle askew) =>
        CoupleUnbalance.FromKilogramSquareMetres(Math.Abs(inertiaDifference.KilogramSquareMetres * askew.Radians));

    /// <summary>The angle askew that a couple of the fixture comes to.</summary>
    /// <param name="inertiaDifference">Moment of inertia about the shaft less that about a diameter, not nothing.</param>
    /// <param name="couple">The couple.</param>
    /// <source>C = |I_p − I_t|·τ for small τ: rigid-body mechanics, docs/theory/balancer.md</source>
    public static Angle CockOf(MomentOfInertia inertiaDifference, CoupleUnbalance couple) =>
        Angle.FromRadians(couple.KilogramSquareMetres / Math.Abs(inertiaDifference.KilogramSquareMetres));
}
