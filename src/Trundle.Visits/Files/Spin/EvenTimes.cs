using System.Globalization;
using Trundle.Measures;

namespace Trundle.Visits.Files.Spin;

/// <summary>What a column of times says: the longest stretch without a gap, its sample rate, and how many gaps there were.</summary>
internal sealed record EvenTimes(Range Stretch, Frequency Rate, int Gaps)
{
    /// <summary>Reads three times or more, in seconds; a problem has no place of its own, and names the line.</summary>
    /// <param name="time">The times.</param>
    /// <param name="firstLine">The line of the first of them.</param>
    public static Reading<EvenTimes> Of(double[] time, int firstLine)
    {
        var steps = new double[time.Length - 1];
        for (var k = 0; k < steps.Length; k++)
        {
            steps[k] = time[k + 1] - time[k];
            if (steps[k] <= 0)
            {
                return Wrong(string.Create(CultureInfo.InvariantCulture, $"the time on line {firstLine + k + 1} or just before it does not come after the one before"));
            }
        }

        var usual = steps.Order().ElementAt(steps.Length / 2);
        var (from, length, at, gaps) = (0, 0, 0, 0);
        for (var k = 0; k <= steps.Length; k++)
        {
            if (k < steps.Length && steps[k] <= 1.75 * usual)
            {
                continue;
            }

            gaps += k < steps.Length ? 1 : 0;
            if (k + 1 - at > length)
            {
                (from, length) = (at, k + 1 - at);
            }

            at = k + 1;
        }

        if (length < 3)
        {
            return Wrong("the times are not evenly spaced");
        }

        var step = (time[from + length - 1] - time[from]) / (length - 1);
        for (var k = 0; k < length; k++)
        {
            // Times that were rounded when they were written stray by half of their last digit, not by half a sample.
            if (Math.Abs(time[from + k] - time[from] - (k * step)) > 0.75 * step)
            {
                return Wrong(string.Create(CultureInfo.InvariantCulture, $"the times are not evenly spaced near line {firstLine + from + k}; a recording is sampled at one rate"));
            }
        }

        return Reading<EvenTimes>.Of(new EvenTimes(from..(from + length), Frequency.FromHertz(1 / step), gaps));
    }

    private static Reading<EvenTimes> Wrong(string what) => Reading<EvenTimes>.Failed(new Problem("", "time-uneven", $"The CSV's times are not right: {what}."));
}
