using System.Globalization;
using Trundle.Measures;

namespace Trundle.Visits.Files.Spin;

/// <summary>One run's reading out of a recording, for a page that takes the recordings one by one.</summary>
/// <param name="Amplitude">The once-per-turn amplitude as it is entered, to four figures.</param>
/// <param name="Signal">Which of the recording's signals was taken; ask for the same in the later runs.</param>
/// <param name="Told">What was found, in a line for people: error, speed and turns.</param>
/// <param name="Doubts">What makes it doubtful, in sentences; most often none.</param>
public sealed record MeterReading(string Amplitude, string Signal, string Told, IReadOnlyList<string> Doubts)
{
    /// <summary>Reads a recording as <c>balance trial</c> does.</summary>
    /// <param name="content">A CSV's text, or a WAV's bytes in base 64.</param>
    /// <param name="isWave">True for a WAV.</param>
    /// <param name="name">The file's name, for messages.</param>
    /// <param name="speed">As typed: <c>850 r/min</c>, or <c>100 km/h</c>.</param>
    /// <param name="rollingCircumference">As typed; needed with a road speed.</param>
    /// <param name="signal">The signal that an earlier run was read from, or null for the strongest.</param>
    public static Reading<MeterReading> Of(string content, bool isWave, string name, string? speed, string? rollingCircumference, string? signal)
    {
        var recording = FileNode.OfObject([.. Given((isWave ? "wav" : "csv", content), ("name", name), ("signal", signal))]);
        var problems = new List<Problem>();
        var root = new FileObject(FileNode.OfObject([.. Given(("speed", speed), ("rollingCircumference", rollingCircumference)), ("recording", recording)]), problems);
        var recordings = new TrialRecordings(root);
        if (recordings.Read(root, 1, 1) is null || problems.Count > 0)
        {
            return Reading<MeterReading>.Failed(problems[0]);
        }

        var found = recordings.Found[0];
        return Reading<MeterReading>.Of(new MeterReading(
            found.Found.Amplitude.ToString("G4", CultureInfo.InvariantCulture),
            found.Signal,
            $"± {found.Found.AmplitudeStandardError.ToString("G2", CultureInfo.InvariantCulture)} (one standard error) in '{found.Signal}' at {Quantity.Number(found.Found.Speed.RevolutionsPerMinute, 1)} r/min, over {Quantity.Number(found.Found.Turns, 0)} turns",
            [.. TrialRecordings.Warnings(recordings.Found).Select(w => w.Message.Replace("Run 1, point 1: ", "", StringComparison.Ordinal))]));
    }

    private static IEnumerable<(string, FileNode)> Given(params (string Key, string? Text)[] texts) =>
        texts.Where(t => !string.IsNullOrWhiteSpace(t.Text)).Select(t => (t.Key, FileNode.OfText(t.Text!)));
}
