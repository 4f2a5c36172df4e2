using System.Runtime.InteropServices;
using Trundle.Measures;

namespace Trundle.Quick;

/// <summary>The whole command, which lies in the folder above this program: the bay, sheets, help, and mistakes in the command line.</summary>
internal static partial class WholeCommand
{
    /// <summary>Becomes the whole command with the same words; returns only where it cannot be started.</summary>
    public static int Run(string[] args)
    {
        var whole = Path.GetFullPath(Path.Combine(AppContext.BaseDirectory, "..", "trundle"));

        // The same process goes on as the other program, so that signals, the terminal and the exit status are its own.
        _ = Execute(whole, [whole, .. args, null]);
        throw new Cli.InputProblemException(new Problem(whole, "file-unusable", "The command's other half cannot be started; build it again with ./trundle."));
    }

    [LibraryImport("libc", EntryPoint = "execv", StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Execute(string path, string?[] words);
}
