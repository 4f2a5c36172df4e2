using System.Globalization;
using Trundle.Measures;

namespace Trundle.Visits.Files.Spin;

/// <summary>A recording without an index mark, of a meter or a telephone: one or more signals of vibration, evenly sampled.</summary>
/// <param name="Signals">Each with its name: a CSV's column, or "channel 1" of a WAV.</param>
/// <param name="SampleRate">Samples in a second.</param>
/// <param name="Gaps">Places where samples were lost; the longest stretch without one is what is held here.</param>
internal sealed record MeterRecording(IReadOnlyList<(string Name, double[] Samples)> Signals, Frequency SampleRate, int Gaps)
{
    private const int MostSignals = 16;
    private static readonly Frequency LeastRate = Frequency.FromHertz(1);
    private static readonly Frequency MostRate = Frequency.FromHertz(10e6);

    /// <summary>Reads the object of a recording: <c>csv</c> or <c>wav</c>, and which signal of it where that is said; null where a problem was added.</summary>
    public static MeterRecording? Read(FileObject o)
    {
        var name = o.Text("name");
        var rate = o.Quantity<Frequency>("sampleRate", "Hz", LeastRate, MostRate);
        o.Knows("file", "csv", "wav", "signal", "time");
        if (o.Has("file"))
        {
            o.Wrong("file", "file-not-here", "Only the command reads a file by its name, from beside the file that names it; send its content as 'csv', or as 'wav' in base 64.");
            return null;
        }

        if (o.Has("csv") == o.Has("wav"))
        {
            o.Problems.Add(new Problem(o.Path, o.Has("csv") ? "recording-twice" : "missing", "Give the samples in one form: 'csv', or 'wav' in base 64, or for the command the name of a 'file'."));
            return null;
        }

        var recording = o.Has("csv") ? OfCsv(o, name, rate) : OfWav(o, name, rate);
        if (recording is not null && o.Text("signal") is { } wanted)
        {
            var chosen = recording.Signals.Where(s => s.Name == wanted).ToList();
            if (chosen.Count == 0)
            {
                o.Wrong("signal", "signal-missing", $"There is no signal '{NumberText.Shown(wanted)}'; there are {Named(recording.Signals.Select(s => s.Name))}.");
                return null;
            }

            recording = recording with { Signals = chosen };
        }

        return recording;
    }

    private static MeterRecording? OfCsv(FileObject o, string? name, Frequency? said)
    {
        var where = name ?? o.PathOf("csv");
        if (o.Node("csv") is not { Kind: NodeKind.Text } node)
        {
            o.Wrong("csv", "not-a-text", "Here should stand the CSV as a text in quotes.");
            return null;
        }

        var read = SpinCsv.Read(node.Text);
        if (!read.IsRead)
        {
            o.Problems.Add(read.Problem!.At($"{where}:{read.Problem!.Where}"));
            return null;
        }

        var table = read.Value;
        var timeName = o.Text("time");
        var at = table.Names.ToList().IndexOf(timeName ?? "time_s");
        if (timeName is not null && at < 0)
        {
            o.Wrong("time", "column-missing", $"There is no column '{NumberText.Shown(timeName)}'; there are {Named(table.Names)}.");
            return null;
        }

        var signals = table.Names.Select((n, i) => (Name: n, Samples: table.Columns[i])).Where((s, i) => i != at && s.Name != "speed").Take(MostSignals).ToList();
        if (signals.Count == 0)
        {
            o.Problems.Add(new Problem(where, "column-missing", "There is no column of vibration beside the time; a recording has at least one, for example 'az'."));
            return null;
        }

        if (at < 0)
        {
            if (said is null && o.Require("sampleRate", "say how many samples there are in a second, for example \"100 Hz\"; a CSV may have a column time_s in seconds instead"))
            {
                return null;
            }

            return said is { } r ? new MeterRecording(signals, r, 0) : null;
        }

        if (table.Columns[at].Length < 3)
        {
            o.Problems.Add(new Problem(where, "too-few-samples", "There are fewer than three samples; some seconds of steady driving take some hundreds."));
            return null;
        }

        var even = EvenTimes.Of(table.Columns[at], table.FirstLine);
        if (!even.IsRead)
        {
            o.Problems.Add(even.Problem!.At(where));
            return null;
        }

        var (stretch, rate, gaps) = even.Value;
        if (said is { } told && Math.Abs((told / rate) - 1) > 0.01)
        {
            o.Wrong("sampleRate", "sample-rate-differs", string.Create(CultureInfo.InvariantCulture, $"{told} is given and the recording's own times say {rate}; leave one out."));
            return null;
        }

        return new MeterRecording([.. signals.Select(s => (s.Name, s.Samples[stretch]))], rate, gaps);
    }

    private static MeterRecording? OfWav(FileObject o, string? name, Frequency? said)
    {
        if (RecordingForms.Sound(o, name ?? o.PathOf("wav")) is not { } sound)
        {
            return null;
        }

        if (said is not null)
        {
            o.Wrong("sampleRate", "sample-rate-differs", "A WAV says its own sample rate; leave this out.");
            return null;
        }

        return new MeterRecording([.. sound.Channels.Take(MostSignals).Select((c, i) => (string.Create(CultureInfo.InvariantCulture, $"channel {i + 1}"), c))], sound.SampleRate, 0);
    }

    private static string Named(IEnumerable<string> names) => string.Join(", ", names.Take(12).Select(n => $"'{NumberText.Shown(n)}'"));
}
