using Trundle.Engine.Reference;
using Trundle.Measures;

namespace Trundle.Engine.Balance.Spin;

/// <summary>The once-per-turn amplitude of a recording that has no index mark: of a meter or a telephone that rides along, at a speed known roughly.</summary>
/// <param name="Speed">The speed of turning found in the recording.</param>
/// <param name="SpeedStandardError">One standard error of it.</param>
/// <param name="Amplitude">The first harmonic's amplitude, in the recording's own unit.</param>
/// <param name="AmplitudeStandardError">One standard error of it, from what the harmonics leave.</param>
/// <param name="Turns">How many turns the recording holds.</param>
/// <param name="DriftPercent">The change of speed from its beginning to its end, by its halves; null where a half has too few turns to tell.</param>
public sealed record OrderAmplitude(
    RotationalSpeed Speed, RotationalSpeed SpeedStandardError, double Amplitude, double AmplitudeStandardError, double Turns, double? DriftPercent)
{
    private const double LeastTurns = 2;

    /// <summary>How far from the speed that was told the search goes, on either side.</summary>
    /// <source>own choice: docs/theory/spin.md (without an index mark)</source>
    public static Figure SearchPercent => Figures.Of("spin.orderSearchPercent");

    /// <summary>
    /// Looks about the speed for the strongest once-per-turn line, by sums at close-standing speeds, and fits amplitude and speed there by least squares.
    /// </summary>
    /// <param name="samples">Evenly spaced samples, in any unit.</param>
    /// <param name="sampleRate">Samples in a second; more than four for each turn.</param>
    /// <param name="near">The speed of turning as told by the speedometer and the rolling circumference.</param>
    /// <returns>The amplitude with its error; null where there are fewer than two turns or five samples a turn, or no line settles within the search.</returns>
    /// <source>IEEE Std 1057, four-parameter sine fit (from memory), begun at the greatest of the scanned sums: docs/theory/spin.md</source>
    public static OrderAmplitude? Of(ReadOnlySpan<double> samples, Frequency sampleRate, RotationalSpeed near)
    {
        var width = SearchPercent.Value / 100;
        var turns = samples.Length / sampleRate.Hertz * near.RadiansPerSecond / (2 * Math.PI);
        var samplesPerTurn = sampleRate.Hertz * 2 * Math.PI / (near.RadiansPerSecond * (1 + width));
        if (turns * (1 - width) < LeastTurns || samplesPerTurn < 5)
        {
            return null;
        }

        // Three harmonics where the sampling carries them, so that a lumpy once-per-turn shape is no noise.
        var harmonics = Math.Clamp((int)(samplesPerTurn / 2.5), 1, 3);
        var begin = Scan(samples, sampleRate, near, width, samplesPerTurn);
        if (SineFit.WithUnknownSpeed(samples, sampleRate, begin, harmonics) is not { Settled: true } fit || Math.Abs((fit.Speed / near) - 1) > width)
        {
            return null;
        }

        return new OrderAmplitude(fit.Speed, fit.SpeedStandardError, fit.Harmonics.Amplitude, fit.Harmonics.AmplitudeStandardError,
            samples.Length / sampleRate.Hertz * fit.Speed.RadiansPerSecond / (2 * Math.PI), Drift(samples, sampleRate, near, width, samplesPerTurn, harmonics));
    }

    private static RotationalSpeed Scan(ReadOnlySpan<double> samples, Frequency sampleRate, RotationalSpeed near, double width, double samplesPerTurn) =>
        StrongestLine.Between(samples, sampleRate, near * (1 - width), near * (1 + width), samplesPerTurn).Speed;

    private static double? Drift(ReadOnlySpan<double> samples, Frequency sampleRate, RotationalSpeed near, double width, double samplesPerTurn, int harmonics)
    {
        var half = samples.Length / 2;
        if (half / samplesPerTurn < Figures.Of("spin.fewTurns").Value || SpeedOf(samples[..half]) is not { } first || SpeedOf(samples[half..]) is not { } second)
        {
            return null;
        }

        // The halves' middles lie half a recording apart, so the whole change is twice what parts them.
        return 200 * ((second / first) - 1);

        RotationalSpeed? SpeedOf(ReadOnlySpan<double> part) =>
            SineFit.WithUnknownSpeed(part, sampleRate, Scan(part, sampleRate, near, width, samplesPerTurn), harmonics) is { Settled: true } fit ? fit.Speed : null;
    }
}
