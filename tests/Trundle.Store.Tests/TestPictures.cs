using System.Text;

namespace Trundle.Store.Tests;

/// <summary>Small pictures made by hand: a grey JPEG of 16 by 8 pixels and a grey PNG of one.</summary>
internal static class TestPictures
{
    /// <summary>What a camera writes beside the picture, as a text that can be looked for.</summary>
    public const string Place = "GPS 12.3456 N 65.4321 E";

    /// <summary>A baseline JPEG: one component, two blocks of mid grey; with the camera's part, a comment, and something behind the end.</summary>
    public static byte[] Jpeg(bool withPlace = true) =>
    [
        0xFF, 0xD8,
        .. Segment(0xE0, [.. "JFIF\0"u8, 1, 1, 0, 0, 1, 0, 1, 0, 0]),
        .. withPlace ? Segment(0xE1, [.. "Exif\0\0"u8, .. Encoding.ASCII.GetBytes(Place)]) : [],
        .. withPlace ? Segment(0xFE, Encoding.ASCII.GetBytes(Place)) : [],
        .. Segment(0xDB, [0, .. Enumerable.Repeat((byte)1, 64)]),
        .. Segment(0xC0, [8, 0, 8, 0, 16, 1, 1, 0x11, 0]),
        .. Segment(0xC4, [0x00, 1, .. new byte[15], 0]),
        .. Segment(0xC4, [0x10, 1, .. new byte[15], 0]),
        .. Segment(0xDA, [1, 1, 0x00, 0, 63, 0]),
        0x0F,
        0xFF, 0xD9,
        .. withPlace ? Encoding.ASCII.GetBytes(Place) : [],
    ];

    /// <summary>A PNG of one grey pixel; with a text chunk and something behind the end.</summary>
    public static byte[] Png(bool withPlace = true) =>
    [
        0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A,
        .. Chunk("IHDR", [0, 0, 0, 1, 0, 0, 0, 1, 8, 0, 0, 0, 0]),
        .. withPlace ? Chunk("tEXt", Encoding.ASCII.GetBytes($"Comment\0{Place}")) : [],
        .. withPlace ? Chunk("eXIf", Encoding.ASCII.GetBytes(Place)) : [],
        .. Chunk("IDAT", Deflated([0, 128])),
        .. Chunk("IEND", []),
        .. withPlace ? Encoding.ASCII.GetBytes(Place) : [],
    ];

    private static byte[] Segment(byte marker, byte[] body) => [0xFF, marker, (byte)((body.Length + 2) >> 8), (byte)(body.Length + 2), .. body];

    private static byte[] Chunk(string kind, byte[] body)
    {
        byte[] told = [.. Encoding.ASCII.GetBytes(kind), .. body];
        var sum = Crc(told);
        return [0, 0, (byte)(body.Length >> 8), (byte)body.Length, .. told, (byte)(sum >> 24), (byte)(sum >> 16), (byte)(sum >> 8), (byte)sum];
    }

    /// <summary>The check sum of a chunk, bit by bit (ISO 3309).</summary>
    private static uint Crc(byte[] bytes)
    {
        var crc = 0xFFFFFFFFu;
        foreach (var b in bytes)
        {
            crc ^= b;
            for (var i = 0; i < 8; i++)
            {
                crc = (crc & 1) == 0 ? crc >> 1 : (crc >> 1) ^ 0xEDB88320u;
            }
        }

        return ~crc;
    }

    private static byte[] Deflated(byte[] raw)
    {
        using var memory = new MemoryStream();
        using (var zlib = new System.IO.Compression.ZLibStream(memory, System.IO.Compression.CompressionLevel.Optimal))
        {
            zlib.Write(raw);
        }

        return memory.ToArray();
    }
}
