using System.CommandLine;

namespace Trundle.Cli;

/// <summary>The commands that need the machine: a server, a file to write.</summary>
internal static class MachineCommands
{
    public static void AddTo(RootCommand root)
    {
        ArgumentNullException.ThrowIfNull(root);
        var serve = new Command("serve", "Starts the bay.");
        serve.SetAction(_ => Trundle.Web.BayHost.Build(["http://127.0.0.1:5155"]).Run());
        root.Subcommands.Add(serve);
    }
}
