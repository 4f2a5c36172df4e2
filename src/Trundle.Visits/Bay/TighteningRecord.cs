using System.Globalization;
using Trundle.Engine.Fixings;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Bay;

/// <summary>
/// How far the stages at one wheel had come, fixing by fixing, as it was entered: so that leaving the page loses nothing. It is the record of
/// the hand at work; that the stages are done is recorded at the step itself.
/// </summary>
/// <param name="Stages">The stages from the first on.</param>
/// <param name="BegunAgain">How often the wheel was begun again.</param>
/// <param name="WentOn">What a person said when the wheel was gone on with after it had been left, or null.</param>
public sealed record TighteningRecord(IReadOnlyList<RecordedStage> Stages, int BegunAgain, string? WentOn)
{
    /// <summary>The most stages that a record may have.</summary>
    public const int MostStages = 9;

    /// <summary>Nothing recorded.</summary>
    public static TighteningRecord Empty { get; } = new([], 0, null);

    /// <summary>What each fixing got at each stage, by whom and with which wrench; empty where no torque was recorded.</summary>
    public IReadOnlyList<StageTorques> Torques { get; init; } = [];

    /// <summary>The path of what was recorded of a stage, from 0: its torques by fixing, and the wrench.</summary>
    public static string TorquesAt(string position, int stage) => string.Create(CultureInfo.InvariantCulture, $"{FieldAt(position)}.torques.stage-{stage + 1}");

    /// <summary>The field of the torque that a fixing got at a stage, from 0.</summary>
    public static string TorqueAt(string position, int stage, int fixing) => string.Create(CultureInfo.InvariantCulture, $"{TorquesAt(position, stage)}.{fixing}");

    /// <summary>The field of the wrench that a stage was tightened with.</summary>
    public static string WrenchAt(string position, int stage) => $"{TorquesAt(position, stage)}.wrench";

    /// <summary>The path of a wheel's record.</summary>
    public static string FieldAt(string position) => $"work.tightening.{position}";

    /// <summary>The field of a stage, from 0.</summary>
    public static string FieldAt(string position, int stage) => string.Create(CultureInfo.InvariantCulture, $"{FieldAt(position)}.stage-{stage + 1}");

    /// <summary>A stage as it is entered: "1, 4, 2 at 50 %".</summary>
    public static string Text(RecordedStage stage)
    {
        ArgumentNullException.ThrowIfNull(stage);
        return string.Create(CultureInfo.InvariantCulture, $"{string.Join(", ", stage.Fixings)} at {stage.Percent:0.###} %");
    }

    /// <summary>Reads a stage.</summary>
    public static Reading<RecordedStage> ReadStage(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        var halves = text.Split(" at ", StringSplitOptions.TrimEntries);
        var numbers = halves[0].Split(',', StringSplitOptions.TrimEntries);
        var fixings = numbers.Select(n => int.TryParse(n, NumberStyles.None, CultureInfo.InvariantCulture, out var fixing) && fixing is >= 1 and <= 20 ? fixing : 0).ToList();
        return halves.Length == 2 && halves[1].EndsWith('%') && NumberText.Read(halves[1][..^1].Trim()) is { IsRead: true, Value: > 0 and <= 100 } percent && !fixings.Contains(0) && fixings.Distinct().Count() == fixings.Count
            ? Reading<RecordedStage>.Of(new RecordedStage(percent.Value, fixings))
            : Reading<RecordedStage>.Failed("stage-unreadable", $"'{NumberText.Shown(text)}' is no stage; write the fixings that have had it, in order, and its share of the torque, such as \"1, 4, 2 at 50 %\".");
    }

    /// <summary>What it says of a wheel that has so many fixings: "stage 1 done, stage 2 at 2 of 5 fixings".</summary>
    public string Words(int fixings) => string.Join(", ", Stages.Select((s, i) => s.Fixings.Count >= fixings
        ? string.Create(CultureInfo.InvariantCulture, $"stage {i + 1} done")
        : string.Create(CultureInfo.InvariantCulture, $"stage {i + 1} at {s.Fixings.Count} of {fixings} fixings")));

    /// <summary>Reads one wheel's record.</summary>
    internal static TighteningRecord Read(FileObject o)
    {
        var stages = new List<RecordedStage>();
        for (var i = 0; i < MostStages; i++)
        {
            var key = string.Create(CultureInfo.InvariantCulture, $"stage-{i + 1}");
            if (!o.Has(key))
            {
                break;
            }

            if (o.Reference(key, ReadStage) is { } stage)
            {
                stages.Add(stage);
            }
        }

        var record = new TighteningRecord(stages, o.Whole("begunAgain", 0, 1000) ?? 0, o.Text("wentOn")) { Torques = o.Object("torques") is { } torques ? StageTorques.Read(torques) : [] };
        o.Done();
        return record;
    }
}
