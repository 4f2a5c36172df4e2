using System.Globalization;

namespace Trundle.Engine.Wear;

/// <summary>The evidence of a pattern in words and numbers.</summary>
internal static class WearEvidence
{
    public static string Of(WearPattern pattern, TreadReadings readings, double logRatio)
    {
        var seen = pattern switch
        {
            WearPattern.Even => $"{Across(readings)}; {Around(readings)}",
            WearPattern.Centre or WearPattern.BothShoulders or WearPattern.OneShoulder => Across(readings),
            WearPattern.Feather => Ribs(readings),
            WearPattern.HeelAndToe => Blocks(readings),
            WearPattern.Cups or WearPattern.Diagonal or WearPattern.FlatSpot => Around(readings),
            WearPattern.Other => $"{Across(readings)}; {Around(readings)}",
        };
        return pattern == WearPattern.Even ? seen : $"{seen}. {Times(logRatio)}";
    }

    /// <summary>The means across, as a finding gives them too.</summary>
    public static string Across(TreadReadings readings)
    {
        var parts = new[] { (-1, "inner"), (0, "centre"), (1, "outer") }.Select(p => (Mean: readings.Mean(p.Item1), Name: p.Item2)).ToList();
        var known = parts.Where(p => p.Mean is not null).ToList();
        return known.Count == 0
            ? "no groove was measured"
            : string.Create(CultureInfo.InvariantCulture, $"{string.Join(", ", known.Select(p => string.Create(CultureInfo.InvariantCulture, $"{p.Name} {p.Mean:0.0}")))} mm{(known.Count < 3 ? $" ({string.Join(" and ", parts.Where(p => p.Mean is null).Select(p => p.Name))} not measured)" : "")}");
    }

    public static string Around(TreadReadings readings) => readings.Rounds.Count < 2
        ? "measured at one place around only"
        : string.Create(CultureInfo.InvariantCulture, $"up to {readings.Range:0.0#} mm apart around, at {readings.Rounds.Count} places");

    private static string Ribs(TreadReadings readings) => readings.Ribs.Count == 0
        ? "no rib was measured at its edges"
        : string.Create(CultureInfo.InvariantCulture, $"the ribs' inner edges are on average {Math.Abs(readings.Ribs.Average(r => r.DifferenceMm)):0.0} mm {(readings.Ribs.Average(r => r.DifferenceMm) < 0 ? "lower" : "higher")} than their outer ones");

    private static string Blocks(TreadReadings readings) => readings.BlocksMm.Count == 0
        ? "no block was measured at its edges"
        : string.Create(CultureInfo.InvariantCulture, $"the blocks' leading edges are on average {Math.Abs(readings.BlocksMm.Average()):0.0} mm {(readings.BlocksMm.Average() < 0 ? "lower" : "higher")} than their trailing ones");

    private static string Times(double logRatio)
    {
        var times = Math.Pow(10, Math.Abs(logRatio));
        return times < 1.15
            ? "The depths speak no more for it than for even wear"
            : string.Create(CultureInfo.InvariantCulture, $"The depths are {(times > 1000 ? "over 1000" : times < 10 ? times.ToString("0.0", CultureInfo.InvariantCulture) : times.ToString("0", CultureInfo.InvariantCulture))} times {(logRatio > 0 ? "likelier" : "less likely")} with it than with even wear");
    }
}
