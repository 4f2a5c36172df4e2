using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace Trundle.Sheets.Tests;

/// <summary>The first page of a PDF as a printer would see it, by poppler's pdftoppm.</summary>
/// <param name="Width">In pixels.</param>
/// <param name="Height">In pixels.</param>
/// <param name="Pixels">Row by row: red, green, blue.</param>
internal sealed record PageImage(int Width, int Height, byte[] Pixels)
{
    public bool IsDark(int x, int y) => Pixels[3 * ((y * Width) + x)] < 128;

    public static PageImage Of(byte[] pdf, int perInch)
    {
        var folder = Directory.CreateTempSubdirectory("page");
        try
        {
            var (source, root) = (Path.Combine(folder.FullName, "page.pdf"), Path.Combine(folder.FullName, "page"));
            File.WriteAllBytes(source, pdf);
            using var process = Process.Start(new ProcessStartInfo("pdftoppm", ["-r", perInch.ToString(CultureInfo.InvariantCulture), "-singlefile", source, root]) { RedirectStandardError = true })!;
            var said = process.StandardError.ReadToEnd();
            process.WaitForExit();
            process.ExitCode.ShouldBe(0, said);
            var bytes = File.ReadAllBytes(root + ".ppm");

            // P6, width height, greatest value, then three bytes a pixel.
            var (at, fields) = (0, new List<string>());
            while (fields.Count < 4)
            {
                var from = at;
                while (!char.IsWhiteSpace((char)bytes[at]))
                {
                    at++;
                }

                fields.Add(Encoding.ASCII.GetString(bytes, from, at - from));
                at++;
            }

            fields[0].ShouldBe("P6");
            return new PageImage(int.Parse(fields[1], CultureInfo.InvariantCulture), int.Parse(fields[2], CultureInfo.InvariantCulture), bytes[at..]);
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }
}
