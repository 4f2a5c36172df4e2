using System.Buffers.Binary;
using Trundle.Measures;

namespace Trundle.Store;

/// <summary>A photograph as the workshop keeps it: what it shows and nothing else.</summary>
/// <param name="Type">Its media type.</param>
/// <param name="Width">In pixels.</param>
/// <param name="Height">In pixels.</param>
/// <param name="Bytes">The picture without what the camera wrote beside it.</param>
public sealed record PictureBytes(string Type, int Width, int Height, byte[] Bytes)
{
    /// <summary>JPEG.</summary>
    public const string Jpeg = "image/jpeg";

    /// <summary>PNG.</summary>
    public const string Png = "image/png";

    /// <summary>The most bytes that are kept of one picture.</summary>
    public const int MostBytes = 2_000_000;

    private const int MostPixels = 40_000_000;
    private const int MostSide = 12_000;

    private static readonly byte[] PngSignature = [0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A];

    // What a picture needs to be seen: everything else (text, time, place, make of the camera) stays out.
    private static readonly string[] PngChunks = ["IHDR", "PLTE", "IDAT", "IEND", "tRNS", "gAMA", "cHRM", "sRGB", "pHYs"];

    /// <summary>
    /// Reads a JPEG or PNG by its own signature and structure. What the camera wrote beside the picture (place, time, make, a second small picture) is
    /// left out, and so is all that stands behind its end.
    /// </summary>
    public static Reading<PictureBytes> Read(byte[] bytes)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        if (bytes.Length > MostBytes)
        {
            return Wrong("photo-too-large", $"The photograph has {Quantity.Number(bytes.Length / 1e6, 1)} MB; at most {Quantity.Number(MostBytes / 1e6, 0)} MB are kept. Take it smaller.");
        }

        var picture = bytes.AsSpan().StartsWith(PngSignature) ? ReadPng(bytes)
            : bytes.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xFF, 0xD8, 0xFF]) ? ReadJpeg(bytes)
            : null;
        return picture is null ? Wrong("not-a-picture", "This is no JPEG or PNG that can be read; take a photograph or choose one.")
            : picture.Width > MostSide || picture.Height > MostSide || (long)picture.Width * picture.Height > MostPixels
                ? Wrong("photo-too-large", FormattableString.Invariant($"The photograph has {picture.Width} by {picture.Height} pixels; take it smaller."))
                : Reading<PictureBytes>.Of(picture);
    }

    private static Reading<PictureBytes> Wrong(string code, string message) => Reading<PictureBytes>.Failed(new Problem("photo", code, message));

    private static PictureBytes? ReadPng(byte[] bytes)
    {
        using var clean = new MemoryStream(bytes.Length);
        clean.Write(PngSignature);
        var (width, height, data) = (0, 0, false);
        for (var at = PngSignature.Length; at + 12 <= bytes.Length;)
        {
            var length = BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(at));
            var end = at + 12L + length;
            if (end > bytes.Length)
            {
                return null;
            }

            var kind = System.Text.Encoding.ASCII.GetString(bytes, at + 4, 4);
            if ((width == 0) != (kind == "IHDR") || (kind == "IHDR" && length != 13))
            {
                return null;
            }

            if (kind == "IHDR")
            {
                width = (int)Math.Min(int.MaxValue, BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(at + 8)));
                height = (int)Math.Min(int.MaxValue, BinaryPrimitives.ReadUInt32BigEndian(bytes.AsSpan(at + 12)));
            }

            if (PngChunks.Contains(kind))
            {
                clean.Write(bytes, at, (int)(end - at));
            }

            data |= kind == "IDAT";
            if (kind == "IEND")
            {
                return data && width > 0 && height > 0 ? new PictureBytes(Png, width, height, clean.ToArray()) : null;
            }

            at = (int)end;
        }

        return null;
    }

    private static PictureBytes? ReadJpeg(byte[] bytes)
    {
        using var clean = new MemoryStream(bytes.Length);
        clean.Write(bytes, 0, 2);
        var (width, height, scanned) = (0, 0, false);
        for (var at = 2; at + 2 <= bytes.Length;)
        {
            if (bytes[at] != 0xFF)
            {
                return null;
            }

            var marker = bytes[at + 1];
            if (marker == 0xFF)
            {
                at++;
                continue;
            }

            if (marker == 0xD9)
            {
                clean.Write(bytes, at, 2);
                return scanned && width > 0 && height > 0 ? new PictureBytes(Jpeg, width, height, clean.ToArray()) : null;
            }

            if (at + 4 > bytes.Length)
            {
                return null;
            }

            var end = at + 2 + BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at + 2));
            if (end > bytes.Length || end < at + 4)
            {
                return null;
            }

            // A frame's head: C0 to CF without the tables C4, C8 and CC.
            if (marker is >= 0xC0 and <= 0xCF and not (0xC4 or 0xC8 or 0xCC) && end >= at + 9)
            {
                (height, width) = (BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at + 5)), BinaryPrimitives.ReadUInt16BigEndian(bytes.AsSpan(at + 7)));
            }

            if (marker == 0xDA)
            {
                // The picture's data runs to the next marker that is neither a stuffed FF nor a restart.
                scanned = true;
                while (end + 1 < bytes.Length && !(bytes[end] == 0xFF && bytes[end + 1] is not (0x00 or 0xFF or (>= 0xD0 and <= 0xD7))))
                {
                    end++;
                }
            }

            // E0 says how to read the picture and EE its colours; the other application parts and comments are the camera's.
            if (marker is not ((>= 0xE1 and <= 0xED) or 0xEF or 0xFE))
            {
                clean.Write(bytes, at, end - at);
            }

            at = end;
        }

        return null;
    }
}
