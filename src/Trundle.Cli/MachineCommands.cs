using System.CommandLine;

namespace Trundle.Cli;

/// <summary>The commands that need the machine: a server, a file to write.</summary>
internal static class MachineCommands
{
    public static void AddTo(RootCommand root)
    {
        ArgumentNullException.ThrowIfNull(root);
        root.Subcommands.Add(ServeCommand.Serve());
        root.Subcommands.Add(ServeCommand.Demo());
    }
}
