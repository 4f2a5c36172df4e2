using System.Numerics;
using Trundle.Measures;

namespace Trundle.Engine.Balance;

/// <summary>
/// One once-per-turn vibration: an amplitude in whatever unit the meter shows, and its phase where the meter has one.
/// The sense of phases is the input's own and is never turned round.
/// </summary>
/// <param name="Amplitude">In the meter's unit, not below nothing.</param>
/// <param name="Phase">Phase, or null where none was measured.</param>
public sealed record VibrationReading(double Amplitude, Angle? Phase)
{
    /// <summary>One standard error of the amplitude by how finely it was read or recorded, in the meter's unit; 0 where that is not known.</summary>
    public double ReadTo { get; init; }

    internal Complex Phasor => Complex.FromPolarCoordinates(Amplitude, Phase?.Radians ?? 0);

    internal static VibrationReading Of(Complex phasor) => new(phasor.Magnitude, InOneTurn(phasor.Phase));

    /// <summary>An angle brought into 0 ≤ angle &lt; 360°.</summary>
    internal static Angle InOneTurn(double radians) => Angle.FromDegrees(WheelAngle.FromRadians(radians).Degrees);
}

/// <summary>A mass on a plane at an angle, both numbered and measured as in the input.</summary>
/// <param name="Plane">The plane's number, from 1.</param>
/// <param name="Mass">The mass.</param>
/// <param name="Angle">The angle in the input's one sense, 0 ≤ angle &lt; 360° in answers.</param>
public sealed record PlaneMass(int Plane, Mass Mass, Angle Angle)
{
    internal Complex Grams => Complex.FromPolarCoordinates(Mass.Grams, Angle.Radians);

    internal static PlaneMass Of(int plane, Complex grams) =>
        new(plane, Mass.FromGrams(grams.Magnitude), VibrationReading.InOneTurn(grams.Phase));
}

/// <summary>One run: what was put on for it, and the vibration at every measuring point.</summary>
/// <param name="Trial">What this run added, or null for the initial run.</param>
/// <param name="Vibration">One reading a point.</param>
public sealed record TrialRun(PlaneMass? Trial, IReadOnlyList<VibrationReading> Vibration);

/// <summary>What a gram at angle nothing on one plane does to the vibration at one point.</summary>
/// <param name="MagnitudePerGram">Vibration for each gram, in the meter's unit.</param>
/// <param name="Phase">Its phase, 0 ≤ phase &lt; 360° in answers.</param>
public sealed record InfluenceCoefficient(double MagnitudePerGram, Angle Phase)
{
    internal Complex PerGram => Complex.FromPolarCoordinates(MagnitudePerGram, Phase.Radians);

    internal static InfluenceCoefficient Of(Complex perGram) => new(perGram.Magnitude, VibrationReading.InOneTurn(perGram.Phase));
}
