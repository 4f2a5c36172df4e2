using Trundle.Engine.Reference;

namespace Trundle.Engine.Balance.Spin;

/// <summary>What one transducer's samples show before any fit: an end of the scale, a stretch that stands still, steps too coarse.</summary>
/// <param name="Clipped">Samples that stand at an end of the scale in stretches of three or more.</param>
/// <param name="StandingStill">Samples in stretches that keep one value far longer than the signal's own steps explain.</param>
/// <param name="Levels">How many different values there are, counted up to the figure that is enough.</param>
internal sealed record SignalFaults(int Clipped, int StandingStill, int Levels)
{
    /// <summary>Below this many different values the steps of the scale show, and flat tops are no sign of clipping.</summary>
    public static Figure EnoughLevels => Figures.Of("spin.enoughLevels");

    /// <summary>Below this many a channel without anything once a turn only flickers by a step or two of its scale.</summary>
    public const int FewestLevelsOfASignal = 4;

    public static SignalFaults Of(ReadOnlySpan<double> samples, double? fullScale, double samplesPerTurn)
    {
        var enough = EnoughLevels.Value;
        var levels = LevelsOf(samples, enough);
        var (least, most) = (samples[0], samples[0]);
        foreach (var value in samples)
        {
            least = Math.Min(least, value);
            most = Math.Max(most, value);
        }

        var clipped = 0;
        if (fullScale is { } end)
        {
            clipped = AtEnd(samples, end) + AtEnd(samples, -end);
        }
        else if (levels >= enough)
        {
            clipped = Flat(samples, most, most - (0.02 * (most - least)), most) + Flat(samples, least, least, least + (0.02 * (most - least)));
        }

        return new SignalFaults(clipped, levels >= enough ? Still(samples, Math.Max(8, (int)(samplesPerTurn / 40)), least, most) : 0, levels);
    }

    /// <summary>Samples at or beyond an end of the scale, in stretches of three or more.</summary>
    private static int AtEnd(ReadOnlySpan<double> samples, double end)
    {
        var (count, run) = (0, 0);
        for (var k = 0; k <= samples.Length; k++)
        {
            if (k < samples.Length && (end > 0 ? samples[k] >= end : samples[k] <= end))
            {
                run++;
                continue;
            }

            count += run >= 3 ? run : 0;
            run = 0;
        }

        return count;
    }

    /// <summary>
    /// Samples at the extreme in stretches of three or more, where more than twice as many stand there as in the fiftieth of the range below it:
    /// a sine that was not cut dwells on its crest less than that.
    /// </summary>
    private static int Flat(ReadOnlySpan<double> samples, double extreme, double nearFrom, double nearTo)
    {
        var (count, run, at, near) = (0, 0, 0, 0);
        for (var k = 0; k <= samples.Length; k++)
        {
            if (k < samples.Length && samples[k] == extreme)
            {
                run++;
                at++;
                continue;
            }

            near += k < samples.Length && samples[k] >= nearFrom && samples[k] <= nearTo ? 1 : 0;
            count += run >= 3 ? run : 0;
            run = 0;
        }

        return at > 2 * near ? count : 0;
    }

    /// <summary>Samples in long stretches of one value that is not an extreme.</summary>
    private static int Still(ReadOnlySpan<double> samples, int longRun, double least, double most)
    {
        var (count, run) = (0, 1);
        for (var k = 1; k <= samples.Length; k++)
        {
            if (k < samples.Length && samples[k] == samples[k - 1])
            {
                run++;
                continue;
            }

            count += run >= longRun && samples[k - 1] > least && samples[k - 1] < most ? run : 0;
            run = 1;
        }

        return count;
    }

    private static int LevelsOf(ReadOnlySpan<double> samples, double enough)
    {
        var seen = new HashSet<double>();
        foreach (var value in samples)
        {
            if (seen.Add(value) && seen.Count >= enough)
            {
                break;
            }
        }

        return seen.Count;
    }
}
