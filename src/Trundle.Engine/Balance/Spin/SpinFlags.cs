namespace Trundle.Engine.Balance.Spin;

/// <summary>The codes of everything that makes a spin or a calibration less to be trusted. Each has its row in docs/guide/spin-files.md.</summary>
public static class SpinFlags
{
    /// <summary>All of them.</summary>
    public static IReadOnlyList<string> All { get; } =
    [
        "too-few-turns", "marks-missing", "marks-extra", "marks-uneven", "speed-drift", "speed-differs", "clipped", "drop-out", "no-signal", "coarse-steps", "loose-object",
        "speed-outside-calibration", "planes-not-independent", "planes-nearly-dependent", "errors-not-small", "spins-do-not-fit",
    ];

    /// <summary>A code that is among them; throws for any other, so that no warning goes out that the guide does not name.</summary>
    internal static string Known(string code) => All.Contains(code) ? code : throw new ArgumentException($"'{code}' is no flag of a spin.", nameof(code));
}
