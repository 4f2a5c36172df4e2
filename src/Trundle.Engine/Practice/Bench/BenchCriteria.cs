namespace Trundle.Engine.Practice.Bench;

/// <summary>What an attempt at the practice bench is judged by; shown before it begins.</summary>
public static class BenchCriteria
{
    /// <summary>The criteria of a level, 100 points together.</summary>
    /// <param name="level">The level.</param>
    /// <source>own choice for practice: docs/theory/practice.md (criteria)</source>
    public static IReadOnlyList<Criterion> Of(PracticeLevel level)
    {
        var own = Own(level);
        if (level == PracticeLevel.OneStaticWeight)
        {
            // It comes clamped and set.
            return [Tolerance(60), Check(25), Rounds, Mass];
        }

        return
        [
            Tolerance(own is null ? 40 : 30),
            Check(own is null ? 15 : 10),
            new("centred", "The cone suits the bore, its small end points outwards, and the nut was run up free.", 15, true),
            new("settings", "Rim distance, rim diameter and rim width are those of this wheel.", 15, true),
            Rounds,
            Mass,
            .. own is null ? [] : new[] { own },
        ];
    }

    private static Criterion Rounds { get; } = new("rounds", "Weights were fitted after no more than two spins.", 10, false);

    private static Criterion Mass { get; } = new("mass", "No weights pull against each other.", 5, false);

    private static Criterion Tolerance(int points) => new("tolerance", "What is left on the wheel itself, wherever it is mounted, is within the tolerance.", points, true);

    private static Criterion Check(int points) => new("check", "A check spin was made after the last change.", points, true);

    /// <summary>What a level asks besides.</summary>
    private static Criterion? Own(PracticeLevel level) => level switch
    {
        PracticeLevel.OneStaticWeight or PracticeLevel.TwoPlanes => null,
        PracticeLevel.SplitBehindSpokes => new("spokes", "Every weight of the outer side is behind a spoke.", 15, true),
        PracticeLevel.WrongSetting => new("fault", "The setting that was left wrong is named.", 15, true),
        PracticeLevel.MatchMounting => new("fault", "The tyre was turned on the wheel so that neither side needs more than the figure of a wheel to look at again, and the runout is not above its limits.", 15, true),
        PracticeLevel.OutOfCalibration => new("fault", "The machine was found out of calibration, named, and calibrated anew.", 15, true),
    };
}
