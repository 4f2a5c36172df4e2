using System.Buffers.Binary;
using System.Globalization;
using System.Text;
using Trundle.Measures;

namespace Trundle.Visits.Files.Spin;

/// <summary>The samples of a WAV recording, channel by channel, between −1 and 1 for whole numbers and as they stand for floats.</summary>
/// <param name="Channels">One list of samples a channel, equally long.</param>
/// <param name="SampleRate">Samples in a second.</param>
/// <param name="FullScale">The size that a sample at the end of the scale has, or null for floats, which have none.</param>
internal sealed record WaveSound(IReadOnlyList<double[]> Channels, Frequency SampleRate, double? FullScale);

/// <summary>Reads WAV (RIFF) files strictly: PCM of 16, 24 or 32 bits, and IEEE floats of 32 or 64 bits. One problem names the byte.</summary>
internal static class WaveBytes
{
    private const int Pcm = 1;
    private const int Floats = 3;
    private const int Extensible = 0xFFFE;
    private const int MostChannels = 16;
    private const long MostSamples = 40_000_000;

    /// <summary>True where bytes begin as a WAV file does.</summary>
    public static bool Begin(ReadOnlySpan<byte> bytes) => bytes.StartsWith("RIFF"u8) || bytes.StartsWith("RIFX"u8) || bytes.StartsWith("RF64"u8);

    /// <summary>Reads a file.</summary>
    public static Reading<WaveSound> Read(ReadOnlySpan<byte> bytes)
    {
        if (bytes.Length < 12 || !bytes.StartsWith("RIFF"u8))
        {
            return Failed(0, "wav-unreadable", Begin(bytes) ? $"the file begins with '{Ascii(bytes[..4])}', a kind of WAV that is not read" : "the file does not begin with 'RIFF', as a WAV file does");
        }

        if (!bytes[8..].StartsWith("WAVE"u8))
        {
            return Failed(8, "wav-unreadable", $"'{Ascii(bytes.Slice(8, 4))}' stands here and should be 'WAVE'");
        }

        // The sizes of the chunks count, not the one in the head: recorders that were cut short leave that one wrong.
        Layout? layout = null;
        var at = 12;
        while (at + 8 <= bytes.Length)
        {
            var name = bytes.Slice(at, 4);
            var size = BinaryPrimitives.ReadUInt32LittleEndian(bytes[(at + 4)..]);
            var from = at + 8;
            if (size > bytes.Length - from)
            {
                return Failed(at + 4, "wav-cut-short", string.Create(CultureInfo.InvariantCulture, $"the part '{Ascii(name)}' should hold {size} bytes and only {bytes.Length - from} follow: the file was cut short"));
            }

            var part = bytes.Slice(from, (int)size);
            if (name.SequenceEqual("fmt "u8))
            {
                if (layout is not null)
                {
                    return Failed(at, "wav-unreadable", "a second 'fmt ' part stands here");
                }

                var read = ReadLayout(part, from);
                if (!read.IsRead)
                {
                    return Reading<WaveSound>.Failed(read.Problem!);
                }

                layout = read.Value;
            }
            else if (name.SequenceEqual("data"u8))
            {
                return layout is { } l ? Samples(part, from, l) : Failed(at, "wav-unreadable", "the samples begin here with no 'fmt ' part before them");
            }

            at = (int)Math.Min(int.MaxValue, from + size + (size % 2));
        }

        return Failed(Math.Min(at, bytes.Length), "wav-cut-short", "the file ends here without a 'data' part");
    }

    private readonly record struct Layout(int Format, int Channels, uint SampleRate, int Bits);

