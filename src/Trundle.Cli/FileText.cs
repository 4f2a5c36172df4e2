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
    public static FileNode Read(string name)
    {
        byte[] bytes;
        if (name == "-")
        {
            using var input = Console.OpenStandardInput();
            using var memory = new MemoryStream();
            input.CopyTo(memory);
            bytes = memory.ToArray();
        }
        else if (Directory.Exists(name) || !File.Exists(name))
        {
            throw new InputProblemException(new Problem(name, "file-missing", Directory.Exists(name)
                ? "This is a folder; name a file in it."
                : "There is no such file; give the path of a JSON file, or - for standard input."));
        }
        else
        {
            bytes = File.ReadAllBytes(name);
        }

        string text;
        try
        {
            text = new UTF8Encoding(false, true).GetString(bytes.AsSpan().StartsWith(Encoding.UTF8.Preamble) ? bytes.AsSpan(3) : bytes);
        }
        catch (DecoderFallbackException e)
        {
            throw new InputProblemException(new Problem(name, "not-unicode", $"Byte {e.Index + 1} is not UTF-8; save the file as UTF-8."));
        }

        var shown = name == "-" ? "standard input" : name;
        return FileNode.Parse(text, shown).Match(node => node, problem => throw new InputProblemException(problem));
    }
}
