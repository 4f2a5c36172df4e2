using Trundle.Measures;

namespace Trundle.Cli;

/// <summary>Writes a file whole or not at all: beside its place first, then moved into it.</summary>
internal static class WholeFile
{
    public static void Write(string path, byte[] bytes)
    {
        var full = Path.GetFullPath(path);
        if (Directory.Exists(full))
        {
            throw new InputProblemException(new Problem(path, "file-unusable", "This is a folder; name a file in it."));
        }

        var folder = Path.GetDirectoryName(full)!;
        if (!Directory.Exists(folder))
        {
            throw new InputProblemException(new Problem(path, "folder-missing", "There is no such folder; make it first, or write elsewhere."));
        }

        var beside = Path.Combine(folder, $".{Path.GetFileName(full)}.{Environment.ProcessId.ToString(System.Globalization.CultureInfo.InvariantCulture)}.part");
        try
        {
            File.WriteAllBytes(beside, bytes);
            File.Move(beside, full, overwrite: true);
        }
        finally
        {
            File.Delete(beside);
        }
    }
}
