namespace Trundle.Engine.Practice;

/// <summary>One item over the attempts of a class.</summary>
/// <param name="Key">The criterion's key.</param>
/// <param name="Attempts">How many attempts there are.</param>
/// <param name="Difficulty">The share that met it, 0 to 1: the higher, the easier.</param>
/// <param name="PointBiserial">Correlation of meeting it with the score of all the other items, −1 to 1; null where it cannot be told: everybody met it or nobody, or the other scores are all alike.</param>
/// <param name="Discrimination">Share that met it in the upper part of the class less that in the lower part; null with fewer attempts than three or where the parts cannot be told apart.</param>
public sealed record ItemStatistic(string Key, int Attempts, double Difficulty, double? PointBiserial, double? Discrimination);

/// <summary>How hard each item is, and how well it parts those who can from those who cannot yet.</summary>
public static class ItemStatistics
{
    /// <summary>The share of the class in the upper and in the lower part.</summary>
    public const double PartShare = 0.27;

    /// <summary>
    /// Point-biserial correlation: (M₁ − M₀)/s · √(p·q) with s of the whole class by n; the same as Pearson's.
    /// </summary>
    /// <param name="met">Whether the item was met, by attempt.</param>
    /// <param name="scores">The scores, in the same order.</param>
    /// <returns>−1 to 1; null where all met it, none did, or all scores are alike.</returns>
    /// <source>point-biserial correlation, as the SciPy documentation states it (read); its printed example is tested</source>
    public static double? PointBiserial(IReadOnlyList<bool> met, IReadOnlyList<double> scores)
    {
        ArgumentNullException.ThrowIfNull(met);
        ArgumentNullException.ThrowIfNull(scores);
        if (met.Count != scores.Count)
        {
            throw new ArgumentException("One score for each attempt.", nameof(scores));
        }

        var ones = scores.Where((_, i) => met[i]).ToList();
        var zeros = scores.Where((_, i) => !met[i]).ToList();
        if (ones.Count == 0 || zeros.Count == 0)
        {
            return null;
        }

        var mean = scores.Average();
        var deviation = Math.Sqrt(scores.Sum(s => (s - mean) * (s - mean)) / scores.Count);
        var p = (double)ones.Count / scores.Count;
        return deviation > 1e-12 ? (ones.Average() - zeros.Average()) / deviation * Math.Sqrt(p * (1 - p)) : null;
    }

    /// <summary>
    /// Each item of a class's attempts. An item is held against the score of the other items, so that it does not correlate with itself.
    /// </summary>
    /// <param name="attempts">The attempts; of each, which criterion was met. All have the same keys.</param>
    /// <source>item analysis: difficulty is the share that met it; upper less lower 27 % (T. L. Kelley, 1939, from memory); corrected point-biserial as above</source>
    public static IReadOnlyList<ItemStatistic> Of(IReadOnlyList<IReadOnlyDictionary<string, bool>> attempts)
    {
        ArgumentNullException.ThrowIfNull(attempts);
        if (attempts.Count == 0)
        {
            return [];
        }

        return [.. attempts[0].Keys.Select(key =>
        {
            bool[] met = [.. attempts.Select(a => a[key])];
            double[] others = [.. attempts.Select(a => (double)a.Count(i => i.Key != key && i.Value))];
            double[] totals = [.. attempts.Select(a => (double)a.Count(i => i.Value))];
            return new ItemStatistic(key, met.Length, (double)met.Count(m => m) / met.Length, PointBiserial(met, others), Parts(met, totals));
        })];
    }

    private static double? Parts(bool[] met, double[] totals)
    {
        var size = (int)Math.Round(PartShare * met.Length, MidpointRounding.AwayFromZero);
        if (met.Length < 3 || size == 0 || totals.Distinct().Count() < 2)
        {
            return null;
        }

        var ranked = met.Zip(totals).GroupBy(x => x.Second).OrderBy(g => g.Key).Select(g => (Count: g.Count(), Met: (double)g.Count(x => x.First))).ToList();
        return (First(Enumerable.Reverse(ranked), size) - First(ranked, size)) / size;
    }

    /// <summary>How many of the first so many met it; of a group of equal scores that only partly belongs to them, its own share of it.</summary>
    private static double First(IEnumerable<(int Count, double Met)> groups, int size)
    {
        var (left, met) = (size, 0.0);
        foreach (var group in groups)
        {
            var taken = Math.Min(left, group.Count);
            met += group.Met * taken / group.Count;
            left -= taken;
        }

        return met;
    }
}
