using Trundle.Engine.Reference;

namespace Trundle.Engine.Balance.Spin;

/// <summary>Which turns between index marks are even, and the longest stretch of them.</summary>
internal static class EvenTurns
{
    /// <summary>
    /// The turns that differ from those beside them, each by the number of the mark that it begins with. A turn is held against the middle one of itself and its
    /// neighbours, so that a speed that changes one way is even; the first and the last against the two beside them and what those lead on to.
    /// </summary>
    /// <param name="marks">The marks, in samples.</param>
    /// <param name="turns">The turn at which each stands.</param>
    /// <source>Own choice: docs/theory/spin.md, flags</source>
    public static IReadOnlyList<int> Uneven(IReadOnlyList<double> marks, IReadOnlyList<int> turns)
    {
        double[] lengths = [.. Enumerable.Range(0, marks.Count - 1).Select(m => (marks[m + 1] - marks[m]) / (turns[m + 1] - turns[m]))];
        if (lengths.Length < 3)
        {
            return [];
        }

        var share = Figures.Of("spin.unevenTurnPercent").Value / 100;
        return [.. Enumerable.Range(0, lengths.Length).Where(m =>
            m == 0 ? OffEnd(0, 1, 2) : m == lengths.Length - 1 ? OffEnd(m, m - 1, m - 2) : Off(lengths[m], IndexTrack.Median([lengths[m - 1], lengths[m], lengths[m + 1]])))];

        bool Off(double turn, double usual) => Math.Abs(turn - usual) > Math.Max(2, share * usual);

        bool OffEnd(int end, int next, int after) =>
            Off(lengths[end], lengths[next]) && Off(lengths[end], lengths[after]) && Off(lengths[end], (2 * lengths[next]) - lengths[after]);
    }

    /// <summary>The samples of the longest stretch whose turns are all even, or null where it holds fewer turns than a reading takes.</summary>
    /// <param name="track">The marks.</param>
    /// <param name="samples">Samples in the recording.</param>
    public static Range? LongestStretch(IndexTrack track, int samples)
    {
        var marks = track.Marks;
        int[] ends = [-1, .. track.UnevenTurns, marks.Count - 1];
        var (first, last) = ends.Zip(ends.Skip(1), (a, b) => (First: a + 1, Last: b)).MaxBy(s => track.Turns[s.Last] - track.Turns[s.First]);
        if (track.Turns[last] - track.Turns[first] < Figures.Of("spin.fewTurns").Value)
        {
            return null;
        }

        // From the last sample before a mark to the first one behind it, so that the edge is still seen; before the first mark of all and behind the last nothing was found amiss.
        var from = first == 0 ? 0 : (int)Math.Floor(marks[first]);
        return from..(last == marks.Count - 1 ? samples : Math.Min(samples, (int)Math.Ceiling(marks[last]) + 1));
    }
}
