using Trundle.Engine.Practice.Bench;
using Trundle.Engine.Practice.Drills;

namespace Trundle.Web.Client.Practice;

/// <summary>The names of practice wheels and drills in addresses and on pages.</summary>
public static class PracticeWords
{
    /// <summary>Every level: its key in the address, its name, what is new on it.</summary>
    public static IReadOnlyList<(PracticeLevel Level, string Key, string Title, string Line)> Levels { get; } =
    [
        (PracticeLevel.OneStaticWeight, "one-weight", "One weight", "clamped and set already: one weight at the right place"),
        (PracticeLevel.TwoPlanes, "two-planes", "Two planes", "centre, measure, set, and both sides"),
        (PracticeLevel.SplitBehindSpokes, "behind-spokes", "Behind spokes", "outer weights go behind spokes only"),
        (PracticeLevel.WrongSetting, "wrong-setting", "A wrong setting", "one setting was left from another wheel: find it"),
        (PracticeLevel.MatchMounting, "match", "Tyre and wheel together", "both heavy on one side: turn the tyre first"),
        (PracticeLevel.OutOfCalibration, "calibration", "A machine that is off", "is it right in itself? find out before the first weight"),
    ];

    /// <summary>Every drill of questions: its key and what it trains.</summary>
    public static IReadOnlyList<(DrillKind Kind, string Key, string Line)> Drills { get; } =
    [
        (DrillKind.Sidewall, "sidewall", "what a marking says"),
        (DrillKind.Tin, "tin", "week, year and age"),
        (DrillKind.Tread, "tread", "which depth counts, and is it enough"),
        (DrillKind.Damage, "damage", "what becomes of the tyre"),
        (DrillKind.PressureAtTemperature, "pressure", "cold, warm, and what to do"),
        (DrillKind.Rotation, "rotation", "which pattern may be done"),
        (DrillKind.Mixing, "mixing", "which constructions stand together"),
        (DrillKind.Adapter, "adapter", "what to set on the wrench"),
    ];

    /// <summary>The list of all practice.</summary>
    public const string All = "/bay/practice";

    /// <summary>A practice wheel.</summary>
    public static string Wheel(string level, int seed, string? part = null) => FormattableString.Invariant($"{All}/wheel/{level}/{seed}{(part is null ? "" : $"/{part}")}");

    /// <summary>A drill.</summary>
    public static string Drill(string key, int seed) => FormattableString.Invariant($"{All}/drill/{key}/{seed}");

    /// <summary>A number that nobody chose.</summary>
    public static int AnySeed() => Random.Shared.Next(1, 1_000_000);
}
