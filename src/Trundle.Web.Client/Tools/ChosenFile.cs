using System.Text;
using Microsoft.AspNetCore.Components.Forms;
using Trundle.Measures;

namespace Trundle.Web.Client.Tools;

/// <summary>A file that was chosen on the device: it is read here and sent nowhere.</summary>
internal static class ChosenFile
{
    private const long MostBytes = 60_000_000;

    /// <summary>Its bytes; null where it is too large, which is said.</summary>
    public static async Task<byte[]?> BytesAsync(IBrowserFile file, Action<string> wrong)
    {
        if (file.Size > MostBytes)
        {
            wrong($"{file.Name} has {Quantity.Number(file.Size / 1e6, 0)} MB; a recording of some seconds has a few. At most {Quantity.Number(MostBytes / 1e6, 0)} MB are read.");
            return null;
        }

        using var bytes = new MemoryStream();
        await using var stream = file.OpenReadStream(MostBytes);
        await stream.CopyToAsync(bytes);
        return bytes.ToArray();
    }

    /// <summary>True where the bytes begin as a WAV's do.</summary>
    public static bool IsWave(byte[] bytes) => bytes.AsSpan().StartsWith("RI"u8) || bytes.AsSpan().StartsWith("RF64"u8);

    /// <summary>The bytes as text, or null where they are none.</summary>
    public static string? TextOf(byte[] bytes)
    {
        try
        {
            return new UTF8Encoding(false, true).GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return null;
        }
    }
}
