using System.CommandLine;

namespace Trundle.Cli;

/// <summary>The commands that need the machine: a server, a store, a file to write.</summary>
internal static class MachineCommands
{
    public static void AddTo(RootCommand root, Option<bool> json)
    {
        ArgumentNullException.ThrowIfNull(root);
        root.Subcommands.Add(ServeCommand.Serve());
        root.Subcommands.Add(ServeCommand.Demo());
        root.Subcommands.Add(RecallCommand.Recall(json));
        root.Subcommands.Add(ExportCommand.Export(json));
        root.Subcommands.Add(ExportCommand.Import(json));
        root.Subcommands.Add(FleetCommand.Fleet(json));
        TrundleCommand.Group(root, "visit").Subcommands.Add(SheetCommand.Sheet(json));
    }
}