    private static Reading<Layout> ReadLayout(ReadOnlySpan<byte> part, int from)
    {
        if (part.Length < 16)
        {
            return Bad(from, string.Create(CultureInfo.InvariantCulture, $"the 'fmt ' part holds {part.Length} bytes and needs 16"));
        }

        int format = BinaryPrimitives.ReadUInt16LittleEndian(part);
        int channels = BinaryPrimitives.ReadUInt16LittleEndian(part[2..]);
        var rate = BinaryPrimitives.ReadUInt32LittleEndian(part[4..]);
        int frame = BinaryPrimitives.ReadUInt16LittleEndian(part[12..]);
        int bits = BinaryPrimitives.ReadUInt16LittleEndian(part[14..]);
        if (format == Extensible)
        {
            if (part.Length < 40)
            {
                return Bad(from, "the 'fmt ' part is of the long form and shorter than its 40 bytes");
            }

            format = BinaryPrimitives.ReadUInt16LittleEndian(part[24..]);
        }

        if (format is not (Pcm or Floats))
        {
            return Bad(from, string.Create(CultureInfo.InvariantCulture, $"samples of kind {format} are not read; save as PCM or as floats"));
        }

        if (channels is < 1 or > MostChannels)
        {
            return Bad(from + 2, string.Create(CultureInfo.InvariantCulture, $"{channels} channels are not read; 3 are needed, up to {MostChannels} may be there"));
        }

        if (rate is < 1 or > 10_000_000)
        {
            return Bad(from + 4, string.Create(CultureInfo.InvariantCulture, $"a rate of {rate} samples a second is not read"));
        }

        if (format == Pcm ? bits is not (16 or 24 or 32) : bits is not (32 or 64))
        {
            return Bad(from + 14, string.Create(CultureInfo.InvariantCulture, $"{(format == Pcm ? "PCM" : "floats")} of {bits} bits are not read; save as PCM of 16, 24 or 32 bits or floats of 32 or 64"));
        }

        return frame == channels * bits / 8
            ? Reading<Layout>.Of(new Layout(format, channels, rate, bits))
            : Bad(from + 12, string.Create(CultureInfo.InvariantCulture, $"{channels} channels of {bits} bits take {channels * bits / 8} bytes and {frame} are told here"));

        static Reading<Layout> Bad(int at, string what) => Reading<Layout>.Failed(At(at, "wav-unreadable", what));
    }

    private static Reading<WaveSound> Samples(ReadOnlySpan<byte> part, int from, Layout layout)
    {
        var width = layout.Bits / 8;
        var frame = layout.Channels * width;
        if (part.Length % frame != 0)
        {
            return Failed(from + (part.Length / frame * frame), "wav-cut-short", string.Create(CultureInfo.InvariantCulture, $"the last sample is not whole: {part.Length % frame} of its {frame} bytes are here"));
        }

        var count = part.Length / frame;
        if ((long)count * layout.Channels > MostSamples)
        {
            return Failed(from, "wav-too-large", "the recording is too long; one spin takes some seconds");
        }

        var channels = Enumerable.Range(0, layout.Channels).Select(_ => new double[count]).ToArray();
        var at = 0;
        for (var k = 0; k < count; k++)
        {
            for (var c = 0; c < channels.Length; c++, at += width)
            {
                var value = Value(part[at..], layout);
                if (!double.IsFinite(value))
                {
                    return Failed(from + at, "wav-unreadable", "a sample that is no number stands here");
                }

                channels[c][k] = value;
            }
        }

        return Reading<WaveSound>.Of(new WaveSound(channels, Frequency.FromHertz(layout.SampleRate), layout.Format == Pcm ? 1 - Math.Pow(2, 1 - layout.Bits) : null));
    }

    private static double Value(ReadOnlySpan<byte> at, Layout layout) => (layout.Format, layout.Bits) switch
    {
        (Pcm, 16) => BinaryPrimitives.ReadInt16LittleEndian(at) / 32768.0,
        (Pcm, 24) => (((sbyte)at[2] << 16) | (at[1] << 8) | at[0]) / 8388608.0,
        (Pcm, _) => BinaryPrimitives.ReadInt32LittleEndian(at) / 2147483648.0,
        (_, 32) => BinaryPrimitives.ReadSingleLittleEndian(at),
        _ => BinaryPrimitives.ReadDoubleLittleEndian(at),
    };

    private static Reading<WaveSound> Failed(int at, string code, string what) => Reading<WaveSound>.Failed(At(at, code, what));

    /// <summary>Bytes are counted from 0, as a viewer of bytes does.</summary>
    private static Problem At(int at, string code, string what) => new("", code, string.Create(CultureInfo.InvariantCulture, $"The WAV file is not right at byte {at}: {what}."));

    private static string Ascii(ReadOnlySpan<byte> bytes)
    {
        var text = new StringBuilder();
        foreach (var b in bytes)
        {
            text.Append(b is >= 0x20 and < 0x7f ? (char)b : '.');
        }

        return text.ToString();
    }
}
