using Trundle.Cli;

return TrundleCommand.Run(args, MachineCommands.AddTo);
