using System.Globalization;

namespace Trundle.Bench;

/// <summary>What a first load brings over the network: the published client's compressed files beside those of a bare page of the same framework.</summary>
internal static class PageBench
{
    public static void Run(string published, Report report)
    {
        var bare = Bytes(Path.Combine(published, "bare", "wwwroot"));
        var bay = Bytes(Path.Combine(published, "trundle", "wwwroot"));
        report.Table("First load of the bay, in bytes", "Every file of the published client that a cold browser fetches, as the server sends it (Brotli where there is a compressed twin). Aim: 2.",
            ["what", "bytes", "ratio"],
            [
                ["bare page", bare.ToString(CultureInfo.InvariantCulture), "1.00"],
                ["bay", bay.ToString(CultureInfo.InvariantCulture), StartBench.Text((double)bay / bare, "F2")],
            ]);
    }

    private static long Bytes(string folder) =>
        Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories)
            .Where(f => Path.GetExtension(f) is not (".br" or ".gz" or ".map" or ".txt" or ".md"))
            .Sum(f => new FileInfo(File.Exists(f + ".br") ? f + ".br" : f).Length);
}
