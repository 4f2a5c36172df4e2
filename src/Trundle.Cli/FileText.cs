using System.Text;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Cli;

/// <summary>A problem with the input that is found where no answer can be returned.</summary>
internal sealed class InputProblemException(Problem problem) : Exception(problem.Message)
{
    public Problem Problem { get; } = problem;
}

/// <summary>Reads a file argument; '-' is standard input.</summary>
internal static class FileText
{
    /// <summary>The root of a JSON file; an <see cref="InputProblemException"/> where it cannot be read.</summary>
    public static FileNode Read(string name) => Parse(Bytes(name, "give the path of a JSON file"), name);

    /// <summary>
    /// The body of an operation on recordings: a JSON file in which recordings may be named, or a recording itself, CSV or WAV. Files that are named lie
    /// beside the file that names them.
    /// </summary>
    public static FileNode ReadWithRecordings(string name)
    {
        var bytes = Bytes(name, "give the path of a JSON file or of a recording, CSV or WAV");
        var isJson = !IsWave(bytes) && (name.EndsWith(".json", StringComparison.OrdinalIgnoreCase) || FirstCharacter(bytes) == (byte)'{');
        return isJson
            ? WithRecordings(Parse(bytes, name), name == "-" ? "" : Path.GetDirectoryName(name) ?? "")
            : FileNode.OfObject(("recording", Recording(bytes, name == "-" ? "standard input" : name, null)));
    }

    /// <summary>The same tree with each <c>"recording": {"file": …}</c> holding the file's content.</summary>
    private static FileNode WithRecordings(FileNode root, string folder) => root.Replacing(node =>
        node.Kind == NodeKind.Object && node.Member("file") is { Kind: NodeKind.Text } file && (node.Path == "recording" || node.Path.EndsWith(".recording", StringComparison.Ordinal))
            ? Recording(Bytes(Path.Combine(folder, file.Text), "a recording lies beside the file that names it"), file.Text, node)
            : null);

    /// <summary>A recording as the operation reads it, with the other keys of the object that named it.</summary>
    private static FileNode Recording(byte[] bytes, string name, FileNode? named)
    {
        var content = IsWave(bytes) ? ("wav", FileNode.OfText(Convert.ToBase64String(bytes))) : ("csv", FileNode.OfText(Text(bytes, name)));
        return FileNode.OfObject([content, ("name", FileNode.OfText(name)), .. named?.Members.Where(m => m.Key is not ("file" or "name")) ?? []]);
    }

    private static bool IsWave(byte[] bytes) => bytes.AsSpan().StartsWith("RIFF"u8) || bytes.AsSpan().StartsWith("RIFX"u8) || bytes.AsSpan().StartsWith("RF64"u8);

    private static byte FirstCharacter(byte[] bytes) =>
        bytes.Skip(bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? 3 : 0).SkipWhile(b => b is (byte)' ' or (byte)'\t' or (byte)'\r' or (byte)'\n').FirstOrDefault();

    private static byte[] Bytes(string name, string wanted)
    {
        if (name == "-")
        {
            using var input = Console.OpenStandardInput();
            using var memory = new MemoryStream();
            input.CopyTo(memory);
            return memory.ToArray();
        }

        if (Directory.Exists(name) || !File.Exists(name))
        {
            throw new InputProblemException(new Problem(name, "file-missing", Directory.Exists(name)
                ? "This is a folder; name a file in it."
                : $"There is no such file; {wanted}, or - for standard input."));
        }

        return File.ReadAllBytes(name);
    }

    private static FileNode Parse(byte[] bytes, string name) =>
        FileNode.Parse(Text(bytes, name), name == "-" ? "standard input" : name).Match(node => node, problem => throw new InputProblemException(problem));

    private static string Text(byte[] bytes, string name)
    {
        try
        {
            return new UTF8Encoding(false, true).GetString(bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? bytes.AsSpan(3) : bytes);
        }
        catch (DecoderFallbackException e)
        {
            throw new InputProblemException(new Problem(name, "not-unicode", $"Byte {e.Index + 1} is not UTF-8; save the file as UTF-8."));
        }
    }
}
