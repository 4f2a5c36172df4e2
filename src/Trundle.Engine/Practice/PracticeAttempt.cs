using System.Globalization;
using Trundle.Engine.Practice.Bench;
using Trundle.Engine.Practice.Drills;
using Trundle.Measures;

namespace Trundle.Engine.Practice;

/// <summary>One kind of practice: a level of the practice wheel, or a drill.</summary>
/// <param name="Key">In addresses and rows: <c>wheel/two-planes</c>, <c>drill/tin</c>.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Line">What it is for.</param>
/// <param name="Task">The task of the list that it practises.</param>
public sealed record PracticeKind(string Key, string Title, string Line, string Task)
{
    /// <summary>The level, where it is a wheel.</summary>
    public PracticeLevel? Level { get; init; }

    /// <summary>The drill of questions, where it is one.</summary>
    public DrillKind? Drill { get; init; }
}

/// <summary>What somebody did, to be judged wherever it comes to.</summary>
/// <param name="Kind">Which kind, by its key.</param>
/// <param name="Seed">The number of the wheel or the drill.</param>
/// <param name="Day">The day on which ages are told.</param>
/// <param name="Acts">What was done, line by line.</param>
public sealed record PracticeAttempt(string Kind, ulong Seed, DateOnly Day, IReadOnlyList<string> Acts);

/// <summary>All practice, and attempts at it judged by doing them again.</summary>
public static class PracticeAttempts
{
    /// <summary>The key of the stud circle.</summary>
    public const string Tightening = "drill/tightening";

    /// <summary>The key of the order of a demount.</summary>
    public const string Demount = "drill/demount";

    /// <summary>Every kind, in the order in which they are offered.</summary>
    public static IReadOnlyList<PracticeKind> Kinds { get; } =
    [
        Wheel(PracticeLevel.OneStaticWeight, "one-weight", "One weight", "clamped and set already: one weight at the right place"),
        Wheel(PracticeLevel.TwoPlanes, "two-planes", "Two planes", "centre, measure, set, and both sides"),
        Wheel(PracticeLevel.SplitBehindSpokes, "behind-spokes", "Behind spokes", "outer weights go behind spokes only"),
        Wheel(PracticeLevel.WrongSetting, "wrong-setting", "A wrong setting", "one setting was left from another wheel: find it"),
        Wheel(PracticeLevel.MatchMounting, "match", "Tyre and wheel together", "both heavy on one side: turn the tyre first"),
        Wheel(PracticeLevel.OutOfCalibration, "calibration", "A machine that is off", "is it right in itself? find out before the first weight"),
        new(Tightening, "Tighten a wheel", "sequence and stages on the stud circle", "refit-torque"),
        new(Demount, "Order of a demount", "what comes before what, and what never", "demount-mount"),
        Questions(DrillKind.Sidewall, "sidewall", "what a marking says", "inspect"),
        Questions(DrillKind.Tin, "tin", "week, year and age", "inspect"),
        Questions(DrillKind.Tread, "tread", "which depth counts, and is it enough", "inspect"),
        Questions(DrillKind.Damage, "damage", "what becomes of the tyre", "inspect"),
        Questions(DrillKind.PressureAtTemperature, "pressure", "cold, warm, and what to do", "pressure"),
        Questions(DrillKind.Rotation, "rotation", "which pattern may be done", "rotate"),
        Questions(DrillKind.Mixing, "mixing", "which constructions stand together", "inspect"),
        Questions(DrillKind.Adapter, "adapter", "what to set on the wrench", "refit-torque"),
    ];

    /// <summary>The kind of a key, or null.</summary>
    /// <source>the project's own words</source>
    public static PracticeKind? Of(string key) => Kinds.FirstOrDefault(k => k.Key == key);

