using System.Globalization;
using Trundle.Measures;

namespace Trundle.Visits.Files.Spin;

/// <summary>The three signals of a recording in whichever form they came.</summary>
internal sealed record RecordingSamples(double[] First, double[] Second, double[] Index)
{
    /// <summary>The sample rate, where the recording itself tells it.</summary>
    public Frequency? SampleRate { get; init; }

    /// <summary>The size of a sample at the end of the scale, where the form has one.</summary>
    public double? FullScale { get; init; }

    /// <summary>Places where samples were lost.</summary>
    public int Gaps { get; init; }

    /// <summary>A CSV's notes.</summary>
    public IReadOnlyList<(string Key, string Value, int Line)> Notes { get; init; } = [];
}

/// <summary>Reads the forms of a recording: lists in the file, CSV, WAV.</summary>
internal static class RecordingForms
{
    private const int MostInline = 2_000_000;

    /// <summary>Three lists of numbers.</summary>
    public static RecordingSamples? Inline(FileObject o)
    {
        var (first, second, index) = (Numbers("first"), Numbers("second"), Numbers("index"));
        if (o.Problems.Count > 0)
        {
            return null;
        }

        if (first.Length != second.Length || first.Length != index.Length)
        {
            o.Wrong("index", "samples-differ", string.Create(CultureInfo.InvariantCulture, $"The lists hold {first.Length}, {second.Length} and {index.Length} samples; each sample of one has its sample in the others."));
            return null;
        }

        return new RecordingSamples(first, second, index);

        double[] Numbers(string key)
        {
            if (!o.Require(key, "list its samples as numbers"))
            {
                return [];
            }

            var items = o.Items(key);
            if (items.Count > MostInline)
            {
                o.Wrong(key, "too-many", "The recording is too long; one spin takes some seconds.");
                return [];
            }

            var numbers = new double[items.Count];
            for (var k = 0; k < numbers.Length; k++)
            {
                if (items[k].Kind != NodeKind.Number || !double.TryParse(items[k].Text, NumberStyles.Float, CultureInfo.InvariantCulture, out numbers[k]) || Math.Abs(numbers[k]) > NumberText.Greatest)
                {
                    o.Problems.Add(new Problem(items[k].Path, "number-unreadable", $"'{NumberText.Shown(items[k].Text)}' should be a number, as JSON writes one."));
                    return [];
                }
            }

            return numbers;
        }
    }

    /// <summary>A CSV text with named columns.</summary>
    public static RecordingSamples? OfCsv(FileObject o, string? name)
    {
        var named = o.Object("columns");
        var names = new[] { ("time", "time_s"), ("first", "first"), ("second", "second"), ("index", "index") }
            .ToDictionary(c => c.Item1, c => (Given: named?.Text(c.Item1) is not null, Name: named?.Text(c.Item1) ?? c.Item2), StringComparer.Ordinal);
        named?.Done();
        if (o.Node("csv") is not { Kind: NodeKind.Text } node)
        {
            o.Wrong("csv", "not-a-text", "Here should stand the CSV as a text in quotes.");
            return null;
        }

        var read = SpinCsv.Read(node.Text);
        if (!read.IsRead)
        {
            o.Problems.Add(read.Problem!.At(name is null ? o.PathOf("csv") : $"{name}:{read.Problem!.Where}"));
            return null;
        }

        var table = read.Value;
        double[]? Column(string key, bool required)
        {
            var at = table.Names.ToList().IndexOf(names[key].Name);
            if (at < 0 && (required || names[key].Given))
            {
                o.Problems.Add(new Problem(name ?? o.PathOf("csv"), "column-missing",
                    $"There is no column '{NumberText.Shown(names[key].Name)}'; there are {ChoiceText.Of(table.Names.Take(12), "and")}. Name it under recording.columns.{key}, or in the file."));
            }

            return at < 0 ? null : table.Columns[at];
        }

        var (first, second, index, time) = (Column("first", true), Column("second", true), Column("index", true), Column("time", false));
        if (first is null || second is null || index is null || o.Problems.Count > 0)
        {
            return null;
        }

        var samples = new RecordingSamples(first, second, index) { Notes = table.Notes };
        return time is null ? samples : Timed(o, name, samples, time, table.FirstLine);
    }

    private static RecordingSamples? Timed(FileObject o, string? name, RecordingSamples samples, double[] time, int firstLine)
    {
        if (time.Length < 3)
        {
            return samples;
        }

        var even = EvenTimes.Of(time, firstLine);
        if (!even.IsRead)
        {
            o.Problems.Add(even.Problem!.At(name ?? o.PathOf("csv")));
            return null;
        }

        var (stretch, rate, gaps) = even.Value;
        return new RecordingSamples(samples.First[stretch], samples.Second[stretch], samples.Index[stretch]) { SampleRate = rate, Gaps = gaps, Notes = samples.Notes };
    }

    /// <summary>A WAV file in base 64.</summary>
    public static RecordingSamples? OfWav(FileObject o, string? name)
    {
        var chosen = o.Object("channels");
        int[] channels = [.. new[] { "first", "second", "index" }.Select((key, i) => chosen?.Whole(key, 1, 16) ?? i + 1)];
        chosen?.Done();
        var where = name ?? o.PathOf("wav");
        if (Sound(o, where) is not { } sound)
        {
            return null;
        }

        if (channels.Max() > sound.Channels.Count || channels.Distinct().Count() < 3)
        {
            o.Problems.Add(new Problem(where, "channels-missing", string.Create(CultureInfo.InvariantCulture,
                $"The recording has {sound.Channels.Count} channels and {string.Join(", ", channels)} are asked for; two transducers and an index mark take three, each its own.")));
            return null;
        }

        return o.Problems.Count > 0 ? null : new RecordingSamples(sound.Channels[channels[0] - 1], sound.Channels[channels[1] - 1], sound.Channels[channels[2] - 1])
        {
            SampleRate = sound.SampleRate, FullScale = sound.FullScale,
        };
    }

    /// <summary>The sound under <c>wav</c>, in base 64; null where a problem was added.</summary>
    public static WaveSound? Sound(FileObject o, string where)
    {
        var text = o.Node("wav")!.Text;
        var bytes = new byte[(text.Length / 4 * 3) + 3];
        if (o.Node("wav")!.Kind != NodeKind.Text || !Convert.TryFromBase64String(text, bytes, out var count))
        {
            o.Wrong("wav", "base64-unreadable", "Here should stand the bytes of a WAV file in base 64.");
            return null;
        }

        var read = WaveBytes.Read(bytes.AsSpan(0, count));
        if (!read.IsRead)
        {
            o.Problems.Add(read.Problem!.At(where));
            return null;
        }

        return read.Value;
    }
}