    /// <summary>Judges an attempt by doing it again: no score is believed.</summary>
    /// <param name="attempt">What was done.</param>
    /// <returns>The result, or the first thing that is no part of such an attempt.</returns>
    /// <source>docs/theory/practice.md (attempts)</source>
    public static Reading<PracticeResult> Judge(PracticeAttempt attempt)
    {
        ArgumentNullException.ThrowIfNull(attempt);
        return Of(attempt.Kind) switch
        {
            null => Reading<PracticeResult>.Failed(new Problem("kind", "kind-unknown", $"'{NumberText.Shown(attempt.Kind)}' is no kind of practice.")),
            { Level: { } level } => BenchActs.Replay(PracticeWheels.Of(attempt.Seed, level), attempt.Acts).Then(b => Reading<PracticeResult>.Of(BenchJudge.Judge(b))),
            { Drill: { } drill } => Answers(DrillList.Of(drill, attempt.Seed, attempt.Day), attempt.Acts),
            { Key: Tightening } => Tightened(TighteningDrill.Of(attempt.Seed), attempt.Acts),
            _ => Demounted(DemountDrill.Of(attempt.Seed), attempt.Acts),
        };
    }

    /// <summary>An answer to a question as one line.</summary>
    /// <param name="key">The question's key.</param>
    /// <param name="answer">As typed or chosen.</param>
    /// <source>the project's own form: docs/theory/practice.md (attempts)</source>
    public static string Line(string key, string answer) => $"{key}={answer}";

    /// <summary>A deed on the stud circle as one line.</summary>
    /// <param name="act">The deed.</param>
    /// <source>the project's own form: docs/theory/practice.md (attempts)</source>
    public static string Line(TighteningAct act) => string.Create(CultureInfo.InvariantCulture, $"{Word(act.Deed)} {act.Fixing} {act.Stage}");

    private static Reading<PracticeResult> Answers(Drill drill, IReadOnlyList<string> lines)
    {
        var answers = new Dictionary<string, string>(StringComparer.Ordinal);
        for (var i = 0; i < lines.Count; i++)
        {
            var parts = lines[i].Split('=', 2);
            if (parts.Length < 2 || !drill.Questions.Any(q => q.Criterion.Key == parts[0]) || !answers.TryAdd(parts[0], parts[1]))
            {
                return NoAct(i, lines[i]);
            }
        }

        return Reading<PracticeResult>.Of(drill.Judge(answers));
    }

    private static Reading<PracticeResult> Tightened(TighteningDrill drill, IReadOnlyList<string> lines)
    {
        var acts = new List<TighteningAct>();
        for (var i = 0; i < lines.Count; i++)
        {
            var words = lines[i].Split(' ');
            var deed = Enum.GetValues<TighteningDeed>().Where(d => Word(d) == words[0]).Select(d => (TighteningDeed?)d).FirstOrDefault();
            if (deed is null || words.Length != 3
                || !int.TryParse(words[1], NumberStyles.None, CultureInfo.InvariantCulture, out var fixing) || fixing < 1 || fixing > drill.Count
                || !int.TryParse(words[2], NumberStyles.None, CultureInfo.InvariantCulture, out var stage) || stage >= drill.Percents.Count)
            {
                return NoAct(i, lines[i]);
            }

            acts.Add(new TighteningAct(deed.Value, fixing, stage));
        }

        return Reading<PracticeResult>.Of(drill.Judge(acts));
    }

    private static Reading<PracticeResult> Demounted(DemountDrill drill, IReadOnlyList<string> lines)
    {
        for (var i = 0; i < lines.Count; i++)
        {
            if (!drill.Offered.Any(d => d.Key == lines[i]))
            {
                return NoAct(i, lines[i]);
            }
        }

        return Reading<PracticeResult>.Of(drill.Judge(lines));
    }

    private static Reading<PracticeResult> NoAct(int index, string line) =>
        Reading<PracticeResult>.Failed(new Problem(string.Create(CultureInfo.InvariantCulture, $"acts[{index}]"), "no-act", $"'{NumberText.Shown(line)}' is no part of this practice."));

    private static string Word(TighteningDeed deed) => deed switch
    {
        TighteningDeed.ByHand => "by-hand",
        TighteningDeed.Wrench => "wrench",
        TighteningDeed.PowerTool => "power-tool",
        TighteningDeed.Oil => "oil",
    };

    private static PracticeKind Wheel(PracticeLevel level, string key, string title, string line) => new($"wheel/{key}", title, line, "balance") { Level = level };

    private static PracticeKind Questions(DrillKind kind, string key, string line, string task) => new($"drill/{key}", DrillList.Title(kind), line, task) { Drill = kind };
}
